"""Steps among squares that say in stitches what squares are: `4 dc over 4 dc` behind a space,
`1 space (2 ch, miss 2, 1 dc)`, `1 dc in 3rd of 5 ch` at the end of a row.
"""

from __future__ import annotations

import re

from border.text.squares.meanings import SPACE, Squares, standing_at
from border.text.squares.words import (
    Run,
    Square,
    SquareRow,
    all_terminals_from,
    behind_dot,
    opens_step,
)
from border.text.words import Sort, Word

_OVER = re.compile(r"NUM STITCH PREP( THE| NEXT| ORD)* NUM STITCH")
_ON_EACH = re.compile(r"(NUM )?STITCH PREP( EACH| EACHOF| OF| THE| NEXT| ALL| ORD)+ NUM STITCH")
_THIRD = re.compile(r"(NUM )?STITCH PREP( THE)? ORD( CH| KIND)? OF( THE)? NUM CH")
_MADE = re.compile(
    r"(NUM CH|CH NUM) (SKIP NUM( KIND| CH| STITCH)? )?(NUM )?STITCH"
    r"( PREP( THE| NEXT)*( KIND| STITCH)?)?"
)
_LONGEST = 12
_LAST = -1


def stitches_on(row: SquareRow, squares: Squares, at: int) -> Run | None:
    """`4 dc on 4 dc`, `1 dc in each of the next 4 dc`: as many as blocks have with the stitch
    before them, one in each."""
    if not opens_step(row.words, at):
        return None
    found = all_terminals_from(row, at)
    types = " ".join(t.type for t, _ in found)
    whole, each = _OVER.match(types), _ON_EACH.match(types)
    size = len((whole or each or [""])[0].split(" "))
    numbers = [t.number for t, _ in found[:size] if t.type == "NUM"]
    made = [t.name for t, _ in found[:size] if t.type == "STITCH"]
    alike = numbers[0] == numbers[1] if whole else bool(each) and numbers[:-1] in ([], [1])
    if any(t.type == "ORD" and t.number != _LAST for t, _ in found[:size]):
        return None  # `4 dc in last 4 dc` are those that are left
    if not alike or made != [squares.stitch] * 2:
        return None
    run = Run(numbers[-1], False, at, behind_dot(row.words, found[size - 1][1]))
    return run if run.counts_first(squares) and _stops(row.words, run.end) else None


def behind_gloss(row: SquareRow, squares: Squares, square: Square) -> int:
    """Behind the bracket that says of what a square is made; what it is not is told."""
    words, at = row.words, square.end
    end = next(
        (n for n in range(at, min(at + _LONGEST * 2, len(words))) if words[n].text == ")"), 0
    )
    if at >= len(words) or words[at].text != "(" or not end or not _stops(words, end + 1):
        return at
    said = (t for t, behind in all_terminals_from(row, at + 1) if behind <= end)
    made = [t for t in said if t.type not in ("SEP", "OF", "EQUALS", "NAMELY", "EACH")]
    numbers = [t.number for t in made if t.type == "NUM"]
    stitches = [t.name for t in made if t.type == "STITCH"]
    if not stitches or not numbers:
        return at
    types = " ".join(t.type for t in made)
    if square.kind == SPACE:
        sizes = {squares.chains} if numbers[-1] != 1 or numbers == [1] else {squares.chains, 1}
        known = _MADE.fullmatch(types) is not None and set(numbers) <= sizes
    else:
        width = squares.width * (square.times or 1)
        known = types == "NUM STITCH" and numbers[0] in (squares.width, width, width + 1)
    if known and set(stitches) == {squares.stitch}:
        return end + 1
    message = f'"{{}}" is not what a {square.kind} is in this text'
    help_ = (
        "where the bracket says of what it is made, put that among the headings and leave the "
        "bracket out; where it is worked besides, put a comma before it"
    )
    row.tell("squares-unclear", at, end + 1, message, help_)
    return end + 1


def last_of_row(row: SquareRow, squares: Squares, at: int) -> tuple[list[Word], int] | None:
    """`1 dc in 3rd of 5 ch` where a row ends: the last stitch, in words; and behind it. The row
    below began with these chains, or told them by its squares."""
    opens = opens_step(row.words, at) and any(t.type == "STITCH" for t in row.types(at, 2)[0])
    found = all_terminals_from(row, at) if opens else []
    whole = _THIRD.match(" ".join(t.type for t, _ in found))
    if whole is None:
        return None
    said = found[: len(whole[0].split(" "))]
    *one, chains = (t.number for t, _ in said if t.type == "NUM")
    nth = next(t.number for t, _ in said if t.type == "ORD")
    name = next(t.name for t, _ in said if t.type == "STITCH")
    high = squares.height
    sound = one in ([], [1]) and name == squares.stitch and nth == high
    behind = said[-1][1]
    if not sound or chains != high + squares.chains or not _ends_row(row, behind):
        return None
    step = f"1 {squares.called} in last st"
    message = '"{}" is taken for the last stitch: the row below began with these chains'
    row.tell("squares-assumed", at, behind, message, f'write "{step}" to say so')
    return standing_at(step, row.words[at]), behind


def _stops(words: list[Word], at: int) -> bool:
    """Whether a step ends before a word."""
    return at >= len(words) or words[at].sort is Sort.MARK


def _ends_row(row: SquareRow, at: int) -> bool:
    """Whether only stops, and what turns or fastens off the work, stand from a word on."""
    rest = [t for t, _ in all_terminals_from(row, at) if t.type not in ("SEP", "AND", "ENDING")]
    return [t.type for t in rest] in ([], ["NUM", "CH"], ["CH", "NUM"])
