"""Composition root: one service and its thin shells."""
