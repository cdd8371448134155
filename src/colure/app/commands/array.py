"""`colure codes`, `synthesize`, `embedded` and `calibrate-array`: an array's elements and beams from the states of one run."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from colure.app.commands.as_measured import campaign_told, own_run
from colure.app.commands.numbers import FiniteRange
from colure.app.terminal.say import say
from colure.errors import CHECK_FAILED
from colure.model.strict_json import json_text
from colure.model.whole import write_whole

run_option = click.option("--run", "run_name", default="first", show_default=True, help="Name of the run.")
json_option = click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of a table.")


@click.command()
@click.argument("folder", type=click.Path(path_type=Path))
@click.option("--method", type=click.Choice(["codes", "toggle", "rotate"]), default="codes", show_default=True,
              help="Orthogonal codes; one element at a time at another command; one element at a time through a full turn.")  # fmt: skip
@click.option("--elements", type=click.IntRange(1, 40000), help="Number of elements; [elements] of device.toml by default.")  # fmt: skip
@click.option("--commands", default="180", show_default=True,
              help="Commands besides 0 deg: phases in degrees and `off`; 45,90,180,off shows every bit alone.")  # fmt: skip
@click.option("--steps", type=click.IntRange(4, 360), default=8, show_default=True, help="Steps of a full turn (method rotate).")  # fmt: skip
@click.option("--order", type=click.IntRange(1, 4096), help="Number of code states; the smallest above the number of elements by default.")  # fmt: skip
@click.option("--beams", type=click.Path(path_type=Path), help="CSV of states to measure too, such as beams to compare with.")  # fmt: skip
@json_option
def codes(
    folder: Path,
    method: str,
    elements: int | None,
    commands: str,
    steps: int,
    order: int | None,
    beams: Path | None,
    as_json: bool,
) -> None:
    """Write codes.csv: what every element of an array is told in every state, so that one run shows each element.

    Codes need the fewest states and average their noise. Toggling tells one element at a time. Rotating needs no phase.

    \b
    Examples:
      colure codes my-array
      colure codes my-array --method rotate --steps 8
    """
    from typing import cast

    from colure.app.services.codes import CodeMethod, write_codes

    target, made = write_codes(
        folder, cast("CodeMethod", method), elements=elements, commands=commands, steps=steps, order=order, beams=beams
    )  # fmt: skip
    if as_json:
        say(json_text({"file": str(target), "states": len(made.names), "elements": made.elements}))
        return
    say(f"wrote {target}: {len(made.names)} states of {made.elements} elements")
    say(f'device.toml reads it with codes = "{target.name}" in [states]; leave names out')


@click.command()
@click.argument("folder", type=click.Path(path_type=Path))
@run_option
@click.option("--weights", type=click.Path(path_type=Path), help="CSV of beams: state, element, phase_deg and level_db, or re and im.")  # fmt: skip
@click.option("--against", multiple=True, help="A measured state to hold against the sum of the others; may be repeated.")  # fmt: skip
@click.option("--pattern", type=click.Path(path_type=Path), help="Write the pattern of the only beam to this file (.nc).")  # fmt: skip
@json_option
def synthesize(
    folder: Path, run_name: str, weights: Path | None, against: tuple[str, ...], pattern: Path | None, as_json: bool
) -> None:
    """Add the states of a run up to any beam, with intervals; or hold measured beams against the sum of the other states.

    Exit code 1: a measured beam differs from its sum by more than noise and declared commands' errors explain, or the
    states contradict what was declared.

    \b
    Examples:
      colure synthesize my-array --weights codebook.csv
      colure synthesize my-array --against broadside --against tilted
    """
    from colure.app.services.synthesizing import hold_against
    from colure.app.services.synthesizing import synthesize as add_up
    from colure.errors import InputError

    if (weights is None) == (not against):
        raise InputError(["weights: give either a CSV of beams, or states with --against (one of the two)"])
    own = own_run(folder, run_name)
    if weights is None:
        array, held = hold_against(*own, against)
        if as_json:
            say(json_text({"held": [{**one.__dict__, "within": one.within} for one in held], "cautions": array.cautions}))  # fmt: skip
        else:
            for one in held:
                say(
                    f"{one.state}: measured and synthesized differ by {one.difference_db:.1f} dB rms of the peak; noise and commands' errors let "
                    f"expect {one.expected_db:.1f} dB, at most {one.limit_db:.1f} dB (95 %): {'within' if one.within else 'OUTSIDE'}"
                )
        good = all(one.within for one in held)
    else:
        array, beams = add_up(*own, weights, pattern=pattern)
        good = True
        if as_json:
            say(json_text({
                "beams": [{"name": one.name, "noise_factor": one.noise_factor, "figures": [f.as_dict() for f in one.figures]} for one in beams],
                "cautions": array.cautions,
            }))  # fmt: skip
        else:
            from colure.app.terminal.array_screens import show_beams

            show_beams(beams)
            if pattern is not None:
                say(f"wrote {pattern}")
    _told(array.cautions, quiet=as_json)
    sys.exit(0 if good and not array.contradicted else CHECK_FAILED)


@click.command()
@click.argument("folder", type=click.Path(path_type=Path))
@run_option
@click.option("--out", type=click.Path(path_type=Path), help="File to write (.nc); embedded.nc in the run's folder by default.")  # fmt: skip
@click.option("--step-deg", type=FiniteRange(0.5, 15.0), default=3.0, show_default=True, help="Grid of the patterns.")  # fmt: skip
@json_option
def embedded(folder: Path, run_name: str, out: Path | None, step_deg: float, as_json: bool) -> None:
    """Write every element's embedded pattern, complex and in the device frame, with its errors.

    An element is what its commands turn, on the scale of the whole array's input power. Exit code 1: the states contradict what was
    declared.

    \b
    Example: colure embedded my-array --run first
    """
    from colure.app.services.array_elements import embedded as write
    from colure.app.storage.folders import run_folder

    run = run_folder(folder, run_name)
    target = run.path / "embedded.nc" if out is None else out
    array, elements = write(campaign_told(folder, run), run, target, step_deg=step_deg)
    if as_json:
        say(json_text({"file": str(target), "elements": [one.__dict__ for one in elements], "cautions": array.cautions}))  # fmt: skip
    else:
        from colure.app.terminal.array_screens import show_elements

        show_elements(elements)
        say(f"wrote {target}")
    _told(array.cautions, quiet=as_json)
    sys.exit(CHECK_FAILED if array.contradicted else 0)


@click.command(name="calibrate-array")
@click.argument("source", type=click.Path(path_type=Path))
@run_option
@click.option("--power-only", is_flag=True, help="Use the power of a run alone: states in which one element turns.")
@click.option("--out", type=click.Path(path_type=Path), help="CSV to write.")
@json_option
def calibrate_array(source: Path, run_name: str, power_only: bool, out: Path | None, as_json: bool) -> None:
    """Tell level and phase of every element, and what each command does beyond what it was told; write the table as CSV.

    SOURCE is a campaign folder, or a CSV of powers while one element at a time turns (element, phase_deg, power_db or power_mw).
    Powers are read by the rotating-element electric-field vector method. Exit code 1: something cannot be told, or does not add up.

    \b
    Examples:
      colure calibrate-array my-array --out calibration.csv
      colure calibrate-array powers.csv --out calibration.csv
    """
    from colure.app.services import array_elements, array_powers
    from colure.app.storage.folders import require_free

    if out is not None:
        require_free(out)
    if source.suffix.lower() == ".csv":
        rows, cautions = array_powers.from_table(source)
        good = not cautions
    elif power_only:
        rows, cautions = array_powers.from_run(*own_run(source, run_name))
        good = not cautions
    else:
        array, rows = array_elements.calibrated(*own_run(source, run_name))
        cautions, good = array.cautions, not array.contradicted
    if out is not None:
        write_whole(out, array_elements.text_of(rows))
    if as_json:
        say(json_text({"rows": [one.__dict__ for one in rows], "cautions": cautions}))
    else:
        from colure.app.terminal.array_screens import show_calibration

        show_calibration(rows)
        if out is not None:
            say(f"wrote {out}")
    _told(cautions, quiet=as_json)
    sys.exit(0 if good and not any(one.remark for one in rows) else CHECK_FAILED)


def _told(cautions: list[str], *, quiet: bool) -> None:
    for one in cautions:
        if not quiet:
            say(one)
