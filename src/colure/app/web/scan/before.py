"""What a person reads before anything moves: which run, how long, and what of it is on disk already."""

from __future__ import annotations

from pathlib import Path

from colure.acquire.glance import Glance, glance
from colure.app.services.acquisition import require_writable
from colure.app.services.bench_check import failed_checks
from colure.app.services.cautions import cautions_of
from colure.app.services.connecting import is_simulated
from colure.app.services.measuring_again import again_plan
from colure.app.storage.folders import RunFolder, require_begun, run_folder
from colure.app.web.scan.layout import Kind, planned
from colure.app.web.scan.messages import Before, Held, HeldState
from colure.errors import InputError


def held(run: RunFolder) -> Held:
    """Return what is on disk of a run: nothing, a beginning, or all of it."""
    seen = glance(run.journal)
    if seen is None:
        bare: HeldState = "complete" if run.record.is_file() else "damaged" if run.journal.is_file() else "nothing"
        return {"state": bare, "measured": 0, "total": 0, "measured_at": None}
    state: HeldState = "complete" if seen.complete else "stopped" if run.record.is_file() else "begun"
    return {"state": state, "measured": seen.measured, "total": seen.total, "measured_at": seen.ended}


def free_name(folder: Path, name: str) -> str:
    """Return a run's name that nothing holds yet: the same with the next number."""
    stem, _, last = name.rpartition("-")
    base, number = (stem, int(last)) if stem and last.isdigit() and len(last) < 6 else (name, 1)
    while run_folder(folder, name).path.exists():
        number += 1
        name = f"{base[:70]}-{number}"
    return name


def _fault(run_name: str, on_disk: Held, seen: Glance | None, plan_hash: str) -> str:
    """Say why a start of this name would be wrong, or nothing."""
    if on_disk["state"] == "complete":
        count = f" ({on_disk['measured']} of {on_disk['total']} points)" if on_disk["total"] else ""
        return f"run {run_name} is complete{count}: a new measurement needs a name of its own"
    if on_disk["state"] == "damaged":
        return f"run {run_name}: its journal cannot be read; colure verify says what is wrong"
    if seen is not None and seen.plan_hash != plan_hash:
        return f"run {run_name} began with another plan ({on_disk['measured']} points): put the files back, or take another name"
    return ""


def before(folder: Path, run_name: str, kind: Kind, again: str = "") -> Before:
    """Return everything that a start dialog says; raises `InputError` if it cannot be planned, or measured `again`."""
    run = run_folder(folder, run_name)
    if again:
        _require_scan(kind)
        require_begun(run)
        require_writable(run)
        campaign, plan, part = again_plan(folder, run, again)
        to_measure, duration_s, on_disk, fault = len(part.points), part.duration_s, held(run), ""
    else:
        campaign, plan, run = planned(folder, run_name, kind)
        on_disk = held(run)
        share = 1.0 - (on_disk["measured"] / on_disk["total"] if on_disk["total"] else 0.0)
        to_measure, duration_s = max(0, len(plan) - on_disk["measured"]), float(plan.predicted["duration_s"]) * share
        fault = _fault(run_name, on_disk, glance(run.journal), plan.hash)
    return {
        "run": run_name, "kind": kind, "again": again, "points": len(plan), "to_measure": to_measure, "duration_s": duration_s,
        "cautions": cautions_of(campaign, plan), "on_disk": on_disk, "fault": fault,
        "failed_checks": failed_checks(folder, plan.hash), "free_name": free_name(folder, run_name), "simulated": is_simulated(campaign, "axis-controller"),
    }  # fmt: skip


def _require_scan(kind: Kind) -> None:
    if kind != "scan":
        raise InputError([f"again: kind = {kind!r}: must be 'scan': other tests are short, measure them whole again"])


def require_startable(folder: Path, run_name: str, kind: Kind, *, despite_check: bool = False, again: str = "") -> None:
    """Raise `InputError` if a start would go on with what is complete, or with another plan, or if a check did not pass."""
    said = before(folder, run_name, kind, again)
    if said["fault"]:
        raise InputError([f"{said['fault']}; free: {said['free_name']}"])
    if said["failed_checks"] and not despite_check:
        raise InputError(
            [*said["failed_checks"], "mend it and check again, or say that the scan starts in spite of it"]
        )
