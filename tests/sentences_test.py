"""Whole sentences of the books: places first, chains between, over and over, worked off."""

from __future__ import annotations

import pytest
from reading import asked, read, written

from border.text.written import write_border


@pytest.mark.parametrize(
    ("said", "read"),
    [
        ("in each loop work 1 sc, 5 dc, 1 sc", "(1 sc, 5 dc, 1 sc) in each loop"),
        ("over every 5 chain: 1 sc, 3 dc, 1 sc", "(1 sc, 3 dc, 1 sc) in each ch-5 space"),
        ("fill each space with 3 sc", "3 sc in each space"),
        ("ch 5, fasten with a sc in next loop", "ch 5, 1 sc in next loop"),
        ("*ch 5, join with sc in next loop; repeat", "*ch 5, 1 sc in next loop; repeat from *"),
        ("1 sc, ch 2, 1 sc in the same st as the last", "1 sc, ch 2, 1 sc in same st"),
        ("1 dc, ch 2, skipping 2 under the latter; repeat", "1 dc, ch 2, skip 2; repeat"),
        ("ch 5 (= 1 dc and 2 ch), 1 dc in next dc", "ch 5 as dc and ch 2, 1 dc in next dc"),
        ("1 dc, 1 ch in each of 6 dc, 1 sc", "(1 dc, ch 1) in each of the next 6 dc, 1 sc"),
        ("1 dc and 2 ch, in each dc", "(1 dc, ch 2) in each dc"),
        ("3 dc in each 3 chain, missing every sc", "3 dc in each ch-3 space"),
        ("1 sc in the centre picot of the 3", "1 sc in 2nd picot, skip 1 picot"),
        ("1 sc in the middle loop of the next 5", "1 sc in 3rd loop, skip 2 loops"),
        ("1 sc in next st, 1 sc in end of row", "1 sc in next st, 1 sc in last st"),
        ("turn with 1 ch, 1 sc in each st", "turn, ch 1; 1 sc in each st"),
        (
            "1 dc, ch 1, skip 1; so on to the end, taking up only the back loops",
            "1 dc in back loop, ch 1, skip 1; repeat",
        ),
        (
            "*1 sc in next dc, ch 2; repeat from * 3 times more, loosely, join",
            "*1 sc in next dc loosely, ch 2; repeat from * 4 times in all, join",
        ),
        ("3 sl st to reach the centre of the loop, 1 sc", "begin in centre of the loop, 1 sc"),
    ],
)
def test_sentences_turned_round(said: str, read: str) -> None:
    assert written(said) == read


@pytest.mark.parametrize(
    ("said", "read"),
    [
        ("12 dc in next loop, picot after every 2nd", "(2 dc, picot of 3) 6 times in next loop"),
        (
            "7 dc in each loop, picot after every 2nd",
            "((2 dc, picot of 3) 3 times, 1 dc) in each loop",
        ),
        ("8 dc in next loop, picot after the 3rd", "(3 dc, picot of 3, 5 dc) in next loop"),
        ("1 dc in each st, picot after each", "(1 dc, picot of 3) in each st"),
        (
            "1 dc in each of the 7, picot after every 2nd",
            "((1 dc in each of the next 2 st, picot of 3) 3 times, 1 dc in next st)",
        ),
        (
            "1 sc in each st, ch 3 after every second sc",
            "*1 sc in each of the next 2 st, ch 3; repeat from *",
        ),
    ],
)
def test_what_stands_after_some_of_the_stitches(said: str, read: str) -> None:
    assert written(said) == read


@pytest.mark.parametrize(
    ("said", "read"),
    [
        ("5 dc on centre of 7", "1 dc in 2nd st of the block of 7, 1 dc in each of the next 4 st"),
        (
            "1 sc on each of the 3 centre dc of the 5 dc",
            "1 sc in 2nd st of the run of 5 dc, 1 sc in each of the next 2 st",
        ),
        (
            "9 dc beginning on the 2nd of the 10",
            "1 dc in 2nd st of the block of 10, 1 dc in each of the next 8 st",
        ),
        ("(1 dc, 1 ch) 9 times on the 9 dc", "(1 dc, ch 1) in each of the next 9 dc"),
        ("slip over 3 dc", "1 sl st in the next 3 dc"),
        ("2 dc on the centre 2 of 4", "1 dc in 2nd st of the block of 4, 1 dc in next st"),
    ],
)
def test_stitches_on_part_of_a_run(said: str, read: str) -> None:
    assert written(f"{said}, ch 2") == f"{read}, ch 2"


def test_a_part_of_a_run_needs_its_stitches_before_it() -> None:
    assert set(asked("on the centre 3 of the 5 dc, ch 2")) == {"not-understood"}


@pytest.mark.parametrize(
    ("said", "read"),
    [
        ("1 dc in each st, 1 ch between each", "1 dc in each st, with ch 1 between"),
        ("1 dc in every loop, 3 ch after each", "1 dc in each loop, with ch 3 between"),
        ("1 dc in each st with 1 ch between the dc", "1 dc in each st, with ch 1 between"),
        ("2 dc in each loop, with 1 ch between each pair", "2 dc in each loop, with ch 1 between"),
        ("1 sc between the groups", "1 sc between next 2 groups; repeat"),
        ("1 sc between each group", "1 sc between each 2 groups"),
        ("2 sc divided by 1 picot in next loop", "(1 sc, picot of 3, 1 sc) in next loop"),
        ("2 sc in each loop with a picot between each", "(1 sc, picot of 3, 1 sc) in each loop"),
        ("4 dc, with 2 ch between the 2nd and 3rd, in next loop", None),
        ("4 dc in next loop, ch 2 between the 2nd and 3rd", None),
    ],
)
def test_what_stands_between(said: str, read: str | None) -> None:
    assert written(said) == (read or "(2 dc, ch 2, 2 dc) in next loop")


@pytest.mark.parametrize(
    ("said", "read"),
    [
        ("ch 3, skip 2, 1 dc, all round", "ch 3, skip 2, 1 dc; repeat"),
        ("all round, ch 3, skip 2, 1 dc", "ch 3, skip 2, 1 dc; repeat"),
        ("all round 1 dc in each st", "1 dc in each st"),
        ("1 dc in each st; repeat", "1 dc in each st"),
        ("3 dc in first loop; repeat in every loop", "3 dc in each loop"),
        ("sc all round, taking both threads", "1 sc in each st in both threads"),
        (
            "*1 sc, ch 5, skip 3; repeat from * to within 4 of the end, 4 sc",
            "*1 sc, ch 5, skip 3; repeat from * to last 4 st, 4 sc",
        ),
        (
            "*1 sc, ch 5, skip 3; repeat from * till 3 stitches remain, 3 sc",
            "*1 sc, ch 5, skip 3; repeat from * to last 3 st, 3 sc",
        ),
        ("finish with a row of sc", "1 sc in each st"),
        ("ch 5, 1 sc in next loop; continue in the same manner", "ch 5, 1 sc in next loop; repeat"),
        (
            "*ch 5, 1 sc in next loop; repeat from *; 1 sl st in the first sc",
            "*ch 5, 1 sc in next loop; repeat from *, join",
        ),
    ],
)
def test_over_and_over(said: str, read: str) -> None:
    assert written(said) == read


def test_a_number_of_times_inside_a_row_is_told() -> None:
    told = asked("1 dc, ch 1, skip 1, 7 times; ch 5, skip 5; repeat")
    assert set(told) == {"times-of-the-row"}


@pytest.mark.parametrize(
    ("said", "read"),
    [
        ("2 dc, keeping the last loop of each on the hook, draw through all", "2 dc together"),
        ("3 dc, cast off together, in the next loop", "3 dc together over next loop"),
        (
            "1 sc in next loop, holding the last loop of each on the hook, 3 dc in next loop, "
            "draw through all",
            "1 sc in next loop, 3 dc together over next loop",
        ),
        (
            "holding the last loop of each on the hook 3 dc in next loop, draw through all",
            "3 dc together over next loop",
        ),
        (
            "1 sc; holding the last loop of each on the hook, 3 dc in next loop, draw through all",
            "1 sc; 3 dc together over next loop",
        ),
    ],
)
def test_stitches_worked_off_together(said: str, read: str) -> None:
    assert written(f"{said}, ch 3") == f"{read}, ch 3"


@pytest.mark.parametrize(
    ("steps", "edit"),
    [
        ("1 sc in each loop, ch 5", '", with ch 5 between"'),
        ("1 dc in each dc, 1 dc in each ch", "1 dc in each dc or ch"),
        (
            "1 dc in each dc, 2 dc in each space",
            "(1 dc in each dc, 2 dc in each space) as they come",
        ),
        ("ch 2, skip 2, 1 dc in every 3rd st", '", with ch 2 between"'),
    ],
)
def test_what_stands_behind_an_each_is_asked(steps: str, edit: str) -> None:
    assert edit in asked(steps)["perhaps-as-they-come"]


def test_a_last_inside_a_repeat_is_asked() -> None:
    assert set(asked("1 sc in first dc, ch 5, 1 sc in last dc; repeat")) >= {"perhaps-last-of-each"}
    assert asked("*1 sc in next dc, ch 5; repeat from *, 1 sc in last dc") == {}


def test_a_list_in_a_bracket_before_a_place_is_asked() -> None:
    told = asked("(2 dc, ch 1) 3 times, 2 dc in next loop")
    assert told["perhaps-one-place"].startswith("write ((2 dc, ch 1) 3 times, 2 dc) in next loop")


def test_fasten_alone_is_a_slip_stitch_and_told_and_said_otherwise_by_a_heading() -> None:
    row = "ch 5, fasten in next loop; repeat"
    assert '"fasten means sc"' in asked(row)["fastening-assumed"]
    assert written("ch 5, fasten in next loop; repeat", headings="fasten means sc") == (
        "ch 5, 1 sc in next loop; repeat"
    )
    assert written("ch 5, fasten in next loop; repeat. Fasten off", headings="fasten means sc") == (
        "ch 5, 1 sc in next loop; repeat, fasten off"
    )


def test_a_group_before_its_place_by_the_heading() -> None:
    heading = "bare stitches: in the place behind"
    assert written("2 dc, ch 2, 2 dc in next loop", headings=heading) == (
        "(2 dc, ch 2, 2 dc) in next loop"
    )
    for other in ("1 sc, 5 dc in next loop", "1 sc, ch 5, 1 sc in next loop"):
        assert set(asked(other, headings=heading)) == {"perhaps-one-place"}
    assert set(asked("2 dc, ch 2, 2 dc on the 2 ch", headings=heading)) == {"perhaps-one-place"}
    assert written("ch 5, 1 sc in every 2nd loop", headings=heading) == (
        "(ch 5, 1 sc) in every 2nd loop"
    )
    assert written("1 dc, ch 3, 1 dc in next loop", headings=heading) == (
        "(1 dc, ch 3, 1 dc) in next loop"
    )


def test_an_exception_takes_its_own_step_with_it() -> None:
    border_help = asked("1 sc, 3 sc in each corner")["exception-in-words"]
    assert '"-- 3 sc in each corner --"' in border_help


def test_corners_of_an_edge_that_has_some_are_not_left_out() -> None:
    said = asked("1 sc in each st, 3 sc in each corner")["corners-left-out"]
    assert '"over corner: …; elsewhere: 1 sc in each st"' in said


@pytest.mark.parametrize(
    ("steps", "bracket"),
    [
        ("ch 2, 1 dc, 5 times", "(ch 2, 1 dc) 5 times"),
        ("1 dc, ch 2, 5 times", "(1 dc, ch 2) 5 times"),
        ("ch 2, 1 dc in next st, 5 times", "(ch 2, 1 dc in next st) 5 times"),
        ("1 dc, 5 times", "(1 dc) 5 times"),
        ("1 tr in next st; ch 2, 1 dc, 5 times", "1 tr in next st, (ch 2, 1 dc) 5 times"),
        ("skip 1, 1 dc, 3 times", "(skip 1, 1 dc) 3 times"),
    ],
)
def test_a_number_of_times_is_that_of_all_from_the_last_stop(steps: str, bracket: str) -> None:
    border, findings = read(f"terms: us\nround 1: {steps}; 1 sc in next loop.\n")
    row = f"round 1: {bracket}, 1 sc in next loop."
    assert " ".join(write_border(border, "us").split()).endswith(row)
    assert [f.code for f in findings] == ["times-of-the-row"]


def test_a_number_of_times_behind_a_bracket_is_its_own() -> None:
    said = "(1 dc, ch 1), 5 times; 1 sc in next st"
    assert written(said) == "(1 dc, ch 1) 5 times, 1 sc in next st"


@pytest.mark.parametrize(
    ("said", "read"),
    [
        ("in white, 2 dc in next st", "2 dc in next st in white"),
        ("2 dc scarlet in next st, ch 3", "2 dc in next st with scarlet, ch 3"),
        ("1 sc in next st, in white 2 dc in next st", "1 sc in next st, 2 dc in next st in white"),
        ("with white, ch 3, 1 dc in next st", "ch 3, 1 dc in next st"),
        ("with white, 3 ch, 1 dc in next st", "ch 3, 1 dc in next st"),
        ("with white, ch, 1 dc in next st", "ch 1, 1 dc in next st"),
        ("1 dc in next st, white ch 3", "1 dc in next st, ch 3"),
        (
            "in white, *ch 3, 1 dc in next st; repeat from *",
            "*ch 3, 1 dc in next st; repeat from *",
        ),
        ("in white, (2 dc, ch 3) 2 times", "(2 dc in white, ch 3) 2 times"),
    ],
)
def test_a_colour_goes_with_its_stitches_or_chains(said: str, read: str) -> None:
    assert written(said) == read


@pytest.mark.parametrize(
    ("said", "read"),
    [
        ("in next space: 2 dc, ch 1", "(2 dc, ch 1) in next space"),
        ("in each space: 2 dc, ch 1", "(2 dc, ch 1) in each space"),
        ("over each space: 2 dc, ch 1", "(2 dc, ch 1) in each space"),
    ],
)
def test_a_place_before_a_colon(said: str, read: str) -> None:
    assert written(said) == read


@pytest.mark.parametrize(
    ("said", "read"),
    [
        ("1 dc in each st, ch 2 between them", "1 dc in each st, with ch 2 between"),
        ("1 dc in each st, 3 ch between each", "1 dc in each st, with ch 3 between"),
        ("1 dc in each st, ch between", "1 dc in each st, with ch 1 between"),
        ("(1 dc, ch 1) once in next space", "(1 dc, ch 1) once in next space"),
        ("(1 dc, ch 1) twice in next space", "(1 dc, ch 1) 2 times in next space"),
    ],
)
def test_chains_between_and_brackets_with_a_number(said: str, read: str) -> None:
    assert written(said) == read
