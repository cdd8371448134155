"""Several runs on one page: compared, as a series, and a run that holds cuts alone."""

from __future__ import annotations

import pytest

from colure.app import services
from colure.app.services.rehearsal import _record
from colure.app.services.rehearsal import measured as swept
from colure.app.storage.folders import run_folder
from colure.app.web.guard.roles import SessionRole
from colure.app.web.views.together import over_runs, over_states
from colure.model.files import save_dataset
from colure.planning.preflight import make_plan
from tests.app.services.test_states_coverage import beams, rehearsed  # noqa: F401 - fixtures
from tests.app.test_cuts import BOTH, ROLL, campaign
from tests.browser.conftest import serving
from tests.browser.test_pages import enter, measured, until


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
    save_dataset(_record(plan, *swept(own, plan, seed=1)), run.record)
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
        # The frequency stands in the address, and the cursor of a chart is the scene's: a reload finds both.
        until(page, "location.hash.includes('f=37')")
        field = page.locator(".tab-card .chart svg[role=img]").last.bounding_box()
        page.mouse.click(field["x"] + 0.6 * field["width"], field["y"] + 80)
        until(page, "/at=[0-9.]+%2C90[.]00/.test(location.hash)")
        page.goto("about:blank")
        page.go_back()
        page.wait_for_selector(".figures-panel .subject:has-text('37.000 GHz')")
        until(page, "document.querySelectorAll('.chart .legend b').length > 0")
        context.close()


def table_of(page, label):
    """Rows of a table as text, the head first."""
    rows = page.locator(f"[aria-label={label}] tr").all()
    return [[cell.strip() for cell in row.locator("th, td").all_inner_texts()] for row in rows]


def test_a_series_says_what_the_service_says(page, served, tiny_campaign):
    """Three devices, the last one askew: numbers, verdict and file are those of the service; the golden unit stays in."""
    for name, truth in (("one", {}), ("two", {}), ("three", {"device_tilt_deg": 3.0})):
        own, run = measured(tiny_campaign, name, **truth)
        services.evaluate(services.process(own, run), run)
    wanted = over_runs(tiny_campaign, ["one", "two", "three"], "two", None)
    page.set_default_timeout(90_000)
    enter(page, served, "explore?run=one&tab=together")
    page.get_by_label("golden unit").select_option("two")
    boxes = page.get_by_role("group", name="runs of the series")
    assert boxes.get_by_label("two").is_disabled() and boxes.get_by_label("two").is_checked()
    page.get_by_role("button", name="show the series").click()
    page.wait_for_selector("[aria-label=series] table")
    head, *rows = table_of(page, "series")
    order = [name for name in head if name in ("one", "two", "three")]
    assert head[:4] == ["figure", "mean", "spread", "trend"] and set(order) == {"one", "two", "three"}
    for row, told in zip(rows, wanted["rows"], strict=True):
        assert row[0] == told["label"] and float(row[1].split()[0]) == pytest.approx(told["mean"], abs=0.0051)
        for name in order:
            i = wanted["runs"].index(name)
            assert float(row[head.index(name)].split()[0]) == pytest.approx(told["values"][i], abs=0.0051)
    out = sum(any(v is not None and abs(v) > 1 for i, v in enumerate(r["e_n"]) if i != 1) for r in wanted["rows"])
    said = page.inner_text("section[aria-label=Series] .verdict")
    assert said.startswith(f"{out} of {len(rows)} figures differ" if out else "No figure"), said
    with page.expect_download() as event:
        page.locator("section[aria-label=Series]").get_by_role("button", name="CSV").click()
    kept = event.value.path().read_text("utf-8").splitlines()
    assert len(kept) == len(rows) + 1 and "mean" in kept[0] and "trend per device" in kept[0] and "E_n" in kept[0]
    # Another choice takes the table away; one run alone is no series.
    for name in ("one", "three"):
        boxes.get_by_label(name, exact=True).uncheck()
    assert page.locator("[aria-label=series]").count() == 0
    assert page.get_by_role("button", name="show the series").is_disabled()


def test_coverage_says_what_the_service_says(browser, beams):  # noqa: F811 - the fixture
    wanted = over_states(beams, "first")
    for served in serving([beams]):
        context = browser.new_context(viewport={"width": 1280, "height": 900})
        page = context.new_page()
        page.set_default_timeout(90_000)
        enter(page, served, "explore?run=first&tab=together")
        page.get_by_role("button", name="read the coverage").click()
        page.wait_for_selector("[aria-label=coverage] table")
        head, *rows = table_of(page, "coverage")
        assert head == ["state", "peak", *(f"{p:g} %" for p in wanted["percent"])]
        assert [row[0] for row in rows] == ["left", "broadside", "right", "best of all"]
        for row, told in zip(rows, wanted["rows"], strict=True):
            assert [float(v) for v in row[1:]] == pytest.approx([told["peak"], *told["levels"]], abs=0.0051)
        said = page.inner_text("section[aria-label=Coverage]")
        assert f"{wanted['expanded_db']:.2f} dB (k = 2)" in said and wanted["unit"] in said
        drawn = page.locator("section[aria-label=Coverage] .chart svg[role=img]")
        assert drawn.count() == 1 and page.locator("section[aria-label=Coverage] .chart svg path").count() >= 4
        context.close()
