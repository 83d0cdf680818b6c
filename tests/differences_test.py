"""What a copy has otherwise: from words to the tree and back, and through copies of all kinds."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from border.text.readings import read_rounds
from border.text.source import Source
from border.text.syntax import read_border
from border.text.tree import (
    Between,
    Border,
    Centre,
    Copy,
    Difference,
    Exchanged,
    Kind,
    Moved,
    Named,
    Place,
    Text,
    Variation,
    Where,
    Which,
    Whole,
)
from border.text.written import write_border, write_text

HEADS = "terms: uk\nchains count as stitches: yes\n"
FIRST = "round 1: *1 dc in next st, 5 ch, miss 2; repeat.\nround 2: 3 tr in each space.\n"

FIVE = Kind("space", 5)
TREBLE, DOUBLE = Named("dc"), Named("sc")


def placed(*targets: Whole | Centre | Between, which: Which = Which.NEXT, count: int = 1) -> Place:
    return Place(which, targets, count)


SAID: dict[str, Sequence[Variation]] = {
    "but 7 chain instead of 5": [Difference("ch", 7, 5)],
    "with ch 7 in place of ch 5": [Difference("ch", 7, 5)],
    "with 7 ch. instead of 5.": [Difference("ch", 7, 5)],
    "with 3 chain between each instead of 2": [Difference("ch", 3, 2, Where.BETWEEN)],
    "with 3 chain between the shells instead of 2": [Difference("ch", 3, 2, Where.APART)],
    "with 3 ch between each group": [Difference("ch", 3, None, Where.APART)],
    "only making 5 treble instead of 3": [Difference("dc", 5, 3)],
    "but instead of 3 treble work 5": [Difference("dc", 5, 3)],
    "with five treble in the shells": [Difference("dc", 5, None, Where.GROUPS)],
    "with 2 picots instead of 1": [Difference("picot", 2, 1)],
    "with picots of 5 chain instead of 3": [Difference("ring", 5, 3)],
    "omitting the 2 chain": [Difference("ch", 0, 2)],
    "leaving out the picots": [Difference("picot", 0)],
    "without the 8 double treble": [Difference("tr", 0, 8)],
    "with no chain between": [Difference("ch", 0, None, Where.BETWEEN)],
    "omitting the 2 chain and the picots": [Difference("ch", 0, 2), Difference("picot", 0)],
    "with 7 ch instead of 5, 5 tr in lieu of 3, and omitting 1 dc": [
        Difference("ch", 7, 5),
        Difference("dc", 5, 3),
        Difference("sc", 0, 1),
    ],
    "working the treble in the 5 chain": [Moved((TREBLE,), placed(Whole(FIVE)))],
    "the dc going into the centre of each 5 ch": [
        Moved((DOUBLE,), placed(Centre(FIVE), which=Which.EACH))
    ],
    "the 3 tr on the 3 tr": [Moved((Named("dc", 3),), placed(Whole(Kind("dc")), count=3))],
    "but between the groups": [Moved((), placed(Between(Kind("group"))))],
    "the 2 tr, 1 picot, 2 tr worked in the 5 ch, dc on dc": [
        Moved((Named("dc", 2), Named("picot", 1), Named("dc", 2)), placed(Whole(FIVE))),
        Moved((DOUBLE,), placed(Whole(Kind("sc")))),
    ],
    "the 2 tr, 3 tr in the 5 ch": [Moved((Named("dc", 5),), placed(Whole(FIVE)))],
    "the 4 dc. on the next 2 ch.": [Moved((Named("sc", 4),), placed(Whole(Kind("space", 2))))],
    "with tr instead of dc": [Exchanged("dc", "sc")],
    "in htr instead of tr, with 7 ch instead of 5, omitting picots": [
        Exchanged("hdc", "dc"),
        Difference("ch", 7, 5),
        Difference("picot", 0),
    ],
}


def border_of(text: str) -> Border:
    border, findings = read_border(Source("x.border", HEADS + text))
    assert border is not None and not findings
    return border


@pytest.mark.parametrize(("words", "differences"), SAID.items())
def test_a_difference_is_read_and_written(words: str, differences: Sequence[Variation]) -> None:
    border = border_of(f"{FIRST}round 3: as 2nd, {words}.\n")
    assert border.rows[2].body == Copy((2,), differences=tuple(differences))
    for terms in ("uk", "us"):
        again, findings = read_border(Source("y.border", write_border(border, terms)))
        assert again is not None and not findings
        assert again.rows == border.rows


def texts(text: str, other: Border | None = None) -> tuple[list[str], list[str]]:
    """Each round's steps as they are worked, and the codes of what is told."""
    reading, told = read_rounds(border_of(text), lambda source, name: other)
    bodies = [round_.body for round_ in reading.rounds]
    written = [write_text(body, "uk") for body in bodies if isinstance(body, Text)]
    return written, [f"{f.code} in {f.round}" for f in told]


def test_copies_of_several_rows_need_one_that_has_it() -> None:
    made, told = texts(f"{FIRST}rounds 3-4: as rounds 1 and 2, but with 7 ch instead of 5.\n")
    assert made[2:] == ["*1 dc in next st, ch 7, skip 2; repeat from *", "3 tr in each space"]
    assert not told
    _, told = texts(f"{FIRST}rounds 3-4: as rounds 1 and 2, but with 7 ch instead of 6.\n")
    assert told == ["difference-finds-nothing in 3"]


def test_one_number_in_all_the_rows_copied() -> None:
    second = (
        "round 1: *1 dc in next st, 5 ch; repeat.\nround 2: *1 dc in next space, 3 ch; repeat.\n"
    )
    _, told = texts(f"{second}rounds 3-4: as rounds 1 and 2, but with 7 ch.\n")
    assert told == ["difference-unclear in 4"]


def test_a_copy_of_a_copy_has_what_both_have() -> None:
    more = "round 3: as 1st, with 6 ch instead of 5.\nround 4: as 3rd, with 7 ch instead of 6.\n"
    made, told = texts(f"{FIRST}{more}round 5: as 4th, with 2 dc instead of 1.\n")
    assert made[4] == "*2 dc in next st, ch 7, skip 2; repeat from *"
    assert not told


def test_all_differences_are_of_the_row_as_it_is_copied() -> None:
    first = "round 1: *1 dc in next st, 5 ch, miss 2, 1 dc in next st, 3 ch, miss 2; repeat.\n"
    made, told = texts(f"{first}round 2: as 1st, with 5 ch instead of 3 and 3 ch instead of 5.\n")
    assert made[1] == (
        "*1 dc in next st, ch 3, skip 2, 1 dc in next st, ch 5, skip 2; repeat from *"
    )
    assert not told


def test_copies_from_another_file() -> None:
    other, _ = read_border(
        Source("cuff.border", f"{HEADS}{FIRST}round 3: as 1st, with 6 ch instead of 5.\n")
    )
    made, told = texts('round 1: as round 3 of "cuff.border", with 8 ch instead of 6.\n', other)
    assert made == ["*1 dc in next st, ch 8, skip 2; repeat from *"]
    assert not told


def test_a_fault_in_the_other_file_is_told_where_it_is_copied() -> None:
    other, _ = read_border(
        Source("cuff.border", f"{HEADS}{FIRST}round 3: as 1st, with 6 ch instead of 4.\n")
    )
    text = 'round 1: as round 3 of "cuff.border".\n'
    _, (told,) = read_rounds(border_of(text), lambda source, name: other)
    assert told.code == "difference-finds-nothing"
    assert told.span is not None and told.span.source == "x.border"


def test_a_fault_is_told_once_where_a_copy_is_copied_again() -> None:
    more = "round 3: as 1st, with 6 ch instead of 4.\nround 4: as 3rd.\n"
    _, told = texts(f"{FIRST}{more}")
    assert told == ["difference-finds-nothing in 3"]


def test_the_start_chain_makes_more_chains_besides_its_stitch() -> None:
    first = "round 1: ch 5 as tr and ch 2, miss 2, *1 tr in next st, 2 ch, miss 2; repeat.\n"
    made, told = texts(f"{first}round 2: as 1st, with 3 ch instead of 2.\n")
    assert made[1] == "ch 6 as tr and ch 3, skip 2, *1 tr in next st, ch 3, skip 2; repeat from *"
    assert not told


def test_a_repeat_that_would_take_nothing_is_told() -> None:
    first = "round 1: *(2 tr, 1 ch, 2 tr) in next st, 2 ch; repeat.\n"
    _, told = texts(f"{first}round 2: as 1st, omitting the 2 tr.\n")
    assert told == ["difference-leaves-nothing in 2"]


def test_clauses_are_changed_alike() -> None:
    first = "round 1: over each motif: 1 dc in each st, with 3 ch between; at each joint: 3 ch.\n"
    border = border_of(f"{first}round 2: as 1st, with 4 ch instead of 3.\n")
    reading, told = read_rounds(border, lambda source, name: None)
    body = reading.rounds[1].body
    assert isinstance(body, tuple) and not told
    assert [write_text(clause.text, "uk") for clause in body] == [
        "1 dc in each st, with ch 4 between",
        "ch 4",
    ]


PLACES = {
    "1 dc in next st, 5 ch, 1 dc in same st|the dc in the 3 ch": (
        "1 dc in next ch-3 space, ch 5, 1 dc in same place"
    ),
    "1 dc in first st, *5 ch, 1 dc in the st; repeat|the dc in the centre of the 5 ch": (
        "1 dc in centre of first ch-5 space, *ch 5, 1 dc in centre of the ch-5 space; repeat from *"
    ),
    "begin in next st, ch 3 as tr, 2 tr in same place, *3 tr in next st; repeat|the tr on the dc": (
        "begin in next dc, ch 3 as tr, 2 tr in same place, *3 tr in next dc; repeat from *"
    ),
    "*3 tr in next st, 2 ch; repeat|the 3 tr on the 3 tr": (
        "*3 tr in the next 3 tr, ch 2; repeat from *"
    ),
    "1 tr in next st|the tr in each 3 ch": "1 tr in each ch-3 space",
    "*2 tr, with 3 ch between, in next st; repeat|the 1 tr, 3 ch, 1 tr in the 3 ch": (
        "*2 tr, with ch 3 between, in next ch-3 space; repeat from *"
    ),
    "*((1 tr, 1 ch) twice, 1 tr) in next st; repeat|the 1 tr, 1 ch, 1 tr, 1 ch, 1 tr in the 3 ch": (
        "*((1 tr, ch 1) 2 times, 1 tr) in next ch-3 space; repeat from *"
    ),
}


@pytest.mark.parametrize(("rows", "written"), PLACES.items())
def test_which_and_how_many_stay(rows: str, written: str) -> None:
    first, otherwise = rows.split("|")
    made, told = texts(f"round 1: {first}.\nround 2: as 1st, {otherwise}.\n")
    assert made[1] == written
    assert not told


def test_several_places_of_the_copied_row_may_all_be_one() -> None:
    first = "*2 tr in each of the next 3 st, 2 ch; repeat"
    made, told = texts(f"round 1: {first}.\nround 2: as 1st, the tr in the 3 ch.\n")
    assert made[1] == "*2 tr in each of the next 3 ch-3 spaces, ch 2; repeat from *"
    assert told == ["perhaps-placed-otherwise in 2"]


def test_a_place_is_of_the_row_as_it_is_copied() -> None:
    otherwise = "with tr instead of dc and dc instead of tr, the dc in the 5 ch, the tr on the tr"
    made, told = texts(
        "round 1: *1 dc in next st, 1 tr in next st; repeat.\n"
        f"round 2: as 1st, {otherwise}, with 2 dc instead of 1.\n"
    )
    assert made[1] == "*2 tr in next ch-5 space, 1 dc in next tr; repeat from *"
    assert not told


def test_a_question_has_the_row_written_out_with_all_that_differs() -> None:
    border = border_of(f"{FIRST}round 3: as 1st, the dc in the 5 ch, with 7 ch instead of 5.\n")
    _, (told,) = read_rounds(border, lambda source, name: None)
    assert told.code == "perhaps-placed-otherwise" and told.round == 3
    assert told.help == (
        'write the row out: "*1 dc in next ch-5 space, ch 7, skip 2; repeat from *" if that is '
        'meant; "*1 dc in next ch-5 space, ch 7; repeat from *" if nothing is missed'
    )


def test_clauses_go_elsewhere_each_by_itself() -> None:
    first = (
        "round 1: over each motif: *1 dc in next st, 3 ch; repeat; at each joint: 1 tr in joint.\n"
    )
    border = border_of(f"{first}round 2: as 1st, the dc in the 3 ch.\n")
    reading, told = read_rounds(border, lambda source, name: None)
    copied, body = reading.rounds[0].body, reading.rounds[1].body
    assert isinstance(copied, tuple) and isinstance(body, tuple) and not told
    assert write_text(body[0].text, "uk") == "*1 dc in next ch-3 space, ch 3; repeat from *"
    assert body[1].text == copied[1].text
