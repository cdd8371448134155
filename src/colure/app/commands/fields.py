"""`colure process` and `colure convert`: records and field files into patterns."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Any

import click

from colure.app.commands.as_measured import campaign_told
from colure.app.commands.batch import BatchOptions, batch_options, run_batch_command, scale_out
from colure.app.commands.numbers import FiniteRange
from colure.app.scale.threads import one_thread
from colure.app.terminal.say import say
from colure.model.strict_json import json_text


def _words(_: object, __: object, text: str) -> frozenset[str]:
    return frozenset(word for word in text.split(",") if word)


slant_option = click.option(
    "--slant-deg",
    type=FiniteRange(-180.0, 180.0),
    help="Co-polar direction of a file's field, from x towards y; by default x or y, the stronger.",
)


def refuse_slant(slant_deg: float | None) -> None:
    """Raise `InputError` if a co-polar direction is given of a run, whose device says it."""
    from colure.errors import InputError

    if slant_deg is not None:
        raise InputError([f"--slant-deg = {slant_deg:g}: only for a file; device.toml says it for a run (deg)"])


accept_option = click.option(
    "--accept",
    default="",
    callback=_words,
    help="Say that numbers are right which look wrong: any of frequency,radius,angles,duplicates,poles.",
)


@click.command()
@click.argument("sources", nargs=-1)
@click.option(
    "--run", "run_name", help="Name of the run, or a pattern of names; `first` of one folder, all of several."
)
@click.option("--to", "destination", type=click.Choice(["far-field"]), help="What to make of a field file.")
@click.option("--order", type=click.IntRange(1, 2000), help="Order of the expansion; chosen from the data by default.")
@click.option(
    "--step-deg",
    type=FiniteRange(0.05, 30.0),
    help="Grid of the result; 1 for a field file, for --scheduler the coarsest of 1 to 6 that holds all waves.",
)
@click.option("--origin-m", type=str, help="x,y,z: phase reference of the result and centre of --keep-radius-m.")
@click.option("--keep-radius-m", type=FiniteRange(1e-6, 1e3), help="Keep only waves from inside this sphere.")
@accept_option
@click.option("--probe", "probe_file", type=click.Path(path_type=Path), help="Far field of the probe, .nc or .csv.")
@click.option("--probe-port-2", type=click.Path(path_type=Path), help="Far field of a second port in the same frame.")
@click.option(
    "--probe-uncertainty-db",
    type=FiniteRange(0.0, 3.0),
    help="How far the probe's pattern (a dipole's without --probe) may be off, 10 deg off its axis; 0: a computed field.",
)
@click.option("--noise-db", type=FiniteRange(-300.0, 0.0), help="Noise of one sample, dB of the largest sample.")
@click.option("--position-mm", type=FiniteRange(0.0, 1e3), help="Standard uncertainty of a sample's place.")
@click.option("--angle-deg", type=FiniteRange(0.0, 10.0), help="Standard uncertainty of a sample's angles.")
@click.option(
    "--error-limit-db",
    type=FiniteRange(-300.0, 0.0),
    default=-40.0,
    show_default=True,
    help="Error of a determined direction, dB of the peak.",
)
@click.option("--amplitude-only", is_flag=True, help="Use amplitudes of two or more spheres, no phase (experimental).")
@click.option("--start", type=click.Path(path_type=Path), help="With --amplitude-only: far field like the device's.")
@click.option("--size-mm", type=str, help="x,y,z: with --amplitude-only, sides of the box that holds all sources.")
@click.option("--centre-mm", type=str, help="x,y,z: with --amplitude-only, centre of that box; 0,0,0 by default.")
@click.option("--state", "state_name", help="One state of a device that has several; all of them by default.")
@batch_options
@click.option("--record", help="Path or URL of the run's record, if it lies elsewhere (with --scheduler).")
@click.option(
    "--memory-gib",
    type=FiniteRange(0.5, 1024.0),
    default=2.0,
    show_default=True,
    help="What one worker may take (with --scheduler).",
)
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of tables.")
def process(
    sources: tuple[str, ...],
    run_name: str | None,
    destination: str | None,
    order: int | None,
    step_deg: float | None,
    origin_m: str | None,
    keep_radius_m: float | None,
    accept: frozenset[str],
    probe_file: Path | None,
    probe_port_2: Path | None,
    probe_uncertainty_db: float | None,
    noise_db: float | None,
    position_mm: float | None,
    angle_deg: float | None,
    error_limit_db: float,
    amplitude_only: bool,
    start: Path | None,
    size_mm: str | None,
    centre_mm: str | None,
    state_name: str | None,
    batch: BatchOptions,
    record: str | None,
    memory_gib: float,
    as_json: bool,
) -> None:
    """Turn a run's record, or a file of near fields, into a far-field pattern; or many runs at once.

    Grids that cover the whole sphere take the fast path; anything else (scattered directions,
    a radius per point, part of the sphere) is fitted by least squares. The result holds the error of
    every direction (`error_bound`, coverage factor 2) from noise, truncation, positions and what the
    data leave open. Directions that the data do not determine are marked (`support`) and written as
    nan to CSV.

    With --probe the file holds what a real probe received with its x axis along theta (e_theta) and
    along phi (e_phi). The first-order correction is used where it loses less than the noise of the data,
    else every azimuthal order of the probe. Without it an elementary dipole is taken for the probe: no stated error
    holds what that costs, and the result says how much usual probes would change. --probe-uncertainty-db states it.

    --amplitude-only finds the phase from amplitudes on two or more spheres. It starts from a far field that resembles
    the device (--start). It gives no error of the field, no delay and no phase over frequency. It writes nothing and
    ends with exit code 1 where the checks of the result fail.

    Several folders, a glob, a run folder or @list make a batch: what did not change since last time is
    kept, what fails is told and left out. --scheduler cuts one large record into states and blocks of
    frequencies for threads, a local cluster or a Dask scheduler; patterns.zarr holds the result.

    \b
    Examples:
      colure process my-campaign --run first
      colure process 'campaigns/*' --table patterns.csv
      colure process my-campaign --scheduler local --workers 2
      colure process near.csv far.nc --to far-field
      colure process near.nc far.nc --to far-field --origin-m 0,0,-0.03 --keep-radius-m 0.05
      colure process near.nc far.nc --probe probe.nc --position-mm 0.1
      colure process --amplitude-only near-1.nc near-2.nc far.nc --start design.nc --size-mm 26,26,4
    """
    from colure.errors import InputError

    folder, name = Path(sources[0] if sources else "."), run_name or "first"
    if not amplitude_only and (start or size_mm or centre_mm):
        raise InputError(["--start, --size-mm, --centre-mm: go with --amplitude-only"])
    if amplitude_only:
        if probe_file or probe_port_2 or origin_m or keep_radius_m:
            raise InputError(["--amplitude-only: goes without --probe, --origin-m and --keep-radius-m"])
        _amplitudes(
            [Path(one) for one in sources],
            start,
            size_mm,
            centre_mm,
            order,
            step_deg,
            noise_db,
            accept,
            as_json=as_json,
        )
        return
    if destination is not None or (len(sources) == 2 and sources[0].endswith((".nc", ".csv"))):
        from colure.app.services.converting import FileUncertainty, transform_file

        if len(sources) != 2:
            raise InputError([f"--to: {len(sources)} files, must be two: the near field's and the result's"])
        declared = FileUncertainty(
            noise_db=noise_db, position_mm=position_mm or 0.0, angle_deg=angle_deg or 0.0,
            error_limit_db=error_limit_db, probe_db=probe_uncertainty_db,
        )  # fmt: skip
        probes = [one for one in (probe_file, probe_port_2) if one is not None]
        if probe_port_2 is not None and probe_file is None:
            raise InputError(["--probe-port-2: needs --probe for port 1"])
        place = None if origin_m is None else _point(origin_m, "--origin-m", 100.0, "m")
        words = transform_file(
            folder,
            Path(sources[1]),
            order=order,
            step_deg=step_deg or 1.0,
            origin_m=place,
            keep_radius_m=keep_radius_m,
            probes=probes,
            uncertainty=declared,
            accept=accept,
        )
        result = {"pattern": sources[1], "steps": words}
        say(json_text(result) if as_json else "\n".join([*words, f"pattern: {sources[1]}"]))
        return
    _refuse_for_runs({
        "--order": order, "--origin-m": origin_m, "--keep-radius-m": keep_radius_m, "--probe": probe_file, "--probe-port-2": probe_port_2,
        "--probe-uncertainty-db": probe_uncertainty_db, "--noise-db": noise_db, "--position-mm": position_mm, "--angle-deg": angle_deg,
    })  # fmt: skip
    one_thread()
    if batch.is_batch(sources, run_name):
        run_batch_command("process", sources, run_name, batch, as_json=as_json)
    elif batch.scheduler is not None:
        scale_out(folder, name, batch, record=record, memory_gib=memory_gib, step_deg=step_deg, as_json=as_json)
    else:
        _process_one(folder, name, state_name, as_json=as_json)


def _refuse_for_runs(given: dict[str, object]) -> None:
    """Raise `InputError` naming options that a run would leave unread: its campaign's files say these things."""
    from colure.errors import InputError

    faults = [
        f"{name} = {value}: goes with a field file and its result; a run takes this from its campaign's files"
        for name, value in given.items()
        if value is not None
    ]
    if faults:
        raise InputError(faults)


def _amplitudes(
    files: list[Path],
    start: Path | None,
    size_mm: str | None,
    centre_mm: str | None,
    order: int | None,
    step_deg: float | None,
    noise_db: float | None,
    accept: frozenset[str],
    *,
    as_json: bool,
) -> None:
    from colure.app.services.amplitudes import transform_amplitudes
    from colure.errors import CHECK_FAILED, GOOD, InputError

    if len(files) < 3:
        raise InputError([f"--amplitude-only: {len(files)} files, must be near fields on two spheres and the result"])
    if start is None or size_mm is None:
        raise InputError(
            ["--amplitude-only: needs --start (far field like the device's) and --size-mm (box of sources)"]
        )
    size = _point(size_mm, "--size-mm", 1e4, "mm")
    if min(size) <= 0.0:
        raise InputError([f"--size-mm = {size_mm!r}: every side must be larger than 0 mm"])
    words, believed = transform_amplitudes(
        files[:-1], files[-1], start=start, size_mm=size, order=order, step_deg=step_deg or 1.0, noise_db=noise_db,
        centre_mm=_point(centre_mm or "0,0,0", "--centre-mm", 1e4, "mm"), accept=accept,
    )  # fmt: skip
    result = {"pattern": str(files[-1]) if believed else None, "steps": words}
    last = f"pattern: {files[-1]}" if believed else "nothing written: the phase was not found"
    say(json_text(result) if as_json else "\n".join([*words, last]))
    sys.exit(GOOD if believed else CHECK_FAILED)


def _process_one(folder: Path, run_name: str, state_name: str | None, *, as_json: bool) -> None:
    from colure.app import services
    from colure.app.storage.folders import run_folder
    from colure.model.files import history

    run = run_folder(folder, run_name)
    campaign, written = campaign_told(folder, run), []
    states: list[str | None] = [state_name] if state_name else [*services.states_of(run)] or [None]
    for state in states:
        one = run.state(state)
        steps = history(services.process(campaign, one).pattern)
        written.append({"pattern": str(one.pattern), "state": state, "steps": steps})
        if not as_json:
            _print_steps(steps)
            say(f"pattern: {one.pattern}")
    if as_json:
        say(json_text(written[0] if len(written) == 1 else written))


def _print_steps(steps: list[dict[str, Any]]) -> None:
    """Print the recipe's steps, and what a person must know about them."""
    for step in steps:
        p = step["parameters"]
        words = step["step"]
        if words == "assemble":
            used, planned = p["slices"]
            if used < planned:
                words += f": COARSE, {used} of {planned} slices; azimuthal orders above {used - 1} are lost"
            if p["flagged_points"]:
                words += f"; {p['flagged_points']} points carry flags of the analyzer"
        elif words == "on-the-fly places":
            words += f": lag {p['lag_deg']:+.4f} deg (standard uncertainty {p['lag_uncertainty_deg']:.4f} deg)"
        say(words)


@click.command()
@click.argument("source", type=click.Path(path_type=Path))
@click.argument("target", type=click.Path(path_type=Path))
@click.option("--radius-m", type=FiniteRange(1e-9, 1e9), help="Radius of the sphere, if the CSV has no radius_m.")
@accept_option
@click.option("--far-field", is_flag=True, help="The CSV holds a far field, exp(-jkr)/r removed.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of tables.")
def convert(
    source: Path, target: Path, radius_m: float | None, far_field: bool, accept: frozenset[str], as_json: bool
) -> None:
    """Convert between tidy CSV and netCDF-4; the file endings say which way.

    The CSV has the header frequency_hz,theta_deg,phi_deg,e_theta_re,e_theta_im,e_phi_re,e_phi_im and
    optionally radius_m and weight; time factor exp(+jwt). A grid is recognized by itself. Commas, semicolons or tabs
    separate columns (with semicolons or tabs also decimal commas); UTF-8, UTF-16 and Latin-1 are read. Nothing is overwritten.

    \b
    Examples:
      colure convert near.csv near.nc --radius-m 1.2
      colure convert far.nc far.csv
    """
    from colure.app.services.converting import convert_file

    words = convert_file(source, target, radius_m=radius_m, far_field=far_field, accept=accept)
    say(json_text({"file": str(target), "found": words}) if as_json else f"{words}\nwrote {target}")


def _point(text: str, option: str, most: float, unit: str) -> tuple[float, float, float]:
    """Read x,y,z."""
    from colure.errors import InputError

    try:
        x, y, z = (float(part) for part in text.split(","))
    except ValueError:
        x = y = z = float("nan")
    if not all(-most <= value <= most for value in (x, y, z)):
        raise InputError([f"{option} = {text!r}: must be three numbers x,y,z from {-most:g} to {most:g} {unit}"])
    return x, y, z
