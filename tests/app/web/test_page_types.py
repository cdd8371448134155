"""The page's types are made from the server's models: the committed file is what the models give now."""

from __future__ import annotations

import importlib.util
from pathlib import Path
from typing import Literal, NotRequired, TypedDict

import pytest
from pydantic import BaseModel

SCRIPT = Path(__file__).parents[3] / "web" / "make_types.py"


def maker():
    spec = importlib.util.spec_from_file_location("make_types", SCRIPT)
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


class Inner(TypedDict):
    level: list[float | None]
    pair: tuple[str, int]
    note: NotRequired[str]


class Given(TypedDict):
    inner: dict[str, Inner]


class Asked(BaseModel):
    kind: Literal["one", "two"]
    many: int = 3


def test_the_committed_types_are_current():
    made = maker()
    assert made.TARGET.read_text("utf-8") == made.written(), "python web/make_types.py"


def test_models_become_interfaces():
    writer = maker().Writer()
    assert writer.of(list[Asked]) == "Asked[]"
    assert writer.interfaces["Asked"].splitlines()[1:-1] == [
        '  kind: "one" | "two";',
        "  many?: number;",
    ]
    assert writer.of(Given) == "Given"
    assert writer.interfaces["Given"].splitlines()[1] == "  inner: Record<string, Inner>;"
    assert writer.interfaces["Inner"].splitlines()[1:-1] == [
        "  level: (number | null)[];",
        "  pair: [string, number];",
        "  note?: string;",
    ]


def test_what_has_no_counterpart_is_refused():
    with pytest.raises(TypeError, match="no counterpart"):
        maker().Writer().of(complex)
