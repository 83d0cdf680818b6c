"""The row sheet: that it says what the record says, validly, and nothing else."""

from __future__ import annotations

import re
from collections import Counter
from itertools import pairwise
from typing import Any

import pytest
from lace import pattern
from sheets import (
    CUFF,
    FERN,
    LACE,
    Element,
    Files,
    amounts,
    classed,
    counted_of,
    cuff,
    made_of,
    page_of,
    parsed,
    passed,
    sheet_of,
    words,
)

from border.showing.folding import length
from border.showing.lying_record import flat_record
from border.showing.record import count_record
from border.showing.sheet import Sheet
from border.showing.sheet_html import sheet_html
from border.showing.sheet_record import sheet_record
from border.showing.sheet_text import WIDTH, sheet_text

TO_AND_FRO: Files = {
    "rows.toml": CUFF.replace("runs =", "closed = false\nruns =").replace(
        "lace.border", "rows.border"
    ),
    "rows.border": "terms: uk\nrow 1: 1 dc in each loop.\nrow 2: 2 tr in each st.\n",
}
COPIED = LACE + 'rounds 4-5: as rounds 1-2 of "other.border".\n'
OTHER = "terms: us\nround 1: *1 sc in next space, ch 5; repeat from *.\nround 2: as round 1.\n"

SHEETS: dict[str, tuple[Files, str, int | None]] = {
    "the demo": (FERN, "fern.toml", None),
    "the demo as written, which does not close": (FERN, "fern-as-written.toml", None),
    "a plain edge": (FERN, "shell-edging.border", 90),
    "to and fro, in UK terms": (TO_AND_FRO, "rows.toml", None),
    "rounds worked already": (cuff("done = 2\n"), "cuff.toml", None),
    "copied rounds": (cuff(lace=COPIED) | {"other.border": OTHER}, "cuff.toml", None),
}
each_sheet = pytest.mark.parametrize("which", SHEETS)


@each_sheet
def test_the_page_is_valid_and_whole(which: str) -> None:
    files, name, loops = SHEETS[which]
    page = page_of(files, name, loops)
    tree = parsed(page)
    assert tree.get("lang") == "en"
    assert [e.tag for e in tree.find("body")] == ["header", "nav", "main", "footer", "script"]
    levels = [int(e.tag[1]) for e in tree.iter() if re.fullmatch("h[1-6]", str(e.tag))]
    assert levels[0] == 1 and levels.count(1) == 1
    assert all(b <= a + 1 for a, b in pairwise(levels))
    ids = [e.get("id") for e in tree.iter() if e.get("id")]
    assert len(ids) == len(set(ids))
    for element in tree.iter():
        for link in (element.get("aria-labelledby"), element.get("href", "#")[1:]):
            assert not link or link in ids
    assert not [e for e in tree.iter("input") if e not in _labelled(tree)]


def _labelled(tree: Element) -> list[Element]:
    return [field for label in tree.iter("label") if words(label) for field in label.iter("input")]


@each_sheet
def test_nothing_is_loaded_from_anywhere(which: str) -> None:
    files, name, loops = SHEETS[which]
    page = page_of(files, name, loops)
    assert not re.search(r"\bsrc=|https?:|//[a-z]|url\(|@import|<link", page)
    assert all(e.get("href", "#").startswith("#") for e in parsed(page).iter("a"))


@each_sheet
def test_the_same_input_gives_the_same_bytes(which: str) -> None:
    files, name, loops = SHEETS[which]
    assert page_of(files, name, loops) == page_of(files, name, loops)


# --- the numbers ------------------------------------------------------------------


def _total(record: Any) -> dict[str, int]:
    told = {**record["stitches"], "ch": record["chains"], "picot": record["picots"]}
    return {kind: n for kind, n in told.items() if n}


def _added(parts: list[tuple[str, dict[str, int]]]) -> dict[str, Counter[str]]:
    found: dict[str, Counter[str]] = {}
    for name, made in parts:
        found.setdefault(name, Counter()).update(made)
    return {name: made for name, made in found.items() if made}


@each_sheet
def test_the_numbers_on_the_page_are_those_of_the_record(which: str) -> None:
    files, name, loops = SHEETS[which]
    record = count_record(counted_of(files, name, loops))
    tree = parsed(page_of(files, name, loops))
    edges = classed(tree, "edge")
    assert len(edges) == len(record["works"]) > 0
    for edge, work in zip(edges, record["works"], strict=True):
        rounds = classed(edge, "round")
        assert [words(r.find(".//h3")).split()[1] for r in rounds] == [
            str(r["round"]) for r in work["rounds"]
        ]
        for shown, counted in zip(rounds, work["rounds"], strict=True):
            _compare(shown, counted, work["terms"])


def _compare(shown: Element, counted: Any, terms: str) -> None:
    total, spaces = (words(classed(shown, "total")[0]) + ";").split(";")[:2]
    assert amounts(total, terms) == _total(counted)
    assert int((re.findall(r"\d+", spaces) or ["0"])[0]) == counted["spaces"]
    loud = [words(p) for p in classed(shown, "loud")]
    assert any("not close" in p for p in loud) is not counted["closes"]
    assert sum(p.startswith("ease in:") for p in loud) == len(counted["adjustments"])
    repeats = [words(p) for p in classed(shown, "how")][1:]
    for told, repeat in zip(repeats, counted.get("repeats", []), strict=True):
        times = "once" if repeat["times"] == 1 else f"{repeat['times']} times"
        assert told.startswith(f"Repeat: {times} in all: each takes")
        assert amounts(told.partition(" makes ")[2].partition(";")[0], terms) == _total(
            repeat["makes"]
        )
    boxes = passed(shown, terms)
    so_far: Counter[str] = Counter()
    for box in boxes:
        so_far.update(box.made)
        assert box.so_far == so_far
        so_far.update(box.on)
    opening = re.search(r"On that joint: (.*?)\.", words(classed(shown, "how")[0]))
    so_far.update(amounts(opening[1], terms) if opening else {})
    if boxes:
        assert so_far == _total(counted)
    if not counted["motifs"]:
        return
    of_motifs = [(m["motif"], _total(m)) for m in counted["motifs"]]
    assert _added([(box.what, box.made) for box in boxes]) == _added(of_motifs)
    on_joints = _added([(" ".join(sorted(box.joint)), box.on) for box in boxes if box.on])
    if not opening:
        of_joints = [(" ".join(sorted(j["between"])), _total(j)) for j in counted["joints"]]
        assert on_joints == _added(of_joints)


@each_sheet
def test_the_record_of_the_sheet_has_the_same_joints(which: str) -> None:
    files, name, loops = SHEETS[which]
    record = sheet_record(counted_of(files, name, loops))
    rounds = [r for work in record["works"] for r in work["rounds"]]
    shown = classed(parsed(page_of(files, name, loops)), "round")
    terms = "uk" if "UK" in which else "us"
    for round_, section in zip(rounds, shown, strict=True):
        joints = [
            (tuple(s["joint"]["between"]), _total(s["joint"]["so_far"]), _total(s["joint"]["on"]))
            for s in round_["stages"]
            if "joint" in s
        ]
        assert joints == [(b.joint, b.so_far, b.on) for b in passed(section, terms) if b.joint]


def test_thread_is_that_of_the_record_and_says_whether_the_ball_lasts() -> None:
    project = cuff()["cuff.toml"]
    told: dict[str, list[str]] = {}
    for ball in ("ball_m = 100", "ball_m = 0.6", "waste = 0.1"):
        files = {**cuff(), "cuff.toml": f'{project}[thread]\nsize = "40"\n{ball}\n'}
        told[ball] = [r.thread for r in sheet_of(files, "cuff.toml").edges[0].rounds]
        record = count_record(counted_of(files, "cuff.toml"))["works"][0]["rounds"]
    so_far = 0.0
    for line, round_ in zip(told["waste = 0.1"], record, strict=True):
        so_far += round_["thread_mm"]
        band = f"between {length(so_far * 0.6)} and {length(so_far * 1.4)}"
        this = length(round_["thread_mm"])
        assert line == f"about {this} for this round; about {length(so_far)} so far, {band}"
    assert all(line.endswith("; the first ball lasts") for line in told["ball_m = 100"])
    # The first round takes 51 cm: by the lower figure 31 cm, by the upper, with 15 % waste, 82 cm.
    assert told["ball_m = 0.6"][0].endswith("; ball 1 may run out here: have ball 2 at hand")
    # All three take 2.2 m: from 1.3 m, the third ball, to 3.6 m, the sixth.
    assert told["ball_m = 0.6"][2].endswith("have that many at hand")


# --- names ------------------------------------------------------------------------

NAMES = [
    "<script>alert(1)</script>",
    '"><img src=x onerror=alert(1)>',
    'Mus<ter & Söhne\' "quoted"',
    "ファーン・ヨーク",
    "حاشية الدانتيل",
    "</style></title><!-- ",
    "long " * 10 + "x" * 50,
]


@pytest.mark.parametrize("name", NAMES)
def test_every_name_is_only_a_name(name: str) -> None:
    usual = parsed(page_of(cuff(), "cuff.toml"))
    files = cuff(name=name)
    quoted = name.replace("\\", "\\\\").replace('"', '\\"')
    files["cuff.toml"] = files["cuff.toml"].replace('name = "cuff"', f'name = "{quoted}"')
    files["cuff.toml"] = files["cuff.toml"].replace('edge = "cuff"', f'edge = "{quoted}"')
    sheet = sheet_of(files, "cuff.toml")
    assert sheet.edges, counted_of(files, "cuff.toml").findings
    tree = parsed(page_of(files, "cuff.toml"))
    assert [e.tag for e in tree.iter()] == [e.tag for e in usual.iter()]
    assert words(tree.find(".//h1")) == " ".join(name.split())
    assert all(len(line) <= WIDTH for line in sheet_text(sheet).splitlines())


# --- what a round is known by -----------------------------------------------------


def _keys(sheet: Sheet) -> list[str]:
    return [r.key for r in sheet.edges[0].rounds]


def test_a_changed_border_changes_only_the_rounds_that_it_changes() -> None:
    before = _keys(sheet_of(cuff(), "cuff.toml"))
    changed = LACE.replace("ch 7", "ch 9")
    after = _keys(sheet_of(cuff(lace=changed), "cuff.toml"))
    assert after[:2] == before[:2] and after[2] != before[2]


def test_remarks_and_numbers_do_not_make_another_round() -> None:
    before = _keys(sheet_of(cuff(), "cuff.toml"))
    remarked = LACE.replace("round 2:", "# shells\nround 2: -- in white --")
    assert _keys(sheet_of(cuff(lace=remarked), "cuff.toml")) == before
    one_more = LACE + "round 4: *1 sc in next space, ch 7; repeat from *.\nround 5: as round 4.\n"
    keys = _keys(sheet_of(cuff(lace=one_more), "cuff.toml"))
    assert keys[:3] == before and len(set(keys)) == 5


def test_another_edge_makes_other_rounds() -> None:
    files = cuff()
    files["cuff.toml"] = files["cuff.toml"].replace("motifs = 6", "motifs = 8")
    assert not set(_keys(sheet_of(files, "cuff.toml"))) & set(_keys(sheet_of(cuff(), "cuff.toml")))


# --- what is said -----------------------------------------------------------------


def test_a_copied_row_is_written_out_in_full() -> None:
    files, name, _ = SHEETS["copied rounds"]
    fourth = sheet_of(files, name).edges[0].rounds[3]
    assert fourth.row == 'rounds 4-5: as rounds 1-2 of "other.border".'
    assert fourth.read == "*1 sc in next space, ch 5; repeat from *"
    assert sheet_of(files, name).edges[0].rounds[0].read == ""


def test_short_words_are_those_of_the_terms() -> None:
    files, name, _ = SHEETS["to and fro, in UK terms"]
    told = {a.short: a.full for a in sheet_of(files, name).edges[0].abbreviations}
    assert told["dc"] == "double crochet, 1 chain high"
    assert told["tr"] == "treble, 3 chains high"
    assert set(told) == {"dc", "tr", "ch", "st"}


def test_rows_to_and_fro_say_that_they_are_turned() -> None:
    files, name, _ = SHEETS["to and fro, in UK terms"]
    first, second = sheet_of(files, name).edges[0].rounds
    assert first.begins == "over cuff.1"
    assert second.begins.startswith("over cuff.6; the edge itself begins elsewhere")
    assert "turned" in second.begins


def test_what_is_eased_in_stands_loudly_in_its_place() -> None:
    neck = sheet_of(FERN, "fern.toml").edges[0]
    fifth = neck.rounds[4]
    told = "after repeat 11, at 11 sc, 77 ch so far: 1 group of 5 more passed over"
    assert fifth.eased == (f"over back.3, {told}",)
    assert [run.what for run in fifth.runs][1] == "front.2 to front.5, 4 motifs"
    boxes = [box for run in fifth.runs for box in run.boxes if box.eased]
    assert [(box.what, box.eased) for box in boxes] == [("back.3", (told,))]
    assert "EASE IN HERE: after repeat 11" in sheet_text(sheet_of(FERN, "fern.toml"))


def test_worked_rounds_are_ticked_and_what_was_found_is_said() -> None:
    files = cuff("done = 2\nfound = { round = 1, spaces = 23 }\n")
    tree = parsed(page_of(files, "cuff.toml"))
    first, second, third = classed(tree, "round")
    for section in (first, second):
        assert words(section.find(".//h3")).endswith("(worked)")
        ticks = [i for i in section.iter("input") if i.get("type") == "checkbox"]
        assert ticks and all("checked" in i.attrib and "disabled" in i.attrib for i in ticks)
    assert "Found, and counted on from there: 23 spaces" in words(first)
    assert not [i for i in third.iter("input") if "checked" in i.attrib]
    text = sheet_text(sheet_of(files, "cuff.toml"))
    assert "[x] round 2 is worked" in text and "[ ] round 3 is worked" in text


def test_putting_right_has_the_border_s_own_numbers() -> None:
    edge = sheet_of(cuff("done = 1\n"), "cuff.toml").mending.edges[0]
    asked = "Count the spaces in the last round that you have worked. Round 3 should have 12."
    assert edge.said.startswith(asked)
    assert edge.lines == ("done = 3", "found = { round = 3, spaces = 13 }")
    assert [(r.round, r.what) for r in edge.rounds] == [
        (1, "24 spaces"),
        (2, "72 stitches"),
        (3, "12 spaces"),
    ]
    found = cuff("".join(f"{line}\n" for line in edge.lines).replace("13", "12"))
    assert not [
        f for f in counted_of(found, "cuff.toml").findings if f.code != "thread-uncalibrated"
    ]
    alone = sheet_of(FERN, "shell-edging.border", 90).mending
    assert alone.edges[0].lines == () and "Put it in a project" in alone.closing


def test_the_text_has_a_box_for_every_box_of_the_page() -> None:
    sheet = sheet_of(FERN, "fern.toml")
    boxes = [
        i for i in parsed(page_of(FERN, "fern.toml")).iter("input") if i.get("type") == "checkbox"
    ]
    assert sheet_text(sheet).count("[ ]") == len(boxes) > 150


def test_very_many_motifs_share_boxes_by_ten() -> None:
    files = cuff()
    files["cuff.toml"] = files["cuff.toml"].replace("motifs = 6", "motifs = 600")
    first = sheet_of(files, "cuff.toml").edges[0].rounds[0]
    boxes = [box for run in first.runs for box in run.boxes]
    assert len(boxes) < 70 and "cuff.11 to cuff.20" in {box.what for box in boxes}
    assert first.total == "2400 sc, 7200 ch"


_TAPE = re.compile(
    r"(\d+) (space|stitch)(?:e?s)? should measure (?:([\d.]+) to )?([\d.]+) (mm|cm|m)"
)


@pytest.mark.parametrize("text", [False, True])
def test_the_tape_says_what_the_record_of_lying_flat_says(text: bool) -> None:
    """Every round of the demo, against `border flat --json`, to the two digits that are told."""
    pipeline = pattern("fern.toml")
    made = made_of(pipeline)
    shown = sheet_text(made) if text else sheet_html(made, pipeline.sheet_pictures)
    said = _TAPE.findall(" ".join(shown.split()))
    marks = [mark for work in flat_record(pipeline.lying)["works"] for mark in work["measuring"]]
    assert len(said) == len(marks) == sum(len(e.rounds) for e in made.edges) > 10
    for (count, of, low, high, unit), mark in zip(said, marks, strict=True):
        assert (int(count), of) == (mark["count"], mark["of"])
        mm = {"mm": 1, "cm": 10, "m": 1000}[unit]
        band = mark["expected"]
        for told, real in ((low or high, band["low_mm"]), (high, band["high_mm"])):
            assert float(told) * mm == pytest.approx(real, rel=0.051)


def test_the_tape_says_what_was_measured_and_nothing_where_nothing_tells() -> None:
    found = '[[work]]\nedge = "neck"\n'
    measured = pattern(
        "fern.toml", {found: f"{found}measured = [{{ round = 3, spaces = 10, mm = 105 }}]\n"}
    )
    third = made_of(measured).edges[0].rounds[2].tape
    assert "yours measure 105 mm: the neck comes out" in third and "shorter" in third
    bare = made_of(pattern("fern.toml", {", width_mm = 99, height_mm = 5.0": ""}))
    assert {r.tape for e in bare.edges for r in e.rounds} == {""}
    assert "tape, laid flat" not in sheet_text(bare)
