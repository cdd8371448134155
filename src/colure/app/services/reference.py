"""What is known of the reference antenna beyond its dimensions: gain tables and adapters, from files."""

from __future__ import annotations

import csv
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np

from colure.app.services.receiver_kind import is_power_only, vector_words
from colure.errors import InputError
from colure.geometry.conventions import ComplexArray, FloatArray, power_db
from colure.model.admission import require_regular
from colure.model.bands import told_segments
from colure.model.campaign import Campaign
from colure.model.tables import LARGEST_TABLE_BYTES, read_numbers
from colure.model.whole import whole_file

if TYPE_CHECKING:
    from colure.analysis.setup.three_antenna import AntennaPair
    from colure.analysis.steps.gain import ReferenceData
    from colure.model.plan import Plan
    from colure.waves.expansion import Expansion

HEADER = ("frequency_ghz", "gain_dbi", "uncertainty_db")
#: A distance that the phase of S21 contradicts by more than this share of it and so many metres is asked about: horns and adapters delay.
DELAY_SHARE, DELAY_M = 0.5, 1.0


def reference_of(campaign: Campaign, frequency_hz: FloatArray) -> ReferenceData | None:
    """Return the reference's gain table, adapter and mismatch at the frequencies wanted; None if no file is named.

    Raises
    ------
    InputError
        If a file is missing, malformed, or does not cover the band.
    """
    from colure.analysis.steps.gain import ReferenceData, substitution_path

    table, folder = campaign.chamber.reference, campaign.folder
    gain, uncertainty, path, loss = None, None, None, None
    if table.gain_table is not None:
        gain, uncertainty = _interpolated(folder / table.gain_table, frequency_hz)
    reflections = (table.source_reflection, table.reflection, campaign.device.reflection)
    if table.adapter is not None or any(reflections):
        source, horn, device = (_reflection(folder, name, frequency_hz) for name in reflections)
        adapter = None if table.adapter is None else _scattering(folder / table.adapter, frequency_hz, 2)
        path = substitution_path(source=source, horn=horn, device=device, adapter=adapter)
        if campaign.device.reflection is not None:
            loss = np.asarray(-power_db(np.maximum(1.0 - np.abs(device) ** 2, 1e-12)))
    probe = probe_of(campaign, frequency_hz) if any(table.offset_mm) else None
    stored, stored_at_s = None, None
    if table.method == "stored":
        from colure.app.services.stored_calibration import read_calibration

        stored, stored_at_s = read_calibration(campaign, frequency_hz)
    if gain is None and path is None and probe is None and stored is None:
        return None
    end = None if table.source_reflection is None else _reflection(folder, table.source_reflection, frequency_hz)
    return ReferenceData(gain, uncertainty, path, loss, stored, stored_at_s, probe=probe, source=end)


def _interpolated(path: Path, frequency_hz: FloatArray) -> tuple[FloatArray, float]:
    """Return (gain in dBi, largest expanded uncertainty in dB) of a table over the band."""
    if not path.is_file():
        raise InputError(
            [f"{path.name}: cannot be read: there is no such file in {path.parent} (reference.gain_table)"]
        )
    values, lines = read_numbers(path, dict(zip(HEADER, ("GHz", "dBi", "dB"), strict=True)))
    _require_meant(path.name, values, lines, frequency_hz)
    low, high = 1e9 * values[0, 0], 1e9 * values[-1, 0]
    _require_covered(path, low, high, frequency_hz)
    gain = np.interp(frequency_hz, 1e9 * values[:, 0], values[:, 1])
    return np.asarray(gain), float(values[:, 2].max())


def _require_meant(name: str, values: FloatArray, lines: tuple[int, ...], frequency_hz: FloatArray) -> None:
    """Raise `InputError` for tables out of order, in another unit, or with values that no horn has."""
    if len(values) == 0:
        raise InputError([f"{name}: 0 rows: must hold at least 1 (frequencies)"])
    faults = [
        f"{name}: line {lines[i + 1]}: frequency_ghz = {values[i + 1, 0]:g}: must be above the {values[i, 0]:g} of the row before (GHz)"
        for i in np.flatnonzero(np.diff(values[:, 0]) <= 0.0)
    ]
    for column, low, high, unit in ((1, -20.0, 80.0, "dBi"), (2, 0.001, 5.0, "dB, expanded, k = 2")):
        wrong = np.flatnonzero((values[:, column] < low) | (values[:, column] > high))
        faults += [
            f"{name}: line {lines[i]}: {HEADER[column]} = {values[i, column]:g}: must be from {low:g} to {high:g} {unit}"
            for i in wrong
        ]
    middle = 1e-9 * float(np.mean(frequency_hz))
    for unit, factor in (("Hz", 1e-9), ("MHz", 1e-3)):
        if values[0, 0] > 30.0 * middle and 0.3 < factor * values[0, 0] / middle < 3.0:
            faults.append(
                f"{name}: frequency_ghz = {values[0, 0]:g}: would be {values[0, 0]:g} GHz; {values[0, 0]:g} {unit} is {factor * values[0, 0]:g} in this column"
            )
    if faults:
        raise InputError(faults[:20])


def _require_covered(path: Path, low_hz: float, high_hz: float, frequency_hz: FloatArray) -> None:
    if frequency_hz.min() < low_hz - 1.0 or frequency_hz.max() > high_hz + 1.0:
        raise InputError(
            [
                f"{path.name}: covers {low_hz / 1e9:g} to {high_hz / 1e9:g} GHz, the record needs "
                f"{frequency_hz.min() / 1e9:g} to {frequency_hz.max() / 1e9:g} GHz"
            ]
        )


def _network(path: Path, ports: int = 2) -> Any:
    """Read a Touchstone file of so many ports."""
    import skrf

    if require_regular(path, largest_bytes=LARGEST_TABLE_BYTES) == 0:
        raise InputError([f"{path.name}: is empty, must hold a Touchstone table"])
    try:
        network = skrf.Network(str(path))
    except Exception as error:  # the reader raises whatever its parser meets
        raise InputError([f"{path.name}: cannot be read as Touchstone: {error}"]) from None
    if network.f.size == 0:
        raise InputError([f"{path.name}: holds no frequencies, needs at least 1 (frequencies)"])
    if network.nports != ports:
        raise InputError([f"{path.name}: {network.nports} ports, must be {ports} (ports)"])
    return network


def _reflection(folder: Path, name: str | None, frequency_hz: FloatArray) -> ComplexArray:
    """Return the reflection coefficient that a one-port file holds; zero where no file is named."""
    if name is None:
        return np.zeros(frequency_hz.size, complex)
    return _scattering(folder / name, frequency_hz, 1)[:, 0, 0]


def _scattering(path: Path, frequency_hz: FloatArray, ports: int) -> ComplexArray:
    """Return scattering matrices (frequency, port, port), interpolated in level and phase."""
    network = _network(path, ports)
    _require_covered(path, float(network.f[0]), float(network.f[-1]), frequency_hz)
    flat = network.s.reshape(network.f.size, -1)
    level = np.log(np.maximum(np.abs(flat), 1e-12))
    phase = np.unwrap(np.angle(flat), axis=0)
    columns = [
        np.exp(np.interp(frequency_hz, network.f, a) + 1j * np.interp(frequency_hz, network.f, b))
        for a, b in zip(level.T, phase.T, strict=True)
    ]
    return np.stack(columns, axis=-1).reshape(frequency_hz.size, ports, ports)


def three_antenna_tables(
    files: tuple[Path, Path, Path],
    *,
    range_m: float,
    phase_centre_mm: str,
    uncertainty_db: float,
    folder: Path,
    accept: frozenset[str] = frozenset(),
) -> list[Path]:
    """Write the gain tables of three antennas from their pairs; refuses to overwrite.

    Parameters
    ----------
    accept
        With "radius" the distance is right, whatever the phase of the files says.

    Raises
    ------
    InputError
        If the files differ in frequencies, are no two-ports, turn their phase over another distance, or a table is there already.
    """
    from colure.analysis.setup.three_antenna import AntennaPair, three_antenna_gains

    networks = [_network(path) for path in files]
    frequency = np.asarray(networks[0].f, float)
    for path, network in zip(files, networks, strict=True):
        if network.f.shape != frequency.shape or not np.allclose(network.f, frequency):
            raise InputError([f"{path.name}: frequencies differ from those of {files[0].name} (Hz)"])
    try:
        first, second, third = (1e-3 * float(part) for part in phase_centre_mm.split(","))
    except ValueError:
        raise InputError([f"phase_centre_mm = {phase_centre_mm!r}: must be three numbers a,b,c (mm)"]) from None
    one, two, three = (AntennaPair(n.s[:, 1, 0], n.s[:, 0, 0], n.s[:, 1, 1]) for n in networks)
    if "radius" not in accept:
        _require_range(files, (one, two, three), frequency, range_m)
    try:
        gains = three_antenna_gains(
            (one, two, three), frequency, distance_m=range_m, phase_centre_m=(first, second, third)
        )
    except ValueError as error:
        raise InputError([str(error)]) from None
    targets = [folder / f"antenna-{number}.csv" for number in (1, 2, 3)]
    taken = [path.name for path in targets if path.exists()]
    if taken:
        raise InputError([f"{folder}: holds {', '.join(taken)} already; choose another `folder`"])
    folder.mkdir(parents=True, exist_ok=True)
    for target, gain in zip(targets, gains.gain_dbi, strict=True):
        with whole_file(target) as out:
            writer = csv.writer(out)
            writer.writerow(HEADER)
            writer.writerows(
                [f"{f / 1e9:.9g}", f"{g:.5f}", f"{uncertainty_db:g}"] for f, g in zip(frequency, gain, strict=True)
            )
    return targets


def _require_range(
    files: tuple[Path, Path, Path], pairs: tuple[AntennaPair, ...], frequency: FloatArray, range_m: float
) -> None:
    """Raise `InputError` where the phase of S21 turns over another distance than the declared one: its gains would be as wrong."""
    from colure.analysis.setup.three_antenna import path_off_m

    faults = []
    for path, pair in zip(files, pairs, strict=True):
        off = path_off_m(pair, frequency, range_m)
        if abs(off) > DELAY_SHARE * range_m + DELAY_M:
            faults.append(
                f"{path.name}: range = {range_m:g} m: the phase of S21 turns over frequency as over {range_m + off:.3g} m, which may be off "
                f"by {DELAY_SHARE * range_m + DELAY_M:.3g} m (delay of both antennas); if the range is right: accept `radius`"
            )
    if faults:
        raise InputError(faults)


def probe_of(campaign: Campaign, frequency_hz: FloatArray) -> Expansion | None:
    """Return the probe's expansion if the chamber names its pattern.

    Raises
    ------
    InputError
        If the file cannot be read, is no whole sphere, or does not cover the frequencies.
    """
    from colure.analysis.steps.far_field import load_probe, probe_from
    from colure.model.probe_door import PREFIX, probe_pattern

    named = campaign.chamber.probe.pattern
    if named is None:
        return None
    try:
        if named.startswith(PREFIX):
            return probe_from(probe_pattern(named, frequency_hz), named, np.asarray(frequency_hz, float))
        return load_probe(campaign.folder / named, np.asarray(frequency_hz, float))
    except ValueError as error:
        raise InputError([f"chamber.probe.pattern: {error}"]) from None


def require_reflection(campaign: Campaign) -> None:
    """Raise `InputError` if a campaign asks for the device's reflection and cannot measure it, with what is missing."""
    analyzer, device = campaign.chamber.analyzer, campaign.device
    if not campaign.goal.reflection:
        return
    faults = list[str]()
    if device.reflection is not None:
        faults.append(
            f"device.toml: reflection = {device.reflection!r}: must be left out with reflection = true in goal.toml: the run measures it"
        )
    if campaign.chamber.one_port is None:
        faults.append(
            "chamber.toml: [one_port]: missing; with reflection = true in goal.toml state what the one-port calibration of the "
            "device's port leaves: directivity_db, match_db, tracking_db (dB)"
        )
    if is_power_only(campaign):
        faults.append(
            f"chamber.toml: analyzer.profile = {analyzer.profile!r}: a power-only receiver reads no reflection: must be an "
            "analyzer with phase, or leave reflection out of goal.toml"
        )
    elif (words := vector_words(campaign)) is not None and not words.reflection:
        faults.append(
            f"{analyzer.profile}.toml: reflection: missing; must be the query of the corrected reflection of the device's "
            "port (S11), or leave reflection out of goal.toml"
        )
    if faults:
        raise InputError(faults)


def require_reference(campaign: Campaign) -> None:
    """Raise `InputError` if a file of the reference does not cover a plan's frequencies: no evaluation could make that good."""
    try:
        reference_of(campaign, campaign.goal.frequency_hz)
    except InputError as error:
        way_out = "; give a table of this band, narrow the frequencies of goal.toml, or reference.method = 'none' for a relative pattern"
        raise InputError(
            [
                one.replace("the record needs", "goal.toml asks for") + way_out if ": covers " in one else one
                for one in error.faults
            ]
        ) from None


def require_bands(campaign: Campaign, made: Plan) -> None:
    """Raise `InputError` if a plan's sweep has segments and the receiver has no words for them, with the word that is missing."""
    analyzer, count = campaign.chamber.analyzer, len(told_segments(made.settings))
    if not count:
        return
    own = sorted(
        {
            name
            for band in campaign.goal.band
            for name in ("if_bandwidth_hz", "power_dbm")
            if getattr(band, name) is not None
        }
    )
    if is_power_only(campaign):
        if own:
            raise InputError(
                [f"goal.toml: band: {', '.join(own)}: must be left out with a power-only receiver (analyzer.profile = "
                 f"{analyzer.profile!r}): it has one bandwidth and one power"]
            )  # fmt: skip
    # A driver says whether it takes segments when it is opened.
    elif (words := vector_words(campaign)) is not None and words.lacks_for_segments:
        raise InputError(
            [f"{analyzer.profile}.toml: {words.lacks_for_segments}: missing; goal.toml asks for {count} segments in one sweep: add the "
             "words of your analyzer, or ask for one evenly spaced band and one power (start_ghz, stop_ghz, points)"]
        )  # fmt: skip


def require_probe(campaign: Campaign) -> None:
    """Raise `InputError` if a plan's band is not that of the probe's pattern, with the way out."""
    from colure.model.files import open_dataset
    from colure.model.probe_door import PREFIX

    named, goal = campaign.chamber.probe.pattern, campaign.goal
    # Without phase, or without a transform, the pattern of the probe is not asked for.
    if named is None or named.startswith(PREFIX) or goal.scan is not None or is_power_only(campaign):
        return
    known, wanted = open_dataset(campaign.folder / named)["frequency"].values, goal.frequency_hz
    if wanted.min() < known.min() - 1.0 or wanted.max() > known.max() + 1.0:
        raise InputError(
            [f"chamber.toml: probe.pattern = {named!r}: covers {known.min() / 1e9:g} to {known.max() / 1e9:g} GHz, goal.toml asks for "
             f"{wanted.min() / 1e9:g} to {wanted.max() / 1e9:g} GHz: name a pattern of this band, narrow the band, or leave "
             "probe.pattern out (the probe then counts as an ideal dipole)"]
        )  # fmt: skip
