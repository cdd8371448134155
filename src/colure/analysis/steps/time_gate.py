"""Time gating: keep what arrives about one moment, right to the ends of the band.

A gate that multiplies the impulse response by a window runs short of data at both ends of the band, and its slopes cut into
the response. Here the delays' power is estimated first, from all sweeps together: the iterative adaptive approach, weighted
least squares at every delay (T. Yardibi and others, IEEE Trans. Aerosp. Electron. Syst. 46:425, 2010, from memory). With that
profile as prior knowledge, the linear estimate of least mean square error of what arrives inside the gate is one matrix over
frequency: flat inside, no slopes, no loss at the ends. A band of width B resolves 1/B; a step of df repeats everything after
1/df: a ray one such range later lands on the gate.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from colure.geometry.conventions import SPEED_OF_LIGHT, ComplexArray, FloatArray, power_db
from colure.model.files import with_step
from colure.model.plan import Role
from colure.model.record import of_role
from colure.values import holds_arrays

if TYPE_CHECKING:
    import xarray as xr

#: A gate narrower than this many resolutions 1/B cuts into the direct ray itself.
NARROWEST = 2.0
#: Delays of the profile per frequency of the band.
FINER = 8
ROUNDS = 12
#: Sweeps that the profile is read from, at most, of each role.
SWEEPS = 128
#: Share of the mean power that counts as noise of the receiver in the profile.
NOISE = 1e-7
#: Share of the whole power that lies evenly over all delays, as few other directions may arrive where the profile is empty.
FLOOR = 1e-4
#: The gate opens so many resolutions before the strongest arrival, at least, and closes half of one before the echo.
OPENS_BEFORE = 3.0
CLOSES_BEFORE = 0.5
#: Levels of the profile that count as arrivals, below the strongest.
ARRIVAL_DB = -40.0
#: The device's own response must have fallen to this when the echo arrives.
RESPONSE_DB = -45.0
#: An echo is looked for so many resolutions about its declared moment; so far from it nothing of the echo itself is left.
ECHO_WITHIN, BESIDE = 0.6, 0.3
#: The device's response is looked for so many resolutions before and after the echo; other declared echoes leave this much out.
LOOKS_BEFORE, LOOKS_AFTER, OTHER_ECHO = 0.9, 2.2, 0.6


@dataclass(frozen=True)
@holds_arrays
class DelayProfile:
    """Power over delay, (delay,) over one alias range from 0 in steps of `step_s`, and the receiver's noise power."""

    power: FloatArray
    step_s: float
    noise: float

    def spread(self, spread_s: float) -> DelayProfile:
        """Return the profile of antennas that turn: what arrives at one delay may arrive so much earlier or later.

        Weak directions hardly show in the mean of all; a gate that expects nothing at their delays cuts them.
        """
        turns = np.arange(self.power.size)
        away = np.minimum(turns, self.power.size - turns) * self.step_s
        near = (away <= spread_s).astype(float)
        power = np.fft.ifft(np.fft.fft(self.power) * np.fft.fft(near / near.sum())).real
        return replace(self, power=np.maximum(power, 0.0))

    def covariance(self, count: int, share: FloatArray | float = 1.0, floor: float = 0.0) -> ComplexArray:
        """Return the covariance (frequency, frequency) of sweeps whose delays have this power, times `share`."""
        power = (self.power + floor * self.power.mean()) * share
        lag = np.fft.fft(power)
        index = np.arange(count)
        return np.asarray(lag[(index[:, None] - index[None, :]) % power.size])


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class Gate:
    """Middle and width of a gate, seconds, and the profile that its edges are read from; of the sweeps themselves if None.

    peak_s: strongest arrival. response_db: level of the device's own response, over one resolution, when the gate closes,
    below all of it. caution: what is wrong with the gate, in plain words; empty if nothing. common (frequency,): what every sweep
    goes through, taken out before the gate and put back after it (`common_response`).
    """

    centre_s: float
    width_s: float
    profile: DelayProfile | None = None
    floor: float = FLOOR
    peak_s: float | None = None
    response_db: float | None = None
    caution: str = ""
    common: ComplexArray | None = None

    @property
    def closes_s(self) -> float:
        """Moment at which the gate closes."""
        return self.centre_s + 0.5 * self.width_s

    def other(self, span_hz: float) -> Gate:
        """Return a gate that closes one resolution earlier and knows less: what it changes is what a gate may be wrong by."""
        peak = self.centre_s if self.peak_s is None else self.peak_s
        opens = self.centre_s - 0.5 * self.width_s
        closes = max(self.closes_s - 1.0 / span_hz, min(peak + 0.3 / span_hz, self.closes_s))
        return replace(self, centre_s=0.5 * (opens + closes), width_s=closes - opens, floor=10.0 * self.floor)


@dataclass(frozen=True)
@holds_arrays
class GateResponse:
    """What a gate leaves of a ray that comes later than the direct one.

    frequency_hz (all,): the grid that the gate works on, and `matrix` (frequency, all) of `gate_matrix` at the frequencies
    of interest `at_hz` (frequency,). peak_s: when the direct ray arrives. spread_m: how much earlier or later rays come as the
    device turns.
    """

    frequency_hz: FloatArray
    matrix: ComplexArray
    at_hz: FloatArray
    peak_s: float
    spread_m: float = 0.0

    @classmethod
    def of(cls, frequency_hz: FloatArray, gate: Gate, *, spread_m: float = 0.0) -> GateResponse:
        """Return the response of a gate whose profile is known."""
        peak = gate.centre_s if gate.peak_s is None else gate.peak_s
        bare = gate_matrix(frequency_hz, replace(gate, common=None))
        return cls(frequency_hz, bare, frequency_hz, peak, spread_m)

    def only(self, index: int) -> GateResponse:
        """Return the response at one frequency alone."""
        one = slice(index, index + 1)
        return replace(self, matrix=self.matrix[one], at_hz=self.at_hz[one])

    def of_late(self, excess_m: FloatArray) -> ComplexArray:
        """Return the factor (frequency, ray) on rays with paths so much longer than the direct one's, metres."""
        delay = self.peak_s + excess_m / SPEED_OF_LIGHT
        ray = np.exp(-2j * np.pi * self.frequency_hz[:, None] * delay)
        return np.asarray((self.matrix @ ray) * np.exp(2j * np.pi * self.at_hz[:, None] * delay))


def limits(frequency_hz: FloatArray) -> tuple[float, float]:
    """Return (narrowest, widest) useful gate in seconds.

    Raises
    ------
    ValueError
        If there are too few frequencies, or they are not equidistant.
    """
    if frequency_hz.size < 5:
        raise ValueError(f"gate: {frequency_hz.size} frequencies, needs at least 5 (frequencies)")
    steps = np.diff(frequency_hz)
    if np.ptp(steps) > 1e-6 * steps.mean():
        raise ValueError(f"gate: steps from {steps.min():g} to {steps.max():g} Hz, must be equidistant")
    return NARROWEST / float(np.ptp(frequency_hz)), 1.0 / float(steps.mean())


def impulse_response(
    trace: ComplexArray, frequency_hz: FloatArray, *, points: int = 1024
) -> tuple[FloatArray, ComplexArray]:
    """Return (time in seconds, response (..., time)) over one alias range from 0, Hann-windowed."""
    window = np.hanning(frequency_hz.size + 2)[1:-1]
    spectrum = np.zeros((*trace.shape[:-1], points), complex)
    spectrum[..., : frequency_hz.size] = trace * window / window.sum()
    time = np.arange(points) / points / float(np.mean(np.diff(frequency_hz)))
    return time, np.asarray(np.fft.ifft(spectrum, axis=-1) * points)


def delay_profile(trace: ComplexArray, frequency_hz: FloatArray) -> DelayProfile:
    """Return the power over delay that sweeps (..., frequency) show together.

    The covariance of equidistant frequencies is a Toeplitz matrix: each round costs one inverse and a few transforms.
    """
    sweeps = trace.reshape(-1, frequency_hz.size)
    sweeps = sweeps[np.linspace(0, len(sweeps) - 1, min(SWEEPS, len(sweeps))).astype(int)]
    count, points = frequency_hz.size, FINER * frequency_hz.size
    noise = NOISE * float(np.mean(np.abs(sweeps) ** 2))
    step = 1.0 / float(np.mean(np.diff(frequency_hz))) / points
    power = np.mean(np.abs(_over_delay(sweeps, points)) ** 2, axis=0) / count**2
    index = np.arange(count)
    lag = ((index[:, None] - index[None, :]) % points).ravel()
    for _ in range(ROUNDS):
        covariance = DelayProfile(power, step, noise).covariance(count)
        inverse = np.linalg.inv(covariance + noise * np.eye(count))
        sums = np.bincount(lag, inverse.real.ravel(), points) + 1j * np.bincount(lag, inverse.imag.ravel(), points)
        weight = np.maximum((np.fft.ifft(sums) * points).real, 1e-300)
        power = np.mean(np.abs(_over_delay(sweeps @ inverse.conj(), points)) ** 2, axis=0) / weight**2
    return DelayProfile(power, step, noise)


def _over_delay(sweeps: ComplexArray, points: int) -> ComplexArray:
    return np.asarray(np.fft.ifft(sweeps, points, axis=-1) * points)


def fine_peak(profile: DelayProfile) -> float:
    """Return the delay of the strongest arrival, seconds: the middle of the power about the highest point."""
    top = int(np.argmax(profile.power))
    near = np.arange(-FINER // 2, FINER // 2 + 1)
    weight = profile.power[(top + near) % profile.power.size]
    return float((top + near @ weight / weight.sum()) * profile.step_s)


def propose(
    trace: ComplexArray,
    frequency_hz: FloatArray,
    echo_excess_m: tuple[float, ...],
    *,
    response_s: float | None = None,
    spread_m: float = 0.0,
) -> Gate:
    """Return a gate about the strongest arrival of traces (..., frequency) that closes just before the nearest echo.

    Parameters
    ----------
    echo_excess_m
        How much longer than the direct ray the echoes' paths are, metres.
    response_s
        How long the antennas' own response lasts after its first arrival, where that is known; judged from the data if None.
    spread_m
        How much earlier or later waves arrive while the device turns: its reach from the axes' intersection.

    Raises
    ------
    ValueError
        If no echo distance is known, or the band cannot part the nearest one; the missing span is named.
    """
    limits(frequency_hz)
    if not echo_excess_m:
        raise ValueError("gate: chamber.toml declares no echo_excess_m, needs the nearest one to propose a width (m)")
    return _about(delay_profile(trace, frequency_hz), frequency_hz, echo_excess_m, response_s, spread_m)


def _about(
    profile: DelayProfile,
    frequency_hz: FloatArray,
    echo_excess_m: tuple[float, ...],
    response_s: float | None,
    spread_m: float,
) -> Gate:
    """Return the gate about the strongest arrival that closes before the nearest echo, as near as a turning device brings it."""
    excess_m = min(echo_excess_m)
    span, late = float(np.ptp(frequency_hz)), excess_m / SPEED_OF_LIGHT
    if late < 1.0 / span:
        raise ValueError(
            f"gate: the nearest echo comes {excess_m:g} m ({1e9 * late:.2f} ns) late; the span of {span / 1e9:.3g} GHz resolves "
            f"{1e9 / span:.2f} ns: it needs {1e-9 / late:.3g} GHz at least, {NARROWEST * 1e-9 / late:.3g} GHz would do"
        )
    peak, alias = fine_peak(profile), profile.step_s * profile.power.size
    before = min(max(OPENS_BEFORE / span, _earliest(profile, peak) + 1.0 / span), 0.25 * alias)
    spread = spread_m / SPEED_OF_LIGHT
    # Never closer to the strongest arrival than half of what the band resolves.
    after = min(max(late - CLOSES_BEFORE / span - spread, CLOSES_BEFORE / span), 0.75 * alias - before)
    gate = Gate(centre_s=peak + 0.5 * (after - before), width_s=before + after, profile=profile, peak_s=peak)
    echoes = [peak + one / SPEED_OF_LIGHT for one in sorted(echo_excess_m)]
    return replace(_judged(gate, span, echoes, response_s, spread), profile=profile.spread(spread))


def _earliest(profile: DelayProfile, peak: float) -> float:
    """Return how long before the strongest arrival others arrive, seconds."""
    points = profile.power.size
    back = (round(peak / profile.step_s) - np.arange(points // 4)) % points
    loud = np.flatnonzero(profile.power[back] > 10.0 ** (ARRIVAL_DB / 10.0) * profile.power.max())
    return float(loud[-1] * profile.step_s) if loud.size else 0.0


def _judged(gate: Gate, span_hz: float, echoes_s: list[float], response_s: float | None, spread_s: float = 0.0) -> Gate:
    """Return the gate with the level of the device's own response when the echo arrives, and a caution if it still lasts.

    echoes_s
        Moments at which declared echoes arrive, rising; empty where the gate's width is declared instead.
    spread_s
        How much earlier or later they arrive while the device turns.
    """
    peak = gate.peak_s
    assert peak is not None  # the caller has it
    before, after = _levels_about(gate, span_hz, echoes_s, spread_s)
    late = (echoes_s[0] if echoes_s else gate.closes_s + CLOSES_BEFORE / span_hz) - peak
    caution = ""
    if response_s is not None and late - response_s < 1.0 / span_hz:
        caution = (
            f"the antennas' response is declared to last {1e9 * response_s:.2f} ns and the echo comes {1e9 * late:.2f} ns late: "
            f"the span of {span_hz / 1e9:.3g} GHz parts them only if {1e9 / span_hz:.2f} ns lie between"
        )
    elif response_s is None and before > RESPONSE_DB:
        caution = (
            f"the device's own response is still at {before:.0f} dB when the gate closes {1e9 * (gate.closes_s - peak):.2f} ns after "
            f"its strongest arrival (at most {RESPONSE_DB:g} dB wanted): the gate cuts it off or lets an echo in; more span, or no gate"
        )
    elif response_s is None and after > RESPONSE_DB:
        caution = (
            f"something at {after:.0f} dB arrives within {1e9 * LOOKS_AFTER / span_hz:.2f} ns after the nearest echo and is no declared "
            f"echo (at most {RESPONSE_DB:g} dB wanted): declare it in echo_excess_m, or it is the device's own response, which the gate cuts off"
        )
    return replace(gate, response_db=before, caution=caution)


def _levels_about(gate: Gate, span_hz: float, echoes_s: list[float], spread_s: float) -> tuple[float, float]:
    """Return what arrives just before the nearest echo and just after it, in dB of the device's own response.

    The echo is looked for near its declared moment: a slow response has its peak later than its first arrival, and
    what an echo leaves beside itself would count as the device's.
    """
    profile, peak = gate.profile, gate.peak_s
    assert profile is not None and peak is not None  # the caller has both
    alias = profile.step_s * profile.power.size
    delay = (np.arange(profile.power.size) * profile.step_s - peak + 0.25 * alias) % alias - 0.25 * alias
    echo = (echoes_s[0] if echoes_s else gate.closes_s + CLOSES_BEFORE / span_hz) - peak
    own = float(profile.power[(delay > -OPENS_BEFORE / span_hz) & (delay < echo - 0.25 / span_hz)].sum())
    near = np.flatnonzero(np.abs(delay - echo) < ECHO_WITHIN / span_hz + spread_s)
    at = float(delay[near[np.argmax(profile.power[near])]]) if echoes_s else echo - 0.1 / span_hz

    def level(since: float, until: float) -> float:
        # While the device turns, an echo comes by its reach earlier or later than its strongest part.
        chosen = (delay > at + since / span_hz + (spread_s if since > 0.0 else -spread_s)) & (
            delay < at + until / span_hz + (spread_s if until > 0.0 else -spread_s)
        )
        for other in echoes_s[1:]:
            chosen &= np.abs(delay - (other - peak)) > OTHER_ECHO / span_hz + spread_s
        return float(power_db(max(float(profile.power[chosen].sum()) / own, 1e-20))) if own > 0.0 else 0.0

    return level(-LOOKS_BEFORE, -BESIDE), level(BESIDE, LOOKS_AFTER) if echoes_s else -200.0


def gate_matrix(frequency_hz: FloatArray, gate: Gate) -> ComplexArray:
    """Return the matrix (frequency, frequency) that keeps of a sweep what arrives inside a gate with a profile.

    Raises
    ------
    ValueError
        If the gate is narrower than the span resolves or wider than the alias-free range.
    """
    narrowest, widest = limits(frequency_hz)
    if not narrowest <= gate.width_s * (1.0 + 1e-9) <= widest * (1.0 + 2e-9):
        raise ValueError(
            f"gate: width {1e9 * gate.width_s:.3g} ns, must be from {1e9 * narrowest:.3g} (span) to {1e9 * widest:.3g} ns "
            "(alias-free range)"
        )
    profile = gate.profile
    assert profile is not None  # `gated` and `proposed_gate` see to it
    count, alias = frequency_hz.size, profile.step_s * profile.power.size
    since = (np.arange(profile.power.size) * profile.step_s - (gate.centre_s - 0.5 * gate.width_s)) % alias
    inside = (since <= gate.width_s).astype(float)
    whole = profile.covariance(count, floor=gate.floor) + profile.noise * np.eye(count)
    matrix = np.linalg.solve(whole.T, profile.covariance(count, inside, gate.floor).T).T
    if gate.common is not None:
        matrix = gate.common[:, None] * matrix / gate.common
    return np.asarray(matrix)


def gated(trace: ComplexArray, frequency_hz: FloatArray, gate: Gate) -> ComplexArray:
    """Return traces (..., frequency) with only what arrives inside the gate."""
    limits(frequency_hz)
    known = gate if gate.profile is not None else replace(gate, profile=delay_profile(trace, frequency_hz))
    return np.asarray(trace @ gate_matrix(frequency_hz, known).T)


def proposed_gate(
    record: xr.Dataset,
    echo_excess_m: tuple[float, ...],
    *,
    centre_s: float | None = None,
    width_s: float | None = None,
    response_s: float | None = None,
    spread_m: float = 0.0,
    common: ComplexArray | None = None,
) -> Gate:
    """Return a gate with the profile of a record's sweeps; what is left open is proposed (arguments as of `propose`).

    `common` (frequency,): response that all sweeps share, as of `common_response`.

    Raises
    ------
    ValueError
        If the frequency grid cannot carry a gate; numbers are named.
    """
    frequency = record["frequency"].values
    limits(frequency)
    sweeps = _sweeps(record) if common is None else _sweeps(record) / common
    profile, span = delay_profile(sweeps, frequency), float(np.ptp(frequency))
    if width_s is None:
        if not echo_excess_m:
            raise ValueError(
                "gate: chamber.toml declares no echo_excess_m, needs the nearest one to propose a width (m)"
            )
        own = _about(profile, frequency, echo_excess_m, response_s, spread_m)
        return replace(own, centre_s=own.centre_s if centre_s is None else centre_s, common=common)
    peak = fine_peak(profile)
    gate = Gate(
        centre_s=peak if centre_s is None else centre_s, width_s=width_s, profile=profile, peak_s=peak, common=common
    )
    return replace(_judged(gate, span, [], response_s), profile=profile.spread(spread_m / SPEED_OF_LIGHT))


def common_response(record: xr.Dataset) -> ComplexArray | None:
    """Return the response over frequency that all sweeps share, as the reference's show it; None without a reference.

    Ripple of the fixed cables puts images of every ray before and after it: images of an echo inside the gate. The mean
    amplitude is 1 and the reference's own delay is left in the sweeps. What the reference's horn adds, its echo too, divides out with
    the gain transfer, which refers to the same sweeps; so a record whose gain comes from elsewhere must not use this.
    """
    frequency, trace = record["frequency"].values, of_role(record, Role.REFERENCE)["trace"].values
    if not len(trace):
        return None
    mean = trace.mean(axis=0)
    strong = mean[:, int(np.argmax(np.sum(np.abs(mean) ** 2, axis=0)))]
    if float(np.min(np.abs(strong))) <= 0.0:
        return None
    late = fine_peak(delay_profile(strong[None], frequency))
    return np.asarray(strong * np.exp(2j * np.pi * frequency * late) / np.sqrt(np.mean(np.abs(strong) ** 2)))


def _sweeps(record: xr.Dataset) -> ComplexArray:
    """Return sweeps (sweep, frequency) of scan, ties and reference, each role with the same mean power."""
    by_role = []
    for role in (Role.SCAN, Role.TIE, Role.REFERENCE):
        trace = np.moveaxis(of_role(record, role)["trace"].values, 1, 2)
        sweeps = trace.reshape(-1, trace.shape[-1])
        some = sweeps[np.linspace(0, len(sweeps) - 1, min(SWEEPS, len(sweeps))).astype(int)] if len(sweeps) else sweeps
        power = float(np.mean(np.abs(some) ** 2)) if len(some) else 0.0
        if power > 0.0:
            by_role.append(some / np.sqrt(power))
    if not by_role:
        raise ValueError("gate: the record holds no sweeps (points)")
    return np.concatenate(by_role)


def gate_record(record: xr.Dataset, gate: Gate) -> xr.Dataset:
    """Gate every sweep of a record.

    Raises
    ------
    ValueError
        If the frequency grid cannot carry the gate; numbers are named.
    """
    frequency = record["frequency"].values
    known = gate if gate.profile is not None else replace(gate, profile=delay_profile(_sweeps(record), frequency))
    matrix = gate_matrix(frequency, known)
    trace = np.einsum("gf,pfc->pgc", matrix, record["trace"].values)
    changed = record.assign(trace=(record["trace"].dims, trace, record["trace"].attrs))
    said = {"response_db": round(gate.response_db, 1)} if gate.response_db is not None else {}
    if gate.caution:
        said["caution"] = gate.caution  # type: ignore[assignment]
    return with_step(changed, "gate", centre_ns=1e9 * gate.centre_s, width_ns=1e9 * gate.width_s, **said)
