"""What the documentation draws and lists by itself: pictures, the gallery, commands, TOML files and the Python doors."""

from __future__ import annotations

import ast
import importlib
import io
import re
import sys
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import click
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, Files
from pydantic import BaseModel

HERE = Path(__file__).parent
SOURCE = HERE.parent / "src" / "colure"
ROOMS = ("geometry", "waves", "model", "planning", "analysis", "instruments", "acquire", "twin", "report", "app")
GALLERY = ("half_wave_dipole", "horn_loss", "power_grid", "base_station_element")
DISPLAY = re.compile(r"\$\$(.+?)\$\$", re.DOTALL)
INLINE = re.compile(r"\\\((.+?)\\\)")


def on_files(files: Files, config: MkDocsConfig) -> Files:
    """Add what is generated to the pages that were written."""
    for name in (str(HERE), str(HERE / "gallery")):
        if name not in sys.path:
            sys.path.insert(0, name)
    pictures = importlib.import_module("pictures")
    rooms = importlib.import_module("rooms")
    for name, draw in {**pictures.PICTURES, "rooms": rooms.rooms}.items():
        files.append(File.generated(config, f"pictures/{name}.svg", content=_svg(draw())))
    pages = {"commands": commands(), "files": toml_files(), "figures": figures(), "python": python_doors()}
    text, drawn = gallery()
    for name, content in drawn.items():
        files.append(File.generated(config, f"pictures/{name}.svg", content=content))
    for name, content in {**pages, "gallery": text}.items():
        files.append(File.generated(config, f"reference/{name}.md", content=content))
    return files


def on_page_markdown(markdown: str, **_: Any) -> str:
    """Turn formulas into MathML, which browsers draw without a script."""
    from latex2mathml.converter import convert

    parts = re.split(r"(```.*?```|`[^`\n]*`)", markdown, flags=re.DOTALL)
    for index in range(0, len(parts), 2):
        text = DISPLAY.sub(lambda found: "\n\n" + convert(found[1].strip(), display="block") + "\n\n", parts[index])
        parts[index] = INLINE.sub(lambda found: f"<span>{convert(found[1])}</span>", text)
    return "".join(parts)


def _svg(figure: Any) -> str:
    out = io.StringIO()
    figure.savefig(out, format="svg")
    return out.getvalue()


def gallery() -> tuple[str, dict[str, str]]:
    """Return the gallery's page and its pictures; each states its source and the difference between the curves."""
    lines = [
        "# Gallery: held against published curves",
        "",
        "Each picture is drawn anew when these pages are built; the tests hold every residual below the limit given.",
    ]
    drawn = {}
    for name in GALLERY:
        module = importlib.import_module(name)
        title, _, rest = str(module.__doc__).strip().partition("\n")
        figure, residual, words = module.draw()
        if residual > module.LIMIT:
            raise ValueError(f"gallery {name}: residual {residual:.2e}, must be at most {module.LIMIT:.0e}")
        drawn[name] = _svg(figure)
        lines += ["", f"## {title.rstrip('.')}", "", rest.strip(), "", f"![{title}](../pictures/{name}.svg)", "",
                  f"**Residual.** {words[0].upper()}{words[1:]} (limit {module.LIMIT:.0e}).  ", f"**Source.** {module.SOURCE}."]  # fmt: skip
        lines += [
            "",
            f'??? note "gallery/{name}.py"',
            "",
            *_indented("```python\n" + (HERE / "gallery" / f"{name}.py").read_text(encoding="utf-8") + "```"),
        ]
    return "\n".join(lines), drawn


def _indented(text: str) -> list[str]:
    return [f"    {line}" if line else "" for line in text.splitlines()]


def commands() -> str:
    """Return every command's own help."""
    from colure.app.cli import main

    lines = [
        "# Commands",
        "",
        "`colure COMMAND --help` says the same. Exit codes: 0 good, 1 a check failed, 2 bad input, 3 instrument or safety stop.",
    ]
    for name, command in sorted(main.commands.items()):
        with click.Context(command, info_name=f"colure {name}", max_content_width=100) as context:
            lines += ["", f"## colure {name}", "", "```text", command.get_help(context), "```"]
    return "\n".join(lines)


def toml_files() -> str:
    """Return every TOML file's tables: entry, type, unit, limits, default."""
    from colure.instruments.line_profile import LineProfile
    from colure.instruments.profile import AnalyzerProfile, GcodeProfile, PowerProfile
    from colure.model import Chamber, Device, Evaluation, Goal, Recipe, SimulatedChamber, Specification
    from colure.model.equipment import Register
    from colure.model.report_settings import ReportSettings

    files: dict[str, type[BaseModel]] = {
        "goal.toml": Goal, "chamber.toml": Chamber, "device.toml": Device, "evaluation.toml": Evaluation, "recipe.toml": Recipe,
        "report.toml": ReportSettings, "equipment.toml": Register,
        "a specification": Specification, "twin.toml (the simulated chamber's truth)": SimulatedChamber,
        "an analyzer's profile": AnalyzerProfile, "a power receiver's profile": PowerProfile,
        "a line controller's profile": LineProfile, "a G-code controller's profile": GcodeProfile,
    }  # fmt: skip
    lines = [
        "# TOML files",
        "",
        "Every entry with its unit, limits and default. What is outside its limits is refused with field, value, limit and unit, before anything moves.",
    ]
    for name, model in files.items():
        lines += ["", f"## {name}", *_tables(model, "", set())]
    return "\n".join(lines)


def figures() -> str:
    """Return every figure that an evaluation without extra wishes knows: name, unit, definition, source."""
    from colure.model import Evaluation
    from colure.model.definitions import definitions_for

    lines = ["# Figures", "", "What `colure evaluate` reads. `evaluation.toml` asks for more of the same kinds.", "",
             "IEEE Std 145-2013 and the 3GPP documents were not read themselves: these definitions are worded from memory.", "",
             "| name | figure | unit | definition | source |", "|---|---|---|---|---|"]  # fmt: skip
    every = definitions_for(
        Evaluation(), band=True, reflection=True, circular=True, hands=True, reflection_measured=True
    )
    return "\n".join(
        [*lines, *(f"| `{one.name}` | {one.label} | {one.unit} | {one.text} | {one.source} |" for one in every)]
    )


def _tables(model: type[BaseModel], prefix: str, seen: set[type]) -> Iterator[str]:
    from colure.model.entries import choice_of, entries_of

    seen.add(model)
    yield ""
    yield (model.__doc__ or "").strip().split("\n\n")[0]
    yield ""
    yield "| entry | meaning | type | unit | limits | default |"
    yield "|---|---|---|---|---|---|"
    below: list[tuple[str, type[BaseModel]]] = []
    for one, tables in entries_of(model):
        below += [(f"{prefix}{one.name}", t) for t in tables if t not in seen]
        yield f"| `{one.name}` | {one.meaning} | {one.kind} | {one.unit} | {one.limits} | {one.default} |"
    several = Counter(name for name, _ in below)
    for name, table in below:
        if table in seen:
            continue
        kind = choice_of(table) if several[name] > 1 else ""
        shown = f'[{name}], kind = "{kind}"' if kind else f"[{name}]"
        label = f"{name}, {kind}" if kind else name
        yield ""
        yield f'### {shown} {{ data-toc-label="{label}" }}'
        yield from _tables(table, f"{name}.", seen)


def python_doors() -> str:
    """Return a directive for every name that a room's door offers."""
    lines = ["# Python", "", "One door a room; `import colure` opens campaigns. Names that are not listed may change."]
    lines += ["", "## colure", *_directives(SOURCE / "__init__.pyi", "colure")]
    for room in ROOMS:
        lines += [
            "",
            f"## colure.{room}",
            "",
            importlib.import_module(f"colure.{room}").__doc__ or "",
            *_directives(SOURCE / room / "__init__.pyi", f"colure.{room}"),
        ]
    return "\n".join(lines)


def _directives(stub: Path, package: str) -> Iterator[str]:
    for node in ast.parse(stub.read_text(encoding="utf-8")).body:
        if isinstance(node, ast.ImportFrom) and node.module:
            for name in node.names:
                yield ""
                yield f"::: {package}.{node.module}.{name.name}"
