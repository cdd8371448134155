"""One file a command of the command line."""
