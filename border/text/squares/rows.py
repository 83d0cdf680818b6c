"""Rows told by their squares, put into steps: `3 spaces, 13 tr, 1 space`, `1 open, 2 close`.

A space is its chains over as many stitches and the stitch behind them; a block a stitch in
each of those places. The stitch before the first square is the one that the row begins with,
which nobody has to write; `13 tr` with the stitch before them counted in are four blocks.
"""

from __future__ import annotations

from collections.abc import Sequence

from border.text.squares.heads import begin, first_space, space_written_out
from border.text.squares.meanings import (
    BLOCK,
    SPACE,
    Squares,
    may_name,
    name_at,
    square_lines,
    standing_at,
)
from border.text.squares.steps import behind_gloss, last_of_row, stitches_on
from border.text.squares.words import (
    Asides,
    Run,
    Square,
    SquareRow,
    is_loose,
    opens_step,
    squares_made,
    stitches_at,
    stitches_over,
)
from border.text.tree import Chains, Copy, End, Ending, Row, StartChain, Text
from border.text.vocabulary import vocabulary
from border.text.words import Word


def with_squares(row: SquareRow, squares: Squares | frozenset[str], *, counted: bool) -> list[Word]:
    """The words of a row with its squares as steps; what is told of them is added to the row.

    `squares`: what they are in this text, or which of them are figures in it. `counted`: whether
    chains are said to count as stitches.
    """
    if not isinstance(squares, Squares) and not may_name(row.words):
        return row.words
    made, asides = squares_made(row)
    counting = [] if counted else ["chains count as stitches: yes"]
    if isinstance(squares, Squares):
        if not made or counted:
            return _written(row, squares, made, asides)
        message = 'for "{}" the chains of a space below must be passed over like stitches'
        _ask(row, next(iter(made.values())), message, counting)
        return row.words
    unsaid = [square for square in made.values() if square.kind not in squares]
    if unsaid:
        lines = dict(zip((SPACE, BLOCK), square_lines(None, row.names), strict=True))
        lacking = [line for kind, line in lines.items() if kind not in squares]
        _ask(row, unsaid[0], 'nothing says what is made for "{}"', [*lacking, *counting])
    return _without_glosses(row.words, asides)


def _ask(row: SquareRow, square: Square, message: str, lines: Sequence[str]) -> None:
    """The headings that a row of squares lacks, in full the first time."""
    quoted = " and ".join(f'"{line}"' for line in lines)
    help_ = f"put among the headings, each on a line, as in most books: {quoted}"
    if "squares asked" in row.spoken:
        help_ = "the same lines among the headings say it"
    row.spoken.add("squares asked")
    row.tell("squares-unclear", square.start, square.end, message, help_)


def _without_glosses(words: Sequence[Word], asides: Asides) -> list[Word]:
    kept: list[Word] = []
    at = 0
    while at < len(words):
        if at in asides.glosses:
            at = asides.glosses[at] + 1
            continue
        kept.append(words[at])
        at += 1
    return kept


def _written(
    row: SquareRow, squares: Squares, made: dict[int, Square], asides: Asides
) -> list[Word]:
    """All of the row in steps."""
    words = row.words
    begun = begin(row, squares, made)
    found, at, shared, ready = begun.words, begun.at, begun.shared, begun.ready
    spaced = False  # the stitch made last is that of a space
    first, behind_first = first_space(row, squares) if made else (0, 0)
    while at < asides.claims:
        here = words[at]
        counted = stitches_at(row, squares, at) if made else None
        over = stitches_over(row, squares, at)
        on = stitches_on(row, squares, at) if spaced else None
        last = last_of_row(row, squares, at) if made else None
        if at in made:
            square = made[at]
            _ask_chains(row, square, begun.at)
            found += standing_at(_steps(squares, square, ready=ready), here)
            at, shared, ready = _behind(row, squares, square), square.kind == SPACE, False
            spaced = shared
        elif at in asides.glosses:
            at = asides.glosses[at] + 1
        elif over is not None:
            found += standing_at(f"{squares.in_each(over.times)},", here)
            at, shared, spaced = over.end, False, False
        elif on is not None:
            found += standing_at(_in_each(row, squares, on, shared=True), here)
            at, shared, spaced = on.end, False, False
        elif last is not None:
            words_of_last, at = last
            found += words_of_last
        elif counted is not None:
            found += standing_at(_in_each(row, squares, counted, shared=shared), here)
            at, shared, spaced = counted.end, False, False
        elif made and (end := _behind_space(row, squares, at, first, behind_first)) > at:
            found += words[at:end]
            at, shared = end, True
        else:
            _ask_over(row, squares, at)
            found.append(here)
            shared, spaced = shared and is_loose(here), spaced and is_loose(here)
            at += 1
    return [*found, *words[asides.claims :]]


def _behind_space(row: SquareRow, squares: Squares, at: int, first: int, behind: int) -> int:
    """Behind the end of a space that is written out, the first of the row where its words [first,
    behind) begin here; else the same place."""
    return behind if at == first < behind else space_written_out(row, squares, at)


def _ask_chains(row: SquareRow, square: Square, begun: int) -> None:
    """Of chains right before the chains of a space, behind what the row begins with."""
    end = square.start
    while end > begun and row.words[end - 1].text in (",", ".", ";"):
        end -= 1
    for start in range(max(begun, end - 3), end - 1):
        pair, behind = row.types(start, 2)
        chains = sorted(t.type for t in pair) == ["CH", "NUM"] and behind == end
        if chains and square.kind == SPACE and opens_step(row.words, start):
            message = 'a space has chains of its own, and these "{}" stand before them'
            help_ = "say what is worked between them, or leave out those that are of the space"
            row.tell("squares-unclear", start, end, message, help_)
            return


def _ask_over(row: SquareRow, squares: Squares, at: int) -> None:
    """Of `close over close`, which has no number."""
    kind, over = name_at(row.words, at)
    like, end = name_at(row.words, over + 1)
    if kind and like and row.words[over].text in ("over", "on", "upon", "above"):
        name = "sp" if kind == SPACE else "blk"
        message = 'how many squares "{}" makes is not said'
        row.tell("squares-unclear", at, end, message, f'write their number: "1 {name}", "2 {name}"')


def _steps(squares: Squares, square: Square, *, ready: bool) -> str:
    """So many squares; `ready`: the chains of the first are made already."""
    if square.kind == BLOCK:
        return f"{squares.block(square.times)},"
    if not ready:
        return f"{squares.space(square.times)},"
    first = f"skip {squares.chains}, {squares.in_each(1)},"
    rest = None if square.times is None else square.times - 1
    return first if rest == 0 else f"{first} {squares.space(rest)},"


def _in_each(row: SquareRow, squares: Squares, counted: Run, *, shared: bool) -> str:
    """So many stitches, or the blocks that they are with the stitch before them counted in."""
    if not (shared and counted.counts_first(squares)):
        return f"{squares.in_each(counted.times)},"
    blocks = counted.times // squares.width
    if "squares" not in row.spoken:
        row.spoken.add("squares")
        made = f"{blocks} blocks" if blocks > 1 else "one block"
        message = f'"{{}}" is taken for {made}: the first of them is the one that stands before it'
        help_ = f'write "{blocks} blk" to say so; all such numbers are read alike'
        row.tell("squares-assumed", counted.start, counted.end, message, help_)
    return f"{squares.in_each(counted.times - 1)},"


def _behind(row: SquareRow, squares: Squares, square: Square) -> int:
    """The place behind squares, and the bracket that says of what they are made; `all spaces, as
    1st row` with what it is compared to, told."""
    words, at = row.words, square.end
    while at < len(words) and words[at].text in (",", "the", "same"):
        at += 1
    compared = at < len(words) and words[at].text in ("as", "like")
    rows = vocabulary().rows["row"]
    named = (n + 1 for n in range(at, min(at + _FEW, len(words))) if words[n].text in rows)
    end = next(named, None)
    if square.times is not None or not compared or end is None:
        return behind_gloss(row, squares, square)
    while end < len(words) and words[end].text in ("before", "below", "above"):
        end += 1
    message = '"{}" is taken for a remark, and changes nothing'
    row.tell("taken-as-remark", at, end, message, 'set it apart: "-- {} --"')
    return end


_FEW = 6
"""So many words name the row that one of all spaces is compared to."""


def turning_of(row: Row, before: dict[int, int]) -> int:
    """The chains that a row makes ahead of its turn; `before`: those of the rows before it."""
    body = row.body
    if isinstance(body, Copy):
        return before.get(body.rows[-1], 0) if body.rows else 0
    if not isinstance(body, Text) or not body.items:
        return 0
    last = body.items[-1]
    turns = body.ends[:1] == (End(Ending.TURN),)
    return last.count if turns and isinstance(last, Chains | StartChain) else 0
