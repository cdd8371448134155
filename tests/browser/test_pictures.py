"""The main screens beside kept pictures, at three widths in both themes; a story from plan to shared link, picture by picture.

Kept pictures are small (240 points wide, 128 colours): a lost chart, scene or head shows, a changed letter does not.
`COLURE_KEEP_PICTURES=1` with `--nightly` keeps the screens as they are now; look at every one before it is committed.
`COLURE_STORY=FOLDER` says where the story's pictures go (by default the test's own folder), `COLURE_STORY_WINDOW=390x844-dark` in which window.
"""

from __future__ import annotations

import os
from io import BytesIO
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from colure.app.services.starting import start_campaign
from colure.app.web.guard.roles import SessionRole
from tests.browser.conftest import CHROMIUM, serving
from tests.browser.test_pages import begin_scan, enter, measured, until
from tests.endtoend.test_near_to_far import edited

pytestmark = [
    pytest.mark.nightly,
    pytest.mark.usefixtures("nightly"),
    pytest.mark.skipif(CHROMIUM is None, reason="no Chromium is installed: nothing can be looked at"),
]
KEPT = Path(__file__).parent / "kept"
SIZES = {390: 844, 1280: 800, 3840: 2160}
SCREENS = {
    "plan": ("plan", ".plan-answer .verdict"),
    "align": ("align", "text=Flip test"),
    "scan": ("scan", "text=What happened"),
    "explore": ("explore?run=one", ".tab-card .chart svg path"),
    "learn": ("learn", "text=What the probe sees"),
}
#: A point differs when one of its colours does by this much of 255; a screen when so many of its points do.
POINT, SHARE = 56, 0.006
WIDE = 240


def small(picture: bytes) -> Image.Image:
    """Return a screen as it is kept: few points, few colours."""
    whole = Image.open(BytesIO(picture)).convert("RGB")
    return whole.resize((WIDE, round(whole.height * WIDE / whole.width)), Image.Resampling.BOX)


def differing(one: Image.Image, other: Image.Image) -> float:
    """Return the share of points that differ."""
    if one.size != other.size:
        return 1.0
    apart = np.abs(np.asarray(one, int) - np.asarray(other.convert("RGB"), int)).max(axis=-1)
    return float(np.mean(apart > POINT))


def test_the_comparison_sees_what_it_must():
    """A panel that is gone and the other theme are seen; noise of drawing is not. Thresholds are our own choice."""
    rng = np.random.default_rng(1)
    page = np.full((150, WIDE, 3), 244, np.uint8)
    page[20:120, 130:230] = 20
    noisy = np.clip(page.astype(int) + rng.normal(0.0, 12.0, page.shape), 0, 255).astype(np.uint8)
    lost, dark = page.copy(), 255 - page
    lost[20:120, 130:230] = 244
    whole = Image.fromarray(page)
    assert differing(whole, Image.fromarray(noisy)) < SHARE
    assert differing(whole, Image.fromarray(lost)) > SHARE and differing(whole, Image.fromarray(dark)) > SHARE


def lost_part(page, part: str, kept: Path) -> float:
    """Return the share of points that differ while a part of the page is hidden."""
    page.evaluate("part => { document.querySelector(part).style.visibility = 'hidden'; }", part)
    page.wait_for_timeout(200)
    share = differing(small(page.screenshot()), Image.open(kept))
    page.evaluate("part => { document.querySelector(part).style.visibility = ''; }", part)
    return share


@pytest.mark.parametrize("theme", ["light", "dark"])
def test_the_screens_look_as_they_were_kept(browser, served, tiny_campaign, theme):
    measured(tiny_campaign, "one")
    context = browser.new_context(viewport={"width": 1280, "height": 800}, color_scheme=theme, reduced_motion="reduce")
    page = context.new_page()
    page.set_default_timeout(90_000)
    enter(page, served, "plan")
    worst: dict[str, float] = {}
    for wide, tall in SIZES.items():
        page.set_viewport_size({"width": wide, "height": tall})
        for name, (where, sign) in SCREENS.items():
            page.goto(f"{served.base}/#{where}")
            page.wait_for_selector(sign)
            until(page, "document.querySelector('.panel[aria-busy]') === null", seconds=60.0)
            page.wait_for_timeout(1200)
            shown, kept = small(page.screenshot()), KEPT / f"{name}-{wide}-{theme}.png"
            if os.environ.get("COLURE_KEEP_PICTURES"):
                KEPT.mkdir(exist_ok=True)
                shown.quantize(128).save(kept, optimize=True)
            worst[kept.stem] = differing(shown, Image.open(kept))
            if (name, wide) == ("explore", 1280):
                planted = [lost_part(page, part, kept) for part in (".stage .view", ".tab-card", "header.top")]
    context.close()
    # What is taken away from the page itself is seen: without it the comparison would prove nothing.
    assert min(planted) > SHARE, planted
    print(
        {name: round(100.0 * share, 2) for name, share in worst.items()},
        "planted:",
        [round(100.0 * v, 1) for v in planted],
    )
    assert not {name: share for name, share in worst.items() if share > SHARE}


def story_campaign(folder: Path) -> Path:
    """A 38 GHz horn over the front half, with limits: nothing of it is the demo's."""
    start_campaign(folder, kind="horn", band="37-39")
    edited(folder, "goal.toml", ("points = 5", "points = 3\nregion_deg = 90"))
    limits = 'name = "Horn, first article"\ndecision = "guard-band"\n[[limits]]\nfigure = "gain_dbi"\nat_least = 15.0\n'
    (folder / "limits.toml").write_text(limits, encoding="utf-8")
    return folder


def test_a_story_in_pictures(browser, tmp_path):
    """Plan by dragging, tutor, align, start, watch, pause, resume, stop, go on, explore, verdict, report, a shared link."""
    folder = story_campaign(tmp_path / "horn")
    place = Path(os.environ.get("COLURE_STORY", str(tmp_path / "story")))
    place.mkdir(parents=True, exist_ok=True)
    for served in serving([folder]):
        size, theme = os.environ.get("COLURE_STORY_WINDOW", "1280x800-light").split("-")
        wide, tall = (int(v) for v in size.split("x"))
        context = browser.new_context(viewport={"width": wide, "height": tall}, color_scheme=theme)
        page = context.new_page()
        page.set_default_timeout(120_000)
        trouble: list[str] = []
        page.on("pageerror", lambda e, heard=trouble: heard.append(str(e)))
        count = [0]

        def keep(what: str, shown=page, count=count) -> None:
            shown.wait_for_timeout(700)
            count[0] += 1
            shown.screenshot(path=str(place / f"{count[0]:02d}-{what}.png"))

        enter(page, served, "plan")
        page.wait_for_selector(".plan-answer .verdict")
        keep("plan")
        track = page.get_by_label("through the scan").bounding_box()
        page.mouse.move(track["x"] + 4, track["y"] + track["height"] / 2)
        page.mouse.down()
        page.mouse.move(track["x"] + 0.4 * track["width"], track["y"] + track["height"] / 2, steps=8)
        page.mouse.up()
        keep("plan-dragged")
        page.goto(f"{served.base}/#learn")
        page.get_by_role("button", name="play").click()
        page.wait_for_timeout(6000)
        keep("tutor")
        page.goto(f"{served.base}/#align")
        page.get_by_role("button", name="talk to every instrument").click()
        page.wait_for_selector("[aria-label=Instruments] table")
        page.get_by_role("button", name="take motion lease").click()
        page.get_by_text("you may move the axes").wait_for()
        page.get_by_role("button", name="take one sweep").click()
        page.wait_for_selector("[aria-label='One sweep'] .chart svg path")
        page.get_by_role("button", name="live reading").click()
        keep("align")
        page.get_by_role("button", name="give back").click()
        page.goto(f"{served.base}/#scan")
        page.get_by_role("button", name="take motion lease").click()
        page.get_by_text("you may move the axes").wait_for()
        page.get_by_role("button", name="start or go on").click()
        page.get_by_label("Everyone is clear").check()
        keep("start")
        page.get_by_role("button", name="start", exact=True).click()
        until(page, "parseFloat(document.querySelector('.big').textContent) > 6", seconds=120.0)
        keep("watch")
        page.get_by_role("button", name="pause").click()
        page.wait_for_selector("main .large:has-text('paused')")
        keep("paused")
        page.get_by_role("button", name="resume").click()
        page.wait_for_selector("main .large:has-text('running')")
        page.get_by_role("button", name="STOP").click()
        until(page, "document.querySelector('.control-bar.moving') === null", seconds=60.0)
        keep("stopped")
        page.get_by_role("button", name="give back").click()
        begin_scan(page)
        page.wait_for_selector("main .large:has-text('done')", timeout=240_000)
        keep("done")
        page.goto(f"{served.base}/#explore?run=first")
        page.wait_for_selector(".tab-card .chart svg path")
        keep("explore")
        page.get_by_role("button", name="with intervals").click()
        until(page, "/ to /.test(document.querySelector('.figures-panel table')?.innerText ?? '')", seconds=240.0)
        page.get_by_role("tab", name="Verdict").click()
        page.get_by_role("button", name="hold limits.toml against this run").click()
        page.wait_for_selector("[role=tabpanel] table")
        keep("verdict")
        page.get_by_role("tab", name="Report").click()
        page.get_by_role("button", name="write the report").click()
        page.wait_for_selector("text=open the report (pdf)", timeout=240_000)
        keep("report")
        page.get_by_role("tab", name="Map").click()
        page.wait_for_selector(".tab-card canvas.map")
        address = page.url.split("#")[1]
        other = browser.new_context(viewport={"width": 390, "height": 844}, color_scheme="dark")
        second = other.new_page()
        second.set_default_timeout(120_000)
        second.goto(served.link(SessionRole.VIEW))
        second.wait_for_selector("nav")
        second.goto(f"{served.base}/#{address}")
        second.wait_for_selector(".tab-card canvas.map")
        # The second browser stands at the same run, view and frequency, and may stop.
        assert second.get_by_role("tab", name="Map").get_attribute("aria-selected") == "true"
        assert second.get_by_role("button", name="STOP").is_enabled()
        second.locator(".tab-card").scroll_into_view_if_needed()
        keep("shared", second)
        other.close()
        context.close()
        assert not trouble, trouble
    assert len(list(place.glob("*.png"))) >= 13
