"""What every object that a user of the library is given keeps: arrays that cannot be changed, a short repr, an answer from `==`."""

from __future__ import annotations

import ast
import copy
import dataclasses
import importlib
import pickle
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import numpy as np
import pydantic
import pytest
import xarray as xr

import colure
from colure import values
from colure.app import services
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.model.files import save_dataset
from colure.model.pattern import build_pattern
from colure.waves.expansion import Expansion

SOURCE = Path(colure.__file__).parent
ROOMS = ("geometry", "waves", "model", "planning", "analysis", "instruments", "acquire", "twin", "report", "app")
#: Lines and characters of a repr that fit on a screen beside others.
MOST_LINES, MOST_CHARACTERS = 8, 1000


def dipole_pattern(folder: Path, name: str = "dipole.nc") -> colure.FilePattern:
    """A short dipole along x at two frequencies, from its closed form (Balanis, Antenna Theory, 4th ed., eq. 4-26, turned)."""
    theta, phi = np.deg2rad(np.arange(0.0, 181.0, 10.0)), np.deg2rad(np.arange(0.0, 360.0, 10.0))
    t, p = np.meshgrid(theta, phi, indexing="ij")
    field = np.sqrt(1.5) * np.array([np.cos(t) * np.cos(p), -np.sin(p)], complex)
    f = np.array([2.40e9, 2.45e9])
    save_dataset(
        build_pattern(np.stack([field, field]), frequency_hz=f, theta=theta, phi=phi, quantity="directivity"),
        folder / name,
    )
    return colure.open_pattern(folder / name)


def parts_of(one: Any) -> list[Any]:
    """Return what an object of ours holds; nothing of other libraries' objects."""
    if isinstance(one, xr.Dataset):
        return [variable.values for name, variable in one.variables.items() if name not in one.indexes]
    if isinstance(one, dict):
        return list(one.values())
    if isinstance(one, list | tuple):
        return list(one)
    if not type(one).__module__.startswith("colure."):
        return []
    if isinstance(one, pydantic.BaseModel):
        return [getattr(one, name) for name in type(one).model_fields]
    fields = [getattr(one, field.name) for field in dataclasses.fields(one)] if dataclasses.is_dataclass(one) else []
    return [*fields, *(list(one) if hasattr(type(one), "__iter__") and not isinstance(one, type) else [])]


def everything(*roots: tuple[str, Any]) -> Iterator[tuple[str, Any]]:
    """Yield (path, object) of all that can be reached from some objects, each once."""
    seen: dict[int, Any] = {}
    waiting = list(roots)
    while waiting:
        path, one = waiting.pop()
        if id(one) in seen:
            continue
        seen[id(one)] = one
        yield path, one
        waiting += [(f"{path} > {type(one).__name__}", part) for part in parts_of(one)]


@pytest.fixture
def given(tiny_campaign: Path, tmp_path: Path) -> list[tuple[str, Any]]:
    """What a user is given: of a campaign with a measured run, and of a file with a dipole's pattern at 2.45 GHz."""
    campaign, plan = services.make_plan(tiny_campaign)
    files = run_folder(tiny_campaign, "first")
    files.path.mkdir(parents=True)
    save_dataset(record_of_rehearsal(campaign, plan), files.record)
    opened = colure.open_campaign(tiny_campaign)
    run = opened.run("first")
    file = dipole_pattern(tmp_path)
    return [
        ("campaign", opened), ("plan", opened.plan()), ("run", run), ("record", run.record), ("pattern", run.process()),
        ("figures", run.evaluate()), ("findings", run.findings()), ("compared", run.compare(run)),
        ("file", file), ("file figures", file.evaluate()), ("cuts", file.cuts((0.0, 90.0))),
    ]  # fmt: skip


def test_objects_are_short_frozen_and_comparable(given):
    every = list(everything(*given))
    ours = [(path, one) for path, one in every if type(one).__module__.startswith("colure.")]
    arrays = [(path, one) for path, one in every if isinstance(one, np.ndarray)]
    assert len({type(one) for _, one in ours}) > 40 and len(arrays) > 100  # they were found
    long = {type(one).__name__: len(repr(one)) for _, one in ours
            if len(repr(one)) > MOST_CHARACTERS or repr(one).count("\n") >= MOST_LINES}  # fmt: skip
    assert long == {}
    assert sorted({path for path, one in arrays if one.flags.writeable}) == []
    faults = {}
    for _, one in ours:
        try:
            if (one == copy.copy(one)) is not True or (one != one) is not False or (one == 1) is not False:
                faults[type(one).__name__] = "not equal to its copy"
        except (ValueError, TypeError) as error:
            faults[type(one).__name__] = str(error)
    assert faults == {}


def all_classes() -> Iterator[type]:
    """Yield every class that a public name of a room stands for."""
    for room in ROOMS:
        package = importlib.import_module(f"colure.{room}")
        for name in package.__all__:
            if isinstance(getattr(package, name), type):
                yield getattr(package, name)


def test_every_data_class_with_arrays_says_so():
    """Also those that the walk does not meet: whoever adds one is told."""
    missing = []
    for path in sorted(SOURCE.rglob("*.py")):
        for one in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(one, ast.ClassDef) and not one.name.startswith("_"):
                marks = [ast.unparse(mark) for mark in one.decorator_list]
                types = [ast.unparse(field.annotation) for field in one.body if isinstance(field, ast.AnnAssign)]
                held = any(word in text for text in types for word in ("FloatArray", "ComplexArray", "IntArray", "BoolArray", "xr.Dataset")
                           if not text.startswith(("Callable", "Iterable")))  # fmt: skip
                if (
                    held
                    and any(mark.startswith("dataclass(frozen=True") for mark in marks)
                    and "holds_arrays" not in marks
                ):
                    missing.append(f"{path.relative_to(SOURCE)}: {one.name}")
    assert missing == []


def test_a_value_does_not_change_with_the_array_it_was_made_of_or_a_copy():
    given = np.ones((1, 2, 3), complex)
    one = Expansion(given, np.array([50.0]))
    assert given.flags.writeable  # the caller's own array stays as it was
    with pytest.raises(ValueError, match="read-only"):
        one.coefficients[0] = 2.0
    for other in (copy.deepcopy(one), pickle.loads(pickle.dumps(one)), dataclasses.replace(one)):
        assert other == one and not other.coefficients.flags.writeable
    assert one != Expansion(2.0 * given, np.array([50.0])) and one != "waves"
    assert repr(one) == "Expansion(coefficients=complex128(1, 2, 3), k=float64(1,))"
    with pytest.raises(TypeError, match="Expansion holds arrays and has no hash"):
        hash(one)


def test_values_are_compared_as_numbers_are_meant():
    a = np.array([1.0, np.nan])
    assert values.same(a, a.copy()) and not values.same(a, np.array([1.0, 2.0])) and not values.same(a, a[:1])
    assert values.same({"x": [a, "text"]}, {"x": [a.copy(), "text"]}) and not values.same([a], (a,))
    first = xr.Dataset({"x": ("n", a.copy())}, attrs={"unit": "dB"})
    assert values.same(first, first.copy(deep=True)) and not values.same(first, first.assign_attrs(unit="m"))
    kept = values.frozen(first)
    assert not kept["x"].values.flags.writeable and first["x"].values.flags.writeable
    assert values.frozen(kept) is kept
