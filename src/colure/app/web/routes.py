"""Every door of the control room: what it asks for, who may, and what it answers."""

from __future__ import annotations

import functools
import time
from collections.abc import Callable
from typing import Any

from colure.app.services.beam_search import set_home, set_zeros
from colure.app.web.bodies import (
    BeamKept,
    Beginning,
    Body,
    CampaignRequest,
    Command,
    Comparing,
    CutRequest,
    CutsOf,
    Direction,
    Form,
    GiveUp,
    Hold,
    HomeOf,
    Invite,
    LevelsRequest,
    Many,
    MoveRequest,
    Nothing,
    OneRun,
    Opened,
    Pair,
    PointAt,
    Rehearse,
    Said,
    SetHome,
    SetUpsRequest,
    SetZero,
    Spectral,
    Start,
)
from colure.app.web.guard.roles import SessionRole
from colure.app.web.guard.routes import Door
from colure.app.web.guard.sessions import Session
from colure.app.web.room import Room, stamp
from colure.app.web.scan.before import before as before_start
from colure.app.web.scan.messages import Before, ByHand, Idle, Status
from colure.app.web.views import aligning, answers, preparing
from colure.app.web.views import as_read as as_read_view
from colure.app.web.views import explore as explore_view
from colure.app.web.views import plan as plan_view
from colure.app.web.views import power as power_view
from colure.app.web.views import runs as runs_view
from colure.app.web.views import together as together_view
from colure.app.web.views import tutor as tutor_view
from colure.errors import InputError


async def me(room: Room, session: Session, ids: dict[str, str], body: None) -> answers.Me:
    holder = room.lease.holder
    return {"name": session.name, "role": session.role.word, "token": session.token,
            "lease": None if holder is None else holder.name,
            "mine": holder is session, "sequence": room.sequence,
            "campaigns": [{"id": key, "folder": folder.name} for key, folder in room.folders.items()]}  # fmt: skip


async def invite(room: Room, session: Session, ids: dict[str, str], body: Invite) -> answers.Code:
    return {"code": room.sessions.invite(SessionRole[body.role.upper()])}


async def lease(room: Room, session: Session, ids: dict[str, str], body: Hold) -> answers.Me:
    if body.hold and not room.lease.take(session):
        holder = room.lease.holder
        raise InputError([f"the motion lease is held by {holder.name if holder else 'another session'}"])
    if not body.hold:
        room.lease.give(session)
    return await me(room, session, ids, None)


async def campaigns(room: Room, session: Session, ids: dict[str, str], body: None) -> list[answers.CampaignRuns]:
    campaign_runs: list[answers.CampaignRuns] = []
    for key, folder in room.folders.items():
        runs = await room.desk.do(runs_view.runs_of, folder)
        campaign_runs.append({"id": key, "folder": folder.name, "runs": runs})
    return campaign_runs


async def form(room: Room, session: Session, ids: dict[str, str], body: None) -> preparing.FormAnswer:
    return await room.desk.do(plan_view.form_of, room.folder(ids["campaign"]))


async def plan(room: Room, session: Session, ids: dict[str, str], body: Form) -> preparing.PlanAnswer:
    return await room.desk.do(plan_view.consequences, room.folder(body.campaign), body.edits)


async def schemes(room: Room, session: Session, ids: dict[str, str], body: Form) -> list[preparing.Scheme]:
    return await room.desk.do(plan_view.schemes, room.folder(body.campaign), body.edits)


async def difference(room: Room, session: Session, ids: dict[str, str], body: Pair) -> answers.Difference:
    folder, chosen = room.folder(body.campaign), (body.frequency, body.plane_deg, body.basis, body.state)
    return await room.desk.do(explore_view.difference, folder, body.run, body.other, *chosen, kind="view")


async def motion(room: Room, session: Session, ids: dict[str, str], body: Form) -> preparing.Motion:
    return await room.desk.do(plan_view.motion_of, room.folder(body.campaign), body.edits)


async def save(room: Room, session: Session, ids: dict[str, str], body: Form) -> preparing.Written:
    if room.busy and room.scan is not None and room.scan.campaign == body.campaign:
        raise InputError(["a scan of this campaign is under way: its files stay as they are until it ends"])
    return {"written": await room.desk.do(plan_view.save, room.folder(body.campaign), body.edits, stamp())}


async def rehearse(room: Room, session: Session, ids: dict[str, str], body: Rehearse) -> answers.JobName:
    asked = (room.folder(body.campaign), body.edits, body.seed)
    return {"job": room.jobs.begin("rehearse", "rehearsal", session.name, plan_view.rehearsal_of, *asked)}


def _long(
    room: Room, session: Session, body: OneRun, name: str, words: str, work: Callable[..., Any]
) -> answers.JobName:
    said = f"{words} of run {body.run}{'' if body.state is None else f', state {body.state}'}"
    return {"job": room.jobs.begin(name, said, session.name, work, room.folder(body.campaign), body.run, body.state)}


async def report(room: Room, session: Session, ids: dict[str, str], body: OneRun) -> answers.JobName:
    return _long(room, session, body, "report", "report", explore_view.reported)


async def evaluate(room: Room, session: Session, ids: dict[str, str], body: OneRun) -> answers.JobName:
    return _long(room, session, body, "evaluate", "figures with intervals", explore_view.evaluated)


async def effects(room: Room, session: Session, ids: dict[str, str], body: OneRun) -> answers.JobName:
    return _long(room, session, body, "effects", "effect of every step", explore_view.effects)


async def judge(room: Room, session: Session, ids: dict[str, str], body: OneRun) -> answers.JobName:
    return _long(room, session, body, "judge", "verdict", explore_view.judged)


async def check(room: Room, session: Session, ids: dict[str, str], body: CampaignRequest) -> preparing.Checked:
    room.require_idle()
    lines = await room.desk.do(aligning.bench, room.folder(body.campaign), kind="view")
    room.checked[body.campaign] = {"at": time.time(), "lines": lines}
    return room.checked[body.campaign]


async def checked(room: Room, session: Session, ids: dict[str, str], body: None) -> preparing.Checked:
    room.folder(ids["campaign"])
    return room.checked.get(ids["campaign"], {"at": 0.0, "lines": []})


async def jobs(room: Room, session: Session, ids: dict[str, str], body: None) -> list[answers.JobState]:
    return [room.jobs.told(one, session.name) for one in room.jobs.all()]


async def job(room: Room, session: Session, ids: dict[str, str], body: None) -> answers.JobAnswer:
    work = room.jobs.find(ids["job"])
    return {"state": room.jobs.told(work, session.name), "result": work.result}


async def cancel(room: Room, session: Session, ids: dict[str, str], body: GiveUp) -> answers.JobState:
    room.jobs.cancel(body.job)
    return room.jobs.told(room.jobs.find(body.job), session.name)


async def before(room: Room, session: Session, ids: dict[str, str], body: Beginning) -> Before:
    return await room.desk.do(before_start, room.folder(body.campaign), body.run, body.kind, body.again)


async def where(room: Room, session: Session, ids: dict[str, str], body: CampaignRequest) -> ByHand:
    return await room.hand(body.campaign, "where", {}, "the axes are asked where they are")


async def sweep(room: Room, session: Session, ids: dict[str, str], body: CampaignRequest) -> ByHand:
    return await room.hand(body.campaign, "sweep", {}, "one sweep is taken")


async def move(room: Room, session: Session, ids: dict[str, str], body: MoveRequest) -> ByHand:
    said = ", ".join(f"{axis} to {value:g} deg" for axis, value in body.to_deg.items())
    return await room.hand(body.campaign, "move", dict(body.to_deg), f"by hand: {said}", body.speed_deg_s)


async def point(room: Room, session: Session, ids: dict[str, str], body: PointAt) -> ByHand:
    words = f"by hand: to theta {body.theta_deg:g}, phi {body.phi_deg:g} deg"
    values = {"theta": body.theta_deg, "phi": body.phi_deg}
    return await room.hand(body.campaign, "point", values, words, body.speed_deg_s)


async def rest(room: Room, session: Session, ids: dict[str, str], body: HomeOf) -> ByHand:
    if body.seek:
        if body.speed_deg_s is not None:
            raise InputError(["speed_deg_s: reference marks are sought at the controller's own speed; leave it out"])
        return await room.hand(body.campaign, "home", {}, "all axes seek their reference marks")
    return await room.hand(body.campaign, "rest", {}, "by hand: all axes to their home", body.speed_deg_s)


async def set_rest(room: Room, session: Session, ids: dict[str, str], body: SetHome) -> preparing.Written:
    room.require_idle()
    where = room.folder(body.campaign)
    return {"written": await room.desk.do(plan_view.save_readouts, where, "home", dict(body.home_deg), stamp())}


async def set_zero(room: Room, session: Session, ids: dict[str, str], body: SetZero) -> preparing.Written:
    room.require_idle()
    where = room.folder(body.campaign)
    return {"written": await room.desk.do(plan_view.save_readouts, where, "zero", dict(body.zero_deg), stamp())}


async def thumb(room: Room, session: Session, ids: dict[str, str], body: OneRun) -> answers.Thumb:
    return await room.desk.do(as_read_view.thumb, room.folder(body.campaign), body.run, kind="view")


async def as_read(room: Room, session: Session, ids: dict[str, str], body: OneRun) -> answers.AsRead:
    return await room.desk.do(as_read_view.as_read, room.folder(body.campaign), body.run, kind="view")


async def identity(room: Room, session: Session, ids: dict[str, str], body: Said) -> dict[str, str]:
    return await room.desk.do(runs_view.said_of, room.folder(body.campaign), body.run, dict(body.said))


async def spectrum(room: Room, session: Session, ids: dict[str, str], body: Spectral) -> answers.Spectrum:
    asked = (body.theta_deg, body.phi_deg, body.basis)
    return await room.desk.do(explore_view.spectrum, *_run(room, body), *asked, kind="view")


async def verdicts(room: Room, session: Session, ids: dict[str, str], body: OneRun) -> answers.VerdictsAnswer | None:
    return await room.desk.do(explore_view.verdicts, room.folder(body.campaign), body.run, body.state, kind="view")


async def tutor(room: Room, session: Session, ids: dict[str, str], body: Direction) -> preparing.Lesson:
    asked = (body.theta_deg, body.phi_deg, body.slant_deg)
    if body.campaign is None:
        return tutor_view.lesson(*asked)
    return await room.desk.do(tutor_view.lesson, *asked, room.folder(body.campaign))


async def start(room: Room, session: Session, ids: dict[str, str], body: Start) -> answers.Sequence:
    room.require_current(body.sequence)
    await room.start(
        body.campaign, body.run, kind=body.kind, home=body.home, despite_check=body.despite_check, again=body.again
    )
    return {"sequence": room.sequence}


async def steer(room: Room, session: Session, ids: dict[str, str], body: Command, *, word: str) -> answers.Sequence:
    room.require_current(body.sequence)
    if room.scan is None or room.scan.run != body.run or not room.say(word):
        raise InputError([f"run {body.run}: is not under way"])
    return {"sequence": room.sequence}


async def stop(room: Room, session: Session, ids: dict[str, str], body: Nothing) -> answers.Stopping:
    return {"stopping": room.say("stop"), "sequence": room.sequence}


async def abort(room: Room, session: Session, ids: dict[str, str], body: Nothing) -> answers.Stopping:
    return {"stopping": room.say("abort"), "sequence": room.sequence}


async def scan(room: Room, session: Session, ids: dict[str, str], body: None) -> Status | Idle:
    return {"type": "status", "state": "idle", "running": False} if room.scan is None else room.scan.status()


async def overview(room: Room, session: Session, ids: dict[str, str], body: Opened) -> answers.Overview:
    return await room.desk.do(explore_view.overview, *_run(room, body), kind="view")


async def cut(room: Room, session: Session, ids: dict[str, str], body: CutRequest) -> answers.CutAnswer:
    return await room.desk.do(
        explore_view.cut, *_run(room, body), body.frequency, body.plane_deg, body.basis, kind="view"
    )


async def field_map(room: Room, session: Session, ids: dict[str, str], body: LevelsRequest) -> answers.FieldMap:
    chosen = (body.frequency, body.coordinates, body.basis)
    return await room.desk.do(explore_view.field_map, *_run(room, body), *chosen, kind="view")


async def masks(room: Room, session: Session, ids: dict[str, str], body: CutRequest) -> answers.Masks:
    folder = room.folder(body.campaign)
    asked = (body.run, body.frequency, body.plane_deg, body.state)
    return await room.desk.do(explore_view.mask_levels, folder, *asked, kind="view")


async def impulse(room: Room, session: Session, ids: dict[str, str], body: OneRun) -> answers.Impulse:
    return await room.desk.do(explore_view.impulse, room.folder(body.campaign), body.run, kind="view")


async def findings(room: Room, session: Session, ids: dict[str, str], body: OneRun) -> answers.Findings:
    return await room.desk.do(explore_view.findings, room.folder(body.campaign), body.run, body.state, kind="view")


async def aperture(room: Room, session: Session, ids: dict[str, str], body: CutRequest) -> answers.Aperture:
    folder = room.folder(body.campaign)
    return await room.desk.do(explore_view.aperture, folder, body.run, body.state, body.frequency, kind="view")


async def cuts(room: Room, session: Session, ids: dict[str, str], body: CutsOf) -> together_view.CutsRun:
    asked = (body.run, body.state, body.frequency)
    return await room.desk.do(together_view.cuts_of, room.folder(body.campaign), *asked, kind="view")


async def power(room: Room, session: Session, ids: dict[str, str], body: CutsOf) -> power_view.PowerView:
    asked = (body.run, body.state, body.frequency)
    return await room.desk.do(power_view.levels_of, room.folder(body.campaign), *asked, kind="view")


async def series(room: Room, session: Session, ids: dict[str, str], body: Many) -> together_view.Series:
    asked = (body.runs, body.golden, body.state)
    return await room.desk.do(together_view.over_runs, room.folder(body.campaign), *asked, kind="view")


async def coverage(room: Room, session: Session, ids: dict[str, str], body: OneRun) -> answers.JobName:
    words = f"coverage of run {body.run}"
    asked = (room.folder(body.campaign), body.run)
    return {"job": room.jobs.begin("coverage", words, session.name, together_view.over_states, *asked)}


async def compare(room: Room, session: Session, ids: dict[str, str], body: Comparing) -> answers.JobName:
    words = f"comparison of run {body.run} with {body.other}"
    asked = (room.folder(body.campaign), body.run, body.state, body.other, body.matched)
    return {"job": room.jobs.begin("compare", words, session.name, together_view.comparison, *asked)}


async def set_ups(room: Room, session: Session, ids: dict[str, str], body: SetUpsRequest) -> answers.JobName:
    words = f"set-ups of runs {body.run} and {body.other}"
    asked = (room.folder(body.campaign), body.run, body.state, room.folder(body.other_campaign), body.other)
    return {"job": room.jobs.begin("set-ups", words, session.name, together_view.two_set_ups, *asked)}


async def flip(room: Room, session: Session, ids: dict[str, str], body: OneRun) -> preparing.FlipWords:
    return await room.desk.do(aligning.flip_words, room.folder(body.campaign), body.run, kind="view")


async def beam(room: Room, session: Session, ids: dict[str, str], body: OneRun) -> preparing.BeamWords:
    return await room.desk.do(aligning.beam_words, room.folder(body.campaign), body.run, kind="view")


async def home(room: Room, session: Session, ids: dict[str, str], body: BeamKept) -> list[str]:
    if room.busy:
        raise InputError(["a scan is under way: the chamber's file stays as it is until it ends"])
    keep = set_zeros if body.into == "zeros" else set_home
    return await room.desk.do(keep, room.folder(body.campaign), body.run, stamp(), kind="view")


def _run(room: Room, body: Opened) -> tuple[Any, ...]:
    trial = explore_view.ViewSettings(tuple(sorted(set(body.off))), body.gate_ns)
    return room.folder(body.campaign), body.run, body.state, trial


def _get(path: str, role: SessionRole, summary: str, handler: Any) -> Door:
    return Door("GET", path, role, summary, handler)


def _post(path: str, role: SessionRole, summary: str, handler: Any, body: type[Body], **more: bool) -> Door:
    return Door("POST", path, role, summary, handler, body, **more)


V, O, C = SessionRole.VIEW, SessionRole.OPERATE, SessionRole.CONFIGURE  # noqa: E741 - a table is read by columns
DOORS: tuple[Door, ...] = (
    Door("GET", "/launch", SessionRole.NOBODY, "open a session with a launch code"),
    Door("GET", "/", V, "the page"),
    Door("GET", "/assets/{name}", V, "a file of the page"),
    Door("WS", "/api/live", V, "the scan as it happens"),
    Door("GET", "/api/openapi", V, "this table for programs"),
    Door("GET", "/api/report/{campaign}/{run}/{kind}", V, "a report as it was written"),
    _get("/api/me", V, "who this session is, and who holds the motion lease", me),
    _get("/api/campaigns", V, "campaigns and their runs", campaigns),
    _get("/api/form/{campaign}", V, "the form of a campaign", form),
    _get("/api/scan", V, "the scan's state", scan),
    _get("/api/jobs", V, "all long work, the newest first", jobs),
    _get("/api/job/{job}", V, "how long work stands, and what it ended with", job),
    _get("/api/checked/{campaign}", V, "what the instruments last answered", checked),
    _post("/api/invite", C, "a launch code for somebody else", invite, Invite),
    _post("/api/lease", O, "take, renew or give back the motion lease", lease, Hold),
    _post("/api/plan", V, "what follows from a form", plan, Form),
    _post("/api/schemes", V, "positioners and polarization schemes side by side", schemes, Form),
    _post("/api/difference", V, "difference between two runs' fields, matched", difference, Pair),
    _post("/api/motion", V, "the way of the axes of a form", motion, Form),
    _post("/api/save", C, "write a form into the campaign's files", save, Form),
    _post("/api/tutor", V, "one direction in all coordinates and polarizations", tutor, Direction),
    _post("/api/rehearse", O, "carry a form's plan out on the simulated chamber", rehearse, Rehearse),
    _post("/api/check", O, "talk to every instrument, move nothing", check, CampaignRequest),
    _post("/api/cancel", O, "give long work up", cancel, GiveUp),
    _post("/api/before", V, "what a person reads before a start", before, Beginning),
    _post("/api/where", O, "where the axes are", where, CampaignRequest),
    _post("/api/sweep", O, "take one sweep, move nothing", sweep, CampaignRequest, lease=True),
    _post("/api/move", O, "turn axes by hand", move, MoveRequest, lease=True),
    _post("/api/point", O, "point the device at a direction", point, PointAt, lease=True),
    _post("/api/rest", O, "all axes to their home, or seek their marks", rest, HomeOf, lease=True),
    _post("/api/set-rest", C, "make readouts the axes' home", set_rest, SetHome),
    _post("/api/set-zero", C, "make readouts the axes' zeros", set_zero, SetZero),
    _post("/api/identity", O, "say what a run is kept and found by", identity, Said),
    _post("/api/start", O, "start a scan, or go on with it", start, Start, lease=True),
    _post("/api/pause", O, "rest after the point in flight", functools.partial(steer, word="pause"), Command,
    lease=True),
    _post("/api/resume", O, "go on after a pause", functools.partial(steer, word="resume"), Command, lease=True),
    _post("/api/abort", O, "brake, take the drives' power away and end the scan", abort, Nothing),
    _post("/api/stop", V, "brake the axes and end the scan; from any session, always", stop, Nothing, reserved=True),
    _post("/api/thumb", V, "a small picture of a run", thumb, OneRun),
    _post("/api/as-read", V, "levels of a run without a pattern, as they were read", as_read, OneRun),
    _post("/api/spectrum", V, "one direction over all frequencies", spectrum, Spectral),
    _post("/api/verdicts", V, "the verdicts that are kept beside a run", verdicts, OneRun),
    _post("/api/judge", O, "hold limits.toml against a run", judge, OneRun),
    _post("/api/overview", V, "what a run holds", overview, Opened),
    _post("/api/cut", V, "a cut through the peak", cut, CutRequest),
    _post("/api/map", V, "levels over a grid of coordinates", field_map, LevelsRequest),
    _post("/api/masks", V, "masks of limits.toml in a plane", masks, CutRequest),
    _post("/api/impulse", V, "the impulse response", impulse, OneRun),
    _post("/api/findings", V, "self-consistency checks", findings, OneRun),
    _post("/api/aperture", V, "the picture of a panel's face", aperture, CutRequest),
    _post("/api/cuts", V, "what a run of cuts holds", cuts, CutsOf),
    _post("/api/power", V, "what a run of levels without phase holds", power, CutsOf),
    _post("/api/series", V, "many runs, each against a golden unit's", series, Many),
    _post("/api/coverage", O, "coverage of every state, and of the best", coverage, OneRun),
    _post("/api/compare", O, "every figure of two runs held against each other", compare, Comparing),
    _post("/api/two-set-ups", O, "one device in two set-ups", set_ups, SetUpsRequest),
    _post("/api/flip", V, "what a flip test found", flip, OneRun),
    _post("/api/beam", V, "what a beam search found", beam, OneRun),
    _post("/api/home", C, "make the beam's readouts the axes' home, or their zeros", home, BeamKept),
    _post("/api/effects", O, "what every step of the recipe does", effects, OneRun),
    _post("/api/evaluate", O, "read every figure with its interval", evaluate, OneRun),
    _post("/api/report", O, "write a run's report", report, OneRun),
)  # fmt: skip

#: What slow work ends with, by the door that begins it.
RESULTS: dict[str, Any] = {
    "/api/rehearse": preparing.RehearsalAnswer,
    "/api/effects": answers.Effects,
    "/api/evaluate": int,
    "/api/report": list[str],
    "/api/judge": answers.VerdictsAnswer | None,
    "/api/coverage": together_view.Coverage,
    "/api/compare": together_view.Comparison,
    "/api/two-set-ups": together_view.SetUpsWords,
}
