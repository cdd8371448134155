"""Tests of arrays whose elements have commands."""
