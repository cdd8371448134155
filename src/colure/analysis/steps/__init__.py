"""One corrector a file, in the recipe's order: sweeps in, sweeps or the device's waves out."""
