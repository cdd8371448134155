"""Every control of the page does what its name says: charts, files of them, play, keys, drawer, tutor, drafts, home, abort, print."""

from __future__ import annotations

import csv
import io
import json
import xml.etree.ElementTree as ElementTree
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from colure.app.storage.folders import run_folder
from colure.app.web.room import campaign_id
from colure.model.campaign import Campaign
from tests.browser.test_pages import azimuth_by_hand, begin_scan, enter, measured, until
from tests.browser.test_server import post
from tests.endtoend.test_near_to_far import edited

#: Counts contexts of WebGL, and pictures that the scene draws.
COUNTS = """
window.contexts = 0; window.drawn = 0;
const get = HTMLCanvasElement.prototype.getContext;
HTMLCanvasElement.prototype.getContext = function (kind, ...all) { if (kind.startsWith('webgl')) window.contexts++; return get.call(this, kind, ...all); };
const clear = WebGL2RenderingContext.prototype.clear;
WebGL2RenderingContext.prototype.clear = function (...all) { window.drawn++; return clear.apply(this, all); };
"""
CHART = ".tab-card .chart svg[role=img]"
CAMERA = "JSON.parse(localStorage.getItem('camera'))"


@pytest.fixture
def three(tiny_campaign):
    """The smallest campaign at three frequencies."""
    edited(tiny_campaign, "goal.toml", ("points = 1", "points = 3"), ("stop_ghz = 24.0", "stop_ghz = 24.4"))
    return tiny_campaign


def saved(page, place: str, kind: str) -> Path:
    """Press one of the buttons under a chart and return the file that came."""
    with page.expect_download() as event:
        page.locator(place).get_by_role("button", name=kind, exact=True).first.click()
    assert event.value.suggested_filename.endswith(f".{kind.lower()}")
    return Path(event.value.path())


def cut_of(served, folder, **more):
    """Ask for the cut that the page shows."""
    body = {"campaign": campaign_id(folder), "run": "one", "frequency": 0, "plane_deg": 0, "basis": "ludwig-3", **more}
    return post(served, "/api/cut", body, headers=served.headers()).json()


def test_charts_files_play_and_keys(page, served, three, nightly):
    """One look at a run: its peak marker, the files of its chart, play, slider and tabs by keyboard, presets, one context."""
    measured(three, "one")
    page.add_init_script(COUNTS)
    enter(page, served, "explore?run=one&f=24")
    page.wait_for_selector(f"{CHART} path")
    cut = cut_of(served, three)
    # The marker stands where the trace is strongest and says how strong.
    level = max(v for v in cut["first"] if v is not None)
    at = cut["angle_deg"][cut["first"].index(level)]
    words = page.locator(f"{CHART} text", has_text=" at ").text_content()
    assert [float(v) for v in words.split(" at ")] == pytest.approx([level, at], abs=0.006), words
    # Files: the values of the server, a picture that is XML with both traces, and pixels twice as fine as the screen.
    rows = list(csv.DictReader(io.StringIO(saved(page, ".tab-card", "CSV").read_text("utf-8"))))
    column = next(name for name in rows[0] if name.startswith(cut["names"][0]))
    for row, angle, value in zip(rows, cut["angle_deg"], cut["first"], strict=True):
        assert float(row[next(iter(row))]) == angle and row[column] == (
            "" if value is None else repr(value).removesuffix(".0")
        )
    picture = ElementTree.parse(saved(page, ".tab-card", "SVG")).getroot()
    traces = [one for one in picture.iter("{http://www.w3.org/2000/svg}path") if one.get("stroke-width")]
    assert len(traces) >= 2 and "co" in "".join(picture.itertext())
    with Image.open(saved(page, ".tab-card", "PNG")) as pixels:
        assert pixels.size == (2 * int(picture.get("viewBox").split()[2]), 2 * int(picture.get("viewBox").split()[3]))
        assert len(np.unique(np.asarray(pixels.convert("RGB")).reshape(-1, 3), axis=0)) > 4
    # Play goes through the frequencies and says which; pause stays where it is.
    said = "document.querySelector('.controls output').textContent"
    seen = {page.evaluate(said)}
    page.get_by_role("button", name="play", exact=True).click()
    for wanted in ("24.200 GHz", "24.400 GHz"):
        until(page, f"{said} === '{wanted}'")
        seen.add(page.evaluate(said))
    page.get_by_role("button", name="pause", exact=True).click()
    until(page, f"document.querySelector('.figures-panel .subject').textContent.includes({said})")
    stands = page.evaluate(said)
    page.wait_for_timeout(1000)
    assert page.evaluate(said) == stands and len(seen) == 3
    # Keys: the slider keeps the focus while everything follows; arrows go through the tabs with it.
    page.get_by_label("frequency", exact=True).focus()
    page.keyboard.press("Home")
    page.wait_for_selector(".figures-panel .subject:has-text('24.000 GHz')")
    page.keyboard.press("ArrowRight")
    page.wait_for_selector(".figures-panel .subject:has-text('24.200 GHz')")
    assert page.evaluate("document.activeElement.getAttribute('aria-valuetext')") == "24.200 GHz"
    page.get_by_role("tab", name="Cuts").focus()
    page.keyboard.press("ArrowRight")
    page.wait_for_selector(".tab-card canvas.map")
    assert page.evaluate("document.activeElement.id") == "tab-map"
    page.keyboard.press("ArrowRight")
    page.wait_for_selector(f"{CHART} path")
    assert page.evaluate("document.activeElement.getAttribute('aria-selected')") == "true"
    # Where the direction is pressed on the chart over frequency, the frequency is looked at.
    field = page.locator(CHART).first.bounding_box()
    page.mouse.click(field["x"] + field["width"] - 20, field["y"] + 60)
    page.wait_for_selector(".figures-panel .subject:has-text('24.400 GHz')")
    # Presets move the one camera, which stays over pages; nothing but one context was ever made.
    for name, axis in (("from above", 1), ("from the side", 0), ("as the probe sees it", 2)):
        page.get_by_role("button", name=name).click()
        until(page, f"{CAMERA}.indexOf(Math.max(...{CAMERA})) === {axis}")
    for where in ("plan", "learn", "scan", "explore?run=one"):
        page.goto(f"{served.base}/#{where}")
        page.get_by_label("light or dark").click()
        page.wait_for_timeout(60)
    for _ in range(25):
        page.get_by_label("light or dark").click()
    page.wait_for_selector(f"{CHART} path")
    assert page.evaluate(f"{CAMERA}[2]") == pytest.approx(2.3)
    assert page.evaluate("window.contexts") == 1 and page.evaluate("window.drawn") > 5


def test_components_have_no_spikes_at_their_singular_poles(served, three, nightly):
    """Where a component's direction is not defined there is no level; beside it none is above the total."""
    measured(three, "one")
    for basis, plane in (("theta-phi", 0), ("ludwig-2-az-over-el", 90), ("ludwig-2-el-over-az", 0)):
        cut = cut_of(served, three, basis=basis, plane_deg=plane)
        first, second, total = (
            np.array([np.nan if v is None else v for v in cut[key]]) for key in ("first", "second", "total")
        )
        both = 10.0 ** (np.nan_to_num(first, nan=-99.0) / 10.0) + 10.0 ** (np.nan_to_num(second, nan=-99.0) / 10.0)
        known = np.isfinite(first) & np.isfinite(second)
        # Power adds up over any pair of directions at right angles, to the digits that are sent.
        assert np.allclose(10.0 * np.log10(both[known]), total[known], rtol=0, atol=0.02) and known.sum() > 600
        # A lone sample that stands out of both its neighbours by 15 dB where the total does not is a spike.
        out = first[1:-1] - np.maximum(first[:-2], first[2:])
        assert np.nanmax(np.where(total[1:-1] > np.nanmax(total) - 30.0, out, np.nan)) < 15.0


def test_runs_are_found_by_words_and_say_what_was_noted(page, served, three, nightly):
    measured(three, "one")
    measured(three, "two")
    enter(page, served, "explore")
    page.wait_for_selector("button[data-run=two]")
    page.get_by_label("notes of two").click()
    page.get_by_label("tag").fill("golden")
    page.get_by_label("operator").fill("night shift")
    page.get_by_label("notes", exact=True).fill("connector retightened")
    page.get_by_role("button", name="keep", exact=True).click()
    page.wait_for_selector("button[data-run=two]:has-text('golden, night shift')")
    search = page.get_by_label("find runs")
    for words, runs in (
        ("golden", ["two"]),
        ("night RETIGHTENED", ["two"]),
        ("one", ["one"]),
        ("nobody", []),
        ("", ["one", "two"]),
    ):
        search.fill(words)
        shown = page.eval_on_selector_all("button[data-run]", "all => all.map(b => b.dataset.run).sort()")
        assert shown == runs, words
    assert page.evaluate("document.activeElement.type") == "search"
    # It is kept beside the record, not in this window.
    page.reload()
    page.wait_for_selector("button[data-run=two]", state="attached")
    # The address may name the run that was opened first: the drawer is closed then.
    page.evaluate("document.querySelector('details.drawer').open = true")
    page.wait_for_selector("button[data-run=two]:has-text('golden, night shift')")
    said = json.loads(next(run_folder(three, "two").path.glob("identity*")).read_text("utf-8"))
    assert "connector retightened" in said.values()


def test_the_tutor_shows_what_the_probe_sees_and_asks_three_questions(page, served):
    """Angles by hand: a roll of 90 deg turns the field before a still probe by -90 deg; a probe that follows takes in all."""
    enter(page, served, "learn")
    page.wait_for_selector("text=The slices stay within")
    seen = ".dial p"
    place = page.get_by_label("through the slices")
    # Six slices of equal length, the roll at 0, 30, 60, 90 ...: the fourth stands at 90 deg from a fifth of it on.
    place.fill("640")
    assert "slice 4 of" in page.inner_text(".learn-page output")
    assert "takes in 0 % of the power" in page.inner_text(seen)
    page.get_by_label("probe", exact=True).select_option("following")
    assert "takes in 100 % of the power" in page.inner_text(seen)
    assert page.locator(".captions .now").inner_text().startswith("A probe that follows the roll")
    page.get_by_label("probe", exact=True).select_option("still")
    place.fill("0")
    page.get_by_role("button", name="play").click()
    until(page, "!document.querySelector('.learn-page output').textContent.startsWith('slice 1 ')", seconds=30.0)
    page.get_by_role("button", name="pause").click()
    # Who watched answers: a great circle; nothing comes in; at boresight and behind.
    for words, kind in (
        ("a great circle through boresight", "Right."),
        ("all of the field", "No."),
        ("at boresight and behind", "Right."),
    ):
        page.locator(".quiz").get_by_role("button", name=words).click()
        page.wait_for_selector(f".quiz :text('{kind}')")
        assert page.locator(".quiz button.right").count() == 1
        page.locator(".quiz .main").click()
    page.wait_for_selector("text=2 of 3 right")
    page.get_by_role("button", name="once more").click()
    page.wait_for_selector("text=1 of 3: On a roll over azimuth")


def test_drafts_stay_and_a_scan_says_that_it_uses_what_is_on_disk(page, served, three, nightly):
    before = (three / "goal.toml").read_text("utf-8")
    enter(page, served, "plan")
    page.wait_for_selector(".plan-answer .verdict")
    page.get_by_label("right down to").fill("-25")
    page.get_by_role("button", name="several bands").click()
    page.get_by_role("button", name="add a band").click()
    page.wait_for_selector(".chip.draft:has-text('2 unsaved values')")
    page.get_by_label("light or dark").click()
    for where in ("learn", "align", "plan"):
        page.goto(f"{served.base}/#{where}")
    page.wait_for_selector(".bands")
    assert page.get_by_label("right down to").input_value() == "-25"
    assert page.get_by_label("band 2, lowest").input_value() == "24.8"
    # A band that cannot be is marked where it stands.
    page.get_by_label("band 2, lowest").fill("24.1")
    until(
        page,
        "document.querySelector('.bands.wrong .field-fault')?.textContent.includes('must be above 24.4 GHz') ?? false",
    )
    page.goto(f"{served.base}/#scan")
    page.get_by_role("button", name="take motion lease").click()
    page.get_by_role("button", name="start or go on").click()
    page.wait_for_selector(
        "[role=dialog] :text('2 unsaved values of the form: the scan uses what is on disk, without them.')"
    )
    page.keyboard.press("Escape")
    assert (three / "goal.toml").read_text("utf-8") == before


def test_home_is_set_abort_ends_and_pages_print(page, served, three, nightly):
    """The longer way: axes by hand to their new home; a scan aborted by its button; what a printer gets; no motion for who wants none."""
    measured(three, "one")
    azimuth_by_hand(page, served, 7.5)
    page.get_by_role("button", name="make this home").click()
    page.locator("[role=dialog]").get_by_role("button", name="make this home").click()
    page.wait_for_selector("[role=dialog]", state="detached")
    # The readout that came, with the positioner's own error; two files of it remain, the former one beside.
    assert Campaign.load(three).chamber.positioner.azimuth.home_deg == pytest.approx(7.5, abs=0.05)
    assert len(list(three.glob("chamber.toml.*"))) == 1
    page.get_by_role("button", name="give back").click()
    # Abort asks once, ends the scan and says so; the next one must home first.
    page.goto(f"{served.base}/#scan?run=two")
    # In virtual time a scan is over before anybody can press a button.
    (three / "twin.toml").write_text("time_factor = 1.0\n" + (three / "twin.toml").read_text("utf-8"), "utf-8")
    begin_scan(page)
    until(
        page,
        "document.querySelector('.big').textContent !== '' && parseFloat(document.querySelector('.big').textContent) > 0",
        seconds=60.0,
    )
    page.locator(".scan-page").get_by_role("button", name="abort").click()
    page.locator("[role=dialog]").get_by_role("button", name="abort").click()
    until(page, "document.querySelector('.control-bar.moving') === null", seconds=60.0)
    assert served.room.scan.state == "aborted" and "aborted" in page.inner_text(".bar-told")
    # Print: figures and charts, no buttons, no bar, the whole table.
    page.goto(f"{served.base}/#explore?run=one")
    page.wait_for_selector(f"{CHART} path")
    page.wait_for_selector(".figures-panel tbody tr")
    page.emulate_media(media="print")
    hidden = ["header.top", ".control-bar", ".presets", ".drawer", ".chart-tools"]
    assert not [one for one in hidden if page.locator(one).first.is_visible()]
    assert page.locator(".figures-panel table").is_visible() and page.locator(CHART).first.is_visible()
    assert page.locator("button:visible").count() == 0
    assert len(page.pdf()) > 20_000
    page.emulate_media(media="screen", reduced_motion="reduce")
    # A preset is there at once: one or two pictures, no flight of twenty.
    page.add_init_script(COUNTS)
    page.reload()
    page.wait_for_selector(f"{CHART} path")
    page.wait_for_timeout(800)
    page.evaluate("window.drawn = 0")
    page.get_by_role("button", name="from above").click()
    page.wait_for_timeout(700)
    calm = page.evaluate("window.drawn")
    page.emulate_media(reduced_motion="no-preference")
    page.evaluate("window.drawn = 0")
    page.get_by_role("button", name="from the side").click()
    page.wait_for_timeout(700)
    assert calm <= 4 < page.evaluate("window.drawn")
