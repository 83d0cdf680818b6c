"""How a row told by its squares begins: `5 ch, 4 sps`, `s.s. along 4 tr, 3 ch, 1 blk`.

The stitch before the first square is worked as chains: as many as it is high, or with them
those of a first space. Nobody has to write them.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from msgspec import Struct

from border.text.numbers import number_at
from border.text.squares.edges import ask_turned, blocks_added, led, space_added
from border.text.squares.meanings import BLOCK, SPACE, Squares, name_at, standing_at
from border.text.squares.words import (
    Run,
    Square,
    SquareRow,
    all_terminals_from,
    behind_dot,
    stitches_at,
)
from border.text.words import Word
from border.text.written_places import write_ordinal

_STOPS = frozenset(",;.:—-") | {"--"}
_ASIDE = frozenset({"SEP", "COLOUR", "REMARK", "NOTHING", "BELOW"})
_OPENING = frozenset("([{*x")


class Begun(Struct, frozen=True):
    """The steps that a row begins with, and the place behind the words for them.

    `shared`: the stitch made last is the first of what follows, where that counts it in.
    `ready`: the chains of the first space are made already, before the turn.
    """

    words: list[Word]
    at: int
    shared: bool = False
    ready: bool = False


def begin(row: SquareRow, squares: Squares, made: Mapping[int, Square]) -> Begun:
    """The head of a row, as far as it is told by squares; else nothing of it."""
    opening = _past_marks(row, 0)
    if row.number == 1 and (hooked := _from_the_hook(row, squares, opening)) is not None:
        return hooked
    if row.number == 1 and (founded := _on_foundation(row, squares, made, opening)) is not None:
        return founded
    if not made:
        return Begun([], 0)
    way, behind = led(row, squares, opening)
    at = _past_marks(row, behind)
    before = [*row.words[:opening], *way, *row.words[behind:at]]
    added, behind = blocks_added(row, squares, at)
    if added:
        return Begun([*before, *added], behind)
    added, behind = space_added(row, squares, at)
    if added:
        return Begun([*before, *added], behind, shared=True)
    if row.turning in squares.around:
        ask_turned(row, squares, at)
    return _first_stitch(row, squares, made, Begun(before, at))


def _first_stitch(
    row: SquareRow, squares: Squares, made: Mapping[int, Square], begun: Begun
) -> Begun:
    """A head with the stitch that stands before the first square, where that comes next."""
    at = begun.at
    chains, behind = _chains(row, at)
    step = first = _past_marks(row, behind)
    while first < len(row.words) and row.words[first].text in _OPENING:
        first += 1
    counted = stitches_at(row, squares, first)
    if first not in made and not _opens(squares, counted, chains):
        return begun
    there = chains or row.turning
    a_space = chains == squares.height + squares.chains and _said_for_space(row, at, behind)
    if counted is not None and counted.counts_first(squares) and there and not a_space:
        _ask_counted(row, squares, counted)
        return begun
    ready = not chains and there > squares.height
    kind = made[first].kind if first in made else BLOCK
    if not _stands(squares, there, SPACE if a_space else kind) or (ready and step < first):
        _ask_chains(row, squares, there, at, behind if chains else first + 1)
    if there and not chains:
        return Begun(begun.words, step, shared=True, ready=ready)
    own = standing_at(squares.first(chains if chains <= squares.height else 0), row.words[at])
    if a_space:
        if kind == SPACE:
            _tell_own_space(row, squares, chains, at, behind)
        own += standing_at(f"{squares.space(1)},", row.words[at])
    coloured = [t.type for t in row.types(_past_stops(row.words), 1)[0]] == ["COLOUR"]
    words = [*own, *begun.words] if coloured else [*begun.words, *own]  # `with white, 3 sps`
    return Begun(words, behind, shared=True)


def _opens(squares: Squares, counted: Run | None, chains: int) -> bool:
    """Whether stitches at a row's head are its first squares: behind chains, or with the first."""
    if counted is None:
        return False
    return counted.counts_first(squares) or (chains > 0 and counted.times % squares.width == 0)


def may_begin(row: SquareRow, squares: Squares) -> bool:
    """Whether the chains at a row's head, if there are any, can be such a row's."""
    chains, _ = _chains(row, _past_marks(row, 0))
    high = squares.height
    return chains in (0, high, high + squares.chains, *squares.around)


def _past_stops(words: Sequence[Word]) -> int:
    return next((n for n, word in enumerate(words) if word.text not in _STOPS), len(words))


def _past_marks(row: SquareRow, at: int) -> int:
    """The place behind stops, colours, `turn`: what comes before the first stitch of a row."""
    while True:
        here, behind = row.types(at, 1)
        turns = [t.name for t in here if t.type == "ENDING"] == ["turn"]
        if not turns and [t.type for t in here if t.type in _ASIDE] == []:
            return at
        at = behind


# --- chains ----------------------------------------------------------------------------------


def _chains(row: SquareRow, at: int) -> tuple[int, int]:
    """The chains that stand here, with what is said of them (`for the 1st tr`); and behind them."""
    (pair, end) = row.types(at, 2)
    if sorted(t.type for t in pair) != ["CH", "NUM"]:
        return 0, at
    end = behind_dot(row.words, end)
    bracket = end + (end < len(row.words) and row.words[end].text == "(")
    said, _ = row.types(bracket, 1)
    one = number_at(row.words, bracket) if bracket > end else None
    if one is not None and one[0] == 1 and name_at(row.words, one[1])[0]:  # `5 ch (1 sp)`
        closed = name_at(row.words, one[1])[1]
        if row.words[closed : closed + 1] and row.words[closed].text == ")":
            return pair[0].number + pair[1].number, closed + 1
    if [t.type for t in said] != ["AS"]:
        return pair[0].number + pair[1].number, end
    stops = _STOPS if bracket == end else {")"}
    while end < len(row.words) and row.words[end].text not in stops:
        number = number_at(row.words, end)
        if number and name_at(row.words, number[1])[0] and end > bracket + 2:
            break  # `3 ch for 1st tr 2 sps`
        end += 1
    return pair[0].number + pair[1].number, min(
        end + (bracket < end and ")" in stops), len(row.words)
    )


def _said_for_space(row: SquareRow, at: int, behind: int) -> bool:
    """Whether chains are said to be a space: `5 ch (for 1st sp), 2 sps`."""
    return any(name_at(row.words, n)[0] == SPACE for n in range(at, behind))


def _tell_own_space(row: SquareRow, squares: Squares, chains: int, at: int, behind: int) -> None:
    message = '"{}" is taken for a space by itself, and the spaces behind it for others'
    help_ = f'write "ch {chains}" and no more, if it is the first of those'
    row.tell("squares-assumed", at, behind, message, help_)


def _stands(squares: Squares, chains: int, kind: str) -> bool:
    """Whether so many chains before a square are the first stitch, or that and a space's chains."""
    with_space = kind == SPACE and chains == squares.height + squares.chains
    return with_space or not chains or min(2, squares.height) <= chains <= squares.height


def _ask_chains(row: SquareRow, squares: Squares, chains: int, start: int, end: int) -> None:
    high, wide = squares.height, squares.height + squares.chains
    if chains == wide == row.turning:
        message = f"the {chains} chains before the turn have those of a first space with them"
        help_ = (
            f"write ch {high} before the turn: what stands behind the star or the bracket here is "
            "worked each time with chains of its own"
        )
        row.tell("squares-unclear", start, end, message, help_)
        return
    message = f"a row of squares does not begin with {chains} chains like this"
    help_ = (
        f"write ch {high} where its first square is a block, ch {wide} where it is a space, "
        f"or no chains at all: the first {squares.called} is understood"
    )
    row.tell("squares-unclear", start, end, message, help_)


def _ask_counted(row: SquareRow, squares: Squares, counted: Run) -> None:
    blocks = counted.times // squares.width
    message = f'the chains before "{{}}" may be the first of these {squares.called}, or one more'
    help_ = f'write "{blocks} blk" behind the chains, if they are the first of {counted.times}'
    row.tell("squares-unclear", counted.start, counted.end, message, help_)


# --- the first row ---------------------------------------------------------------------------

_CHAIN = re.compile(
    r"((NUM )?(FOUNDATION )?(CH )?OF NUM( CH| KIND)?|NUM CH|CH NUM)( SEP)*( ENDING)?( SEP)*(?= |$)"
)
_HOOK = re.compile(r"(NUM )?STITCH PREP( THE)? ORD( CH| KIND)? (FROMHOOK|OF( THE)? CH)(?= |$)")
_IN_CHAIN = re.compile(r"(NUM )?STITCH PREP( THE)? ORD( CH| KIND)(?= |$)")
_MISSED = re.compile(
    r"SKIP NUM( CH| KIND)?( SEP)*( NUM)? STITCH PREP( THE)? NEXT( CH| KIND)?(?= SEP|$)"
)


def _from_the_hook(row: SquareRow, squares: Squares, at: int) -> Begun | None:
    """`1 tr in the 8th ch from hook`: the chains before it are the first stitch and a space, or
    `in the 4th`, the first stitch alone. The chain itself may stand before that."""
    chain, start = _foundation(row, at)
    nth, behind = _worked_first(row, squares, start, chain)
    high, wide = squares.height, squares.height + 2 * squares.chains
    if nth - 1 not in (high, high + 1, wide, wide + 1):
        return None
    space = nth - 1 >= wide
    begins = nth - (squares.width if space else 1)
    step = squares.space(1) if space else squares.in_each(1)
    message = f"the chains before the {write_ordinal(nth)} are taken for the first {squares.called}"
    message += " and a space" if space else ""
    help_ = (
        "give the edge all chains of the foundation; where they are no stitch, write "
        f'"1 {squares.called} in {nth}th st"'
    )
    row.tell("foundation-passed", start, behind, message, help_)
    steps = standing_at(f"begin in {begins}th st, {squares.first()} {step}", row.words[start])
    if not chain:
        return Begun([*row.words[:at], *steps], behind)
    return Begun([*row.words[:at], *_made(row.words[at:start]), *steps], behind)


def _on_foundation(
    row: SquareRow, squares: Squares, made: Mapping[int, Square], at: int
) -> Begun | None:
    """`Ch 27, 1 blk, 1 sp, …`, `ch 30, turn, 8 sps`: the chains are the foundation with those of
    the first stitch, and of a first space, where just these leave whole squares."""
    chain, behind = _foundation(row, at)
    first = _past_marks(row, behind)
    if first not in made or chain <= squares.height + squares.chains:
        return None
    space = made[first].kind == SPACE
    nth = squares.height + 1 + 2 * squares.chains * space
    begins = (n - (squares.width if space else 1) for n in (nth, nth + 1))
    place = next((n for n in begins if chain > n and (chain - n) % squares.width == 0), 0)
    told = sum(square.times or 1 for square in made.values())
    if not place or told * squares.width > chain - place:
        return None
    message = f"the first {place - 1} of these chains are passed over, taken for the first "
    message += squares.called + (" and a space" if space else "")
    help_ = "give the edge all chains of the foundation"
    row.tell("foundation-passed", first, made[first].end, message, help_)
    steps = standing_at(f"begin in {place}th st, {squares.first()}", row.words[first])
    founded = _made(row.words[at:behind])
    return Begun([*row.words[:at], *founded, *steps], first, shared=True)


def _made(chain: Sequence[Word]) -> list[Word]:
    """A foundation as a step of its own, `make 27 ch turn,`, from the words that told it."""
    said = [w for w in chain if w.text != "turn" and w.text not in _STOPS]
    return [*standing_at("make", said[0]), *said, *standing_at("turn,", said[-1])]


def space_written_out(row: SquareRow, squares: Squares, at: int) -> int:
    """Behind `miss 2, 1 tr in next`, the end of a space in so many words; else the same place."""
    if [t.type for t in row.types(at, 1)[0]] != ["SKIP"]:
        return at
    found = all_terminals_from(row, at)
    whole = _MISSED.match(" ".join(t.type for t, _ in found))
    if whole is None:
        return at
    said = found[: len(whole[0].split(" "))]
    numbers = [t.number for t, _ in said if t.type == "NUM"]
    named = any(t.name == squares.stitch for t, _ in said)
    return said[-1][1] if named and numbers in ([squares.chains], [squares.chains, 1]) else at


_ON_NEXT = re.compile(r"(NUM )?STITCH PREP STITCH(?= SEP|$)")


def first_space(row: SquareRow, squares: Squares) -> tuple[int, int]:
    """Where `1 tr on tr` stands, and ends, in a row that begins `5 ch, 1 tr on tr`: a space; else
    no words."""
    chains, at = _chains(row, _past_marks(row, 0))
    at = _past_marks(row, at)
    found = [(t, end) for t, end in all_terminals_from(row, at) if t.type not in ("THE", "NEXT")]
    whole = _ON_NEXT.match(" ".join(t.type for t, _ in found))
    if whole is None or (chains or row.turning) != squares.height + squares.chains:
        return at, at
    said = found[: len(whole[0].split(" "))]
    one = all(t.number == 1 for t, _ in said if t.type == "NUM")
    same = all(t.name == squares.stitch for t, _ in said if t.type == "STITCH")
    return at, said[-1][1] if one and same else at


def _foundation(row: SquareRow, at: int) -> tuple[int, int]:
    """How many chains `Ch 18,`, `a chain of 18, turn,` makes, and the place behind them."""
    found = all_terminals_from(row, at)
    whole = _CHAIN.match(" ".join(t.type for t, _ in found))
    if whole is None:
        return 0, at
    said = found[: len(whole[0].split(" "))]
    if any(t.type == "ENDING" and t.name != "turn" for t, _ in said):
        return 0, at
    return [t.number for t, _ in said if t.type == "NUM"][-1], said[-1][1]


def _worked_first(row: SquareRow, squares: Squares, at: int, chain: int) -> tuple[int, int]:
    """Which chain from the hook the first stitch goes into, 0 where it is no other, and the place
    behind it. `chain`: how many the row has just made; behind them nothing else is counted."""
    found = all_terminals_from(row, at)
    types = " ".join(t.type for t, _ in found)
    whole = _HOOK.match(types)
    if chain:
        whole = whole or _IN_CHAIN.match(types) or _MISSED.match(types)
    if whole is None:
        return 0, at
    said = found[: len(whole[0].split(" "))]
    name = next(t.name for t, _ in said if t.type == "STITCH")
    numbers = [t.number for t, _ in said if t.type == "NUM"]
    missed = numbers.pop(0) if said[0][0].type == "SKIP" else 0
    nth = missed + 1 if missed else next(t.number for t, _ in said if t.type == "ORD")
    sound = name == squares.stitch and all(n == 1 for n in numbers)
    return (nth if sound and (not chain or nth < chain) else 0), said[-1][1]
