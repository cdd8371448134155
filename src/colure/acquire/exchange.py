"""Which antenna is mounted, where a person exchanges the device and the reference horn during a run."""

from __future__ import annotations

from colure.acquire.journal import Journal
from colure.model.plan import Plan, Role

#: What a point needs at the end of the cable.
REFERENCE, DEVICE = "reference", "device"
WORDS = {
    REFERENCE: "mount the reference horn in place of the device, at the place that chamber.toml states",
    DEVICE: "mount the device in place of the reference horn",
}


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

    def confirm(self, role: Role) -> str:
        """Keep that a person has mounted what this role needs, and return what it is."""
        self._journal.set_meta("mounted", self.wanted(role))
        return self.wanted(role)
