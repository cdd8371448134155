"""What both shells do: the composition of rooms into commands."""

from __future__ import annotations

import json
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from colure.model.campaign import Campaign
from colure.model.events import Listener, nobody
from colure.model.loading import InputError
from colure.model.plan import Plan

if TYPE_CHECKING:
    import xarray as xr

    from colure.acquire.clocks import Clock
    from colure.acquire.engine import Engine, Options, Outcome
    from colure.acquire.journal import Journal, Verification
    from colure.analysis.recipe import Processed
    from colure.instruments.protocols import AnalyzerDriver, AxesDriver, StateDriver
    from colure.model.figure import Figure
    from colure.waves.expansion import Expansion

DEMO_FOLDER = Path(__file__).parent / "demo_campaign"
RESERVE_FACTOR = 2.0


@dataclass(frozen=True)
class RunFolder:
    """Where the files of one run lie."""

    path: Path

    @property
    def journal(self) -> Path:
        """SQLite journal, written while acquiring."""
        return self.path / "journal.sqlite"

    @property
    def record(self) -> Path:
        """Sealed record, netCDF-4."""
        return self.path / "record.nc"

    @property
    def pattern(self) -> Path:
        """Processed pattern, netCDF-4."""
        return self.path / "pattern.nc"

    def pattern_of(self, state: str) -> Path:
        """Processed pattern of one device state, netCDF-4."""
        return self.path / f"pattern-{state}.nc"

    @property
    def figures(self) -> Path:
        """Figures with uncertainties, JSON."""
        return self.path / "figures.json"

    @property
    def report_html(self) -> Path:
        """Report page."""
        return self.path / "report.html"

    @property
    def report_pdf(self) -> Path:
        """Report for print."""
        return self.path / "report.pdf"


def run_folder(campaign: Path, name: str) -> RunFolder:
    """Return the folder of a run, by a name that cannot leave the campaign folder."""
    if not name or not all(c.isalnum() or c in "-_" for c in name) or len(name) > 80:
        raise InputError([f"run = {name!r}: must be letters, digits, - or _ (1 to 80 characters)"])
    return RunFolder(campaign / "runs" / name)


def new_campaign(folder: Path) -> list[Path]:
    """Copy the demo campaign as a starting point; refuses to overwrite."""
    folder.mkdir(parents=True, exist_ok=True)
    targets = [folder / source.name for source in sorted(DEMO_FOLDER.glob("*.toml"))]
    taken = [path.name for path in targets if path.exists()]
    if taken:
        raise InputError([f"{folder}: holds {', '.join(taken)} already; choose an empty folder"])
    for target in targets:
        shutil.copyfile(DEMO_FOLDER / target.name, target)
    campaign = Campaign.load(folder)
    _write_probe_calibration(campaign)
    return [*targets, folder / "probe.nc"]


def copy_profile(folder: Path, name: str) -> Path:
    """Copy a shipped instrument profile beside a campaign's chamber.toml; refuses to overwrite."""
    from colure.instruments.profile import profile_path

    if not (folder / "chamber.toml").is_file():
        raise InputError([f"{folder}: holds no chamber.toml; make the campaign first: colure new {folder}"])
    source, target = profile_path(name, None), folder / f"{name}.toml"
    if target.exists():
        raise InputError([f"{folder}: holds {target.name} already; rename or remove it first"])
    shutil.copyfile(source, target)
    return target


def _write_probe_calibration(campaign: Campaign) -> None:
    """The simulated probe comes with the calibration file that a real one would come with."""
    import numpy as np

    from colure.model.files import save_dataset
    from colure.twin.truth import probe_calibration

    goal = campaign.goal
    band = np.linspace(0.98 * goal.start_ghz, 1.02 * goal.stop_ghz, 9) * 1e9
    save_dataset(probe_calibration(band), campaign.folder / str(campaign.chamber.probe.pattern))


def make_plan(folder: Path) -> tuple[Campaign, Plan]:
    """Read a campaign and plan it."""
    from colure.planning.preflight import make_plan as plan_campaign

    campaign = Campaign.load(folder)
    return campaign, plan_campaign(campaign)


@contextmanager
def twin_process(folder: Path) -> Iterator[dict[str, str]]:
    """Serve the simulated chamber from a process of its own while the block runs.

    The child ends when our end of its standard input closes, so it cannot outlive us.
    """
    child = subprocess.Popen(
        [sys.executable, "-m", "colure", "simulate", str(folder), "--until-stdin-closes"],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    )
    assert child.stdin is not None and child.stdout is not None
    try:
        line = child.stdout.readline()
        if not line:
            raise InputError([f"{folder}: the simulated chamber did not start"])
        yield dict(json.loads(line))
    finally:
        child.stdin.close()
        try:
            child.wait(timeout=5)
        except subprocess.TimeoutExpired:
            child.kill()
            child.wait()
        child.stdout.close()


@dataclass(frozen=True)
class Bench:
    """The chamber's instruments, connected, and the clock they live by."""

    analyzer: AnalyzerDriver
    axes: AxesDriver
    states: StateDriver | None
    clock: Clock
    names: dict[str, str]


@contextmanager
def instruments(campaign: Campaign) -> Iterator[Bench]:
    """Connect to the chamber's instruments, starting the simulated ones where asked for.

    Raises
    ------
    InstrumentError
        If one cannot be reached, or another process drives the axes.
    """
    from contextlib import ExitStack

    from colure.acquire.clocks import SystemClock
    from colure.acquire.locks import LockedError, hold_resource
    from colure.instruments.connect import connect_analyzer, connect_axes, connect_states
    from colure.instruments.protocols import InstrumentError

    chamber, states = campaign.chamber, campaign.device.states
    names = {"analyzer": chamber.analyzer.resource, "axes": chamber.axes.resource}
    if states is not None and states.resource is not None:
        names["device"] = states.resource
    simulated = "twin" in names.values()
    with ExitStack() as stack:
        if simulated:
            served = stack.enter_context(twin_process(campaign.folder))
            names = {name: served[name] if value == "twin" else value for name, value in names.items()}
        try:
            stack.callback(hold_resource(names["axes"]).close)
        except LockedError as error:
            raise InstrumentError(str(error)) from None
        clock = SystemClock(campaign.simulated().time_factor if simulated else 1.0)
        analyzer = connect_analyzer(chamber.analyzer, names["analyzer"], campaign.folder)
        stack.callback(analyzer.close)
        axes = connect_axes(chamber.axes, names["axes"], chamber.axis_table, campaign.folder, timer=clock)
        stack.callback(axes.close)
        table = None if states is None else states.model_copy(update={"resource": names.get("device")})
        switch = connect_states(table, campaign.folder)
        if switch is not None:
            stack.callback(switch.close)
        yield Bench(analyzer, axes, switch, clock, names)


def acquire(
    campaign: Campaign,
    plan: Plan,
    run: RunFolder,
    *,
    listener: Listener = nobody,
    on_engine: Callable[[Engine], None] | None = None,
    options: Options | None = None,
    accept_damage: bool = False,
) -> Outcome:
    """Measure what the journal does not hold yet, then seal the record.

    Parameters
    ----------
    on_engine
        Called with the engine before it runs, for stop keys and signals.
    accept_damage
        Measure the points anew whose journal rows are damaged; without it damage is refused.

    Raises
    ------
    InputError
        If the disk is too full, the run belongs to another plan or other instruments, or its
        journal is damaged.
    """
    from colure.acquire.engine import Engine
    from colure.acquire.engine import Options as EngineOptions
    from colure.acquire.journal import Journal
    from colure.acquire.seal import seal

    run.path.mkdir(parents=True, exist_ok=True)
    _check_disk(run.path, plan)
    with instruments(campaign) as bench:
        identity = {
            "analyzer": bench.analyzer.identity(),
            "axes": bench.axes.identity(),
            "states": None if bench.states is None else bench.states.identity(),
            "receiver": bench.analyzer.receiver,
        }
        journal = Journal.open(run.journal, plan, identity)
        try:
            _check_same(journal.meta("plan_hash"), plan.hash, journal.meta("identity"), identity)
            _check_whole(journal, listener, accept_damage=accept_damage)
            engine: Engine = Engine(
                plan,
                campaign.chamber,
                journal,
                bench.analyzer,
                bench.axes,
                states=bench.states,
                state_table=campaign.device.states,
                listener=listener,
                clock=bench.clock,
                options=options or EngineOptions(),
            )
            if on_engine is not None:
                on_engine(engine)
            outcome = engine.run()
            if outcome.measured:
                seal(journal, run.record)
        finally:
            journal.close()
    return outcome


def _check_disk(folder: Path, plan: Plan) -> None:
    needed = int(RESERVE_FACTOR * plan.predicted.get("data_bytes", 0)) + 10_000_000
    free = shutil.disk_usage(folder).free
    if free < needed:
        raise InputError([f"disk: {free / 1e6:.0f} MB free in {folder}: must be at least {needed / 1e6:.0f} MB"])


def _check_same(
    old_hash: str, new_hash: str, old_identity: Mapping[str, object], new_identity: Mapping[str, object]
) -> None:
    faults = []
    if old_hash != new_hash:
        faults.append(f"plan: hash = {new_hash[:12]}: must be {old_hash[:12]} to resume; the campaign files changed")
    faults += [
        f"instruments: {name} = {value!r}: must be {old_identity.get(name)!r} to resume"
        for name, value in new_identity.items()
        if old_identity.get(name) != value
    ]
    if faults:
        raise InputError(faults)


def _check_whole(journal: Journal, listener: Listener, *, accept_damage: bool) -> None:
    """Refuse a damaged journal, unless its damaged points shall be measured anew."""
    from colure.model.events import Event

    found = journal.verify()
    if found.whole:
        return
    if not accept_damage:
        raise InputError(
            [f"journal: {text}" for text in found.damaged[:20]]
            + ["journal: nothing was changed; --accept-damage measures the damaged points anew"]
        )
    for text in journal.accept_damage():
        listener(Event("warning", f"journal: {text}; measured anew"))


@dataclass(frozen=True)
class CheckLine:
    """One line of `colure acquire --check`."""

    what: str
    good: bool
    found: str


def check_instruments(campaign: Campaign, plan: Plan) -> list[CheckLine]:
    """Talk to everything, move nothing, and return what was found."""
    from colure.acquire.check import check_bench
    from colure.instruments.protocols import InstrumentError

    lines: list[CheckLine] = []
    try:
        with instruments(campaign) as bench:
            lines += [CheckLine(f"{name} at", True, resource) for name, resource in bench.names.items()]
            found = check_bench(
                plan, campaign.chamber, bench.analyzer, bench.axes, states=bench.states, clock=bench.clock
            )
            lines += [CheckLine(*line) for line in found]
    except InstrumentError as error:
        lines.append(CheckLine("connection", False, str(error)))
    return lines


def verify(run: RunFolder) -> Verification:
    """Check a journal's checksums and chain."""
    from colure.acquire.journal import Journal

    journal = Journal.resume(run.journal)
    try:
        return journal.verify()
    finally:
        journal.close()


def probe_of(campaign: Campaign, frequency_hz: object) -> Expansion | None:
    """Return the probe's expansion if the chamber names its pattern."""
    import numpy as np

    from colure.analysis.nearfield import load_probe

    if campaign.chamber.probe.pattern is None:
        return None
    return load_probe(campaign.folder / campaign.chamber.probe.pattern, np.asarray(frequency_hz, float))


def process(campaign: Campaign, run: RunFolder, *, state: str | None = None) -> Processed:
    """Run the default recipe on a run's record and save the pattern beside it.

    Parameters
    ----------
    state
        Which state of a device that has several; the first by default.

    Raises
    ------
    InputError
        If the record lacks what the recipe needs, or there is no such state.
    """
    from colure.analysis.recipe import process as run_recipe
    from colure.model.files import file_hash, open_dataset, save_dataset, with_step
    from colure.model.record import of_state

    record: xr.Dataset = open_dataset(run.record)
    record = with_step(record, "open", file=run.record.name, sha256=file_hash(run.record))
    names = [name for name in str(record.attrs.get("states", "")).split(",") if name]
    chosen = state or (names[0] if names else None)
    if chosen is not None:
        if chosen not in names:
            raise InputError([f"--state = {chosen!r}: must be one of {', '.join(names) or 'none, the device has one'}"])
        record = with_step(of_state(record, names.index(chosen)), "state", name=chosen)
    try:
        done = run_recipe(
            record, campaign.chamber, campaign.device, probe=probe_of(campaign, record["frequency"].values)
        )
    except ValueError as error:
        raise InputError([str(error)]) from None
    save_dataset(done.pattern, run.pattern if state is None else run.pattern_of(state))
    return done


def states_of(run: RunFolder) -> list[str]:
    """Return the names of the device states that a run's record holds; empty if the device has none."""
    from colure.model.files import open_dataset

    return [name for name in str(open_dataset(run.record).attrs.get("states", "")).split(",") if name]


def evaluate(processed: Processed, run: RunFolder) -> list[Figure]:
    """Read the figures with their budgets and save them as JSON."""
    from colure.analysis.uncertainty import figures_with_budget

    found = figures_with_budget(processed.budget)
    run.figures.write_text(json.dumps([figure.as_dict() for figure in found], indent=1), encoding="utf-8")
    return found


def write_report(campaign: Campaign, plan: Plan, run: RunFolder, processed: Processed, figures: list[Figure]) -> None:
    """Write the report as one HTML page and as a PDF beside the record."""
    from colure.model.files import file_hash, open_dataset
    from colure.report.content import Source, compose
    from colure.report.html import render_html
    from colure.report.pdf import render_pdf

    record = open_dataset(run.record)
    document = compose(
        Source(
            plan=plan,
            chamber=campaign.chamber,
            device=campaign.device,
            processed=processed,
            figures=figures,
            record_attrs=dict(record.attrs),
            record_file=run.record.name,
            record_sha256=file_hash(run.record),
            demo=campaign.chamber.analyzer.resource == "twin",
        )
    )
    run.report_html.write_text(render_html(document), encoding="utf-8")
    render_pdf(document, run.report_pdf)


def convert_file(source: Path, target: Path, *, radius_m: float | None = None, far_field: bool = False) -> str:
    """Convert between tidy CSV and netCDF-4 and return what was found in plain words.

    Raises
    ------
    InputError
        If the endings are not .csv and .nc, or the source is malformed.
    """
    from colure.model.exchange import read_csv, write_csv
    from colure.model.fields import is_grid
    from colure.model.files import file_hash, open_dataset, save_dataset, with_step

    endings = (source.suffix.lower(), target.suffix.lower())
    if not target.parent.is_dir():
        raise InputError([f"{target}: folder {target.parent} does not exist"])
    if endings == (".csv", ".nc"):
        dataset = read_csv(source, radius_m=radius_m, far_field=far_field)
        dataset = with_step(dataset, "read", file=source.name, sha256=file_hash(source))
        save_dataset(dataset, target)
        sizes = " x ".join(f"{size} {name}" for name, size in dataset.sizes.items())
        return f"{'grid' if is_grid(dataset) else 'scattered samples'}: {sizes}"
    if endings == (".nc", ".csv"):
        dataset = open_dataset(source)
        hidden = write_csv(dataset, target)
        note = f"; {hidden} directions that the data do not determine are nan" if hidden else ""
        return f"{dataset.attrs.get('title', 'fields')}{note}"
    raise InputError([f"{source.name} to {target.name}: must be .csv to .nc or .nc to .csv (file endings)"])


def transform_file(
    source: Path,
    target: Path,
    *,
    order: int | None,
    step_deg: float,
    origin_m: tuple[float, float, float] | None,
    keep_radius_m: float | None,
) -> list[str]:
    """Turn a file of near fields into a far-field pattern file; returns plain words."""
    from colure.analysis.fields import far_field
    from colure.model.exchange import LEAST_SUPPORT
    from colure.model.files import open_dataset, save_dataset

    if abs(180.0 / step_deg - round(180.0 / step_deg)) > 1e-9:
        raise InputError([f"--step-deg = {step_deg:g}: must divide 180 deg without remainder"])
    if not target.parent.is_dir():
        raise InputError([f"{target}: folder {target.parent} does not exist"])
    dataset = open_dataset(source)
    try:
        pattern, words = far_field(
            dataset, order=order, step_deg=step_deg, origin_m=origin_m, keep_radius_m=keep_radius_m
        )
    except ValueError as error:
        raise InputError([f"{source.name}: {error}"]) from None
    save_dataset(pattern, target)
    if "support" in pattern:
        share = float((pattern["support"] >= LEAST_SUPPORT).mean())
        if share < 1.0:
            words.append(f"only {100 * share:.0f} % of the grid is determined by the data (variable `support`)")
    return words
