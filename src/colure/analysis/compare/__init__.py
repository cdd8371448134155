"""Two patterns of one device against each other."""
