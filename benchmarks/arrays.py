"""Arrays in code states, whole campaigns on the simulated chamber against its closed-form truth: `python benchmarks/arrays.py`.

Every campaign measures all code states and two beams at each place, with errors of commands of 0.1 dB and 2 deg rms.
`patterns`: a chamber with nothing wrong but noise; each element's pattern over the whole sphere against that of its source alone.
What stands 60 dB above the noise of one sweep is the strongest sweep of the median code state (`--snr median`, the default): a code
state adds its elements with all signs, so this says how well the sweeps that count are read. `--snr beam` sets the beam ahead 60 dB
above the noise instead, which is what an analyzer shows on boresight: for 64 elements every code state is then some 10 dB weaker,
and so is each element. A figure at "60 dB" says nothing without which of the two is meant. Beside the error stands what noise alone
leaves of the best unbiased estimate (`bound_db`); more than 1 dB above it in the median is a miss, whatever the noise.
`intervals`: chambers drawn from what they declare; beams, levels and phases against what was stated.
`power`: elements turned one by one at the beam's peak, levels and phases at the probe from power alone (rotating-element
electric-field vector method); beside them what least squares of a sinusoid promises (see `promised`).
Invented arrays. Exit code 1 if a limit is missed.
"""

from __future__ import annotations

import argparse
import sys
import tempfile
import time
from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

import numpy as np
import tomlkit

from colure.analysis.array.rotating import relative
from colure.app import services
from colure.app.services.array_elements import calibrated, each_element
from colure.app.services.array_powers import from_table
from colure.app.services.array_states import array_run, held_against
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import RunFolder, run_folder
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.geometry.directions import unit_vector
from colure.geometry.polarization import from_cartesian
from colure.model.campaign import Campaign
from colure.model.chamber import SimulatedChamber
from colure.model.commands import Commands
from colure.model.device import Elements
from colure.model.files import save_dataset
from colure.planning.codes import joined, orthogonal, rotated
from colure.twin.chamber import SimulatedRange
from colure.twin.devices import device_maker
from colure.twin.rehearsal import draw_chamber
from colure.twin.states import answered, told
from colure.twin.truth import probe_calibration
from colure.waves.transform import synthesis

LIGHT = 299_792_458.0
COMMAND_DB, COMMAND_DEG = 0.1, 2.0
SNR_DB = 60.0
BEAMS = ("ahead", "aside")
#: Limits: patterns, rms over the sphere below the element's peak; the calibration of elements; share inside of 95 % intervals.
PATTERN_DB, LEVEL_DB, PHASE_DEG, INSIDE = -50.0, 0.1, 1.0, 0.94
GRID_DEG = 3.0
FAILED: list[str] = []


@dataclass(frozen=True)
class Array:
    """An invented array: places of its elements in metres (element, 3), its frequency, and the tables of the campaign."""

    name: str
    place: FloatArray
    frequency_ghz: float
    device: Mapping[str, Any]
    goal: Mapping[str, Any]
    chamber: Mapping[str, Any]
    sources: str | None = None

    @property
    def elements(self) -> int:
        """How many elements it has."""
        return len(self.place)

    def beams(self) -> Commands:
        """Return a beam ahead and one 25 deg aside, by a phase shifter of 5 bits."""
        k = 2e9 * np.pi * self.frequency_ghz / LIGHT
        bit = 2.0 * np.pi / 32.0
        aside = np.exp(-1j * bit * np.round(k * np.sin(np.deg2rad(25.0)) * self.place[:, 0] / bit))
        return Commands(BEAMS, np.stack([np.ones(self.elements, complex), aside]))

    def write(self, folder: Path, states: Commands) -> Campaign:
        """Write the campaign and return it."""
        services.new_campaign(folder)
        for name, changes in (("device", self.device), ("goal", self.goal), ("chamber", self.chamber)):
            document = tomlkit.parse((folder / f"{name}.toml").read_text("utf-8"))
            for key, value in changes.items():
                if value is None:
                    document.pop(key, None)
                elif isinstance(value, Mapping) and key in document:
                    document[key].update(value)  # type: ignore[union-attr]
                else:
                    document[key] = value
            (folder / f"{name}.toml").write_text(tomlkit.dumps(document), "utf-8")
        twin = "seed = 1\n"
        if self.sources is not None:
            (folder / "sources.csv").write_text(self.sources, "utf-8")
            twin += '[device]\nkind = "dipoles"\nfile = "sources.csv"\n'
        (folder / "twin.toml").write_text(twin, "utf-8")
        (folder / "codes.csv").write_text(states.text(), "utf-8")
        campaign = Campaign.load(folder)
        band = np.linspace(0.98, 1.02, 5) * 1e9 * self.frequency_ghz
        ring = 1e-3 * campaign.simulated().probe_ring_mm
        save_dataset(probe_calibration(band, ring_m=ring), folder / str(campaign.chamber.probe.pattern))
        return campaign


def device_table(size_mm: float, gain_dbi: float, **more: Any) -> dict[str, Any]:
    """Return the device's table: centred on the axes' intersection, every element with its commands."""
    states = {"codes": "codes.csv", "program": ["true"], "command_error_db": COMMAND_DB,
        "command_error_deg": COMMAND_DEG}  # fmt: skip
    return {"size_mm": [size_mm, size_mm, 2.0], "offset_mm": [0.0, 0.0, 0.0], "expected_gain_dbi": gain_dbi,
            "elements": None, "states": states, **more}  # fmt: skip


def one(frequency_ghz: float, **more: Any) -> dict[str, Any]:
    """Return the goal: one frequency, the whole sphere in both polarizations."""
    return {"start_ghz": frequency_ghz, "stop_ghz": frequency_ghz, "points": 1, "wanted_level_db": -40, **more}


def grid(rows: int, columns: int, pitch_mm: float) -> FloatArray:
    """Return places (element, 3) row by row from -y, metres."""
    return Elements(rows=rows, columns=columns, pitch_mm=pitch_mm).places_m(np.zeros(3))


def panel(name: str, rows: int, columns: int, *, pitch_mm: float, frequency_ghz: float, gain_dbi: float,
    **chamber: Any) -> Array:  # fmt: skip
    """Return a rectangular array with equal pitch."""
    size = max(rows, columns) * pitch_mm
    elements = {"rows": rows, "columns": columns, "pitch_mm": pitch_mm}
    return Array(name, grid(rows, columns, pitch_mm), frequency_ghz,
                 device_table(size, gain_dbi, elements=elements), one(frequency_ghz), chamber)  # fmt: skip


def excited(place: FloatArray, seed: int) -> str:
    """Return a table of Huygens sources at places (element, 3) in metres: 0.7 to 1 in amplitude, 25 deg rms in phase."""
    random = np.random.default_rng(seed)
    own = random.uniform(0.7, 1.0, len(place)) * np.exp(1j * np.deg2rad(random.normal(0.0, 25.0, len(place))))
    parts = [f"{kind}_{axis}_{part}" for kind in "pm" for axis in "xyz" for part in ("re", "im")]
    lines = ["x_mm,y_mm,z_mm," + ",".join(parts)]
    for at, a in zip(1e3 * place, own, strict=True):
        b = 0.9 * a * 376.730313668
        electric, magnetic = f"{a.real:.9f},{a.imag:.9f},0,0,0,0", f"0,0,{b.real:.9f},{b.imag:.9f},0,0"
        lines.append(f"{at[0]:.6f},{at[1]:.6f},0,{electric},{magnetic}")
    return "\n".join(lines) + "\n"


def ring(name: str, count: int, *, radius_mm: float, frequency_ghz: float, gain_dbi: float, **chamber: Any) -> Array:
    """Return an array on a circle, unequal in level and phase."""
    angle = 2.0 * np.pi * np.arange(count) / count
    place = 1e-3 * radius_mm * np.stack([np.cos(angle), np.sin(angle), 0.0 * angle], axis=-1)
    return Array(name, place, frequency_ghz, device_table(2.2 * radius_mm, gain_dbi), one(frequency_ghz), chamber,
                 excited(place, 12))  # fmt: skip


HORN_10_GHZ = {"aperture_a_mm": 90.0, "aperture_b_mm": 70.0, "slant_e_mm": 150.0, "slant_h_mm": 165.0}
ARRAYS = {
    "2x2": panel("2 x 2, 24 GHz", 2, 2, pitch_mm=6.2, frequency_ghz=24.0, gain_dbi=10.0),
    "5x3": panel("5 x 3, 10 GHz", 5, 3, pitch_mm=15.0, frequency_ghz=10.0, gain_dbi=15.0, reference=HORN_10_GHZ),
    "ring": ring("ring of 12, 10 GHz", 12, radius_mm=30.0, frequency_ghz=10.0, gain_dbi=12.0, reference=HORN_10_GHZ),
    "8x8": replace(
        panel("8 x 8, 24 GHz", 8, 8, pitch_mm=6.2, frequency_ghz=24.0, gain_dbi=21.5),
        sources=excited(grid(8, 8, 6.2), 64),
    ),
}


def check(name: str, value: float, limit: float, *, at_most: bool = True, unit: str = "") -> None:
    """Print a figure beside its limit and remember a miss."""
    good = value <= limit if at_most else value >= limit
    print(f"  {'ok  ' if good else 'MISS'} {name}: {value:.4g}{unit} ({'<=' if at_most else '>='} {limit:g}{unit})",
        flush=True)  # fmt: skip
    if not good:
        FAILED.append(name)


def carried_out(campaign: Campaign, truth: SimulatedChamber | None, seed: int, name: str) -> RunFolder:
    """Measure a campaign's plan on a chamber and keep its record as a run; a chamber drawn by `seed` if None."""
    _, plan = services.make_plan(campaign.folder)
    run = run_folder(campaign.folder, name)
    run.path.mkdir(parents=True, exist_ok=True)
    run.record.unlink(missing_ok=True)
    save_dataset(record_of_rehearsal(campaign, plan, seed=seed, truth=truth), run.record)
    return run


def own_parts(commands: Commands, response: ComplexArray) -> ComplexArray:
    """Return what each element (element,) really is: half the difference of its answers to 0 and 180 deg."""
    at = {s: np.array([response[np.argmax(np.abs(w - s) < 1e-9), n] for n,
        w in enumerate(commands.weight.T)]) for s in (1, -1)}  # fmt: skip
    return np.asarray(0.5 * (at[1] - at[-1]))


def patterns(array: Array, folder: Path, *, snr_of: str) -> None:
    """Print the error of every element's pattern, a chamber with noise alone."""
    campaign = array.write(folder, joined(orthogonal(array.elements), array.beams()))
    truth = SimulatedChamber(seed=3, device=campaign.simulated().device, probe_cross_polar_db=-42.0,
                             crosstalk_db=-200.0,
                             command_error_db=COMMAND_DB, command_error_deg=COMMAND_DEG)  # fmt: skip
    analyzer = campaign.chamber.analyzer
    power = analyzer.power_dbm - excess_db(campaign, truth, snr_of)
    document = tomlkit.parse((folder / "chamber.toml").read_text("utf-8"))
    document["analyzer"]["power_dbm"] = power  # type: ignore[index]
    (folder / "chamber.toml").write_text(tomlkit.dumps(document), "utf-8")
    campaign = Campaign.load(folder)
    begin = time.process_time()
    run = carried_out(campaign, truth, 3, "first")
    measured = array_run(campaign, run, without=BEAMS)
    commands = campaign.commands()
    assert commands is not None
    snr = 20.0 * np.log10(np.abs(measured.sweeps).max(axis=1) / measured.errors.noise)
    own = own_parts(commands, answered(commands, truth))
    device = device_maker(truth, campaign.device, band_hz=campaign.goal.frequency_hz,
        folder=folder)(campaign.goal.frequency_hz)  # fmt: skip
    theta, phi = np.deg2rad(np.arange(0.0, 180.1, GRID_DEG)), np.deg2rad(np.arange(0.0, 359.9, GRID_DEG))
    t, p = np.meshgrid(theta, phi, indexing="ij")
    share = np.sin(t) / np.sum(np.sin(t))
    found, true = [], []
    for n, one_ in enumerate(each_element(measured, np.array([0.0, 0.0, 1.0]))):
        found.append(synthesis(one_.processed.expansion.coefficients, theta, phi.size)[0])
        far = told(device, np.eye(array.elements)[n] * own[n]).far_field(unit_vector(theta=t, phi=p).reshape(-1, 3))
        true.append(np.stack(from_cartesian(far.reshape(*t.shape, 3), theta=t, phi=p)))
    off = np.array(found) * np.exp(-1j * np.angle(np.vdot(true, found))) - np.array(true)
    peak = np.sqrt(np.max(np.sum(np.abs(true) ** 2, axis=1), axis=(1, 2)))
    rms = 20.0 * np.log10(np.sqrt(np.sum(share * np.abs(off) ** 2, axis=(1, 2, 3))) / peak)
    worst = 20.0 * np.log10(np.sqrt(np.max(np.sum(np.abs(off) ** 2, axis=1), axis=(1, 2))) / peak)
    print(f"{array.name}: {len(commands.names)} states, {measured.places.rows.shape[1]} places, "
          f"SNR of the median code state {np.median(snr):.1f} dB, of the weakest {snr.min():.1f} dB, of the strongest {snr.max():.1f} dB, "
          f"{time.process_time() - begin:.0f} CPU s")  # fmt: skip
    print(f"  error of patterns below the element's peak: rms {rms.min():.1f} to {rms.max():.1f} dB, "
          f"at the worst direction {worst.max():.1f} dB")  # fmt: skip
    bound = bound_db(campaign, truth, own, len(commands.names) - len(BEAMS))
    print(f"  what noise alone leaves of the best estimate: rms {bound.min():.1f} to {bound.max():.1f} dB; for {PATTERN_DB:g} dB in all elements "
          f"{max(0.0, bound.max() - PATTERN_DB):.1f} dB less noise")  # fmt: skip
    check("median element over that bound", float(np.median(rms - bound)), 1.0, unit=" dB")
    check("worst element's pattern, rms", float(rms.max()), PATTERN_DB, unit=" dB")
    for name in BEAMS:
        held = held_against(measured, name)
        print(f"  {name}: measured minus synthesized {held.difference_db:.1f} dB, limit {held.limit_db:.1f} dB")
        check(f"{name} within its limit", held.difference_db - held.limit_db, 0.0, unit=" dB")
    tell(calibration(campaign, run, truth))


def bound_db(campaign: Campaign, truth: SimulatedChamber, own: ComplexArray, states: int) -> FloatArray:
    """Return what noise leaves at least of each element's pattern (element,), rms over the sphere below the element's peak.

    Least squares reach it and no unbiased estimate is better (Gauss-Markov). Orthogonal states of one modulus average: the noise of
    an element is that of a sweep over the root of their number. Then waves up to the plan's order are fitted to as many readings as
    the plan has: two columns for every slice, at the poles one reading a slice, both components.
    """
    _, plan = services.make_plan(campaign.folder)
    grid_, order, analyzer = plan.grid, plan.order, campaign.chamber.analyzer
    rings, slices = round(180.0 / grid_.swept_step_deg) + 1, round(180.0 / grid_.step_deg)
    theta, count = np.linspace(0.0, np.pi, rings), order * (order + 2)
    readings = np.full(rings, 2.0 * slices)
    readings[[0, -1]] = slices
    azimuthal = np.concatenate([np.arange(-n, n + 1) for n in range(1, order + 1)])
    spread = 0.0
    for m in range(-order, order + 1):
        # Columns evenly about the turn keep azimuthal orders apart.
        rows = np.flatnonzero(azimuthal == m)
        unit = np.zeros((2, rows.size, 2, count), complex)
        for kind in (0, 1):
            unit[kind, np.arange(rows.size), kind, rows] = 1.0
        seen = synthesis(unit.reshape(-1, 2, count), theta, 1)[..., 0]
        information = np.einsum("act,t,bct->ab", seen.conj(), readings, seen)
        spread += float(np.trace(np.linalg.inv(information)).real)
    noise_db = -173.975 + analyzer.noise_figure_db + 10.0 * np.log10(analyzer.if_bandwidth_hz) - analyzer.power_dbm
    left_db = noise_db - 10.0 * np.log10(states) + 10.0 * np.log10(spread / (4.0 * np.pi))
    make = device_maker(truth, campaign.device, band_hz=campaign.goal.frequency_hz, folder=campaign.folder)
    quiet = SimulatedRange(campaign.chamber, truth.model_copy(update={"noise": False}), make, np.diag(own))
    quiet.set_frequencies(campaign.goal.frequency_hz)
    ahead = {name: np.zeros(1) for name in campaign.chamber.axis_table}
    level = np.empty(own.size)
    for element in range(own.size):
        quiet.state = element
        read = quiet.sweep(ahead, port=1, channel=1, time_s=np.zeros(1), power_dbm=analyzer.power_dbm,
                           if_bandwidth_hz=analyzer.if_bandwidth_hz)  # fmt: skip
        level[element] = np.abs(read).max()
    return np.asarray(left_db - 20.0 * np.log10(level))


def excess_db(campaign: Campaign, truth: SimulatedChamber, snr_of: str) -> float:
    """Return how far the strongest sweep of the median code state, or of the beam ahead, stands above the wanted ratio to the noise."""
    commands = campaign.commands()
    assert commands is not None
    frequency = campaign.goal.frequency_hz
    make = device_maker(truth, campaign.device, band_hz=frequency, folder=campaign.folder)
    quiet = SimulatedRange(campaign.chamber, truth.model_copy(update={"noise": False}), make, answered(commands, truth))
    quiet.set_frequencies(frequency)
    analyzer = campaign.chamber.analyzer
    names, levels = list(campaign.chamber.axis_table), list[float]()
    azimuth, roll = (a.ravel() for a in np.meshgrid(np.arange(0.0, 90.1, 4.0), np.arange(0.0, 360.0, 12.0)))
    table = {"azimuth": azimuth, "roll": roll, "probe": -roll}
    ahead = len(commands.names) - len(BEAMS)
    for state in [ahead] if snr_of == "beam" else range(ahead):
        quiet.state = state
        read = quiet.sweep({n: table[n] for n in names}, port=1, channel=1, time_s=np.zeros(azimuth.size),
                           power_dbm=analyzer.power_dbm, if_bandwidth_hz=analyzer.if_bandwidth_hz)  # fmt: skip
        levels.append(float(np.abs(read).max()))
    level = float(np.median(levels))
    noise_dbm = -173.975 + analyzer.noise_figure_db + 10.0 * np.log10(analyzer.if_bandwidth_hz)
    return float(20.0 * np.log10(level) + analyzer.power_dbm - noise_dbm - SNR_DB)


#: (|error|, expanded uncertainty) by what was measured.
Errors = dict[str, list[tuple[float, float]]]


def calibration(campaign: Campaign, run: RunFolder, truth: SimulatedChamber) -> Errors:
    """Return the errors of a calibration: elements by level and phase, and commands."""
    _, rows = calibrated(campaign, run)
    commands = campaign.commands()
    assert commands is not None
    response = answered(commands, truth)
    own = own_parts(commands, response)
    frequency = campaign.goal.frequency_hz
    device = device_maker(truth, campaign.device, band_hz=frequency, folder=campaign.folder)(frequency)
    ahead = np.array([told(device, row).far_field([[0.0, 0.0, 1.0]])[0, 0, 0] for row in np.diag(own)])
    share, out = relative(ahead), defaultdict[str, list[tuple[float, float]]](list)
    for row in rows:
        if row.command == "element":
            kind, true = "element", share[row.element]
        else:
            weight = np.exp(1j * np.deg2rad(float(row.command.split()[0])))
            state = int(np.argmin(np.abs(commands.weight[:, row.element] - weight)))
            kind, true = (
                "command",
                response[state, row.element] / commands.weight[state, row.element] / own[row.element],
            )
        off = (
            row.level_db - 20.0 * np.log10(abs(true)),
            (row.phase_deg - np.rad2deg(np.angle(true)) + 180.0) % 360.0 - 180.0,
        )
        out[f"{kind} level"].append((abs(float(off[0])), row.level_expanded_db))
        out[f"{kind} phase"].append((abs(float(off[1])), row.phase_expanded_deg))
    return out


def tell(errors: Errors, *, limits: bool = True) -> None:
    """Print errors of levels and phases, their intervals and the share inside."""
    for name, rows in errors.items():
        off, expanded = np.array(rows).T
        unit = "dB" if name.endswith("level") else "deg"
        inside = float(np.mean(off <= expanded))
        print(f"  {name}: {off.size} cases, {100 * inside:.1f} % inside, error rms {np.sqrt(np.mean(off**2)):.3f}, largest "
              f"{off.max():.3f}, median U {np.median(expanded):.3f} {unit}")  # fmt: skip
        # So many cases may be outside by chance (one-sided 95 %, normal).
        check(f"{name}: share inside", inside, INSIDE - 1.65 * np.sqrt(0.05 * 0.95 / off.size), at_most=False)
        if limits and name.startswith("element"):
            check(f"{name}: rms error", float(np.sqrt(np.mean(off**2))), LEVEL_DB if unit == "dB" else PHASE_DEG,
                unit=f" {unit}")  # fmt: skip


def intervals(array: Array, folder: Path, seeds: range) -> None:
    """Print how often intervals held in drawn chambers."""
    campaign = array.write(folder, joined(orthogonal(array.elements), array.beams()))
    _, plan = services.make_plan(folder)
    errors, within, beams, begin = defaultdict[str, list[tuple[float, float]]](list), 0, 0, time.process_time()
    for seed in seeds:
        truth = draw_chamber(campaign.chamber, campaign.device, plan, seed, holding=campaign.simulated(), folder=folder)
        run = carried_out(campaign, None, seed, "first")
        measured = array_run(campaign, run, without=BEAMS)
        for name in BEAMS:
            within, beams = within + held_against(measured, name).within, beams + 1
        for name, rows in calibration(campaign, run, truth).items():
            errors[name] += rows
        print(f"    seed {seed}: " + ", ".join(f"{n} {sum(o <= u for o, u in r)}/{len(r)}" for n, r in errors.items()),
            file=sys.stderr, flush=True)  # fmt: skip
    print(f"{array.name}: {len(seeds)} campaigns, {(time.process_time() - begin) / len(seeds):.1f} CPU s each")
    print(f"  measured beams within the limit of their sums: {within} of {beams}")
    check("beams within", within / beams, INSIDE - 1.65 * np.sqrt(0.05 * 0.95 / beams), at_most=False)
    tell(errors, limits=False)


def promised(value: ComplexArray, scatter: float, steps: int) -> FloatArray:
    """Return the standard uncertainty (element,) of level and of phase (radians) from powers with a relative scatter.

    A sinusoid of known period from n values with standard deviation s has its amplitude A to s sqrt(2 / n) and its phase to
    sqrt(2 / n) s / A (S. M. Kay, Fundamentals of statistical signal processing: estimation theory, 1993, ch. 3; from memory);
    here A = 2 |1 - c| |c| with c the element over the whole field.
    """
    share = np.abs(value / value.sum())
    return np.asarray(np.sqrt(2.0 / steps) * scatter / (2.0 * share * np.abs(1.0 - value / value.sum())))


def mean_answers(commands: Commands, response: ComplexArray) -> ComplexArray:
    """Return the mean over an element's commands of what it answers over what it was told, (element,)."""
    out = []
    for weight, answer in zip(commands.weight.T, response.T, strict=True):
        _, first = np.unique(np.round(weight, 9), return_index=True)
        out.append(np.mean(answer[first] / weight[first]))
    return np.array(out)


def alone(campaign: Campaign, truth: SimulatedChamber) -> ComplexArray:
    """Return what the probe reads of every element by itself, without noise, (element,)."""
    frequency, commands = campaign.goal.frequency_hz, campaign.commands()
    assert commands is not None
    make = device_maker(truth, campaign.device, band_hz=frequency, folder=campaign.folder)
    each = SimulatedRange(campaign.chamber, truth, make, np.eye(commands.elements, dtype=complex))
    each.set_frequencies(frequency)
    out = []
    for element in range(commands.elements):
        each.state = element
        out.append(each.received({"azimuth": 0.0, "roll": 0.0, "probe": 0.0}, 1)[0])
    return np.array(out)


def power(array: Array, folder: Path, seeds: range, *, exact: bool, steps: int = 8) -> None:
    """Print levels and phases from power alone at the beam's peak; commands exact, or with their errors."""
    errors, off_over = defaultdict[str, list[tuple[float, float]]](list), list[float]()
    commands = rotated(array.elements, steps)
    campaign = array.write(folder, commands)
    frequency = campaign.goal.frequency_hz
    for seed in seeds:
        truth = SimulatedChamber(seed=seed, device=campaign.simulated().device, crosstalk_db=-200.0,
                                 command_error_db=0.0 if exact else COMMAND_DB,
                                 command_error_deg=0.0 if exact else COMMAND_DEG)  # fmt: skip
        make = device_maker(truth, campaign.device, band_hz=frequency, folder=folder)
        response = answered(commands, truth)
        room = SimulatedRange(campaign.chamber, truth, make, response)
        room.set_frequencies(frequency)
        lines, still = ["element,phase_deg,power_db"], None
        random = np.random.default_rng((seed, 60))
        scatter = 2e-3  # of each power; 0.0087 dB
        for state, row in enumerate(commands.weight):
            room.state = state
            read = room.sweep({"azimuth": 0.0, "roll": 0.0, "probe": 0.0}, port=1, channel=1, time_s=0.0,
                              power_dbm=campaign.chamber.analyzer.power_dbm, if_bandwidth_hz=10.0)  # fmt: skip
            level = 20.0 * np.log10(abs(complex(read[0]))) + 10.0 * np.log10(1.0 + scatter * random.normal())
            turned = np.flatnonzero(np.abs(row - 1.0) > 1e-9)
            if not turned.size:
                still = level
                continue
            lines.append(f"{turned[0]},{np.rad2deg(np.angle(row[turned[0]])) % 360.0:.6f},{level:.9f}")
        lines += [
            f"{n},0,{still + 10.0 * np.log10(1.0 + scatter * random.normal()):.9f}" for n in range(array.elements)
        ]
        table = folder / "powers.csv"
        table.write_text("\n".join(lines) + "\n", "utf-8")
        rows, _ = from_table(table)
        # With errors of commands an element is the mean of its answers, each turned back.
        ahead = alone(campaign, truth) * mean_answers(commands, response)
        true = relative(ahead)
        size = promised(ahead, scatter, steps)
        for row, value, sigma in zip(rows, true, size, strict=True):
            phase = (row.phase_deg - np.rad2deg(np.angle(value)) + 180.0) % 360.0 - 180.0
            errors["element level"].append((abs(row.level_db - 20.0 * np.log10(abs(value))), row.level_expanded_db))
            errors["element phase"].append((abs(phase), row.phase_expanded_deg))
            off_over.append(np.deg2rad(phase) / sigma)
    print(f"{array.name}, power alone: {len(seeds)} x {array.elements} elements, {steps} turns, 0.2 % scatter of each power, "
          + ("commands exact" if exact else f"commands {COMMAND_DB:g} dB and {COMMAND_DEG:g} deg off"))  # fmt: skip
    print(f"  phase error over what least squares promises: rms {np.sqrt(np.mean(np.square(off_over))):.2f}")
    tell(errors, limits=False)


def main() -> int:
    """Print the tables."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("what", choices=["patterns", "intervals", "power"])
    parser.add_argument("--array", choices=list(ARRAYS), action="append")
    parser.add_argument("--first", type=int, default=1)
    parser.add_argument("--seeds", type=int, default=25)
    parser.add_argument(
        "--snr", choices=["median", "beam"], default="median", help="What stands 60 dB above the noise (patterns)."
    )
    wanted = parser.parse_args()
    seeds = range(wanted.first, wanted.first + wanted.seeds)
    for name in wanted.array or list(ARRAYS):
        with tempfile.TemporaryDirectory() as where:
            folder = Path(where) / "campaign"
            if wanted.what == "patterns":
                patterns(ARRAYS[name], folder, snr_of=wanted.snr)
            elif wanted.what == "intervals":
                intervals(ARRAYS[name], folder, seeds)
            else:
                for exact in (True, False):
                    power(ARRAYS[name], folder / str(exact), seeds, exact=exact)
    print("all limits kept" if not FAILED else f"missed: {', '.join(FAILED)}")
    return 1 if FAILED else 0


if __name__ == "__main__":
    sys.exit(main())
