"""Cuts that are read as they were measured: fields along them, figures with intervals, no transform."""
