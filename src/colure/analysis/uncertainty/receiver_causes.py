"""What receiver, cables and their surroundings do to the sweeps of a record, ties and reference included.

Each cause is applied to the sweeps as they were read and the steps run again: what the ties see of it is taken out, what the
reference's sweeps see of it moves every level.
"""

from __future__ import annotations

import numpy as np

from colure.analysis.steps.gain import method_of
from colure.analysis.uncertainty.trial import Cause, Declarations, Perturbation, Trial
from colure.geometry.conventions import ComplexArray, FloatArray, amplitude_db
from colure.model.bands import of_segments
from colure.model.conditions import kelvins
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


def _changed(trial: Trial, traces: list[ComplexArray]) -> ComplexArray:
    """Return the changes of the waves (n, frequency, 2, J) by other sweeps."""
    again = trial.inputs.sweeps
    field = trial.inputs.sphere.field
    return trial.each_before_alignment([field + again.change(one) for one in traces])


def _linearity(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    size, trace = trial.inputs.chamber.analyzer.linearity_db, trial.inputs.sweeps.trace
    bent = trace * np.maximum(np.abs(trace), FLOOR) ** (size / 10.0)
    words = f"declared {size:g} dB per 10 dB of level, from the reference's sweeps on"
    return Perturbation(cause, _changed(trial, [bent]), words, size, "dB per 10 dB")


def _leakage(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    """A wave past the antennas: the same at every port whatever the axes do, its phase unknown and slowly wandering."""
    again, level_db = trial.inputs.sweeps, trial.inputs.chamber.analyzer.isolation_db
    assert level_db is not None  # declared
    trace, moments = again.trace, again.record["time_s"].values
    drawn = []
    for _ in range(LEAKAGE_DRAWS):
        phase = wandering(moments, random)[:, None, None] + 2.0 * np.pi * random.random((1, 1, trace.shape[2]))
        drawn.append(trace + 10.0 ** (level_db / 20.0) * np.exp(1j * phase))
    below = level_db - amplitude_db(trial.inputs.peak_reading)
    words = f"declared isolation {level_db:g} dB: {below:.0f} dB below the peak's reading, in every sweep"
    return Perturbation(cause, _changed(trial, drawn), words, level_db, "dB")


def _compression(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    """A receiver that compresses at the declared level: by 1 dB there, in proportion to power below."""
    level_dbm, again = trial.inputs.chamber.analyzer.compression_dbm, trial.inputs.sweeps
    assert level_dbm is not None  # declared
    attrs = again.record.attrs
    declared_dbm = float(attrs.get("power_dbm", trial.inputs.chamber.analyzer.power_dbm))
    power_dbm = of_segments(attrs, again.record["frequency"].values, "power_dbm", declared_dbm)[:, None]
    over = np.abs(again.trace) ** 2 * 10.0 ** ((power_dbm - level_dbm) / 10.0)
    less = again.trace / np.sqrt(1.0 + ONE_DB * over)
    words = f"declared 1 dB less at {level_dbm:g} dBm or above, in every sweep; the receiver may be better"
    return Perturbation(cause, _changed(trial, [less]), words, level_dbm, "dBm")


def wandering(moments_s: FloatArray, random: np.random.Generator, shape: tuple[int, ...] | None = None) -> FloatArray:
    """Return a drawn slow swing of a leakage's phase at moments, radians; `shape` of the draws goes before theirs."""
    period = LEAKAGE_S * 2.0 ** random.uniform(-1.0, 1.0, shape)
    size = np.pi * random.random(shape)
    return np.asarray(size * np.sin(2.0 * np.pi * (moments_s / period + random.random(shape))))


def _reconnection(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    reference = trial.inputs.chamber.reference
    turn = np.exp(1j * np.deg2rad(reference.reconnect_deg)) - 1.0
    both = [trial.scaled(reference.reconnect_db), turn * trial.nominal.coefficients]
    words = f"declared \u00b1{reference.reconnect_db:g} dB and \u00b1{reference.reconnect_deg:g} deg from the reference to the device"
    return Perturbation(cause, np.stack(both), words, reference.reconnect_db, "dB")


def _imbalance(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    """The second polarization reads too much: port 2, or the probe rolled by 90 deg; the reference is read at rest."""
    probe, again = trial.inputs.chamber.probe, trial.inputs.sweeps
    record = again.record
    share = np.zeros(again.trace.shape)
    if "probe" in record["axis"].values:
        shown = record["commanded_deg"].values[:, list(record["axis"].values).index("probe")]
        share += np.sin(np.deg2rad(trial.inputs.chamber.axis_table["probe"].map.angle_deg(shown)))[:, None, None] ** 2
    share[:, :, record["port"].values == 2] = 1.0
    horn = [ROLES.index(Role.REFERENCE)] if method_of(record) in WITH_HORN else []
    share[np.isin(record["role"].values, [*horn, ROLES.index(Role.CABLE), ROLES.index(Role.REFLECTION)])] = 0.0
    logs = (probe.imbalance_db / DB, 1j * np.deg2rad(probe.imbalance_deg))
    words = f"declared \u00b1{probe.imbalance_db:g} dB and \u00b1{probe.imbalance_deg:g} deg of the second polarization against the first"
    changes = _changed(trial, [again.trace * np.exp(one * share) for one in logs])
    return Perturbation(cause, changes, words, probe.imbalance_db, "dB")


def _temperature(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    """A swing as declared, and what the logged temperature may have done."""
    swing = trial.inputs.chamber.temperature
    traces, words = _swung(trial), []
    if traces:
        words.append(
            f"declared \u00b1{swing.level_db:g} dB and \u00b1{swing.phase_deg:g} deg every {swing.period_s:g} s: what the ties leave of it"
        )
    size = swing.level_db
    if swing.of_sensor:
        record = trial.inputs.sweeps.record
        warmer = kelvins(record, swing.sensor)
        span = float(np.ptp(warmer))
        warmer = (warmer - warmer.mean())[:, None, None]
        logs = (swing.level_db_per_k / DB, 1j * np.deg2rad(swing.phase_deg_per_k))
        traces += [trial.inputs.sweeps.trace * np.exp(log * warmer) for log in logs if log]
        words.append(
            f"declared \u00b1{swing.level_db_per_k:g} dB and \u00b1{swing.phase_deg_per_k:g} deg per kelvin, {span:.2f} K logged: what "
            "the ties leave of it"
        )
        size = max(size, 0.5 * span * swing.level_db_per_k)
    return Perturbation(cause, _changed(trial, traces), "; ".join(words), size, "dB")


def _swung(trial: Trial) -> list[ComplexArray]:
    """Return sweeps with a swing whose phase is not known, at periods about the declared one."""
    swing, again = trial.inputs.chamber.temperature, trial.inputs.sweeps
    moments: FloatArray = again.record["time_s"].values
    traces = []
    for period in PERIODS:
        turn = np.exp(2j * np.pi * moments / (period * swing.period_s))
        for log in (swing.level_db / DB, 1j * np.deg2rad(swing.phase_deg)):
            if log:
                # Of a swing of unknown phase both parts have half of the square, and each period counts alike.
                share = log / np.sqrt(2.0 * len(PERIODS))
                traces += [again.trace * np.exp(share * part)[:, None, None] for part in (turn.real, turn.imag)]
    return traces


def _jumps(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    declared, again = trial.inputs.chamber.jumps, trial.inputs.sweeps
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
    return Perturbation(cause, _changed(trial, drawn), words, declared.level_db, "dB")


def _isolated(known: Declarations) -> bool:
    return known.chamber.analyzer.isolation_db is not None


def _bent(known: Declarations) -> bool:
    return known.chamber.analyzer.linearity_db > 0.0


def _compressed(known: Declarations) -> bool:
    return known.chamber.analyzer.compression_dbm is not None


def _reconnected(known: Declarations) -> bool:
    return max(known.chamber.reference.reconnect_db, known.chamber.reference.reconnect_deg) > 0.0


def _imbalanced(known: Declarations) -> bool:
    return max(known.chamber.probe.imbalance_db, known.chamber.probe.imbalance_deg) > 0.0


def _swinging(known: Declarations) -> bool:
    swing = known.chamber.temperature
    return max(swing.level_db, swing.phase_deg) > 0.0 or swing.of_sensor


def _jumping(known: Declarations) -> bool:
    return known.chamber.jumps.per_hour > 0.0


#: What is declared of the receiver, the cables and the temperature, in the order of the budget's rows.
RECEIVER_CAUSES = (
    Cause(key="leakage", text="a wave that is added to every sweep of the record, its phase slowly wandering", needs="isolation_db",
          perturb=_leakage, distribution="as drawn", declared=_isolated, missing="leakage", stream=(2,)),
    Cause(key="receiver linearity", text="the declared error per 10 dB of level on every sweep, the reference's included",
          needs="linearity_db", perturb=_linearity, distribution="normal", declared=_bent, missing="linearity"),
    Cause(key="receiver compression", text="the level at which the receiver reads 1 dB too little, or a better one",
          needs="compression_dbm", perturb=_compression, distribution="rectangular", declared=_compressed, missing="linearity"),
    Cause(key="reconnection", text="declared change of the path from the reference to the device",
          needs="reconnect_db, reconnect_deg and a reference", perturb=_reconnection, distribution="normal", declared=_reconnected,
          applies=lambda inputs: inputs.chamber.reference.absolute, missing="reconnection"),
    Cause(key="polarization imbalance", text="declared level and phase of the second polarization that the reference does not show",
          needs="imbalance_db, imbalance_deg", perturb=_imbalance, distribution="normal", declared=_imbalanced,
          missing="polarization imbalance"),
    Cause(key="temperature", text="the declared swing and the logged temperature on every sweep: what the ties leave", needs="[temperature]",
          perturb=_temperature, distribution="normal", declared=_swinging, missing="temperature"),
    Cause(key="jumps", text="declared jumps in the record: what the ties leave of them", needs="[jumps]", perturb=_jumps,
          distribution="as drawn", declared=_jumping, missing="jumps", stream=(2,)),
)  # fmt: skip
