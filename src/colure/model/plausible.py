"""What no range measures: fields whose numbers can be read but hardly be meant.

Each check names the column, the value, what it would mean and the word that says it is right (`--accept WORD`).
"""

from __future__ import annotations

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import SPEED_OF_LIGHT, FloatArray
from colure.model.field_layout import SMALLEST_FIELD
from colure.model.fields import FieldSamples

WORDS = ("frequency", "radius", "angles", "duplicates", "poles")
#: A field at fewer hertz than this was hardly measured on a range.
LEAST_HZ = 1e6
#: A measurement sphere larger than this, metres, or smaller than this many wavelengths.
MOST_RADIUS_M, LEAST_RADIUS_WAVELENGTHS = 20.0, 0.08
#: Difference of two values of one direction, rms relative to the fields there: refused, and told.
CONTRADICTION, DISAGREEMENT = 0.1, 0.01
SAME_DEG = 1e-4
#: A pole read in so many columns at least shows a vector; nearer to it than this, radians. A mistake explains what a pole shows if it
#: takes so much of the contradiction away.
LEAST_COLUMNS, POLE, MENDS = 4, 1e-6, 0.2
MIRRORED = (
    "they agree if e_theta and e_phi are exchanged, phi_deg turns the other way, theta_deg counts from the other end, or e_phi has the "
    "other sign"
)
#: The ring next to a pole tells the same if it is as near as this, radians, and has so many columns: the vector that its columns show
#: turns by less than so many turns over a turn of phi (counted: at most 1.0 in 142 rings of right fields, nulls at the pole among
#: them; from 1.5 on in 123 of the same 142 with the sign of e_phi changed, the rest are nulls there).
NEXT_RING, RING_COLUMNS, TURNS = float(np.deg2rad(30.0)), 8, 1.5
#: Values of one direction that differ by less are the same.
ROUNDING = 1e-6


def require_plausible(
    samples: list[FieldSamples], source: str, accept: frozenset[str] = frozenset(), *, insist: str = "--accept"
) -> list[str]:
    """Refuse fields that can hardly be meant, and return what is worth telling, in plain words.

    Parameters
    ----------
    accept
        Any of `WORDS`: the user says that this is right.
    insist
        What to type before such a word to say so; it ends the refusals.

    Raises
    ------
    InputError
        Naming column, value, what it would mean and how to say that it is right; or an unknown word in `accept`.
    """
    if unknown := accept - set(WORDS):
        raise InputError([f"accept = {', '.join(sorted(unknown))!r}: must be any of {', '.join(WORDS)}"])
    faults, told = [], []
    for one in samples:
        if one.radius_m is not None and not np.isfinite(one.radius_m).all():
            raise InputError(
                [f"{source}: radius_m = {one.radius_m[~np.isfinite(one.radius_m)][0]:g}: must be a number of metres"]
            )
    for word, fault in (
        ("frequency", _frequency(samples)), ("radius", _radius(samples)), ("angles", _angles(samples)),
        ("poles", "" if _angles(samples) else pole_fault(samples)),  # one mistake, one word
    ):  # fmt: skip
        if fault and word not in accept:
            faults.append(f"{source}: {fault}; if that is right: {insist} {word}")
    for one in samples:
        if one.field.shape[1] == 0 or not np.any(np.abs(one.field) > SMALLEST_FIELD):
            faults.append(
                f"{source}: e_theta, e_phi at {one.frequency_hz:g} Hz: the field is 0 everywhere; nothing was measured there"
            )
            continue
        level, words = _duplicates(one)
        if level > CONTRADICTION and "duplicates" not in accept:
            faults.append(f"{source}: {words}; if the mean of both is right: {insist} duplicates")
        elif level > DISAGREEMENT:
            told.append(f"{source}: {words}")
    if faults:
        raise InputError(faults[:20])
    return told


def _frequency(samples: list[FieldSamples]) -> str:
    values = np.array([one.frequency_hz for one in samples])
    if values.max() >= LEAST_HZ:
        low = values[values < LEAST_HZ]
        if low.size == 0:
            return ""
        return f"frequency_hz = {low[0]:g}: is {low[0]:g} Hz beside {values.max():g} Hz: two units in one column?"
    unit, factor = ("GHz", 1e9) if values.max() < 1000.0 else ("MHz", 1e6)
    return f"frequency_hz = {values[0]:g}: would be {values[0]:g} Hz; {values[0]:g} {unit} is {values[0] * factor:g} in this column"


def _radius(samples: list[FieldSamples]) -> str:
    for one in samples:
        if one.radius_m is None or one.radius_m.size == 0:
            continue
        largest, smallest = float(np.max(one.radius_m)), float(np.min(one.radius_m))
        if largest > MOST_RADIUS_M:
            return (
                f"radius_m = {largest:g}: would be a sphere of {largest:g} m; {largest:g} mm is {1e-3 * largest:g} m, "
                f"{largest:g} cm is {1e-2 * largest:g} m"
            )
        wavelengths = smallest * one.frequency_hz / SPEED_OF_LIGHT
        if wavelengths < LEAST_RADIUS_WAVELENGTHS and one.frequency_hz >= LEAST_HZ:
            return f"radius_m = {smallest:g}: would be {wavelengths:.2g} wavelengths from the centre at {one.frequency_hz:g} Hz"
    return ""


def _angles(samples: list[FieldSamples]) -> str:
    theta = max((float(np.rad2deg(np.abs(one.theta).max())) for one in samples if one.theta.size), default=180.0)
    phi = max((float(np.rad2deg(np.abs(one.phi).max())) for one in samples if one.phi.size), default=360.0)
    if theta <= 1.02 * np.pi and 1.5 < phi <= 1.02 * 2.0 * np.pi and theta > 0.0:
        return (
            f"theta_deg up to {theta:.4g}, phi_deg up to {phi:.4g}: would be a few degrees of the sphere; radians are to be "
            "multiplied by 57.29578 (180/pi)"
        )
    # Nobody ends a scan at 3.14159 deg.
    if abs(theta - np.pi) < 1e-3:
        return (
            f"theta_deg up to {theta:.6g}: is pi, so that theta would be in radians while phi_deg goes up to {phi:.4g}; radians are to be "
            "multiplied by 57.29578 (180/pi)"
        )
    return ""


def pole_fault(samples: list[FieldSamples]) -> str:
    """Tell where columns contradict each other at a pole: all of them look at one vector there, from other sides."""
    for one in samples:
        if one.radius_m is not None and np.all(one.field.imag == 0.0) and np.all(one.field.real >= 0.0):
            continue  # amplitudes on a sphere, for `colure process --amplitude-only`
        strongest = float(np.nanmax(np.linalg.norm(one.field, axis=0), initial=0.0))
        for name, side in (("theta_deg = 0", 1.0), ("theta_deg = 180", -1.0)):
            at = (
                (np.abs(np.sin(one.theta)) < POLE)
                & (side * np.cos(one.theta) > 0.0)
                & np.isfinite(one.field).all(axis=0)
            )
            phi, field = one.phi[at], one.field[:, at]
            if not np.isfinite(strongest):
                continue
            if np.unique(np.round(np.mod(phi, 2.0 * np.pi), 6)).size < LEAST_COLUMNS:
                if fault := _ring_fault(one, side, strongest):
                    return fault
                continue
            apart = _at_pole(field, phi, side) / max(strongest, SMALLEST_FIELD)
            if apart > CONTRADICTION:
                return (
                    f"e_theta, e_phi at {name}, {one.frequency_hz:g} Hz: all columns of phi_deg see one vector there, and disagree by "
                    f"{100 * apart:.0f} % of the largest field: {_mistake(field, phi, side, apart * strongest)}"
                )
    return ""


def _ring_fault(one: FieldSamples, side: float, strongest: float) -> str:
    """Tell where the ring next to a pole, which is not read or only once, shows a vector that turns with phi as no field does there."""
    polar = one.theta if side > 0.0 else np.pi - one.theta
    usable = np.isfinite(one.field).all(axis=0) & (polar > POLE) & (polar <= NEXT_RING)
    if not usable.any():
        return ""
    at = np.flatnonzero(usable & (polar < polar[usable].min() + POLE))
    if one.radius_m is not None:
        at = at[np.abs(one.radius_m[at] - one.radius_m[at[0]]) < 1e-9]
    phi, first = np.unique(np.round(np.mod(one.phi[at], 2.0 * np.pi), 6), return_index=True)
    field = one.field[:, at[first]]
    gaps = np.diff(phi, append=phi[0] + 2.0 * np.pi)
    if (
        phi.size < RING_COLUMNS
        or np.ptp(gaps) > 1e-4
        or np.sqrt(np.mean(np.sum(np.abs(field) ** 2, axis=0))) < (CONTRADICTION * max(strongest, SMALLEST_FIELD))
    ):
        return ""
    # x + jy and x - jy of the vector, in axes that do not turn with phi: harmonics of high order vanish towards the pole.
    orders = np.fft.fftfreq(phi.size, 1.0 / phi.size)
    power = [
        np.abs(np.fft.fft(np.exp(sign * 1j * phi) * (side * field[0] + sign * 1j * field[1]))) ** 2
        for sign in (1.0, -1.0)
    ]
    turns = float(orders @ (power[0] - power[1]) / np.sum(power))
    if turns < TURNS:
        return ""
    return (
        f"e_theta, e_phi at theta_deg = {np.rad2deg(one.theta[at[0]]):g}, {one.frequency_hz:g} Hz: next to a pole all columns of phi_deg see "
        f"nearly one vector, and here it turns by {turns:.1f} turns over a turn of phi_deg: {MIRRORED}"
    )


def _at_pole(field: np.ndarray, phi: FloatArray, side: float) -> float:
    """Return the rms of the vectors that fields (2, column) show at a pole about their mean; `side` -1 for the rear one."""
    vectors = np.stack(
        [side * np.cos(phi) * field[0] - np.sin(phi) * field[1], side * np.sin(phi) * field[0] + np.cos(phi) * field[1]]
    )
    return float(np.sqrt(np.mean(np.sum(np.abs(vectors - vectors.mean(axis=1, keepdims=True)) ** 2, axis=0))))


def _mistake(field: np.ndarray, phi: FloatArray, side: float, apart: float) -> str:
    """Return which mistake makes such a contradiction, if one does."""
    # At a pole an exchange is a mirror: both take the same away.
    if _at_pole(field * np.array([[1.0], [-1.0]]), phi, side) < MENDS * apart:
        return MIRRORED
    if _at_pole(field, np.deg2rad(phi), side) < MENDS * apart or _at_pole(field, np.rad2deg(phi), side) < MENDS * apart:
        return "they agree if phi_deg is in the other unit, degrees or radians"
    return "real and imaginary parts of the field are wanted, not dB, power, or amplitude and phase"


def merged(samples: list[FieldSamples], source: str) -> tuple[list[FieldSamples], list[str]]:
    """Return samples with the mean of every direction that is given more than once, and in words how far apart the values were.

    A column a full turn after the first is the first; nothing is said of values that agree to rounding.
    """
    out, told = [], []
    for one in samples:
        key = _keys(one)
        _, first, which, counts = np.unique(key, axis=1, return_index=True, return_inverse=True, return_counts=True)
        if np.all(counts == 1):
            out.append(one)
            continue
        which = which.reshape(-1)
        mean = np.stack([_mean(part, which, counts) for part in one.field])
        spread = np.sqrt(_mean(np.sum(np.abs(one.field - mean[:, which]) ** 2, axis=0), which, counts).real)
        several = counts > 1
        size = float(np.sqrt(np.mean(np.sum(np.abs(mean[:, several]) ** 2, axis=0))))
        share = float(np.sqrt(np.mean(spread[several] ** 2))) / max(size, SMALLEST_FIELD)
        if share > ROUNDING:
            told.append(
                f"{source}: {int(several.sum())} directions at {one.frequency_hz:g} Hz are given more than once: their mean is taken; "
                f"the values lie {100 * share:.2g} % rms about it"
            )
        order = np.argsort(first, kind="stable")
        at = first[order]
        radius = None if one.radius_m is None else one.radius_m[at]
        out.append(
            FieldSamples(one.frequency_hz, one.theta[at], one.phi[at], mean[:, order], radius, one.weight[at])
        )  # fmt: skip
    return out, told


def _mean(values: np.ndarray, which: np.ndarray, counts: np.ndarray) -> np.ndarray:
    real, imaginary = (np.bincount(which, weights=part) for part in (np.real(values), np.imag(values)))
    return np.asarray((real + 1j * imaginary) / counts)


def _keys(one: FieldSamples) -> np.ndarray:
    """Return (2 or 3, count) whole numbers that are the same for samples of one place."""
    theta, phi = np.rad2deg(one.theta), np.mod(np.rad2deg(one.phi), 360.0)
    phi = np.where(phi > 360.0 - SAME_DEG / 2, 0.0, phi)
    columns = [np.round(theta / SAME_DEG), np.round(phi / SAME_DEG)]
    if one.radius_m is not None:
        columns.append(np.round(one.radius_m / 1e-9))
    return np.stack(columns)


def _duplicates(one: FieldSamples) -> tuple[float, str]:
    """Return how much values of one direction differ (rms, relative to them), and the worst pair in words."""
    theta, phi = np.rad2deg(one.theta), np.mod(np.rad2deg(one.phi), 360.0)
    columns = _keys(one)
    order = np.lexsort(columns)
    key = columns[:, order]
    same = np.flatnonzero(np.all(key[:, 1:] == key[:, :-1], axis=0))
    if same.size == 0:
        return 0.0, ""
    first, second = order[same], order[same + 1]
    off = np.linalg.norm(one.field[:, first] - one.field[:, second], axis=0)
    size = float(np.sqrt(np.mean(np.abs(one.field[:, np.concatenate([first, second])]) ** 2) * 2.0))
    if size == 0.0:
        return 0.0, ""
    level = float(np.sqrt(np.mean(off**2))) / size
    worst = int(np.argmax(off))
    turns = _turn_apart(one.phi, first, second)
    what = (
        "the last column of phi_deg (a full turn after the first) does not close" if turns.all()
        else f"theta_deg = {theta[first[worst]]:g}, phi_deg = {phi[first[worst]]:g} is given twice with different fields"
    )  # fmt: skip
    return (
        level,
        f"{what}: {100 * level:.0f} % rms apart at {one.frequency_hz:g} Hz ({same.size} directions given twice)",
    )


def _turn_apart(phi: FloatArray, first: np.ndarray, second: np.ndarray) -> np.ndarray:
    return np.asarray(np.abs(np.abs(phi[first] - phi[second]) - 2.0 * np.pi) < 1e-6)
