"""A probe's pattern from its dimensions, for a range whose probe has no calibration file."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import numpy as np

from colure.analysis.steps.far_field import LARGEST_PROBE_ORDER, pattern_grid
from colure.app.storage.folders import require_free
from colure.errors import InputError
from colure.geometry.conventions import FloatArray, mode_orders, power_db, wavenumber
from colure.model.files import save_dataset
from colure.model.pattern import build_pattern
from colure.waves.expansion import Expansion
from colure.waves.probe_models import conical_horn, dipole, open_waveguide, order_of_reach, pyramidal_horn

#: Steps of theta and phi of a file, deg: the coarsest that carries a third more than the probe's order.
STEPS_DEG = (5.0, 3.0, 2.0, 1.0)
#: Frequencies of a file: the pattern changes smoothly between them.
POINTS = 9
#: Dimensions of each kind in mm, and where its model comes from.
DIMENSIONS = {
    "waveguide": ("a_mm", "b_mm"),
    "horn": ("a_mm", "b_mm", "slant_e_mm", "slant_h_mm"),
    "cone": ("radius_mm", "slant_mm"),
    "dipole": (),
}
SOURCES = {
    "waveguide": "open end of a rectangular guide, A. D. Yaghjian, IEEE Trans. Antennas Propag. 32(4):378-384, 1984",
    "horn": "pyramidal horn: cosine along a, uniform along b, quadratic phases, obliquity (1 + cos theta) / 2",
    "cone": "conical horn: TE11 mode, quadratic phase, obliquity (1 + cos theta) / 2",
    "dipole": "elementary dipole along x",
}


@dataclass(frozen=True, kw_only=True)
class ModelledProbe:
    """What was written.

    directivity_dbi, front_to_back_db
        On the axis at mid-band, and against the direction behind.
    beyond_first_order_db
        Power outside the waves of azimuthal index +1 and -1 against all power, dB, at the worst frequency.
    """

    file: Path
    source: str
    directivity_dbi: float
    front_to_back_db: float
    beyond_first_order_db: float


def write_probe_model(
    target: Path, kind: str, *, start_ghz: float, stop_ghz: float, size_mm: dict[str, float | None]
) -> ModelledProbe:
    """Write the pattern of a probe of some kind and size over a band as a file that `probe.pattern` can name.

    kind
        One of `DIMENSIONS`.
    size_mm
        Its dimensions by name, all of them and no others.

    Raises
    ------
    InputError
        If the file exists, a dimension is missing or belongs to another kind, the band is none, or the probe is too large.
    """
    require_free(target)
    if target.suffix.lower() != ".nc":
        raise InputError([f"{target}: must end in .nc for a probe's pattern (file ending)"])
    given = _checked(kind, start_ghz, stop_ghz, size_mm)
    frequency = np.linspace(start_ghz, stop_ghz, POINTS if stop_ghz > start_ghz else 1) * 1e9
    k = wavenumber(frequency)
    reach = given["radius"] if kind == "cone" else 0.5 * float(np.hypot(given.get("a", 0.0), given.get("b", 0.0)))
    order = order_of_reach(float(k[-1]), reach)
    if order > LARGEST_PROBE_ORDER:
        raise InputError(
            [f"{kind}: its waves reach order {order} at {stop_ghz:g} GHz: must be at most {LARGEST_PROBE_ORDER}; use a smaller probe"]
        )  # fmt: skip
    probe = _modelled(kind, k, given)
    step_deg = next(s for s in STEPS_DEG if 180.0 / s - 1.0 >= 4.0 / 3.0 * probe.order)
    theta, phi, field = pattern_grid(probe, step_deg)
    words = ", ".join(f"{name} = {value:g}" for name, value in size_mm.items() if value is not None)
    pattern = build_pattern(
        field,
        frequency_hz=frequency,
        theta=theta,
        phi=phi,
        quantity="relative",
        phase_reference="centre of the aperture",
    ).assign_attrs(note=f"Modelled, not measured: {SOURCES[kind]}" + (f"; {words}" if words else ""))
    save_dataset(pattern, target)
    return _described(target, kind, probe)


def _checked(kind: str, start_ghz: float, stop_ghz: float, size_mm: dict[str, float | None]) -> dict[str, float]:
    """Return the dimensions in metres; raises `InputError` for what is missing, foreign or no length."""
    wanted = DIMENSIONS[kind]
    faults = [
        f"{name}: missing; a {kind} needs {', '.join(wanted)} (mm)" for name in wanted if size_mm.get(name) is None
    ]
    faults += [
        f"{name} = {value:g}: a {kind} has no such dimension; it has {', '.join(wanted) or 'none'}"
        for name, value in size_mm.items()
        if value is not None and name not in wanted
    ]
    faults += [
        f"{name} = {value:g}: must be above 0 and at most 10000 mm"
        for name, value in size_mm.items()
        if value is not None and name in wanted and not 0.0 < value <= 1e4
    ]
    if not 0.0 < start_ghz <= stop_ghz:
        faults.append(f"band = {start_ghz:g}-{stop_ghz:g}: must begin above 0 and not end below its begin (GHz)")
    if faults:
        raise InputError(faults)
    return {name.removesuffix("_mm"): 1e-3 * value for name, value in size_mm.items() if value is not None}


def _modelled(kind: str, k: FloatArray, size: dict[str, float]) -> Expansion:
    if kind == "dipole":
        return dipole(k)
    try:
        if kind == "waveguide":
            return open_waveguide(k, a=size["a"], b=size["b"])
        if kind == "horn":
            return pyramidal_horn(k, a=size["a"], b=size["b"], slant_e=size["slant_e"], slant_h=size["slant_h"])
        return conical_horn(k, radius=size["radius"], slant=size["slant"])
    except ValueError as error:
        raise InputError([f"{kind}: {error}; give a larger guide or a higher band"]) from None


def _described(target: Path, kind: str, probe: Expansion) -> ModelledProbe:
    middle = len(probe.k) // 2
    front, back = np.sum(np.abs(probe.far_field(np.array([0.0, np.pi]), 1)[middle, :, :, 0]) ** 2, axis=0)
    power = np.sum(np.abs(probe.coefficients) ** 2, axis=-2)
    beyond = np.sum(power[:, np.abs(mode_orders(probe.order)) != 1], axis=-1) / np.sum(power, axis=-1)
    return ModelledProbe(
        file=target,
        source=SOURCES[kind],
        directivity_dbi=float(power_db(4.0 * np.pi * front / probe.power()[middle])),
        front_to_back_db=float(power_db(front / max(back, 1e-12 * front))),
        beyond_first_order_db=float(np.max(power_db(beyond, least=1e-12))),
    )
