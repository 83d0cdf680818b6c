"""Where a row names squares that it makes: `3 sps, 2 blks`, `1 open, 2 close`, `all spaces`.

Where a place is named (`in next space`), in a count behind the row (`(15 spaces)`) and in
brackets behind a step (`1 tr on tr (1 sp)`) nothing is made.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct, field

from border.findings import Finding
from border.text.numbers import number_at
from border.text.source import Source
from border.text.squares.meanings import SPACE, Squares, name_at
from border.text.terminals import Terminal, terminal_at
from border.text.vocabulary import Names, opens_one, vocabulary
from border.text.words import Sort, Word, quoted

_LOOSE = frozenset({"and", "then", "work", "make", "crochet", "working", "now", "turn"})
_TIMES = ("times", "time", "more")
_FEW = 3
"""So many of these words may stand before a step."""
_CHANGED = frozenset({"added", "increased", "gained", "made", "decreased", "lost", "widened"})
_PLACES = frozenset(
    {"PREP", "OF", "BETWEEN", "FROM", "KIND", "STITCH", "CH", "INALL", "EXCEPT", "ATEND", "ENDST"}
)
"""Before one of these a number of squares is a place, or the count of what has been made."""


class Square(Struct, frozen=True):
    """So many squares of one kind in the words [start, end) of a row; `times` None: to its end."""

    kind: str
    times: int | None
    start: int
    end: int


class Run(Struct, frozen=True):
    """So many of the stitch of the squares, one in each place, in the words [start, end) of a row.

    `more`: it says that they stand behind what is made (`3 more tr`).
    """

    times: int
    more: bool
    start: int
    end: int

    def counts_first(self, squares: Squares) -> bool:
        """Whether they can only be blocks with the stitch before them counted in."""
        return not self.more and self.times % squares.width == 1 < self.times


class SquareRow(Struct):
    """A row as it is read: its words, what a square is in its text, and what is told.

    `number`: of the row. `turning`: the chains that the row before made ahead of its turn.
    `spoken`: what has been told of this text already, so that it is told once.
    """

    words: list[Word]
    number: int
    names: Names
    source: Source
    spoken: set[str]
    turning: int = 0
    findings: list[Finding] = field(default_factory=list)

    def types(self, at: int, count: int) -> tuple[list[Terminal], int]:
        """So many terminals from a word on, or as many as there are, and the place behind them."""
        found: list[Terminal] = []
        while at < len(self.words) and len(found) < count:
            terminal, at = terminal_at(self.words, at, self.names)
            found.append(terminal)
        return found, at

    def tell(self, code: str, start: int, end: int, message: str, help_: str) -> None:
        """Of the words [start, end); `{}` is what they say."""
        end -= end > start + 1 and self.words[end - 1].text == "."
        span = self.source.span(self.words[start].start, self.words[end - 1].end)
        said = quoted(self.source, span)
        self.findings.append(Finding(code, message.format(said), help_.format(said), span))


def terminals_from(row: SquareRow, at: int) -> list[tuple[Terminal, int]]:
    """What stands from a word on, without stops and articles; and the place behind each."""
    return [one for one in all_terminals_from(row, at) if one[0].type not in ("SEP", "THE", "NEXT")]


def all_terminals_from(row: SquareRow, at: int) -> list[tuple[Terminal, int]]:
    """What stands from a word on; and the place behind each."""
    found: list[tuple[Terminal, int]] = []
    for _ in range(_HEAD):
        here, at = row.types(at, 1)
        found += [(t, at) for t in here]
    return found


_HEAD = 24
"""So many words and marks a row may begin with before its squares."""


class Asides(Struct, frozen=True):
    """What only speaks of squares: brackets behind a step, by where each begins, and where it
    ends; and where the counts begin that stand at the row's end."""

    glosses: dict[int, int]
    claims: int


def squares_made(row: SquareRow) -> tuple[dict[int, Square], Asides]:
    """The squares that a row makes, by where they stand; and the brackets that only name some."""
    pairs = _brackets(row.words)
    claims = _claims(row.words, pairs)
    glosses = {
        start: end for start, end in pairs.items() if end < claims and _is_gloss(row, start, end)
    }
    glosses |= _named_behind(row.words)
    made: dict[int, Square] = {}
    at = behind = 0
    while at < claims:
        square = _square_at(row, at) if opens_step(row.words, at, behind) else None
        if at in glosses:
            at = glosses[at] + 1
        elif square is not None:
            made[at] = square
            at = behind = square.end
        else:
            at += 1
    return made, Asides(glosses, claims)


def _named_behind(words: Sequence[Word]) -> dict[int, int]:
    """Where `ch 2, skip 2, 1 dc, making 1 sp` says so behind the steps, and where that ends."""
    found: dict[int, int] = {}
    for n, word in enumerate(words):
        if word.text not in ("making", "forming"):
            continue
        number = number_at(words, n + 1)
        kind, end = name_at(words, number[1]) if number is not None else ("", n)
        if kind and number is not None and number[0] == 1:
            found[n] = end - 1
    return found


def is_loose(word: Word) -> bool:
    """Whether a word only stands between one step and the next, or says how often."""
    table = vocabulary()
    counts = word.text in table.numbers or word.text in table.times or word.text in _TIMES
    return word.sort is not Sort.WORD or word.text in _LOOSE or counts


def opens_step(words: Sequence[Word], at: int, behind: int = 0) -> bool:
    """Whether a step can begin at a word: behind a mark, or `behind` the squares made last."""
    for _ in range(_FEW):
        if at and words[at - 1].text in _LOOSE:
            at -= 1
    if at > 1 and behind_dot(words, at - 1) == at and opens_one(words[at - 2].text, "SKIP"):
        return False  # `sk. 1 sp.`
    crossed = at > 0 and words[at - 1].text == "x"  # `x 4 tr, 2 sps, x`
    at -= crossed and (at == 1 or words[at - 2].text in (",", ".", ";", ":"))
    return not at or at == behind or words[at - 1].sort is Sort.MARK


def stitches_at(row: SquareRow, squares: Squares, at: int) -> Run | None:
    """So many of the stitch of the squares with no place: `13 tr`, `3 more tr for blk`."""
    words = row.words
    number = number_at(words, at)
    if number is None or number[0] == 0 or not opens_step(words, at):
        return None
    more = number[1] < len(words) and words[number[1]].text == "more"
    named, end = row.types(number[1] + more, 1)
    if [(t.type, t.name) for t in named] != [("STITCH", squares.stitch)]:
        return None
    end = behind_dot(words, end)
    if end < len(words) and words[end].text == "for":
        one = number_at(words, end + 1)
        kind, behind = name_at(words, one[1] if one else end + 1)
        end = behind_dot(words, behind) if kind else end
    dotted = words[end - 1].text == "."
    stops = end == len(words) or words[end].sort is Sort.MARK or words[end].text in _LOOSE
    if not stops and not (dotted and number_at(words, end)):
        return None
    return Run(number[0], more, at, end)


def stitches_over(row: SquareRow, squares: Squares, at: int) -> Run | None:
    """`4 dc over the first square and the dc that follows`: one in each of their places, and
    in the stitch before them where there are so many."""
    number = number_at(row.words, at)
    if number is None or not opens_step(row.words, at):
        return None
    named, end = row.types(number[1], 1)
    place = end + (end < len(row.words) and row.words[end].text == ",")
    texts = [word.text for word in row.words[place : place + 9]]
    if [t.name for t in named] != [squares.stitch] or texts[:1] != ["over"]:
        return None
    wide = 2 + (texts[2:3] in (["first"], ["next"]))
    over = number_at(row.words, place + wide) or (1, place + wide)
    noun, behind = over[1], over[1] + 1
    following = [word.text for word in row.words[behind : behind + 2]]
    stitch, last = row.types(behind + 2, 1)
    if texts[1:2] != ["the"] or row.words[noun : noun + 1] == [] or following != ["and", "the"]:
        return None
    square = row.words[noun].text in ("square", "squares") or name_at(row.words, noun)[0] == SPACE
    if not square or [t.name for t in stitch] != [squares.stitch]:
        return None
    tail = [word.text for word in row.words[last : last + 2]]
    last += 2 if tail == ["that", "follows"] else tail[:1] == ["following"]
    if number[0] - over[0] * squares.width not in (0, 1):
        return None
    return Run(number[0], True, at, last)


def behind_dot(words: Sequence[Word], end: int) -> int:
    """The place behind an abbreviation's own full stop."""
    dotted = end < len(words) and words[end].text == "." and words[end].start == words[end - 1].end
    return end + (dotted and words[end - 1].text in vocabulary().short)


def _square_at(row: SquareRow, at: int) -> Square | None:
    words = row.words
    number = number_at(words, at)
    times, end = number or (None, at)
    if number is None:
        end = _behind_all(words, at)
    elif end < len(words) and words[end].text == "more":
        end += 1
    kind, behind = name_at(words, end)
    if not kind or times == 0:
        return None
    if number is None and end == at:  # `spaces to the end`
        to_end, _ = row.types(behind, 1)
        if not words[behind - 1].text.endswith("s") or [t.type for t in to_end] != ["TOEND"]:
            return None
        behind = row.types(behind, 1)[1]
    behind = behind_dot(words, behind)
    behind += behind < len(words) and words[behind].text == "more"
    if number is not None:
        behind = _behind_over(words, behind)
    following, _ = row.types(behind, 1)
    if any(t.type in _PLACES for t in following):
        return None
    return Square(kind, times, at, behind)


def _behind_over(words: Sequence[Word], at: int) -> int:
    """Behind `over bl`, `over the 2 sps`, which only says where squares stand; else the same
    place."""
    if at >= len(words) or words[at].text not in ("over", "on", "upon", "above"):
        return at
    start = at + 1 + (at + 1 < len(words) and words[at + 1].text in ("the", "each"))
    number = number_at(words, start)
    kind, end = name_at(words, start if number is None else number[1])
    return behind_dot(words, end) if kind else at


def _behind_all(words: Sequence[Word], at: int) -> int:
    """Behind `all`, `all the`; else the same place."""
    texts = [word.text for word in words[at : at + 2]]
    return at + 1 + (texts[1:] == ["the"]) if texts[:1] == ["all"] else at


def _brackets(words: Sequence[Word]) -> dict[int, int]:
    """Where each bracket begins, and where it ends."""
    pairs: dict[int, int] = {}
    open_: list[int] = []
    for n, word in enumerate(words):
        if word.sort is Sort.MARK and word.text in ("(", "[", "{"):
            open_.append(n)
        elif word.sort is Sort.MARK and word.text in (")", "]", "}") and open_:
            pairs[open_.pop()] = n
    return pairs


def _claims(words: Sequence[Word], pairs: dict[int, int]) -> int:
    """Where the counts begin that stand in brackets at a row's end."""
    opened = {end: start for start, end in pairs.items()}
    claims = end = len(words)
    while end:
        last = words[end - 1]
        if end - 1 in opened and opened[end - 1] and number_at(words, opened[end - 1] + 1):
            claims = end = opened[end - 1]
        elif last.text in ("turn", "join", "off", "fasten") or last.text in (".", ",", ";"):
            end -= 1
        else:
            break
    return claims


def _is_gloss(row: SquareRow, start: int, end: int) -> bool:
    """Whether a bracket only says what the step before it makes: `1 tr on tr (1 sp), 2 blks`."""
    words = row.words
    before = start and words[start - 1]
    dotted = before and before.text == "." and behind_dot(words, start - 1) == start
    if not before or (before.sort is Sort.MARK and not dotted):
        return False
    square = _square_at(row, start + 1)
    stops = end + 1 == len(words) or words[end + 1].sort is Sort.MARK
    if _stands_for(words, start + 1, end) and stops:
        return True
    if square is None or not stops:
        return False
    return square.end == end or (square.end == end - 1 and words[end - 1].text in _CHANGED)


def _stands_for(words: Sequence[Word], at: int, end: int) -> bool:
    """Whether `for first sp`, `as a space` is all that a bracket says."""
    if words[at].text not in ("for", "as"):
        return False
    at += 1
    while at < end and words[at].text in ("the", "a", "one", "first", "1st"):
        at += 1
    kind, behind = name_at(words, at)
    return bool(kind) and behind_dot(words, behind) == end
