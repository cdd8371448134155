"""The control room: one local page over the same service as the command line."""
