"""Pure spherical-wave mathematics on arrays: no files, no chambers."""
