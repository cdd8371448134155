"""Figures and plots -> pages; computes nothing of its own."""
