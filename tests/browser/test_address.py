"""What an address says and the page does not know is said; the page is as light as the system until somebody chooses."""

from __future__ import annotations

import pytest

from tests.browser.test_pages import enter, measured, until

#: The parts without a browser (web/src/shell/arrival, draw/places, scene/labels) are tested in every run.
pytestmark = [pytest.mark.nightly, pytest.mark.usefixtures("nightly")]
THEME = "document.documentElement.dataset.theme"


def test_an_address_is_not_passed_over(page, served, tiny_campaign):
    measured(tiny_campaign, "one")
    enter(page, served, "explore?run=one&frq=24&tab=mpa&plane=east&f=17")
    page.wait_for_selector(".tab-card .chart svg path")
    said = page.inner_text(".remarks")
    for words in ('"frq", which no page knows', 'tab = "mpa", which is none of', 'plane = "east", which is no number'):
        assert words in said, said
    # The frequency is one of another run: the nearest is shown, and that is said with the run.
    assert "17.000 GHz of the address was not measured" in page.inner_text(".opened")
    assert page.inner_text(".figures-panel .subject").endswith("24.000 GHz")
    page.goto(f"{served.base}/#plan?c=ffffffffffff")
    until(page, "document.querySelector('.remarks').textContent.includes('no campaign')")
    page.goto(f"{served.base}/#explore?run=one&f=24")
    page.wait_for_selector(".tab-card .chart svg path")
    assert page.inner_text(".remarks") == "" and "not measured" not in page.inner_text(".opened")


def test_the_theme_follows_the_system_until_one_is_chosen(page, served):
    page.emulate_media(color_scheme="light")
    enter(page, served, "learn")
    page.wait_for_selector("text=What the probe sees")
    for wanted in ("dark", "light"):
        page.emulate_media(color_scheme=wanted)
        until(page, f"{THEME} === '{wanted}'")
    page.get_by_label("light or dark").click()
    until(page, f"{THEME} === 'dark'")
    for system in ("dark", "light"):
        page.emulate_media(color_scheme=system)
        page.wait_for_timeout(300)
        assert page.evaluate(THEME) == "dark"
