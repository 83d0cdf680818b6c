"""The sheet on paper and on a phone: nothing is cut, no round is parted from its heading."""

from __future__ import annotations

import io
import re
from collections.abc import Callable

import pytest
from playwright.sync_api import Page
from pypdf import PdfReader
from sheets import FERN, Files, classed, cuff, page_of, parsed, words

Lay = Callable[[Files, str], str]

MM = 72 / 25.4
PAPER = {"A4": (210, 297), "Letter": (215.9, 279.4)}

TEN = """\
border: Ten rounds
terms: us
round 1: *1 sc in next loop, ch 3; repeat from *.
round 2: *1 sc in next space, ch 5; repeat from *.
rounds 3-9: as round 2.
round 10: (3 dc, picot, 3 dc) in each space.
"""


def large() -> Files:
    """Sixty wheels, ten rounds."""
    files = cuff(lace=TEN)
    sections = "{ section = 'front', motifs = 30, places = 4 }, { section = 'left side', motifs = 30, places = 5 }"
    files["cuff.toml"] = re.sub("runs = .*", f"runs = [{sections}]", files["cuff.toml"])
    return files


BOOKS: dict[str, Callable[[], tuple[Files, str]]] = {
    "the demo": lambda: (FERN, "fern.toml"),
    "a large yoke": lambda: (large(), "cuff.toml"),
    "long names": lambda: (cuff(name="W" * 100), "cuff.toml"),
}


@pytest.fixture(params=PAPER)
def paper(request: pytest.FixtureRequest) -> str:
    return str(request.param)


@pytest.mark.parametrize("which", BOOKS)
def test_it_prints_whole(page: Page, lay: Lay, which: str, paper: str) -> None:
    files, name = BOOKS[which]()
    page.goto(lay(files, name))
    printed = PdfReader(io.BytesIO(page.pdf(format=paper, prefer_css_page_size=False)))
    width, height = (side * MM for side in PAPER[paper])
    pages = []
    for sheet in printed.pages:
        assert abs(float(sheet.mediabox.width) - width) < 2
        assert abs(float(sheet.mediabox.height) - height) < 2
        pages.append(_tight(sheet.extract_text()))
    tree = parsed(page_of(files, name))
    _no_round_is_parted(pages, tree)
    _nothing_is_lost(pages, tree)


def _no_round_is_parted(pages: list[str], tree: object) -> None:
    """From its heading to its last line every round stands on one page: all of these fit."""
    for shown in classed(tree, "round"):
        first = _tight(words(shown.find(".//h3")) + words(classed(shown, "row")[0]))
        closing = (words(it) for of in ("total", "tape", "thread") for it in classed(shown, of))
        last = _tight("".join(closing))
        assert any(first in p and last in p.partition(first)[2] for p in pages), first


def _nothing_is_lost(pages: list[str], tree: object) -> None:
    """Every box is printed, each of them whole on its page."""
    wanted = [_tight(words(box)) for box in classed(tree, "so-far")]
    found = "\f".join(pages)
    at = 0
    for box in wanted:
        at = found.find(box, at)
        assert at >= 0, box
        at += len(box)
    for total in classed(tree, "total"):
        assert _tight(words(total)) in found


def _tight(text: str) -> str:
    return re.sub("[ \n]+", "", text)


@pytest.mark.parametrize("which", BOOKS)
@pytest.mark.parametrize("width", [360, 710, 1280])
def test_nothing_runs_out_at_the_side(page: Page, lay: Lay, which: str, width: int) -> None:
    files, name = BOOKS[which]()
    page.set_viewport_size({"width": width, "height": 740})
    page.goto(lay(files, name))
    for media in ("screen", "print"):
        page.emulate_media(media=media)
        out = page.evaluate(
            """() => [...document.querySelectorAll("body *")]
                .filter((e) => !e.closest(".scroll") && e.getClientRects().length)
                .filter((e) => e.getBoundingClientRect().right > innerWidth + 0.5
                    || e.getBoundingClientRect().left < -0.5)
                .map((e) => e.outerHTML.slice(0, 80))"""
        )
        assert out == []
        assert page.evaluate("document.documentElement.scrollWidth") <= width


def test_it_is_black_on_white(page: Page, lay: Lay) -> None:
    page.goto(lay(FERN, "fern.toml"))
    colours = page.evaluate(
        """() => [...new Set([...document.querySelectorAll("body, body *")]
            .flatMap((e) => [getComputedStyle(e).color, getComputedStyle(e).backgroundColor]))]"""
    )
    plain = {"rgb(0, 0, 0)", "rgb(255, 255, 255)", "rgba(0, 0, 0, 0)"}
    assert set(colours) <= plain


def test_what_can_be_touched_is_large_enough(page: Page, lay: Lay) -> None:
    page.set_viewport_size({"width": 360, "height": 740})
    page.goto(lay(cuff(), "cuff.toml"))
    for touched in page.locator(".tick, button").all():
        box = touched.bounding_box()
        assert box and box["height"] >= 44 and box["width"] >= 44


def test_a_round_longer_than_a_page_keeps_its_heading(page: Page, lay: Lay) -> None:
    files = cuff()
    files["cuff.toml"] = files["cuff.toml"].replace("motifs = 6", "motifs = 150")
    page.goto(lay(files, "cuff.toml"))
    printed = PdfReader(io.BytesIO(page.pdf(format="A4")))
    pages = [_tight(sheet.extract_text()) for sheet in printed.pages]
    tree = parsed(page_of(files, "cuff.toml"))
    for shown in classed(tree, "round"):
        heading = _tight(words(shown.find(".//h3")) + words(classed(shown, "row")[0]))
        first = _tight(words(classed(shown, "so-far")[0]))
        assert any(first in p.partition(heading)[2] for p in pages), heading
    _nothing_is_lost(pages, tree)
