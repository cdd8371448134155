"""Several runs on one page: compared, as a series, and a run that holds cuts alone."""

from __future__ import annotations

import pytest

from colure.app import services
from colure.app.services.rehearsal import _record
from colure.app.services.rehearsal import measured as rehearsed
from colure.app.storage.folders import run_folder
from colure.app.web.guard.roles import SessionRole
from colure.model.files import save_dataset
from colure.planning.preflight import make_plan
from tests.app.test_cuts import BOTH, ROLL, campaign
from tests.browser.conftest import serving
from tests.browser.test_pages import enter, measured


@pytest.fixture(autouse=True)
def nightly(request):
    if not request.config.getoption("--nightly"):
        pytest.skip("nightly")


def test_runs_are_compared_and_laid_in_a_row(page, served, tiny_campaign):
    for name, truth in (("one", {}), ("two", {"device_tilt_deg": 0.5})):
        own, run = measured(tiny_campaign, name, **truth)
        services.evaluate(services.process(own, run), run)
    page.set_default_timeout(90_000)
    enter(page, served, "explore?run=one&tab=together")
    page.get_by_label("match the turn").check()
    page.get_by_role("button", name="compare", exact=True).click()
    page.wait_for_selector("text=The fields differ by", timeout=90_000)
    assert "turned by" in page.inner_text(".piece:has-text('Compare')")
    # Another choice takes the former answer away.
    page.get_by_label("match the turn").uncheck()
    assert page.locator("text=The fields differ by").count() == 0
    page.get_by_role("button", name="show the series").click()
    page.wait_for_selector("[aria-label=series] table")
    # A device with one state has no coverage over states.
    assert page.locator(".piece:has-text('Coverage')").count() == 0
    page.get_by_role("button", name="compare the set-ups").click()
    page.wait_for_selector("text=to lie on the first", timeout=90_000)


def test_who_only_watches_starts_none_of_it(page, served, tiny_campaign):
    measured(tiny_campaign, "one")
    measured(tiny_campaign, "two")
    enter(page, served, "explore?run=one&tab=together", SessionRole.VIEW)
    page.wait_for_selector(".piece")
    assert page.get_by_role("button", name="compare", exact=True).is_disabled()
    assert page.get_by_role("button", name="compare the set-ups").is_disabled()


def test_a_run_of_cuts_opens(browser, tmp_path):
    own, plan = make_plan(
        campaign(tmp_path / "c", "horn", "37-40", ROLL, f'theta_deg = "-60:60:4"\nphi_deg = [0, 90]\n{BOTH}')
    )
    run = run_folder(own.folder, "first")
    run.path.mkdir(parents=True)
    save_dataset(_record(plan, *rehearsed(own, plan, seed=1)), run.record)
    for served in serving([own.folder]):
        context = browser.new_context(viewport={"width": 1280, "height": 900})
        page = context.new_page()
        page.set_default_timeout(90_000)
        enter(page, served, "explore")
        page.wait_for_selector(".tab-card .chart svg path")
        assert page.locator(".tab-card .chart svg[role=img]").count() == 2
        page.wait_for_selector(".figures-panel tbody tr")
        slider = page.get_by_label("frequency")
        slider.focus()
        page.keyboard.press("Home")
        page.wait_for_selector(".figures-panel .subject:has-text('37.000 GHz')")
        # The slider that was used is still the one that has the focus.
        assert page.evaluate("document.activeElement.type") == "range"
        context.close()
