"""Which states show every element of an array by itself: orthogonal codes, one element toggled at a time, one element rotated.

Orthogonal codes tell N elements with the noise of N sweeps averaged; toggling needs as many states and gains nothing. Rotating
(the rotating-element electric-field vector method, Mano and Katagi 1982) needs no phase.
"""

from __future__ import annotations

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.model.commands import Commands

#: Largest order that is looked for.
LARGEST_ORDER = 4096
#: Steps of a full turn of one element: the fewest that tell mean, cosine and sine of the power with one to spare.
FEWEST_STEPS = 4


def hadamard(order: int) -> FloatArray | None:
    """Return a Hadamard matrix whose first column and row are ones; None where none of these constructions gives one.

    Sylvester's doubling and Paley's first construction (q + 1 with a prime q = 3 mod 4): R. E. A. C. Paley, On orthogonal
    matrices, J. Math. Phys. 12 (1933), 311-320.
    """
    if order in (1, 2):
        return np.array([[1.0, 1.0], [1.0, -1.0]])[:order, :order]
    if order % 4:
        return None
    if _prime(order - 1) and (order - 1) % 4 == 3:
        return _paley(order - 1)
    half = hadamard(order // 2)
    return None if half is None else np.kron(np.array([[1.0, 1.0], [1.0, -1.0]]), half)


def _prime(number: int) -> bool:
    return number > 1 and all(number % d for d in range(2, int(number**0.5) + 1))


def _paley(q: int) -> FloatArray:
    """Return I + S with S = [[0, 1], [-1, Q]] and Q_ij = chi(i - j), its rows turned so that the first column is ones."""
    chi = -np.ones(q)
    chi[(np.arange(1, q) ** 2) % q] = 1.0
    chi[0] = 0.0
    skew = np.zeros((q + 1, q + 1))
    skew[0, 1:], skew[1:, 0] = 1.0, -1.0
    skew[1:, 1:] = chi[np.subtract.outer(np.arange(q), np.arange(q)) % q]
    full = np.eye(q + 1) + skew
    return np.asarray(full * full[:, :1])


def next_order(elements: int) -> int:
    """Return the smallest order above the number of elements: its column of ones stays free."""
    return next(n for n in range(elements + 1, LARGEST_ORDER + 1) if hadamard(n) is not None)


def orthogonal(elements: int, others: tuple[complex, ...] = (-1.0,), order: int | None = None) -> Commands:
    """Return code states: each element at 0 deg or at another command, as the columns of a Hadamard matrix say.

    The column of ones is left free unless `order` is the number of elements: what no command turns (leakage, the part of an
    element's wave that passes its phase shifter) then falls on no element.

    Parameters
    ----------
    others
        Weights of the other commands, one block of states each; 0: switched off. One for every bit of a phase shifter and one for
        `off` tell what each command really does.

    Raises
    ------
    InputError
        If there is no code of that order, or fewer states than elements.
    """
    chosen = next_order(elements) if order is None else order
    matrix = hadamard(chosen)
    if matrix is None or chosen < elements:
        raise InputError(
            [f"order = {chosen}: must be an order of a Hadamard matrix of at least {elements} elements, such as {next_order(elements)}"]
        )  # fmt: skip
    columns = matrix[:, 1 : elements + 1] if chosen > elements else matrix
    names, rows = list[str](), list[ComplexArray]()
    for weight in others:
        # The first state of every block is the same: all elements at 0 deg.
        skip = 1 if rows else 0
        names += [f"code{_said(weight, others)}-{i:03d}" for i in range(skip, chosen)]
        rows += list(np.where(columns > 0.0, 1.0, weight)[skip:])
    return Commands(tuple(names), np.array(rows, complex))


def toggled(elements: int, others: tuple[complex, ...] = (-1.0,)) -> Commands:
    """Return all elements at 0 deg, then one element at a time at each of the other commands (weights; 0: switched off)."""
    names, rows = ["all"], [np.ones(elements, complex)]
    for element in range(elements):
        for weight in others:
            row = np.ones(elements, complex)
            row[element] = weight
            names.append(f"toggle{_said(weight, others)}-{element:03d}")
            rows.append(row)
    return Commands(tuple(names), np.array(rows))


def rotated(elements: int, steps: int = 8) -> Commands:
    """Return all elements at 0 deg, then one element at a time through a full turn in even steps.

    Raises
    ------
    InputError
        If there are too few steps to tell a sinusoid.
    """
    if steps < FEWEST_STEPS:
        raise InputError([f"steps = {steps}: must be at least {FEWEST_STEPS} in a full turn (steps)"])
    turns = tuple(turned(float(x)) for x in 360.0 * np.arange(1, steps) / steps)
    return Commands(("all", *(f"turn-{e:03d}-{i + 1:02d}" for e in range(elements) for i in range(steps - 1))),
                    toggled(elements, turns).weight)  # fmt: skip


def turned(turn_deg: float) -> complex:
    """Return the weight of a phase command, quarter turns exactly."""
    return complex(np.round(np.exp(1j * np.deg2rad(turn_deg)), 12))


def _said(weight: complex, others: tuple[complex, ...]) -> str:
    """Return a command as part of a state's name, where there are several."""
    if len(others) == 1:
        return ""
    return "-off" if weight == 0.0 else f"-{np.rad2deg(np.angle(weight)) % 360.0:.6g}"


def joined(first: Commands, second: Commands) -> Commands:
    """Return the states of both; raises `InputError` where names are double or the numbers of elements differ."""
    if first.elements != second.elements:
        raise InputError(
            [f"beams: {second.elements} elements, the codes have {first.elements}; both need the same (elements)"]
        )
    double = sorted(set(first.names) & set(second.names))
    if double:
        raise InputError([f"beams: state {double[0]!r}: the codes have one of that name; choose another (state)"])
    return Commands((*first.names, *second.names), np.concatenate([first.weight, second.weight]))
