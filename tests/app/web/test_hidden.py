"""What a page is told of a refusal names no folder of the server's."""

from __future__ import annotations

import json
from io import BytesIO
from pathlib import Path

from colure.app.web.guard.hidden import without
from colure.app.web.room import Room
from colure.app.web.scan.child import Teller


def test_the_words_of_a_scans_process_name_files_from_the_campaign_on():
    """The refusals of a run's folder and of its record name whole paths: on the command line that is what a person needs."""
    folder, out = Path("/srv/secret/panel 3"), BytesIO()
    teller = Teller(out, folder)
    words = f"{folder / 'runs' / 'first' / 'plan.json'}: cannot be written: No space left on device; nothing has moved"
    for kind in ("refused", "outcome", "warning"):
        teller.tell({"kind": kind, "text": words})
    teller.tell({"kind": "refused", "text": f"{folder}: cannot be written, and a run is kept there"})
    teller.close()
    lines = [json.loads(line) for line in out.getvalue().splitlines()]
    told = str(Path("runs", "first", "plan.json"))
    assert [one["text"] for one in lines[:3]] == [
        f"{told}: cannot be written: No space left on device; nothing has moved"
    ] * 3
    assert lines[3]["text"] == "panel 3: cannot be written, and a run is kept there"


def test_a_room_takes_out_the_folders_of_all_its_campaigns(tmp_path):
    one, inside = tmp_path / "one", tmp_path / "one" / "inside"
    inside.mkdir(parents=True)
    room = Room([one, inside])
    assert room.shown(f"{inside / 'goal.toml'}: x; {one}: y") == "goal.toml: x; one: y"
    room.jobs.close()
    assert without(one, "nothing to hide") == "nothing to hide"
