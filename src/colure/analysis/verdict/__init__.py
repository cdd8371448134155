"""Figures and cuts against the limits and masks of a specification."""
