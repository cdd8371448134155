"""Where a campaign's files lie, and how they are changed."""
