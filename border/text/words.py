"""Characters become words: figures, words, quoted names and marks, comments left out.

A word remembers where it stands, its line, and whether a hyphen ties it to the
word before (`ch-5`). What words *mean* is the business of `terminals.py`.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from enum import Enum, auto
from unicodedata import normalize

from msgspec import Struct

from border.findings import Finding, Span
from border.text.source import Source

_WORDS = re.compile(
    r"""
    (?P<comment>\#[^\r\n]*)
  | (?P<line>\r\n|\r|\n)
  | (?P<blank>[^\S\r\n]+|[\ufeff\u200b\u200c\u200d\u2060]+)
  | (?P<quoted>"[^"\r\n]*"|[“”„][^“”„\r\n]*[“”])
  | (?P<ordinal>(?i:[0-9]*1st|[0-9]*2n?d|[0-9]*3r?d|[0-9]+th)(?![^\W_]))
  | (?P<fraction>[¼½¾⅛⅜⅝⅞⅓⅔]|[0-9]+[/\u2044][0-9]+)
  | (?P<number>[0-9]+)
  | (?P<plural>(?:[^\W\d_]{1,3}\.?|(?:[^\W\d_]\.){2,3})['\u2019]s(?![^\W_]))
  | (?P<dotted>[^\W\d_](?:\.[^\W\d_])+(?![^\W_]))
  | (?P<repeat>\b(?i:rep|rept|rpt)(?:\.(?=[^\S\r\n]*[^\sA-Z])|(?![^\W_])))
  | (?P<shell>\b(?i:shs?)\.(?=[^\S\r\n]*[^\sA-Z]))
  | (?P<etc>(?:&[ ]?[cC]|\b(?i:etc))(?:\.(?=[^\S\r\n]*[^\sA-Z])|(?![^\W_])))
  | (?P<word>[^\W\d_]+(?:['\u2019][^\W\d_]+)*)
  | (?P<dash>\u2014+|--+|\u2013\u2013+)
  | (?P<hyphen>[-\u2010\u2011\u2013])
  | (?P<mark>.)
    """,
    re.VERBOSE | re.DOTALL,
)

_STARS = frozenset("\u204e\u2217\u066d\uff0a\u2731\u2732\u2733\u273a\u273b\u273d\u2749")
"""Stars as they are printed and copied, all of them one mark."""

LARGEST = 999_999_999
"""The largest number that is read; what a row may hold is checked where it is worked."""


class Sort(Enum):
    """What a word is made of."""

    WORD = auto()
    NUMBER = auto()
    ORDINAL = auto()
    QUOTED = auto()
    MARK = auto()


class Word(Struct, frozen=True):
    """A word of a text: `text` in lower case, [start, end) in the source, its line from 0.

    `glued`: a hyphen without blanks ties it to the word before. `number`: the
    value of a figure, never more than just above `LARGEST`. `capital`: it begins with one. A quoted
    name keeps
    its capitals and loses its marks. A fraction is a word: `1/4`, however it is printed.
    """

    sort: Sort
    text: str
    start: int
    end: int
    line: int
    glued: bool = False
    number: int = 0
    capital: bool = False


def read_words(source: Source) -> list[Word]:
    """All words of a source in order."""
    words: list[Word] = []
    line = 0
    tied = -1
    for match in _WORDS.finditer(source.text):
        kind, text, start, end = match.lastgroup, match.group(), match.start(), match.end()
        if kind in ("comment", "blank"):
            continue
        if kind == "line":
            line += 1
            continue
        if kind == "hyphen" and _ties(source.text, start, end):
            tied = end
            continue
        words.append(_word(str(kind), text, start, end, line, tied == start))
    return words


def _ties(text: str, start: int, end: int) -> bool:
    before, after = text[start - 1 : start], text[end : end + 1]
    return before.isalnum() and after.isalnum()


def _word(kind: str, text: str, start: int, end: int, line: int, glued: bool) -> Word:
    match kind:
        case "number" | "ordinal":
            digits = text.lower().rstrip("stndrh")
            number = min(int(digits), LARGEST + 1) if len(digits) < 20 else LARGEST + 1
            sort = Sort.NUMBER if kind == "number" else Sort.ORDINAL
            return Word(sort, text, start, end, line, glued, number)
        case "fraction":
            plain = normalize("NFKC", text).replace("\u2044", "/")
            return Word(Sort.WORD, plain, start, end, line, glued)
        case "quoted":
            return Word(Sort.QUOTED, text[1:-1].strip(), start, end, line)
        case "plural":  # `the p.'s`, `6 ch's`
            plain = text.lower().replace(".", "").replace("\u2019", "'").replace("'", "")
            return Word(Sort.WORD, plain, start, end, line, glued)
        case "word":
            plain = text.lower().replace("\u2019", "'")
            capital = text[0].isupper() and not text.isupper()
            return Word(Sort.WORD, plain, start, end, line, glued, capital=capital)
        case "dotted":
            return Word(Sort.WORD, text.lower().replace(".", ""), start, end, line, glued)
        case "repeat":  # `rep. from *`: a full stop that ends nothing goes with it
            return Word(Sort.WORD, "repeat", start, end, line, glued)
        case "shell":  # `sh. in sh.`
            return Word(Sort.WORD, text.lower().rstrip("."), start, end, line, glued)
        case "etc":
            return Word(Sort.WORD, "etc", start, end, line, glued)
        case "dash":
            return Word(Sort.MARK, "--" if text[0] != "—" else "—", start, end, line)
        case _ if text in _STARS:
            return Word(Sort.MARK, "*", start, end, line)
        case _ if text == "&":
            return Word(Sort.WORD, "and", start, end, line)
        case _:
            return Word(Sort.MARK, "-" if kind == "hyphen" else text, start, end, line)


def remarks_in(words: Sequence[Word]) -> list[tuple[int, int]]:
    """Where each remark opens, and where it closes: at a `--` either way."""
    marks = _marks(words)
    return list(zip(marks[::2], marks[1::2], strict=False))


def _marks(words: Sequence[Word]) -> list[int]:
    return [n for n, word in enumerate(words) if word.text == "--" and word.sort is Sort.MARK]


def without_remarks(
    words: Sequence[Word], source: Source
) -> tuple[list[Word], tuple[Finding, ...]]:
    """The words without what stands between `--` and `--`; a finding for one never closed."""
    kept: list[Word] = []
    marks = _marks(words)
    at = 0
    for opening, closing in remarks_in(words):
        kept += words[at:opening]
        at = closing + 1
    kept += words[at:]
    if len(marks) % 2 == 0:
        return kept, ()
    odd = words[marks[-1]]
    message = 'the remark that begins at this "--" is not closed'
    help_ = (
        'write "--" behind its last word too, or set a remark apart with #; where it is a dash, '
        'write "—"'
    )
    finding = Finding("not-understood", message, help_, source.span(odd.start, odd.end))
    return [word for word in kept if word is not odd], (finding,)


def quoted(source: Source, span: Span) -> str:
    """The words of a span, as a message can quote them."""
    return shortened(source.text[span.start : span.end])


def shortened(text: str, most: int = 40) -> str:
    """A stretch of a text as a message can quote it: on one line, and not for ever."""
    words = " ".join(text[: 4 * most].split())
    if len(words) <= most and len(text) <= 4 * most:
        return words
    return f"{words[: most - 2].rsplit(' ', 1)[0]} …"
