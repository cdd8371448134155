"""Write the page's TypeScript types from the server's own models: bodies, answers, results of slow work, live messages.

Usage: python web/make_types.py [--check]

Reads the table of doors: a body is a pydantic model, an answer is what the handler is declared to return. With --check
nothing is written; the exit code says whether the file is current.
"""

from __future__ import annotations

import functools
import sys
import types
import typing
from pathlib import Path
from typing import Any, Literal, Union, get_args, get_origin, get_type_hints

from pydantic import BaseModel

from colure.app.web.routes import DOORS, RESULTS
from colure.app.web.scan import messages

TARGET = Path(__file__).parent / "src" / "request" / "types.ts"
HEAD = "/** Made by web/make_types.py from the server's models. Do not edit: change the models and run it again. */\n\n"
PLAIN = {float: "number", int: "number", str: "string", bool: "boolean", type(None): "null", Any: "unknown"}


class Writer:
    """Collects the interfaces that come up while types are written down."""

    def __init__(self) -> None:
        self.interfaces: dict[str, str] = {}

    def of(self, kind: Any) -> str:
        """Return a Python type as TypeScript; raises `TypeError` for one that has no counterpart."""
        if kind in PLAIN:
            return PLAIN[kind]
        if isinstance(kind, type) and (issubclass(kind, BaseModel) or typing.is_typeddict(kind)):
            self._interface(kind)
            return kind.__name__
        origin, parts = get_origin(kind), get_args(kind)
        if origin in (typing.Annotated, typing.NotRequired, typing.Required):
            return self.of(parts[0])
        if origin is Literal:
            return " | ".join(f'"{p}"' if isinstance(p, str) else str(p).lower() for p in parts)
        if origin in (Union, types.UnionType):
            return " | ".join(dict.fromkeys(self.of(p) for p in parts))
        if origin is list:
            inner = self.of(parts[0])
            return f"({inner})[]" if " " in inner else f"{inner}[]"
        if origin is dict:
            return f"Record<string, {self.of(parts[1])}>"
        if origin is tuple:
            return f"[{', '.join(self.of(p) for p in parts)}]"
        raise TypeError(f"{kind!r} has no counterpart in the page's types")

    def _interface(self, kind: Any) -> None:
        if kind.__name__ in self.interfaces:
            return
        self.interfaces[kind.__name__] = ""  # it may name itself
        if issubclass(kind, BaseModel):
            entries = {name: (info.annotation, info.is_required()) for name, info in kind.model_fields.items()}
        else:
            hints = get_type_hints(kind, include_extras=True)
            entries = {
                name: (hint, get_origin(hint) is not typing.NotRequired and name in kind.__required_keys__)
                for name, hint in hints.items()
            }
        lines = [f"  {name}{'' if needed else '?'}: {self.of(hint)};" for name, (hint, needed) in entries.items()]
        self.interfaces[kind.__name__] = f"export interface {kind.__name__} {{\n" + "\n".join(lines) + "\n}\n"


def written() -> str:
    """Return the whole file."""
    writer = Writer()
    asked: dict[str, list[str]] = {"GET": [], "POST": []}
    for door in DOORS:
        if door.handler is None:
            continue
        handler = door.handler.func if isinstance(door.handler, functools.partial) else door.handler
        answer = writer.of(get_type_hints(handler)["return"])
        body = "undefined" if door.body is None else writer.of(door.body)
        asked[door.method].append(f'  "{door.path}": {{ body: {body}; answer: {answer} }};')
    results = [f'  "{path}": {writer.of(kind)};' for path, kind in RESULTS.items()]
    live = [writer.of(kind) for kind in (messages.Status, messages.Idle, messages.Grid, messages.Alive)]
    parts = [
        *writer.interfaces.values(),
        "/** What is read, by path. */\nexport interface Reads {\n" + "\n".join(asked["GET"]) + "\n}\n",
        "/** What is asked with a body, by path. */\nexport interface Asks {\n" + "\n".join(asked["POST"]) + "\n}\n",
        "/** What slow work ends with, by the path that begins it. */\nexport interface Results {\n"
        + "\n".join(results)
        + "\n}\n",
        f"export type LiveMessage = {' | '.join(live)};\n",
    ]
    return HEAD + "\n".join(parts)


def main() -> int:
    """Write the file, or say whether it is current."""
    text = written()
    if "--check" in sys.argv[1:]:
        current = TARGET.is_file() and TARGET.read_text(encoding="utf-8") == text
        print("current" if current else f"{TARGET.name} is not current: python web/make_types.py")
        return 0 if current else 1
    TARGET.parent.mkdir(parents=True, exist_ok=True)
    TARGET.write_text(text, encoding="utf-8")
    print(f"{TARGET.name}: {text.count('export interface')} interfaces")
    return 0


if __name__ == "__main__":
    sys.exit(main())
