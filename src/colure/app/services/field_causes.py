"""What a far-field file says that its field may be wrong by, cause by cause."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, mode_count

if TYPE_CHECKING:
    import xarray as xr

    from colure.analysis.uncertainty.field_figures import FieldCause, ProbeKnowledge
    from colure.app.services.pattern_files import Waves

#: Draws of waves beyond the field's order, and so many degrees beyond it.
TRUNCATION_DRAWS, MORE_DEGREES = 12, 2
#: A truncation below this, dB of the peak, is none.
LEAST_DB = -300.0


def causes_of(waves: Waves, factor: FloatArray) -> tuple[FieldCause, ...] | None:
    """Return the causes that a file states, or None if it states none.

    Parameters
    ----------
    factor
        (frequency,) what the field is multiplied with before figures are read.
    """
    from colure.analysis.uncertainty.field_figures import FieldCause
    from colure.model.files import history

    dataset = waves.pattern
    if "error_waves" not in dataset:
        return None
    scale = factor[:, None, None, None]
    total: ComplexArray = np.asarray(scale * dataset["error_waves"].values, np.complex128)
    made = [one["parameters"] for one in history(dataset) if one["step"] == "to far-field"]
    if not made:
        return (FieldCause("field of the file", total, "errors stated in the file (error_waves)"),)
    out: list[FieldCause] = []
    if "position_waves" in dataset:
        places: ComplexArray = np.asarray(scale * dataset["position_waves"].values, np.complex128)
        total = total - places
        out.append(_places(places, made[-1]))
    if "probe_waves" in dataset:
        probed: ComplexArray = np.asarray(scale * dataset["probe_waves"].values, np.complex128)
        total = total - probed
        if np.any(probed):
            out.append(_probe(probed, made[-1]))
    out.insert(0, _noise(total, made[-1]))
    beyond = _truncation(waves, factor)
    if beyond is not None:
        level = float(np.nanmax(dataset["truncation_db"].values))
        out.append(
            FieldCause(
                "truncation", beyond, f"waves above the order: at most {level:.1f} dB rms of the peak, from how the spectrum decays"
            )
        )  # fmt: skip
    return tuple(out)


def _noise(waves: ComplexArray, made: dict[str, Any]) -> FieldCause:
    from colure.analysis.uncertainty.field_figures import FieldCause

    declared = made.get("noise_db")
    if declared is None:
        return FieldCause("noise", waves, "residual of the samples, and what they leave open")
    words = f"declared, {declared:g} dB of the largest sample, and what the samples leave open"
    return FieldCause("noise", waves, words, "declared")


def _places(waves: ComplexArray, made: dict[str, Any]) -> FieldCause:
    from colure.analysis.uncertainty.field_figures import FieldCause

    mm, deg = float(made.get("position_mm") or 0.0), float(made.get("angle_deg") or 0.0)
    said = [f"{mm:g} mm" if mm else "", f"{deg:g} deg" if deg else ""]
    words = f"declared, {' and '.join(one for one in said if one)} standard uncertainty of every sample"
    size, unit = (mm, "mm") if mm and not deg else (deg, "deg") if deg and not mm else (None, "")
    return FieldCause("position of the samples", waves, words, "declared", size, unit)


def _probe(waves: ComplexArray, made: dict[str, Any]) -> FieldCause:
    from colure.analysis.uncertainty.field_figures import PROBE_PATTERN, FieldCause

    size = float(made["probe_uncertainty_db"])
    words = f"declared \u00b1{size:g} dB of the probe's pattern 10 deg off its axis"
    return FieldCause(PROBE_PATTERN, waves, words, "declared", size, "dB")


def probe_knowledge(dataset: xr.Dataset) -> ProbeKnowledge:
    """Tell what the errors that a file states hold of the probe that received it; "known" where no near field was transformed."""
    from colure.model.files import history

    made = [one["parameters"] for one in history(dataset) if one["step"] == "to far-field"]
    # Files of before the probe counted do not say whether they were near fields: most were.
    if not made or not made[-1].get("near", True) or made[-1].get("probe_uncertainty_db") is not None:
        return "known"
    return "corrected" if made[-1].get("probe") else "unknown"


def _truncation(waves: Waves, factor: FloatArray) -> ComplexArray | None:
    """Return drawn waves just beyond the field's order whose field is as large as the file says (frequency, draw, 2, J)."""
    dataset = waves.pattern
    if "truncation_db" not in dataset:
        return None
    level_db = np.nan_to_num(np.asarray(dataset["truncation_db"].values, float), nan=-np.inf)
    if not np.any(level_db > LEAST_DB):
        return None
    rms = factor * _peaks(waves) * 10.0 ** (level_db / 20.0)
    low, high = mode_count(waves.expansion.order), mode_count(waves.expansion.order + MORE_DEGREES)
    random = np.random.default_rng(high)
    shape = (len(rms), TRUNCATION_DRAWS, 2, high - low)
    drawn = (random.normal(size=shape) + 1j * random.normal(size=shape)) / np.sqrt(2.0)
    # By Parseval the mean of |e|^2 is the sum of all |c|^2 over 4 pi.
    out = np.zeros((*shape[:-1], high), complex)
    out[..., low:] = drawn * (rms * np.sqrt(4.0 * np.pi / (2 * (high - low))))[:, None, None, None]
    return out


def _peaks(waves: Waves) -> FloatArray:
    """Return the largest field where the file is determined (frequency,)."""
    from colure.model.fields import LEAST_SUPPORT

    dataset = waves.pattern
    size = np.sqrt(np.abs(dataset["e_theta"].values) ** 2 + np.abs(dataset["e_phi"].values) ** 2)
    if "support" in dataset:
        size = np.where(np.broadcast_to(dataset["support"].values, size.shape) >= LEAST_SUPPORT, size, 0.0)
    return np.asarray(np.nanmax(size.reshape(len(size), -1), axis=1))
