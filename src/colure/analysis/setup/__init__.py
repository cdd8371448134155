"""Short runs and studies before the long scan."""
