"""What receiver, cables and their surroundings do to the sweeps of a record, ties and reference included.

Each cause is applied to the sweeps as they were read and the steps run again: what the ties see of it is taken out, what the
reference's sweeps see of it moves every level.
"""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from colure.analysis.steps.gain import method_of
from colure.analysis.uncertainty.trial import Bench, Cause
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.model.plan import ROLES, Role
from colure.model.reference import WITH_HORN

LEAKAGE_DRAWS = 16
#: Leakage wanders by up to half a turn within half an hour, half to twice that long (common practice, no source).
LEAKAGE_S = 1800.0
JUMP_DRAWS = 40
#: A declared period holds within half an octave: the middles of equal parts of that (ratio). Few periods are not enough:
#: one that beats with the ties leaves ten times what its neighbours leave.
PERIODS = tuple(2.0 ** ((part + 0.5) / 8.0 - 0.5) for part in range(8))
#: Below this wave ratio a reading is noise whatever the receiver's linearity.
FLOOR = 1e-9
#: Power that is missing where a reading is 1 dB too low, as a share of what is read.
ONE_DB = 10.0**0.1 - 1.0
#: 20/ln 10: dB per neper.
DB = 20.0 / np.log(10.0)


def receiver_causes(bench: Bench) -> Iterator[Cause]:
    """Yield what is declared of the receiver, the cables and the room's temperature."""
    random = np.random.default_rng((bench.inputs.seed, 2))
    analyzer = bench.inputs.chamber.analyzer
    if analyzer.isolation_db is not None:
        yield _leakage(bench, random)
    if analyzer.linearity_db > 0.0:
        trace = bench.inputs.sweeps.trace
        bent = trace * np.maximum(np.abs(trace), FLOOR) ** (analyzer.linearity_db / 10.0)
        words = f"declared {analyzer.linearity_db:g} dB per 10 dB of level, from the reference's sweeps on"
        yield Cause("receiver linearity", _changed(bench, [bent]), words, "declared", "normal", analyzer.linearity_db,
                    "dB per 10 dB")  # fmt: skip
    yield from _compression(bench)
    yield from _reconnection(bench)
    yield from _imbalance(bench)
    yield from _temperature(bench)
    yield from _jumps(bench, random)


def _changed(bench: Bench, traces: list[ComplexArray]) -> ComplexArray:
    """Return the changes of the waves (n, frequency, 2, J) by other sweeps."""
    again = bench.inputs.sweeps
    field = bench.inputs.sphere.field
    return np.stack([bench.changed_before_alignment(field + again.change(one)) for one in traces])


def _leakage(bench: Bench, random: np.random.Generator) -> Cause:
    """A wave past the antennas: the same at every port whatever the axes do, its phase unknown and slowly wandering."""
    again, level_db = bench.inputs.sweeps, bench.inputs.chamber.analyzer.isolation_db
    assert level_db is not None  # declared
    trace, moments = again.trace, again.record["time_s"].values
    drawn = []
    for _ in range(LEAKAGE_DRAWS):
        phase = wandering(moments, random)[:, None, None] + 2.0 * np.pi * random.random((1, 1, trace.shape[2]))
        drawn.append(trace + 10.0 ** (level_db / 20.0) * np.exp(1j * phase))
    below = level_db - 20.0 * np.log10(bench.inputs.peak_reading)
    words = f"declared isolation {level_db:g} dB: {below:.0f} dB below the peak's reading, in every sweep"
    return Cause("leakage", _changed(bench, drawn), words, "declared", "as drawn", level_db, "dB")


def _compression(bench: Bench) -> Iterator[Cause]:
    """A receiver that compresses at the declared level: by 1 dB there, in proportion to power below."""
    level_dbm, again = bench.inputs.chamber.analyzer.compression_dbm, bench.inputs.sweeps
    if level_dbm is None:
        return
    power_dbm = float(again.record.attrs.get("power_dbm", bench.inputs.chamber.analyzer.power_dbm))
    over = np.abs(again.trace) ** 2 * 10.0 ** ((power_dbm - level_dbm) / 10.0)
    less = again.trace / np.sqrt(1.0 + ONE_DB * over)
    words = f"declared 1 dB less at {level_dbm:g} dBm or above, in every sweep; the receiver may be better"
    yield Cause("receiver compression", _changed(bench, [less]), words, "declared", "rectangular", level_dbm, "dBm")


def wandering(moments_s: FloatArray, random: np.random.Generator, shape: tuple[int, ...] | None = None) -> FloatArray:
    """Return a drawn slow swing of a leakage's phase at moments, radians; `shape` of the draws goes before theirs."""
    period = LEAKAGE_S * 2.0 ** random.uniform(-1.0, 1.0, shape)
    size = np.pi * random.random(shape)
    return np.asarray(size * np.sin(2.0 * np.pi * (moments_s / period + random.random(shape))))


def _reconnection(bench: Bench) -> Iterator[Cause]:
    reference = bench.inputs.chamber.reference
    if reference.absolute and (reference.reconnect_db > 0.0 or reference.reconnect_deg > 0.0):
        turn = np.exp(1j * np.deg2rad(reference.reconnect_deg)) - 1.0
        both = [bench.scaled(reference.reconnect_db), turn * bench.nominal.coefficients]
        words = f"declared \u00b1{reference.reconnect_db:g} dB and \u00b1{reference.reconnect_deg:g} deg from the reference to the device"
        yield Cause("reconnection", np.stack(both), words, "declared", "normal", reference.reconnect_db, "dB")


def _imbalance(bench: Bench) -> Iterator[Cause]:
    """The second polarization reads too much: port 2, or the probe rolled by 90 deg; the reference is read at rest."""
    probe, again = bench.inputs.chamber.probe, bench.inputs.sweeps
    if probe.imbalance_db == 0.0 and probe.imbalance_deg == 0.0:
        return
    record = again.record
    share = np.zeros(again.trace.shape)
    if "probe" in record["axis"].values:
        shown = record["commanded_deg"].values[:, list(record["axis"].values).index("probe")]
        share += np.sin(np.deg2rad(bench.inputs.chamber.axis_table["probe"].map.angle_deg(shown)))[:, None, None] ** 2
    share[:, :, record["port"].values == 2] = 1.0
    horn = [ROLES.index(Role.REFERENCE)] if method_of(record) in WITH_HORN else []
    share[np.isin(record["role"].values, [*horn, ROLES.index(Role.CABLE)])] = 0.0
    logs = (probe.imbalance_db / DB, 1j * np.deg2rad(probe.imbalance_deg))
    words = f"declared \u00b1{probe.imbalance_db:g} dB and \u00b1{probe.imbalance_deg:g} deg of the second polarization against the first"
    changes = _changed(bench, [again.trace * np.exp(one * share) for one in logs])
    yield Cause("polarization imbalance", changes, words, "declared", "normal", probe.imbalance_db, "dB")


def _temperature(bench: Bench) -> Iterator[Cause]:
    """A swing whose phase is not known, at periods about the declared one."""
    swing, again = bench.inputs.chamber.temperature, bench.inputs.sweeps
    if swing.level_db == 0.0 and swing.phase_deg == 0.0:
        return
    moments: FloatArray = again.record["time_s"].values
    traces = []
    for period in PERIODS:
        turn = np.exp(2j * np.pi * moments / (period * swing.period_s))
        for log in (swing.level_db / DB, 1j * np.deg2rad(swing.phase_deg)):
            if log:
                # Of a swing of unknown phase both parts have half of the square, and each period counts alike.
                share = log / np.sqrt(2.0 * len(PERIODS))
                traces += [again.trace * np.exp(share * part)[:, None, None] for part in (turn.real, turn.imag)]
    words = f"declared \u00b1{swing.level_db:g} dB and \u00b1{swing.phase_deg:g} deg every {swing.period_s:g} s: what the ties leave of it"
    yield Cause("temperature", _changed(bench, traces), words, "declared", "normal", swing.level_db, "dB")


def _jumps(bench: Bench, random: np.random.Generator) -> Iterator[Cause]:
    declared, again = bench.inputs.chamber.jumps, bench.inputs.sweeps
    if declared.per_hour == 0.0:
        return
    moments: FloatArray = again.record["time_s"].values
    begin, end = float(moments.min()), float(moments.max())
    drawn = []
    for _ in range(JUMP_DRAWS):
        log = np.zeros(moments.shape, complex)
        for when in random.uniform(begin, end, random.poisson(declared.per_hour * (end - begin) / 3600.0)):
            level, phase = 0.5 * random.normal(size=2) * (declared.level_db / DB, np.deg2rad(declared.phase_deg))
            log[moments > when] += level + 1j * phase
        drawn.append(again.trace * np.exp(log)[:, None, None])
    words = f"declared {declared.per_hour:g} an hour of \u00b1{declared.level_db:g} dB and \u00b1{declared.phase_deg:g} deg: what the ties leave of them"
    yield Cause("jumps", _changed(bench, drawn), words, "declared", "as drawn", declared.level_db, "dB")
