"""The general probe path: any probe order, any roll, port, direction and radius per sample.

A sample is one complex number,

    w = exp(-jkA)/A sum_nm a_nm sum_mu D_n,m,mu(theta, phi) exp(j mu chi) p_n,mu(A),

where p is the probe's response to mode (n, mu) at roll 0 (`probe.mode_response`). For each mu
the inner sum is a spin-weighted synthesis, so the whole operator costs a few non-uniform
transforms; least squares then runs as for ideal samples.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.geometry.conventions import CURL, GRAD, ComplexArray, FloatArray, IntArray, mode_degrees
from colure.values import holds_arrays
from colure.waves.cells import Cells
from colure.waves.expansion import Expansion
from colure.waves.least_squares import LeastSquares, LeastSquaresFit, solve_with_noise
from colure.waves.probe import mode_response
from colure.waves.radial import outgoing
from colure.waves.scattered import adjoint_at, synthesis_at
from colure.waves.scattered_fit import lagrange_shares, radial_nodes


@dataclass(frozen=True)
@holds_arrays
class ProbeSamples:
    """What a real probe received, one frequency; all arrays (count,).

    theta, phi, roll
        Radians; roll chi counts from theta^ towards phi^ of the direction.
    radius
        Metres from the coordinate origin to the probe's own origin.
    port
        0 or 1: which of the probe's expansions received.
    value
        Complex wave ratio, exp(-jkA)/A included.
    """

    theta: FloatArray
    phi: FloatArray
    roll: FloatArray
    radius: FloatArray
    port: IntArray
    value: ComplexArray
    weight: FloatArray

    def __post_init__(self) -> None:
        shapes = {name: np.shape(getattr(self, name)) for name in self.__dataclass_fields__}
        if len(set(shapes.values())) != 1 or len(next(iter(shapes.values()))) != 1:
            raise ValueError(f"samples: shapes {shapes}, must all be (count,)")
        if not (np.all(np.isfinite(self.value)) and np.all(self.radius > 0.0) and np.all(self.weight > 0.0)):
            raise ValueError("samples: values must be finite, radius above 0 m, weight above 0 (relative)")


class ProbeOperator(LeastSquares):
    """Coefficients on a reference sphere to weighted probe samples, and its adjoint."""

    def __init__(
        self,
        samples: ProbeSamples,
        order: int,
        k: float,
        ports: list[Expansion],
        *,
        highest_mu: int,
        boresight: complex,
        cells: Cells | None = None,
    ) -> None:
        self.samples, self.order, self.k = samples, order, k
        self.degrees = mode_degrees(order) - 1
        self.cells = Cells.of(samples.theta, samples.phi) if cells is None else cells
        area = self.cells.solid_angles(order)
        # A direction needs two polarizations, each a sample of its own: every row counts twice.
        self.row_weight = np.sqrt(2.0 * area * samples.weight)[None, :]
        self.sample_weight = samples.weight
        self._top, self._ports, self._boresight = highest_mu, ports, boresight
        nodes = radial_nodes(samples.radius, order, k)
        self._shares = lagrange_shares(nodes, samples.radius)
        middle = float(nodes[len(nodes) // 2])
        self.reference = outgoing(order, np.array(k * middle)).tangential()[:, self.degrees]
        level = np.array([boresight])
        # (port, node, kind, degree, mu), relative to the ideal response on the reference sphere.
        self._response = np.array(
            [
                [mode_response(port, order, float(r), highest_mu=highest_mu, boresight=level)[0] for r in nodes]
                for port in ports
            ]
        )
        n = np.arange(1, order + 1)
        ideal = outgoing(order, np.array(k * middle)).tangential()
        self._response = self._response / ideal[:, :, None] * np.sqrt(4.0 * np.pi / (2.0 * n + 1.0))[:, None]
        self.common = np.exp(-1j * k * samples.radius) / samples.radius

    def lowered(self, order: int) -> ProbeOperator:
        """Return the same samples' operator for a lower order."""
        return ProbeOperator(
            self.samples, order, self.k, self._ports, highest_mu=self._top, boresight=self._boresight, cells=self.cells
        )

    def data(self) -> ComplexArray:
        """Return the weighted received values, exp(-jkA)/A removed, shape (1, count)."""
        return np.asarray((self.samples.value / self.common)[None, :] * self.row_weight)

    def forward(self, b: ComplexArray) -> ComplexArray:
        """Return weighted samples (1, count)."""
        s, total = self.samples, np.zeros(self.samples.value.size, complex)
        for port, node, chosen in self._parts():
            p = self._response[port, node]
            for mu in range(self._top + 1):
                plus, minus = (self._mixed(b, p, m) for m in (mu, -mu))
                theta, phi = s.theta[chosen], s.phi[chosen]
                share = self._shares[node, chosen]
                if mu == 0:
                    total[chosen] += share * synthesis_at(plus[None], theta=theta, phi=phi, spin=0)[0]
                    continue
                # E + jB feeds Q + jU, E - jB feeds Q - jU of the spin-weighted transform.
                pair = np.stack([0.5 * (minus + plus), -0.5j * (minus - plus)])
                q, u = synthesis_at(pair, theta=theta, phi=phi, spin=mu)
                turn = np.exp(1j * mu * s.roll[chosen])
                total[chosen] += share * (-turn * (q - 1j * u) - (-1.0) ** mu * np.conj(turn) * (q + 1j * u))
        return np.asarray(total[None, :] * self.row_weight)

    def adjoint(self, rows: ComplexArray) -> ComplexArray:
        """Return the adjoint of `forward`, shape (2, N(N+2))."""
        s, weighted = self.samples, (rows * self.row_weight)[0]
        out = np.zeros((2, self.degrees.size), complex)
        for port, node, chosen in self._parts():
            p = np.conj(self._response[port, node])
            values = weighted[chosen] * self._shares[node, chosen]
            theta, phi = s.theta[chosen], s.phi[chosen]
            for mu in range(self._top + 1):
                if mu == 0:
                    self._add(out, p, 0, adjoint_at(values[None], self.order, theta=theta, phi=phi, spin=0)[0])
                    continue
                turn = np.exp(1j * mu * s.roll[chosen])
                first, second = -np.conj(turn) * values, -((-1.0) ** mu) * turn * values
                pair = adjoint_at(
                    np.stack([first + second, 1j * first - 1j * second]), self.order, theta=theta, phi=phi, spin=mu
                )
                self._add(out, p, mu, 0.5 * (pair[0] - 1j * pair[1]))
                self._add(out, p, -mu, 0.5 * (pair[0] + 1j * pair[1]))
        return out

    def _mixed(self, b: ComplexArray, p: ComplexArray, mu: int) -> ComplexArray:
        column = p[:, self.degrees, mu + self._top]
        return np.asarray(b[GRAD] * column[GRAD] + b[CURL] * column[CURL])

    def _add(self, out: ComplexArray, p: ComplexArray, mu: int, part: ComplexArray) -> None:
        out += p[:, self.degrees, mu + self._top] * part

    def _parts(self) -> list[tuple[int, int, IntArray]]:
        ports = range(len(self._response))
        return [
            (port, node, chosen)
            for port in ports
            if (chosen := np.flatnonzero(self.samples.port == port)).size
            for node in range(len(self._shares))
        ]


def fit_probe_samples(
    samples: ProbeSamples,
    order: int,
    ports: list[Expansion],
    *,
    highest_mu: int | None = None,
    boresight: complex | None = None,
    damping: float | None = None,
    tolerance: float = 1e-9,
    most_iterations: int = 300,
) -> LeastSquaresFit:
    """Fit a far-field expansion to what a real probe received.

    Parameters
    ----------
    ports
        Far field of every port in the probe's own frame, one frequency each (leading dimension
        1), with its impurity, gain and mounting error included (`probe_models.impure`,
        `probe_models.mounted`).
    highest_mu
        Azimuthal order of the probe taken into account; all of it by default.
    boresight
        Co-polar boresight field that counts as unit gain; port 0's own by default.

    Raises
    ------
    ValueError
        If a port is missing, or the samples are too few or too close.
    """
    if samples.port.min() < 0 or samples.port.max() >= len(ports):
        raise ValueError(f"samples: port {samples.port.min()} to {samples.port.max()}, must be 0 to {len(ports) - 1}")
    k = float(ports[0].k[0])
    top = max(port.order for port in ports) if highest_mu is None else highest_mu
    level = complex(ports[0].far_field_at(theta=0.0, phi=0.0)[0, 0, 0]) if boresight is None else boresight
    operator = ProbeOperator(samples, order, k, ports, highest_mu=top, boresight=level)
    return solve_with_noise(
        operator,
        damping=damping,
        tolerance=tolerance,
        most_iterations=most_iterations,
        holes=operator.cells.has_holes(order),
    )
