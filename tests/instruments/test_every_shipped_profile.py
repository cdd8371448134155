"""`colure conformance` on the command line for every profile that is shipped, each against an instrument that speaks its words."""

from __future__ import annotations

import json
import os
from contextlib import ExitStack, contextmanager
from importlib.resources import files

import pytest
from click.testing import CliRunner

from colure.app.cli import main
from colure.model.campaign import Campaign
from colure.twin.servers import start_twin
from tests.instruments import languages
from tests.instruments.peers import Motors, Terminal
from tests.ranges import CUT, range_campaign

pytestmark = pytest.mark.skipif(os.name == "nt", reason="pseudo-terminals")

ROLES = "".join(
    f'[[instruments]]\nrole = "{role}"\nname = "{name}"\n{more}'
    for role, name, more in (
        ("receiver", "analyzer", ""), ("axis-controller", "floor", ""), ("source", "generator", ""), ("switch", "box", ""),
        ("interlock", "door", ""), ("sensor", "air", ""), ("state", "beams", ""),
    )
)  # fmt: skip
BAND = ("--start-ghz", "24", "--stop-ghz", "24.1")
#: Profile -> who speaks its words: a simulated instrument by name, or a peer of the tests; and what else is said.
SPEAKERS = {
    "scpi-analyzer": ("analyzer", BAND),
    "scpi-power": ("analyzer", BAND),
    "scpi-power-meter": ("analyzer", BAND),
    "scpi-source": ("generator", BAND),
    "switch-line": ("box", ()),
    "contact-line": ("door", ()),
    "sensor-line": ("air", ()),
    "states-line": ("beams", ("--states", "0,1")),
    "gcode-axes": ("floor", ("--axes", "azimuth,roll,probe", "--move", "2", "--yes")),
    "stepper-rack": ("serial", ("--move", "2", "--yes")),
    "gcode-queued": (languages.QueuedGcode, ("--axes", "azimuth,roll,probe", "--move", "20", "--yes")),
    "gcode-waiting": (languages.WaitingGcode, ("--axes", "azimuth,roll,probe", "--move", "20", "--yes")),
}


@contextmanager
def speakers(tmp_path):
    """Serve all of them; yields their addresses by name."""
    folder = range_campaign(tmp_path / "c", ROLES, scan=CUT, twin="noise = false\ntime_factor = 4.0\n")
    with (folder / "device.toml").open("a", encoding="utf-8") as device:
        device.write('\n[states]\nnames = ["0", "1"]\n')
    campaign = Campaign.load(folder)
    with ExitStack() as stack:
        twin = start_twin(campaign, serial_axes=True)
        stack.callback(twin.close)
        at = {**twin.resources, "analyzer": twin.resources["analyzer"], "serial": twin.serial.resource}
        for peer in (languages.QueuedGcode, languages.WaitingGcode):
            motors = Motors(60.0)
            terminal = Terminal(lambda peer=peer, motors=motors: peer(motors))
            stack.callback(terminal.close)
            at[peer] = terminal.resource
        yield at


def test_every_shipped_profile_passes_on_an_instrument_that_speaks_it(tmp_path):
    shipped = {path.name.removesuffix(".toml") for path in files("colure.instruments.profiles").iterdir()
               if path.name.endswith(".toml")}  # fmt: skip
    assert shipped == set(SPEAKERS), "a profile that nobody tries"
    with speakers(tmp_path) as at:
        for profile, (who, more) in SPEAKERS.items():
            done = CliRunner().invoke(main, ["conformance", profile, "--resource", at[who], *more, "--json"])
            assert done.exit_code == 0, (profile, done.output)
            answers = json.loads(done.stdout)
            assert len(answers) >= 2 and not [one for one in answers if one["good"] is False], (profile, answers)
            print(profile, [(one["what"], one["good"]) for one in answers])


def test_every_shipped_profile_is_refused_by_an_instrument_that_speaks_another(tmp_path):
    """Each is asked of the next one's instrument (where the words differ), and none passes."""
    names = list(SPEAKERS)
    same = {("scpi-analyzer", "scpi-power"), ("scpi-power", "scpi-power-meter")}  # one instrument speaks all three
    with speakers(tmp_path) as at:
        for profile, other in zip(names, [*names[1:], names[0]], strict=True):
            if (profile, other) in same:
                continue
            more = [one for one in SPEAKERS[profile][1] if one not in ("--yes", "--move", "2", "20")]
            command = [
                "conformance",
                profile,
                "--resource",
                at[SPEAKERS[other][0]],
                *more,
                "--timeout-s",
                "0.3",
                "--json",
            ]
            done = CliRunner().invoke(main, command)
            assert done.exit_code in (1, 2, 3), (profile, other, done.output)
