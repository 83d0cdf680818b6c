"""A border text becomes a tree: headings, then row by row.

Each row or clause is parsed by itself, so that one bad row costs one finding.
"""

from __future__ import annotations

from msgspec.structs import replace

from border.findings import Finding
from border.text.framing.explained import figures_as_headings
from border.text.framing.figures import no_groups, split_figures
from border.text.framing.headings import read_headings
from border.text.framing.numbering import find_rows
from border.text.framing.preamble import split_chain
from border.text.framing.rowheads import find_heads
from border.text.picots_said import without_picots
from border.text.row_texts import MOST_WORDS, Reader
from border.text.rows import read_rows
from border.text.source import Source
from border.text.squares.meanings import split_squares
from border.text.squares.unsaid import with_usual_squares
from border.text.tree import Border
from border.text.vocabulary import names
from border.text.words import Word, read_words, without_remarks


def read_border(source: Source) -> tuple[Border | None, tuple[Finding, ...]]:
    """The tree of a border text, and all its faults in the order of the text.

    A row that cannot be read is in the tree all the same (`broken`), so that the
    numbers of the others stand. A text without a single row gives no tree.
    """
    words = read_words(source)
    heads, end = find_heads(words)
    first = heads[0].at if heads else len(words)
    top = figures_as_headings(words[:first], words[first:])
    top, remarks = without_remarks(top, source)
    top, long = _within(top, source)
    top, figures, wrong = split_figures(top, source)
    sections, numbering = find_rows(words[:end], heads, source)
    if sections and sections[0].numbers[0] == 1:
        top, chain = split_chain(top, words[heads[0].at].line)
        sections[0] = replace(sections[0], body=[*chain, *sections[0].body])
    headings, faults = read_headings(top, source)
    wrong += no_groups(figures, headings.places, source)
    meanings = headings.overrides + headings.places
    known = names(headings.terms or "us", meanings)
    figures, squares, unsound = split_squares(figures, known, source)
    wrong += unsound
    figures, picot = without_picots(figures, known, source)
    reader = Reader(source, headings, known, figures, picot=picot, squares=squares)
    reader.findings += [*remarks, *long, *wrong, *faults, *numbering]
    if not heads:
        message = "there is not a single row here"
        help_ = 'begin each row on a line of its own: "round 1:"'
        reader.findings.append(Finding("no-rows", message, help_, source.span(0, 0)))
    whole = sections if end == len(words) else sections[:-1]
    with_usual_squares(whole, reader)
    rows = tuple(read_rows(whole, reader))
    found = sorted(reader.findings, key=lambda f: f.span.start if f.span else 0)
    if not heads:
        return None, tuple(found)
    return Border(reader.headings, rows, span=source.span(0, len(source.text))), tuple(found)


def _within(top: list[Word], source: Source) -> tuple[list[Word], tuple[Finding, ...]]:
    """The lines before the first row, as many as are read."""
    if len(top) <= MOST_WORDS:
        return top, ()
    beyond = top[MOST_WORDS]
    message = f"more than {MOST_WORDS} words and marks stand before the first row"
    help_ = 'begin rows as "round 1:", and set remarks apart with #'
    finding = Finding("too-large", message, help_, source.span(beyond.start, beyond.end))
    return [word for word in top[:MOST_WORDS] if word.line < beyond.line], (finding,)
