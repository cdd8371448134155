"""What a real probe receives from each outgoing wave, and how to undo it.

The probe is known by its own far field in its own frame (z out of the aperture towards the
device, x along port 1). Lorentz reciprocity on a sphere about the device gives its response
to every mode exactly, at any distance, without translation theorems:

    w_nm = closed integral of (E_nm x H_probe - E_probe x H_nm) . r^ dS.

A first-order probe (only mu = +-1 about its axis: any rotationally symmetric probe fed by a
TE11-like mode) then only multiplies, degree by degree (J. E. Hansen (ed.), Spherical
Near-Field Antenna Measurements, 1988, first-order probe; equation numbers from memory).
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from scipy.special import roots_legendre

from colure.geometry.conventions import (
    CURL,
    GRAD,
    ComplexArray,
    FloatArray,
    IntArray,
    mode_degrees,
    mode_index,
    mode_orders,
)
from colure.geometry.directions import phi_hat, theta_hat, unit_vector
from colure.geometry.polarization import to_ludwig_1
from colure.values import holds_arrays
from colure.waves.expansion import Expansion
from colure.waves.harmonics import harmonics_at, scalars_at
from colure.waves.radial import outgoing
from colure.waves.transform import adjoint_synthesis

#: Radial functions larger than this on the separating sphere would cost more than four digits.
HIGHEST_RADIAL = 1e4


@dataclass(frozen=True)
@holds_arrays
class FirstOrderResponse:
    """Response of a first-order probe relative to an ideal distant dipole, degrees 1..N.

    grad, curl
        (..., 2, N): factor for mu = -1 and mu = +1. All tend to 1 at large distance.
    first_order_share
        (...,) power of the mu = +-1 part of the probe's response over all of it: how
        nearly the probe is a first-order one.
    """

    grad: ComplexArray
    curl: ComplexArray
    first_order_share: FloatArray

    def at(self, index: int | IntArray) -> FirstOrderResponse:
        """Return the response at one or some of its frequencies (first dimension), which may be the same for all."""
        return FirstOrderResponse(self.grad[index], self.curl[index], self.first_order_share[index])

    def matrices(self) -> ComplexArray:
        """Return the 2 x 2 matrices from (g, c) to the measured (g, c), shape (..., N, 2, 2)."""
        minus_g, plus_g = self.grad[..., 0, :], self.grad[..., 1, :]
        minus_c, plus_c = self.curl[..., 0, :], self.curl[..., 1, :]
        rows = [
            np.stack([0.5 * (plus_g + minus_g), 0.5j * (minus_c - plus_c)], axis=-1),
            np.stack([0.5j * (plus_g - minus_g), 0.5 * (plus_c + minus_c)], axis=-1),
        ]
        return np.stack(rows, axis=-2)


def ideal_response(order: int, k: FloatArray, distance: float) -> FirstOrderResponse:
    """Return the response of an elementary electric dipole: the radial functions themselves."""
    both = outgoing(order, np.asarray(k) * distance).tangential()
    grad = np.repeat(both[..., GRAD, None, :], 2, axis=-2)
    curl = np.repeat(both[..., CURL, None, :], 2, axis=-2)
    return FirstOrderResponse(grad, curl, np.ones(np.shape(k)))


def mode_response(
    probe: Expansion,
    order: int,
    distance: float,
    *,
    highest_mu: int | None = None,
    boresight: ComplexArray | None = None,
) -> ComplexArray:
    """Return the probe's response to modes (n, mu) at roll 0, for every |mu| <= highest_mu.

    Parameters
    ----------
    probe
        Far field of the transmitting probe in its own frame, leading dimensions (...).
    order
        Highest degree N of the device's waves.
    distance
        From the axes' intersection to the probe's origin, metres.
    boresight
        (...,) co-polar boresight field that counts as one; the probe's own by default. A probe
        that is mounted askew keeps the one it has when mounted straight.

    Returns
    -------
    (..., 2, N, 2 highest_mu + 1): grad and curl type, in units where an ideal distant dipole
    along x with the probe's boresight field answers Psi_nmu . x^ (factor exp(-jkA)/A removed).

    Raises
    ------
    ValueError
        If the distance is too short for a separating sphere between device and probe.
    """
    top = probe.order if highest_mu is None else highest_mu
    k_max = float(np.max(probe.k))
    inner = _separating_radius(order, probe.order, k_max, distance)
    functions = outgoing(order, probe.k * inner)
    if np.max(functions.exponent) > 0 or np.max(np.abs(functions.curl)) > HIGHEST_RADIAL:
        needed = (order + 2.0) / k_max / 0.85
        raise ValueError(
            f"distance: {distance:.4g} m, must be above about {needed:.4g} m to separate waves of order {order}"
        )
    rings = int(np.ceil(k_max * inner + 0.5 * order + 40))
    nodes, weights = roots_legendre(rings)
    theta, columns = np.arccos(nodes), 2 * (top + 1)
    e_field, h_field = _probe_on_sphere(probe, theta, columns, radius=inner, distance=distance)
    scale = (weights * 2.0 * np.pi / columns)[:, None]
    e = adjoint_synthesis(e_field * scale, order, theta)
    h = adjoint_synthesis(h_field * scale, order, theta)
    degrees = mode_degrees(order)
    waves = functions.tangential()[..., degrees - 1]
    r_grad, r_curl = waves[..., GRAD, :], waves[..., CURL, :]
    # Integrals without conjugation: pairing (n, m) with (n, -m) and the sign (-1)^m.
    whole = np.empty((*e.shape[:-2], 2, order, 2 * top + 1), complex)
    common = np.exp(-1j * probe.k * (inner - distance)) * inner * distance
    level = probe.far_field_at(theta=0.0, phi=0.0)[..., 0, 0] if boresight is None else boresight
    factor = common * (-1j * probe.k / (4.0 * np.pi)) / level
    for mu in range(-top, top + 1):
        n = np.arange(max(1, abs(mu)), order + 1)
        here, sign = mode_index(n, azimuthal=-mu), (-1.0) ** mu
        rg, rc = r_grad[..., here], r_curl[..., here]
        grad = rg * h[..., CURL, here] - rc * e[..., GRAD, here]
        curl = -rc * h[..., GRAD, here] - rg * e[..., CURL, here]
        whole[..., mu + top] = 0.0
        whole[..., GRAD, n - 1, mu + top] = sign * grad * factor[..., None]
        whole[..., CURL, n - 1, mu + top] = sign * curl * factor[..., None]
    return whole


def _separating_radius(order: int, probe_order: int, k: float, distance: float) -> float:
    """Return the radius of the sphere on which device and probe are paired, metres.

    The pairing holds on every sphere between them. Waves of degree n grow below k r = n; the sphere is
    put where the device's and the probe's together grow least, as far out as the device's need.
    """
    radius = np.linspace(0.02, 0.85, 167) * distance
    growth = _growth(order + 2, k * radius) + _growth(probe_order + 2, k * (distance - radius))
    best = radius[np.flatnonzero(growth <= growth.min() + 0.7)]
    return float(best[np.argmin(np.abs(best - (order + 12.0) / k))])


def _growth(degree: int, x: FloatArray) -> FloatArray:
    """Return ln |h_n(x)| below x = n, 0 above (Debye's leading term, any table of Bessel functions)."""
    ratio = np.maximum(degree / x, 1.0)
    return np.asarray(degree * (np.arccosh(ratio) - np.sqrt(1.0 - 1.0 / ratio**2)))


def first_order_response(probe: Expansion, order: int, distance: float) -> FirstOrderResponse:
    """Return the fast-path response of a probe; see `mode_response` for the arguments.

    The same probe at the same distance is worked out once: rehearsals, recipes with steps left out and device states ask again.
    """
    c = np.ascontiguousarray(probe.coefficients)
    return _response_of(c.tobytes(), c.shape, np.ascontiguousarray(probe.k).tobytes(), order, float(distance))


@lru_cache(maxsize=16)
def _response_of(
    coefficients: bytes, shape: tuple[int, ...], k: bytes, order: int, distance: float
) -> FirstOrderResponse:
    probe = Expansion(np.frombuffer(coefficients, complex).reshape(shape), np.frombuffer(k, float).reshape(shape[:-2]))
    top = min(probe.order, 5)
    everything = mode_response(probe, order, distance, highest_mu=top)
    minus, plus = everything[..., top - 1], everything[..., top + 1]
    n = np.arange(1, order + 1)
    size = np.sqrt((2.0 * n + 1.0) / (16.0 * np.pi))  # |Psi_n,+-1 . x^| at the pole
    # Psi_n1 = -C (x + jy), Psi_n-1 = C (x - jy), Phi = z x Psi.
    grad = np.stack([minus[..., GRAD, :] / size, plus[..., GRAD, :] / -size], axis=-2)
    curl = np.stack([minus[..., CURL, :] / (1j * size), plus[..., CURL, :] / (1j * size)], axis=-2)
    power = np.sum(np.abs(everything) ** 2, axis=(-3, -2))
    share = (power[..., top - 1] + power[..., top + 1]) / np.sum(power, axis=-1)
    return FirstOrderResponse(grad, curl, np.asarray(share))


def apply_response(coefficients: ComplexArray, response: FirstOrderResponse) -> ComplexArray:
    """Return what a first-order probe measures, as coefficients of (roll 0, roll 90) fields."""
    return _per_degree(response.matrices(), coefficients)


def remove_response(measured: ComplexArray, response: FirstOrderResponse) -> ComplexArray:
    """Return the device's coefficients from those of the measured (roll 0, roll 90) fields.

    Degrees whose response is too weak to be seen (condition number above 1e8, or beyond a
    double) are set to zero rather than divided by it; `unobservable` names them.
    """
    matrix = response.matrices()
    hidden = unobservable(response)
    safe = np.where(hidden[..., None, None], np.eye(2), matrix)
    inverse = np.where(hidden[..., None, None], 0.0, np.linalg.inv(safe))
    return _per_degree(inverse, measured)


def _per_degree(matrix: ComplexArray, coefficients: ComplexArray) -> ComplexArray:
    """Apply a 2 x 2 matrix per degree (..., N, 2, 2) to coefficients (..., 2, N(N+2)).

    Rotationally symmetric probes have diagonal matrices; they cost half.
    """
    degrees = mode_degrees(matrix.shape[-3]) - 1
    diagonal = np.stack([np.take(matrix[..., i, i], degrees, axis=-1) for i in (0, 1)], axis=-2)
    out = diagonal * coefficients
    for row, column in ((0, 1), (1, 0)):
        aside = matrix[..., row, column]
        if np.any(aside):
            out[..., row, :] += np.take(aside, degrees, axis=-1) * coefficients[..., column, :]
    return np.asarray(out)


def unobservable(response: FirstOrderResponse) -> np.ndarray:
    """Return a mask (..., N) of the degrees that this probe at this distance cannot see."""
    matrix = response.matrices()
    finite = np.all(np.isfinite(matrix), axis=(-2, -1))
    singular = np.linalg.svd(np.where(finite[..., None, None], matrix, np.eye(2)), compute_uv=False)
    return np.asarray(~finite | (singular[..., 1] < 1e-8 * np.maximum(singular[..., 0], 1.0)))


def _probe_on_sphere(
    probe: Expansion, theta: FloatArray, columns: int, *, radius: float, distance: float
) -> tuple[ComplexArray, ComplexArray]:
    """Return tangential E and eta H of the probe on rings about the device, (..., 2, rings, columns).

    Each ring lies at one distance and one polar angle of the probe, so that its field is one sum of harmonics for all columns.
    """
    phi = np.arange(columns) * 2.0 * np.pi / columns
    across, along = radius * np.sin(theta), distance - radius * np.cos(theta)
    polar, far = np.arctan2(across, along), np.hypot(across, along)
    own = _on_rings(probe, polar, far, -phi)
    place = {"theta": polar[:, None], "phi": -phi}
    vector = to_ludwig_1(own[..., 1, :, :], own[..., 2, :, :], **place) + own[..., 0, :, :, None] * unit_vector(**place)
    # The probe faces -z: its y and z axes are reversed.
    lab = vector * np.array([1.0, -1.0, -1.0])
    here = {"theta": theta[:, None], "phi": phi}
    out = np.stack([np.sum(lab * hat(**here), axis=-1) for hat in (theta_hat, phi_hat)], axis=-3)
    return out[0], out[1]


def _on_rings(probe: Expansion, polar: FloatArray, radius: FloatArray, azimuth: FloatArray) -> ComplexArray:
    """Return E and eta H along (r, theta, phi) of the probe, (2, ..., 3, ring, column), on rings at polar angles and radii."""
    tangential, radial = _at_radii(probe, radius)
    one = (len(polar), *(1,) * (radial.ndim - 2), -1)  # a row a ring, the same for E, H and all frequencies
    vectors = harmonics_at(probe.order, polar, np.zeros_like(polar))
    parts = [radial * scalars_at(probe.order, polar).T.reshape(one)]
    for component in (0, 1):
        grad, curl = (vectors[:, component, kind].reshape(one) for kind in (GRAD, CURL))
        parts.append(tangential[..., GRAD, :] * grad + tangential[..., CURL, :] * curl)
    # Waves of one azimuthal order are summed up before they turn.
    orders = mode_orders(probe.order)
    sequence = np.argsort(orders, kind="stable")
    every, begins = np.unique(orders[sequence], return_index=True)
    spectra = np.stack([np.add.reduceat(part[..., sequence], begins, axis=-1) for part in parts], axis=-2)
    return np.moveaxis(spectra @ np.exp(1j * every[:, None] * azimuth), 0, -2)


def _at_radii(probe: Expansion, radius: FloatArray) -> tuple[ComplexArray, ComplexArray]:
    """Return the coefficients of E and eta H at radii (ring,): tangential (ring, 2, ..., 2, J) and radial (ring, 2, ..., J)."""
    turn = np.multiply.outer(radius, probe.k)
    functions = outgoing(probe.order, turn)
    degrees = mode_degrees(probe.order) - 1
    common = np.exp(-1j * turn) / radius.reshape(-1, *(1,) * np.ndim(probe.k))
    across = (functions.tangential() * common[..., None, None])[..., degrees]
    along = (functions.radial_values() * common[..., None])[..., degrees]
    both = np.stack([probe.coefficients, probe.magnetic().coefficients])
    return both * across[:, None], both[..., GRAD, :] * along[:, None]
