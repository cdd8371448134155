"""Colure: plan, measure, correct and report antenna patterns on a spherical range."""

__version__ = "0.1.0"
