"""Everybody can use the page: axe-core's rules, keys, narrow and wide windows, less motion."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.browser.test_pages import enter, measured

ROOT = Path(__file__).parents[2]
AXE = ROOT / "web" / "node_modules" / "axe-core" / "axe.min.js"
#: Rules of WCAG 2.2 up to AA (contrast 4.5:1 of text among them) and the library's good practice.
RULES = ("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice")
PLACES = {
    "plan": ".plan-answer .verdict",
    "align": "text=Flip test",
    "scan": "text=What happened",
    "explore?run=one": ".tab-card .chart svg path",
    "explore?run=one&tab=map": ".tab-card canvas.map",
    "explore?run=one&tab=together": ".piece",
    "explore?run=one&tab=recipe": ".steps-list",
    "explore?run=one&tab=impulse": ".tab-card",
    "learn": "text=phi",
}


def violations(page) -> list[str]:
    """Return what axe-core finds wrong on the page as it stands, one line a place."""
    page.evaluate(AXE.read_text("utf-8"))
    found = page.evaluate(
        "rules => axe.run(document, {runOnly: rules}).then(r => r.violations.flatMap(v => v.nodes.map("
        "n => `${v.id}: ${n.target.join(' ')}: ${n.failureSummary.split('\\n').slice(1).join('; ').trim()}`)))",
        list(RULES),
    )
    return found


@pytest.mark.parametrize("theme", ["light", "dark"])
def test_no_rule_is_broken(page, served, tiny_campaign, theme, request):
    """Every page and its main views, one after the other in one window."""
    if not request.config.getoption("--nightly"):
        pytest.skip("nightly")
    assert AXE.is_file(), "axe-core is not installed: run npm ci in web/"
    measured(tiny_campaign, "one")
    page.emulate_media(color_scheme=theme)
    enter(page, served, "plan")
    broken = {}
    for place, sign in PLACES.items():
        page.goto(f"{served.base}/#{place}")
        page.wait_for_selector(sign)
        page.wait_for_timeout(300)
        if found := violations(page):
            broken[place] = found
    assert not broken, "\n".join(f"{place}: {one}" for place, found in broken.items() for one in found)
