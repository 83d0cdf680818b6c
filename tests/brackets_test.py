"""Repeats, brackets and endings in all their forms."""

from __future__ import annotations

import pytest
from reading import (
    EACH_ST,
    LOOP,
    NEXT_SPACE,
    NEXT_ST,
    SPACE,
    dc,
    place,
    read_items,
    read_text,
    row_faults,
)

from border.text.tree import (
    ST,
    Bracket,
    Chains,
    End,
    Ending,
    Item,
    Repeat,
    Skip,
    Text,
    ToLast,
    Which,
    Whole,
)

INNER = (dc(2), Chains(1))


@pytest.mark.parametrize(
    ("text", "repeat"),
    [
        ("*2 dc, ch 1; repeat from *", Repeat(INNER, None, star=True)),
        ("*2 dc, ch 1; rep. from * to end", Repeat(INNER, None, star=True)),
        ("* 2 dc, ch 1, repeat from star around", Repeat(INNER, None, star=True)),
        ("*2 dc, ch 1; repeat from * all round", Repeat(INNER, None, star=True)),
        ("*2 dc, ch 1; repeat from * across", Repeat(INNER, None, star=True)),
        ("*2 dc, ch 1; repeat from * to the end of the row", Repeat(INNER, None, star=True)),
        ("*2 dc, ch 1; repeat", Repeat(INNER, None, star=True)),
        ("*2 dc, ch 1 and repeat to end", Repeat(INNER, None, star=True)),
        ("*2 dc, ch 1; repeat from * to last 2 st",
         Repeat(INNER, None, ToLast(2, Whole(ST)), star=True)),
        ("*2 dc, ch 1; repeat from * to the last loop",
         Repeat(INNER, None, ToLast(1, Whole(LOOP)), star=True)),
        ("*2 dc, ch 1; repeat from * 3 times", Repeat(INNER, 4, star=True)),
        ("*2 dc, ch 1; repeat from * twice", Repeat(INNER, 3, star=True)),
        ("*2 dc, ch 1; repeat 3 times from *", Repeat(INNER, 4, star=True)),
        ("*2 dc, ch 1; repeat from * 3 more times", Repeat(INNER, 4, star=True)),
        ("*2 dc, ch 1; repeat from * 3 times more", Repeat(INNER, 4, star=True)),
        ("*2 dc, ch 1; repeat from * once more", Repeat(INNER, 2, star=True)),
        ("*2 dc, ch 1; repeat from * 3 times in all", Repeat(INNER, 3, star=True)),
        ("(2 dc, ch 1) 3 times", Repeat(INNER, 3)),
        ("[2 dc, ch 1] twice", Repeat(INNER, 2)),
        ("(2 dc, ch 1, 3 times)", Repeat(INNER, 3)),
        ("(2 dc, ch 1; thrice)", Repeat(INNER, 3)),
        ("(2 dc, ch 1) x 3", Repeat(INNER, 3)),
        ("(2 dc, ch 1) 3 times more", Repeat(INNER, 4)),
        ("(2 dc, ch 1) 3 times in all", Repeat(INNER, 3)),
        ("(2 dc, ch 1) to end", Repeat(INNER, None)),
        ("(2 dc, ch 1) around", Repeat(INNER, None)),
        ("(2 dc, ch 1) to last 2 st", Repeat(INNER, None, ToLast(2, Whole(ST)))),
        ("(2 dc, ch 1)", Repeat(INNER, 1)),
        ("(2 dc, ch 1) once", Repeat(INNER, 1)),
    ],
)  # fmt: skip
def test_repeats(text: str, repeat: Repeat) -> None:
    assert read_items(text) == (repeat,)


def test_the_heading_says_what_repeat_n_times_means() -> None:
    text = "*2 dc, ch 1; repeat from * 3 times"
    assert read_items(text, headings="repeats: in all") == (Repeat(INNER, 3, star=True),)
    assert read_items(text, headings="repeats: more") == (Repeat(INNER, 4, star=True),)
    more = "*2 dc, ch 1; repeat from * 3 more times"
    assert read_items(more, headings="repeats: in all") == (Repeat(INNER, 4, star=True),)


def test_repeats_inside_each_other() -> None:
    assert read_items("*(2 dc, ch 1) 3 times, skip 1 st; repeat from *, 1 dc") == (
        Repeat((Repeat(INNER, 3), Skip(1, Whole(ST))), None, star=True),
        dc(1),
    )
    assert read_items("(*2 dc, ch 1; repeat from * twice, 1 dc) 3 times") == (
        Repeat((Repeat(INNER, 3, star=True), dc(1)), 3),
    )


def test_a_bare_repeat_with_no_star_repeats_the_whole_text() -> None:
    text = read_text("2 dc, ch 1, repeat, join.")
    assert text == Text(INNER, True, (End(Ending.JOIN),))
    assert read_text("2 dc, ch 1; and repeat all round") == Text(INNER, True)
    assert read_text("2 dc, ch 1; repeat from the beginning of the row") == Text(INNER, True)


@pytest.mark.parametrize(
    ("text", "bracket"),
    [
        ("(2 dc, ch 1) in next space", Bracket(INNER, NEXT_SPACE)),
        ("2 dc, ch 1, all in next space", Bracket(INNER, NEXT_SPACE)),
        ("(2 dc, ch 1) in each space, with ch 3 between",
         Bracket(INNER, place(Which.EACH, Whole(SPACE)), 3)),
        ("(2 dc, ch 1) 3 times in next space", Bracket((Repeat(INNER, 3),), NEXT_SPACE)),
        ("(2 dc, ch 1, 3 times) in next space", Bracket((Repeat(INNER, 3),), NEXT_SPACE)),
        ("(2 dc, ch 1) in each of the next 2 spaces",
         Bracket(INNER, place(Which.NEXT, Whole(SPACE), count=2, each=True))),
    ],
)  # fmt: skip
def test_brackets_in_a_place(text: str, bracket: Bracket) -> None:
    assert read_items(text) == (bracket,)


@pytest.mark.parametrize(
    ("text", "inside"),
    [
        ("((2 dc, ch 1) in next space, 2 times)", (Bracket(INNER, NEXT_SPACE),)),
        ("((2 dc, ch 1) 3 times; twice)", (Repeat(INNER, 3),)),
    ],
)
def test_times_at_the_end_of_a_bracket_are_those_of_all_in_it(
    text: str, inside: tuple[Item, ...]
) -> None:
    assert read_items(text) == (Repeat(inside, 2),)


def test_all_in_gathers_back_to_the_last_place_skip_or_repeat_mark() -> None:
    gathered = Bracket(INNER, NEXT_SPACE)
    tail = "2 dc, ch 1, all in next space"
    assert read_items(f"1 dc in next st, {tail}") == (dc(1, NEXT_ST), gathered)
    assert read_items(f"skip 2, {tail}") == (Skip(2, None), gathered)
    assert read_items(f"*{tail}; repeat from *") == (Repeat((gathered,), None, star=True),)
    assert read_items(f"*1 dc; repeat from * twice, {tail}") == (
        Repeat((dc(1),), 3, star=True),
        gathered,
    )
    assert row_faults("skip 2, all in next space")[0][0] == "not-understood"


@pytest.mark.parametrize(
    ("text", "ends"),
    [
        ("join", (Ending.JOIN,)),
        ("join with sl st to first dc", (Ending.JOIN,)),
        ("join with a sl st in the top of the first ch", (Ending.JOIN,)),
        ("sl st to first dc", (Ending.JOIN,)),
        ("turn", (Ending.TURN,)),
        ("turn the work", (Ending.TURN,)),
        ("join, fasten off", (Ending.JOIN, Ending.FASTEN_OFF)),
        ("join. Cut the thread.", (Ending.JOIN, Ending.FASTEN_OFF)),
    ],
)
def test_endings(text: str, ends: tuple[Ending, ...]) -> None:
    assert read_text(f"1 dc in each st, {text}") == Text(
        (dc(1, EACH_ST),), False, tuple(End(e) for e in ends)
    )
