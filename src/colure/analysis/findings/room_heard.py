"""What a run says of the learned room: it is as it was, it has changed, or the run cannot tell."""

from __future__ import annotations

from colure.analysis.findings.finding import Finding
from colure.analysis.stray.known_room import Doubt, RoomHeard

#: What would let the next run tell.
REMEDIES = {
    Doubt.LEARNED: "Learn the room from more runs, of devices that are less alike",
    Doubt.DEVICE: "A larger device, or one mounted farther off the axes, tells",
    Doubt.NOISE: "A narrower bandwidth or finer steps tell",
    Doubt.STRANGE: "If no other finding names it, something was moved or came: look, or learn the room again",
}


def room_findings(heard: RoomHeard | None, declared_db: float) -> list[Finding]:
    """Return what was removed, or why nothing was, beside the declared level of echoes; nothing where no learned room was asked."""
    if heard is None:
        return []
    share = f"{100.0 * max(heard.explained, 0.0):.0f}"
    if heard.holds:
        text = (
            f"the learned room is as it was: its echoes explain {share} % of what does not fit the device. Echoes of {heard.echo_db:.0f} dB rms "
            f"were removed; at most {heard.left_db:.0f} dB are taken to remain. The budget's row holds {heard.level_db(declared_db):.0f} dB"
        )
        if heard.unjudged:
            text += (
                f"; what this run leaves open ({len(heard.unjudged)} of {heard.factors.size} learned echoes) was removed too and stays in the row "
                "as if it had changed"
            )
        return [Finding("learned room", heard.left_db, text)]
    counted = _counted(heard, declared_db)
    if heard.holds is None:
        why = heard.doubt or Doubt.NOISE
        text = (
            f"this run cannot tell whether the learned room is as it was: {why.value}. Its echoes explain {share} % of what does not fit the "
            f"device. Nothing was removed; {counted}. {REMEDIES[why]}"
        )
        return [Finding("learned room", heard.echo_db, text)]
    text = (
        f"the room has changed: the learned echoes explain {share} % of what does not fit the device, and are off by {100.0 * heard.off:.0f} % "
        f"(± {100.0 * heard.off_expanded:.0f} %). Nothing was removed; {counted}. Look what was moved, or learn the room again"
    )
    return [Finding("learned room", heard.echo_db, text, "look")]


def _counted(heard: RoomHeard, declared_db: float) -> str:
    """Say which level of echoes the budget's row holds where nothing was removed."""
    if heard.strongest_db(declared_db) <= declared_db:
        return f"the row range echoes is the {declared_db:g} dB of chamber.toml"
    return (
        f"the learned echoes are {heard.echo_db:.0f} dB below this device's peak, MORE than the {declared_db:g} dB of chamber.toml: the row range "
        "echoes holds them"
    )
