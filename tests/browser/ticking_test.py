"""The sheet in a browser: ticks, what keeps them, and what takes them away."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Browser, Locator, Page, expect
from sheets import LACE, Files, cuff

Lay = Callable[[Files, str], str]


def boxes(page: Page, round_: int) -> Locator:
    return page.locator(f"#edge-1-round-{round_} input[type=checkbox]")


def opened_again(page: Page, url: str | None = None) -> None:
    """The page is loaded anew, a moment later: the browser keeps things beside the page.

    `url`: another page, laid in its place.
    """
    page.wait_for_timeout(200)
    page.goto(url) if url else page.reload()


def ticked(page: Page) -> list[list[int]]:
    """Which boxes are ticked, round by round."""
    return [
        [i for i, box in enumerate(boxes(page, n).all()) if box.is_checked()] for n in (1, 2, 3)
    ]


def test_ticks_survive_a_reload(page: Page, lay: Lay) -> None:
    page.goto(lay(cuff(), "cuff.toml"))
    boxes(page, 1).nth(1).check()
    boxes(page, 3).nth(4).check()
    page.get_by_label("Begun on").fill("1 March")
    page.get_by_label("What I really got in round 2").fill("71, one short")
    before = ticked(page)
    assert before == [[1], [], [4]]
    opened_again(page)
    assert ticked(page) == before
    expect(page.get_by_label("Begun on")).to_have_value("1 March")
    expect(page.get_by_label("What I really got in round 2")).to_have_value("71, one short")
    boxes(page, 3).nth(4).uncheck()
    opened_again(page)
    assert ticked(page) == [[1], [], []]


def test_a_changed_border_clears_only_the_round_that_changed(page: Page, lay: Lay) -> None:
    page.goto(lay(cuff(), "cuff.toml"))
    for n in (1, 2, 3):
        boxes(page, n).nth(n).check()
    opened_again(page, lay(cuff(lace=LACE.replace("ch 7", "ch 9")), "cuff.toml"))
    assert ticked(page) == [[1], [2], []]
    opened_again(page, lay(cuff(), "cuff.toml"))
    assert ticked(page) == [[1], [2], [3]]


def test_another_project_has_other_ticks(page: Page, lay: Lay) -> None:
    page.goto(lay(cuff(), "cuff.toml"))
    boxes(page, 1).first.check()
    opened_again(page, lay(cuff(name="Another cuff"), "cuff.toml"))
    assert ticked(page) == [[], [], []]


def test_all_is_taken_away_only_when_that_is_meant(page: Page, lay: Lay) -> None:
    page.goto(lay(cuff(), "cuff.toml"))
    boxes(page, 1).first.check()
    page.get_by_label("Finished on").fill("2 May")
    page.once("dialog", lambda asked: asked.dismiss())
    page.get_by_role("button", name="Take all ticks away").click()
    assert ticked(page) == [[0], [], []]
    page.once("dialog", lambda asked: asked.accept())
    page.get_by_role("button", name="Take all ticks away").click()
    expect(page.get_by_role("status")).to_contain_text("taken away")
    assert ticked(page) == [[], [], []]
    opened_again(page)
    assert ticked(page) == [[], [], []]
    expect(page.get_by_label("Finished on")).to_have_value("")


def test_rounds_worked_already_stay_ticked(page: Page, lay: Lay) -> None:
    page.goto(lay(cuff("done = 1\n"), "cuff.toml"))
    assert len(ticked(page)[0]) == boxes(page, 1).count() > 6
    expect(boxes(page, 1).first).to_be_disabled()
    expect(page.get_by_role("heading", name="Round 1 (worked)")).to_be_visible()
    page.once("dialog", lambda asked: asked.accept())
    page.get_by_role("button", name="Take all ticks away").click()
    assert len(ticked(page)[0]) == boxes(page, 1).count()


def test_she_finds_her_place_again(page: Page, lay: Lay) -> None:
    page.goto(lay(cuff(), "cuff.toml"))
    for i in range(3):
        boxes(page, 2).nth(i).check()
    opened_again(page)
    page.get_by_role("button", name="Go to my place").click()
    expect(boxes(page, 2).nth(3)).to_be_focused()
    expect(boxes(page, 2).nth(3)).to_be_in_viewport()


def test_all_can_be_done_from_the_keyboard(page: Page, lay: Lay) -> None:
    page.goto(lay(cuff(), "cuff.toml"))
    reached: list[str] = []
    for _ in range(80):
        page.keyboard.press("Tab")
        focused = page.evaluate(
            """() => {
                const at = document.activeElement;
                const seen = getComputedStyle(at).outlineStyle !== "none"
                    && parseFloat(getComputedStyle(at).outlineWidth) >= 2;
                const named = at.innerText || at.getAttribute("aria-label")
                    || at.closest("label")?.innerText || "";
                return [named.trim(), at.tagName, seen];
            }"""
        )
        name, tag, seen = focused
        if tag == "BODY":
            break
        assert name and seen, focused
        reached.append(name)
    fields = page.locator("input, button, nav a, [tabindex='0']").count()
    assert len(reached) == fields
    boxes(page, 1).nth(2).focus()
    page.keyboard.press("Space")
    opened_again(page)
    assert ticked(page) == [[2], [], []]


def test_screen_readers_are_told_what_every_box_is(page: Page, lay: Lay) -> None:
    page.goto(lay(cuff(), "cuff.toml"))
    second = page.get_by_role("region", name="Round 2")
    expect(second.get_by_role("checkbox", name="round 2 is worked")).to_be_visible()
    box = second.get_by_role("checkbox", name="at cuff.1 | cuff.2:")
    expect(box).to_have_count(1)
    for role in ("banner", "navigation", "main", "contentinfo"):
        expect(page.get_by_role(role)).to_have_count(1)


def test_without_scripts_all_is_there_to_tick(browser: Browser, lay: Lay) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(lay(cuff(), "cuff.toml"))
    expect(page.get_by_text("Scripts are off")).to_be_visible()
    expect(page.get_by_role("button")).to_have_count(0)
    boxes(page, 2).nth(1).check()
    expect(boxes(page, 2).nth(1)).to_be_checked()
    expect(page.get_by_role("heading", name="Putting right")).to_be_visible()
    context.close()


def test_a_browser_that_keeps_nothing_says_so(page: Page, lay: Lay) -> None:
    page.add_init_script(
        "Object.defineProperty(window, 'localStorage', { get() { throw new Error('no'); } })"
    )
    page.goto(lay(cuff(), "cuff.toml"))
    expect(page.get_by_role("status")).to_contain_text("tick by pen")
    boxes(page, 1).first.check()
    page.once("dialog", lambda asked: asked.accept())
    page.get_by_role("button", name="Take all ticks away").click()
    assert ticked(page) == [[], [], []]


@pytest.mark.parametrize(
    "name",
    ["<script>document.title='no'</script>", '"><img src=x onerror="document.title=1">', "ヨーク"],
)
def test_a_name_is_never_run(page: Page, lay: Lay, name: str) -> None:
    page.goto(lay(cuff(name=name), "cuff.toml"))
    expect(page.get_by_role("heading", level=1)).to_have_text(name)
    assert page.title() == f"{name}: row sheet"
    boxes(page, 1).first.check()
    opened_again(page)
    assert ticked(page) == [[0], [], []]
