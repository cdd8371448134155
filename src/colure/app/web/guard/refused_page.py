"""What somebody sees whose link was used, is too old or is missing: a page in words, not an answer for programs.

It has the look of the control room, light or dark as the browser prefers, and needs neither script nor any file: whoever sees
it may fetch none.
"""

from __future__ import annotations

import base64
import hashlib
from html import escape

#: Colours of web/src/style.css; a test holds them together.
STYLE = (
    ":root{--paper:#f4f6f7;--card:#ffffff;--ink:#17242e;--quiet:#4d5c67;--edge:#7f8f9b;--co:#0b5d7a;--warn:#7a4a00;"
    "--warn-paper:#fff3d6;color-scheme:light dark;font:15px/1.45 system-ui,'DejaVu Sans',sans-serif}"
    "@media (prefers-color-scheme:dark){:root{--paper:#10171d;--card:#18222a;--ink:#e6edf2;--quiet:#a6b7c2;--edge:#6d818f;"
    "--co:#6bb8d6;--warn:#f2c26b;--warn-paper:#33270f}}"
    "*{box-sizing:border-box}body{margin:0;background:var(--paper);color:var(--ink);overflow-wrap:anywhere}"
    "header{padding:.6rem .8rem;background:var(--card);border-bottom:1px solid var(--edge);font-weight:700;letter-spacing:.03em}"
    "main{max-width:44rem;margin:1rem auto;padding:0 .8rem}"
    "section{background:var(--card);border:1px solid var(--edge);border-radius:8px;padding:.8rem 1rem}"
    "h1{margin:0 0 .3rem;font-size:1.25rem;line-height:1.2}p{margin:.35rem 0}ul{padding-left:1.2rem}li{margin:.4rem 0}"
    "a{color:var(--co)}a:focus-visible{outline:3px solid var(--co);outline-offset:2px}"
    ".way{display:inline-block;margin:.3rem 0;padding:.35rem .8rem;border-radius:6px;background:var(--co);color:var(--paper);"
    "font-weight:600;text-decoration:none}code{font-family:ui-monospace,'DejaVu Sans Mono',monospace;font-size:.9em}"
    ".warn{background:var(--warn-paper);color:var(--warn);border-left:4px solid var(--warn);border-radius:4px;padding:.4rem .6rem}"
    ".quiet{color:var(--quiet)}@media (min-width:2200px){:root{font-size:22px}}"
)
#: This page may style itself with these very words; nothing else is fetched, run or framed.
REFUSED_POLICY = (
    f"default-src 'none'; style-src 'sha256-{base64.b64encode(hashlib.sha256(STYLE.encode()).digest()).decode()}'; "
    "img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)
HEAD = (
    '<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1">'
    f'<link rel="icon" href="data:,"><title>Colure: no way in</title><style>{STYLE}</style>'
)
BODY = (
    "<header>Colure</header><main><section><h1>This link does not open the control room</h1>"
    "<p>{told}.</p><ul><li>Every link opens once, in one browser, for a short time. In that browser the page stays open:<br>"
    '<a class="way" href="/">go to the control room</a></li><li>Who is in already can invite: the button <b>invite</b> at the '
    "top of the page makes a new link.</li><li>Else look where <code>colure serve</code> was started: it prints the link. "
    "<span class=quiet>While no scan runs, start it again for a new one.</span></li></ul>"
    '<p class="warn">Nothing is stopped from this page: a scan that runs goes on. In danger press the emergency stop.</p>'
    "</section></main></html>"
)


def wants_page(accept: str) -> bool:
    """Tell whether a person's browser asks, by the `Accept` header of its request."""
    return "text/html" in accept


def refused_page(told: str) -> bytes:
    """Return the page as UTF-8; `told` says what is wrong."""
    return (HEAD + BODY.format(told=escape(told[:1].upper() + told[1:]))).encode()
