"""Protocols for analyzers and axes, and the drivers that speak to real (or simulated) ones."""

import lazy_loader as _lazy

__getattr__, __dir__, __all__ = _lazy.attach_stub(__name__, __file__)
