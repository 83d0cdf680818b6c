"""What a row that does not come out may mean besides: the readings in which the books differ."""

from __future__ import annotations

import pytest
from asked import ARCHES, COUNT, asked, findings, read_so, worked
from worked import motifs, plain

from border.questions.asking import all_readings
from border.text.readings import Reading, Round
from border.text.tree import Text
from border.text.written import write_text

IN_ALL = "repeats: in all\n"
SAYS_IN_ALL = 'write "in all" behind the number, or a heading "repeats: in all"'
SAYS_MORE = 'write "more" behind the number, or a heading "repeats: more"'
PAIRS = "1 sc in next loop, *ch 2, skip 1 loop, 1 sc in next loop; repeat from *"
DCS = "round 1: 1 dc in each loop.\n"


@pytest.mark.parametrize(
    ("text", "loops", "edits"),
    [
        # so many times: in all, or more
        (f"round 1: {PAIRS} 5 times; ch 2, skip 1 loop.", 12, [SAYS_IN_ALL]),
        (f"{IN_ALL}round 1: {PAIRS} 4 times; ch 2, skip 1 loop.", 12, [SAYS_MORE]),
        # chains at the head: no stitch, or chains that stand
        (
            f"{DCS}round 2: ch 3, *1 dc in next st, ch 1, skip 1 st; repeat from *.",
            8,
            ["write ch 3, not counted", "write (ch 3) once"],
        ),
        # a loop that is the top of a stitch
        (f"{DCS}round 2: ch 5, 1 sc in 4th loop; repeat.", 12, ['write a heading "loop means st"']),
        # an ordinal counted from where the step before it began
        (
            "round 1: *skip 3 loops, 1 dc in 4th loop, ch 3; repeat from *.",
            12,
            ["write 1 dc in next loop"],
        ),
        ("round 1: *3 dc; 2 dc in 4th loop; repeat from *.", 12, ["write 2 dc in next loop"]),
        (
            "round 1: *skip 2 loops; 1 dc in 3rd loop, ch 3; skip 3 loops; 1 sc in 4th loop, ch 3;"
            " repeat from *.",
            21,
            [
                "write *skip 2 loops, 1 dc in next loop, ch 3, skip 3 loops, 1 sc in next loop, ch 3;"
                " repeat from *"
            ],
        ),
        # one in the space, not one in each chain
        (
            f"{ARCHES}round 2: *1 sc in next 5 ch, ch 2; repeat. (6 sc)",
            12,
            ["write 1 sc in next ch-5 space"],
        ),
        # so many chains, not stitches; also where the row comes to nothing as it is read
        (
            f"{ARCHES}round 2: *1 sc in centre of the block of 5, ch 5; repeat.",
            12,
            ["write 1 sc in centre of the ch-5 space"],
        ),
        # a miss that is only how far it is from one space to the next
        (
            f"{COUNT}round 1: *1 sc in next loop, ch 3; repeat.\n"
            "round 2: *1 sc in next space, ch 3, skip 3; repeat.",
            12,
            ['write a heading "chains count as stitches: no"', "leave out skip 3"],
        ),
    ],
)
def test_a_reading_that_comes_out_is_asked(text: str, loops: int, edits: list[str]) -> None:
    assert asked(text, plain(loops)) == read_so(*edits)


@pytest.mark.parametrize(
    ("steps", "loops", "edit"),
    [
        (
            "*1 sc in next loop, 5 dc in next loop, 1 sc in next loop; repeat from *",
            8,
            "*1 sc in next loop, 5 dc in next loop; repeat from *",
        ),
        (
            "*skip 1 loop, ch 3, 1 sc in next loop, ch 1, skip 1 loop; repeat from *",
            8,
            "*skip 1 loop, ch 3, 1 sc in next loop, ch 1; repeat from *",
        ),
        (
            "*(skip 1 loop, 1 sc in next loop) twice, ch 1, (1 sc in next loop, skip 1 loop) twice;"
            " repeat from *",
            14,
            "*(skip 1 loop, 1 sc in next loop) 2 times, ch 1, (1 sc in next loop, skip 1 loop),"
            " 1 sc in next loop; repeat from *",
        ),
    ],
)
def test_a_step_that_may_be_shared_is_asked(steps: str, loops: int, edit: str) -> None:
    assert asked(f"round 1: {steps}.", plain(loops)) == [("perhaps-shared", f"write {edit}")]


def test_a_repeat_may_stop_before_what_the_row_ends_with() -> None:
    row = "row 1: *1 dc in each of next 2 loops, ch 1; repeat from *; 2 dc."
    stops = "repeat from * to last 2 loops, 1 dc in each of the last 2 loops"
    edit = f"write *1 dc in each of the next 2 loops, ch 1; {stops}"
    assert asked(row, plain(8, closed=False)) == read_so(edit)
    assert asked(row, plain(9, closed=False)) == []


def test_only_the_first_round_that_does_not_come_out_is_asked_about() -> None:
    text = (
        "round 1: *skip 3 loops, 1 dc in 4th loop, ch 3; repeat from *.\n"
        "round 2: *skip 1 space, 1 dc in 2nd space, ch 3; repeat from *.\n"
    )
    assert {f.round for f in findings(text, plain(12))} == {1}


def test_of_a_round_that_something_is_eased_into_nothing_is_asked() -> None:
    text = "round 1: *skip 3 loops, 1 dc in 4th loop, ch 3; repeat from *."
    assert findings(text, plain(12)) != []
    assert findings(text, plain(12), eased=(1,)) == []


def test_with_several_readings_that_fit_the_row_s_own_count_decides() -> None:
    two = f"{DCS}round 2: ch 3, *1 dc in next st, ch 1, skip 1 st; repeat from *."
    assert len(asked(two, plain(8))) == 2
    assert asked(f"{two} (4 dc, 4 ch)", plain(8)) == read_so("write ch 3, not counted")
    assert asked(f"{two} (4 dc, 7 ch)", plain(8)) == read_so("write (ch 3) once")


def test_a_loop_may_be_the_top_of_any_stitch() -> None:
    text = "round 1: 1 sc in each loop.\nround 2: *1 dc, ch 1, skip 1 loop; repeat from *.\n"
    assert asked(COUNT + text, plain(24)) == read_so('write a heading "loop means st"')
    assert asked(f"{COUNT}loop means st\n{text}", plain(24)) == []


def test_a_clause_is_read_otherwise_by_itself() -> None:
    text = (
        "round 1: over each motif: *skip 1 loop, 1 dc in 2nd loop, ch 1; repeat from *;"
        " at each joint: ch 1."
    )
    assert asked(text, motifs(4, 6)) == read_so("write 1 dc in next loop")


def test_a_row_that_comes_out_is_asked_nothing() -> None:
    assert asked("round 1: *1 sc in next loop, ch 3, skip 1 loop; repeat.", plain(8)) == []


def test_all_readings_say_of_every_round_which_of_them_come_out() -> None:
    text = (
        f"{COUNT}round 1: *1 sc in next loop, ch 2, skip 1 loop; repeat.\n"
        "round 2: *1 dc in next space, 2 dc in 2nd space; repeat.\n"
    )
    told = [
        (one.number, one.other.code if one.other else None, one.times, one.fits)
        for one in all_readings(*worked(text, plain(8)))
    ]
    assert told == [
        (1, None, (4,), True),
        (2, None, (1,), False),
        (2, "perhaps-read-so", (2,), True),
    ]


def text_of(reading: Reading, rounds: list[Round]) -> str:
    """A border with these rounds, as it would be written."""
    terms, counted = reading.rules.terms, reading.rules.chains_count
    lines = [f"terms: {terms}"]
    if counted is not None:
        lines.append(f"chains count as stitches: {'yes' if counted else 'no'}")
    for round_ in rounds:
        assert isinstance(round_.body, Text)
        lines.append(f"round {round_.number}: {write_text(round_.body, terms)}.")
    return "\n".join(lines) + "\n"


@pytest.mark.parametrize(
    ("text", "loops"),
    [
        (f"round 1: {PAIRS} 5 times; ch 2, skip 1 loop.", 12),
        (f"{DCS}round 2: ch 3, *1 dc in next st, ch 1, skip 1 st; repeat from *.", 8),
        ("round 1: *3 dc; 2 dc in 4th loop; repeat from *.", 12),
        ("round 1: *1 sc in next loop, 5 dc in next loop, 1 sc in next loop; repeat from *.", 8),
        ("round 1: *1 sc in next loop, ch 3, skip 4 loops; repeat from *.", 12),
        ("round 1: *1 sc in each of next 4 loops, ch 1, skip 1 loop; repeat from *.", 16),
        (
            "round 1: 1 sc in next loop, *ch 3, 1 sc in next loop, skip 1 loop; repeat from *.",
            12,
        ),
        (f"{COUNT}{ARCHES}round 2: *5 sc, ch 1; repeat from *.", 12),
    ],
)
def test_whatever_is_said_to_come_out_does_when_it_is_written(text: str, loops: int) -> None:
    reading, edge = worked(text, plain(loops))
    fitting = [t.other for t in all_readings(reading, edge) if t.fits and t.other is not None]
    assert fitting
    for other in fitting:
        rounds = list(reading.rounds)
        rounds[other.round.number - 1] = other.round
        if other.below is not None:
            rounds[other.below.number - 1] = other.below
        written = text_of(reading, rounds)
        _, again = worked(written, plain(loops))
        assert again.rounds[other.round.number - 1].closes, written
