"""`colure simulate`: the simulated chamber on loopback ports."""

from __future__ import annotations

import signal
import sys
from contextlib import suppress
from pathlib import Path

import click

from colure.app.terminal.say import say
from colure.model.admission import read_json
from colure.model.strict_json import json_text
from colure.model.whole import write_whole

#: Where the simulated axes of a campaign stood when its last session ended.
AXES_FILE = ".simulated-axes.json"


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@click.option("--analyzer-port", default=0, type=click.IntRange(0, 65535), help="TCP port; 0 takes a free one.")
@click.option("--axes-port", default=0, type=click.IntRange(0, 65535), help="TCP port; 0 takes a free one.")
@click.option("--serial-axes", is_flag=True, help="Also serve a stepper rack on a pseudo-terminal (not on Windows).")
@click.option("--until-stdin-closes", is_flag=True, help="End when standard input closes (for other programs).")
def simulate(folder: Path, analyzer_port: int, axes_port: int, serial_axes: bool, until_stdin_closes: bool) -> None:
    """Serve a simulated chamber on loopback ports: an analyzer, an axis controller, a device with states.

    It lives in real time (or faster, by time_factor in twin.toml).

    \b
    Example: colure simulate my-campaign --analyzer-port 5025 --axes-port 5026
    """
    from colure.model.campaign import Campaign
    from colure.twin.servers import start_twin

    twin = start_twin(
        Campaign.load(folder),
        analyzer_port=analyzer_port,
        axes_port=axes_port,
        serial_axes=serial_axes,
        # Whoever comes by himself lives in real time; our own commands may ask for virtual time.
        least_time_factor=0.0 if until_stdin_closes else 1.0,
    )
    if until_stdin_closes:
        # Ctrl-C in a terminal reaches us too; only our parent may end us.
        signal.signal(signal.SIGINT, signal.SIG_IGN)
    else:
        # A shell that started us in the background has it ignored; whoever sends it means it.
        signal.signal(signal.SIGINT, signal.default_int_handler)
    if until_stdin_closes:
        twin.stages.stand_at(_left_at(folder / AXES_FILE))
    served = twin.resources
    if twin.serial is not None:
        served["serial_axes"] = twin.serial.resource
    say(json_text(served))
    sys.stdout.flush()
    try:
        if until_stdin_closes:
            sys.stdin.read()
        else:
            say("simulated chamber is up; Ctrl-C ends it", err=True)
            while True:
                signal.pause() if hasattr(signal, "pause") else input()
    except (KeyboardInterrupt, EOFError):
        pass
    finally:
        if until_stdin_closes:
            _leave_at(folder / AXES_FILE, twin.stages.rest_positions())
        twin.close()


def _left_at(path: Path) -> dict[str, float]:
    """Return where the last session left the simulated axes; a real positioner remembers that by itself."""
    try:
        positions = read_json(path)
        return {str(name): float(place) for name, place in positions.items()}
    except (OSError, ValueError, TypeError, AttributeError):
        return {}


def _leave_at(path: Path, positions_deg: dict[str, float]) -> None:
    # A folder that cannot be written has no next session to tell anything; one that begins right now reads all of it or what was before.
    with suppress(OSError):
        write_whole(path, json_text(positions_deg))
