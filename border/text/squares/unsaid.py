"""What a space and a block are where a text does not say it: as in most books.

A space is two chains over two places and a stitch, a block three stitches (common practice);
a text whose own numbers say otherwise is asked. That the chains below are passed over like
stitches is part of it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from msgspec.structs import replace

from border.text.framing.numbering import Section
from border.text.row_texts import MOST_WORDS, Reader
from border.text.squares.heads import may_begin
from border.text.squares.meanings import Squares, may_name, square_lines, usual_squares
from border.text.squares.words import SquareRow, squares_made, stitches_at
from border.text.words import without_remarks

COUNTING = "chains count as stitches: yes"
"""The heading without which no space stands on the chains of another."""


def with_usual_squares(sections: Sequence[Section], reader: Reader) -> None:
    """Gives the reader the usual squares, told, where rows make some and no heading says what."""
    if reader.squares or reader.headings.chains_count is False:
        return
    rows = list(_square_rows(sections, reader))
    usual = [usual_squares(reader.names, stitch) for stitch in ("dc", "tr")]
    named = [squares for squares in usual if any(_runs(row, squares) for row in rows)]
    squares, *others = named or usual[:1]
    if not rows or others or any(_contradicted(row, squares) for row in rows):
        return
    _tell(rows[0], squares, reader)
    reader.squares = squares
    reader.headings = replace(reader.headings, chains_count=True)


def _square_rows(sections: Iterable[Section], reader: Reader) -> Iterator[SquareRow]:
    """The rows that make squares, as far as their words go."""
    for section in sections:
        if len(section.body) > MOST_WORDS or not may_name(section.body):
            continue
        words, _ = without_remarks(section.body, reader.source)
        row = SquareRow(words, section.numbers[0], reader.names, reader.source, set())
        if squares_made(row)[0]:
            yield row


def _runs(row: SquareRow, squares: Squares) -> list[int]:
    """How many stitches stand among the squares of a row, where more than one stand together."""
    runs = (stitches_at(row, squares, at) for at in range(len(row.words)))
    return [run.times for run in runs if run is not None and run.times > 1]


def _contradicted(row: SquareRow, squares: Squares) -> bool:
    """Whether a row has numbers that such squares do not come to: `3 sps, 5 tr`, `4 ch, 3 sps`."""
    odd = any(times % squares.width not in (0, 1) for times in _runs(row, squares))
    return odd or (row.number > 1 and not may_begin(row, squares))


def _tell(row: SquareRow, squares: Squares, reader: Reader) -> None:
    made, _ = squares_made(row)
    first = next(iter(made.values()))
    space, block = square_lines(squares, reader.names)
    chains = () if reader.headings.chains_count else (COUNTING,)
    message = f'nothing says what is made for "{{}}": {space}, and {block}, as in most books'
    lines = " and ".join(f'"{line}"' for line in (space, block, *chains))
    help_ = f"put among the headings, each on a line, if it is so here: {lines}"
    row.tell("squares-assumed", first.start, first.end, message, help_)
    reader.findings += [replace(finding, round=row.number) for finding in row.findings]
