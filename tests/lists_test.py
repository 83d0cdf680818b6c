"""A list before a place: what could be read two ways is asked, with both ways to paste."""

from __future__ import annotations

import re

import pytest
from reading import asked, read, row_faults

from border.text.tree import ST, Bracket, Place, Stitches, Text, Which, Whole


def edits(steps: str) -> list[str]:
    """The two edits that the one finding of a row offers."""
    _, findings = read(f"terms: us\nround 1: {steps}\n")
    (finding,) = findings
    assert finding.code == "place-unclear"
    assert finding.help is not None
    both = re.match(r"write (.*?) or (?:for one place )?(.*?)(?:;? the heading .*)?$", finding.help)
    assert both is not None, finding.help
    return [edit.rstrip(",;") for edit in both.groups()]


@pytest.mark.parametrize(
    ("steps", "together", "apart"),
    [
        ("1 sc, 5 dc in next space",
         "(1 sc, 5 dc) in next space", "1 sc in next st, 5 dc in next space"),
        ("3 dc. 3 ch. 3 dc. in next space",
         "(3 dc, ch 3, 3 dc) in next space", "1 dc in each of the next 3 st, ch 3, 3 dc in next space"),
        ("1 sc and 5 dc in next space",
         "(1 sc, 5 dc) in next space", "1 sc in next st, 5 dc in next space"),
        ("1 sc, ch 3, 1 sc in each st",
         "(1 sc, ch 3, 1 sc) in each st", "1 sc in next st, ch 3; 1 sc in each st"),
        ("3 sc, 5 dc in last space",
         "(3 sc, 5 dc) in last space", "1 sc in each of the next 3 st, 5 dc in last space"),
        ("2 sc, ch 3, (2 dc, ch 1) in next space",
         "(2 sc, ch 3, 2 dc, ch 1) in next space",
         "1 sc in each of the next 2 st, ch 3, (2 dc, ch 1) in next space"),
        ("1 sc, picot of 3, 1 dc in next st",
         "(1 sc, picot of 3, 1 dc) in next st", "1 sc in next st, picot of 3, 1 dc in next st"),
        ("ch 5, 1 sc in each space",
         "(ch 5, 1 sc) in each space", "ch 5; 1 sc in each space"),
        ("ch 5, 1 sc in every 3rd space",
         "(ch 5, 1 sc) in every 3rd space", "ch 5; 1 sc in every 3rd space"),
        ("1 dc in next st, ch 5, 1 sc in each space",
         "(ch 5, 1 sc) in each space", "ch 5; 1 sc in each space"),
        ("ch 5, (1 sc, ch 1) in each space",
         "(ch 5, 1 sc, ch 1) in each space", "ch 5; (1 sc, ch 1) in each space"),
        ("1 dc in next st, ch 5, 1 sl st in first ch", "picot of 5", "ch 5; 1 sl st in first ch"),
        ("ch 4, sc in 1st ch", "picot of 4", "ch 4; 1 sc in first ch"),
        ("3 dc in the next 2 st", "3 dc in each of the next 2 st", "3 dc in next st"),
        ("3 dc in first 2 st", "3 dc in each of the first 2 st", "3 dc in first st"),
        ("3 dc in the last 2 st", "3 dc in each of the last 2 st", "3 dc in last st"),
        ("(2 dc, ch 1) in the next 2 st",
         "(2 dc, ch 1) in each of the next 2 st", "(2 dc, ch 1) in next st"),
    ],
)  # fmt: skip
def test_both_readings_are_offered_and_settle_it(steps: str, together: str, apart: str) -> None:
    assert edits(steps) == [together, apart]
    for edit in (together, apart):
        assert row_faults(edit) == [], edit


@pytest.mark.parametrize(
    "steps",
    [
        "1 sc; 5 dc in next space",
        "1 sc. 5 dc in next space",
        "1 sc, then 5 dc in next space",
        "1 sc, skip 2, 5 dc in next space",
        "1 sc in next st, 5 dc in next space",
        "1 sc, 5 dc in same place",
        "1 sc, 5 dc in the skipped st",
        "1 sc, *5 dc in next space; repeat from *",
        "(1 sc, ch 1) twice, 5 dc in next space",
        "2 dc, ch 2, 2 dc, all in next space",
        "ch 5, 1 sc in next space",
        "ch 5, then 1 sc in each of the next 3 spaces",
        "(ch 5), 1 sc in each of the next 3 spaces",
        "1 sc in each space, (ch 5)",
        "(ch 5), 1 sc in each space",
        "3 dc in the next 3 st",
        "1 dc in the next 3 st",
        "3 dc together over next 3 st",
        "5 dc in 3rd st",
    ],
)
def test_what_can_be_read_one_way_is_not_asked(steps: str) -> None:
    assert row_faults(steps) == []


@pytest.mark.parametrize(
    ("steps", "asked"),
    [
        ("ch 1, 1 sc in each st", False),
        ("ch 3, 1 dc in each st", False),
        ("ch 3, 1 tr in each st", True),
        ("ch 3, 1 hdc in each st", False),
        ("ch 2, 1 sc in each st", True),
        ("begin in next space, ch 3, 1 dc in each st", False),
        ("ch 3; 1 dc in next st, ch 3, 1 dc in each st", True),
        ("ch 3, ch 2, 1 dc in each st", True),
        ("ch 3 as dc, 1 dc in each st", False),
    ],
)
def test_chains_that_open_a_row_are_its_start_chain(steps: str, asked: bool) -> None:
    assert bool(row_faults(steps)) == asked


def test_a_clause_has_no_start_chain() -> None:
    (found,) = row_faults("over front: ch 3, 1 dc in each st")
    assert found == ("place-unclear", "ch 3, 1 dc in each st")


def test_the_heading_settles_lists_but_not_numbers() -> None:
    headings = "terms: us\nbare stitches: one in each"
    assert row_faults("1 sc, ch 3, 1 sc in each st", headings) == []
    assert row_faults("1 sc, 5 dc in next space", headings) == []
    assert [code for code, _ in row_faults("ch 5, 1 sc in each space", headings)] == [
        "place-unclear"
    ]
    assert [code for code, _ in row_faults("3 dc in the next 2 st", headings)] == ["place-unclear"]


def test_the_edits_are_in_the_terms_of_the_text() -> None:
    _, (finding,) = read("terms: uk\nround 1: 1 dc, 5 tr in next space\n")
    assert finding.help is not None
    assert finding.help.startswith(
        "write (1 dc, 5 tr) in next space or 1 dc in next st, 5 tr in next space"
    )


def test_meanwhile_each_stitch_takes_the_next_st_and_each_place_all() -> None:
    (row,) = read("terms: us\nround 1: 1 sc, 3 dc in the next 2 st\n")[0].rows
    each = Place(Which.NEXT, (Whole(ST),), 2, True)
    assert row.body == Text((Stitches(1, "sc"), Stitches(3, "dc", each)))
    (row,) = read("terms: us\nround 1: (3 dc) in next 2 st\n")[0].rows
    assert row.body == Text((Bracket((Stitches(3, "dc"),), each),))
    assert not row.broken


def test_lists_are_looked_at_inside_stars_and_brackets() -> None:
    asked = [("place-unclear", "1 sc, 5 dc in next space")]
    assert row_faults("*1 sc, 5 dc in next space; repeat from *") == asked
    assert row_faults("(1 sc, 5 dc in next space) 3 times") == asked
    assert row_faults("(*1 sc, 5 dc in next space; repeat from * twice) 3 times") == asked


def test_places_inside_a_placed_bracket() -> None:
    assert row_faults("(1 dc in next st, ch 1) in next space") == [("place-inside", "in next st")]
    assert row_faults("(skip 1 st, 1 dc) in next space") == [("place-inside", "skip 1 st")]
    assert row_faults("(ch 1, (2 dc) in next st) in next space") == [("place-inside", "in next st")]
    assert row_faults("(1 dc, 1 dc in same place, ch 1) in next space") == []


@pytest.mark.parametrize(
    ("steps", "picot"),
    [
        ("ch 2, 1 sc in last dc", None),
        ("ch 3, 1 sc in last dc", "picot of 3"),
        ("ch 5, 1 sc in last dc", "picot of 5"),
        ("ch 5, 1 sc in last tr", None),
        ("ch 5, 2 sc in last dc", None),
        ("ch 5, 1 hdc in last dc", None),
        ("ch 5, 1 sc in last 2 dc", None),
        ("ch 3, 1 sc in 3rd ch", "picot of 3"),
        ("ch 4, 1 sc in 3rd ch", "ch 1, picot of 3"),
        ("ch 4, 1 sc in 4th ch", "picot of 4"),
        ("ch 4, 1 sc in 2nd ch", None),
        ("ch 4, 1 sc in 5th ch", None),
    ],
)
def test_chains_that_a_stitch_may_close_into_a_picot(steps: str, picot: str | None) -> None:
    told = asked(f"1 dc in next st, {steps}")
    assert told.get("perhaps-picot", "write None ").startswith(f"write {picot} ")


def helps(row: str, below: str = "1 sc in each loop, with ch 5 between") -> list[str]:
    """What the findings of a second round offer."""
    head = "terms: us\nchains count as stitches: yes\n"
    _, findings = read(f"{head}round 1: {below}\nround 2: {row}\n")
    return [finding.help or "" for finding in findings]


@pytest.mark.parametrize(
    ("steps", "same", "next_"),
    [
        ("1 sc in loop, 5 dc, 1 sc in the same loop",
         "(5 dc, 1 sc) in same loop", "(5 dc, 1 sc) in next loop"),
        ("1 sc in next loop, 5 dc, 1 sc in the same",
         "(5 dc, 1 sc) in same loop", "(5 dc, 1 sc) in next loop"),
        ("1 sc in next st, 3 dc, ch 2, 3 dc in the same st",
         "(3 dc, ch 2, 3 dc) in same st", "(3 dc, ch 2, 3 dc) in next st"),
        ("3 dc, ch 2, 3 dc in the same loop", None, "(3 dc, ch 2, 3 dc) in next loop"),
        ("1 sc in next sc, 3 dc, ch 2, 3 dc in the same loop",
         None, "(3 dc, ch 2, 3 dc) in next loop"),
    ],
)  # fmt: skip
def test_all_may_go_where_the_step_before_them_went(
    steps: str, same: str | None, next_: str
) -> None:
    (help_,) = helps(f"*{steps}; repeat from *")
    assert f"write {same or next_} if all of them" in help_
    assert (f"or {next_} if into one place of their own" in help_) == (same is not None)


def test_chains_that_open_a_row_stay_outside_the_place_of_what_follows() -> None:
    help_, *_ = helps(
        "begin in next loop, ch 3, 1 dc, ch 2, 2 dc in same loop, *ch 1, 3 dc in next"
    )
    assert help_.startswith("write (1 dc, ch 2, 2 dc) in same loop if")


def test_so_many_chains_may_be_one_space() -> None:
    (help_,) = helps("*1 sc in sc, 6 dc in 1st 5 ch; repeat from *")
    assert help_.endswith("; 6 dc in next ch-5 space is all in the space of 5 chains")


def test_stitches_told_in_all_may_be_shared_out() -> None:
    (help_,) = helps("*6 dc in the next 2 loops, ch 1; repeat from *")
    assert "or 3 dc in each of the next 2 loops where there are 6 in all" in help_
    (help_,) = helps("*5 dc in the next 2 loops, ch 1; repeat from *")
    assert "in all" not in help_


def test_slip_stitches_in_so_many_chains_may_lead_up_a_longer_space() -> None:
    (help_,) = helps("sl st in 3 ch, *1 sc in loop, ch 5; repeat from *")
    assert '"begin in next space" if they are 3' in help_
