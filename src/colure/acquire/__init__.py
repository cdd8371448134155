"""Execute a plan so that no confirmed point is ever lost."""
