"""Slices of a finished run are measured again from the page: asked for where the run is shown, with the cautions of every start."""

from __future__ import annotations

from colure.app import services
from colure.app.storage.folders import run_folder
from tests.browser.test_pages import enter, wait_until_free


def test_slices_of_a_finished_run_are_measured_again(page, served, tiny_campaign, nightly):
    run = run_folder(tiny_campaign, "first")
    assert services.acquire(*services.make_plan(tiny_campaign), run).state.value == "done"
    before = services.verify(run)
    enter(page, served, "explore?run=first")
    page.wait_for_selector("table.figures tbody tr")
    page.locator(".drawer summary").click()
    asked = page.get_by_role("button", name="measure slices of first again")
    asked.click()
    # Without the motion lease nothing can be asked for; the dialog says so.
    page.wait_for_selector(".dialog:has-text('Take the motion lease first')")
    page.get_by_role("button", name="not now").click()
    page.get_by_role("button", name="take motion lease").click()
    page.get_by_text("you may move the axes").wait_for()
    asked.click()
    page.get_by_role("textbox", name="slices").fill("99")
    page.get_by_role("button", name="what it takes").click()
    page.wait_for_selector(".dialog .faults:has-text('must be slices from')")
    page.get_by_role("textbox", name="slices").fill("1")
    page.get_by_role("button", name="what it takes").click()
    page.wait_for_selector(".dialog:has-text('the first readings are kept')")
    page.wait_for_selector(".dialog:has-text('two boresight checks')")
    start = page.get_by_role("button", name="start", exact=True)
    assert start.is_disabled()
    page.get_by_label("Everyone is clear").check()
    start.click()
    page.wait_for_selector("main .large:has-text('done')", timeout=60_000)
    plan = services.make_plan(tiny_campaign)[1]
    count = int((plan.slice_index == 1).sum())
    page.wait_for_selector(f"main p:has-text('{count} of {count} points')")
    wait_until_free(run.journal)
    after = services.verify(run)
    assert after.whole and after.again == count and after.rows > before.rows + count
