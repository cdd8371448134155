"""Whether a pattern has one beam, and what is remembered of it while errors are tried on the pattern."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np

from colure.analysis.figures.cuts import OMNIDIRECTIONAL, CutPlanes, FarField, find_beam, ludwig_3
from colure.analysis.figures.sphere import Sky
from colure.geometry.conventions import ComplexArray, FloatArray, amplitude_db, power_db
from colure.geometry.directions import angle_between, azimuth_over_elevation, cross
from colure.values import holds_arrays

#: Two lobes closer than this in level are equal: which one is the peak is rounding.
EQUAL_DB = 0.02
#: A beam's direction is not defined where its expanded uncertainty reaches this share of the half-power width.
UNSTEADY = 0.5
#: Ludwig's third co-polar vector turns about -z as fast as phi does: within 30 deg of it it says nothing.
BEHIND_COS = float(np.cos(np.deg2rad(150.0)))
OMNIDIRECTIONAL_REASON = f"undefined: no single beam (directions more than 90 deg from the peak lie within {-power_db(OMNIDIRECTIONAL):g} dB of it)"
#: An ellipse rounder than this has no axis to speak of.
CIRCULAR_DB = 0.05
#: Why a run without a reference gives no gain.
NO_REFERENCE = "needs a reference, and this run has none (reference.method = 'none'); a run with method = 'switch', 'swap' or 'stored' gives it"
NO_PLANE = "undefined: a circularly polarized ring of maxima has neither an E plane nor one direction to declare it in"
EDGE = "undefined: the strongest direction lies at the edge of the measured region ({:.4g} deg)"


@dataclass(frozen=True)
@holds_arrays
class Near:
    """What an unperturbed pattern decides for its perturbed ones.

    direction (3,) of the peak; centre_m (3,) of the phase; plane: where the E plane comes from; cone_deg: half angle in which
    the phase centre is found; tangent (3,) of the E plane; widths_deg: half-power widths in the E and the H plane, 360 where there is
    none; reasons: why figures do not exist, by name.
    """

    direction: FloatArray
    centre_m: FloatArray | None
    plane: CutPlanes = "declared"
    cone_deg: float = 8.0
    tangent: FloatArray | None = None
    widths_deg: tuple[float, float] = (360.0, 360.0)
    reasons: dict[str, str] = field(default_factory=dict)

    @property
    def width_deg(self) -> float:
        """The narrower half-power width."""
        return min(self.widths_deg)

    def in_widths(self, moves: FloatArray) -> float:
        """Return how far moves (n, 3) of the peak go together, as a share of the half-power width in their direction."""
        if self.tangent is None:
            return float(np.linalg.norm(np.rad2deg(moves)) / self.width_deg)
        planes = np.stack([self.tangent, cross(self.direction, self.tangent)])
        return float(np.linalg.norm(np.rad2deg(moves @ planes.T) / np.array(self.widths_deg)))


def single_beam_reason(
    sky: Sky, peak: FloatArray, intensity: float, others: FloatArray, at_others: ComplexArray, *, region: float = np.pi
) -> str:
    """Return why a pattern has no single beam, empty if it has one.

    others, at_others
        (n, 3) other lobes, and the fields (n, 3) there.
    """
    behind = sky.largest_beyond(peak, 0.5 * np.pi, region=region)
    if behind >= OMNIDIRECTIONAL * intensity:
        return OMNIDIRECTIONAL_REASON
    power = np.sum(np.abs(at_others) ** 2, axis=-1)
    if power.size and power.max() >= 10.0 ** (-EQUAL_DB / 10.0) * intensity:
        apart = float(np.rad2deg(angle_between(others[int(np.argmax(power))], peak)))
        return f"undefined: no single beam (two lobes {apart:.3g} deg apart are equal within {EQUAL_DB:g} dB)"
    return ""


def ellipse_tilt(coefficients: ComplexArray, *, slant: float, region: float = np.pi) -> float | None:
    """Return the angle (radians) of the ellipse's major axis at the peak of one expansion (2, J) from the declared co-polar vector.

    None for a wave that is circular within 0.05 dB of axial ratio.
    """
    field_ = FarField(coefficients)
    beam = find_beam(field_, slant=slant, region=region, plane="ellipse")
    vector = field_.at(beam.direction[None])[0]
    other = cross(beam.direction, beam.tangent)
    # Along its own axes an ellipse's two components are in quadrature.
    minor, major = (abs(complex(vector @ axis)) for axis in (other, beam.tangent))
    if amplitude_db(major / max(minor, 1e-300)) < CIRCULAR_DB:
        return None
    # Ludwig's third vector of that slant then lies along the axis, wherever on a ring of maxima the peak was found.
    co, across = ludwig_3(beam.tangent[None].astype(complex), beam.direction[None], slant)
    return float(np.arctan2(across[0].real, co[0].real))


def unsteady_beam_reason(near: Near, *, azimuth_deg: float, elevation_deg: float) -> str:
    """Return why a beam's direction is not defined by a measurement, empty if it is.

    azimuth_deg, elevation_deg
        Expanded uncertainty of the direction. A fan beam may move far along its broad side.
    """
    az, el = azimuth_over_elevation(near.direction)
    moves = np.deg2rad(
        [
            azimuth_deg * np.cos(el) * np.array([np.cos(az), 0.0, -np.sin(az)]),
            elevation_deg * np.array([-np.sin(az) * np.sin(el), np.cos(el), -np.cos(az) * np.sin(el)]),
        ]
    )
    share, moved_deg = near.in_widths(moves), float(np.rad2deg(np.linalg.norm(moves)))
    if share < UNSTEADY:
        return ""
    width_deg = moved_deg / share if np.isfinite(share) else near.width_deg
    return (
        f"undefined: no single beam (errors of this measurement move the peak by {moved_deg:.3g} deg, its half-power width is "
        f"{width_deg:.3g} deg)"
    )
