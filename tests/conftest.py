"""Fixtures shared by all rooms."""

from __future__ import annotations

import gc
import os
import shutil
import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import nullcontext
from pathlib import Path

import hypothesis
import numpy as np
import pytest
from threadpoolctl import threadpool_limits

from colure.app.scale.threads import ONE_THREAD
from colure.geometry.directions import unit_vector
from colure.geometry.polarization import from_cartesian
from colure.twin.sources import Cluster
from colure.waves.expansion import Expansion
from colure.waves.threads import use_threads
from colure.waves.transform import analysis

# Several test processes share the cores: linear algebra that spreads over all of them in each costs a third of the time.
threadpool_limits(1)
# Where nobody wants compiled files beside the sources, each of the hundreds of processes would compile everything anew.
if sys.dont_write_bytecode:
    sys.dont_write_bytecode = False
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
os.environ.update(dict.fromkeys(ONE_THREAD, "1"))  # for the commands that tests start, and for the test processes

# Thousands of collected tests stay until the end: to look through them again and again took a quarter of all computing time.
gc.disable()

# How long an example takes says what else the machine does; it is no property of what is tested.
hypothesis.settings.register_profile("shared machine", deadline=None)
hypothesis.settings.load_profile("shared machine")


def expansion_of(cluster: Cluster, order: int) -> Expansion:
    """Expand a closed-form cluster's far field, sampled on a grid that carries `order`."""
    theta = np.linspace(0.0, np.pi, order + 3)
    columns = 2 * order + 2
    t, p = np.meshgrid(theta, np.arange(columns) * 2 * np.pi / columns, indexing="ij")
    vectors = cluster.far_field(unit_vector(theta=t, phi=p).reshape(-1, 3)).reshape(-1, *t.shape, 3)
    return Expansion(analysis(np.stack(from_cartesian(vectors, theta=t, phi=p), axis=1), order), cluster.k)


def cluster_of(frequency_hz, position, electric, magnetic=None, weights=None) -> Cluster:
    """Build a lossless cluster from lists."""
    f = np.atleast_1d(np.asarray(frequency_hz, float))
    r = np.atleast_2d(np.asarray(position, float))
    p = np.atleast_2d(np.asarray(electric, complex))
    m = np.zeros_like(p) if magnetic is None else np.atleast_2d(np.asarray(magnetic, complex))
    w = np.ones((f.size, len(r)), complex) if weights is None else np.asarray(weights, complex)
    return Cluster(f, r, p, m, w, np.ones(f.size))


def pytest_addoption(parser: pytest.Parser) -> None:
    """`--nightly` makes long campaigns longer."""
    parser.addoption("--nightly", action="store_true", help="run the long versions of the crash and operation tests")


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_auto_num_workers(config: pytest.Config) -> int:
    """One test process more than there are cores: many tests wait for sockets, processes and a browser."""
    return (os.cpu_count() or 1) + 1


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Skip what is marked `nightly`, unless `--nightly` is given; of several processes let each begin with its share of what is long."""
    if not config.getoption("--nightly"):
        for item in items:
            if item.get_closest_marker("nightly"):
                item.add_marker(pytest.mark.skip(reason="for the nightly run"))
    items[:] = long_ones_first(items, count=getattr(config, "workerinput", {}).get("workercount", 1))


def pytest_collection_finish(session: pytest.Session) -> None:
    """Leave what was imported and collected out of what is looked through for garbage from now on, and look seldom.

    Pictures are made of many thousands of small objects: to look after every 700 of them cost a tenth of a report's time.
    """
    gc.freeze()
    gc.set_threshold(50_000, 20, 100)
    gc.enable()


#: Files whose tests take longest, by the test process that begins with them. At the end of a run one process would finish them alone.
LONG = (("endtoend/test_demo.py", "crash/test_kill.py"), ("docs/test_pages.py",), ("browser/test_server.py", "report/"))


def long_ones_first(items: Sequence[pytest.Item], *, count: int) -> list[pytest.Item]:
    """Return tests in an order whose even parts, one for each of `count` processes, begin with long ones."""
    if count < len(LONG):
        return list(items)

    def begins(item: pytest.Item) -> int | None:
        name = item.nodeid.removeprefix("tests/")
        return next((n for n, files in enumerate(LONG) if name.startswith(files)), None)

    long = [[one for one in items if begins(one) == n] for n in range(count)]
    rest = [one for one in items if begins(one) is None]
    ordered, left = [], len(items)
    for n, own in enumerate(long):
        share = max(left // (count - n) - len(own), 0)
        ordered += own + rest[:share]
        rest, left = rest[share:], left - share - len(own)
    return ordered + rest


@pytest.fixture(scope="session", autouse=True)
def one_core_a_report() -> Iterator[None]:
    """Let no report of this process start a second one: the tests keep all cores busy, and a child costs a quarter more.

    Commands that tests start as processes of their own, the demo among them, have their second core; so do `report/test_second_core.py`.
    """
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("colure.report.second_core.second_core", nullcontext)
        yield


@pytest.fixture(scope="session", autouse=True)
def one_thread_a_transform() -> None:
    """Let transforms of this process use one thread: the tests keep all cores busy. `waves/test_threads.py` uses two."""
    use_threads(1)


@pytest.fixture
def nightly(request: pytest.FixtureRequest) -> None:
    """Skip what asks for it, unless `--nightly` is given."""
    if not request.config.getoption("--nightly"):
        pytest.skip("for the nightly run")


@pytest.fixture
def prompt(request: pytest.FixtureRequest) -> Callable[..., None]:
    """Judge delays of a real clock: the promise itself under `--nightly`, else the median within a generous bound.

    A loaded computer delays everything, so the ordinary bound is far above the promise. What it must stay below is
    how long the same thing takes when nobody stops it; each test sees to that.
    """
    strict = request.config.getoption("--nightly")

    def judge(delays_s: Sequence[float], promised_s: float, *, share: float = 0.5, ordinary_s: float = 1.0) -> None:
        found, limit = (np.quantile(delays_s, share), promised_s) if strict else (np.median(delays_s), ordinary_s)
        assert found <= limit, f"{1e3 * found:.0f} ms of {len(delays_s)}, limit {1e3 * limit:.0f} ms"

    return judge


@pytest.fixture(scope="session")
def demo_campaign(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo campaign, made once for each test process; nobody writes into it."""
    from colure.app import services

    folder = tmp_path_factory.mktemp("demo") / "campaign"
    services.new_campaign(folder)
    return folder


@pytest.fixture
def campaign_folder(tmp_path: Path, demo_campaign: Path) -> Path:
    """A fresh copy of the demo campaign."""
    return shutil.copytree(demo_campaign, tmp_path / "campaign")


SMALL_GOAL = """
name = "small"
start_ghz = 24.0
stop_ghz = 24.1
points = 2
wanted_level_db = -20
step_deg = 15
scheme = "two-pass"
"""
#: Table `[device]` of the demo's twin.toml: its panel with its dead element and its misfed pair.
DEMO_DEVICE = """
[device]
kind = "panel"
rows = 8
columns = 8
centre_ghz = 24.125
half_band_ghz = 0.125
efficiency_db = -1.1
dead = [[2, 5]]
misfed = [[4, 1], [5, 1]]
"""
QUIET_TWIN = "seed = 3\nnoise = false\n"


def small(folder: Path) -> Path:
    """Make of the demo campaign a small device centred on the crossing, in a chamber without noise or drift: few points."""
    (folder / "goal.toml").write_text(SMALL_GOAL, encoding="utf-8")
    (folder / "twin.toml").write_text(QUIET_TWIN, encoding="utf-8")
    device = (folder / "device.toml").read_text(encoding="utf-8")
    device = device.replace("[49.7, 49.7, 4.0]", "[14.0, 14.0, 2.0]").replace("[0.0, 0.0, -30.0]", "[0.0, 0.0, 0.0]")
    (folder / "device.toml").write_text(device, encoding="utf-8")
    return folder


def tiny(folder: Path) -> Path:
    """Make of the demo campaign the smallest whole run: 30 deg steps, one frequency, about 160 points."""
    small(folder)
    goal = SMALL_GOAL.replace("step_deg = 15", "step_deg = 30").replace("points = 2", "points = 1")
    (folder / "goal.toml").write_text(goal.replace("stop_ghz = 24.1", "stop_ghz = 24.0"), encoding="utf-8")
    device = (folder / "device.toml").read_text(encoding="utf-8")
    (folder / "device.toml").write_text(device.replace("[14.0, 14.0, 2.0]", "[2.0, 2.0, 1.0]"), encoding="utf-8")
    return folder


def fewer(folder: Path) -> Path:
    """Make of the demo campaign a smaller device than `small` in 20 deg steps: 345 points instead of 598."""
    small(folder)
    (folder / "goal.toml").write_text(SMALL_GOAL.replace("step_deg = 15", "step_deg = 20"), encoding="utf-8")
    device = (folder / "device.toml").read_text(encoding="utf-8")
    (folder / "device.toml").write_text(device.replace("[14.0, 14.0, 2.0]", "[10.0, 10.0, 2.0]"), encoding="utf-8")
    return folder


@pytest.fixture
def small_campaign(campaign_folder: Path) -> Path:
    """A small device centred on the crossing, in a chamber without noise or drift: few points."""
    return fewer(campaign_folder)


@pytest.fixture
def broader_campaign(campaign_folder: Path) -> Path:
    """The small device of more points: its figures are known better."""
    return small(campaign_folder)


@pytest.fixture
def tiny_campaign(campaign_folder: Path) -> Path:
    """The smallest whole run."""
    return tiny(campaign_folder)
