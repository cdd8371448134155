"""Each error of each geometry is injected alone and must be found in the row of its name, as large as it is."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from colure.analysis.pipeline.recipe import default_recipe, process
from colure.analysis.uncertainty.alignment_causes import ALIGNMENT_CAUSES
from colure.analysis.uncertainty.trial import Trial, perturbations
from colure.app import services
from colure.app.services.reference import probe_of
from colure.app.services.rehearsal import record_of_rehearsal
from colure.model.chamber import SimulatedChamber
from tests.coverage.scenarios import AZIMUTH_OVER_ELEVATION, ONE, Scenario, four_by_four

PERFECT = {"noise": False, "crosstalk_db": -200.0, "probe_cross_polar_db": -200.0}
DEG, MM = 0.3, 0.05
#: What twin.toml calls an error, what chamber.toml calls its tolerance, and the row.
ROLL = {
    "theta_zero_deg": ("theta_zero_deg", "alignment: theta zero"),
    "roll_axis_tilt_deg": ("roll_axis_tilt_deg", "alignment: roll axis"),
}
TWO_AXES = {
    "theta_zero_deg": ("theta_zero_deg", "alignment: azimuth zero"),
    "elevation_zero_deg": ("elevation_zero_deg", "alignment: elevation zero"),
    "axes_square_deg": ("axes_square_deg", "alignment: axes not square"),
}
ELEVATION_OVER_AZIMUTH = {
    **AZIMUTH_OVER_ELEVATION,
    "geometry": "elevation-over-azimuth",
    "elevation": {**AZIMUTH_OVER_ELEVATION["elevation"], "min_deg": -185, "max_deg": 185},
}
GEOMETRIES = {
    "roll-over-azimuth": (None, ROLL),
    "azimuth-over-elevation": (AZIMUTH_OVER_ELEVATION, TWO_AXES),
    "elevation-over-azimuth": (ELEVATION_OVER_AZIMUTH, TWO_AXES),
}


@pytest.mark.parametrize("geometry", GEOMETRIES)
def test_each_error_is_found_in_its_own_row(tmp_path, geometry):
    """The row's change of the waves is the injected one within 3 %, and no other row resembles it as much."""
    positioner, errors = GEOMETRIES[geometry]
    chamber = {} if positioner is None else {"positioner": positioner}
    folder = Scenario(device=four_by_four(), goal=ONE, chamber=chamber).write(tmp_path / "campaign")
    campaign, plan = services.make_plan(folder)
    probe = probe_of(campaign, plan.frequency_hz)

    def measured(**truth):
        record = record_of_rehearsal(campaign, plan, truth=SimulatedChamber(**PERFECT, **truth))
        recipe = default_recipe(record, campaign.chamber, campaign.device).without("alignment")
        return process(record, campaign.chamber, campaign.device, probe=probe, recipe=recipe, grid_step_deg=30)

    clean = measured()
    tolerance = clean.budget.chamber.alignment.model_copy(update={
        **{name: DEG for name, _ in errors.values()}, "axes_offset_mm": MM,
    })  # fmt: skip
    inputs = replace(clean.budget, chamber=clean.budget.chamber.model_copy(update={"alignment": tolerance}),
                     declared_offset_mm=np.sqrt(3.0) * MM)  # fmt: skip
    trial = Trial(
        inputs, clean.expansion, inputs.figures.values(clean.expansion), inputs.figures.places(clean.expansion)
    )
    rows = {one.cause.row: one.changes for one in perturbations(trial, ALIGNMENT_CAUSES)}
    injected = {row: measured(**{name: DEG}) for name, (_, row) in errors.items()}
    offsets = np.eye(3) * MM
    cases = [(row, 0, done) for row, done in injected.items()]
    cases += [("alignment: axes offset", i, measured(axes_offset_mm=tuple(offsets[i]))) for i in range(3)]
    for row, which, done in cases:
        # The reference horn sits on the same axes: what is the same for it is calibrated out.
        seen = without(clean, done.expansion.coefficients - clean.expansion.coefficients)
        stated = without(clean, rows[row][which])
        off = float(np.linalg.norm(seen - stated) / np.linalg.norm(seen))
        like = {name: max(alike(seen, without(clean, one)) for one in changes) for name, changes in rows.items()}
        print(f"{geometry}, {row}[{which}]: {100 * off:.2f} % off; looks like it {like[row]:.4f}")
        assert off < 0.03
        others = [
            one for name, one in like.items() if name not in (row, "alignment: device pose", "alignment: distance")
        ]
        assert like[row] > max(others)


def without(clean, change):
    """Return a change of the waves less what a common complex factor of the pattern explains."""
    own = clean.expansion.coefficients
    return change - own * np.vdot(own, change) / np.vdot(own, own)


def alike(one, two) -> float:
    """Cosine between two changes, real parts: what a common real factor explains."""
    return float(abs(np.vdot(one, two).real) / max(np.linalg.norm(one) * np.linalg.norm(two), 1e-300))
