"""Controls that no other test presses, one test for each: what it does is seen in the page and in what it asks the server for."""

from __future__ import annotations

import pytest

from colure.model.campaign import Campaign
from tests.browser.test_controls import CHART
from tests.browser.test_pages import azimuth_by_hand, enter, measured, until
from tests.endtoend.test_near_to_far import edited

pytestmark = [pytest.mark.nightly, pytest.mark.usefixtures("nightly")]
#: Numbers under the first chart.
TICKS = "[...document.querySelectorAll('.tab-card .chart svg text[text-anchor=middle]')].map(t => parseFloat(t.textContent)).filter(Number.isFinite)"


@pytest.fixture
def cut(page, served, tiny_campaign):
    """The cut of a measured run."""
    measured(tiny_campaign, "one")
    enter(page, served, "explore?run=one")
    page.wait_for_selector(f"{CHART} path")
    return page


def ends(page):
    ticks = page.evaluate(TICKS)
    return min(ticks), max(ticks)


def press(page, name):
    page.locator(".tab-card .chart-tools").first.get_by_role("button", name=name, exact=True).click()


def test_closer_farther_and_whole(cut):
    low, high = ends(cut)
    press(cut, "+")
    near = ends(cut)
    assert near[1] - near[0] < 0.75 * (high - low)
    press(cut, "−")
    far = ends(cut)
    assert far[1] - far[0] > near[1] - near[0]
    press(cut, "+")
    press(cut, "whole")
    assert ends(cut) == (low, high)


def test_left_and_right(cut):
    press(cut, "+")
    press(cut, "+")
    before = ends(cut)
    press(cut, "▸")
    right = ends(cut)
    assert sum(right) > sum(before)
    press(cut, "◂")
    assert ends(cut) == before
    press(cut, "◂")
    assert sum(ends(cut)) < sum(before)


def test_the_plane_of_the_cut(cut):
    with cut.expect_request("**/api/cut") as event:
        cut.get_by_label("plane, from E towards H").fill("45")
    assert event.value.post_data_json["plane_deg"] == 45
    until(cut, "location.hash.includes('plane=45')")


def test_marks_go(cut):
    field = cut.locator(CHART).first.bounding_box()
    cut.mouse.click(field["x"] + 300, field["y"] + 60)
    cut.wait_for_selector("table:has(th:has-text('mark'))")
    cut.get_by_role("button", name="no marks").click()
    cut.wait_for_selector("table:has(th:has-text('mark'))", state="detached")


def test_the_coordinates_of_the_map(cut):
    cut.get_by_role("tab", name="Map").click()
    cut.wait_for_selector(".tab-card canvas.map")
    before = cut.inner_text(".tab-card")
    with cut.expect_request(lambda r: "/api/map" in r.url and r.post_data_json["coordinates"] == "u-v"):
        cut.get_by_label("coordinates").select_option("u-v")
    until(cut, "old => document.querySelector('.tab-card').innerText !== old", arg=before)


def test_a_gate_is_tried_and_taken_away(page, served, tiny_campaign):
    edited(tiny_campaign, "goal.toml", ("points = 1", "points = 5"), ("stop_ghz = 24.0", "stop_ghz = 24.4"))
    measured(tiny_campaign, "one")
    enter(page, served, "explore?run=one&tab=impulse")
    page.wait_for_selector(f"{CHART} path")
    middle = page.get_by_label("gate, middle")
    middle.press("ArrowRight")
    page.get_by_label("gate, width").press("ArrowRight")
    wanted = [float(page.get_by_label(f"gate, {name}").input_value()) for name in ("middle", "width")]
    with page.expect_request("**/api/overview") as event:
        page.get_by_role("button", name="try this gate").click()
    assert event.value.post_data_json["gate_ns"] == pytest.approx(wanted)
    page.get_by_role("tab", name="Impulse").click()
    with page.expect_request("**/api/overview") as event:
        page.get_by_role("button", name="no gate").click()
    assert event.value.post_data_json.get("gate_ns") is None


def test_axes_are_jogged_pointed_and_sent_home(page, served, tiny_campaign):
    azimuth_by_hand(page, served, 5.0)
    said = "parseFloat(document.querySelector('table.axes tbody tr').children[1].textContent)"

    def stands(angle: float) -> None:
        until(page, f"Math.abs({said} - ({angle})) < 0.1", seconds=60.0)

    page.locator("tr:has-text('azimuth')").get_by_role("button", name="+10", exact=True).click()
    stands(15.0)
    page.locator("tr:has-text('azimuth')").get_by_role("button", name="−1", exact=True).click()
    stands(14.0)
    page.get_by_label("theta to go to").fill("22")
    page.get_by_label("phi to go to").fill("0")
    page.get_by_role("button", name="point there").click()
    stands(22.0)
    page.get_by_role("button", name="all to home").click()
    stands(Campaign.load(tiny_campaign).chamber.positioner.azimuth.home_deg)
    page.get_by_role("button", name="seek reference marks").click()
    page.wait_for_selector("text=reference marks found", timeout=60_000)


def test_the_form_is_written_and_schemes_stand_side_by_side(page, served, tiny_campaign):
    enter(page, served, "plan")
    page.wait_for_selector(".plan-answer .verdict")
    before = Campaign.load(tiny_campaign).chamber.analyzer.averages
    page.get_by_label("averages").fill(str(before + 3))
    page.get_by_role("button", name="write into the files").click()
    until(page, "document.querySelector('.chip.draft').hidden")
    assert Campaign.load(tiny_campaign).chamber.analyzer.averages == before + 3
    assert len(list(tiny_campaign.glob("chamber.toml.*"))) == 1
    page.get_by_role("button", name="set side by side").click()
    page.wait_for_selector("text=azimuth over elevation")
    told = page.inner_text("section[aria-label^='Positioners']")
    assert "roll over azimuth" in told and "elevation over azimuth" in told


def test_not_now_starts_nothing(page, served):
    enter(page, served, "scan")
    page.get_by_role("button", name="take motion lease").click()
    page.get_by_label("name of the run").fill("never")
    page.get_by_role("button", name="start or go on").click()
    page.wait_for_selector("[role=dialog]:has-text('never')")
    page.get_by_role("button", name="not now").click()
    page.wait_for_selector("[role=dialog]", state="detached")
    assert served.room.scan is None and not served.room.busy


def test_a_refused_answer_is_asked_for_again(page, served, tiny_campaign):
    measured(tiny_campaign, "one")
    left = [1]

    def answer(route):
        left[0] -= 1
        if left[0] >= 0:
            route.fulfill(status=422, json={"errors": ["not this time"]})
        else:
            route.continue_()

    page.route("**/api/cut", answer)
    enter(page, served, "explore?run=one")
    page.wait_for_selector("text=not this time")
    page.get_by_role("button", name="ask again").first.click()
    page.wait_for_selector(f"{CHART} path")
    assert page.locator("text=not this time").count() == 0
