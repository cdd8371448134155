"""Far field from amplitudes on two spheres without measured phase: experimental, and believed only where it proves itself."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.fields.expand import ORDER_MARGIN, expand, order_cap
from colure.geometry.conventions import ComplexArray, FloatArray, wavenumber
from colure.model.fields import FieldSamples, recognize_grid, samples_of
from colure.model.files import with_step
from colure.model.pattern import build_pattern
from colure.waves.amplitude_only import AmplitudeSphere, Retrieval, box_basis, retrieve
from colure.waves.expansion import Expansion

if TYPE_CHECKING:
    import xarray as xr

#: More unknowns take hours: the time of a step grows with their third power (617 take 16 s).
MOST_UNKNOWNS = 1500


@dataclass(frozen=True)
class SourceBox:
    """Where the sources can be, in the frame of the files: sides along x, y, z and centre, metres."""

    size_m: tuple[float, float, float]
    centre_m: tuple[float, float, float] = (0.0, 0.0, 0.0)

    def reach_m(self) -> float:
        """Return the distance of the farthest corner from the coordinate origin."""
        return float(np.linalg.norm(np.abs(self.centre_m) + 0.5 * np.asarray(self.size_m)))


def far_field_of_amplitudes(
    spheres: list[xr.Dataset],
    start: xr.Dataset,
    box: SourceBox,
    *,
    order: int | None = None,
    step_deg: float = 1.0,
    noise_db: float | None = None,
) -> tuple[xr.Dataset, list[Retrieval]]:
    """Find the far field whose amplitudes agree with those of near fields on two or more spheres.

    Parameters
    ----------
    spheres
        Near fields of the same frequencies, one radius each, on rings of a whole sphere. Phases in them are not used.
    start
        Far field that resembles the device, such as a simulation of its design, of the same frequencies.
    box
        What holds all sources.
    order
        Order of the expansion; from the box if None.
    step_deg
        Step of the result's grid.
    noise_db
        Noise of one sample, dB of the largest sample; no noise if None.

    Returns
    -------
    The pattern and one retrieval per frequency. Use the pattern only if every retrieval is trustworthy. The pattern states
    no errors (`error_bound`): none are known. Amplitudes leave one common phase per frequency free; it is the start's, so
    no delay and no phase over frequency was measured.

    Raises
    ------
    ValueError
        If frequencies differ, a file is not a whole sphere of one radius, two radii are alike, the samples do not carry
        the order, a radius lies inside the box, or there are more unknowns than can be solved for.
    """
    sets = [samples_of(one) for one in spheres]
    design = samples_of(start)
    frequencies = np.array([one.frequency_hz for one in sets[0]])
    for name, other in [*((f"near field {n}", one) for n, one in enumerate(sets[1:], 2)), ("start", design)]:
        theirs = np.array([one.frequency_hz for one in other])
        if theirs.shape != frequencies.shape or not np.allclose(theirs, frequencies, rtol=1e-9):
            raise ValueError(f"{name}: {theirs.size} frequencies, must be the {frequencies.size} of near field 1 (Hz)")
    retrievals = [_one(list(parts), box, order, noise_db) for parts in zip(*sets, design, strict=True)]
    rings = round(180.0 / step_deg) + 1
    theta, columns = np.linspace(0.0, np.pi, rings), 2 * (rings - 1)
    pattern = build_pattern(
        np.stack([Expansion(one.coefficients, np.array(float(wavenumber(f)))).far_field(theta, columns)
                  for f, one in zip(frequencies, retrievals, strict=True)]),
        frequency_hz=frequencies, theta=theta, phi=np.arange(columns) * 2.0 * np.pi / columns,
        quantity="relative", phase_reference="coordinate origin; common phase of each frequency from the start",
    )  # fmt: skip
    pattern = pattern.assign_attrs(field="far field", history_json=spheres[0].attrs.get("history_json", "[]"))
    pattern = with_step(
        pattern, "phase from amplitudes", order=order, size_m=list(box.size_m), centre_m=list(box.centre_m),
        noise_db=noise_db, found=[one.words for one in retrievals],
        trustworthy=all(one.trustworthy for one in retrievals),
    )  # fmt: skip
    return pattern, retrievals


def _one(parts: list[FieldSamples], box: SourceBox, order: int | None, noise_db: float | None) -> Retrieval:
    """Retrieve one frequency; the last of `parts` is the start's far field."""
    *near, design = parts
    k = float(wavenumber(design.frequency_hz))
    wanted = order_cap(k, box.reach_m()) - ORDER_MARGIN if order is None else order
    spheres = [_sphere(one, f"near field {number}", wanted, box) for number, one in enumerate(near, 1)]
    basis = box_basis(wanted, k, size=box.size_m, centre=box.centre_m)
    if basis.shape[1] > MOST_UNKNOWNS:
        raise ValueError(
            f"size_m = {box.size_m}: {basis.shape[1]} unknowns, must be at most {MOST_UNKNOWNS}: make the box smaller"
        )
    begin = expand(replace(design, radius_m=None), order=wanted).coefficients
    retrieval = retrieve(spheres, k, basis, begin, noise_db=-200.0 if noise_db is None else noise_db)
    return replace(retrieval, coefficients=retrieval.coefficients * _phase(retrieval.coefficients, begin))


def _phase(coefficients: ComplexArray, like: ComplexArray) -> complex:
    """Return the factor of modulus 1 that gives coefficients the common phase of `like`."""
    overlap = complex(np.vdot(coefficients, like))
    return overlap / abs(overlap) if overlap else 1.0 + 0.0j


def _sphere(samples: FieldSamples, name: str, order: int, box: SourceBox) -> AmplitudeSphere:
    """Take the amplitudes of whole rings; poles are left out: a pole read only at one roll lacks the phase that turns it."""
    if samples.radius_m is None:
        raise ValueError(f"{name}: a far field; must be a near field with radius_m (m)")
    if (least := float(np.min(samples.radius_m))) <= box.reach_m():
        raise ValueError(f"{name}: radius_m = {least:g}, must be beyond the box's corner at {box.reach_m():g} m")
    away = np.sin(samples.theta) > 1e-6
    ring = replace(
        samples, theta=samples.theta[away], phi=_turned(samples.phi[away]), field=np.abs(samples.field[:, away]) + 0j,
        radius_m=samples.radius_m[away], weight=samples.weight[away],
    )  # fmt: skip
    grid = recognize_grid(ring)
    if grid is None or not np.isclose(grid.phi.size * (grid.phi[1] - grid.phi[0]), 2.0 * np.pi, atol=1e-6):
        raise ValueError(f"{name}: must lie on rings of one radius over the full turn of phi")
    if not np.isclose(grid.phi[0], 0.0, atol=1e-6):
        raise ValueError(f"{name}: phi_deg begins at {np.rad2deg(grid.phi[0]):g}, must hold 0 deg")
    edges = np.concatenate([[-grid.theta[0]], grid.theta, [2.0 * np.pi - grid.theta[-1]]])
    step = max(float(np.max(np.diff(edges))), float(grid.phi[1] - grid.phi[0]))
    if step > np.pi / order * (1.0 + 1e-9):
        raise ValueError(
            f"{name}: step {np.rad2deg(step):.3g} deg, must be at most {180.0 / order:.3g} deg for order {order}"
        )
    return AmplitudeSphere(float(np.mean(samples.radius_m)), grid.theta, np.abs(grid.field))


def _turned(phi: FloatArray) -> FloatArray:
    """Return phi from 0 on; columns at 0 and 360 deg stay apart, they are compared when the grid is recognized."""
    return phi if float(np.min(phi)) > -1e-9 else np.mod(phi, 2.0 * np.pi)
