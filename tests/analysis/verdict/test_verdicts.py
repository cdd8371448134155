"""Verdicts: what passes, what fails, what cannot be decided, and what would decide it."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from colure.analysis.uncertainty.level_cuts import LevelCut
from colure.analysis.verdict.verdicts import judge, nearest_cuts, overall
from colure.errors import InputError
from colure.model.figure import NOT_TO_BE_USED, BudgetRow, Figure
from colure.model.loading import load
from colure.model.specification import Limit, Mask, Specification, load_specification


def gain(value: float, expanded: float = 0.25, frequency: float = 24e9) -> Figure:
    row = BudgetRow(term="reference gain", expanded=expanded, basis="declared")
    return Figure(
        name="gain_dbi",
        label="Peak gain",
        value=value,
        unit="dBi",
        frequency_hz=frequency,
        lower=value - expanded,
        upper=value + expanded,
        definition="",
        source="",
        budget=(row,),
    )


@pytest.mark.parametrize(
    ("value", "rule", "outcome"),
    [(21.3, "guard-band", "pass"), (20.7, "guard-band", "fail"), (21.1, "guard-band", "not decidable"),
     (20.9, "guard-band", "not decidable"), (21.01, "simple", "pass"), (20.99, "simple", "fail")],
)  # fmt: skip
def test_limits_follow_the_decision_rule(value, rule, outcome):
    """JCGM 106:2012: a guard band of the expanded uncertainty parts acceptance from rejection."""
    specification = Specification(name="s", decision=rule, limits=(Limit(figure="gain_dbi", at_least=21.0),))
    (found,) = judge(specification, [gain(value)], {}, {})
    assert found.outcome == outcome and found.margin == pytest.approx(value - 21.0)
    if outcome == "not decidable":
        assert found.needed == pytest.approx(abs(value - 21.0)) and "reference gain" in found.text


@pytest.mark.parametrize(
    ("value", "bound", "outcome"),
    [(21.5, {"at_least": 21.0}, "not decidable"), (20.5, {"at_least": 21.0}, "fail"),
     (20.9, {"at_least": 21.0}, "not decidable"), (20.5, {"at_most": 21.0}, "pass"),
     (21.5, {"at_most": 21.0}, "not decidable"), (22.1, {"at_most": 21.0}, "fail")],
)  # fmt: skip
def test_the_end_of_an_uneven_interval_that_points_to_the_limit_decides(value, bound, outcome):
    """JCGM 106:2012, 8.3: what lies between value and limit counts. Here 1 dB below the value and 0.2 dB above."""
    uneven = replace(gain(value), lower=value - 1.0, upper=value + 0.2)
    specification = Specification(name="s", decision="guard-band", limits=(Limit(figure="gain_dbi", **bound),))
    assert judge(specification, [uneven], {}, {})[0].outcome == outcome


@pytest.mark.parametrize("rule", ["guard-band", "simple"])
def test_a_figure_that_the_data_contradict_decides_nothing(rule):
    """A wrong number far on the good side must not pass."""
    against = replace(gain(25.0), use=NOT_TO_BE_USED, cautions=(f"{NOT_TO_BE_USED}: level 15 dB above the plan",))
    specification = Specification(name="s", decision=rule, limits=(Limit(figure="gain_dbi", at_least=21.0),))
    (found,) = judge(specification, [gain(22.0, frequency=25e9), against], {}, {})
    assert found.outcome == "not decidable" and "15 dB above the plan" in found.text


def test_both_bounds_and_bands():
    both = Specification(
        name="s", limits=(Limit(figure="gain_dbi", at_least=20.0, at_most=22.0, band_ghz=(23.9, 24.1)),)
    )
    assert judge(both, [gain(21.0), gain(30.0, frequency=25e9)], {}, {})[0].outcome == "pass"
    assert judge(both, [gain(22.5)], {}, {})[0].outcome == "fail"
    with pytest.raises(ValueError, match="not measured; there are gain_dbi"):
        judge(Specification(name="s", limits=(Limit(figure="xpd_db", at_least=20),)), [gain(21)], {}, {})


def test_a_band_without_a_measured_frequency_decides_nothing():
    elsewhere = Specification(
        name="s",
        limits=(Limit(figure="gain_dbi", at_least=20.0, band_ghz=(30.0, 31.0)),),
        masks=(Mask(name="m", points=((0.0, 0.0), (180.0, -10.0)), relative=True, band_ghz=(30.0, 31.0)),),
    )
    cuts = {24e9: [level_cut(pattern, 0.01)]}
    found = judge(elsewhere, [gain(21.0)], cuts, {24e9: 20.0})
    assert [one.outcome for one in found] == ["not decidable", "not decidable"]
    assert all("nothing was measured" in one.text for one in found)


def level_cut(level_db, expanded: float) -> LevelCut:
    """A cut with a side-lobe pattern in dB re the peak of 1 and one field uncertainty at all angles."""
    angle = np.linspace(-180.0, 180.0, 361)
    amplitude = 10 ** (level_db(angle) / 20)
    table = dict.fromkeys(("co", "cross", "total"), amplitude)
    return LevelCut(
        plane_deg=0.0,
        frequency_hz=24e9,
        angle_deg=angle,
        amplitude=table,
        expanded=dict.fromkeys(("co", "cross", "total"), np.full(361, expanded)),
        common_db=0.25,
    )


def pattern(angle):
    return np.where(np.abs(angle) < 10, -0.3 * np.abs(angle), -25.0 + 4.0 * (np.abs(np.abs(angle) - 30) < 0.5))


def mask(**more) -> Specification:
    points = ((0.0, 1.0), (9.5, 1.0), (9.5, -20.0), (180.0, -20.0))
    return Specification(
        name="s", masks=(Mask(**{"name": "m", "plane": "E", "relative": True, "points": points, **more}),)
    )


def test_masks_with_level_dependent_intervals():
    """The lobe at -21 dB is 1 dB inside a -20 dB mask: a field uncertainty of -50 dB decides, one of -35 dB does not."""
    fine, coarse = level_cut(pattern, 10 ** (-50 / 20)), level_cut(pattern, 10 ** (-35 / 20))
    assert judge(mask(), [], {24e9: [fine]}, {24e9: 0.0})[0].outcome == "pass"
    open_ = judge(mask(), [], {24e9: [coarse]}, {24e9: 0.0})[0]
    # 20 log(1 + 10^((-35 + 21)/20)) = 1.58 dB (section 7): more than the margin of 1 dB.
    assert open_.outcome == "not decidable" and open_.needed == pytest.approx(1.0, abs=1e-6)
    assert "now 1.58 dB" in open_.text
    high = level_cut(lambda a: pattern(a) + np.where(np.abs(a) > 20, 4.0, 0.0), 10 ** (-50 / 20))
    assert judge(mask(), [], {24e9: [high]}, {24e9: 0.0})[0].outcome == "fail"


def test_allowed_exceedances_are_counted():
    """Two of 361 angles stand 3 dB above the mask: allowed if 1 % may by 4 dB, not if only nearer angles than theirs may."""
    high = level_cut(lambda a: np.where(pattern(a) == -21.0, -17.0, pattern(a)), 1e-4)
    assert judge(mask(), [], {24e9: [high]}, {24e9: 0.0})[0].outcome == "fail"
    allowed = {"exceed_db": 4.0, "exceed_share": 0.01, "exceed_from_deg": 7.0}
    assert judge(mask(**allowed), [], {24e9: [high]}, {24e9: 0.0})[0].outcome == "pass"
    assert judge(mask(**{**allowed, "exceed_from_deg": 40.0}), [], {24e9: [high]}, {24e9: 0.0})[0].outcome == "fail"
    assert judge(mask(**{**allowed, "exceed_share": 0.001}), [], {24e9: [high]}, {24e9: 0.0})[0].outcome == "fail"
    lower = mask(side="lower", points=((0.0, -30.0), (180.0, -30.0)))
    assert judge(lower, [], {24e9: [high]}, {24e9: 0.0})[0].outcome == "pass"


def test_all_together():
    good, bad = (judge(Specification(name="s", decision="simple", limits=(Limit(figure="gain_dbi", at_least=x),)),
                 [gain(21)], {}, {})[0]
                 for x in (20, 22))  # fmt: skip
    assert overall([good]) == "pass" and overall([good, bad]) == "fail"


def test_a_bad_specification_is_told_field_by_field(tmp_path):
    path = tmp_path / "spec.toml"
    path.write_text('name = "s"\n[[masks]]\nname = "m"\nformula = "itu-r-s.465"\n', encoding="utf-8")
    with pytest.raises(InputError, match="diameter_mm: missing"):
        load(Specification, path)
    path.write_text('name = "s"\n[[masks]]\nname = "m"\npoints = [[10, 0], [5, 0]]\n', encoding="utf-8")
    with pytest.raises(InputError, match="must rise"):
        load(Specification, path)
    path.write_text('name = "s"\n', encoding="utf-8")
    with pytest.raises(InputError, match="at least one of"):
        load(Specification, path)


def test_masks_come_from_tables_beside_the_specification(tmp_path):
    """Header, numbers and rising angles are asked for; every fault names the file."""
    spec, table = tmp_path / "limits.toml", tmp_path / "mask.csv"
    spec.write_text('name = "s"\n[[masks]]\nname = "from a file"\nfile = "mask.csv"\nrelative = true\n', "utf-8")
    table.write_text("angle_deg,level_db\n10,-12\n30,-20\n180,-30\n", "utf-8")
    (mask,) = load_specification(spec).masks
    assert mask.points == ((10.0, -12.0), (30.0, -20.0), (180.0, -30.0)) and mask.relative
    for text, words in (
        ("angle,level\n1,2\n", "header must be angle_deg,level_db"), ("angle_deg,level_db\n10,x\n", "line 2: level_db = 'x': must be a finite number"),
        ("angle_deg,level_db\n30,-12\n10,-20\n", "must rise"), ("angle_deg,level_db\n300,-12\n310,-20\n", "180"),
        ("angle_deg,level_db\n10\n", "line 2: 1 cells, must be 2"),
    ):  # fmt: skip
        table.write_text(text, "utf-8")
        with pytest.raises(InputError, match=rf"mask\.csv.*{words}"):
            load_specification(spec)
    table.unlink()
    with pytest.raises(InputError, match=r"mask\.csv: cannot be read"):
        load_specification(spec)


@pytest.mark.parametrize(
    ("limit", "expanded_db", "outcome"),
    [(-26.0, -50, "pass"), (-24.0, -50, "fail"), (-26.0, -35, "not decidable"), (-24.0, -35, "not decidable")],
)
def test_a_mask_from_below_is_decided_by_the_other_end(limit, expanded_db, outcome):
    """JCGM 106:2012, 8.3, mirrored: the floor at -25 dB is 1 dB from the mask; errors of -35 dB are +2.4/-3.3 dB there (section 7)."""
    lower = mask(side="lower", points=((0.0, limit), (180.0, limit)))
    cuts = {24e9: [level_cut(pattern, 10 ** (expanded_db / 20))]}
    assert judge(lower, [], cuts, {24e9: 0.0})[0].outcome == outcome


def test_a_mask_is_drawn_with_the_ends_in_their_order():
    """20 log(1 +- 10^((-35 + 25)/20)) = +2.39 and -3.30 dB (standards sheet, section 7)."""
    (view,) = nearest_cuts(mask(), {24e9: [level_cut(pattern, 10 ** (-35 / 20))]}, {24e9: 0.0})
    floor = np.flatnonzero(view.level == view.level.min())[0]
    assert view.high[floor] - view.level[floor] == pytest.approx(2.39, abs=0.005)
    assert view.low[floor] - view.level[floor] == pytest.approx(-3.30, abs=0.005)
