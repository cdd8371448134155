"""`colure demo`: a whole measurement on the simulated chamber, judged against its truth."""

from __future__ import annotations

import math
import signal
import time
from collections.abc import Callable, Iterator
from concurrent.futures import Future, ProcessPoolExecutor
from contextlib import contextmanager
from multiprocessing import get_context
from pathlib import Path
from typing import TYPE_CHECKING, Any

from colure.acquire.outcome import Options
from colure.app import services
from colure.app.services.reporting import key_of_report
from colure.app.services.verdicts import evaluate_and_judge
from colure.app.storage.folders import RunFolder, run_folder
from colure.app.terminal import screens
from colure.app.terminal.say import say
from colure.model.campaign import Campaign
from colure.model.specification import load_specification
from colure.model.strict_json import json_text
from colure.twin.campaign_truth import device_truth

if TYPE_CHECKING:
    from colure.model.figure import Figure


def free_folder(base: Path) -> Path:
    """Return `base`, or the first of base-2, base-3, ... that does not exist."""
    candidate, number = base, 2
    while candidate.exists():
        candidate, number = base.with_name(f"{base.name}-{number}"), number + 1
    return candidate


def run_demo(folder: Path | None, *, as_json: bool) -> int:
    """Run the demo and return its exit code: 1 if a figure misses its truth, 3 after a stop."""
    from colure.report.second_core import second_core

    started = time.perf_counter()
    where = free_folder(Path("colure-demo")) if folder is None else folder
    tell: Callable[[str], object] = (lambda text: None) if as_json else say
    tell("Invented demo data: a 24 GHz printed 8 x 8 panel with a dead element and a misfed pair,")
    tell("in a simulated chamber that drifts, echoes and is slightly misaligned.\n")
    services.new_campaign(where)
    campaign, plan = services.make_plan(where)
    if not as_json:
        screens.show_plan(campaign, plan)
        screens.show_cautions(campaign, plan)
        say("  (acknowledged by the demo: nothing real moves)\n")
    run = run_folder(where, "first")
    # A scan mostly waits: what the report draws with and the truth get ready beside it.
    with second_core() as drawing, _truth_beside(campaign) as truth:
        with screens.progress(len(plan), quiet=as_json) as listener:
            outcome = services.acquire(campaign, plan, run, listener=listener, options=Options(pause_limit_s=30.0))
        if outcome.state.value != "done":
            say(f"{outcome.state.value}: {outcome.reason}", err=True)
            return 3
        processed = services.process(campaign, run)
        figures, judged = evaluate_and_judge(processed, run, load_specification(where / "limits.toml"))
        key = key_of_report(Campaign.load(where), run, where / "limits.toml")
        services.write_report(campaign, plan, run, processed, figures, judged, key=key, beside=drawing)
        pairs = _with_truth(figures, campaign, truth.result())
    missed = [(figure, value) for figure, value in pairs if not figure.reason and not figure.contains(value)]
    seconds = time.perf_counter() - started
    if as_json:
        say(json_text(_summary(where, run, pairs, seconds), indent=1))
    else:
        _print_result(pairs, missed, run, seconds)
        say(
            f"against limits.toml (invented): {judged.outcome}; see the report's first pages, or colure verdict {where} {where}/limits.toml"
        )
    return 1 if missed else 0


@contextmanager
def _truth_beside(campaign: Campaign) -> Iterator[Future[list[dict[str, float]]]]:
    """Let a process of its own work out the truth while the block runs; an interrupt from the keyboard is ours to answer, not its."""
    before = signal.signal(signal.SIGINT, signal.SIG_IGN)
    try:
        pool = ProcessPoolExecutor(1, mp_context=get_context("spawn"), initializer=signal.signal,
                                   initargs=(signal.SIGINT, signal.SIG_IGN))  # fmt: skip
        awaited = pool.submit(device_truth, campaign)
    finally:
        signal.signal(signal.SIGINT, before)
    try:
        yield awaited
    finally:
        pool.shutdown(wait=True, cancel_futures=True)


def _with_truth(figures: list[Figure], campaign: Campaign, truth: list[dict[str, float]]) -> list[tuple[Figure, float]]:
    """Return figures with their true values; one that another package brings has no truth here and is left out."""
    at = dict(zip((float(f) for f in campaign.goal.frequency_hz), truth, strict=True))
    truths = [(figure, at[figure.frequency_hz]) for figure in figures]
    return [(figure, known[figure.name]) for figure, known in truths if figure.name in known]


def _print_result(
    pairs: list[tuple[Figure, float]], missed: list[tuple[Figure, float]], run: RunFolder, seconds: float
) -> None:
    frequencies = sorted({figure.frequency_hz for figure, _ in pairs})
    centre = frequencies[len(frequencies) // 2]
    here = [(figure, value) for figure, value in pairs if figure.frequency_hz == centre]
    screens.show_comparison(here, f"Measured against the truth of the simulated device, {centre / 1e9:.3f} GHz")
    if missed:
        screens.show_comparison(missed, "\nMissed, at any frequency")
    say(
        f"\n{len(pairs) - len(missed)} of {len(pairs)} figures over {len(frequencies)} frequencies inside their intervals."
    )
    names = {"journal": run.journal, "record": run.record, "pattern": run.pattern, "figures": run.figures,
             "report": run.report_html, "report (PDF)": run.report_pdf}  # fmt: skip
    for name, path in names.items():
        say(f"{name:13s} {path}")
    say(f"done in {seconds:.0f} s")


def _summary(where: Path, run: RunFolder, pairs: list[tuple[Figure, float]], seconds: float) -> dict[str, Any]:
    rows = []
    for figure, value in pairs:
        row = figure.as_dict()
        rows.append({**{k: row[k] for k in ("name", "frequency_hz", "value", "unit", "lower", "upper")},
                     "expanded_uncertainty": row["expanded_uncertainty"], "truth": value if math.isfinite(value) else None, "reason": figure.reason,
                     "inside": figure.contains(value)})  # fmt: skip
    return {
        "note": "invented demo data",
        "campaign": str(where),
        "seconds": round(seconds, 1),
        "inside": sum(bool(r["inside"]) for r in rows),
        "total": len(rows),
        "files": {name: str(getattr(run, name)) for name in
                  ("journal", "record", "pattern", "figures", "report_html", "report_pdf")},
        "figures": rows,
    }  # fmt: skip
