"""A real probe behind a field file: first order where that loses less than the data's noise, else the general path.

The file then holds what the probe received with its x axis along theta^ (`e_theta`) and along phi^
(`e_phi`), over its own boresight field, exp(-jkA)/A included; A is the distance to the probe's origin.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.analysis.fields.errors import Declared, ErrorDraws
from colure.analysis.fields.expand import (
    FLOOR_DEGREES,
    ExpandedField,
    WholeSphere,
    expand,
    fit_errors,
    floor_noise,
    grid_errors,
    order_cap,
    sampled_order,
    signal_order,
    whole_sphere,
)
from colure.analysis.fields.result import amplitude_words, folded
from colure.errors import InputError
from colure.geometry.conventions import ComplexArray, FloatArray, wavenumber
from colure.model.fields import FieldSamples, recognize_grid
from colure.waves.expansion import Expansion
from colure.waves.modes import resized
from colure.waves.probe import first_order_response, mode_response, remove_response
from colure.waves.probe_fit import ProbeOperator, ProbeSamples, fit_probe_samples
from colure.waves.scattered_fit import Samples
from colure.waves.transform import analysis, highest_order

#: Farthest frequency of the probe's file that may stand in, relative.
SAME_FREQUENCY = 0.01
#: Share of the distance in which waves of the device must have died down before the probe.
SEPARATION = 0.85
#: Power of the probe's highest degrees that is left out, relative.
TAIL = 1e-22
#: Random devices fitted to learn the error behind a probe; each costs as much as the fit.
PROBE_DRAWS = 4
#: Misfit below which a clean first-order correction counts as exact.
EXACT = 1e-9


@dataclass(frozen=True)
class FieldProbe:
    """The probe's far fields, one list of samples per port: one port that is rolled, or two fixed ones."""

    ports: tuple[list[FieldSamples], ...]

    def at(self, frequency_hz: float) -> list[Expansion]:
        """Return every port's expansion at one frequency (leading dimension 1).

        Raises
        ------
        InputError
            If the probe's file holds no frequency close enough, or is a near field.
        """
        out = []
        for samples in self.ports:
            nearest = min(samples, key=lambda one: abs(one.frequency_hz - frequency_hz))
            if abs(nearest.frequency_hz / frequency_hz - 1.0) > SAME_FREQUENCY:
                raise InputError(
                    [
                        f"probe: nearest frequency {nearest.frequency_hz / 1e9:.6g} GHz, must be within "
                        f"{100 * SAME_FREQUENCY:g} % of {frequency_hz / 1e9:.6g} GHz"
                    ]
                )
            if nearest.radius_m is not None:
                raise InputError(["probe: holds a near field, must be a far field (no radius)"])
            expanded_field = expand(nearest)
            whole = Expansion(expanded_field.coefficients[None], np.array([float(wavenumber(frequency_hz))]))
            # Rounding in degrees that the probe does not have would grow towards the device.
            power = whole.mode_power()[0]
            rest = np.cumsum(power[::-1])[::-1] / power.sum()
            out.append(whole.truncated(max(1, int(np.count_nonzero(rest > TAIL)))))
        return out


def expand_behind_probe(
    samples: FieldSamples, probe: FieldProbe, *, order: int | None, cap: int | None, declared: Declared
) -> ExpandedField:
    """Return the device's expansion from what a real probe received.

    Raises
    ------
    ValueError
        If the samples are a far field, or cannot carry the order.
    """
    if samples.radius_m is None:
        raise ValueError("radius: missing; a probe is corrected in near fields at a known distance (m)")
    ports, k = probe.at(samples.frequency_hz), float(wavenumber(samples.frequency_hz))
    near = float(np.min(samples.radius_m))
    limit = min(order_cap(k, near), int(SEPARATION * k * near) - 3, 10_000 if cap is None else cap)
    if limit < 1:
        raise ValueError(f"radius: {near:.4g} m, must be above {4.0 / k / SEPARATION:.4g} m to separate any wave")
    if order is not None and order > limit:
        raise ValueError(f"order: {order}, must be at most {limit} (degree) for a probe at {near:.4g} m")
    grid = recognize_grid(samples)
    whole = None if grid is None else whole_sphere(grid)
    said = "first order does not apply to these samples"
    if whole is not None and len(ports) == 1:
        answer = _first_order(samples, whole, ports[0], order, limit, near, declared)
        if isinstance(answer, ExpandedField):
            return answer
        said = answer
    return _general(samples, ports, order, limit, declared, said)


def _first_order(
    samples: FieldSamples,
    whole: WholeSphere,
    port: Expansion,
    order: int | None,
    limit: int,
    radius: float,
    declared: Declared,
) -> ExpandedField | str:
    """Return the fast correction where it loses less than the noise, else why not."""
    k = float(port.k[0])
    rings, columns = whole.field.shape[-2:]
    top = highest_order(whole.layout, rings=rings, phi_count=columns)
    field = whole.field * radius * np.exp(1j * k * radius)
    measured = analysis(field, top, layout=whole.layout, phi_start=whole.phi_start)
    chosen = min(limit, top, signal_order(measured)) if order is None else min(order, top)
    response = first_order_response(port, chosen, radius).at(0)
    coefficients = remove_response(resized(measured, chosen), response)
    largest = float(np.max(np.abs(field)))
    noise = known = floor_noise(measured, chosen, rings * columns) / largest
    if declared.noise_db is not None:
        noise = known = 10.0 ** (declared.noise_db / 20.0)
    elif top < chosen + FLOOR_DEGREES:
        known = 0.0  # the last degrees may hold the device's own waves: no noise to hide behind
    lost = _misfit(samples, port, coefficients, chosen)
    if not lost <= max(known, EXACT):
        what = (
            "the noise is declared as" if declared.noise_db is not None else "the highest degrees hold as noise at most"
        )
        return f"first order would lose {amplitude_words(lost)}, {what} {amplitude_words(known)}"

    def corrected(waves: ComplexArray) -> ComplexArray:
        return remove_response(waves, response)

    errors = grid_errors(
        whole, resized(measured, chosen), corrected, radius=radius, k=k, noise=noise * largest, declared=declared
    )
    words = (
        f"whole sphere, {rings} rings x {columns} columns {whole.layout}, order {chosen}, probe of first order "
        f"(loses {amplitude_words(lost)}, noise {amplitude_words(known)})"
    )
    return ExpandedField(coefficients, chosen, words, None, noise, errors)


def _misfit(samples: FieldSamples, port: Expansion, coefficients: ComplexArray, order: int) -> float:
    """Return what the whole probe would have received beside the data, rms over the largest sample."""
    received = _received(samples, ports=1)
    operator = ProbeOperator(
        received, order, float(port.k[0]), [port], highest_mu=_highest_mu([port], order, received, 1e-10),
        boresight=_boresight(port),
    )  # fmt: skip
    model = operator.forward(coefficients * operator.reference)
    difference = (model - operator.data()) / operator.row_weight
    data = operator.data() / operator.row_weight
    return float(np.sqrt(np.mean(np.abs(difference) ** 2)) / np.max(np.abs(data)))


def _general(
    samples: FieldSamples, ports: list[Expansion], order: int | None, limit: int, declared: Declared, said: str
) -> ExpandedField:
    """Fit with every azimuthal order of the probe that matters."""
    received = _received(samples, ports=len(ports))
    chosen = order if order is not None else max(3, min(limit, sampled_order(samples)))
    mu = _highest_mu(ports, chosen, received, 1e-10)
    fit = fit_probe_samples(received, chosen, ports, highest_mu=mu, boresight=_boresight(ports[0]))
    theta, phi, field = folded(samples)
    bundle = Samples.of(theta=theta, phi=phi, field=field, radius=samples.radius_m, weight=samples.weight)
    errors: ErrorDraws = fit_errors(fit, bundle, float(ports[0].k[0]), declared, draws_wanted=PROBE_DRAWS)
    words = (
        f"least squares behind the probe on {samples.theta.size} directions, order {chosen}, azimuthal orders of the "
        f"probe to {mu} ({said}), residual {amplitude_words(fit.residual)}, {fit.iterations} iterations"
        + ("" if fit.converged else " (stopped at the limit)")
    )
    return ExpandedField(fit.coefficients, chosen, words, fit, fit.noise, errors)


def _received(samples: FieldSamples, *, ports: int) -> ProbeSamples:
    """Return two samples per direction: x axis along theta^ and along phi^, or port 1 and port 2."""
    theta, phi, field = folded(samples)
    twice = np.concatenate
    count = theta.size
    roll = np.repeat([0.0, np.pi / 2.0 if ports == 1 else 0.0], count)
    port = np.repeat([0, 0 if ports == 1 else 1], count).astype(np.int64)
    radius = np.asarray(samples.radius_m, float)
    return ProbeSamples(
        twice([theta, theta]), twice([phi, phi]), roll, twice([radius, radius]), port, field.reshape(-1),
        twice([samples.weight, samples.weight]),
    )  # fmt: skip


def _boresight(port: Expansion) -> complex:
    return complex(port.far_field_at(theta=0.0, phi=0.0)[0, 0, 0])


def _highest_mu(ports: list[Expansion], order: int, received: ProbeSamples, share: float) -> int:
    """Return the azimuthal order of the probe beyond which its response is below `share` in amplitude."""
    radius = float(np.min(received.radius))
    level = np.array([_boresight(ports[0])])
    highest = 1
    for port in ports:
        response = mode_response(port, order, radius, boresight=level)[0]
        power = np.sum(np.abs(response) ** 2, axis=(0, 1))
        top = port.order
        by_mu: FloatArray = np.array([power[top + m] + (power[top - m] if m else 0.0) for m in range(top + 1)])
        above = np.flatnonzero(by_mu > share**2 * by_mu.sum())
        highest = max(highest, int(above[-1]) if above.size else 1)
    return highest
