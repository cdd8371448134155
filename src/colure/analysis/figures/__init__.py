"""Numbers read from the continuous pattern, each with its definition and source."""
