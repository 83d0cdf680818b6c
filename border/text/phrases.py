"""The longest phrase that begins at a word, of those that the vocabulary or the names have."""

from __future__ import annotations

from collections.abc import Sequence

from border.text.vocabulary import Entry, Phrases, vocabulary
from border.text.words import Sort, Word


def longest(words: Sequence[Word], at: int, phrases: Phrases) -> tuple[Entry | None, int]:
    """The longest of some phrases that begins at a word, and the place behind it.

    An abbreviation inside may have its full stop: `sl. st`, `sl.-st.`
    """
    short = vocabulary().short
    entry, end, further = None, at, phrases
    start = at
    while at < len(words) and words[at].sort is not Sort.QUOTED:
        word = words[at]
        if word.text == "." and start < at and words[at - 1].text in short:
            dotted = word.start == words[at - 1].end
            at += dotted
            dashed = dotted and at < len(words) and words[at].text == "-"
            at += dashed and words[at].start == words[at - 1].end
            if dotted:
                if at == len(words) or words[at].sort is Sort.QUOTED:
                    break
                word = words[at]
        way = further.get(word.text)
        if way is None:
            break
        at += 1
        if way.entry is not None:
            entry, end = way.entry, at
        further = way.further
    return entry, end
