"""`colure probe-model`: the pattern of a probe from its dimensions, where nobody has calibrated it."""

from __future__ import annotations

from pathlib import Path

import click

from colure.app.commands.numbers import FINITE
from colure.app.terminal.say import say
from colure.model.strict_json import json_text

KINDS = ("waveguide", "horn", "cone", "dipole")


@click.command(name="probe-model")
@click.argument("kind", type=click.Choice(KINDS))
@click.argument("target", type=click.Path(path_type=Path))
@click.option("--band", required=True, help="GHz, such as 37-40; the file covers nothing else.")
@click.option("--a-mm", type=FINITE, help="Broad side, the H plane (waveguide, horn).")
@click.option("--b-mm", type=FINITE, help="Narrow side, the E plane (waveguide, horn).")
@click.option("--slant-e-mm", type=FINITE, help="From the apex to the aperture in the E plane (horn).")
@click.option("--slant-h-mm", type=FINITE, help="From the apex to the aperture in the H plane (horn).")
@click.option("--radius-mm", type=FINITE, help="Of the aperture (cone).")
@click.option("--slant-mm", type=FINITE, help="From the apex to the rim (cone).")
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of words.")
def probe_model(
    kind: str,
    target: Path,
    band: str,
    a_mm: float | None,
    b_mm: float | None,
    slant_e_mm: float | None,
    slant_h_mm: float | None,
    radius_mm: float | None,
    slant_mm: float | None,
    as_json: bool,
) -> None:
    """Write the pattern of a probe of this KIND as the file TARGET (.nc), from its dimensions.

    For a probe without a calibration of its own. A model is less sure than a measurement: state how well it is known in
    `probe.pattern_uncertainty_db`.

    \b
    Example: colure probe-model waveguide probe.nc --band 23.5-24.5 --a-mm 10.67 --b-mm 4.32
    """
    from colure.app.services.probe_models import write_probe_model
    from colure.app.services.starting import band_of

    start, stop = band_of(band)
    size = {"a_mm": a_mm, "b_mm": b_mm, "slant_e_mm": slant_e_mm, "slant_h_mm": slant_h_mm, "radius_mm": radius_mm,
        "slant_mm": slant_mm}  # fmt: skip
    model = write_probe_model(target, kind, start_ghz=start, stop_ghz=stop, size_mm=size)
    if as_json:
        say(json_text({**model.__dict__, "file": str(model.file)}))
        return
    say(f"probe: {model.file}, modelled, not measured: {model.source}")
    say(
        f"directivity {model.directivity_dbi:.1f} dBi at mid-band, {model.front_to_back_db:.0f} dB front to back; "
        f"power beyond a first-order probe {model.beyond_first_order_db:.0f} dB"
    )
    say(
        f'in chamber.toml: [probe] pattern = "{model.file.name}", and pattern_uncertainty_db = how well you trust it, such as 0.3'
    )
    say("range_length_m counts to the centre of its aperture")
