"""What books leave unsaid at a place: the noun, the number, the order of the words."""

from __future__ import annotations

import pytest
from reading import asked, read, written


@pytest.mark.parametrize(
    ("said", "read"),
    [
        ("1 dc in next", "1 dc in next st"),
        ("skip 1 space, 3 dc in the next", "skip 1 space, 3 dc in next space"),
        ("2 dc in 1", "2 dc in next st"),
        ("2 dc in every one", "2 dc in each st"),
        ("3 dc in one ch", "3 dc in next ch"),
        ("1 dc in the 2 following st", "1 dc in the next 2 st"),
        ("1 dc in each of the 3 first st", "1 dc in each of the first 3 st"),
        ("3 consecutive dc in a space, 3 more dc in same place", None),
        ("1 dc on the 1st, 2nd, and 3rd st", "1 dc in the first 3 st"),
        ("1 dc in all the loops", "1 dc in each loop"),
        ("1 dc in every one of the st", "1 dc in each st"),
        ("1 dc in the next st but 3", "1 dc in 4th st"),
        ("1 sc in the next, 1 sc in it", "1 sc in next st, 1 sc in same place"),
        ("join thread in any loop, 1 sc in next", "begin in next loop, 1 sc in next loop"),
    ],
)
def test_places_with_something_left_unsaid(said: str, read: str | None) -> None:
    loose = "3 dc in next space, 3 dc in same place"
    assert written(said) == (read or loose)


@pytest.mark.parametrize(
    ("said", "read"),
    [
        ("in the 3 chain", "in the ch-3 space"),
        ("under 5 ch", "in the ch-5 space"),
        ("in each 7 ch", "in each ch-7 space"),
        ("in next ch 1", "in next ch-1 space"),
        ("in the next 1 ch", "in next ch-1 space"),
        ("in the middle of the chain", "in centre of the space"),
        ("under the chain of 7", "in the ch-7 space"),
        ("in next loop of 4 chain", "in next ch-4 space"),
        ("in each of the 1 chain spaces", "in each ch-1 space"),
        ("on 1st of 3 dc", "in first st of the run of 3 dc"),
        ("in the centre of each group of dc", None),
        ("in next shell of 5 dc", "in next 5-dc group"),
    ],
)
def test_spaces_and_runs_named_by_their_number(said: str, read: str | None) -> None:
    if read is not None:
        assert written(f"2 sc {said}") == f"2 sc {read}"
    else:
        assert written(f"1 sc {said}").startswith("1 sc in centre of each ")


@pytest.mark.parametrize(
    ("said", "read"),
    [
        ("skip 1 chain space", "skip 1 space"),
        ("miss the next 1 chain loop", "skip 1 loop"),
        ("skip a chain space", "skip 1 space"),
        ("2 sc in a chain space", "2 sc in next space"),
        ("skip 1 ch-1 space", "skip 1 ch-1 space"),
        ("2 sc in next 1 chain space", "2 sc in next ch-1 space"),
    ],
)
def test_one_chain_space_that_is_counted_is_no_space_of_one_chain(said: str, read: str) -> None:
    assert written(f"{said}, 1 dc in next st") == f"{read}, 1 dc in next st"


def test_chains_of_so_many_are_made_where_no_place_is_named() -> None:
    assert written("make a chain of five, skip 3, 1 sc") == "ch 5, skip 3, 1 sc"


def test_a_bare_ordinal_is_of_the_part_named_before() -> None:
    assert written("1 sc in the first of the 5 dc, ch 4, 1 sc in the last, ch 4") == (
        "1 sc in first st of the run of 5 dc, ch 4, 1 sc in last st of same run of 5 dc, ch 4"
    )
    assert written("1 sc in 3rd of the 7 ch, ch 5, 1 sc in the 5th") == (
        "1 sc in 3rd ch of the ch-7 space, ch 5, 1 sc in 5th ch of same ch-7 space"
    )


@pytest.mark.parametrize(
    ("steps", "edit"),
    [
        ("1 sc in 1st loop, ch 7, 1 sc in 2nd loop", "1 sc in next loop if the 2nd"),
        ("1 sc on the 1st dc, ch 2, 1 sc on the 5th dc", "1 sc in 4th dc if the 5th"),
        ("in 1st loop 2 dc, 3 ch, 2 dc; in 2nd loop 5 sc", "5 sc in next loop if the 2nd"),
        ("3 dc in 1st loop, 3 dc in same loop, 1 sc in 3rd loop", "1 sc in 2nd loop if the 3rd"),
    ],
)
def test_ordinals_that_rise_are_asked(steps: str, edit: str) -> None:
    assert edit in asked(steps)["perhaps-counted-on"]


def test_ordinals_that_begin_anew_are_not_asked() -> None:
    assert written("9 dc in 5th loop, 1 sc in 5th loop") == "9 dc in 5th loop, 1 sc in 5th loop"


def test_one_chain_may_be_the_whole_space() -> None:
    for where in ("in the chain", "round next chain"):
        assert set(asked(f"2 dc {where}")) == {"perhaps-one-place"}
    assert written("2 dc under each chain") == "2 dc in each space"
    assert asked("2 dc in the chain") == {
        "perhaps-one-place": "write 2 dc in next space if it goes into the whole loop of chains, "
        "otherwise 2 dc in next ch"
    }


def test_the_row_below_may_be_named_by_its_number() -> None:
    told = asked("1 sc in each st\nround 2: 1 sc in each st of round 1")
    assert told == {}
    nine = "\n".join(f"round {n}: 1 sc in each st" for n in range(2, 10))
    assert asked(f"1 sc in each st\n{nine}\nround 10: 1 sc in next group of 9 round the stem") == {}
    assert set(asked("1 sc in each st\nround 2: ch 1, 1 sc in each st of the 5th row")) == {
        "not-understood"
    }


@pytest.mark.parametrize(
    ("last", "rounds"),
    [
        ("Repeat these two rows.", [(3, 4)]),
        ("Repeat these 2 rows twice.", [(3, 4, 5, 6)]),
        ("Repeat the last two rows.", [(3, 4)]),
        ("Repeat row 1.", [(3,)]),
        ("repeat to the end.", []),
    ],
)
def test_rows_repeated_at_the_end_of_a_text(last: str, rounds: list[tuple[int, ...]]) -> None:
    border, findings = read(
        f"terms: us\n1st row. 1 sc in each st.\n2nd row. ch 5, 1 sc in next st.\n{last}\n"
    )
    assert not findings
    assert [row.numbers for row in border.rows[2:]] == rounds


def test_more_rows_than_there_are_cannot_be_repeated() -> None:
    _, findings = read("terms: us\n1st row. 1 sc in each st.\nRepeat these three rows.\n")
    assert [f.code for f in findings] == ["no-such-row"]
