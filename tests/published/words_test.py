"""The published pieces once more, restated nearly in their books' own order of phrases.

Each says with what the book says it (bare repeats, none at all, crosses, "in the middle
of the 3 chain", the number of times inside the bracket) what the restatement beside it
says in plain words: so both must come to the same, round by round. Where the book is
wrong, or says less than it means, the program must ask. The books, and which of their
figures are printed, are named at the head of each `.border` file.
"""

from __future__ import annotations

import pytest
from published.restated import HERE, chain, closed_chain, counted, reading_of, ring, wheels

from border.questions.asking import questions
from border.working.work import work
from border.yoke.edges import Edge


def asked(name: str, edge: Edge) -> list[tuple[str, int | None, str]]:
    """What `check` asks of a border: code, round, and the edit that would settle it."""
    reading, _ = reading_of(name)
    found = questions(reading, work(reading, edge, ()), (), misprints=True)
    return [(f.code, f.round, f.help or "") for f in found]


ALIKE = [
    ("trellis", closed_chain(12), 7),
    ("seme", closed_chain(9), 7),
    ("edging", closed_chain(33 * 4), 5),
    ("star", ring(), 1),
    ("squares-star", ring(), 1),
    ("table-mat", ring(), 14),
    ("octagon", ring(), 13),
    ("lozenge", ring(), 4),
    ("rosette", ring(), 3),
    ("wheel", ring(), 3),
    ("honiton", chain(7 * 20 + 2), 2),
    ("cuff", chain(85), 5),
    ("collar", chain(183), 2),
    ("night-cap", chain(184), 3),
    ("yoke-border", wheels("neck", 38, 6), 5),
]
"""A piece, its edge, and up to which round its book is without fault."""


@pytest.mark.parametrize(("name", "edge", "rounds"), ALIKE, ids=[a[0] for a in ALIKE])
def test_in_its_book_s_order_a_piece_comes_to_the_same(name: str, edge: Edge, rounds: int) -> None:
    plainly, in_words = counted(name, edge), counted(f"{name}-in-words", edge)
    for number in range(1, rounds + 1):
        assert in_words.made(number) == plainly.made(number), number
        assert in_words.rounds[number].closes, number
        assert in_words.rounds[number].spaces == plainly.rounds[number].spaces, number


def test_every_piece_in_its_book_s_order_is_tried() -> None:
    there = {path.stem for path in HERE.glob("*-in-words.border")}
    assert there == {f"{name}-in-words" for name, _, _ in ALIKE}


@pytest.mark.parametrize(("name", "chains"), [("trellis", 12), ("seme", 9)])
def test_that_a_doyley_misses_three_for_two_is_found(name: str, chains: int) -> None:
    """Mlle Riego, Knitting, Crochet, and Netting, 1846 (PG 36669): round 8."""
    edge = closed_chain(chains)
    told = asked(f"{name}-in-words", edge)
    assert ("perhaps-misprint", 8, "write skip 2 for skip 3") in told
    assert {number for _, number, _ in told} == {8}


def test_that_row_6_of_the_edging_shares_its_miss_with_the_next_repeat_is_found() -> None:
    """Mlle Riego, The Crochet Book, 4th series, 1848: 49 stitches for 48, literally."""
    ((code, number, edit),) = asked("edging-in-words", closed_chain(66))
    assert (code, number) == ("perhaps-shared", 6)
    assert edit.endswith(
        "(3 dc in the ch-3 space, skip 1) 3 times, 3 dc in the ch-3 space; repeat from *"
    )


def test_that_row_6_of_the_edging_has_5_chain_for_3_is_found_by_row_7() -> None:
    """Mlle Riego, The Crochet Book, 4th series, 1848: 71 stitches for 57 to a pattern."""
    told = asked("edging-as-printed", closed_chain(792))
    assert told == [("perhaps-misprint", 7, "write ch 3 for ch 5")]


def test_that_a_point_of_the_star_takes_ten_stitches_is_among_the_possibilities() -> None:
    """Th. de Dillmont, Encyclopedia of Needlework, 1890 (PG 20776), fig. 482, its round 8."""
    told = asked("star-as-printed", ring())
    assert ("perhaps-misprint", 7, "write skip 5 for skip 4") in told


def test_that_repeated_n_times_is_more_here_and_in_all_there_is_found() -> None:
    """Th. de Dillmont, Encyclopedia of Needlework, 1890 (PG 20776), figs. 482 and 483.

    "7 times" is in all in round 2 of the one, since its round 1 has 8 spaces; "6 times"
    is more in round 1 of the other, which has 8 trebles, and "23 times" in all in round 2.
    """
    in_all = 'write "in all" behind the number, or a heading "repeats: in all"'
    assert asked("star-in-words", ring()) == [("perhaps-read-so", 2, in_all)]
    other = counted("squares-star-in-words", ring())
    assert other.made(1) == {"dc": 8, "ch": 16}
    assert asked("squares-star-in-words", ring()) == [("perhaps-read-so", 2, in_all)]


@pytest.mark.parametrize(("section", "motifs"), [("neck", 38), ("sleeve", 12)])
def test_that_the_scallop_of_the_yoke_shares_its_last_step_is_found(
    section: str, motifs: int
) -> None:
    """Margaret Sims, "Designs in Crochet" VI, Ladies' Home Journal, June 1895: round 6."""
    ((code, number, edit),) = asked("yoke-border-in-words", wheels(section, motifs, 6))
    assert (code, number) == ("perhaps-shared", 6)
    assert edit.endswith("1 dc in next space, ch 7, 1 dc in next space, ch 7; repeat from *")


def test_that_the_collar_keeps_its_last_three_stitches_for_its_end_is_found() -> None:
    """Ann S. Stephens, 1854 (PG 73303): "finish with 3 dc" behind a repeat that takes them."""
    told = asked("collar-in-words", chain(183))
    (edit,) = [help_ for code, number, help_ in told if (code, number) == ("perhaps-read-so", 3)]
    assert edit.endswith("repeat from * to last 3 tr, 1 dc in each of the last 3 tr")


def test_that_row_19_of_the_night_cap_repeats_once_too_often_is_found() -> None:
    """Ann S. Stephens, 1854 (PG 73303): "5 times" for 4, 65 squares for 55."""
    told = asked("night-cap-as-printed", chain(166))
    assert told == [("perhaps-misprint", 1, "write 4 times for 5 times")]


def test_that_the_wheel_has_twelve_picots_for_sixteen_is_told_and_no_misprint_guessed() -> None:
    """Margaret Sims, "Designs in Crochet" V, Ladies' Home Journal, June 1895."""
    wheel = counted("wheel-in-words", ring())
    assert wheel.told() == [("count-disagrees", 3)]
    assert asked("wheel-in-words", ring()) == []
