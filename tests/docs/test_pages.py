"""The documentation's commands and examples, executed in the order they stand, and its gallery held to its residuals."""

from __future__ import annotations

import contextlib
import importlib.util
import io
import re
import shlex
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner

from colure.app import services
from colure.app.cli import main
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.model.files import save_dataset

DOCS = Path(__file__).parents[2] / "docs"
BLOCK = re.compile(r'^```(console|python|toml|csv)(?: title="([^"]+)")?\n(.*?)^```', re.DOTALL | re.MULTILINE)
PAGES = sorted(page for folder in (".", "how-to", "explanation") for page in (DOCS / folder).glob("*.md"))
#: Commands whose answer may be bad news (a verdict; a rehearsal with a figure too many outside its interval).
BAD_NEWS = {
    "colure rehearse my-campaign": (0, 1),
    "colure verdict my-campaign panel.toml": (0, 1),
    "colure verdict my-campaign my-campaign/limits.toml": (0, 1),
}
SMALL = 'start_ghz = 24.00\nstop_ghz = 24.25\npoints = 2\nwanted_level_db = -20\nscheme = "two-pass"\n'


def blocks(page: Path) -> list[tuple[str, str, str]]:
    """Return (kind, file, text) of what a page says to do; files only where they are named."""
    found = BLOCK.findall(page.read_text(encoding="utf-8"))
    return [(kind, title, text) for kind, title, text in found if title or kind in ("console", "python")]


def run(line: str) -> None:
    """Run one command line as the terminal would."""
    words = shlex.split(line, comments=True)
    assert words[0] == "colure", f"{line}: only colure itself is run here; mark others as sh"
    outcome = CliRunner().invoke(main, words[1:])
    if outcome.exception is not None and not isinstance(outcome.exception, SystemExit):
        raise outcome.exception
    assert outcome.exit_code in BAD_NEWS.get(line, (0,)), f"{line}: exit code {outcome.exit_code}\n{outcome.output}"


@pytest.fixture(scope="session")
def first_look(tmp_path_factory):
    """The tutorial's campaign with a record; pages work on copies of it."""
    folder = tmp_path_factory.mktemp("first-look") / "my-campaign"
    services.new_campaign(folder)
    (folder / "goal.toml").write_text(f'name = "First look"\n{SMALL}', encoding="utf-8")
    made = run_folder(folder, "first")
    made.path.mkdir(parents=True)
    save_dataset(record_of_rehearsal(*services.make_plan(folder)), made.record)
    return folder


@pytest.mark.parametrize("page", [page for page in PAGES if blocks(page)], ids=lambda page: page.stem)
def test_what_a_page_says_works(page, tmp_path, monkeypatch, request):
    monkeypatch.chdir(tmp_path)
    if page.stem == "connect-your-positioner":
        pytest.skip("needs a second terminal; tests/app/test_own_positioner.py goes through it")
    if page.stem not in ("tutorial", "coordinates"):
        # These pages go on with the tutorial's campaign, measured.
        shutil.copytree(request.getfixturevalue("first_look"), tmp_path / "my-campaign")
    names: dict[str, object] = {}
    for kind, title, text in blocks(page):
        if title:
            Path(title).write_text(text, encoding="utf-8")
        elif kind == "console":
            for line in text.splitlines():
                run(line)
        else:
            with contextlib.redirect_stdout(io.StringIO()):
                exec(compile(text, page.name, "exec"), names)


@pytest.mark.parametrize("example", sorted((DOCS / "gallery").glob("*.py")), ids=lambda path: path.stem)
def test_gallery_keeps_its_residual(example):
    """Every module names the source of its published values beside them."""
    spec = importlib.util.spec_from_file_location(example.stem, example)
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    _, residual, words = module.draw()
    print(words)
    assert residual <= module.LIMIT


def test_every_page_is_listed_and_every_link_leads_somewhere():
    listed = (DOCS.parent / "mkdocs.yml").read_text(encoding="utf-8")
    for page in PAGES:
        assert str(page.relative_to(DOCS)) in listed, page.name
        for target in re.findall(r"\]\(([^)#:]+\.md)\)", page.read_text(encoding="utf-8")):
            made = "reference/" in target  # pages that the build makes
            assert made or (page.parent / target).resolve().is_file(), f"{page.name}: {target}"
