"""Words before a row head on its line: `Border. 1st row.--`, `For the upper edge, 1st row:`; and
before the steps, `Crazy stitch: …`."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from border.text.framing.headings import is_heading
from border.text.phrases import longest
from border.text.vocabulary import is_colour, names, vocabulary, ways_from
from border.text.words import Sort, Word

MOST = 14
"""So many words may lead to a head."""

_PARTS = frozenset({".", ",", ":", ";", "--", "\u2014", "-"})
_STEPS = frozenset(
    {"CH", "PICOT", "CLUSTER", "SKIP", "REPEAT", "ENDING", "TIMES", "TOEND", "SOON", "LEAVE", "MOD"}
    | {"BEGIN", "SAME", "LIKE", "COME", "ALTERNATELY", "FILL", "CATCH", "ENDWITH", "REMARK"}
    | {"EACH", "ALL"}
)
"""Words of steps: what stands before a row head with one of them belongs to the row before."""
_NO_STEPS = (("one", "side"), ("as", "follows"))


def behind_lead(words: Sequence[Word], at: int) -> Iterator[int]:
    """The places behind one to fourteen words from here on where a row head may stand."""
    count = 0
    for n in range(at, min(at + 2 * MOST, len(words))):
        word = words[n]
        if word.line != words[at].line or word.sort not in (Sort.WORD, Sort.MARK):
            return
        if word.sort is Sort.MARK:
            if word.text not in _PARTS or not count:
                return
        elif (count := count + 1) > MOST or _of_steps(words, at, n):
            return
        ended = n + 1 < len(words) and words[n + 1].text not in _PARTS
        if ended and words[n + 1].line == word.line and _leads(words[at : n + 1]):
            yield n + 1


def _of_steps(words: Sequence[Word], start: int, at: int) -> bool:
    """Whether a step stands here: a number, a stitch, a repeat, what is done with the thread, or
    a place of which the words from `start` on say that something goes into it."""
    table, text = vocabulary(), words[at].text
    if (text, *(w.text for w in words[at + 1 : at + 2])) in _NO_STEPS:
        return False
    if text in table.times or (text in table.numbers and text not in ("a", "an")):
        return True
    if text in table.colours["colour"] or text in ("as", "means"):
        return True
    stitch, _ = longest(words, at, names("us").phrases)
    said = _said(words, at)
    if (
        said == "KIND"
        and text not in table.rows["edge"] | table.rows["alone"] | table.rows["piece"]
    ):
        return any(_said(words, n) == "PREP" for n in range(start, at))
    return stitch is not None or said in _STEPS


def _said(words: Sequence[Word], at: int) -> str:
    entry, _ = longest(words, at, ways_from(words[at].text))
    return entry.terminal if entry is not None else ""


def _leads(lead: Sequence[Word]) -> bool:
    """Whether these words may lead to a row head, and do not go on to speak of it."""
    rows = vocabulary().rows
    *_, before, last = ["", *(word.text for word in lead if word.sort is Sort.WORD)]
    heading = len(lead) > 2 and is_heading(lead)
    if (before, last) == ("as", "follows"):
        return not heading
    return last not in rows["goes_on"] | rows["speaks_of"] and not heading


def behind_title(words: Sequence[Word]) -> int:
    """Behind `Crazy stitch:`, `Picot edge:`, `Shells.` at a row's head, where steps follow; else
    0. Another name with a colon may be meant for the head of a clause."""
    stop = next((n for n, w in enumerate(words[:_TITLE]) if w.sort is not Sort.WORD), 0)
    title, behind = words[:stop], words[stop + 1 : stop + 2]
    plain = all(_is_plain(words, n) for n in range(stop))
    ends = stop and words[stop].text in (":", ".")
    if _names_edge(words, stop) and behind:
        return stop + 1
    if not ends or not behind or not plain or _said(words, stop + 1) in ("PREP", "BETWEEN"):
        return 0
    *_, last = (word.text for word in title)
    asked = vocabulary().places_asked
    made = last in _MADE or (last.endswith("s") and any(f"{one}s" == last for one in asked))
    named = (made and stop == 1) or (last in _WAYS and stop > 1)
    return stop + 1 if named else 0


def _names_edge(words: Sequence[Word], stop: int) -> bool:
    """Whether `Picot edge:`, `Shell edging:` stands before a stop: what is made, and no step."""
    edge = stop == 2 and words[1].text in ("edge", "edging") and words[stop].text == ":"
    return edge and _said(words, 0) in ("PICOT", "KIND") and _said(words, stop + 1) != "PREP"


_TITLE = 5
"""No title has so many words."""
_MADE = frozenset({"shells", "fans", "leaves"})
_WAYS = frozenset({"stitch", "stitches", "pattern", "work"})


def _is_plain(words: Sequence[Word], at: int) -> bool:
    """Whether a word is of no step, no colour and no head of a clause."""
    text = words[at].text
    stitch, _ = longest(words, at, names("us").phrases)
    plain = _said(words, at) in ("", "KIND", "STRAY", "THE", "SEP", "SOFT", "MADEOF", "NOTHING")
    numbered = text in vocabulary().numbers or text in vocabulary().times
    clause = text in ("elsewhere", "over", "at", "joint", "joints", "repeat", "thus")
    return plain and stitch is None and not (numbered or clause or is_colour(text))
