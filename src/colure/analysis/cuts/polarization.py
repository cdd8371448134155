"""Figures of a cut that need both components: cross-polarization, and for a rotating field both hands."""

from __future__ import annotations

import numpy as np

from colure.analysis.cuts.curve import curve_of
from colure.analysis.cuts.reader import DB, CutReader
from colure.analysis.figures.beams import NO_REFERENCE
from colure.geometry.conventions import FloatArray, amplitude_db
from colure.model.figure import Figure

#: A wave whose axial ratio is larger is linear for every use: no sense is told (common practice, no source).
LINEAR_DB = 40.0


def cross_polar(reader: CutReader) -> list[Figure]:
    """Return cross-polar discrimination at the peak and the highest cross-polar level, or why there are none."""
    # Beside the ratio of both hands, the one of two linear components needs its name.
    asked = (
        (
            ("xpd_db", "linear cross-polar discrimination at the peak"),
            ("cross_peak_db", "highest linear cross-polar level"),
        )
        if reader.hands
        else (("xpd_db", "cross-polar discrimination at the peak"), ("cross_peak_db", "highest cross-polar level"))
    )
    if reader.cut.cross is None:
        why = "one probe offset measured one component; a second offset 90 deg further gives both"
        return [reader.none(what, label, "dB", why) for what, label in asked]
    if reader.lobes.at_end:
        return [reader.none(what, label, "dB", reader.rising()) for what, label in asked]
    co, cross = (
        curve_of(reader.cut.angle_deg, (one,)) for one in (reader.cut.co[reader.f], reader.cut.cross[reader.f])
    )
    assert co is not None and cross is not None  # a cut with figures has samples enough
    angle = reader.lobes.peak_deg
    p = float(co.at(angle))
    out = []
    for (what, label), a in zip(asked, (cross.at(angle), float(cross.amplitude.max())), strict=True):
        e = reader.errors
        errors = {"noise": e.noise, "range echoes": e.echoes * p / reader.lobes.peak,
                  "probe polarization": reader.leak * p,
                  "drift residual": e.drift * a}  # fmt: skip
        total = float(np.sqrt(sum(x**2 for x in errors.values())))
        sign = -1.0 if what == "xpd_db" else 1.0
        ends = [
            sign * float(amplitude_db(x / p)) if x > 0.0 else -sign * float("inf")
            for x in (max(a - total, 0.0), a + total)
        ]
        value = sign * 20.0 * float(np.log10(max(a, 1e-12) / p))
        rows = {term: DB * x / max(a, 1e-12) for term, x in errors.items()}
        text = (
            "Co-polar over cross-polar level at the peak."
            if sign < 0
            else "Highest cross-polar level on the cut, relative to the co-polar level at the peak."
        )
        out.append(reader.figure(what, label, "dB", value, rows, text, ends=(min(ends), max(ends))))
    return out


def circular(reader: CutReader) -> list[Figure]:
    """Return gains of both hands at the peak, their ratio and the axial ratio with its sense, or why there are none."""
    names = (("gain_right_dbic", "right-hand gain at the peak", "dBic"), ("gain_left_dbic",
             "left-hand gain at the peak", "dBic"),
             ("xpd_circular_db", "circular cross-polar discrimination at the peak", "dB"),
             ("axial_ratio_signed_db", "axial ratio at the peak, + right-handed", "dB"))  # fmt: skip
    if reader.cut.cross is None or reader.lobes.at_end:
        why = (
            "one probe offset measured one component; a second offset 90 deg further gives both"
            if reader.cut.cross is None
            else reader.rising()
        )
        return [reader.none(*one, why) for one in names]
    co, cross = (_at(reader, field) for field in (reader.cut.co[reader.f], reader.cut.cross[reader.f]))
    # e_R = (co + j cross)/sqrt 2 (exp(+jwt), outgoing; IEEE Std 145).
    hands = [abs(co + 1j * cross) / np.sqrt(2.0), abs(co - 1j * cross) / np.sqrt(2.0)]
    errors = _errors_of_a_hand(reader, hands)
    total = float(np.sqrt(sum(x**2 for x in errors.values())))
    out = [_gain(reader, name, a, errors) for name, a in zip(names[:2], hands, strict=True)]
    strong, weak = max(hands), min(hands)
    ratio = weak / strong
    # What both hands have wrong together turns nothing; each has its own error beside the other.
    low, high = max((weak - total) / (strong + total), 0.0), (weak + total) / max(strong - total, 1e-12)
    rows = {term: DB * x * float(np.hypot(1.0 / max(weak, 1e-12), 1.0 / strong)) for term, x in errors.items()}
    text = "Stronger over weaker circular component at the peak."
    ends = tuple(-amplitude_db(x) if x > 0.0 else float("inf") for x in (min(high, 1.0), low))
    out.append(
        reader.figure(
            *names[2], -float(amplitude_db(max(ratio, 1e-12))), rows, text, ends=(float(ends[0]), float(ends[1]))
        )
    )
    return [*out, _axial(reader, names[3], ratio, (low, high), hands[0] >= hands[1], rows)]


def _at(reader: CutReader, field: np.ndarray) -> complex:
    """Return a component at the peak, between the samples."""
    order = np.argsort(reader.cut.angle_deg, kind="stable")
    x = reader.cut.angle_deg[order]
    at = reader.lobes.peak_deg
    if reader.lobes.curve.closed:
        at = float(x[0] + (at - x[0]) % 360.0)
    return complex(np.interp(at, x, field[order].real), np.interp(at, x, field[order].imag))


def _errors_of_a_hand(reader: CutReader, hands: list[float]) -> dict[str, float]:
    """Return what is wrong with the field of one hand, amplitudes by cause: what mixes the two components mixes the hands."""
    e, probe = reader.errors, reader.chamber.probe
    both = sum(hands) / np.sqrt(2.0)
    unlike = float(np.hypot(probe.imbalance_db / DB, np.deg2rad(probe.imbalance_deg)))
    errors = {
        "noise": e.noise,
        "range echoes": e.echoes,
        "probe polarization": reader.purity * both,
        "polarization imbalance": 0.5 * unlike * both,
        # The two components of one port are read at different times.
        "drift residual": e.drift * both,
    }
    return {term: size for term, size in errors.items() if size > 0.0}


def _gain(reader: CutReader, name: tuple[str, str, str], a: float, errors: dict[str, float]) -> Figure:
    if not reader.chamber.reference.absolute:
        return reader.none(*name, f"it {NO_REFERENCE}")
    rows = {term: DB * x / max(a, 1e-12) for term, x in errors.items()} | reader.errors.common_db
    common = reader.errors.all_common_db / DB
    total = float(np.sqrt(sum(x**2 for x in errors.values()) + (a * common) ** 2 + (a * reader.errors.once) ** 2))
    low, high = reader.distance.peak_db
    ends = (float(amplitude_db(a - total)) if a > total else -float("inf"), float(amplitude_db(a + total)))
    text = f"Gain (realized) of the {name[1].split('-')[0]}-hand circular component at the peak of the cut."
    return reader.figure(
        *name,
        float(amplitude_db(max(a, 1e-12))),
        rows,
        text,
        bias=(low, high),
        ends=(float(ends[0]), float(ends[1])),
    )


def _axial(
    reader: CutReader,
    name: tuple[str, str, str],
    ratio: float,
    ends: tuple[float, float],
    right: bool,
    rows: dict[str, float],
) -> Figure:
    """Return the axial ratio with its sense; none where the errors leave open which hand is the stronger one."""

    def ratio_db(weaker: float) -> float:
        return float(amplitude_db((1.0 + weaker) / max(1.0 - weaker, 1e-12)))

    least = ratio_db(ends[0])
    if ends[1] >= 1.0 or least > LINEAR_DB:
        return reader.none(*name, f"the wave is linear within its errors (axial ratio at least {least:.0f} dB)")
    shown: FloatArray = np.array([ratio_db(one) for one in (ratio, *ends)]) * (1.0 if right else -1.0)
    text = "Major over minor axis of the polarization ellipse at the peak, + right-handed, - left-handed."
    return reader.figure(*name, float(shown[0]), rows, text, ends=(float(shown[1:].min()), float(shown[1:].max())))
