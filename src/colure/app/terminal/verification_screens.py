"""What a verification says, on the terminal."""

from __future__ import annotations

from typing import TYPE_CHECKING

from colure.app.terminal.consoles import console
from colure.app.terminal.screens import show_figures, show_verdicts

if TYPE_CHECKING:
    from colure.app.services.verifying import UnitResult
    from colure.model.goal import Goal


def show_verification(result: UnitResult, goal: Goal) -> None:
    """Print figures, faulty elements, verdicts, what decided, and what the slices could not explain."""
    out = console()
    show_figures(result.figures, goal)
    for one in result.verified.faults:
        out.print(
            f"element row {one.row}, column {one.column}: {one.kind}, {one.level_db:+.1f} dB, {one.phase_deg:+.0f} deg "
            f"(\u00b1{one.expanded:.2f} of its amplitude), {100.0 * one.sure:.0f} % sure"
        )
    if not result.verified.faults and result.verified.trusted:
        out.print("no element differs from the reference by more than good units do")
    for doubt in result.verified.doubts:
        out.print(f"the slices do not decide: {doubt}")
    show_verdicts(result.judged)
    slices = f"{result.verified.slices} slices" if result.by == "slices" else "the whole scan"
    out.print(f"decided by {slices}, {result.seconds:.0f} s after the first sweep")
