"""Controls that no other test presses, one test for each: what it does is seen in the page and in what it asks the server for."""

from __future__ import annotations

from typing import NamedTuple

import pytest

from colure.app import services
from colure.app.web.room import campaign_id
from colure.app.web.scan.layout import layout_for
from colure.app.web.scan.live import LiveScan
from colure.model.campaign import Campaign
from tests.browser.conftest import Served, serving
from tests.browser.test_controls import CHART
from tests.browser.test_pages import azimuth_by_hand, enter, measured, until
from tests.conftest import tiny
from tests.endtoend.test_near_to_far import edited

pytestmark = [pytest.mark.nightly, pytest.mark.usefixtures("nightly")]
#: Numbers under the first chart.
TICKS = "[...document.querySelectorAll('.tab-card .chart svg text[text-anchor=middle]')].map(t => parseFloat(t.textContent)).filter(Number.isFinite)"


class Looked(NamedTuple):
    """One room and one window for all tests of this file."""

    page: object
    served: Served
    folder: object


@pytest.fixture(scope="module")
def one_room(browser, tmp_path_factory, request):
    """A campaign of five frequencies with one measured run; every test opens its own page of it."""
    if not request.config.getoption("--nightly"):
        pytest.skip("for the nightly run")
    folder = tmp_path_factory.mktemp("controls") / "campaign"
    services.new_campaign(folder)
    tiny(folder)
    edited(folder, "goal.toml", ("points = 1", "points = 5"), ("stop_ghz = 24.0", "stop_ghz = 24.4"))
    measured(folder, "one")
    for served in serving([folder]):
        context = browser.new_context(viewport={"width": 1280, "height": 800}, reduced_motion="reduce")
        page = context.new_page()
        page.set_default_timeout(60_000)
        enter(page, served, "learn")
        yield Looked(page, served, folder)
        context.close()


def at(room: Looked, where: str, sign: str):
    """Go to a page of the room as if for the first time, with what was typed given up."""
    room.page.evaluate("sessionStorage.clear()")
    room.page.goto("about:blank")
    room.page.goto(f"{room.served.base}/#{where}")
    room.page.wait_for_selector(sign)
    return room.page


@pytest.fixture
def cut(one_room):
    """The cut of a measured run."""
    page = at(one_room, "explore?run=one&f=24", f"{CHART} path")
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


def test_a_gate_is_tried_refused_and_taken_away(one_room):
    page = at(one_room, "explore?run=one&tab=impulse", f"{CHART} path")
    # The narrowest gate of so few frequencies is cut short by what it must leave out: that is said, and there is a way back.
    page.get_by_label("gate, width").press("Home")
    page.get_by_role("button", name="try this gate").click()
    page.wait_for_selector(".opened .faults:has-text('gate: width')")
    assert page.get_by_role("tab", name="Impulse").count() == 0 and "trial was refused" in page.inner_text("main")
    page.get_by_role("button", name="without the trial").click()
    page.wait_for_selector(f"{CHART} path")
    page.get_by_label("gate, middle").press("ArrowRight")
    page.get_by_label("gate, width").press("End")
    wanted = [float(page.get_by_label(f"gate, {name}").input_value()) for name in ("middle", "width")]
    with page.expect_request("**/api/overview") as event:
        page.get_by_role("button", name="try this gate").click()
    assert event.value.post_data_json["gate_ns"] == pytest.approx(wanted)
    page.wait_for_selector("text=A trial, gate")
    with page.expect_request("**/api/overview") as event:
        page.get_by_role("button", name="no gate").click()
    assert event.value.post_data_json.get("gate_ns") is None
    page.wait_for_selector("text=A trial, gate", state="detached")


def test_what_every_step_does_is_worked_out_and_shown(one_room):
    page = at(one_room, "explore?run=one&tab=recipe", ".steps-list")
    page.get_by_role("button", name="what does every step do?").click()
    page.get_by_label("effect of every step").wait_for()
    told = page.get_by_label("effect of every step").inner_text()
    assert "far field" in told.replace("_", " ").replace("-", " ")


def test_the_range_of_colours_of_a_scan(one_room):
    scan = LiveScan(campaign_id(one_room.folder), "live", layout_for(one_room.folder))
    one_room.served.room.scan = scan
    cells = [int(i) for i, cell in enumerate(scan.layout.cell) if cell >= 0][:2]
    for i, level in zip(cells, (1.0, 0.01), strict=True):
        scan.hear({"kind": "point", "row": [i, 0, float(i), [0.0, 0.0, 0.0], [level, 0.0], 0]})
    page = at(one_room, "scan", ".scan-page canvas.map")
    bar = "document.querySelector('.colour-bar').innerText"
    until(page, f"{bar}.includes('S21')")
    before = page.evaluate(bar)
    page.get_by_label("range of colours").fill("20")
    until(page, f"old => {bar} !== old", arg=before)
    levels = [float(v) for v in page.evaluate(bar).split() if v.lstrip("-").isdigit()]
    assert max(levels) - min(levels) == 20
    one_room.served.room.scan = None


def test_axes_are_jogged_pointed_and_sent_home(one_room):
    page, served = one_room.page, one_room.served
    azimuth_by_hand(page, served, 5.0)
    said = "parseFloat(document.querySelector('table.axes tbody tr')?.children[1].textContent ?? 'NaN')"

    def stands(angle: float) -> None:
        until(page, f"Math.abs({said} - ({angle})) < 0.1", seconds=60.0)

    stands(5.0)
    page.locator("tr:has-text('azimuth')").get_by_role("button", name="+10", exact=True).click()
    stands(15.0)
    page.locator("tr:has-text('azimuth')").get_by_role("button", name="−1", exact=True).click()
    stands(14.0)
    page.get_by_label("theta to go to").fill("22")
    page.get_by_label("phi to go to").fill("0")
    page.get_by_role("button", name="point there").click()
    stands(22.0)
    page.get_by_role("button", name="all to home").click()
    stands(Campaign.load(one_room.folder).chamber.positioner.azimuth.home_deg)
    page.get_by_role("button", name="seek reference marks").click()
    page.wait_for_selector("text=reference marks found", timeout=60_000)
    page.get_by_role("button", name="give back").click()


def test_the_form_is_written_and_schemes_stand_side_by_side(one_room):
    page = at(one_room, "plan", ".plan-answer .verdict")
    before = Campaign.load(one_room.folder).chamber.analyzer.averages
    page.get_by_label("averages").fill(str(before + 3))
    page.get_by_role("button", name="write into the files").click()
    until(page, "document.querySelector('.chip.draft').hidden")
    until(page, "document.body.innerText.includes('written: chamber.toml')")
    assert Campaign.load(one_room.folder).chamber.analyzer.averages == before + 3
    assert len(list(one_room.folder.glob("chamber.toml.*"))) == 1
    page.get_by_role("button", name="set side by side").click()
    page.wait_for_selector("text=azimuth over elevation")
    told = page.inner_text("section[aria-label^='Positioners']")
    assert "roll over azimuth" in told and "elevation over azimuth" in told
    # One unsaved value becomes another one: the schemes of the former form are gone, though as many values are unsaved.
    for averages in ("17", "18"):
        page.get_by_label("averages").fill(averages)
        page.wait_for_selector("text=The form changed since")
        page.get_by_role("button", name="set side by side").click()
        page.wait_for_selector("text=azimuth over elevation")


def test_not_now_starts_nothing(one_room):
    page = at(one_room, "scan", ".scan-page")
    page.get_by_role("button", name="take motion lease").click()
    page.get_by_label("name of the run").fill("never")
    page.get_by_role("button", name="start or go on").click()
    page.wait_for_selector("[role=dialog]:has-text('never')")
    page.get_by_role("button", name="not now").click()
    page.wait_for_selector("[role=dialog]", state="detached")
    assert one_room.served.room.scan is None and not one_room.served.room.busy
    page.get_by_role("button", name="give back").click()


def test_a_refused_answer_is_asked_for_again(one_room):
    left = [1]

    def answer(route):
        left[0] -= 1
        if left[0] >= 0:
            route.fulfill(status=422, json={"errors": ["not this time"]})
        else:
            route.continue_()

    one_room.page.route("**/api/cut", answer)
    page = at(one_room, "explore?run=one", "text=not this time")
    page.get_by_role("button", name="ask again").first.click()
    page.wait_for_selector(f"{CHART} path")
    assert page.locator("text=not this time").count() == 0
    page.unroute("**/api/cut")
