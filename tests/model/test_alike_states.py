"""States that differ by capital letters only are refused: results lie in folders of their names (common practice, no source)."""

from __future__ import annotations

import pytest

from colure.errors import InputError
from colure.model.commands import read_commands
from colure.model.device import States
from colure.model.loading import validate


def test_of_a_device(tmp_path):
    with pytest.raises(InputError, match="'Left' and 'left' differ by capital letters only"):
        validate(States, {"names": ["Left", "right", "left"]}, source="device.toml")
    validate(States, {"names": ["Left", "right", "left2"]}, source="device.toml")


def test_of_a_file_of_codes(tmp_path):
    path = tmp_path / "codes.csv"
    path.write_text("state,element,phase_deg\nBeam,0,0\nbeam,0,90\n", encoding="utf-8")
    with pytest.raises(InputError, match=r"codes.csv: state: 'Beam' and 'beam' differ"):
        read_commands(path)
    path.write_text("state,element,phase_deg\nBeam,0,0\nbeam2,0,90\n", encoding="utf-8")
    assert read_commands(path).names == ("Beam", "beam2")
