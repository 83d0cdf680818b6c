"""The yoke as it is shown: rings with their sums, joints, edges; and its record."""

from __future__ import annotations

import json
from typing import Any

import jsonschema
from rich.console import Console

from border.showing.record import to_json, yoke_record
from border.showing.schema import schema
from border.showing.yoke_table import yoke_tables
from border.text.source import Source
from border.yoke.edges import trace
from border.yoke.project import read_project
from border.yoke.report import YokeReport

COLLAR = """\
format = 1
name = "Collar"

[yoke]
loops = 16
joined = 3
seam_loops = 1

[[strip]]
name = "collar"
motifs = 7
sides = ["neck 4", "outside 6"]
from = "collar.7"
to = "collar.1"
"""

BAND = """\
format = 1

[yoke]
loops = 16
joined = 3

[[strip]]
name = "band"
motifs = 5
sides = ["edge 5", "edge 5"]

[[motif]]
name = "band.1"
ring = ["edge 13", "join band.2"]

[[motif]]
name = "band.5"
ring = ["edge 12", "join band.4"]
"""


def yoke_of(text: str) -> YokeReport:
    project, _ = read_project(Source("yoke.toml", text))
    assert project is not None
    return trace(project)[1]


def shown(text: str) -> str:
    console = Console(width=80, color_system=None, markup=False, emoji=False, highlight=False)
    with console.capture() as captured:
        console.print(yoke_tables("Collar", yoke_of(text)))
    return "\n".join(line.rstrip() for line in captured.get().splitlines())


def record(text: str) -> Any:
    made = json.loads(to_json(yoke_record(yoke_of(text), (), {})))
    jsonschema.validate(made, schema() | {"$ref": "#/$defs/YokeRecord"})
    return made


def test_a_collar() -> None:
    assert shown(COLLAR).splitlines() == [
        "Collar",
        "7 motifs of 16 loops each, 7 joints, 2 edges",
        "it goes together and lies flat",
        "",
        "loops round each motif",
        "  collar.1                        neck 4 + join collar.2 3 + outside 6 + join",
        "                                  collar.7 3 = 16",
        "  collar.2 to collar.6, 5 motifs  neck 4 + join the next 3 + outside 6 + join",
        "                                  the one before 3 = 16",
        "  collar.7                        neck 4 + join collar.1 3 + outside 6 + join",
        "                                  collar.6 3 = 16",
        "",
        "joints",
        "  collar, 6 joints     each to the next, 3 loops of each",
        "  collar.1 | collar.7  3 loops of each",
        "",
        "neck: closed edge of 42 loops on 7 motifs",
        "  collar, 7 motifs  4 loops free, 6 with the seam loops each",
        "",
        "outside: closed edge of 56 loops on 7 motifs",
        "  collar, 7 motifs  6 loops free, 8 with the seam loops each",
    ]


def test_a_ring_that_does_not_add_up_is_marked() -> None:
    table = shown(BAND)
    assert "band.1                      edge 13 + join band.2 3 = 16\n" in table
    assert "band.5                      edge 12 + join band.4 3 = 15  should be 16\n" in table
    assert "band.2 to band.4, 3 motifs" in table


def test_an_edge_without_seam_loops_says_its_places_once() -> None:
    assert "13 loops\n" in shown(BAND)
    assert "5 loops each\n" in shown(BAND)


def test_edges_written_down_are_shown_too() -> None:
    text = """\
format = 1
[[edge]]
name = "cuff"
closed = false
places = 90
of = "stitch"
[[edge]]
name = "neck"
runs = [{ section = "front", motifs = 4, places = 6 }, { section = "back", places = 9 }]
"""
    table = shown(text)
    assert "no motifs: its edges are written straight down\n" in table
    assert "cuff: open edge of 90 stitches\n  plain places  90 stitches\n" in table
    assert (
        "neck: closed edge of 33 loops on 5 motifs\n"
        "  front, 4 motifs  6 loops each\n"
        "  back.1           9 loops\n"
    ) in table


def test_a_yoke_that_does_not_go_together_says_so() -> None:
    # a has its two joints the other way round than b and c have theirs
    text = """\
format = 1
[yoke]
loops = 16
joined = 3
[[motif]]
name = "a"
ring = ["out 5", "join b", "in 5", "join c"]
[[motif]]
name = "b"
ring = ["out 10", "join a by 6"]
[[motif]]
name = "c"
ring = ["out 13", "join a"]
"""
    assert "it does not go together as written" in shown(text)


def test_the_record_of_a_yoke() -> None:
    made = record(COLLAR)
    assert list(made) == ["motifs", "joints", "goes_together", "edges", "findings"]
    assert (made["motifs"], made["joints"], made["goes_together"]) == (7, 7, True)
    neck, outside = made["edges"]
    assert {k: neck[k] for k in ("edge", "closed", "places")} == {
        "edge": "neck",
        "closed": True,
        "places": 42,
    }
    assert neck["runs"][0] == {"motif": "collar.1", "section": "collar", "free": 4, "places": 6}
    assert [r["motif"] for r in outside["runs"]] == [f"collar.{n}" for n in (1, 7, 6, 5, 4, 3, 2)]


def test_a_project_that_cannot_be_made_out_has_an_empty_record() -> None:
    assert yoke_record(None, (), {}) == {
        "motifs": 0,
        "joints": 0,
        "goes_together": False,
        "edges": [],
        "findings": [],
    }


def test_no_name_in_it_is_an_order_to_the_terminal() -> None:
    table = shown(
        COLLAR.replace('"collar"', '"[b]collar[/b]"').replace('"collar.', '"[b]collar[/b].')
    )
    assert "[b]collar[/b].1" in table
