"""What the record says against the declarations stands at the figures themselves, not among the findings alone."""

from __future__ import annotations

from colure.app import services
from colure.app.services import verifying
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.model.files import save_dataset
from tests.coverage.scenarios import Scenario, band, four_by_four


def test_a_probe_less_pure_than_declared_is_said_at_the_figures_that_it_spoils(tmp_path):
    folder = Scenario(device=four_by_four(), goal=band(24.1, wanted_level_db=-25)).write(tmp_path / "c")
    campaign, plan = services.make_plan(folder)
    used = {}
    for name, cross_db in (("pure", -60.0), ("impure", -18.0)):
        run = run_folder(folder, name)
        run.path.mkdir(parents=True)
        truth = campaign.simulated().model_copy(update={"probe_cross_polar_db": cross_db})
        save_dataset(record_of_rehearsal(campaign, plan, truth=truth), run.record)
        result = services.process(campaign, run)
        used[name] = {one.name: one for one in services.evaluate(result, run) if not one.reason}
    assert all(one.use == "yes" for one in used["pure"].values()), {
        one.name: one.cautions for one in used["pure"].values()
    }
    said = used["impure"]["xpd_db"]
    # A unit that is verified by its whole scan is read no more kindly.
    verified = {one.name: one for one in verifying._of_whole_scan(result)}["xpd_db"]
    assert (verified.use, verified.cautions) == (said.use, said.cautions)
    assert said.use == "look" and "MORE than the" in said.cautions[0] and used["impure"]["gain_dbi"].use == "yes"
