"""The plan page names figures as the results will: of a circular device there is no E plane, and one discrimination is linear."""

from __future__ import annotations

import pytest

from colure.app.services.starting import start_campaign
from colure.app.web.views import plan


@pytest.mark.parametrize(
    ("polarization", "names"),
    [
        ("linear", {"Half-power beamwidth, E plane", "Cross-polar discrimination at peak"}),
        ("right", {"Half-power beamwidth, declared plane", "Linear cross-polar discrimination at peak"}),
    ],
)
def test_a_forecast_has_the_names_of_the_results(tmp_path, polarization, names):
    start_campaign(tmp_path / "c", kind="patch", band="10-12")
    device = tmp_path / "c" / "device.toml"
    device.write_text(device.read_text("utf-8").replace('"linear"', f'"{polarization}"'), encoding="utf-8")
    rows = plan.consequences(tmp_path / "c", {})["forecast"]
    assert names <= {row["label"] for row in rows}
