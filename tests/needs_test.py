"""What a border needs, against trying every number of loops; and what is told of it."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

import pytest
import random_borders
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st

from border.planning.needs import Needs, needs
from border.planning.rules import Rule
from border.planning.series import Series, as_one, solved
from border.planning.telling import in_words
from border.text.readings import Reading, read_rounds
from border.text.source import Source
from border.text.syntax import read_border
from border.working.fabric import CHAIN, PICOT, edge_fabric
from border.working.rounds import work_once
from border.working.work import turns_after, work
from border.yoke.edges import plain_edge, runs_edge

PUBLISHED = Path(__file__).parent / "published"


def reading(text: str) -> Reading:
    if "terms:" not in text:
        text = "terms: us\n" + text
    border, told = read_border(Source("test.border", text))
    assert border is not None and not told, told
    read, more = read_rounds(border, lambda source, name: None)
    assert not [f for f in more if f.code != "start-chain-assumed"], more
    return read


def closes(read: Reading, n: int, closed: bool, of: str = "loop") -> bool:
    """Whether a border closes on n loops, by working it there as far as it does."""
    edge = plain_edge(n, closed, of)
    fabric = edge_fabric(edge)
    for round_ in read.rounds:
        done = work_once(round_, fabric)
        if not done.closes or all(kind in (CHAIN, PICOT) for kind in done.made.kinds):
            return False
        fabric = done.fabric(fabric)
        if turns_after(round_, read.rules.worked, closed):
            fabric = fabric.turned()
    return True


def fits(found: Needs, n: int) -> bool:
    """Whether n is a multiple of what is said, plus what is said, and large enough."""
    rule = found.whole
    assert rule.multiple is not None and rule.plus is not None and rule.least is not None
    return n % rule.multiple == rule.plus and n >= rule.least


TRIED = [*range(1, 150), *range(150, 401, 13)]
"""Numbers of loops on which a rule is held against the working: 13 meets every remainder."""

SHELLS = "*5 dc in next space, 1 sc in next space; repeat from *"
NETTED = "*1 sc in next loop, ch 3; repeat from *"

# What each border needs of a closed edge, and of an open one: multiple, plus, at least.
BORDERS: dict[str, tuple[str, tuple[int, int, int], tuple[int, int, int]]] = {
    "one repeat": (
        "round 1: *1 sc in next loop, ch 5, skip 2 loops; repeat from *.",
        (3, 0, 3),
        (3, 0, 3),
    ),
    "each": ("round 1: 1 sc in each loop.", (1, 0, 1), (1, 0, 1)),
    "every third": ("round 1: *1 sc in 3rd loop, ch 4; repeat from *.", (3, 0, 3), (3, 0, 3)),
    "a head": (
        "round 1: 3 sc in first loop, 1 dc in next loop, *ch 4, skip 3 loops, 1 sc in next loop; repeat from *.",
        (4, 2, 6),
        (4, 2, 6),
    ),
    "a tail": (
        "round 1: *1 sc in next loop, ch 5, skip 4 loops; repeat from *, 1 sc in next loop, ch 1, 1 dc in next loop.",
        (5, 2, 7),
        (5, 2, 7),
    ),
    "head and tail": (
        "round 1: 2 dc in first loop, *ch 2, skip 2 loops, 1 sc in next loop; repeat from *, ch 2, skip 1 loop, 1 dc in last loop.",
        (3, 0, 6),
        (3, 0, 6),
    ),
    "to the last three": (
        "round 1: *1 sc in next loop, ch 5, skip 1 loop; repeat from * to last 3 loops, 1 sc in each of next 3 loops.",
        (2, 1, 5),
        (2, 1, 5),
    ),
    "a head, and to the last two": (
        "round 1: 1 sc in first loop, *ch 3, skip 3 loops, 1 dc in next loop; repeat from * to last 2 loops, 1 sc in each of last 2 loops.",
        (4, 3, 7),
        (4, 3, 7),
    ),
    "nested": (
        "round 1: *(1 sc in next loop, ch 3, skip 1 loop) 3 times, 5 dc in next loop; repeat from *.",
        (7, 0, 7),
        (7, 0, 7),
    ),
    "two rounds": (
        f"round 1: *1 sc in next loop, ch 5, skip 2 loops; repeat from *.\nround 2: {SHELLS}.",
        (6, 0, 6),
        (6, 0, 6),
    ),
    "three rounds": (
        "round 1: *1 sc in next loop, ch 5, skip 1 loop; repeat from *.\nround 2: *1 sc in next space, ch 5, skip 2 spaces; repeat from *.\nround 3: *7 dc in next space, skip 4 spaces; repeat from *.",
        (30, 0, 30),
        (30, 0, 30),
    ),
    "one row offers two": (
        "round 1: *1 sc in next loop, ch 3, 1 sc in next loop, ch 5, skip 1 loop; repeat from *.\nround 2: *3 dc in next space, skip 2 spaces; repeat from *.",
        (9, 0, 9),
        (9, 0, 9),
    ),
    "a constant of the row below": (
        f"round 1: *1 sc in next loop, ch 5; repeat from * to last 3 loops, 1 sc in each of next 3 loops.\nround 2: {SHELLS}.",
        (2, 1, 5),
        (2, 1, 5),
    ),
    "four and six": (
        "round 1: *1 sc in next loop, ch 3; repeat from *.\nround 2: *1 sc in next space, ch 3, skip 3 spaces; repeat from *.\nround 3: 1 sc in each space.\nround 4: *1 sc in next st, ch 3, skip 5 st; repeat from *.",
        (24, 0, 24),
        (24, 0, 24),
    ),
    "remainders that meet": (
        "round 1: *1 sc in next loop, ch 3, skip 2 loops; repeat from *, 1 sc in next loop, ch 3.\nround 2: *5 dc in next space, skip 3 spaces; repeat from *, 1 sc in next space, ch 2.",
        (12, 1, 13),
        (12, 1, 13),
    ),
    "groups": (
        "round 1: *3 dc in next loop, ch 2, skip 1 loop; repeat from *.\nround 2: *1 sc in next group, ch 4, 1 sc in 2nd group, ch 4; repeat from *.",
        (6, 0, 6),
        (6, 0, 6),
    ),
    "blocks": (
        f"round 1: {NETTED}.\nround 2: *3 dc in next space, ch 2, skip 1 space; repeat from *.\nround 3: *1 sc in next block, ch 5, skip 2 blocks; repeat from *.",
        (6, 0, 6),
        (6, 0, 6),
    ),
    "between": (
        "round 1: *2 dc in next loop, ch 1, 2 dc in next loop, ch 3; repeat from *.\nround 2: *1 sc in next ch-1 space, ch 5; repeat from *.\nround 3: *1 sc in next space, ch 2, 1 dc in next space; repeat from *.",
        (4, 0, 4),
        (4, 0, 4),
    ),
    "the centre of a block": (
        "round 1: 3 dc in each loop.\nround 2: *1 sc in 2nd st of next group, ch 5, skip 1 group; repeat from *.",
        (2, 0, 2),
        (2, 0, 2),
    ),
    "picots": (
        f"round 1: {NETTED}.\nround 2: *(2 dc, picot, 2 dc) in next space, 1 sc in next space; repeat from *.\nround 3: *1 sc in next picot, ch 6; repeat from *.\nround 4: *1 sc in next space, ch 3, 1 dc in next space, ch 3, 1 sc in next space; repeat from *.",
        (6, 0, 6),
        (6, 0, 6),
    ),
    "spaces of one size": (
        "round 1: *1 sc in next loop, ch 5, 1 sc in next loop, ch 2; repeat from *.\nround 2: *7 dc in next ch-5 space, skip 2 ch-5 spaces; repeat from *.",
        (6, 0, 6),
        (6, 0, 6),
    ),
    "a union": (
        "worked: one way\nround 1: *1 dc in next loop, ch 2, 1 sc in next loop; repeat from *.\nround 2: *1 sc in next dc or space, ch 1, skip 1 sc; repeat from *.",
        (2, 0, 2),
        (2, 0, 2),
    ),
    "meets its start in any case": (
        "round 1: 1 sc in first loop, ch 4, *3 dc in next loop, ch 4, 1 sc in next loop, ch 4; repeat from *.",
        (1, 0, 2),
        (2, 1, 3),
    ),
    "a start chain": (
        "round 1: ch 3 as dc, *ch 2, skip 2 loops, 1 dc in next loop; repeat from *, ch 2.",
        (3, 1, 4),
        (3, 1, 4),
    ),
    "begun elsewhere": (
        "round 1: begin in 3rd loop, *1 sc in next loop, ch 4, skip 3 loops; repeat from *.",
        (4, 0, 4),
        (4, 2, 6),
    ),
    "together": (
        "round 1: *3 dc together over the next 3 loops, ch 4; repeat from *.\nround 2: *1 sc in next space, ch 2, 1 sc in next space, ch 4; repeat from *.",
        (6, 0, 6),
        (6, 0, 6),
    ),
    "two repeats": (
        "round 1: *1 sc in next loop, ch 2, skip 1 loop; repeat from * to last 4 loops, 2 dc in each of next 4 loops.\nround 2: 1 sc in each st.\nround 3: *1 dc in next st, skip 2 st; repeat from *.",
        (6, 0, 6),
        (6, 0, 6),
    ),
    "a whole row, whatever is left of it": (
        "round 1: 1 sc in first loop, ch 5, 1 sc in last loop.",
        (1, 0, 2),
        (1, 0, 2),
    ),
}


@pytest.mark.parametrize("closed", (True, False), ids=("closed", "open"))
@pytest.mark.parametrize("name", BORDERS)
def test_a_border_closes_on_the_numbers_that_its_rule_gives(name: str, closed: bool) -> None:
    text, of_closed, of_open = BORDERS[name]
    read = reading(text)
    found = needs(read, "loop", closed)
    rule = found.whole
    assert [n for n in TRIED if fits(found, n)] == [n for n in TRIED if closes(read, n, closed)]
    assert (rule.multiple, rule.plus, rule.least) == (of_closed if closed else of_open)
    assert found.findings == ()


EITHER = {
    f"round 1: {NETTED}.\nround 2: (2 dc, ch 2, 2 dc) in first space, *skip 3 spaces, (2 dc, ch 2, 2 dc) in next space; repeat from *.": "a multiple of 4 loops or a multiple of 4 plus 1 loops",
    "round 1: 1 sc in each of first 2 loops, *ch 3, skip 3 loops, 1 sc in each of next 2 loops; repeat from *.": "a multiple of 5 loops, a multiple of 5 plus 1 loops or a multiple of 5 plus 2 loops",
}


@pytest.mark.parametrize("text", EITHER)
def test_a_border_that_may_meet_its_start_closes_on_several_multiples(text: str) -> None:
    read = reading(text)
    found = needs(read, "loop", True)
    assert in_words(found.whole) == EITHER[text]
    assert [f.code for f in found.findings] == ["no-one-multiple"]
    tried = range(1, 120)
    by_ways = [n for n in tried if any(way.holds(n) for way in found.ways)]
    assert by_ways == [n for n in tried if closes(read, n, True)]


@pytest.mark.parametrize(
    ("text", "n"),
    [
        ("rows without a repeat: once\nround 1: 1 sc in each of next 12 loops.", 12),
        ("rows without a repeat: once\nround 1: 1 sc in each of next 300 loops.", 300),
        (
            "rows without a repeat: once\nround 1: *1 sc in next loop, ch 3, skip 1 loop; repeat from *.\nround 2: (3 dc in next space, 1 sc in next space) 5 times.",
            20,
        ),
        (
            "rows without a repeat: once\nround 1: *1 sc in each of next 2 loops, ch 2; repeat from *.\n"
            "round 2: *1 sc in each of next 2 st, ch 2; repeat from *.\nround 3: 2 sc in next ch-2 space.",
            2,
        ),
    ],
)
def test_a_border_without_a_repeat_closes_on_one_number(text: str, n: int) -> None:
    found = needs(reading(text), "loop", True)
    assert (found.whole.exactly, found.whole.least, found.whole.multiple) == (n, n, None)
    assert closes(reading(text), n, True)
    assert [f.code for f in found.findings] == ["no-one-multiple"]
    assert f"exactly {n} loops" in found.findings[0].message


@pytest.mark.parametrize(
    ("text", "message"),
    [
        (
            "round 1: *1 sc in next loop, ch 5, 1 sc in next loop, ch 3; repeat from *.\n"
            "round 2: *5 dc in next space, 1 sc in next space; repeat from *, 1 sc in next space.",
            "no number of loops makes rounds 1 and 2 close together: round 2 needs a multiple of "
            "2 plus 1 spaces, and round 1 never has that",
        ),
        (
            "round 1: 1 sc in each loop.\nround 2: 1 sc in each st.\nround 3: *1 sc in next space, ch 4; repeat from *.",
            "no number of loops makes rounds 1 to 3 close together",
        ),
    ],
)
def test_rounds_that_never_close_together(text: str, message: str) -> None:
    read = reading(text)
    found = needs(read, "loop", True)
    assert (found.whole.multiple, found.whole.least, found.ways) == (None, None, ())
    assert [(f.code, f.message) for f in found.findings] == [("never-closes", message)]
    assert not any(closes(read, n, True) for n in range(1, 60))


def test_rounds_behind_one_that_never_closes_are_still_told() -> None:
    text = "round 1: 1 sc in each loop.\nround 2: *1 sc in next space, ch 4; repeat from *."
    found = needs(reading(text + "\nround 3: 1 sc in each st."), "loop", True)
    assert [need.rule.multiple for need in found.rounds[:1]] == [1]
    assert len(found.rounds) == 3


def test_what_each_round_needs_is_counted_in_what_it_works_into() -> None:
    text = """
        round 1: *1 sc in next loop, ch 5, skip 1 loop; repeat from *.
        round 2: *5 dc in next ch-5 space, ch 2, 1 sc in next ch-5 space, ch 2; repeat from *.
        round 3: 2 sc in first block, *ch 3, skip 2 blocks, 1 sc in next block; repeat from *.
    """
    found = needs(reading("worked: one way\n" + text), "loop", False)
    told = [in_words(need.rule) for need in found.rounds]
    assert told == [
        "a multiple of 2 loops, at least 2",
        "a multiple of 2 ch-5 spaces, at least 2",
        "a multiple of 3 plus 1 blocks, at least 4",
    ]


def test_repeats_that_take_unevenly_need_no_multiple() -> None:
    """Seen: with 2 chains at the joints a repeat now and then takes one space of 4 alone, so that
    both 3 and 4 of them come out; with 4 chains all are alike."""
    text = """
        round 1: over each motif: 1 sc in first loop, *ch 4, 1 sc in next loop; repeat from *;
            at each joint: ch {}.
        round 2: *5 dc in next ch-4 space, 1 sc in next space; repeat from *.
        round 3: *1 sc in next group, ch 6; repeat from *.
    """
    for chains, told in ((2, "no one multiple"), (4, "a multiple of 2 ch-4 spaces")):
        found = needs(reading(text.format(chains)), "loop", True)
        assert in_words(found.rounds[1].rule).partition(",")[0] == told
        assert in_words(found.rounds[2].rule).startswith("any number of groups")
    for spaces in (3, 4):
        edge = runs_edge([2] * spaces, True)
        assert all(r.closes for r in work(reading(text.format(2)), edge).rounds)


def test_each_stretch_needs_its_own() -> None:
    text = """
        round 1: over corner: 1 sc in first loop, ch 5, skip 2 loops, 1 sc in last loop;
            over strap: 1 sc in each of next 4 loops;
            over each motif of front: leave unworked;
            elsewhere, over each motif: 1 sc in first loop,
                *ch 5, skip 2 loops, 1 sc in next loop; repeat from * to end;
            at each joint: ch 2.
        round 2: *1 sc in next ch-5 space, ch 6; repeat from *.
    """
    found = needs(reading(text), "loop", True)
    assert [(s.clause, in_words(s.rule)) for s in found.rounds[0].stretches] == [
        ("over corner", "any number of loops, at least 4"),
        ("over strap", "exactly 4 loops"),
        ("elsewhere, over each motif", "a multiple of 3 plus 1 loops, at least 4"),
    ]
    assert in_words(found.rounds[1].rule) == "any number of ch-5 spaces, at least 1"
    assert found.whole.multiple is None
    assert [f.code for f in found.findings] == ["no-one-multiple"]


PUBLISHED_MULTIPLES = [
    ("anti-macassar", False),
    ("cuff", False),
    ("honiton", False),
    ("squares", False),
    ("turned-squares", False),
    ("treble-squares", False),
    ("band", True),
]


@pytest.mark.parametrize(("name", "closed"), PUBLISHED_MULTIPLES)
def test_the_multiples_that_books_state(name: str, closed: bool) -> None:
    """Each border's own heading says which book, and the multiple that it states."""
    read = reading((PUBLISHED / f"{name}.border").read_text(encoding="utf-8"))
    claim = read.multiple
    assert claim is not None
    rule = needs(read, "chain", closed).whole
    assert (rule.multiple, rule.plus) == (claim.multiple, claim.plus % claim.multiple)


def test_every_published_border_that_states_a_multiple_is_held_to_it() -> None:
    stating = {
        path.stem for path in PUBLISHED.glob("*.border") if "\nmultiple of" in path.read_text()
    }
    assert stating == {name for name, _ in PUBLISHED_MULTIPLES}


def test_a_stated_multiple_that_is_not_what_the_rounds_need() -> None:
    text = "multiple of {}\nround 1: *1 sc in next loop, ch 5, skip 1 loop; repeat from *."
    for right in ("2", "6", "4 plus 2"):
        assert needs(reading(text.format(right)), "loop", True).findings == ()
    for wrong in ("3", "2 plus 1", "1"):
        told = needs(reading(text.format(wrong)), "loop", True).findings
        assert [f.code for f in told] == ["count-disagrees"]


# --- the nearest numbers, and the arithmetic ------------------------------------


def test_the_nearest_numbers_below_and_above() -> None:
    found = needs(
        reading(
            "round 1: 1 sc in first loop, *ch 3, skip 3 loops, 1 dc in next loop; repeat from * to last 2 loops, 1 sc in each of last 2 loops."
        ),
        "loop",
        False,
    )
    assert [found.nearest(n) for n in (1, 6, 8, 10, 100)] == [
        (7,),
        (7,),
        (7, 11),
        (7, 11),
        (99, 103),
    ]


@given(st.integers(1, 60), st.integers(-100, 100), st.integers(1, 60))
def test_a_congruence_is_solved(m: int, a: int, modulus: int) -> None:
    right = [x for x in range(2 * modulus) if (m * x + a) % modulus == 0]
    found = solved(m, a, modulus)
    assert right == ([x for x in range(2 * modulus) if found.holds(x)] if found else [])


@given(st.lists(st.builds(Series, st.integers(1, 12), st.integers(1, 40)), min_size=1, max_size=4))
def test_series_put_together_hold_what_each_of_them_holds(several: list[Series]) -> None:
    together = as_one(several)
    begun = max(s.first for s in several)
    held = [any(s.holds(n) for s in several) for n in range(begun, begun + 400)]
    if together is not None:
        assert held == [together.holds(n) for n in range(begun, begun + 400)]
    else:
        gaps = [n for n, yes in enumerate(held) if yes]
        assert len({b - a for a, b in pairwise(gaps)}) > 1


# A border is drawn by working it plainly, which is slow: no shrinking, and the same in every run.
@settings(
    max_examples=12,
    deadline=None,
    derandomize=True,
    database=None,
    phases=[Phase.generate],
    suppress_health_check=list(HealthCheck),
)
@given(st.data())
def test_random_borders_close_where_they_are_said_to(data: st.DataObject) -> None:
    closed = data.draw(st.booleans())
    edge = plain_edge(data.draw(st.sampled_from((6, 12, 24, 7))), closed)
    read, told = read_rounds(data.draw(random_borders.borders(edge)), lambda source, name: None)
    if {f.code for f in told} & {"open-repeat-inside", "repeat-takes-nothing"}:
        return
    found = needs(read, "loop", closed)
    unknown = any("too unevenly" in f.message or "too large" in f.message for f in found.findings)
    for n in range(1, 50):
        said = any(way.holds(n) for way in found.ways)
        # small edges may close beside the rule; where none is found nothing is said
        if not unknown and (said or n > 24):
            assert said == closes(read, n, closed), n


def test_a_rule_of_several_multiples_in_words() -> None:
    def told(*ways: tuple[int, int]) -> str:
        return in_words(Rule("loop", either=tuple(Series(*way) for way in ways)))

    assert told((4, 9), (4, 2)) == "a multiple of 4 plus 1 loops or a multiple of 4 plus 2 loops"
    assert (
        told((4, 8), (0, 1), (0, 3)) == "a multiple of 4 loops, exactly 1 loop or exactly 3 loops"
    )
    assert told((1, 5)) == "any number of loops"
    assert in_words(Rule("loop", 4, 1, 5)) == "a multiple of 4 plus 1 loops, at least 5"
    assert in_words(Rule("loop", 4, 1)) == "a multiple of 4 plus 1 loops"
    assert in_words(Rule("loop", 4)) == "no one multiple"
    assert in_words(Rule("loop", exactly=1)) == "exactly 1 loop"


@pytest.mark.parametrize(("most", "codes"), [(4, ["no-one-multiple"]), (5, [])])
def test_a_period_that_is_too_long_is_told(
    most: int, codes: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("border.planning.carrying.MOST_TRIED", most)
    found = needs(
        reading("round 1: *1 sc in next loop, skip 4 loops; repeat from *."), "loop", True
    )
    assert [f.code for f in found.findings] == codes
