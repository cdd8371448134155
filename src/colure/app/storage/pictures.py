"""Photographs of a set-up: looked at before they are kept, and made small and anonymous before a report shows them."""

from __future__ import annotations

import io
import warnings
from pathlib import Path
from typing import TYPE_CHECKING

from colure.errors import InputError

if TYPE_CHECKING:
    from PIL import Image

#: Formats that are read; what a file's name says does not count.
FORMATS = ("JPEG", "PNG", "WEBP")
#: A picture of more pixels is refused before it is unpacked.
MOST_PIXELS = 120_000_000
#: Longest side of a picture in a report, and how large it may be.
LONGEST_SIDE, LARGEST_BYTES = 1400, 300_000
#: Qualities that are tried, best first.
QUALITIES = (85, 75, 60, 45, 30)


def require_picture(data: bytes, name: str) -> None:
    """Raise `InputError` naming a picture that cannot be read whole."""
    _opened(data, name)


def report_picture(path: Path) -> bytes:
    """Return a photograph as a report shows it: JPEG, upright, of limited size, without anything that the camera noted.

    Raises
    ------
    InputError
        If there is no such file, or it is no whole picture; it is named.
    """
    from PIL import Image, ImageOps

    try:
        data = path.read_bytes()
    except OSError as error:
        raise InputError([f"photograph = {path.name}: cannot be read: {error.strerror}"]) from None
    # The camera's note on which way is up goes with the other notes: the picture itself is turned.
    upright = ImageOps.exif_transpose(_opened(data, path.name))
    if upright.mode in ("RGBA", "LA", "PA", "P"):
        seen = upright.convert("RGBA")
        ground = Image.new("RGBA", seen.size, "white")
        upright = Image.alpha_composite(ground, seen)
    small = upright.convert("RGB")
    small.thumbnail((LONGEST_SIDE, LONGEST_SIDE))
    # Pixels alone go into the new picture.
    clean = Image.new("RGB", small.size)
    clean.paste(small)
    packed = b""
    for quality in QUALITIES:
        out = io.BytesIO()
        clean.save(out, "JPEG", quality=quality, optimize=True)
        packed = out.getvalue()
        if len(packed) <= LARGEST_BYTES:
            break
    return packed


def _opened(data: bytes, name: str) -> Image.Image:
    """Return a picture, read to its end."""
    from PIL import Image

    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore", Image.DecompressionBombWarning)
            picture = Image.open(io.BytesIO(data), formats=FORMATS)
        pixels = picture.size[0] * picture.size[1]
        if pixels > MOST_PIXELS:
            raise InputError(
                [
                    f"photograph = {name}: {pixels / 1e6:.0f} million pixels: must be at most {MOST_PIXELS / 1e6:.0f} million"
                ]
            )
        picture.load()
    except InputError:
        raise
    except Exception as error:  # the reader raises whatever its decoders meet
        # A reader that knows no such format names the object in memory.
        said = "of no known format" if "BytesIO" in str(error) else str(error) or type(error).__name__
        raise InputError(
            [
                f"photograph = {name}: is no whole picture ({said[:80]}); must be a JPEG, PNG or WebP file that can be opened"
            ]
        ) from None
    return picture
