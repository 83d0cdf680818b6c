"""The pictures in the sheet: which there are, that they are those of the commands, what is lacking."""

from __future__ import annotations

import re
from collections import Counter
from xml.etree import ElementTree

import pytest
from sheets import FERN, Element, Files, classed, cuff, page_of, parsed, pipeline_of, words
from svgs import SVG, check_svg
from validity_test import SIXTY

from border.showing.chart_record import chart_record
from border.showing.sheet_pictures import LARGEST

EASED = """\
[[work.adjust]]
round = 2
at = "cuff.12"
by = 1
"""


def captions(section: Element) -> list[str]:
    return [words(figure.find("figcaption")) for figure in section.iter("figure")]


def drawn(page: str) -> list[ElementTree.Element]:
    """The pictures of a page, each a valid SVG by itself."""
    told = re.findall(r"<svg .*?</svg>", page, re.DOTALL)
    return [check_svg(svg.replace("<svg ", f'<svg xmlns="{SVG[1:-1]}" ', 1)) for svg in told]


def symbols(root: ElementTree.Element) -> list[Counter[str]]:
    """By round, how many symbols of each kind."""
    return [
        Counter(g.get("class", "").removeprefix("symbol ") for g in row.findall(f"{SVG}g"))
        for row in root.iter(f"{SVG}g")
        if row.get("class") == "worked"
    ]


def test_the_demo_has_its_yoke_and_the_charts_that_help() -> None:
    page = page_of(FERN, "fern.toml")
    tree = parsed(page)
    whole = next(e for e in tree.iter("section") if e.get("id") == "whole")
    shown = "The yoke as it is joined: arrows go the way of working, from the disc with the number"
    assert captions(whole) == [shown]
    neck, left, right, hem = (captions(edge) for edge in classed(tree, "edge"))
    assert neck == [
        "One repeat and its neighbours",
        "Round a corner, at front.1",
        "Where something is eased in, over back.3",
    ]
    # One repeat of these is seen round the corner, too.
    assert (left, right) == (["Round a corner, at front.1"], ["Round a corner, at front.5"])
    assert hem == ["One repeat and its neighbours"]
    assert len(drawn(page)) == 7


@pytest.mark.parametrize(
    ("edge", "section", "number"),
    [("neck", None, 1), ("neck", "front.1", 2), ("neck", "back.3", 3), ("hem", None, 6)],
)
def test_a_chart_in_the_page_is_that_of_the_command(
    edge: str, section: str | None, number: int
) -> None:
    pipeline = pipeline_of(FERN, "fern.toml")
    pipeline.only = edge
    charted, findings = pipeline.charted(section, None)
    (work,) = chart_record("", charted, findings, {})["works"]
    told = [Counter(symbol["symbol"] for symbol in r["symbols"]) for r in work["rounds"]]
    assert symbols(drawn(page_of(FERN, "fern.toml"))[number]) == told
    assert sum(told, Counter())["sc"] > 5


def test_every_picture_is_called_what_stands_over_it() -> None:
    page = page_of(FERN, "fern.toml")
    tree = parsed(page)
    over = captions(tree)
    assert [root.findtext(f"{SVG}title") for root in drawn(page)] == over
    assert all(root.get("role") == "img" for root in drawn(page))


def test_pictures_and_page_keep_out_of_each_other() -> None:
    page = page_of(FERN, "fern.toml")
    style = re.search(r"<style>(.*?)</style>", page, re.DOTALL)
    assert style
    of_page = set(re.findall(r"\.([a-z][a-z-]*)", style[1]))
    assert {"picture", "edge", "round"} <= of_page
    for root in drawn(page):
        used = {name for e in root.iter() for name in e.get("class", "").split()}
        assert used and not used & of_page
        for element in root.iter():
            assert element.tag != f"{SVG}style"
            assert not {"id", "style", "href", "onclick"} & element.attrib.keys()
            assert element.get("fill", "none") in ("none", "#000", "#fff")
            assert element.get("stroke", "none") in ("none", "#000", "#fff")


def test_without_a_corner_there_is_one_chart() -> None:
    tree = parsed(page_of(cuff(), "cuff.toml"))
    assert captions(tree) == [
        "Every edge by itself: arrows go the way of working, from the disc with the number",
        "One repeat and its neighbours",
    ]


def test_what_is_eased_in_has_its_chart_on_a_long_edge() -> None:
    files = cuff(EASED)
    files["cuff.toml"] = files["cuff.toml"].replace("motifs = 6", "motifs = 20")
    assert (
        captions(parsed(page_of(files, "cuff.toml")))[1:]
        == [
            "One repeat and its neighbours",
            "Where something is eased in, over cuff.11",  # behind its last stitch, which stands on the joint
        ]
    )


def test_a_border_text_alone_has_no_yoke() -> None:
    tree = parsed(page_of(FERN, "shell-edging.border", 90))
    assert captions(tree) == ["One repeat and its neighbours"]
    assert not [e for e in tree.iter("section") if e.get("id") == "whole"]


def test_where_no_round_can_be_worked_the_page_says_so_and_goes_on() -> None:
    page = page_of(cuff(lace="terms: us\nround 1: 1 snark in each loop.\n"), "cuff.toml")
    edge = classed(parsed(page), "edge")[0]
    assert "Chart: there is none, since no round could be worked." in words(edge)
    assert "no round could be counted" in words(edge)
    assert len(drawn(page)) == 1 and "Putting right" in page


def test_a_picture_too_large_for_a_phone_is_left_out_in_words() -> None:
    files = cuff()
    files["cuff.toml"] = files["cuff.toml"].replace(
        "motifs = 6, places = 4", "motifs = 240, places = 36"
    )
    pipeline = pipeline_of(files, "cuff.toml")
    assert len(pipeline.yoke_picture or "") > LARGEST
    page = page_of(files, "cuff.toml")
    assert "too large for this page; border yoke --svg draws it by itself." in page
    assert captions(parsed(page)) == ["One repeat and its neighbours"]


@pytest.mark.parametrize(
    ("files", "name", "most"),
    [(FERN, "fern.toml", 320_000), (SIXTY, "sixty.toml", 1_050_000)],
    ids=["the demo", "sixty wheels, ten rounds, four edges"],
)
def test_the_page_stays_small_enough_for_a_phone(files: Files, name: str, most: int) -> None:
    assert len(page_of(files, name).encode()) < most
