"""Distances on cloth: `miss about ¼ inch`, `1 dc half an inch away`, `a little further on`.

No places are counted there, so that they say nothing: the places of the edge are where the
stitches go.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from border.text.numbers import number_at
from border.text.phrases import longest
from border.text.vocabulary import Names, phrases_from, said_of_distances, vocabulary
from border.text.words import Sort, Word

DISTANCE = "distance"
"""The name of a remark that is one."""

_REACH = 12
"""So many words from its first one on a distance has its unit."""


def behind_distance(words: Sequence[Word], at: int, names: Names) -> int:
    """Behind the distance that begins at a word, with the skip that it is of; `at` for none."""
    opens, tells = _signs()
    if words[at].sort is Sort.WORD and "/" not in words[at].text and words[at].text not in opens:
        return at
    if not any(word.text in tells or "/" in word.text for word in words[at : at + _REACH]):
        return at
    for start in (_past(words, at, "verb"), at):
        end = _behind_way(words, start) or _behind_measure(words, start)
        if end:
            return _behind_from_where(words, end, names)
    return at


@lru_cache(maxsize=1)
def _signs() -> tuple[frozenset[str], frozenset[str]]:
    """The words that a distance can begin with, and those of which it must have one."""
    table = vocabulary().distances
    ways = {phrase[0] for phrase in said_of_distances("way")}
    verbs = {phrase[0] for phrase in said_of_distances("verb")}
    opens = {*ways, *verbs, *table["about"], *table["part"], *vocabulary().numbers}
    return frozenset(opens), frozenset(table["unit"]) | ways - {"a"}


def _text(words: Sequence[Word], at: int) -> str:
    return words[at].text if at < len(words) and words[at].sort is not Sort.QUOTED else ""


def _past(words: Sequence[Word], at: int, what: str) -> int:
    """Behind the longest phrase of a kind that stands here; the same place for none."""
    for phrase in said_of_distances(what):
        if phrase and all(_text(words, at + n) == part for n, part in enumerate(phrase)):
            return at + len(phrase)
    return at


def _behind_way(words: Sequence[Word], at: int) -> int:
    """Behind `a little further on`; 0 for none."""
    end = _past(words, at, "way")
    return end if end > at else 0


def _behind_measure(words: Sequence[Word], at: int) -> int:
    """Behind `about a quarter of an inch`, `1½ inches`, `¼ in.`; 0 for none."""
    table = vocabulary().distances
    end = at
    while _text(words, end) in (*table["about"], "a", "an"):
        end += 1
    number = number_at(words, end)
    whole = end if number is None else number[1]
    part = whole
    while _text(words, part) in ("and", "a", "of", "an"):
        part += 1
    broken = _text(words, part) in table["part"] or "/" in _text(words, part)
    end = part + 1 if broken else whole
    while broken and _text(words, end) in ("of", "a", "an"):
        end += 1
    short = _text(words, end) in table["short_unit"]
    dotted = short and _text(words, end + 1) == "." and words[end + 1].start == words[end].end
    if end == at or not (_text(words, end) in table["unit"] or (short and broken)):
        return 0
    if short and not dotted and "/" not in _text(words, part):
        return 0  # `in the third in the row`
    end += 1
    if dotted and (_text(words, end + 1) in (",", ";", ":", "") or _goes_on(words, end + 1)):
        end += 1
    return 0 if _text(words, end) in table["size"] or _is_noun(words, end) else end


def _goes_on(words: Sequence[Word], at: int) -> bool:
    return any(_past(words, at, what) > at for what in ("behind", "from"))


def _is_noun(words: Sequence[Word], at: int) -> bool:
    """Whether the distance is only how large what is named here is: `the half-inch hem`."""
    entries = phrases_from(_text(words, at)) if at < len(words) else ()
    return any(len(p) == 1 and e.terminal in ("KIND", "CH", "PICOT") for p, e in entries)


def _behind_from_where(words: Sequence[Word], at: int, names: Names) -> int:
    """Behind `further on`, `apart`, `from the last dc` that go with a distance."""
    end = at
    while (behind := _past(words, end, "behind")) > end:
        end = behind
    start = _past(words, end, "from")
    if start == end:
        return _behind_what(words, at, end, names)
    stitch, behind = longest(words, start, names.phrases)
    if stitch is not None:
        return behind
    return start + (_text(words, start) in ("stitch", "st", "one"))


def _behind_what(words: Sequence[Word], at: int, end: int, names: Names) -> int:
    """Behind the stitches that a distance lies between, `between each treble`, `between the two
    double stitches`; else the same place."""
    if all(_text(words, n) != "between" for n in range(at, end)):
        return end
    noun = end
    while _text(words, noun) in ("the", "two", "each", "every"):
        noun += 1
    stitch, behind = longest(words, noun, names.phrases)
    said = stitch is not None and _text(words, noun - 1) != "between"
    return behind if said else end
