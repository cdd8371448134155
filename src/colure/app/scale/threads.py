"""How many threads the linear algebra of one process takes.

A campaign's matrices are small: threads that share one of them wait for each other. Figures with intervals took 2.8 times the
processor time with two threads, and the wall time grew too while something else ran.
"""

from __future__ import annotations

import os

#: What numerical libraries read when they are loaded.
ONE_THREAD = ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS")


def one_thread() -> None:
    """Let linear algebra that is loaded after this take one thread, unless the user's environment says how many."""
    for name in ONE_THREAD:
        os.environ.setdefault(name, "1")
