"""The door for notebooks and scripts: a campaign folder as an object, its runs, patterns and figures, and how they look.

    import colure

    campaign = colure.open_campaign("my-campaign")
    campaign.plan()                                      # what will be measured, how long, how good
    run = campaign.acquire("first", cautions_read=True)
    pattern = run.process()
    pattern.plot_cuts()
    run.evaluate()                                       # every figure with its interval

What fails raises `colure.InputError`, which names the field, the value, the limit and the unit, or an instrument's error.
"""

from __future__ import annotations

import html
import json
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from colure.app import services
from colure.app.services.figure_table import Figures, few_lines, html_table
from colure.app.services.picture_kinds import PLANES, chosen_planes
from colure.app.storage.begun import as_begun, changed_since
from colure.app.storage.folders import RunFolder, run_folder
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.values import holds_arrays

if TYPE_CHECKING:
    import xarray as xr
    from matplotlib.axes import Axes

    from colure.acquire.outcome import Outcome
    from colure.analysis.compare.match import Freedom
    from colure.analysis.findings.finding import Finding
    from colure.analysis.pipeline.recipe import Processed
    from colure.app.scale.pieces import PiecesOutcome as Scaled
    from colure.app.services.comparing import PatternComparison
    from colure.app.services.evaluation import StepEffects
    from colure.app.services.rehearsal import Rehearsal
    from colure.app.services.verdicts import Judged
    from colure.model.plan import Plan
    from colure.model.recipe import Recipe
    from colure.report.drawing import OnAxes, Panels


def open_campaign(folder: str | Path) -> OpenCampaign:
    """Open a campaign folder.

    Raises
    ------
    InputError
        If a file is missing or a value in it is out of its limits; every fault is named.
    """
    return OpenCampaign(Campaign.load(Path(folder)))


def demo_campaign(folder: str | Path) -> OpenCampaign:
    """Make a new campaign folder from the demo's files (an invented panel in a simulated chamber) and open it.

    Raises
    ------
    InputError
        If the folder holds such files already.
    """
    services.new_campaign(Path(folder))
    return open_campaign(folder)


@dataclass(frozen=True)
class Planned:
    """A plan, and the lines that say what it means."""

    plan: Plan
    rows: tuple[tuple[str, str], ...]

    def __str__(self) -> str:
        """Return every line."""
        return "\n".join(f"{what:16s} {answer}" for what, answer in self.rows)

    def __repr__(self) -> str:
        """Return the first few lines."""
        return "\n".join(few_lines(str(self).splitlines()))

    def _repr_html_(self) -> str:
        return html_table((), self.rows, "Plan")


@dataclass(frozen=True)
class OpenCampaign:
    """A campaign folder: goal, chamber and device, checked against each other."""

    campaign: Campaign

    @property
    def folder(self) -> Path:
        """Where it lies."""
        return self.campaign.folder

    @property
    def runs(self) -> list[Run]:
        """All runs that hold a record, by name."""
        return [self.run(path.parent.name) for path in sorted(self.folder.glob("runs/*/record.nc"))]

    def run(self, name: str = "first", *, present_chamber: bool = False) -> Run:
        """Return a run by name, measured or not; its results are worked out with the chamber that it began with.

        Parameters
        ----------
        present_chamber
            Use chamber.toml as it is now, where what it declares was corrected after the run.

        Raises
        ------
        InputError
            If the name could leave the folder, or what the run keeps of its beginning cannot be read.
        """
        files = run_folder(self.folder, name)
        return Run(as_begun(files, self.campaign, present=present_chamber), files)

    def plan(self) -> Planned:
        """Plan the campaign; raises `InputError` if it cannot be measured so."""
        from colure.app.services.plan_words import plan_rows

        campaign, plan = services.make_plan(self.folder)
        return Planned(plan, plan_rows(campaign, plan))

    def rehearse(self, *, seed: int = 1) -> Rehearsal:
        """Carry the plan out on an invented chamber and hold every stated interval against the truth."""
        from colure.app.services.rehearsal import rehearse

        return rehearse(*services.make_plan(self.folder), seed=seed)

    def cautions(self) -> list[str]:
        """Return what a person must know before anything moves."""
        from colure.app.services.cautions import cautions_of

        return cautions_of(*services.make_plan(self.folder))

    def acquire(self, name: str = "first", *, cautions_read: bool = False, home: bool = False) -> Run:
        """Measure, or go on with a run that was interrupted; returns when it is done.

        Parameters
        ----------
        cautions_read
            A person has read `cautions()` and everyone is clear of the axes; without it nothing moves.
        home
            Home the axes first; needed after a fault of the motion.

        Raises
        ------
        InputError
            If the cautions were not acknowledged, or the scan ended before its plan was completed (the run goes on later).
        """
        from colure.acquire.outcome import Options

        if not cautions_read:
            raise InputError(["cautions_read = False: must be True before anything moves", *self.cautions()])
        run = run_folder(self.folder, name)
        campaign, plan = services.make_plan(self.folder, run)
        outcome: Outcome = services.acquire(campaign, plan, run, options=Options(home=home))
        if outcome.state.value != "done":
            raise InputError(
                [
                    f"run {name}: {outcome.state.value}: {outcome.reason}; {outcome.measured} of {outcome.total} points saved"
                ]
            )
        return Run(campaign, run)

    def _repr_html_(self) -> str:
        c = self.campaign
        rows = (("goal", c.goal.name), ("device", c.device.name), ("chamber", c.chamber.name),
                ("band", f"{c.goal.start_ghz:g} to {c.goal.stop_ghz:g} GHz, {c.goal.points} frequencies"),
                ("runs", ", ".join(run.name for run in self.runs) or "none yet"))  # fmt: skip
        return html_table((), rows, str(self.folder))


@dataclass(frozen=True)
class Run:
    """One run of a campaign and what can be made of it."""

    campaign: Campaign
    files: RunFolder

    @property
    def name(self) -> str:
        """Its name."""
        return self.files.path.name

    @property
    def edited(self) -> list[str]:
        """Every entry of chamber.toml and device.toml that was edited after the run began: both values, and which is used."""
        return changed_since(self.files, self.campaign)

    @property
    def states(self) -> list[str]:
        """Device states in its record; empty if the device has none."""
        return services.states_of(self.files)

    def state(self, name: str) -> Run:
        """Return one state of a device that has several, as a run of its own: its record, pattern, figures and reports.

        Raises
        ------
        InputError
            If the record holds no such state.
        """
        if name not in self.states:
            raise InputError(
                [f"state = {name!r}: must be one of {', '.join(self.states) or 'none, the device has one'}"]
            )
        return Run(self.campaign, self.files.state(name))

    def _of(self, state: str | None) -> RunFolder:
        return self.files if state is None else self.files.state(state)

    @property
    def record(self) -> Record:
        """The record as it was measured; raises `InputError` if there is none."""
        from colure.app.services.processing import opened
        from colure.model.files import open_dataset

        if self.files.chosen is not None:
            return Record(opened(self.files), f"{self.name}, {self.files.chosen}")
        return Record(open_dataset(self.files.record), self.name)

    def process(self, *, state: str | None = None, recipe: Recipe | None = None) -> Pattern:
        """Run the campaign's recipe and return the pattern; raises `InputError` if the record lacks what it needs.

        recipe
            Another recipe for once: the run's saved pattern stays as it is. `colure.analysis.default_recipe(run.record.data,
            campaign.chamber, campaign.device).without("drift")` leaves out one step.
        """
        if recipe is not None:
            return Pattern(services.process_with(self.campaign, self._of(state), recipe), self.name)
        return Pattern(services.process(self.campaign, self._of(state)), self.name)

    def process_large(
        self, *, scheduler: str = "threads", workers: int | None = None, record: str | None = None
    ) -> Scaled:
        """Transform a large record piece by piece into patterns.zarr; see `colure.app.process_large`."""
        from colure.app.scale.pieces import process_large

        return process_large(self.campaign.folder, self.name, record=record, scheduler=scheduler, workers=workers)

    def evaluate(self, *, state: str | None = None) -> Figures:
        """Read every figure with its interval; a power-only run gives the power figures."""
        return Figures(services.read_figures(self.campaign, self._of(state)))

    def findings(self, *, state: str | None = None) -> list[Finding]:
        """Return the self-consistency checks, largest effect first."""
        return services.findings(self.campaign, self._of(state))

    def effects(self, *, state: str | None = None) -> StepEffects:
        """Return what every step of the recipe does to every figure."""
        return services.effects(self.campaign, self._of(state))

    def verdict(self, specification: str | Path, *, state: str | None = None) -> Judged:
        """Hold the run, or one of its device states, against a specification file."""
        from colure.app.services.verdicts import judge_run

        return judge_run(self.campaign, self._of(state), Path(specification))

    def compare(
        self, other: Path | Run, *, freedom: Freedom | None = None, state: str | None = None
    ) -> PatternComparison:
        """Compare with a simulated or earlier pattern file, or another run, as they stand or matched.

        freedom
            What may be matched first; nothing but the phase of every frequency if None.
        state
            Of a device that has several; the same one of the other run.
        """
        from colure.analysis.compare.match import AS_THEY_STAND
        from colure.app.services.comparing import compare_run

        what = (other.campaign, other.files) if isinstance(other, Run) else other
        chosen = AS_THEY_STAND if freedom is None else freedom
        return compare_run(self.campaign, self._of(state), what, freedom=chosen)

    def plot_cuts(self, *, frequency_ghz: float | None = None, state: str | None = None, ax: OnAxes = None) -> Panels:
        """Draw the cuts of a run of cuts with their intervals, at the range length; of a sphere use `process().plot_cuts()`.

        ax
            Matplotlib axes to draw on, one a cut (six at most, those with intervals first); those of a new figure if None.
            They are returned; `.figure` is their figure.

        Raises
        ------
        InputError
            If the run holds a sphere, there is no such frequency, or `ax` are too many or too few.
        """
        from colure.app.services.cuts import draw_cuts
        from colure.app.storage.run_kinds import is_cuts

        if not is_cuts(self.files):
            raise InputError([f"run {self.name}: holds a sphere, no cuts: draw it with process().plot_cuts()"])
        return draw_cuts(self.campaign, self._of(state), "cuts", frequency_ghz, ax=ax)

    def export(self, kind: str, target: str | Path, *, state: str | None = None) -> str:
        """Write csv, netcdf, nsma, touchstone, matlab, figures, or a format of another package; nothing is overwritten."""
        from colure.app.services.exporting import export

        return export(self.campaign, self._of(state), kind, Path(target))

    def report(self, *, specification: str | Path | None = None, state: str | None = None) -> Path:
        """Write report.html and report.pdf; returns where the page lies."""
        from colure.app.services.campaigns import plan_of
        from colure.app.services.reporting import report_on

        campaign, plan = plan_of(self.campaign)
        files = self._of(state)
        processed = services.process(campaign, files)
        report_on(campaign, plan, files, processed, None if specification is None else Path(specification))
        return files.report_html


@dataclass(frozen=True)
@holds_arrays
class Record:
    """What was measured; `data` is the xarray dataset."""

    data: xr.Dataset
    name: str = ""

    def _rows(self) -> tuple[tuple[str, str], ...]:
        from colure.app.services.plan_words import duration_text
        from colure.model.plan import ROLES
        from colure.model.record import names_of_states

        d = self.data
        f, role = d["frequency"].values / 1e9, d["role"].values
        counts = ", ".join(f"{int((role == i).sum())} {one.value}" for i, one in enumerate(ROLES) if (role == i).any())
        flagged = int((d["flags"].values != 0).sum())
        return (
            ("points", counts),
            ("frequencies", f"{f.size}, {f[0]:.4f} to {f[-1]:.4f} GHz"),
            ("ports", ", ".join(str(p) for p in d["port"].values)),
            ("states", ", ".join(names_of_states(str(d.attrs.get("states", "")))) or "one"),
            ("scheme", f"{d.attrs['scheme']}, slices every {d.attrs['step_deg']:.4g} deg, order {d.attrs['order']}"),
            ("time", duration_text(float(d["time_s"].values.max() - d["time_s"].values.min()))),
            ("flagged", f"{flagged} points" if flagged else "none"),
        )

    def __repr__(self) -> str:
        return "\n".join([f"Record {self.name}", *(f"  {what:12s} {answer}" for what, answer in self._rows())])

    def _repr_html_(self) -> str:
        return html_table((), self._rows(), f"Record {self.name}") + str(self.data._repr_html_())


@dataclass(frozen=True)
class Pattern:
    """A processed run; `data` is the far field on a grid, `processed` everything behind it."""

    processed: Processed
    name: str = ""

    @property
    def data(self) -> xr.Dataset:
        """Complex e_theta and e_phi (frequency, theta, phi), realized gain is their squared sum."""
        return self.processed.pattern

    @property
    def steps(self) -> list[str]:
        """What was done to the record, in order."""
        return [str(step["step"]) for step in json.loads(self.data.attrs["history_json"])]

    def _index(self, frequency_ghz: float | None) -> int:
        from colure.model.pattern import index_of

        return index_of(self.processed.frequency_hz, frequency_ghz)

    def plot_cuts(
        self,
        *,
        frequency_ghz: float | None = None,
        polar: bool = False,
        planes: Sequence[str] = PLANES,
        ax: OnAxes = None,
    ) -> Panels:
        """Draw the principal cuts through the peak, co and cross; mid-band by default; of a circular wave both hands.

        Parameters
        ----------
        planes
            Which of the planes E and H.
        ax
            Matplotlib axes to draw on, one a plane (polar axes if `polar`); those of a new figure if None. They are returned;
            `.figure` is their figure.

        Raises
        ------
        InputError
            If there is no such frequency or plane, or `ax` are too many, too few, or of another projection.
        """
        import numpy as np

        from colure.analysis.figures.cuts import cuts_in_hand, hand_of, principal_cuts
        from colure.report import charts

        processed = self.processed
        coefficients = processed.expansion.coefficients[self._index(frequency_ghz)]
        both, gain = principal_cuts(
            coefficients, slant=processed.budget.slant, region=float(np.deg2rad(processed.sphere.region_deg))
        )
        hand = processed.budget.figures.hand or hand_of(both)
        cuts = cuts_in_hand(chosen_planes(both, planes), hand)
        if not polar:
            return charts.cuts_rectangular(cuts, gain, {}, hand=hand, ax=ax)
        return charts.cuts_polar(cuts, gain, hand=hand, ax=ax)

    def _gain_name(self) -> str:
        from colure.report import charts

        return charts.PARTIAL_GAIN if self.processed.sphere.one_polarization else charts.TOTAL_GAIN

    def plot_map(self, *, frequency_ghz: float | None = None, ax: Axes | None = None) -> Axes:
        """Draw gain over theta and phi: total, or partial where one polarization was measured; on `ax`, or a new figure's."""
        from colure.report import charts

        return charts.sphere_map(**self._field(frequency_ghz), gain=self._gain_name(), ax=ax)[0]

    def plot_solid(self, *, frequency_ghz: float | None = None, ax: Axes | None = None) -> Axes:
        """Draw the pattern as a solid; on `ax`, which has three dimensions, or a new figure's."""
        from colure.report import charts

        return charts.solid(**self._field(frequency_ghz), gain=self._gain_name(), ax=ax)[0]

    def plot_front(self, *, frequency_ghz: float | None = None, ax: OnAxes = None) -> Panels:
        """Draw co, cross and axial ratio over direction cosines of the front half; on three `ax`, or a new figure's."""
        from colure.report import maps

        one = self.processed.expansion.coefficients[self._index(frequency_ghz)]
        return maps.front_maps(one, slant=self.processed.budget.slant, hand=self.processed.budget.figures.hand, ax=ax)

    def _field(self, frequency_ghz: float | None) -> dict[str, Any]:
        from colure.model.pattern import field_of

        d = self.data
        return {
            "theta_deg": d["theta"].values,
            "phi_deg": d["phi"].values,
            "field": field_of(d)[self._index(frequency_ghz)],
        }

    def __repr__(self) -> str:
        f = self.processed.frequency_hz / 1e9
        return (
            f"Pattern of run {self.name}: {f.size} frequencies, {f[0]:.4f} to {f[-1]:.4f} GHz; {', '.join(self.steps)}"
        )

    def _repr_html_(self) -> str:
        import base64

        picture = base64.b64encode(self.plot_cuts()._repr_png_() or b"").decode()
        return f'<p>{html.escape(repr(self))}</p><img alt="principal cuts" src="data:image/png;base64,{picture}">'
