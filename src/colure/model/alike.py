"""Names of states that a person or a file system may take for one."""

from __future__ import annotations

from collections.abc import Sequence


def alike_names(names: Sequence[str]) -> str:
    """Return what is wrong with names that differ by capital letters only; empty if none do.

    Results of a state are kept in a folder of its name, and many file systems do not tell capitals apart.
    """
    seen: dict[str, str] = {}
    for name in names:
        other = seen.setdefault(name.casefold(), name)
        if other != name:
            return (
                f"{other!r} and {name!r} differ by capital letters only; each must differ by more, since many disks take them "
                "for one folder: rename one of them"
            )
    return ""
