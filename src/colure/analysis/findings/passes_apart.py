"""A second polarization that reads with another level or phase than the first: a rotary joint, a switch, a range that was left switched over.

Ties look at one roll of the probe and see nothing of it. Both passes are clean, and every polarization that is read from
both of them is wrong. A device's waves fit both passes with one ratio only, the more surely the broader its beam is.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.findings.finding import Finding, Severity
from colure.analysis.steps.agreement import level_db
from colure.analysis.steps.assemble import pass_errors
from colure.geometry.conventions import ComplexArray, FloatArray, amplitude_db
from colure.geometry.kinematics import Geometry
from colure.model.figure import NOT_TO_BE_USED
from colure.model.plan import Role
from colure.model.record import of_role
from colure.values import holds_arrays

if TYPE_CHECKING:
    from colure.analysis.findings.misfit import ScanMisfit

#: Standard deviations that the ratio stands out by, over ranges as declared that leave as much as this one does.
STANDS_OUT = 5.0
#: On part of a sphere even the device's own waves leave something; where this share of a ratio may be that, nobody can tell.
MOST_OWN = 0.2
#: Rounds in which the ratio settles; it is not looked for beyond so much, nor where two of its parts are so much alike.
ROUNDS, LARGEST, WELL_SEEN = 3, 10.0, 1e9
#: A ratio that is nearer to one than this (0.26 dB, 1.7 deg) is let pass; beyond the last (0.9 dB, 6 deg) nothing is to be used.
LEAST, WRONG = 0.03, 0.1
#: A phase beyond this is another sign, deg.
OTHER_SIGN_DEG = 135.0


@dataclass(frozen=True, kw_only=True)
class PassesApart:
    """What the second polarization reads against the first, beyond what is known of it.

    left_db
        What does not fit the device's waves, relative to the peak.
    explained
        Share of its power that the ratio explains.
    """

    ratio: complex
    left_db: float
    explained: float

    @property
    def finding(self) -> Finding:
        """What it does and what to look at."""
        off_db, off_deg = float(amplitude_db(abs(self.ratio))), float(np.rad2deg(np.angle(self.ratio)))
        if abs(off_deg) > OTHER_SIGN_DEG:
            text = (
                f"the second polarization reads with the other sign, {off_deg:+.0f} deg against the first: only so do both fit one device's "
                "waves. The probe's roll turned the other way, or a port has the other sign. Jog the probe's roll by a degree, correct its "
                "sense, and measure again"
            )
        else:
            text = (
                f"the second polarization reads {off_db:+.1f} dB and {off_deg:+.0f} deg against the first: only so do both fit one device's "
                "waves. Look at rotary joint, cable and switch of the probe at both rolls or ports, and measure again; imbalance_db in "
                "chamber.toml if it is known"
            )
        severity: Severity = NOT_TO_BE_USED if abs(np.log(self.ratio)) > WRONG else "look"
        return Finding("polarization", self.left_db, text, severity)


def passes_apart(misfit: ScanMisfit, left: FloatArray, chance: FloatArray) -> PassesApart | None:
    """Return the ratio of both polarizations if it is not one; None if it is, or where nobody can tell.

    left (row,), chance (draw, row)
        What the record, and ranges as declared, leave outside the device's waves that no adjustment explains.
    """
    second = _second(misfit)
    if second is None:
        return None
    fits = [one for one in (_settled(misfit, second, left, start) for start in (1.0, -1.0)) if one is not None]
    if not fits:
        return None
    # Another sign is a large thing to say: it has to explain twice as much.
    fit = fits[-1] if 2.0 * fits[-1].rest < fits[0].rest else fits[0]
    drawn, own = fit.shares(chance), fit.shares(fit.own[None])[0]
    # Whatever leaves more than a range as declared (stronger echoes, a larger device) scatters the ratio by as much more.
    more = fit.rest / np.mean(np.sum((chance - drawn @ fit.trace) ** 2, axis=1))
    spread = drawn.T @ drawn / len(drawn) * max(1.0, float(more))
    explained = 1.0 - fit.rest / float(left @ left)
    surely = explained > 0.0 and fit.share @ np.linalg.solve(spread, fit.share) >= STANDS_OUT**2
    if not surely or np.linalg.norm(own) > MOST_OWN * np.linalg.norm(fit.share) or abs(np.log(fit.ratio)) < LEAST:
        return None
    return PassesApart(ratio=fit.ratio, left_db=level_db(float(np.linalg.norm(left))), explained=explained)


@dataclass(frozen=True)
@holds_arrays
class _RatioFit:
    """What ratio explains most of what does not fit.

    trace (2, row)
        What the second polarization of the device's waves leaves, and what it does a quarter turn later.
    own (row,)
        What the device's waves leave by themselves.
    share (2,), rest
        Of the trace in what does not fit, and the power that does not fit once the ratio is undone.
    """

    trace: FloatArray
    own: FloatArray
    share: FloatArray
    rest: float

    @property
    def ratio(self) -> complex:
        """Second polarization as it was read over what it should have been."""
        return 1.0 + complex(self.share[0], self.share[1])

    def shares(self, rows: FloatArray) -> FloatArray:
        """Return the share of the trace in each of rows (draw, row)."""
        return np.asarray(np.linalg.solve(self.trace @ self.trace.T, self.trace @ rows.T).T)


def _settled(
    misfit: ScanMisfit, second: Callable[[ComplexArray], ComplexArray], left: FloatArray, start: float
) -> _RatioFit | None:
    """Return the ratio that is found from a first guess; None where nobody can tell."""
    field, ratio = misfit.inputs.sphere.field, complex(start)
    for _ in range(ROUNDS):
        # Not what was measured: its noise is part of what does not fit, and would be held against itself.
        waves = misfit.fitted((field - (1.0 - 1.0 / ratio) * second(field))[None])
        read = second(waves[0])
        trace = misfit.unexplained(np.stack([read, 1j * read]))
        if np.linalg.cond(trace @ trace.T) > WELL_SEEN:
            return None
        share = np.asarray(np.linalg.solve(trace @ trace.T, trace @ left), np.float64)
        ratio = 1.0 + complex(share[0], share[1])
        if not 1.0 / LARGEST < abs(ratio) < LARGEST:
            return None
    rest = float(misfit.power((field - (1.0 - 1.0 / ratio) * second(field))[None])[0])
    return _RatioFit(trace=trace, own=misfit.unexplained(waves)[0], share=share, rest=rest)


def _second(misfit: ScanMisfit) -> Callable[[ComplexArray], ComplexArray] | None:
    """Return what takes a field (1, 2, theta, phi) to the part that the second pass or port reads; None where there is none."""
    record, chamber, sphere = misfit.inputs.sweeps.record, misfit.inputs.chamber, misfit.inputs.sphere
    if record.sizes["port"] == 2:
        if "probe" in [str(name) for name in record["axis"].values]:
            return None
        # Port 2 reads e_phi; of the polar frame of azimuth over elevation theta^, as `assemble` sorts it.
        own = np.zeros((2, 1, 1))
        own[0 if chamber.positioner.geometry is Geometry.AZIMUTH_OVER_ELEVATION else 1] = 1.0
        return lambda field: np.asarray(own * field)
    if np.unique(of_role(record, Role.SCAN)["pass_index"].values).size != 2:
        return None

    def of_second(moments: FloatArray) -> ComplexArray:
        """Pass by pass, as `pass_errors` asks: the second half of them."""
        return np.asarray(np.repeat([0.0, 1.0], moments.size // 2)[None], complex)

    parts = pass_errors(record, chamber, sphere, of_second)
    if parts is None:
        return None
    part = np.broadcast_to(parts[0], (2, 2, *sphere.field.shape[-2:]))
    return lambda field: np.asarray(np.einsum("abtp,fbtp->fatp", part, field))
