"""Rows of squares that begin further in, or beyond the edge of the row below: `s.s. along 4 tr`,
`8 ch, 1 tr in last tr`."""

from __future__ import annotations

import re

from border.text.numbers import number_at
from border.text.squares.meanings import Squares, name_at, standing_at
from border.text.squares.words import SquareRow, behind_dot, terminals_from
from border.text.words import Word

_STOPS = frozenset(",;.:—-") | {"--"}

_ALONG = frozenset(
    {"back", "along", "over", "across", "on", "upon", "to", "in", "into", "the", "first"}
)


def led(row: SquareRow, squares: Squares, at: int) -> tuple[list[Word], int]:
    """`S.s. along 4 tr`, `sl st over the first block`: to where the row begins; or that it begins
    there in so many words."""
    slip, end = row.types(at, 1)
    if [t.type for t in slip] == ["BEGIN"]:
        while end < len(row.words) and row.words[end].text not in _STOPS:
            end += 1
        return row.words[at:end], end
    if [(t.type, t.name) for t in slip] != [("STITCH", "ss")]:
        return [], at
    place = end = behind_dot(row.words, end)
    while place < len(row.words) and row.words[place].text in _ALONG:
        place += 1
    count, noun = number_at(row.words, place) or (1, place)
    kind, behind = name_at(row.words, noun)
    stitch, stitch_end = row.types(noun, 1)
    if kind:
        count = count * squares.width + 1
    elif [t.name for t in stitch] == [squares.stitch]:
        behind = behind_dot(row.words, stitch_end)
        nth, past = _to_stitch(row, squares, behind)
        count, behind = (nth, past) if nth == count + 1 else (count, behind)
    if place == end or count % squares.width != 1 or count == 1:
        return [], at
    behind = _to_stitch(row, squares, behind_dot(row.words, behind))[1]
    message = (
        f'"{{}}" is taken for the way to the {count}th stitch: the row begins there, and leaves '
        "what lies before it"
    )
    help_ = f'write "begin in {count}th st" to say so'
    row.tell("squares-assumed", at, behind, message, help_)
    return standing_at(f"begin in {count}th st,", row.words[at]), behind


def _to_stitch(row: SquareRow, squares: Squares, at: int) -> tuple[int, int]:
    """Behind `to the 4th`, `to next tr`, and which it is, 0 for the next; else the same place."""
    texts = [word.text for word in row.words[at : at + 2]]
    if texts[:1] not in (["to"], ["into"]):
        return 0, at
    at_nth = at + 1 + (texts[1:] == ["the"])
    which, end = row.types(at_nth, 1)
    if [t.type for t in which] not in (["ORD"], ["NEXT"]):
        return 0, at
    stitch, behind = row.types(end, 1)
    named = [t.name for t in stitch] == [squares.stitch]
    return which[0].number, behind_dot(row.words, behind) if named else end


_ADDED = re.compile(
    r"(NUM CH|CH NUM) SKIP NUM( CH)? NUM STITCH PREP EACHOF NUM CH NUM STITCH PREP STITCH"
)


def blocks_added(row: SquareRow, squares: Squares, at: int) -> tuple[list[Word], int]:
    """`5 ch, miss 3, 1 tr in each of next 2 ch, 1 tr on tr`: blocks beyond the end of the row."""
    found = terminals_from(row, at)
    whole = _ADDED.match(" ".join(t.type for t, _ in found))
    if whole is None:
        return [], at
    size = len(whole[0].split(" "))
    chains, missed, _, worked, _ = (t.number for t, _ in found[:size] if t.type == "NUM")
    made = {t.name for t, _ in found[:size] if t.type == "STITCH"}
    if made != {squares.stitch} or chains != missed + worked or (worked + 1) % squares.width:
        return [], at
    behind = behind_dot(row.words, found[size - 1][1])
    return _beyond(row, squares, f"{worked + 1} {squares.called}", at, behind), behind


_LAST = -1
_IN_LAST = re.compile(r"(NUM )?STITCH PREP (ORD|SAME)( STITCH| KIND| PLACE)?(?= )")
_SPACE_ADDED = re.compile(
    r"(NUM CH|CH NUM)( ENDING)? (NUM )?STITCH PREP (ORD|SAME)( STITCH| KIND| PLACE)?"
    r"( OF ORD ROW| OF ROW| STRAY| AS ORD STITCH)?"
)


def space_added(row: SquareRow, squares: Squares, at: int) -> tuple[list[Word], int]:
    """`8 ch, 1 tr in the last tr of last row`: a space beyond the end of the row."""
    found = terminals_from(row, at)
    whole = _SPACE_ADDED.match(" ".join(t.type for t, _ in found))
    if whole is None:
        return [], at
    said = found[: len(whole[0].split(" "))]
    chains, *one = (t.number for t, _ in said if t.type == "NUM")
    made = next(t.name for t, _ in said if t.type == "STITCH")
    nth = next((t.number for t, _ in said if t.type == "ORD"), 1)
    sound = made == squares.stitch and one in ([], [1]) and nth in (1, _LAST)
    if not sound or chains not in squares.around:
        return [], at
    behind = behind_dot(row.words, said[-1][1])
    steps = f"ch {squares.chains}, 1 {squares.called}"
    return _beyond(row, squares, steps, at, behind), behind


def _beyond(row: SquareRow, squares: Squares, made: str, at: int, behind: int) -> list[Word]:
    """The words of a first stitch and what is made in the same place, told."""
    steps = f"{squares.first().removesuffix(';')} in next st, {made} in same st"
    message = "this is added beyond the edge, and counted as made on the last stitch there"
    row.tell("squares-assumed", at, behind, message, f'write "{steps}" to say so')
    return standing_at(f"{steps};", row.words[at])


def ask_turned(row: SquareRow, squares: Squares, at: int) -> None:
    """Of `1 tr in the last tr` behind the chains of a space beyond the edge and their turn."""
    found = terminals_from(row, at)
    whole = _IN_LAST.match(" ".join(t.type for t, _ in found))
    if whole is None:
        return
    end = found[len(whole[0].split(" ")) - 1][1]
    message = (
        f'the {row.turning} chains before the turn and "{{}}" make a space beyond the edge: they '
        "are read behind the turn"
    )
    help_ = f'write the chains at the head of this row: "ch {row.turning}, {{}}"'
    row.tell("squares-unclear", at, end, message, help_)
