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

from colure.app.cli import main
from colure.app.scale import batch, executors
from tests.docs import worlds
from tests.docs.commands import DOCS, NOT_RUN, PAGES, lines_of, plain

BLOCK = re.compile(r'^```(console|sh|python|toml|csv)(?: title="([^"]+)")?\n(.*?)^```', re.DOTALL | re.MULTILINE)
#: Commands whose answer may be bad news (a verdict; a rehearsal with a figure too many outside its interval).
BAD_NEWS = {
    "colure compare my-beams second --state b01": (0, 1),  # the second record is of another unit
    "colure rehearse my-campaign": (0, 1),
    "colure verdict my-campaign panel.toml": (0, 1),
    "colure verdict my-campaign my-campaign/limits.toml": (0, 1),
    "colure verdict far.nc limits.toml": (0, 1),
    "colure evaluate 'campaigns/*' --specification limits.toml --table figures.csv": (0, 1),
    # With a coarse grid or a device at hand that is not the declared one, a figure may contradict the declaration.
    "colure evaluate my-horn": (0, 1),
    "colure evaluate my-sensor": (0, 1),
    "colure evaluate my-campaign --run boxes": (0, 1),
}
#: Fewer bytes hold no picture.
LEAST_PICTURE = 5000
#: Pages that begin with nothing.
FROM_NOTHING = ("tutorial", "coordinates", "simulate-your-device", "many-beams", "measure-an-array", "half-sphere-of-a-horn", "circular-patch",
                "measure-power-only", "take-out-a-bounce")  # fmt: skip


#: The guide of every daily job; each ends in a picture that its own commands make.
DAILY = ("connect-your-positioner", "measure-one-cut", "measure-gain", "half-sphere-of-a-horn", "circular-patch", "many-beams", "measure-an-array",
         "measure-power-only", "work-with-a-file", "report-for-a-customer")  # fmt: skip


def blocks(page: Path) -> list[tuple[str, str, str]]:
    """Return (kind, file, text) of what a page says to do; files only where they are named."""
    found = BLOCK.findall(page.read_text(encoding="utf-8"))
    return [(kind, title, text) for kind, title, text in found if title or kind in ("console", "sh", "python")]


def run(line: str) -> None:
    """Run one command line as the terminal would."""
    words = shlex.split(line)
    assert words[0] == "colure", f"{line}: only colure itself is run here"
    outcome = CliRunner().invoke(main, words[1:])
    if outcome.exception is not None and not isinstance(outcome.exception, SystemExit):
        raise outcome.exception
    assert outcome.exit_code in BAD_NEWS.get(line, (0,)), f"{line}: exit code {outcome.exit_code}\n{outcome.output}"


@pytest.fixture(scope="session")
def first_look(tmp_path_factory):
    """The tutorial's campaign, measured; pages work on copies of it."""
    folder = tmp_path_factory.mktemp("first-look") / "my-campaign"
    worlds.first_look(folder)
    return folder


#: By page, lines that take seconds and are carried out on another page with the same campaign.
AGAIN = {
    "find-an-echo": {"colure effects my-campaign", "colure findings my-campaign"},
    "choose-a-plan": {"colure rehearse my-campaign"},
}


def elsewhere(page: Path) -> set[str]:
    """Return the lines that a page need not carry out: the walk through all commands repeats those of other pages."""
    if page.stem != "tour":
        return AGAIN.get(page.stem, set())
    return {line for other in PAGES if other != page for line in lines_of(other.read_text(encoding="utf-8"))}


@contextlib.contextmanager
def without_new_processes(scheduler, count=None, **kwargs):
    """Hold workers of this process: to start others takes seconds, and `app/scale` has tests of its own for it."""
    with executors.workers_of("threads" if scheduler == "processes" else scheduler, count, **kwargs) as workers:
        yield workers


@pytest.mark.parametrize("page", [page for page in PAGES if blocks(page)], ids=lambda page: page.stem)
def test_what_a_page_says_works(page, tmp_path, monkeypatch, request):
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(batch, "workers_of", without_new_processes)
    if page.stem == "connect-your-positioner":
        pytest.skip("needs a second terminal; tests/app/test_own_positioner.py goes through it")
    if page.stem not in FROM_NOTHING:
        # These pages go on with the tutorial's campaign, measured.
        shutil.copytree(request.getfixturevalue("first_look"), tmp_path / "my-campaign")
    worlds.BEFORE.get(page.stem, lambda here: None)(tmp_path)
    names: dict[str, object] = {}
    known = elsewhere(page)
    for kind, title, text in blocks(page):
        if title:
            Path(title).write_text(text, encoding="utf-8")
        elif kind == "python":
            with contextlib.redirect_stdout(io.StringIO()):
                exec(compile(text, page.name, "exec"), names)
        else:
            for line in map(plain, text.splitlines()):
                if line in NOT_RUN:
                    worlds.INSTEAD.get(line, lambda here: None)(tmp_path)
                elif line not in known:
                    worlds.SHORTER.get(line, lambda here: None)(tmp_path)
                    run(line)
                    if line.startswith("colure plot"):
                        assert (tmp_path / shlex.split(line)[3]).stat().st_size > LEAST_PICTURE, line


@pytest.mark.parametrize("name", DAILY)
def test_every_daily_job_has_a_guide_that_draws_a_picture(name):
    """Which the test above, or the one that the page's own is left to, carries out."""
    lines = lines_of((DOCS / "how-to" / f"{name}.md").read_text(encoding="utf-8"))
    assert any(line.startswith("colure plot") and line not in NOT_RUN for line in lines)


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
