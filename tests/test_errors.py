"""Errors: an exit code each, one line for people, and the same lines on the other side of a process."""

from __future__ import annotations

import pickle
import socket

import pytest
from click.testing import CliRunner

import colure
from colure import errors
from colure.app.cli import main
from colure.app.commands import demo

#: Exit codes that scripts may trust (docs/explanation/architecture.md): 2 bad input, 3 instrument, journal or safety.
CODES = {
    "InputError": 2,
    "InstrumentError": 3,
    "MotionError": 3,
    "JournalError": 3,
    "AcquisitionError": 3,
    "GuardError": 3,
    "LockedError": 3,
}


def children(kind: type) -> set[type]:
    return {kind} | {deeper for child in kind.__subclasses__() for deeper in children(child)}


def test_every_error_has_the_exit_code_that_scripts_may_trust():
    import colure.acquire.station
    import colure.instruments.protocols  # noqa: F401 - the errors of lines and positions are children of these

    named = {name for name, one in vars(errors).items() if isinstance(one, type) and issubclass(one, Exception)}
    assert named == {"ColureError", *CODES}
    assert {name: getattr(errors, name).exit_code for name in CODES} == CODES
    lines = {one.__name__: one.exit_code for one in children(errors.InstrumentError)}
    assert {"LostError", "RefusedError", "HeldError", "DoorOpenError", "PositionError"} <= set(lines)
    assert set(lines.values()) == {3}


def test_bad_input_keeps_its_lines_from_one_process_to_another():
    error = errors.InputError(["goal.toml: points = 0: must be at least 1", "chamber.toml: range_length_m: missing"])
    again = pickle.loads(pickle.dumps(error))
    assert again.faults == error.faults and str(again) == str(error) and isinstance(again, ValueError)


@pytest.mark.parametrize("name", sorted(CODES))
def test_the_command_line_gives_each_error_one_line_and_its_code(name, monkeypatch):
    kind = getattr(errors, name)
    error = (
        kind(["azimuth_deg = 200: must be at most 170 (deg)"])
        if name == "InputError"
        else kind("axes: no answer within 2 s")
    )

    def fails(*_: object, **__: object) -> int:
        raise error

    monkeypatch.setattr(demo, "run_demo", fails)
    result = CliRunner().invoke(main, ["demo", "--json"])
    assert (result.exit_code, result.stdout, result.stderr) == (CODES[name], "", f"{error}\n")


@pytest.fixture
def closed_port():
    """A port of this computer on which nothing listens: it is bound and never listened on."""
    with socket.socket() as bound:
        bound.bind(("127.0.0.1", 0))
        yield bound.getsockname()[1]


@pytest.mark.parametrize("table", ["analyzer", "axes"])
def test_an_instrument_that_cannot_be_reached_gives_one_line_and_exit_3(small_campaign, closed_port, table):
    from colure.model.campaign import Campaign

    resource = f"TCPIP::127.0.0.1::{closed_port}::SOCKET"
    content = (small_campaign / "chamber.toml").read_text(encoding="utf-8")
    section = content.index(f"[{table}]")
    place = content.index('resource = "twin"', section)
    (small_campaign / "chamber.toml").write_text(
        content[:place] + f'resource = "{resource}"' + content[place + len('resource = "twin"') :], encoding="utf-8"
    )
    assert getattr(Campaign.load(small_campaign).chamber, table).resource == resource
    result = CliRunner().invoke(main, ["acquire", str(small_campaign), "--yes", "--json"])
    assert result.exit_code == 3 and "Traceback" not in result.output
    assert len(result.stderr.strip().splitlines()) == 1 and str(closed_port) in result.stderr
    with pytest.raises(colure.InstrumentError, match=str(closed_port)):
        colure.open_campaign(small_campaign).acquire("second", cautions_read=True)
