"""What a finished run tells of its mount: small motions of the joints, in words and in a file that proposes and changes nothing."""

from __future__ import annotations

from dataclasses import asdict, dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from colure.app.services.processing import one_distance, opened
from colure.app.services.reference import probe_of, reference_of
from colure.app.storage.folders import RunFolder, require_free
from colure.app.storage.run_kinds import require_sphere
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.whole import write_whole

if TYPE_CHECKING:
    from colure.analysis.pipeline.joint_geometry import SolvedGeometry
    from colure.analysis.steps.joint_estimate import JointEstimate
    from colure.analysis.steps.moved_joints import SmallMotion
    from colure.analysis.steps.told_adjustments import ToldAdjustment

#: Members of a sum that weigh less than this against its largest are not named.
NAMED = 0.2
#: A motion whose uncertainty is at least this share of what was declared is one of which the run says nothing.
NOTHING = 0.98


@dataclass(frozen=True, kw_only=True)
class MotionRow:
    """One small motion as people read it.

    value, expanded, declared
        In `unit`; expanded values are k = 2.
    state
        `seen`, `in a sum` or `not seen`.
    """

    joint: str
    kind: str
    direction: tuple[float, float, float]
    value: float
    expanded: float
    declared: float
    unit: str
    state: str

    @property
    def called(self) -> str:
        """Name of the motion."""
        along = ", ".join(f"{x:.2g}" for x in self.direction)
        return f"{self.joint} zero" if self.kind == "zero" else f"{self.joint} {self.kind} ({along})"


@dataclass(frozen=True)
class SumRow:
    """One combination of motions that the run knows though it may not know its members.

    weights
        Of every member named, in the first one's unit for one unit of the member's own.
    """

    members: tuple[MotionRow, ...]
    weights: tuple[float, ...]
    value: float
    expanded: float
    clear: bool

    @property
    def sentence(self) -> str:
        """Say what is known."""
        first = self.members[0]
        terms = [first.called] + [
            f"{'-' if weight < 0.0 else '+'} {_times(weight, _per(first.unit, one.unit))}{one.called}"
            for one, weight in zip(self.members[1:], self.weights[1:], strict=True)
        ]
        amount = f"{self.value:+.4g} \u00b1 {self.expanded:.2g} {first.unit}"
        ending = "" if self.clear else ": 0 within its uncertainty, nothing to correct"
        if len(terms) == 1:
            return f"{terms[0]} = {amount}{ending}"
        return f"{' '.join(terms)} = {amount}{ending}; its members cannot be told apart"


def _times(weight: float, per: str) -> str:
    """Return a factor in front of a member; nothing for one."""
    return "" if not per and abs(abs(weight) - 1.0) < 0.005 else f"{abs(weight):.3g} {per}x "


def _per(unit: str, other: str) -> str:
    return "" if unit == other else f"{unit}/{other} "


@dataclass(frozen=True, kw_only=True)
class GeometryAnswer:
    """What a run tells of its mount.

    rows, sums
        Motions and sums of them.
    wanted
        What the run lacks, in words.
    before_db, after_db
        What does not fit into the device's waves, before and after.
    adjustments
        Of a built-in positioner, as the step `alignment` counts them; none of a mount with joints of its own.
    mark
        Of the run, by which it is known again.
    """

    rows: tuple[MotionRow, ...]
    sums: tuple[SumRow, ...]
    wanted: tuple[str, ...]
    before_db: float
    after_db: float
    conflict: float
    adjustments: tuple[ToldAdjustment, ...] = ()
    mark: str = ""

    @property
    def sum_tables(self) -> list[dict[str, object]]:
        """The sums as tables of a file: what is said, value, expanded value and unit."""
        return [
            {"says": one.sentence, "value": one.value, "expanded": one.expanded, "unit": one.members[0].unit}
            for one in self.sums
        ]


def solve_geometry(campaign: Campaign, run: RunFolder) -> GeometryAnswer:
    """Find the small motions of the mount on which a run was measured.

    Raises
    ------
    InputError
        If the run is no whole sphere in both polarizations, or the mount has no tolerances.
    """
    from colure.analysis.pipeline.joint_geometry import solved_geometry
    from colure.analysis.pipeline.stages import mark_of, seed_of
    from colure.analysis.steps.told_adjustments import told_adjustments

    record = one_distance(campaign, opened(run))
    require_sphere(record)
    frequency = record["frequency"].values
    try:
        geometry = solved_geometry(
            record, campaign.chamber, campaign.device, campaign.recipe(), probe=probe_of(campaign, frequency),
            reference=reference_of(campaign, frequency),
        )  # fmt: skip
    except ValueError as error:
        raise InputError([str(error)]) from None
    return replace(answer_of(geometry), mark=mark_of(seed_of(record)),
                   adjustments=told_adjustments(geometry.joints) if aligned_from_data(campaign) else ())  # fmt: skip


def aligned_from_data(campaign: Campaign) -> bool:
    """Tell whether later runs of this positioner start their alignment from readings: on roll over azimuth alone."""
    from colure.geometry.kinematics import Geometry

    positioner = campaign.chamber.positioner
    return not positioner.joints and positioner.geometry is Geometry.ROLL_OVER_AZIMUTH


def answer_of(geometry: SolvedGeometry) -> GeometryAnswer:
    """Put an estimate into rows and words."""
    from colure.geometry.conventions import amplitude_db

    joints = geometry.joints
    rows = tuple(_row(joints, number) for number in range(len(joints.motions)))
    sums = tuple(_sum(joints, rows, number) for number in range(joints.combinations.shape[1]))
    before, after = (float(amplitude_db(max(size, 1e-12))) for size in (joints.before, joints.after))
    return GeometryAnswer(
        rows=rows,
        sums=sums,
        wanted=tuple(_wanted(geometry, sums)),
        before_db=before,
        after_db=after,
        conflict=joints.conflict,
    )


def _shown(one: SmallMotion) -> tuple[float, str]:
    """Return how many shown units one declared standard deviation of a motion is, and the unit."""
    return (1e3 * one.size, "mm") if one.linear else (float(np.rad2deg(one.size)), "deg")


def _row(joints: JointEstimate, number: int) -> MotionRow:
    one = joints.motions[number]
    size, unit = _shown(one)
    way = np.array(one.shift if one.linear else one.turn)
    x, y, z = (float(v) for v in way / np.linalg.norm(way))
    sigma = float(joints.sigma[number])
    part = bool(np.any(np.abs(joints.combinations[number]) > NAMED)) if joints.combinations.size else False
    state = "seen" if joints.seen[number] else "in a sum" if part and sigma < NOTHING else "not seen"
    return MotionRow(
        joint=one.joint,
        kind=one.kind,
        direction=(x, y, z),
        value=size * float(joints.sizes[number]),
        expanded=2.0 * size * sigma,
        declared=2.0 * size,
        unit=unit,
        state=state,
    )


def _sum(joints: JointEstimate, rows: tuple[MotionRow, ...], number: int) -> SumRow:
    vector = joints.combinations[:, number].copy()
    order = np.argsort(-np.abs(vector), kind="stable")
    # What is not named is left out of the sum, and what that opens is in its uncertainty.
    vector[np.abs(vector) < NAMED * np.abs(vector[order[0]])] = 0.0
    first, size = order[0], _shown(joints.motions[order[0]])[0]
    vector = vector / vector[first]
    named = [int(i) for i in order if vector[i] != 0.0]
    weights = tuple(float(vector[i] * size / _shown(joints.motions[i])[0]) for i in named)
    sigma = float(np.sqrt(vector @ joints.covariance @ vector))
    value = float(vector @ joints.sizes)
    return SumRow(tuple(rows[i] for i in named), weights, size * value, 2.0 * size * sigma, abs(value) > 2.0 * sigma)


def _wanted(geometry: SolvedGeometry, sums: tuple[SumRow, ...]) -> list[str]:
    out = []
    if geometry.both_sides is None:
        out.append(
            "no slice of an azimuth/elevation positioner passes both poles, so no direction is seen again with the opposite error: only what "
            "the device's waves cannot follow is told, less than on roll over azimuth"
        )
    elif not geometry.both_sides:
        out.append(
            "polar angles were read on one side of zero only: a scan over both sides (theta from -180 to 180 deg) sees every "
            "direction of a slice again with the opposite error"
        )
    if not sums:
        out.append(
            "cannot tell: noise, echoes and drift of this run cover every motion within its declared tolerance; a longer "
            "averaging, a device that radiates off the axis (large or mounted aside), or a narrower room tells more"
        )
    out.append(
        "motions that act as a device which sits otherwise on its mount (turned or shifted as a whole) are in no run of one device: "
        "they stay as declared"
    )
    return out


def write_geometry(answer: GeometryAnswer, campaign: Campaign, run: RunFolder, target: Path) -> list[str]:
    """Write what was found, with proposals for chamber.toml; chamber.toml itself stays as it is. Return the proposals in words.

    Raises
    ------
    InputError
        If the file exists.
    """
    import tomlkit

    require_free(target)
    document = tomlkit.document()
    document.add(
        tomlkit.comment(f"Small motions of the mount as run {run.path.name} tells them: expanded values, k = 2.")
    )
    document.add(
        tomlkit.comment(
            "A proposal: nothing reads this file. Copy zeros into chamber.toml by hand, then measure again."
        )
    )
    proposals = proposed_zeros(answer, campaign)
    document["motions"] = [{**asdict(one), "direction": list(one.direction)} for one in answer.rows]
    document["sums"] = answer.sum_tables
    document["proposals"] = [{"joint": one.joint, one.entry: one.new, "instead_of": one.old} for one in proposals]
    write_whole(target, tomlkit.dumps(document))
    return [f"{one.joint}: {one.entry} = {one.new:.4f} instead of {one.old:g}" for one in proposals]


@dataclass(frozen=True, kw_only=True)
class ProposedZero:
    """A zero of chamber.toml that a run shows to be another one, in degrees or millimetres.

    joint, entry
        Name of the axis or joint, and of the entry in its table.
    old, new
        The zero as the run began with it, and as it should be.
    found, expanded
        By how much the true value is more than the one shown, with its expanded uncertainty (k = 2).
    """

    joint: str
    entry: str
    old: float
    new: float
    found: float
    expanded: float
    unit: str


def proposed_zeros(answer: GeometryAnswer, campaign: Campaign) -> list[ProposedZero]:
    """Return the zeros that were seen apart and stand out, with the chamber that the run began with."""
    out = []
    tables = campaign.chamber.driven_table
    for one in answer.rows:
        if one.state == "seen" and one.kind == "zero" and abs(one.value) > one.expanded and one.joint in tables:
            table = tables[one.joint]
            old = float(table.zero_deg)
            # The true value is sense * (readout - zero) plus what was found.
            out.append(
                ProposedZero(
                    joint=one.joint,
                    entry="zero_mm" if one.unit == "mm" else "zero_deg",
                    old=old,
                    new=old - table.sense * one.value,
                    found=one.value,
                    expanded=one.expanded,
                    unit=one.unit,
                )
            )
    return out
