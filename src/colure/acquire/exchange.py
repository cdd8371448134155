"""What a person does during a run: exchanges the device and the reference horn, or moves the probe or the positioner."""

from __future__ import annotations

from dataclasses import dataclass

from colure.acquire.journal import Journal
from colure.model.plan import Plan, Role

#: What a point needs at the end of the cable.
REFERENCE, DEVICE = "reference", "device"
WORDS = {
    REFERENCE: "mount the reference horn in place of the device, at the place that chamber.toml states",
    DEVICE: "mount the device in place of the reference horn",
}


@dataclass(frozen=True)
class DoneByHand:
    """What a person did: as a command of the simulated chamber, and in words for the journal."""

    command: str
    words: str


class Exchange:
    """Knows from the journal what a person last confirmed to be mounted; nothing to do but with the method `swap`."""

    def __init__(self, plan: Plan, journal: Journal) -> None:
        self._journal = journal
        self._swaps = plan.settings.get("reference_method") == "swap"

    @property
    def mounted(self) -> str:
        """What is mounted: `device` or `reference`; empty before anybody said so."""
        if not self._swaps:
            return DEVICE
        return str(self._journal.meta("mounted") or "")

    @staticmethod
    def wanted(role: Role) -> str:
        """Return what a point of this role is measured of."""
        return REFERENCE if role is Role.REFERENCE else DEVICE

    def due(self, role: Role) -> str:
        """Say what a person must do before a point of this role; empty if nothing."""
        if not self._swaps or self.mounted == self.wanted(role):
            return ""
        return (
            f"{WORDS[self.wanted(role)]}; axes are held and the source is off; check with your own eyes before you go in, "
            "torque the connector, leave the chamber, close the door; then resume"
        )

    def confirm(self, role: Role) -> DoneByHand:
        """Keep that a person has mounted what this role needs."""
        wanted = self.wanted(role)
        self._journal.set_meta("mounted", wanted)
        return DoneByHand(f"MOUNT {wanted}", f"mounted as a person says: {wanted}")


class DistanceKeeper:
    """Knows from the journal at which distance the range stands; nothing to do where the plan has one distance."""

    def __init__(self, plan: Plan, journal: Journal) -> None:
        self._journal = journal
        self._steps_mm: list[float] = list(plan.settings.get("distance_steps_mm", []))
        self._moves = str(plan.settings.get("distance_moves", ""))
        self._points = int(plan.settings.get("points_per_distance", 0)) or len(plan)

    def wanted(self, index: int) -> int:
        """Return which distance a point of the plan is measured at."""
        return index // self._points if self._steps_mm else 0

    @property
    def reached(self) -> int:
        """At which distance a person last said that the range stands; the first before anybody was asked."""
        return int(self._journal.meta("distance") or 0)

    def due(self, index: int) -> str:
        """Say what a person must move before a point; empty if nothing."""
        step = self.wanted(index)
        if step == self.reached:
            return ""
        farther = self._steps_mm[step] - self._steps_mm[self.reached]
        way = "away from" if farther > 0.0 else "towards"
        other = "device" if self._moves == "probe" else "probe"
        return (
            f"distance {step + 1} of {len(self._steps_mm)}: move the {self._moves} {abs(farther):.3f} mm {way} the {other}, along the range, "
            f"to {self._steps_mm[step]:.3f} mm from its first place; axes are held and the source is off; check with your own eyes before "
            "you go in, leave the chamber, close the door; then resume"
        )

    def confirm(self, index: int) -> DoneByHand:
        """Keep that a person has moved what the point needs."""
        step = self.wanted(index)
        self._journal.set_meta("distance", step)
        move = f"{self._moves} {self._steps_mm[step]:.6f}"
        return DoneByHand(f"MOVE {move}", f"moved as a person says: move {move} mm")
