"""Near field to far field for data from anywhere: grids by the fast path, the rest by least squares."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.fields.errors import (
    COVERAGE_FACTOR,
    Declared,
    determined,
    spread_of,
)
from colure.analysis.fields.expand import ORDER_MARGIN, ExpandedField, expand, order_cap
from colure.analysis.fields.outside_sources import outside_words, without_outside
from colure.analysis.fields.probe_effect import probe_errors, usual_probes
from colure.analysis.fields.result import FieldResult, ratio_db, sampled_part, with_errors
from colure.analysis.fields.time_factor import conjugate_words
from colure.analysis.fields.worst_ring import ring_words
from colure.geometry.conventions import BoolArray, ComplexArray, FloatArray, wavenumber
from colure.model.fields import FieldSamples, samples_of
from colure.model.files import with_step
from colure.model.pattern import build_pattern
from colure.waves.expansion import Expansion
from colure.waves.modes import resized

if TYPE_CHECKING:
    import xarray as xr

    from colure.analysis.fields.probe import FieldProbe


#: What is left of the samples, and how much of it is told, dB of the peak, rms over the sphere: samples of right scans whose noise
#: lies 40 dB below the strongest leave -43 dB at most (24 of 24 not told, 4 devices; 35 dB: 7 of 8); phases in another unit -23, rows in another
#: order -18, an eighth of the columns lost -35.
LEFT, MISFIT_DB = ("noise", "truncation"), -36.0


def far_field(
    dataset: xr.Dataset,
    *,
    order: int | None = None,
    step_deg: float = 1.0,
    origin_m: tuple[float, float, float] | None = None,
    keep_radius_m: float | None = None,
    declared: Declared | None = None,
    probe: FieldProbe | None = None,
) -> tuple[xr.Dataset, list[str]]:
    """Turn a dataset of near (or far) fields into a far-field pattern on a whole-sphere grid.

    Parameters
    ----------
    order
        Order about the coordinate origin; chosen from the data if None.
    step_deg
        Step of the result's grid.
    origin_m
        Phase reference of the result, and centre of `keep_radius_m`; the coordinate origin if None.
    keep_radius_m
        Only waves from inside this sphere about the origin are kept (stray signals from
        elsewhere are filtered out).
    declared
        Noise, positions and the error that a determined direction may have; by default from the data.
    probe
        The probe that received (`field_probe`); an elementary dipole if None.

    Returns
    -------
    The pattern, and what was done in plain words, one line per frequency. Beside the field stand
    `error_bound` (frequency, theta, phi): stated error of the field vector with coverage factor 2, in
    the field's unit; `support` (same dims): 1 where the direction is determined, else 0, if the data
    leave directions out; `error_waves` (frequency, draw, kind, mode): possible errors as far-field
    coefficients, from which figures get intervals; `position_waves` and `probe_waves`, their parts by places and by the probe's pattern, where declared; `noise_db`,
    `truncation_db`, `position_db`, `probe_db` (frequency): rms over the sphere, in dB of the peak. Where nothing is known
    of the probe, the attribute `caution` says that no error holds its pattern, and how much usual probes would change.

    Raises
    ------
    ValueError
        If the samples cannot carry the order, or nothing would be left.
    """
    declared = declared or Declared()
    sets = samples_of(dataset)
    rings = round(180.0 / step_deg) + 1
    results = [
        _one_frequency(
            samples,
            order=order,
            rings=rings,
            origin_m=origin_m,
            keep_radius_m=keep_radius_m,
            declared=declared,
            probe=probe,
        )
        for samples in sets
    ]
    columns = 2 * (rings - 1)
    theta, phi = np.linspace(0.0, np.pi, rings), np.arange(columns) * 2.0 * np.pi / columns
    reference = "coordinate origin" if origin_m is None else "point ({:g}, {:g}, {:g}) m".format(*origin_m)
    pattern = build_pattern(
        np.stack([one.field for one in results]), frequency_hz=np.array([s.frequency_hz for s in sets]),
        theta=theta, phi=phi, quantity="relative", phase_reference=reference,
    )  # fmt: skip
    pattern = pattern.assign_attrs(field="far field", history_json=dataset.attrs.get("history_json", "[]"))
    pattern = with_errors(pattern, results)
    words = [line for one in results for line in one.words]
    conjugate, taken = conjugate_words(sets, behind_probe=probe is not None)
    words += [taken] if taken else []
    told = (conjugate, _misfit(sets, results, declared), _unknown_probe(sets, results, declared, probe))
    cautions = [one for one in told if one]
    if cautions:
        pattern = pattern.assign_attrs(caution="; ".join(cautions))
        words += [f"caution: {one}" for one in cautions]
    pattern = with_step(
        pattern, "to far-field", order=order, origin_m=None if origin_m is None else list(origin_m),
        keep_radius_m=keep_radius_m, noise_db=declared.noise_db, position_mm=1e3 * declared.position_m,
        angle_deg=float(np.rad2deg(declared.angle)), probe=probe is not None, probe_uncertainty_db=declared.probe_db,
        near=any(one.radius_m is not None for one in sets), found=words,
    )  # fmt: skip
    return pattern, words


def _misfit(sets: list[FieldSamples], results: list[FieldResult], declared: Declared) -> str:
    """Say where so much of the samples is no smooth field that it is a mistake rather than noise, and nobody states such a noise."""
    if declared.noise_db is not None:
        return ring_words(sets, declared.noise_db)
    left = [np.hypot(*(10.0 ** (one.contributions_db.get(n, -400.0) / 20.0) for n in LEFT)) for one in results]
    worst = int(np.argmax(left))
    level_db = ratio_db(float(left[worst]))
    if level_db <= MISFIT_DB:
        return ring_words(sets)
    return (
        f"{level_db:.1f} dB of the peak, rms, do not fit waves from a device at {sets[worst].frequency_hz / 1e9:.6g} GHz: sweeps that went "
        "wrong, a level, phase or component that is another one, a step that is too coarse, or much noise. The stated errors take it for "
        "noise alone. Look at the samples; where they are that noisy, state the noise of one"
    )


def _unknown_probe(
    sets: list[FieldSamples], results: list[FieldResult], declared: Declared, probe: FieldProbe | None
) -> str | None:
    """Say what the stated errors do not hold where nobody says what received a near field; None where it is known."""
    middle = len(sets) // 2
    samples, one = sets[middle], results[middle]
    if probe is not None or declared.probe_db is not None or samples.radius_m is None:
        return None
    told = usual_probes(one.found, float(wavenumber(samples.frequency_hz)), samples, one.inside)
    return (
        f"the stated errors do not hold the probe's pattern: none was given, and an elementary dipole was taken for it. {told} "
        "Give its pattern or the uncertainty of its pattern; 0 dB where no probe acts (a computed field)"
    )


def _one_frequency(
    samples: FieldSamples,
    *,
    order: int | None,
    rings: int,
    origin_m: tuple[float, float, float] | None,
    keep_radius_m: float | None,
    declared: Declared,
    probe: FieldProbe | None,
) -> FieldResult:
    """Expand one frequency, move and cut the waves, and carry the errors through the same steps."""
    k = float(wavenumber(samples.frequency_hz))
    shift = np.zeros(3) if origin_m is None else np.asarray(origin_m, float)
    cap = None if keep_radius_m is None else order_cap(k, keep_radius_m + float(np.linalg.norm(shift)))
    expanded_field = _expanded(samples, probe, order=order, cap=cap, declared=declared)
    theta, columns = np.linspace(0.0, np.pi, rings), 2 * (rings - 1)

    def moved(coefficients: ComplexArray) -> Expansion:
        expansion = Expansion(coefficients, np.array(k))
        return expansion if origin_m is None else expansion.translated(-shift)

    kept = None if keep_radius_m is None else order_cap(k, keep_radius_m) - ORDER_MARGIN

    def cut(expansion: Expansion) -> Expansion:
        return expansion if kept is None else expansion.truncated(min(expansion.order, kept))

    by_probe = probe_errors(expanded_field.coefficients, k, samples, declared, len(expanded_field.errors.all()))
    own, said = moved(expanded_field.coefficients), []
    noise = moved(expanded_field.errors.noise)
    cleaned = None
    if kept is not None and keep_radius_m is not None:
        kept = min(kept, own.order)
        degrees = np.arange(1, noise.order + 1)
        per_mode = np.sqrt(noise.mode_power().mean(axis=0) / (2.0 * (2.0 * degrees + 1.0)))
        cleaned = without_outside(own, keep_radius_m, kept, per_mode, draws=len(noise.coefficients))
        own, said = cleaned.expansion, [outside_words(cleaned, keep_radius_m)]
    own, noise, waves = cut(own), cut(noise), cut(moved(expanded_field.errors.all()))
    field = own.far_field(theta, columns)
    if cleaned is not None:
        noise = noise.with_coefficients(noise.coefficients + resized(cleaned.errors, noise.order))
        waves = waves.with_coefficients(waves.coefficients + resized(cleaned.errors[: len(waves.k)], waves.order))
    spreads, position = {"noise": spread_of(noise.far_field(theta, columns))}, None
    if expanded_field.errors.position is not None:
        by_places = cut(moved(expanded_field.errors.position))
        spreads["position"], position = spread_of(by_places.far_field(theta, columns)), by_places.coefficients
    probed = None
    if by_probe is not None:
        of_probe = cut(moved(by_probe.waves))
        spreads["probe"], probed = spread_of(of_probe.far_field(theta, columns)), of_probe.coefficients
        top = max(of_probe.order, waves.order)
        waves = waves.with_coefficients(resized(waves.coefficients, top) + resized(probed, top))
    spreads["truncation"] = np.full(field.shape[1:], expanded_field.errors.truncation)
    bound, inside, levels, worst = _bounded(samples, field, spreads, declared, fitted=expanded_field.fit is not None)
    words = [
        f"{samples.frequency_hz / 1e9:.6g} GHz: {expanded_field.words}",
        *said,
        f"  error of the field at most {worst:.1f} dB of the peak (k = 2): "
        + ", ".join(f"{name} {level:.1f} dB rms" for name, level in levels.items() if level > -300.0),
    ]
    return FieldResult(
        field, bound, inside, expanded_field.coefficients, waves.coefficients, position, probed, levels, words
    )


def _expanded(
    samples: FieldSamples, probe: FieldProbe | None, *, order: int | None, cap: int | None, declared: Declared
) -> ExpandedField:
    """Expand one frequency about the coordinate origin, behind a probe if there is one."""
    if probe is None:
        return expand(samples, order=order, cap=cap, declared=declared)
    from colure.analysis.fields.probe import expand_behind_probe

    return expand_behind_probe(samples, probe, order=order, cap=cap, declared=declared)


def _bounded(
    samples: FieldSamples, field: ComplexArray, spreads: dict[str, FloatArray], declared: Declared, *, fitted: bool
) -> tuple[FloatArray, BoolArray, dict[str, float], float]:
    """Return the stated error, where the field is determined (theta, phi), every contribution's rms and the worst error in dB of the peak."""
    rings = field.shape[1]
    peak = float(np.sqrt(np.max(np.sum(np.abs(field) ** 2, axis=0))))
    bound = COVERAGE_FACTOR * np.sqrt(sum((s**2 for s in spreads.values()), np.zeros(field.shape[1:])))
    inside = np.ones(bound.shape, bool)
    if fitted:
        near = sampled_part(samples, rings)
        if near.any():
            peak = float(np.sqrt(np.max(np.sum(np.abs(field) ** 2, axis=0)[near])))
        inside = determined(bound, peak=peak, sampled=near, limit_db=declared.error_limit_db)
    weight = np.sin(np.linspace(0.0, np.pi, rings))[:, None] * np.where(inside, 1.0, 0.0)
    total = max(float(weight.sum()), 1e-300)
    levels = {n: ratio_db(float(np.sqrt(np.sum(s**2 * weight) / total)) / peak) for n, s in spreads.items()}
    worst = ratio_db(float(np.max(bound[inside])) / peak) if inside.any() else float("nan")
    return bound, inside, levels, worst
