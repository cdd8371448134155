"""A chamber with known truth behind the same sockets as real instruments.

Imports only `geometry` and `model`: nothing here shares mathematics with what it judges.
Fields are closed-form sums over elementary dipoles.
"""

import lazy_loader as _lazy

__getattr__, __dir__, __all__ = _lazy.attach_stub(__name__, __file__)
