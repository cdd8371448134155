"""Colure: plan, measure, correct and report antenna patterns on a spherical range.

`open_campaign(folder)` is the door for notebooks and scripts; every room (`colure.geometry`, `colure.waves`, ...) has its own.
Nothing is imported before it is used.
"""

import lazy_loader as _lazy

__version__ = "0.1.0"

__getattr__, __dir__, __all__ = _lazy.attach_stub(__name__, __file__)
