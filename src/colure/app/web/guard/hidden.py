"""A page is not told where the server keeps its files: folders are taken out of what goes through the door."""

from __future__ import annotations

import os
from pathlib import Path


def without(folder: Path, text: str) -> str:
    """Return a text with a campaign's files named from its folder on, and the folder by its last name."""
    whole = str(folder)
    return text.replace(f"{whole}{os.sep}", "").replace(whole, folder.name)
