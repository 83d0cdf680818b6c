"""Squares: what a space and a block are, which the headings of a text say.

`space = 2 ch, miss 2, 1 tr in next st`: so many chains over as many stitches, and the
stitch that closes it. A block has a stitch in each of these places: `block = 3 tr`.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache
from itertools import groupby

from msgspec import Struct
from msgspec.structs import replace

from border.findings import Finding
from border.stitches import STITCHES
from border.text.framing.figures import Figure, Figures
from border.text.phrases import longest
from border.text.shaping.passes import shape
from border.text.source import Source
from border.text.terminals import Terminal
from border.text.vocabulary import Entry, Names, Phrases, name_of, squares_by_name, ways
from border.text.wording.assumed import SPACES
from border.text.wording.terminals_read import read_terminals
from border.text.words import Word, read_words

SPACE, BLOCK = "space", "block"


class Squares(Struct, frozen=True):
    """What the squares of a text are made of: the chains of a space, which passes over as many
    stitches; and the stitch, by its US name and as the text calls it."""

    chains: int
    stitch: str
    called: str

    @property
    def width(self) -> int:
        """How many stitches and chains of a row a square has, without the stitch before it."""
        return self.chains + 1

    @property
    def height(self) -> int:
        """The chains that stand for the first stitch of a row."""
        return STITCHES[self.stitch].height

    @property
    def around(self) -> tuple[int, int]:
        """The chains that a space beyond the end of a row is made of: as many as go all round
        it, or one fewer, the last standing on the corner."""
        whole = self.width + self.height + self.chains
        return whole - 1, whole

    def space(self, times: int | None) -> str:
        """So many spaces, in words that a row can have; None: to the row's end."""
        one = f"ch {self.chains}, skip {self.chains}, 1 {self.called} in next st"
        return one if times == 1 else f"({one}) {_how_often(times)}"

    def block(self, times: int | None) -> str:
        """So many blocks, in words that a row can have; None: to the row's end."""
        if times is None:
            return f"({self.in_each(self.width)}) {_how_often(times)}"
        return self.in_each(self.width * times)

    def in_each(self, count: int) -> str:
        """A stitch in each of the next so many."""
        place = "next st" if count == 1 else f"each of the next {count} st"
        return f"1 {self.called} in {place}"

    def first(self, chains: int = 0) -> str:
        """The stitch that a row begins with, worked as so many chains, or as many as it is high."""
        return f"ch {chains or self.height} as {self.called};"


def _how_often(times: int | None) -> str:
    return "to end" if times is None else f"{times} times"


def name_at(words: Sequence[Word], at: int) -> tuple[str, int]:
    """Which square a word names, space or block, and the place behind the name; else ""."""
    entry, end = longest(words, at, _names())
    return entry.name if entry is not None else "", end


@lru_cache(maxsize=1)
def _names() -> Phrases:
    return ways((phrase, Entry("SQUARE", kind)) for phrase, kind in squares_by_name())


def may_name(words: Sequence[Word]) -> bool:
    """Whether any word may begin the name of a square."""
    first = _names()
    return any(word.text in first for word in words)


def usual_squares(names: Names, stitch: str = "dc") -> Squares:
    """What most books mean (common practice), by the stitch's US name, called as the text does."""
    return Squares(2, stitch, name_of(stitch, names.terms))


def square_lines(squares: Squares | None, names: Names) -> tuple[str, str]:
    """The headings that say what a space and a block are, in the words of the text; where no
    `squares` are given, as most books have them."""
    taken = squares or usual_squares(names)
    return f"space = {taken.space(1)}", f"block = {taken.width} {taken.called}"


def split_squares(
    figures: Figures, names: Names, source: Source
) -> tuple[Figures, Squares | frozenset[str], tuple[Finding, ...]]:
    """The figures without those of squares, and what squares are; or all of the figures, and which
    squares are among them. And faults.

    A space that begins with its stitch (`open square = 1 dc, ch 2, miss 2`) is a figure like any.
    """
    given: dict[str, Figure] = {}
    findings: list[Finding] = []
    for figure in {figure.name: figure for figure in figures.values()}.values():
        words = [_as_word(text) for text in figure.name]
        kind, end = name_at(words, 0)
        if not kind or end < len(words):
            continue
        if kind in given:
            message, help_ = f"what a {kind} is, is given twice", "leave one of them out"
            findings.append(_fault(figure, message, help_, source))
        given.setdefault(kind, figure)
    if SPACE not in given or _begins_with_stitch(given[SPACE], names, source):
        return figures, frozenset(given), tuple(findings)
    squares = _space(given[SPACE], names, source)
    if squares is None:
        message = "a space has so many chains, misses as many stitches, and has one stitch behind"
        help_ = f'write it as in "{square_lines(None, names)[0]}"'
        findings.append(_fault(given[SPACE], message, help_, source))
    elif BLOCK in given and _block(given[BLOCK], names, source) != (squares.width, squares.stitch):
        message = (
            f"a block fills the {squares.width} places of a space, and begins behind the stitch "
            "that it shares with the square before it"
        )
        help_ = f'count that one out: "{square_lines(squares, names)[1]}"'
        findings.append(_fault(given[BLOCK], message, help_, source))
    own = list(given.values())
    kept = {form: figure for form, figure in figures.items() if figure not in own}
    return kept, squares or frozenset(), tuple(findings)


def _fault(figure: Figure, message: str, help_: str, source: Source) -> Finding:
    span = source.span(figure.steps[0].start, figure.steps[-1].end)
    return Finding("bad-heading", message, help_, span)


def _as_word(text: str) -> Word:
    (word,) = read_words(Source("", text))
    return word


_SPACE = re.compile(r"(NUM CH|CH NUM)/SKIP NUM( KIND| CH| STITCH)?/(NUM )?STITCH( PREP [^/]*)?")
_BLOCK = re.compile(r"NUM STITCH( PREP EACHOF NEXT NUM (KIND|CH|STITCH))?")


def _begins_with_stitch(figure: Figure, names: Names, source: Source) -> bool:
    first = _parts(figure, names, source)[:1]
    return any(t.type == "STITCH" for part in first for t in part)


def _space(figure: Figure, names: Names, source: Source) -> Squares | None:
    parts = _parts(figure, names, source)
    if not _SPACE.fullmatch(_types(parts)):
        return None
    chains, missed, one = (next((t.number for t in p if t.type == "NUM"), 1) for p in parts)
    stitch = next(t for t in parts[2] if t.type == "STITCH")
    sound = chains == missed > 0 and one == 1 and STITCHES[stitch.name].height > 0
    return Squares(chains, stitch.name, stitch.text) if sound else None


def _block(figure: Figure, names: Names, source: Source) -> tuple[int, str] | None:
    """How many stitches a block has, and which."""
    parts = _parts(figure, names, source)
    if not _BLOCK.fullmatch(_types(parts)):
        return None
    each, *places = [t.number for t in parts[0] if t.type == "NUM"]
    return each * places[0] if places else each, parts[0][1].name


def _parts(figure: Figure, names: Names, source: Source) -> list[list[Terminal]]:
    """The steps of a figure, each by itself."""
    terminals, _ = read_terminals(figure.steps, names, source, set(), SPACES)
    parted = groupby(shape(terminals)[0], lambda t: t.type == "SEP")
    return [list(part) for is_separator, part in parted if not is_separator]


def _types(parts: Sequence[Sequence[Terminal]]) -> str:
    return "/".join(" ".join(t.type for t in part) for part in parts)


def standing_at(text: str, at: Word) -> list[Word]:
    """The words of a text, as if they stood where a word stands."""
    words = read_words(Source("", text))
    return [replace(word, start=at.start, end=at.end, line=at.line) for word in words]
