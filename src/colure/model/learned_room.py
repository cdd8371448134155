"""A learned room: where the probe's images stand behind the walls of a chamber, how strong they are, and from which runs this is known."""

from __future__ import annotations

import json
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import SPEED_OF_LIGHT, ComplexArray, FloatArray
from colure.values import holds_arrays

if TYPE_CHECKING:
    import xarray as xr

#: Images move in phase with frequency as their places say; beyond the learned band they are used for so small a part of a turn.
BEYOND_TURN = 0.02


@dataclass(frozen=True)
@holds_arrays
class RangeIdentity:
    """What a learned room belongs to: with anything else its images are elsewhere or are heard otherwise.

    geometry, range_length_m
        Positioner and distance from the axes' intersection to the probe.
    probe
        Ports, polarization, gain and the SHA-256 of the pattern's file, in one line.
    """

    geometry: str
    range_length_m: float
    probe: str

    def faults_of(self, other: RangeIdentity) -> list[str]:
        """Return in words where another range is not this one."""
        faults = []
        if other.geometry != self.geometry:
            faults.append(f"room: learned with geometry {self.geometry!r}, chamber.toml has {other.geometry!r}")
        if abs(other.range_length_m - self.range_length_m) > 1e-4:
            faults.append(
                f"room: learned at range_length_m = {self.range_length_m:g}, chamber.toml has {other.range_length_m:g} (m)"
            )
        if other.probe != self.probe:
            faults.append(f"room: learned with the probe ({self.probe}), chamber.toml has ({other.probe})")
        return faults


@dataclass(frozen=True)
@holds_arrays
class LearnedRoom:
    """Images of the probe that stay while devices change.

    places_m (image, 3)
        In the lab frame.
    weights (image, kind)
        Complex: as a plane conductor's mirror at `middle_hz`, its two polarizations unlike, swapped, turned.
    covariance (parameter, parameter)
        Of two angles (rad), path (m), real and imaginary weights of every image, from noise and from leaving runs out.
    drops (image,)
        How much of the held-out misfit each image explained, in noise powers.
    explained (run,)
        Share of what did not fit a run's device that the images found in all other runs explain.
    runs, seals
        Names of the runs, and the hash that seals each record.
    """

    places_m: FloatArray
    weights: ComplexArray
    covariance: FloatArray
    drops: FloatArray
    explained: FloatArray
    frequency_hz: FloatArray
    middle_hz: float
    identity: RangeIdentity
    runs: tuple[str, ...]
    seals: tuple[str, ...]

    @property
    def longest_m(self) -> float:
        """How much longer than the direct path the longest echo runs."""
        return float(np.linalg.norm(self.places_m, axis=1).max()) - self.identity.range_length_m

    def require_fits(self, identity: RangeIdentity, frequency_hz: FloatArray) -> None:
        """Raise `InputError` where a run was measured on another range or at frequencies that the room was not learned at."""
        faults = self.identity.faults_of(identity)
        margin = BEYOND_TURN * SPEED_OF_LIGHT / max(self.longest_m, 0.1)
        low, high = float(self.frequency_hz.min()) - margin, float(self.frequency_hz.max()) + margin
        if frequency_hz.min() < low or frequency_hz.max() > high:
            faults.append(
                f"room: learned from {1e-9 * low:.6g} to {1e-9 * high:.6g} GHz, the run has {1e-9 * frequency_hz.min():.6g} to "
                f"{1e-9 * frequency_hz.max():.6g} GHz: learn it over the band that you use"
            )
        if faults:
            raise InputError([*faults, "take `room` out of chamber.toml, or learn the room of this range"])

    def to_dataset(self) -> xr.Dataset:
        """Return the room for a netCDF file."""
        import xarray as xr

        own = {
            "place": (("image", "axis"), self.places_m, {"units": "m", "long_name": "image of the probe, lab frame"}),
            "weight_re": (("image", "kind"), self.weights.real, {"units": "1"}),
            "weight_im": (("image", "kind"), self.weights.imag, {"units": "1"}),
            "covariance": (("parameter", "parameter_2"), self.covariance, {"units": "rad, m, 1"}),
            "drop": ("image", self.drops, {"units": "noise powers"}),
            "explained": ("run", self.explained, {"units": "1"}),
            "frequency": ("learned_frequency", self.frequency_hz, {"units": "Hz"}),
        }
        attrs = {
            "title": "Colure learned room",
            "middle_hz": self.middle_hz,
            "geometry": self.identity.geometry,
            "range_length_m": self.identity.range_length_m,
            "probe": self.identity.probe,
            "runs_json": json.dumps(self.runs),
            "seals_json": json.dumps(self.seals),
        }
        return xr.Dataset(own, attrs=attrs)

    @staticmethod
    def from_dataset(data: xr.Dataset, name: str) -> LearnedRoom:
        """Return the room of a file; raises `InputError` if it is none."""
        if data.attrs.get("title") != "Colure learned room":
            raise InputError([f"{name}: is no learned room: colure room learn writes one"])
        try:
            return LearnedRoom(
                data["place"].values, data["weight_re"].values + 1j * data["weight_im"].values, data["covariance"].values,
                data["drop"].values, data["explained"].values, data["frequency"].values, float(data.attrs["middle_hz"]),
                RangeIdentity(str(data.attrs["geometry"]), float(data.attrs["range_length_m"]), str(data.attrs["probe"])),
                _names(data.attrs["runs_json"]), _names(data.attrs["seals_json"]),
            )  # fmt: skip
        except (KeyError, ValueError) as error:
            raise InputError([f"{name}: cannot be read as a learned room: {error}"]) from None


def _names(text: Any) -> tuple[str, ...]:
    return tuple(str(one) for one in json.loads(str(text)))
