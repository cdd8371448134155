"""What a question to the control room may hold: every field with its bounds, nothing that is not named."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

from colure.app.web.scan.layout import Kind

Id = Annotated[str, Field(pattern=r"^[A-Za-z0-9_-]{1,80}$")]
Number = Annotated[float, Field(ge=-1e9, le=1e9)]
BandEntry = Literal["start_ghz", "stop_ghz", "points", "step_mhz", "frequencies_ghz", "if_bandwidth_hz", "power_dbm"]
#: One [[band]] of goal.toml; what is None is left out.
BandEdit = dict[BandEntry, int | Number | list[Number] | None]
Value = float | int | str | bool | None | list[Number] | Annotated[list[BandEdit], Field(min_length=1, max_length=40)]
Edits = Annotated[dict[Annotated[str, Field(max_length=80)], Value], Field(max_length=60)]
BasisName = Literal["theta-phi", "ludwig-2-az-over-el", "ludwig-2-el-over-az", "ludwig-3", "circular"]
Index = Annotated[int, Field(ge=0, le=1_000_000)]
#: Slices of a finished run that are measured again, such as 3,7-9 or reference; empty: nothing is.
Again = Annotated[str, Field(pattern=r"^[a-z0-9, -]{0,200}$")]


class Body(BaseModel):
    """What a POST holds: nothing that is not named."""

    model_config = ConfigDict(extra="forbid", strict=False, allow_inf_nan=False)


class Nothing(Body):
    """An empty body."""


class Invite(Body):
    role: Literal["view", "operate", "configure"]


class Hold(Body):
    hold: bool


class Form(Body):
    campaign: Id
    edits: Edits = Field(default_factory=dict)


class Rehearse(Form):
    seed: int = Field(default=1, ge=0, le=2**31 - 1)


class Direction(Body):
    """A direction for the tutor; with a campaign also how its own mount looks there."""

    campaign: Id | None = None
    theta_deg: float = Field(ge=0, le=180)
    phi_deg: float = Field(ge=-720, le=720)
    slant_deg: float = Field(default=0.0, ge=-360, le=360)


class Start(Body):
    campaign: Id
    run: Id
    sequence: Index
    cautions_read: Literal[True]
    kind: Kind = "scan"
    home: bool = False
    despite_check: bool = False
    again: Again = ""


class CampaignRequest(Body):
    campaign: Id


class Beginning(Body):
    campaign: Id
    run: Id
    kind: Kind = "scan"
    again: Again = ""


class GiveUp(Body):
    job: Id


#: An axis: one of the positioners' own, or a joint as chamber.toml names it.
AxisKey = Annotated[str, Field(pattern=r"^[A-Za-z][A-Za-z0-9_-]{0,39}$")]
SaidKey = Annotated[str, Field(pattern=r"^[a-z_]{1,30}$")]
#: Axes that one move may name: a mount may have many joints.
MOST_AXES = 24
Turn = Annotated[float, Field(ge=-3600, le=3600)]


Speed = Annotated[float, Field(ge=0.01, le=1000)]


class MoveRequest(Body):
    campaign: Id
    to_deg: Annotated[dict[AxisKey, Turn], Field(min_length=1, max_length=MOST_AXES)]
    speed_deg_s: Speed | None = None
    clear: Literal[True]


class PointAt(Body):
    campaign: Id
    theta_deg: float = Field(ge=0, le=180)
    phi_deg: float = Field(ge=-720, le=720)
    speed_deg_s: Speed | None = None
    clear: Literal[True]


class HomeOf(Body):
    campaign: Id
    seek: bool = False
    speed_deg_s: Speed | None = None
    clear: Literal[True]


class SetHome(Body):
    campaign: Id
    home_deg: Annotated[dict[AxisKey, Turn], Field(min_length=1, max_length=MOST_AXES)]


class SetZero(Body):
    campaign: Id
    zero_deg: Annotated[dict[AxisKey, Turn], Field(min_length=1, max_length=MOST_AXES)]


class Said(Body):
    campaign: Id
    run: Id
    said: Annotated[dict[SaidKey, Annotated[str, Field(max_length=2000)]], Field(max_length=6)]


class Command(Body):
    run: Id
    sequence: Index


GateTime = Annotated[float, Field(ge=-1e6, le=1e6)]
GateWidth = Annotated[float, Field(gt=0, le=1e6)]


class Opened(Body):
    campaign: Id
    run: Id
    state: Id | None = None
    off: Annotated[list[Id], Field(max_length=20)] = Field(default_factory=list)
    gate_ns: tuple[GateTime, GateWidth] | None = None


class CutRequest(Opened):
    frequency: Index = 0
    plane_deg: float = Field(default=0.0, ge=-360, le=360)
    basis: BasisName = "ludwig-3"


class Pair(CutRequest):
    other: Id


class LevelsRequest(Opened):
    frequency: Index = 0
    coordinates: Literal["theta-phi", "az-el", "alpha-epsilon", "u-v"] = "theta-phi"
    basis: BasisName = "ludwig-3"


class Spectral(Opened):
    theta_deg: float = Field(ge=0, le=180)
    phi_deg: float = Field(ge=-720, le=720)
    basis: BasisName = "ludwig-3"


class OneRun(Body):
    campaign: Id
    run: Id
    state: Id | None = None


class BeamKept(OneRun):
    """A beam search whose readouts become the axes' home, or their zeros."""

    into: Literal["home", "zeros"] = "home"


class Comparing(OneRun):
    """A run and another one of the same campaign, and what is taken out of their difference."""

    other: Id
    matched: Annotated[list[Literal["frame", "origin", "level"]], Field(max_length=3)] = Field(default_factory=list)


class Many(Body):
    """Runs of one campaign in the order they were measured, and the one that the others are held against."""

    campaign: Id
    runs: Annotated[list[Id], Field(min_length=2, max_length=60)]
    golden: Id
    state: Id | None = None


class SetUpsRequest(OneRun):
    """A run, and one of another campaign: the same device in another set-up."""

    other_campaign: Id
    other: Id


class CutsOf(OneRun):
    """A run of cuts at one of its frequencies; the one that its charts show if none is named."""

    frequency: Index | None = None
