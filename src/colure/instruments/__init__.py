"""Protocols for analyzers and axes, and the drivers that speak to real (or simulated) ones."""
