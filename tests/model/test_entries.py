"""Every entry of every file says what it means."""

from __future__ import annotations

from colure.model.entries import entries

EVERY = {one.name: one for one in entries()}


def test_every_entry_has_a_meaning_and_a_type():
    assert [one.name for one in EVERY.values() if not one.meaning or not one.kind] == []


def test_one_entry_in_full():
    one = EVERY["chamber.range_length_m"]
    assert (one.kind, one.unit, one.limits, one.default) == ("number", "m", "from 0.05 to 1000", "required")
    assert "phase centre" in one.meaning
    assert EVERY["twin.device(horn).aperture_a_mm"].unit == "mm"
