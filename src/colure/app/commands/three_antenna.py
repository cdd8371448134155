"""`colure three-antenna`: gains from three Touchstone files of the three pairs."""

from __future__ import annotations

from pathlib import Path

import click

from colure.app.commands.fields import accept_option
from colure.app.commands.numbers import FiniteRange
from colure.app.terminal.say import say
from colure.model.strict_json import json_text

#: A range longer than this is asked about, metres.
MOST_RANGE_M = 200.0


@click.command(name="three-antenna")
@click.argument("one_two", type=click.Path(path_type=Path))
@click.argument("one_three", type=click.Path(path_type=Path))
@click.argument("two_three", type=click.Path(path_type=Path))
@click.option("--range-m", type=FiniteRange(0.01, 1e4), required=True, help="Between the reference planes.")
@click.option("--phase-centre-mm", default="0,0,0", show_default=True, help="In front of each reference plane.")
@click.option("--uncertainty-db", type=FiniteRange(0.001, 5.0), required=True, help="Expanded, k = 2, for the tables.")
@click.option("--folder", type=click.Path(path_type=Path), default=Path(), help="Where the three gain tables go.")
@accept_option
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of words.")
def three_antenna(
    one_two: Path,
    one_three: Path,
    two_three: Path,
    range_m: float,
    phase_centre_mm: str,
    uncertainty_db: float,
    folder: Path,
    accept: frozenset[str],
    as_json: bool,
) -> None:
    """Work out the gain of three antennas from the transmission of their pairs (Touchstone, two-port).

    Writes one gain table each, which chamber.toml can name as the reference's gain_table. The
    files must hold the same frequencies; S11 and S22 correct for mismatch.

    \b
    Example: colure three-antenna ab.s2p ac.s2p bc.s2p --range-m 3 --uncertainty-db 0.2
    """
    from colure.app.services import reference

    require_meant((one_two, one_three, two_three), range_m, accept)
    tables = reference.three_antenna_tables(
        (one_two, one_three, two_three),
        range_m=range_m,
        phase_centre_mm=phase_centre_mm,
        uncertainty_db=uncertainty_db,
        folder=folder,
        accept=accept,
    )
    if as_json:
        say(json_text([str(path) for path in tables]))
    else:
        say("\n".join(f"wrote {path}" for path in tables))


def require_meant(files: tuple[Path, ...], range_m: float, accept: frozenset[str]) -> None:
    """Raise `InputError` for a range that looks like millimetres, and for one file given as two pairs."""
    from colure.model.files import file_hash

    faults = []
    if range_m > MOST_RANGE_M and "radius" not in accept:
        faults.append(
            f"--range-m = {range_m:g}: would be {range_m:g} m; {range_m:g} mm is {1e-3 * range_m:g} m; if that is right: --accept radius"
        )
    seen: dict[str, Path] = {}
    for path in files:
        if not path.is_file():
            continue  # told with its name when it is read
        digest = file_hash(path)
        if digest in seen:
            faults.append(
                f"{path.name}: the same content as {seen[digest].name}; three pairs need three measurements (files)"
            )
        seen[digest] = path
    if faults:
        from colure.errors import InputError

        raise InputError(faults)
