"""What every count over drawn chambers is asked from the command line."""

from __future__ import annotations

import argparse


def arguments(what: str) -> argparse.ArgumentParser:
    """Return a parser: names of scenarios, how many draws of each, the first seed, how many processes."""
    parser = argparse.ArgumentParser(description=what)
    parser.add_argument("names", nargs="*", help="scenarios; all if none is named")
    parser.add_argument("--draws", type=int, default=25, help="campaigns of each")
    parser.add_argument("--first", type=int, default=1, help="first seed")
    parser.add_argument("--processes", type=int, default=1)
    return parser
