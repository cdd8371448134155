"""What somebody sees whose link was used, is too old or is missing: a page in words, not an answer for programs."""

from __future__ import annotations

from html import escape

PAGE = (
    '<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width">'
    '<link rel="icon" href="data:,"><title>Colure: no way in</title><main><h1>This link does not open the control room</h1>'
    "<p>{told}.</p><ul><li>Every link opens once, in one browser, for a short time. In that browser the page stays open: "
    '<a href="/">go to the control room</a>.</li><li>Who is in already can invite: the button <b>invite</b> at the top of the page '
    "makes a new link.</li><li>Else look where <code>colure serve</code> was started: it prints the link. While no scan runs, start "
    "it again for a new one.</li></ul>"
    "<p>Nothing is stopped from this page: a scan that runs goes on. In danger press the emergency stop.</p></main></html>"
)


def wants_page(accept: str) -> bool:
    """Tell whether a person's browser asks, by the `Accept` header of its request."""
    return "text/html" in accept


def refused_page(told: str) -> bytes:
    """Return the page as UTF-8; `told` says what is wrong."""
    return PAGE.format(told=escape(told[:1].upper() + told[1:])).encode()
