"""The house: no module takes part in a circle of imports, and no name of a class stands for two things."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import grimp
import numpy as np
import pytest
from scipy.sparse import csr_array
from scipy.sparse.csgraph import connected_components

import colure

SOURCE = Path(colure.__file__).parent
#: Packages whose names are loaded when they are asked for: the stub beside `__init__` says from where.
DOORS = ("colure.analysis", "colure.app", "colure.app.services")


@pytest.fixture(scope="module")
def house() -> grimp.ImportGraph:
    """Every import of the package: also those inside functions, for types alone, and by way of a package's stub."""
    graph = grimp.build_graph("colure", cache_dir=None)
    for door in DOORS:
        stub = SOURCE.parent / door.replace(".", "/") / "__init__.pyi"
        for node in ast.parse(stub.read_text(encoding="utf-8")).body:
            if isinstance(node, ast.ImportFrom):
                graph.add_import(importer=door, imported=f"{door}.{node.module}")
    return graph


def circles(graph: grimp.ImportGraph) -> list[set[str]]:
    """Return the sets of modules that import each other, directly or by way of others (strongly connected components)."""
    modules = sorted(graph.modules)
    place = {name: index for index, name in enumerate(modules)}
    pairs = [(place[one], place[other]) for one in modules for other in graph.find_modules_directly_imported_by(one)]
    rows, columns = np.array(pairs).T
    ones = csr_array((np.ones(len(pairs)), (rows, columns)), shape=(len(modules), len(modules)))
    _, label = connected_components(ones, directed=True, connection="strong")
    sets = [{modules[i] for i in np.flatnonzero(label == group)} for group in np.flatnonzero(np.bincount(label) > 1)]
    return sorted(sets, key=len)


def test_no_module_takes_part_in_a_circle_of_imports(house):
    assert circles(house) == []


def test_a_planted_circle_is_found(house):
    """A corrector that asks the pipeline, which runs it: three modules of two rooms."""
    graph = grimp.build_graph("colure", cache_dir=None)
    graph.add_import(importer="colure.analysis.steps.drift_curve", imported="colure.analysis.pipeline.stages")
    found = circles(graph)
    assert len(found) == 1
    assert {
        "colure.analysis.steps.drift_curve",
        "colure.analysis.steps.drift",
        "colure.analysis.pipeline.stages",
    } <= found[0]


def test_a_circle_by_way_of_a_stub_is_found(house):
    """A module that takes a name from its own package's front would load that package's other files."""
    house.add_import(importer="colure.app.services.processing", imported="colure.app.services")
    try:
        assert any("colure.app.services.processing" in one for one in circles(house))
    finally:
        house.remove_import(importer="colure.app.services.processing", imported="colure.app.services")


def test_every_file_of_a_room_lies_in_a_room_of_its_own():
    """Nothing but the doors, and what the layer check names, lies beside the rooms of analysis and app."""
    beside = {room: {path.name for path in (SOURCE / room).glob("*.py")} for room in ("analysis", "app")}
    assert beside == {"analysis": {"__init__.py"}, "app": {"__init__.py", "cli.py", "notebook.py"}}


def defined(text: str) -> set[str]:
    """Return the classes and the named types of a module: capitals first, small letters after."""
    names = set()
    for node in ast.parse(text).body:
        if isinstance(node, ast.ClassDef):
            names.add(node.name)
        elif isinstance(node, ast.Assign | ast.AnnAssign):
            targets = node.targets if isinstance(node, ast.Assign) else [node.target]
            names.update(one.id for one in targets if isinstance(one, ast.Name))
    return {name for name in names if re.fullmatch(r"_?[A-Z]\w*[a-z]\w*", name)}


def doubles(texts: dict[str, str]) -> dict[str, list[str]]:
    """Return the names that several modules define, a leading underscore counted as no difference, with these modules."""
    where: dict[str, list[str]] = {}
    for module, text in texts.items():
        for name in defined(text):
            where.setdefault(name.removeprefix("_"), []).append(module)
    return {name: modules for name, modules in where.items() if len(modules) > 1}


def test_a_class_name_stands_for_one_thing():
    """If this fails: the newer one of the two gets a name that says more."""
    texts = {str(path.relative_to(SOURCE)): path.read_text(encoding="utf-8") for path in SOURCE.rglob("*.py")}
    assert doubles(texts) == {}


def test_a_planted_double_is_found():
    one = "class Gate:\n    pass\n\nKind = str\nLIMIT = 3\n"
    two = "Kind: type = int\nLIMIT = 4\n\nclass _Gate:\n    pass\n"
    assert doubles({"one.py": one, "two.py": two, "three.py": "class Other: ...\n"}) == {
        "Gate": ["one.py", "two.py"],
        "Kind": ["one.py", "two.py"],
    }


#: Where a logarithm is written out: the one place for decibels, recommendations as they are printed, and the simulated
#: chamber, which shares nothing with what it judges.
OWN_LOGARITHMS = ("geometry/conventions.py", "analysis/verdict/masks.py", "twin/")


def written_out(text: str) -> int:
    """Return how many decibels a module makes by hand: 10 or 20 times np.log10, or such a product turned round."""
    products = [
        node for node in ast.walk(ast.parse(text)) if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Mult)
    ]
    return sum(bool(re.match(r"-?(10|20)(\.0)? \* (float\()?np\.log10\(", ast.unparse(node))) for node in products)


def test_decibels_are_made_in_one_place():
    """If this fails: `amplitude_db` and `power_db` of geometry.conventions are the place."""
    found = {
        name: written_out(path.read_text(encoding="utf-8"))
        for path in SOURCE.rglob("*.py")
        if not (name := path.relative_to(SOURCE).as_posix()).startswith(OWN_LOGARITHMS)
    }
    assert not any(found.values()), {name: count for name, count in found.items() if count}


def test_a_planted_logarithm_is_counted():
    assert written_out("x = 20.0 * np.log10(a) - 10 * float(np.log10(b))\ny = -20.0 * np.log10(c)\n") == 3
    assert written_out("x = amplitude_db(a) + 25.0 * np.log10(b)\n") == 0


def test_commands_speak_to_a_terminal_in_one_way_that_takes_no_foreign_text_for_an_order():
    """`say` for lines, `console` for tables; styles are objects, since words in brackets are shown as they are."""
    app = Path(__file__).parents[1] / "src" / "colure" / "app"
    texts = {path.name: path.read_text(encoding="utf-8") for path in app.rglob("*.py")}
    assert [name for name, text in texts.items() if "click.echo(" in text] == ["say.py"], "say(...) instead"
    assert not [name for name, text in texts.items() if " Console(" in text], "console() of app/terminal/consoles.py"
    styled = [name for name, text in texts.items() if name.endswith("screens.py") and re.search(r"\[/\w*\]", text)]
    assert not styled, "Text(words, style) instead of [style]words[/]"
