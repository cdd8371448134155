"""Every door of the control room: what it asks for, who may, and what it answers."""

from __future__ import annotations

import functools
from typing import Annotated, Any, Literal

from pydantic import BaseModel, ConfigDict, Field

from colure.app.services.beam_search import set_home
from colure.app.web.guard.roles import Role
from colure.app.web.guard.routes import Door
from colure.app.web.guard.sessions import Session
from colure.app.web.room import Room, stamp
from colure.app.web.scan.layout import Kind
from colure.app.web.scan.messages import Idle, Status
from colure.app.web.views import answers
from colure.app.web.views import explore as explore_view
from colure.app.web.views import plan as plan_view
from colure.app.web.views import tutor as tutor_view
from colure.errors import InputError

Id = Annotated[str, Field(pattern=r"^[A-Za-z0-9_-]{1,80}$")]
Value = float | int | str | bool | None | list[Annotated[float, Field(ge=-1e9, le=1e9)]]
Edits = Annotated[dict[Annotated[str, Field(max_length=80)], Value], Field(max_length=60)]
Basis = Literal["theta-phi", "ludwig-2-az-over-el", "ludwig-2-el-over-az", "ludwig-3", "circular"]
Index = Annotated[int, Field(ge=0, le=1_000_000)]


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


class Cut(Opened):
    frequency: Index = 0
    plane_deg: float = Field(default=0.0, ge=-360, le=360)
    basis: Basis = "ludwig-3"


class Pair(Cut):
    other: Id


class Levels(Opened):
    frequency: Index = 0
    coordinates: Literal["theta-phi", "az-el", "alpha-epsilon", "u-v"] = "theta-phi"
    basis: Basis = "ludwig-3"
    component: Literal["first", "second", "total"] = "total"


class OneRun(Body):
    campaign: Id
    run: Id
    state: Id | None = None


async def me(room: Room, session: Session, ids: dict[str, str], body: None) -> answers.Me:
    holder = room.lease.holder
    return {"name": session.name, "role": session.role.word, "token": session.token, "lease": None if holder is None else holder.name,
            "mine": holder is session, "sequence": room.sequence,
            "campaigns": [{"id": key, "folder": folder.name} for key, folder in room.folders.items()]}  # fmt: skip


async def invite(room: Room, session: Session, ids: dict[str, str], body: Invite) -> answers.Code:
    return {"code": room.sessions.invite(Role[body.role.upper()])}


async def lease(room: Room, session: Session, ids: dict[str, str], body: Hold) -> answers.Me:
    if body.hold and not room.lease.take(session):
        holder = room.lease.holder
        raise InputError([f"the motion lease is held by {holder.name if holder else 'another session'}"])
    if not body.hold:
        room.lease.give(session)
    return await me(room, session, ids, None)


async def campaigns(room: Room, session: Session, ids: dict[str, str], body: None) -> list[answers.CampaignRuns]:
    found: list[answers.CampaignRuns] = []
    for key, folder in room.folders.items():
        runs = await room.desk.do(explore_view.runs_of, folder)
        found.append({"id": key, "folder": folder.name, "runs": runs})
    return found


async def form(room: Room, session: Session, ids: dict[str, str], body: None) -> answers.FormAnswer:
    return await room.desk.do(plan_view.form_of, room.folder(ids["campaign"]))


async def plan(room: Room, session: Session, ids: dict[str, str], body: Form) -> answers.PlanAnswer:
    return await room.desk.do(plan_view.consequences, room.folder(body.campaign), body.edits)


async def schemes(room: Room, session: Session, ids: dict[str, str], body: Form) -> list[answers.Scheme]:
    return await room.desk.do(plan_view.schemes, room.folder(body.campaign), body.edits)


async def difference(room: Room, session: Session, ids: dict[str, str], body: Pair) -> answers.Difference:
    folder, chosen = room.folder(body.campaign), (body.frequency, body.plane_deg, body.basis, body.state)
    return await room.desk.do(explore_view.difference, folder, body.run, body.other, *chosen, kind="slow")


async def motion(room: Room, session: Session, ids: dict[str, str], body: Form) -> answers.Motion:
    return await room.desk.do(plan_view.motion_of, room.folder(body.campaign), body.edits)


async def save(room: Room, session: Session, ids: dict[str, str], body: Form) -> answers.Written:
    if room.busy and room.scan is not None and room.scan.campaign == body.campaign:
        raise InputError(["a scan of this campaign is under way: its files stay as they are until it ends"])
    return {"written": await room.desk.do(plan_view.save, room.folder(body.campaign), body.edits, stamp())}


async def rehearse(room: Room, session: Session, ids: dict[str, str], body: Rehearse) -> answers.JobName:
    work = room.desk.do(plan_view.rehearsal_of, room.folder(body.campaign), body.edits, body.seed, kind="slow")
    return {"job": room.begin("rehearse", work)}


async def report(room: Room, session: Session, ids: dict[str, str], body: OneRun) -> answers.JobName:
    work = room.desk.do(explore_view.reported, room.folder(body.campaign), body.run, body.state, kind="slow")
    return {"job": room.begin("report", work)}


async def evaluate(room: Room, session: Session, ids: dict[str, str], body: OneRun) -> answers.JobName:
    work = room.desk.do(explore_view.evaluated, room.folder(body.campaign), body.run, body.state, kind="slow")
    return {"job": room.begin("evaluate", work)}


async def effects(room: Room, session: Session, ids: dict[str, str], body: OneRun) -> answers.JobName:
    work = room.desk.do(explore_view.effects, room.folder(body.campaign), body.run, body.state, kind="slow")
    return {"job": room.begin("effects", work)}


async def bench(room: Room, session: Session, ids: dict[str, str], body: OneRun) -> answers.JobName:
    if room.busy:
        raise InputError(["a scan is under way: the instruments are its own"])
    work = room.desk.do(explore_view.bench, room.folder(body.campaign), kind="slow")
    return {"job": room.begin("bench", work)}


async def job(room: Room, session: Session, ids: dict[str, str], body: None) -> Any:
    found = room.jobs.get(ids["job"])
    if found is None:
        raise InputError([f"job = {ids['job']!r}: was never begun"])
    if not found.done():
        return {"done": False}
    if found.cancelled():
        raise InputError([f"job {ids['job']}: was given up"])
    return {"done": True, "result": found.result()}


async def tutor(room: Room, session: Session, ids: dict[str, str], body: Direction) -> answers.Lesson:
    return tutor_view.lesson(body.theta_deg, body.phi_deg, body.slant_deg)


async def cautions(room: Room, session: Session, ids: dict[str, str], body: None) -> list[str]:
    return await room.desk.do(explore_view.cautions, room.folder(ids["campaign"]))


async def start(room: Room, session: Session, ids: dict[str, str], body: Start) -> answers.Sequence:
    room.require_current(body.sequence)
    await room.start(body.campaign, body.run, kind=body.kind, home=body.home)
    return {"sequence": room.sequence}


async def steer(room: Room, session: Session, ids: dict[str, str], body: Command, *, word: str) -> answers.Sequence:
    room.require_current(body.sequence)
    if room.scan is None or room.scan.run != body.run or not room.say(word):
        raise InputError([f"run {body.run}: is not under way"])
    return {"sequence": room.sequence}


async def stop(room: Room, session: Session, ids: dict[str, str], body: Nothing) -> answers.Stopping:
    return {"stopping": room.say("stop"), "sequence": room.sequence}


async def scan(room: Room, session: Session, ids: dict[str, str], body: None) -> Status | Idle:
    return {"type": "status", "state": "idle", "running": False} if room.scan is None else room.scan.status()


async def overview(room: Room, session: Session, ids: dict[str, str], body: Opened) -> answers.Overview:
    return await room.desk.do(explore_view.overview, *_run(room, body), kind="slow")


async def cut(room: Room, session: Session, ids: dict[str, str], body: Cut) -> answers.CutAnswer:
    return await room.desk.do(
        explore_view.cut, *_run(room, body), body.frequency, body.plane_deg, body.basis, kind="slow"
    )


async def field_map(room: Room, session: Session, ids: dict[str, str], body: Levels) -> answers.FieldMap:
    chosen = (body.frequency, body.coordinates, body.basis, body.component)
    return await room.desk.do(explore_view.field_map, *_run(room, body), *chosen, kind="slow")


async def masks(room: Room, session: Session, ids: dict[str, str], body: Cut) -> list[answers.MaskLevel]:
    folder = room.folder(body.campaign)
    asked = (body.run, body.frequency, body.plane_deg, body.state)
    return await room.desk.do(explore_view.mask_levels, folder, *asked, kind="slow")


async def impulse(room: Room, session: Session, ids: dict[str, str], body: OneRun) -> answers.Impulse:
    return await room.desk.do(explore_view.impulse, room.folder(body.campaign), body.run, kind="slow")


async def findings(room: Room, session: Session, ids: dict[str, str], body: OneRun) -> list[answers.FindingRow]:
    return await room.desk.do(explore_view.findings, room.folder(body.campaign), body.run, body.state, kind="slow")


async def aperture(room: Room, session: Session, ids: dict[str, str], body: Cut) -> answers.Face | None:
    folder = room.folder(body.campaign)
    return await room.desk.do(explore_view.aperture, folder, body.run, body.state, body.frequency, kind="slow")


async def flip(room: Room, session: Session, ids: dict[str, str], body: OneRun) -> answers.FlipWords:
    return await room.desk.do(explore_view.flip_words, room.folder(body.campaign), body.run, kind="slow")


async def beam(room: Room, session: Session, ids: dict[str, str], body: OneRun) -> answers.BeamWords:
    return await room.desk.do(explore_view.beam_words, room.folder(body.campaign), body.run, kind="slow")


async def home(room: Room, session: Session, ids: dict[str, str], body: OneRun) -> list[str]:
    if room.busy:
        raise InputError(["a scan is under way: the chamber's file stays as it is until it ends"])
    return await room.desk.do(set_home, room.folder(body.campaign), body.run, stamp(), kind="slow")


def _run(room: Room, body: Opened) -> tuple[Any, ...]:
    trial = explore_view.Trial(tuple(sorted(set(body.off))), body.gate_ns)
    return room.folder(body.campaign), body.run, body.state, trial


def _get(path: str, role: Role, summary: str, handler: Any) -> Door:
    return Door("GET", path, role, summary, handler)


def _post(path: str, role: Role, summary: str, handler: Any, body: type[Body], **more: bool) -> Door:
    return Door("POST", path, role, summary, handler, body, **more)


V, O, C = Role.VIEW, Role.OPERATE, Role.CONFIGURE  # noqa: E741 - a table is read by columns
DOORS: tuple[Door, ...] = (
    Door("GET", "/launch", Role.NOBODY, "open a session with a launch code"),
    Door("GET", "/", V, "the page"),
    Door("GET", "/assets/{name}", V, "a file of the page"),
    Door("WS", "/api/live", V, "the scan as it happens"),
    Door("GET", "/api/openapi", V, "this table for programs"),
    Door("GET", "/api/report/{campaign}/{run}/{kind}", V, "a report as it was written"),
    _get("/api/me", V, "who this session is, and who holds the motion lease", me),
    _get("/api/campaigns", V, "campaigns and their runs", campaigns),
    _get("/api/form/{campaign}", V, "the form of a campaign", form),
    _get("/api/cautions/{campaign}", V, "what a person reads before anything moves", cautions),
    _get("/api/scan", V, "the scan's state", scan),
    _get("/api/job/{job}", V, "how slow work stands", job),
    _post("/api/invite", C, "a launch code for somebody else", invite, Invite),
    _post("/api/lease", O, "take, renew or give back the motion lease", lease, Hold),
    _post("/api/plan", V, "what follows from a form", plan, Form),
    _post("/api/schemes", V, "positioners and polarization schemes side by side", schemes, Form),
    _post("/api/difference", V, "what is left between two runs, matched", difference, Pair),
    _post("/api/motion", V, "the way of the axes of a form", motion, Form),
    _post("/api/save", C, "write a form into the campaign's files", save, Form),
    _post("/api/tutor", V, "one direction in all coordinates and polarizations", tutor, Direction),
    _post("/api/rehearse", V, "carry a form's plan out on the simulated chamber", rehearse, Rehearse),
    _post("/api/check", O, "talk to every instrument, move nothing", bench, OneRun),
    _post("/api/start", O, "start a scan, or go on with it", start, Start, lease=True),
    _post("/api/pause", O, "rest after the point in flight", functools.partial(steer, word="pause"), Command, lease=True),
    _post("/api/resume", O, "go on after a pause", functools.partial(steer, word="resume"), Command, lease=True),
    _post("/api/stop", V, "brake the axes and end the scan; from any session, always", stop, Nothing, reserved=True),
    _post("/api/overview", V, "what a run holds", overview, Opened),
    _post("/api/cut", V, "a cut through the peak", cut, Cut),
    _post("/api/map", V, "levels over a grid of coordinates", field_map, Levels),
    _post("/api/masks", V, "masks of limits.toml in a plane", masks, Cut),
    _post("/api/impulse", V, "the impulse response", impulse, OneRun),
    _post("/api/findings", V, "what the data say of themselves", findings, OneRun),
    _post("/api/aperture", V, "the picture of a panel's face", aperture, Cut),
    _post("/api/flip", V, "what a flip test found", flip, OneRun),
    _post("/api/beam", V, "what a beam search found", beam, OneRun),
    _post("/api/home", C, "make the beam's readouts the axes' zeros", home, OneRun),
    _post("/api/effects", V, "what every step of the recipe does", effects, OneRun),
    _post("/api/evaluate", O, "read every figure with its interval", evaluate, OneRun),
    _post("/api/report", O, "write a run's report", report, OneRun),
)  # fmt: skip

#: What slow work ends with, by the door that begins it.
RESULTS: dict[str, Any] = {
    "/api/rehearse": answers.Rehearsal,
    "/api/check": list[answers.InstrumentLine],
    "/api/effects": answers.Effects,
    "/api/evaluate": int,
    "/api/report": list[str],
}
