"""Amplitude and phase of an array's elements from power alone: each element's phase is turned while the others stay.

The rotating-element electric-field vector method: S. Mano, T. Katagi, A method for measuring amplitude and phase of each
radiating element of a phased array antenna, Electronics and Communications in Japan (Part I) 65-B (1982), no. 5, 58-64. While
element n turns by D, the power is (Y^2 + k^2) + 2 k Y cos(D + D0) over that at D = 0, with k = E_n / E_0 and X = phi_n - phi_0:

    Y^2 = (cos X - k)^2 + sin^2 X,    tan D0 = sin X / (cos X - k),
    r^2 = (Y + k)^2 / (Y - k)^2,      G = (r - 1) / (r + 1),
    k = G / sqrt(1 + 2 G cos D0 + G^2),    tan X = sin D0 / (cos D0 + G).

r is the ratio of largest and smallest amplitude, D0 the turn that the largest one lies short of 0. Power tells not which of r and -r
holds: G or 1 / G, an element weaker or stronger than all others together. What tells: all elements add up to the whole,
sum of k exp(jX) = 1.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import combinations

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, IntArray
from colure.values import holds_arrays

#: Solutions add up to the whole within so many standard uncertainties.
FITS = 3.0
#: At most so many elements are taken for the stronger solution together; one of them can be stronger than all others.
MOST_STRONGER = 2
#: A sinusoid has three unknowns; one turn more shows the powers' scatter.
FEWEST_STEPS = 4


@dataclass(frozen=True)
@holds_arrays
class Turned:
    """Each element over the whole field, both solutions, from the power while it turned.

    value, other (element,)
        k exp(jX) of the weaker and of the stronger solution.
    covariance (element, 2, 2)
        Of real and imaginary part of d value / value: relative amplitude, and phase in radians.
    other_covariance
        The same of the other solution.
    freedom
        Degrees of freedom of the scatter that the covariance rests on.
    scatter
        Relative standard deviation of one power, about the fitted sinusoids.
    """

    value: ComplexArray
    other: ComplexArray
    covariance: FloatArray
    other_covariance: FloatArray
    freedom: float
    scatter: float


def solutions(mean: float, cosine: float, sine: float) -> tuple[complex, complex]:
    """Return k exp(jX), weaker and stronger, of the power mean + cosine cos D + sine sin D."""
    swing = float(np.hypot(cosine, sine))
    start = float(np.arctan2(-sine, cosine))
    largest, smallest = np.sqrt(mean + swing), np.sqrt(max(mean - swing, 0.0))
    weaker = (largest - smallest) / (largest + smallest)
    if weaker <= 0.0:
        return 0.0j, complex(1.0)
    out = []
    for g in (weaker, 1.0 / weaker):
        k = g / np.sqrt(1.0 + 2.0 * g * np.cos(start) + g**2)
        out.append(complex(k * np.exp(1j * np.arctan2(np.sin(start), np.cos(start) + g))))
    return out[0], out[1]


def turned_elements(element: IntArray, turn: FloatArray, power: FloatArray) -> Turned:
    """Return every element over the whole field from powers (row,) at turns (row,) in radians of one element each.

    Raises
    ------
    ValueError
        If an element has too few different turns, or a power is not above 0.
    """
    if not (power > 0.0).all():
        raise ValueError(f"power: row {int(np.argmin(power)) + 1} holds {power.min():g}; must be above 0 (mW)")
    count = int(element.max()) + 1
    fits, inverse, squares, freedom = [], [], 0.0, 0
    for n in range(count):
        own = element == n
        steps = np.unique(np.round(np.mod(turn[own], 2.0 * np.pi), 6)).size
        if steps < FEWEST_STEPS:
            raise ValueError(
                f"element {n}: {steps} different turns, needs at least {FEWEST_STEPS} in a full turn (phase_deg)"
            )
        design = np.stack([np.ones(own.sum()), np.cos(turn[own]), np.sin(turn[own])], axis=1)
        fit, *_ = np.linalg.lstsq(design, power[own], rcond=None)
        fits.append(fit)
        inverse.append(np.linalg.inv(design.T @ design))
        squares += float(np.sum((power[own] - design @ fit) ** 2))
        freedom += int(own.sum()) - 3
    scatter = np.sqrt(squares / freedom)
    both = np.array([solutions(*fit) for fit in fits])
    spread = [
        [_covariance(fit, scatter**2 * m, which) for fit, m in zip(fits, inverse, strict=True)] for which in (0, 1)
    ]
    return Turned(both[:, 0], both[:, 1], np.array(spread[0]), np.array(spread[1]), float(freedom),
        float(scatter / np.mean(power)))  # fmt: skip


def _covariance(fit: FloatArray, covariance: FloatArray, which: int) -> FloatArray:
    """Return the covariance of relative amplitude and phase of one solution, by central differences."""
    value = solutions(*fit)[which]
    columns = []
    for i in range(3):
        step = np.zeros(3)
        step[i] = 1e-5 * abs(fit[0])
        there, back = (solutions(*(fit + sign * step))[which] for sign in (1.0, -1.0))
        change = (there - back) / (2.0 * step[i]) / (value if value != 0.0 else 1.0)
        columns.append([change.real, change.imag])
    jacobian = np.array(columns).T
    return np.asarray(jacobian @ covariance @ jacobian.T)


@dataclass(frozen=True)
@holds_arrays
class Chosen:
    """Which solution each element has.

    value (element,)
        k exp(jX); of an undecided element the weaker solution.
    covariance (element, 2, 2)
        As of `Turned`.
    undecided (element,)
        Elements of which both solutions add up to the whole.
    rest, allowed
        What the sum of all lacks to 1, and what the powers' scatter lets it lack.
    """

    value: ComplexArray
    covariance: FloatArray
    undecided: IntArray
    rest: float
    allowed: float

    @property
    def adds_up(self) -> bool:
        """Tell whether all elements add up to the whole field."""
        return self.rest <= self.allowed


def chosen(turned: Turned) -> Chosen:
    """Return the solution of every element with which all add up to the whole, with the fewest stronger ones that fit.

    Where several do, the elements in which they differ are undecided. If none does, the weaker ones are taken and `adds_up` is False:
    elements were left out, or something that no command turns adds to the field.
    """
    count = turned.value.size
    spread = np.sum(np.abs(turned.value) ** 2 * np.trace(turned.covariance, axis1=1, axis2=2))
    fits = []
    for many in range(min(MOST_STRONGER, count) + 1):
        for some in combinations(range(count), many):
            index = list(some)
            swap = turned.other[index] - turned.value[index]
            more = np.sum(np.abs(turned.other[index]) ** 2 * np.trace(turned.other_covariance[index], axis1=1, axis2=2))
            rest = abs(turned.value.sum() + swap.sum() - 1.0)
            allowed = FITS * float(np.sqrt(spread + more))
            if rest <= allowed:
                fits.append((index, rest, allowed))
    if not fits:
        rest = abs(turned.value.sum() - 1.0)
        return Chosen(
            turned.value, turned.covariance, np.zeros(0, np.int64), float(rest), FITS * float(np.sqrt(spread))
        )
    best, rest, allowed = fits[0]
    value, covariance = turned.value.copy(), turned.covariance.copy()
    value[best], covariance[best] = turned.other[best], turned.other_covariance[best]
    doubt = sorted(set().union(*(set(index) ^ set(best) for index, _, _ in fits)))
    return Chosen(value, covariance, np.array(doubt, np.int64), float(rest), allowed)


def beyond_the_range(place_m: FloatArray, direction: FloatArray, *, range_m: float, wavenumber: float) -> ComplexArray:
    """Return what turns elements as a probe reads them into what they are far away, (element,).

    A wave from r to the probe at R d runs |R d - r|, far away R - d . r: across the direction, r^2 / 2R more (derivable).

    Parameters
    ----------
    place_m
        (element, 3) from the axes' intersection, device frame.
    direction
        (3,) unit vector from there to the probe, device frame.
    range_m, wavenumber
        Distance of the probe from the axes' intersection, and k in rad/m.
    """
    way = np.linalg.norm(range_m * direction - place_m, axis=1)
    return np.asarray(way / range_m * np.exp(1j * wavenumber * (way - range_m + place_m @ direction)))


def relative(value: ComplexArray) -> ComplexArray:
    """Return elements over their rms amplitude, phases about that of their sum: how every table of a calibration is given."""
    return np.asarray(value / np.sqrt(np.mean(np.abs(value) ** 2)) * np.exp(-1j * np.angle(value.sum())))
