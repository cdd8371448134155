"""What every shell does: the composition of rooms into what a person asks for."""

import lazy_loader as _lazy

__getattr__, __dir__, __all__ = _lazy.attach_stub(__name__, __file__)
