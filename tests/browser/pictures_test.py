"""The pictures in the sheet, in a browser: named, whole, and as they are by themselves."""

from __future__ import annotations

import io
import re
from collections.abc import Callable
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect
from pypdf import PdfReader
from sheets import FERN, Files, cuff, page_of, parsed, words
from validity_test import SIXTY

Lay = Callable[[Files, str], str]

BOOKS: dict[str, tuple[Files, str]] = {
    "the demo": (FERN, "fern.toml"),
    "sixty wheels": (SIXTY, "sixty.toml"),
}
each_book = pytest.mark.parametrize("which", BOOKS)

AS_DRAWN = """(svg) => [...svg.querySelectorAll(":not(title)")].map((e) => {
    const style = getComputedStyle(e);
    const box = e.getBBox ? e.getBBox() : { x: 0, y: 0, width: 0, height: 0 };
    const how = ["fill", "stroke", "stroke-width", "stroke-dasharray", "font-size", "font-family",
        "font-weight", "font-style", "text-anchor", "letter-spacing", "visibility", "opacity"];
    return {
        tag: e.tagName,
        how: how.map((key) => style.getPropertyValue(key)),
        box: [box.x, box.y, box.x + box.width, box.y + box.height],
    };
})"""


@each_book
def test_every_picture_has_a_name_for_those_who_cannot_see_it(
    page: Page, lay: Lay, which: str
) -> None:
    page.goto(lay(*BOOKS[which]))
    figures = page.locator("figure.picture")
    assert figures.count() > 4
    for figure in figures.all():
        over = figure.locator("figcaption").inner_text()
        expect(figure.get_by_role("img", name=over, exact=True)).to_have_count(1)
    expect(page.get_by_role("img")).to_have_count(figures.count())


@each_book
@pytest.mark.parametrize("width", [360, 1280])
def test_a_picture_is_as_wide_as_the_page_at_most_and_keeps_its_shape(
    page: Page, lay: Lay, which: str, width: int
) -> None:
    page.set_viewport_size({"width": width, "height": 740})
    page.goto(lay(*BOOKS[which]))
    for media in ("screen", "print"):
        page.emulate_media(media=media)
        for svg in page.locator("figure svg").all():
            box = svg.bounding_box()
            assert box and box["x"] >= 0 and box["x"] + box["width"] <= width
            wide, high = map(float, (svg.get_attribute("viewBox") or "").split()[2:])
            shown = svg.evaluate("(e) => [e.getScreenCTM().a, e.getScreenCTM().d]")
            assert shown[0] == pytest.approx(shown[1])
            assert shown[0] * wide <= box["width"] + 0.5 and shown[1] * high <= box["height"] + 0.5
            if media == "screen":
                assert box["width"] / box["height"] == pytest.approx(wide / high, rel=0.01)
                assert width == 360 or shown[0] > 0.5


@pytest.mark.parametrize("number", range(7))
def test_the_page_does_not_change_how_a_picture_is_drawn(
    browser: Browser, page: Page, lay: Lay, number: int
) -> None:
    """Every line and word of it stands as it does in a page of its own, and looks as there."""
    page.set_viewport_size({"width": 1280, "height": 900})
    page.goto(lay(*BOOKS["the demo"]))
    svg = page.locator("figure svg").nth(number)
    within = svg.evaluate(AS_DRAWN)
    bare = browser.new_page(viewport={"width": 1280, "height": 900})
    bare.set_content(svg.evaluate("(e) => e.outerHTML"))
    alone = bare.locator("svg").evaluate(AS_DRAWN)
    bare.close()
    assert len(within) == len(alone) > 100
    for inside, outside in zip(within, alone, strict=True):
        assert (inside["tag"], inside["how"]) == (outside["tag"], outside["how"])
        assert inside["box"] == pytest.approx(outside["box"], abs=1.5)  # fonts are hinted


@each_book
@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_no_page_is_broken_within_a_picture(page: Page, lay: Lay, which: str, paper: str) -> None:
    files, name = BOOKS[which]
    page.goto(lay(files, name))
    printed = PdfReader(io.BytesIO(page.pdf(format=paper)))
    pages = [_tight(sheet.extract_text()) for sheet in printed.pages]
    figures: list[Any] = list(parsed(page_of(files, name)).iter("figure"))
    for figure in figures:
        over = _tight(words(figure.find("figcaption")))
        drawn = [e for e in figure.iter() if str(e.tag).endswith("}text") or e.tag == "text"]
        inside = {_tight(words(text)) for text in drawn}
        assert inside
        assert any(over in page and all(text in page for text in inside) for page in pages), over


def _tight(text: str) -> str:
    return re.sub(r"\s+", "", text)


def test_worked_rounds_print_with_their_ticks(page: Page, lay: Lay) -> None:
    files = cuff("done = 1\n")
    page.goto(lay(files, "cuff.toml"))
    page.locator("#edge-1-round-2 input[type=checkbox]").first.check()
    printed = PdfReader(io.BytesIO(page.pdf(format="A4", print_background=False)))
    ticks = "".join(sheet.extract_text() for sheet in printed.pages).count("✓")
    assert ticks == page.locator("input[type=checkbox]:checked").count() > 6
    box = page.locator("#edge-1-round-1 input[type=checkbox]").first
    how = "(e) => [getComputedStyle(e, '::before').color, getComputedStyle(e).borderColor]"
    assert box.evaluate(how) == ["rgb(0, 0, 0)", "rgb(0, 0, 0)"]
