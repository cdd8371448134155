"""Runs that are not a whole sphere of a linear device: each opens with what it holds, and with a small picture in the drawer."""

from __future__ import annotations

import pytest

from colure.app import services
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.services.starting import start_campaign
from colure.app.storage.folders import run_folder
from colure.model.chamber import SimulatedChamber
from colure.model.files import save_dataset
from tests.app.services.test_power_runs import levels_of
from tests.app.test_looking import begun
from tests.browser.conftest import CHROMIUM, serving
from tests.browser.test_pages import enter, until
from tests.endtoend.test_near_to_far import edited

pytestmark = [
    pytest.mark.nightly,
    pytest.mark.usefixtures("nightly"),
    pytest.mark.skipif(CHROMIUM is None, reason="no Chromium is installed: nothing can be looked at"),
]


def rehearsed(folder, name, change=lambda record: record):
    campaign, plan = services.make_plan(folder)
    run = run_folder(folder, name)
    run.path.mkdir(parents=True, exist_ok=True)
    save_dataset(change(record_of_rehearsal(campaign, plan, truth=SimulatedChamber())), run.record)


def test_a_circular_device_levels_alone_and_a_stopped_run(browser, tmp_path):
    """A right-hand patch at 5.8 GHz; the same without phase; a patch whose scan was stopped after 30 %."""
    patch = tmp_path / "patch"
    start_campaign(patch, kind="patch", band="5.8")
    edited(patch, "device.toml", ('polarization = "linear"', 'polarization = "right"'))
    rehearsed(patch, "phase")
    rehearsed(patch, "power", levels_of)
    begun(tmp_path / "stopped", 0.3)[2].close()
    for served in serving([patch, tmp_path / "stopped"]):
        context = browser.new_context(viewport={"width": 1280, "height": 900})
        page = context.new_page()
        page.set_default_timeout(60_000)
        uncaught: list[str] = []
        page.on("pageerror", lambda error, heard=uncaught: heard.append(str(error)))
        enter(page, served, "explore")
        page.wait_for_selector("[data-thumb=phase] canvas")
        page.wait_for_selector("[data-thumb=power] canvas")
        page.locator("button[data-run=phase]").click()
        page.wait_for_selector(".legend:has-text('right-hand')")
        assert page.get_by_label("components").input_value() == "circular"
        page.locator("button[data-run=power]").click()
        page.wait_for_selector("[aria-label='Total of both polarizations'] canvas")
        page.wait_for_selector(".figures-panel tbody tr:has-text('Peak gain')")
        caption = page.inner_text(".stage-caption")
        assert "Run power" in caption and "without phase" in caption
        # Nothing of the run with phase is left: no tab, no figure that needs phase.
        assert page.locator("[role=tab]").count() == 0 and "Phase centre" not in page.inner_text(".explore-page")
        page.get_by_label("campaign", exact=True).select_option(label="stopped")
        until(page, "document.querySelector('.stage-caption').textContent.includes('uncorrected')", seconds=30.0)
        assert "Run first" in page.inner_text(".stage-caption")
        assert "points were read" in page.inner_text(".controls")
        assert "Peak gain" not in page.inner_text(".explore-page")
        # One run of a campaign opens by itself with its drawer shut; its picture comes when the drawer is opened.
        page.locator(".drawer summary").click()
        page.wait_for_selector("[data-thumb=first] canvas")
        context.close()
        assert not uncaught, uncaught


def test_states_are_named(browser, tmp_path):
    """Three beams: every panel says whose beam it shows, also before anybody chose one."""
    from tests.app.services.test_states_coverage import STATES

    folder = tmp_path / "beams"
    start_campaign(folder, kind="patch", band="5.8")
    device = folder / "device.toml"
    device.write_text(device.read_text("utf-8") + STATES, "utf-8")
    campaign, plan = services.make_plan(folder)
    run = run_folder(folder, "three")
    run.path.mkdir(parents=True)
    truth = SimulatedChamber(state_steer_deg=(-40.0, 0.0, 40.0))
    save_dataset(record_of_rehearsal(campaign, plan, truth=truth), run.record)
    first = campaign.device.states.names[0]
    for served in serving([folder]):
        context = browser.new_context(viewport={"width": 1280, "height": 900})
        page = context.new_page()
        page.set_default_timeout(60_000)
        enter(page, served, "explore")
        page.wait_for_selector(f".tab-card .subject:has-text('state {first}')")
        page.wait_for_selector(f".figures-panel .subject:has-text('state {first}')")
        page.wait_for_selector(f".stage-caption:has-text('state {first}')")
        assert f"state {first}" in page.inner_text(".opened .subject")
        context.close()
