"""What is wrong with the field of a cut, by cause, and where each cause is known from."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

BASIS = {
    "reference gain": "its uncertainty in chamber.toml, or in the table of its gain",
    "reference place": "declared place of the horn, and the probe's pattern towards it",
    "near horn": "the probe's beam over the horn's mouth; a bias that stays in the value",
    "drift since calibration": "declared drift a day, and the calibration's age",
    "reconnection": "declared, from the reference's connection to the device's",
    "noise": "scatter of the reference's repeated sweeps, or of repeated cuts",
    "range echoes": "declared level, not filtered by any transform",
    "drift residual": "ties against each other",
    "mismatch": "declared reflections of unknown phase",
    "device reflection": "declared one-port error terms of unknown phase, and the scatter of the readings",
    "probe polarization": "probe's impurity and roll, on what lies across",
    "alignment": "declared zeros, tilts and pose",
    "probe pattern": "probe's taper towards a device beside the axes' intersection",
    "sampling": "every second sample against all; another top of the beam",
    "finite distance": "evenly lit and tapered apertures as long as the device; a bias, the interval leans to its side",
}
KIND = {"noise": "measured", "device reflection": "measured", "drift residual": "measured", "sampling": "measured"}


@dataclass(frozen=True, kw_only=True)
class Errors:
    """What is wrong with the field of one cut at one frequency: expanded (k = 2), gain scale, or relative where said.

    noise, echoes, floor, impurity
        In-phase parts as amplitudes; the floor is what the finite distance does beyond the main lobe.
    drift, once
        Relative: between points of the scan; of the whole scan against the reference (its sweeps' noise).
    common_db
        Of the level of everything, by cause; empty where levels are relative.
    along_deg, across_deg
        Of the angle along the cut, and of the cut's place beside where it was asked for.
    order
        Of the device's waves: how quickly an echo changes along the cut.
    """

    noise: float
    echoes: float
    floor: float
    impurity: float
    drift: float
    once: float
    common_db: dict[str, float]
    off_axis_db: float
    along_deg: float
    across_deg: float
    order: int

    @property
    def all_common_db(self) -> float:
        """Return what all levels have in common, dB."""
        return float(np.sqrt(sum(x**2 for x in self.common_db.values())))

    def at(self, amplitude: float, peak: float) -> dict[str, float]:
        """Return relative errors of a level against the peak, by cause."""
        a = max(amplitude, 1e-12)
        return {
            "noise": float(np.hypot(self.noise / a, self.noise / peak)),
            "range echoes": float(np.hypot(self.echoes / a, self.echoes / peak)),
            "finite distance": self.floor / a,
            "probe polarization": self.impurity / a,
            "drift residual": float(np.sqrt(2.0)) * self.drift,
        }
