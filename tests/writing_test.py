"""The border written out for one edge: read back, it comes to the same."""

from __future__ import annotations

from pathlib import Path

import pytest
import random_borders
from golden.write import PATTERNS
from hypothesis import HealthCheck, Phase, given, settings
from msgspec.structs import replace
from reading import QUESTIONS
from worked import motifs, plain

from border.cli.files import read_file
from border.pipeline import Pipeline
from border.reckoning.counts import RoundCount, count_edge
from border.text.readings import read_rounds
from border.text.source import Source
from border.text.syntax import read_border
from border.text.tree import Border
from border.working.adjusting import Adjustment
from border.working.found import Found
from border.working.work import WorkedEdge, work
from border.writing.border import WrittenOut, write_out
from border.yoke.edges import Edge

TERMS = ("us", "uk", "early")
Work = tuple[Edge, Border, list[tuple[int, str, int]]]


def written(
    text: str,
    edge: Edge,
    *adjustments: Adjustment,
    terms: str = "us",
    found: Found | None = None,
) -> WrittenOut:
    """A border text written out, and proved to come to the same when it is read back."""
    border, told = read_border(Source("test.border", f"terms: us\n{text}"))
    assert border is not None, told
    return _proved(border, edge, adjustments, terms, found)


def rows(out: WrittenOut) -> str:
    """The rows of a text and what is remarked of them, without headings, each on one line."""
    body = out.text.split("\n\n", 1)[1]
    return body.replace("\n    ", " ").rstrip("\n")


def _proved(
    border: Border,
    edge: Edge,
    adjustments: tuple[Adjustment, ...],
    terms: str,
    found: Found | None = None,
) -> WrittenOut:
    reading, _ = read_rounds(border, lambda source, name: None)
    done = found.round if found else 0
    worked = work(reading, edge, adjustments, done, found)
    out = write_out(border.headings, reading, worked, adjustments, terms)
    if not out.text:
        assert not worked.rounds
        return out
    beside = [a for a in adjustments if a.round in out.beside]
    kept = found if found and found.round in out.beside else None
    again = _read_back(out, edge, beside, kept)
    assert _counts(again) == _counts(worked), out.text
    assert "count-disagrees" not in [f.code for f in again.findings], out.text
    assert not [f for f in out.findings if f.code == "not-written-out"], out.text
    return out


def _read_back(
    out: WrittenOut, edge: Edge, beside: list[Adjustment], found: Found | None
) -> WorkedEdge:
    border, told = read_border(Source("again.border", out.text))
    assert border is not None
    assert {f.code for f in told} <= QUESTIONS, (out.text, told)
    assert all(row.claims for row in border.rows), out.text
    reading, _ = read_rounds(border, lambda source, name: None)
    return work(reading, edge, beside, found.round if found else 0, found)


def _counts(worked: WorkedEdge) -> list[RoundCount]:
    """The counts but for what repeats and adjustments there are: those are written otherwise."""
    return [
        replace(r, repeats=(), adjustments=(), done=False, found=()) for r in count_edge(worked)
    ]


# --- hundreds of borders ------------------------------------------------------------------


@settings(
    max_examples=60,
    deadline=None,
    derandomize=True,
    database=None,
    phases=[Phase.generate],
    suppress_health_check=list(HealthCheck),
)
@given(random_borders.works())
def test_a_border_written_out_comes_to_the_same(drawn: Work) -> None:
    edge, border, adjustments = drawn
    _, told = read_rounds(border, lambda source, name: None)
    if any(f.code == "turn-inside" for f in told):
        return  # such a row, as it would be written, is a fault
    for terms in TERMS:
        _proved(border, edge, tuple(Adjustment(*a) for a in adjustments), terms)


@pytest.mark.parametrize("terms", TERMS)
def test_every_border_of_the_demo_comes_to_the_same(terms: str) -> None:
    """Put in place of the borders of the project, with nothing eased in beside them."""
    project = str(PATTERNS / "fern.toml")
    pipeline = Pipeline(project, read_file)
    out = pipeline.written(terms)
    assert not [f for f in out.findings if f.code in ("eased-in-beside", "not-written-out")]
    for piece, one in zip(pipeline.counted.pieces, out.works, strict=True):
        border, told = read_border(Source("again.border", one.text))
        assert border is not None
        assert not told
        reading, _ = read_rounds(border, lambda source, name: None)
        again = work(reading, piece.edge)
        assert not again.findings
        assert _counts(again) == [
            replace(r, repeats=(), adjustments=(), done=False, found=()) for r in piece.rounds
        ]


# --- repeats ------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("row", "as_written"),
    [
        (
            "*1 sc in next loop, ch 5, skip 1 loop; repeat from *",
            "*1 sc in next loop, ch 5, skip 1 loop; repeat from * 6 times in all. (6 sc, 6 spaces)",
        ),
        ("1 sc in each loop", "1 sc in each of the next 12 loops. (12 sc)"),
        (
            "1 sc in first loop, *ch 2, 1 sc in next loop; repeat from * to last 3 loops, "
            "3 sc in each of the last 3 loops",
            "1 sc in first loop, *ch 2, 1 sc in next loop; repeat from * 8 times in all, "
            "3 sc in each of the last 3 loops. (18 sc, 8 spaces)",
        ),
        (
            "1 dc in each loop, with ch 2 between",
            "(1 dc in next loop, ch 2) 12 times. (12 dc, 12 spaces)",
        ),
        ("1 dc in every 3rd loop", "(1 dc in 3rd loop) 4 times. (4 dc)"),
        (
            "2 dc in next loop, ch 1; repeat",
            "*2 dc in next loop, ch 1; repeat from * 12 times in all. (24 dc, 12 spaces)",
        ),
    ],
)
def test_a_repeat_has_its_number(row: str, as_written: str) -> None:
    assert rows(written(f"round 1: {row}.", plain(12))) == f"round 1: {as_written}"


def test_what_is_worked_as_it_comes_has_no_number() -> None:
    text = """round 1: *1 dc in next loop, ch 2; repeat from *.
round 2: 1 sc in first dc, (1 dc in each dc, 2 dc in each space) as they come.
"""
    out = written(text, plain(6))
    assert rows(out).splitlines()[1] == (
        "round 2: 1 sc in first dc, (1 dc in each dc, 2 dc in each space) as they come. "
        "(1 sc, 17 dc)"
    )
    assert out.findings == ()


def test_what_is_eased_in_among_what_comes_stays_beside_the_text() -> None:
    text = """round 1: *1 dc in next loop, ch 2; repeat from *.
round 2: (1 dc in each dc, 2 dc in each space) as they come.
round 3: 1 sc in each dc.
"""
    for by in (1, -1):
        out = written(text, motifs(4, 4), Adjustment(2, "edge.1", by))
        assert (out.beside, [f.code for f in out.findings]) == ((2,), ["eased-in-beside"])


def test_a_round_that_does_not_close_is_written_as_often_as_it_goes() -> None:
    out = written("round 1: *1 sc in next loop, ch 5, skip 1 loop; repeat from *.", plain(13))
    assert "repeat from * 6 times in all" in out.text


def test_a_round_that_meets_its_start_goes_only_so_far() -> None:
    text = """round 1: *1 sc in next loop, ch 3; repeat from *.
round 2: 1 sc in first space, ch 4, *3 dc in next space, ch 4, 1 sc in next space, ch 4;
    repeat from *.
"""
    assert rows(written(text, plain(8))).splitlines()[1] == (
        "round 2: 1 sc in first space, ch 4, *3 dc in next space, ch 4, 1 sc in next space, "
        "ch 4; repeat from * 3 times in all, 3 dc in next space, ch 4. "
        "(4 sc, 12 dc, 8 spaces)"
    )


def test_copies_are_written_out_and_comments_are_not() -> None:
    text = """# a remark
round 1: *1 sc in next loop, ch 5; repeat from *.   # another
round 2: *1 sc in next space, ch 5; repeat from *.
rounds 3-4: as round 2.
"""
    out = written(text, plain(5))
    assert "remark" not in out.text and "another" not in out.text
    assert out.text.count("1 sc in next space, ch 5; repeat from * 5 times in all") == 3


def test_headings_are_kept_but_for_those_that_hold_no_more() -> None:
    text = """border: Mesh
chains count as stitches: no
rows without a repeat: are repeated
worked: one way
multiple of 3
treble means dc

round 1: 1 treble in next st, ch 2, skip 2.
"""
    assert (
        written(text, plain(9, closed=False)).text
        == """\
# for an open edge of 9 loops
border: Mesh
terms: us
chains count as stitches: no
rows without a repeat: once
worked: one way

round 1: *1 dc in next st, ch 2, skip 2; repeat from * 3 times in all. (3 dc, 3 spaces)
"""
    )


def test_stitches_that_the_terms_have_no_name_for_are_explained() -> None:
    out = written("round 1: 1 hdc in each loop.", plain(3), terms="early")
    assert "half double means hdc\n" in out.text
    assert rows(out) == "round 1: 1 half double in each of the next 3 loops. (3 half doubles)"


# --- to and fro ---------------------------------------------------------------------------


def test_turning_chains_stand_before_the_turn_to_a_row_of_clauses() -> None:
    text = """round 1: 1 sc in each loop, ch 3, turn.
round 2: over each motif: 1 dc in each st.
"""
    out = written(text, motifs(3, 3, closed=False))
    assert "1 sc in each of the next 6 loops, ch 3, turn." in out.text


def test_a_start_chain_that_was_assumed_is_said() -> None:
    out = written("round 1: ch 3, 1 dc in each st.", plain(4, closed=False))
    assert rows(out) == "round 1: ch 3 as dc, 1 dc in each of the next 3 st. (4 dc)"


def test_chains_that_open_a_row_and_stand_are_no_start_chain() -> None:
    out = written("round 1: ch 5, 1 sc in next loop, 1 sc in each loop.", plain(4))
    assert rows(out).startswith("round 1: (ch 5) once, 1 sc in next loop")


# --- run by run ---------------------------------------------------------------------------


def test_each_part_is_written_by_its_name() -> None:
    text = """round 1: over each motif: 1 sc in first loop, *ch 3, skip 1 loop, 1 sc in next loop;
    repeat from *; at each joint: ch 1.
"""
    out = written(text, motifs(3, 5, 3, labels={2: "wide"}))
    assert rows(out) == (
        "round 1: over edge.1: 1 sc in first loop, ch 3, skip 1 loop, 1 sc in next loop; "
        "over edge.3: 1 sc in first loop, ch 3, skip 1 loop, 1 sc in next loop; "
        "over each motif of wide: 1 sc in first loop, (ch 3, skip 1 loop, 1 sc in next loop) "
        "2 times; at each joint: ch 1. (7 sc, 7 spaces)"
    )


def test_parts_that_would_take_many_names_are_what_is_left() -> None:
    text = "round 1: over each motif: 1 sc in each loop."
    out = written(text, motifs(3, 3, 4, 3, 3, 3))
    assert rows(out) == (
        "round 1: over edge.3: 1 sc in each of the next 4 loops; "
        "over each motif: 1 sc in each of the next 3 loops. (19 sc)"
    )


# --- eased in -----------------------------------------------------------------------------

MESH = "round 1: *1 sc in next loop, ch 5; repeat from *.\n"


def test_what_is_passed_over_is_skipped() -> None:
    out = written(
        MESH + "round 2: *1 sc in next space, ch 6; repeat from *.",
        motifs(4, 4, 4),
        Adjustment(2, "edge.2", 1),
    )
    assert rows(out).splitlines()[1:] == [
        "# eased in: at edge.2, 1 space more passed over",
        "round 2: (1 sc in next space, ch 6) 5 times, skip 1 space, "
        "(1 sc in next space, ch 6) 6 times. (11 sc, 11 spaces)",
    ]
    assert out.beside == ()


def test_what_is_worked_twice_goes_in_the_same() -> None:
    out = written(
        MESH + "round 2: *1 sc in next space, ch 6; repeat from *.",
        motifs(4, 4, 4),
        Adjustment(2, "edge.2", -1),
    )
    assert rows(out).splitlines()[1:] == [
        "# eased in: at edge.2, 1 space worked twice",
        "round 2: (1 sc in next space, ch 6) 5 times, 1 sc in same space, ch 6, "
        "(1 sc in next space, ch 6) 7 times. (13 sc, 13 spaces)",
    ]


@pytest.mark.parametrize(
    ("row", "eased"),
    [
        ("*1 sc in next loop, ch 5, skip 2 loops", "1 sc in next loop, ch 5, skip 1 loop,"),
        ("*skip 1 loop, 1 sc in each of next 2 loops", ", 1 sc in each of the next 2 loops,"),
        ("*1 sc in each of next 3 loops, ch 1", "1 sc in same loop, 1 sc in each of the next 2"),
        ("*(1 dc, ch 1, 1 dc) in next loop", "(1 dc, ch 1, 1 dc) in same loop"),
        ("*1 sc in 2nd loop, ch 3", "1 sc in next loop, ch 3,"),
    ],
)
def test_a_repeat_that_goes_back_is_written_in_place(row: str, eased: str) -> None:
    edge = motifs(6, 6, 6)
    out = written(f"round 1: {row}; repeat from *.", edge, Adjustment(1, "edge.2", -1))
    assert out.beside == (), out.text
    assert eased in rows(out), out.text


def test_two_adjustments_of_one_round_stand_in_order() -> None:
    out = written(
        "round 1: *1 sc in next loop, ch 5; repeat from *.",
        motifs(4, 4, 4),
        Adjustment(1, "edge.3", 1),
        Adjustment(1, "edge.1", -1),
    )
    assert out.beside == ()
    assert rows(out).index("same loop") < rows(out).index("skip 1 loop")


def test_what_is_eased_in_in_a_clause_stands_in_its_own_run() -> None:
    text = "round 1: over each motif: 1 sc in first loop, *ch 3, skip 1 loop, 1 sc in next loop; "
    out = written(text + "repeat from *.", motifs(5, 6, 5), Adjustment(1, "edge.2", 1))
    assert out.beside == ()
    assert "over edge.2: 1 sc in first loop, ch 3, skip 1 loop, 1 sc in next loop" in rows(out)
    assert "skip 1 loop, ch 3" in rows(out)


def test_what_the_words_cannot_say_stays_beside_the_text() -> None:
    out = written(
        MESH + "round 2: *1 sc in next space, ch 6; repeat from *.",
        motifs(4, 4, 4),
        Adjustment(2, "edge.2", -2),
    )
    assert out.beside == (2,)
    assert [f.code for f in out.findings] == ["eased-in-beside"]
    assert rows(out).splitlines()[1:] == [
        "# eased in by the project, beside this text: at edge.2, 2 spaces worked twice",
        "round 2: *1 sc in next space, ch 6; repeat from *. (14 sc, 14 spaces, 14 repeats)",
    ]


def test_a_round_is_written_as_it_was_found() -> None:
    out = written(MESH, plain(12), found=Found(1, (("spaces", 11),)))
    assert "# eased in: as it was found, 1 loop more passed over\n" in out.text
    assert "(11 sc, 11 spaces)" in out.text


@pytest.mark.parametrize("terms", ["uk", "early", None])
@pytest.mark.parametrize("border", sorted(PATTERNS.glob("*.border")), ids=lambda path: path.stem)
def test_a_border_is_written_in_other_terms_without_an_edge(
    border: Path, terms: str | None
) -> None:
    asked = Pipeline(str(border), read_file, command="write")
    written = asked.written(terms)
    assert [w.edge for w in written.works] == [None]
    assert not written.findings
    own, _ = read_border(Source("own.border", border.read_text(encoding="utf-8")))
    again, told = read_border(Source("again.border", written.text))
    assert own is not None and again is not None and not told
    assert again.rows == own.rows
    assert again.headings.terms == (terms or own.headings.terms)


def test_of_a_border_with_a_fault_the_rows_before_it_are_written() -> None:
    text = "terms: us\nround 1: 1 dc in each st.\nround 2: 1 dc in eahc st.\n"
    asked = Pipeline("slip.border", lambda name: Source(name, text), command="write")
    written = asked.written("uk")
    rest = "# not written: round 2 and what follows; mend the text first"
    assert written.text == f"terms: uk\n\nround 1: 1 tr in each st.\n\n{rest}\n"
    assert [f.code for f in written.findings] == ["unknown-word"]
