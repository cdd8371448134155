"""The page of a used or missing link has the colours of the control room, and asks nothing of the server."""

from __future__ import annotations

import re
from pathlib import Path

from colure.app.web.guard.refused_page import STYLE, refused_page

SHEET = Path(__file__).parents[4] / "web" / "src" / "style.css"


def colours(text: str) -> list[dict[str, str]]:
    """Return the colours by name of every `:root` that sets some, light before dark."""
    rows = [
        dict(re.findall(r"--([a-z-]+):\s*(#[0-9a-f]{6})", block)) for block in re.findall(r":root[^{]*{([^}]*)}", text)
    ]
    return [row for row in rows if row]


def test_colours_are_those_of_the_control_room():
    light, dark = colours(SHEET.read_text("utf-8"))[:2]
    own_light, own_dark = colours(STYLE)
    assert own_light.items() <= light.items() and own_dark.items() <= dark.items()
    # Each is set in both: none of the light ones is left over in the dark.
    assert own_light.keys() == own_dark.keys() and len(own_light) > 5


def test_nothing_is_fetched_or_run_and_words_stay_words():
    page = refused_page("<script>alert(1)</script> was used").decode()
    assert "<script" not in page and "&lt;script&gt;" in page
    assert not re.findall(r"(?:src|href)=\"(?!/\"|data:,\")", page) and "url(" not in page and "http" not in page
