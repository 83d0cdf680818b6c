"""Clause heads and claims: what a row says besides its steps.

A clause head ends in a colon and begins at the last separator before it; the
name in it stands as it is, words of the vocabulary included.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from itertools import pairwise

from msgspec import Struct
from msgspec.structs import replace

from border.findings import Finding
from border.text.numbers import number_at, ordinal_at
from border.text.phrases import longest
from border.text.source import Source
from border.text.terminals import Terminal
from border.text.tree import (
    ST,
    AtJoint,
    AtJoints,
    Claim,
    Elsewhere,
    Kind,
    Over,
    OverMotifs,
    Scope,
)
from border.text.vocabulary import is_colour, names, phrases_from, vocabulary, ways_from
from border.text.wording.passing import opens_before
from border.text.words import Sort, Word, shortened

_STOPS = frozenset(",;.()[]*—+†‡§¶")
_DETERMINERS = frozenset({"the", "each", "every", "next", "following"})
_LEADING = frozenset({"and", "then", "work", "working", "now"})
_FORMS = (
    '"over each motif:", "over NAME:", "over each motif of NAME:", "elsewhere:", '
    '"at each joint:" or "at joint A | B:"'
)


class Part(Struct, frozen=True):
    """A stretch of a row's words: a clause, or with `scope` None what stands before any."""

    scope: Scope | None
    head: tuple[int, int]
    words: Sequence[Word]


def split_clauses(words: Sequence[Word], source: Source) -> tuple[list[Part], tuple[Finding, ...]]:
    """The clauses of a row's body. Without any clause head there is one part."""
    findings: list[Finding] = []
    heads: list[tuple[int, int, Scope]] = []
    strange: set[int] = set()
    after = 0
    for n, word in enumerate(words):
        if word.text != ":" or word.sort is not Sort.MARK or _before_repeat(words, n + 1):
            continue
        start = _head_start(words, after, n)
        if _behind_picot(words, start, n):
            continue
        scope = None if _over_a_place(words[start:n]) else _scope(words[start:n], source)
        if scope is None and _opens_place(words[start:n]):
            continue
        if scope is None:
            findings.append(_no_head(words[start : n + 1], source))
            strange.update(range(start, n + 1))
        else:
            heads.append((start, n, scope))
        after = n + 1

    def kept(start: int, end: int) -> list[Word]:
        return [words[n] for n in range(start, end) if n not in strange]

    ends = [start for start, _, _ in heads] + [len(words)]
    parts = [Part(None, (0, 0), kept(0, ends[0]))]
    for (start, colon, scope), end in zip(heads, ends[1:], strict=True):
        head = (words[start].start, words[colon].end)
        parts.append(Part(scope, head, kept(colon + 1, end)))
    if heads and not any(word.sort is not Sort.MARK for word in parts[0].words):
        parts = parts[1:]
    return parts, tuple(findings)


def _behind_picot(words: Sequence[Word], start: int, colon: int) -> bool:
    """Whether `made thus:` stands behind a picot, which is spelled out behind the colon."""
    if start == colon or words[colon - 1].text not in ("thus", "follows", "manner", "way"):
        return False
    before = start
    while before and words[before - 1].sort is Sort.MARK:
        before -= 1
    named = (longest(words, n, ways_from(words[n].text)) for n in range(max(0, before - 1), colon))
    return any(entry is not None and entry.terminal == "PICOT" for entry, _ in named)


def _before_repeat(words: Sequence[Word], at: int) -> bool:
    """Whether a colon stands before `repeat`, as a semicolon does."""
    at += at < len(words) and words[at].text == "and"
    return at < len(words) and words[at].text.startswith("repeat")


_FEW = 4
"""So many words at most say how often: `then 3 times`."""


def _no_head(words: Sequence[Word], source: Source) -> Finding:
    """What is told of words and a colon that are no head of a clause: of the words of a row head
    that go on from the line above, whose last word no full stop parts from it, that."""
    rows = vocabulary().rows
    at = next((n for n, word in enumerate(words) if n and word.text in rows["row"]), None)
    if at is not None and words[at - 1].text in rows["goes_on"]:
        message = f'a line that ends in "{words[at - 1].text}" goes on, so this begins no new row'
        help_ = "end the line above with a full stop"
        return Finding(
            "not-understood", message, help_, source.span(words[at].start, words[-1].end)
        )
    message = "the words before this colon are not the head of a clause"
    help_ = f"write {_FORMS} behind a separator; elsewhere leave the colon out"
    if not _works(words):
        told = shortened(source.text[words[0].start : words[-2].end], 160)
        help_ += f'; or, where this only tells of the work, set it apart: "-- {told} --"'
    span = source.span(words[0].start, words[-1].end)
    return Finding("not-understood", message, help_, span)


def _works(words: Sequence[Word]) -> bool:
    """Whether a stitch, chains or a repeat stand among these words, or there is only a mark."""
    known = names("us").phrases
    stitch = any(longest(words, n, known)[0] is not None for n in range(len(words)))
    makes = any(
        entry.terminal in ("CH", "PICOT", "CLUSTER", "REPEAT", "SKIP", "OVER")
        for word in words
        for phrase, entry in phrases_from(word.text)
        if len(phrase) == 1
    )
    over = bool(_CLAUSES & {word.text for word in words})  # meant for a clause
    return stitch or makes or over or len(words) < _TWO


_TWO = 2
_CLAUSES = frozenset({"over", "elsewhere", "at", "motif", "motifs", "joint", "joints", "each"})


def _opens_place(words: Sequence[Word]) -> bool:
    """Whether the words before a colon are a place, `in every space:`, `Fasten the thread in a
    loop:`, `With silk:`, or how often, `then 3 times:`, and no clause head."""
    if not words or words[0].text == "at":
        return False
    if words[-1].text in ("times", "twice", "thrice") and len(words) < _FEW:
        return True
    if words[0].text in ("with", "in") and _is_thread(words[-1].text):
        return True
    if words[0].text == "over" and not (_named(words) or _over_a_place(words)):
        return False
    opens = ("PREP", "ONESIDE", "OTHERSIDE", "BEGIN")
    return any(entry.terminal in opens for _, entry in phrases_from(words[0].text))


def _is_thread(word: str) -> bool:
    return is_colour(word) or word in vocabulary().colours["behind"]


def _over_a_place(words: Sequence[Word]) -> bool:
    """Whether `over the 5 chain`, `over the next treble` is a place by its words: what a section
    of an edge is called neither counts chains nor names a stitch with `the` before it."""
    if len(words) < 3 or words[0].text != "over" or words[1].text not in _DETERMINERS:
        return False
    at = 1
    while at < len(words) and (words[at].text in _DETERMINERS or ordinal_at(words, at)):
        at += 1
    number = number_at(words, at)
    at = number[1] if number is not None else at
    if at == len(words):
        return False
    stitch = longest(words, at, names("us").phrases)
    if stitch[0] is not None:
        return stitch[1] == len(words)
    noun, end = longest(words, at, ways_from(words[at].text))
    chains = noun is not None and (noun.terminal == "CH" or noun.chain)
    if chains and end < len(words):  # `the 5 chain loop`
        noun, end = longest(words, end, ways_from(words[end].text))
    if noun is None or noun.terminal not in ("CH", "KIND") or end < len(words):
        return False
    which = {"next", "following", "each", "every"} & {word.text for word in words[1:at]}
    return bool(which) or (chains and number is not None)


def _named(words: Sequence[Word]) -> bool:
    """Whether `over each …:` names something that is worked into, and no part of an edge."""
    entries = phrases_from(words[-1].text)
    ends = {entry.terminal for phrase, entry in entries if len(phrase) == 1}
    each = len(words) > 2 and words[1].text in ("each", "every")
    return each and bool(ends & {"KIND", "CH", "PICOT"})


def _head_start(words: Sequence[Word], least: int, colon: int) -> int:
    """Where the head that ends at a colon begins: behind the last separator."""
    start = colon
    while start > least and not _separates(words, start - 1):
        start -= 1
    while start < colon and words[start].text in _LEADING:
        start += 1
    before = start - 2
    if before >= least and words[start - 1].text == "," and words[before].text == "elsewhere":
        return before
    return start


def _separates(words: Sequence[Word], at: int) -> bool:
    word = words[at]
    if word.sort is not Sort.MARK or word.text not in _STOPS:
        return False
    inside_name = word.text == "." and at + 1 < len(words) and words[at + 1].start == word.end
    return not inside_name or words[at + 1].text == ":"


def _scope(words: Sequence[Word], source: Source) -> Scope | None:
    texts = tuple(word.text for word in words if word.text != ",")
    match texts:
        case ("elsewhere",):
            return Elsewhere()
        case ("elsewhere", "over", "each" | "every", "motif"):
            return Elsewhere(each_motif=True)
        case ("over", "each" | "every", "motif"):
            return OverMotifs()
        case ("over", "each" | "every", "motif", "of", _, *_):
            return OverMotifs(_name(words[4:], source))
        case ("over", "each" | "every", _, *_):
            return None  # a slip for "motif": no name begins so
        case ("over", _, *_):
            return Over(_name(words[1:], source))
        case ("at", "each" | "every", "joint") | ("at", "joints"):
            return AtJoints()
        case ("at", "joint", _, *_) | ("at", "the", "joint", _, *_) if "|" in texts:
            first = texts.index("joint") + 1
            middle = texts.index("|")
            if first < middle < len(texts) - 1:
                a = _name(words[first:middle], source)
                return AtJoint(a, _name(words[middle + 1 :], source))
    return None


def _name(words: Sequence[Word], source: Source) -> str:
    """A name as it stands in the text, with single blanks."""
    name = source.text[words[0].start : words[0].end]
    for before, word in pairwise(words):
        gap = source.text[before.end : word.start]
        name += " " if before.line != word.line else re.sub(r"\s+", " ", gap)
        name += source.text[word.start : word.end]
    return name.strip()


def claims_said(t: list[Terminal]) -> list[Terminal]:
    """`…, making 15 spaces in all`, `there will be 24 treble`, `12 loops.` at a text's end: as
    `(15 spaces)`."""
    t = [
        x
        for n, x in enumerate(t)
        if not (n and t[n - 1].type == "LP" and x.type == "WITH" and _says_there_are(x))
    ]
    end = len(t)
    while end and t[end - 1].type in ("SEP", "ENDING"):
        end -= 1
    said = end - (end > 0 and t[end - 1].type == "INALL")
    said -= 2 * (
        [x.type for x in t[said - 3 : said]] == ["KIND", "OF", "CH"]
    )  # `24 loops of chain`
    words = t[max(0, said - 3) : said]
    sorts = [x.type for x in words]
    alone = sorts == ["SEP", "NUM", "KIND"] and words[2].many  # `…, repeat to the end; 5 holes.`
    if not alone and (sorts[:2] != ["WITH", "NUM"] or len(words) < 3):
        return t
    noun = words[2]
    sure = noun.type == "KIND" or said < end or _says_there_are(words[0])
    if kind_of(noun) is None or not sure or noun.kind == ST:
        return t
    bracket = [replace(words[0], type="LP"), *words[1:], replace(noun, type="RP")]
    closing = t[: said - 3]  # a claim of the row stands before the stitch that closes it
    joins = next((n for n in range(len(closing) - 1, -1, -1) if closing[n].type == "ENDING"), -1)
    if joins > 0 and all(x.type in _CLOSING for x in closing[joins + 1 :]):
        start = joins - (closing[joins - 1].type == "AND")
        return [*closing[:start], *bracket, *closing[joins:], *t[end:]]
    return [*closing, *bracket, *t[end:]]


def _says_there_are(here: Terminal) -> bool:
    """Whether a word says how many there are: `there will be`, `you now have`."""
    return here.text.split(" ")[0] in ("there", "you")


_CLOSING = frozenset(
    {"TO", "PREP", "THE", "ORD", "NUM", "CH", "KIND", "STITCH", "OF", "SEP", "WITH", "AND"}
)


def split_claims(
    terminals: Sequence[Terminal], source: Source
) -> tuple[list[Terminal], tuple[Claim, ...]]:
    """The terminals without the claims at their end, and the claims: `(48 dc, 24 ch)`.

    A last bracket of numbers and nouns with neither a place nor a number of
    times behind it. One that names a stitch twice, or has nothing before it,
    is a list to be worked.
    """
    kept = list(terminals)
    claims: list[Claim] = []
    first = next((n for n, terminal in enumerate(kept) if terminal.type != "SEP"), 0)
    while True:
        end = len(kept)
        while end and kept[end - 1].type in ("SEP", "ENDING"):
            end -= 1
        start = next((i for i in range(end - 1, -1, -1) if kept[i].type == "LP"), 0)
        if end < 2 or kept[end - 1].type != "RP" or kept[start].type != "LP":
            return kept, tuple(reversed(claims))
        inside = kept[start + 1 : end - 1]
        found = _claims(inside, source) or _of_the_one(inside, kept[:start], source)
        named = [claim.of for claim in found]
        if not found or start <= first or len(set(named)) < len(named):
            return kept, tuple(reversed(claims))
        claims += reversed(found)
        del kept[start:end]


def without_claims(terminals: Sequence[Terminal], claims: Iterable[Claim]) -> list[Terminal]:
    """The terminals without the brackets that claims stand in; all of them where a claim stands
    in none."""
    kept = list(terminals)
    for claim in claims:
        if claim.span is None:
            continue
        start, end = claim.span.start, claim.span.end
        before = [n for n, x in enumerate(kept) if x.type == "LP" and x.start < start]
        opens = before[-1] if before else len(kept)
        closes = next((n for n in range(opens, len(kept)) if kept[n].type == "RP"), opens)
        if closes > opens and kept[closes].end >= end:
            del kept[opens : closes + 1]
    return kept


def _of_the_one(
    inside: Sequence[Terminal], steps: Sequence[Terminal], source: Source
) -> tuple[Claim, ...]:
    """`2 dc in each st around (24)`: of the one stitch that the row makes, or of all of them."""
    made = {
        t.name
        for n, t in enumerate(steps)
        if t.type == "STITCH" and t.name != "ss" and not opens_before(steps, n)
    }
    chains = any(t.type in ("CH", "PICOT") for t in steps)
    if [t.type for t in inside] != ["NUM"] or not made or (len(made) > 1 and chains):
        return ()
    (number,) = inside
    of = Kind(made.pop()) if len(made) == 1 else ST
    return (Claim(number.number, of, span=source.span(number.start, number.end)),)


def _claims(inside: Sequence[Terminal], source: Source) -> tuple[Claim, ...]:
    pairs = [t for t in inside if t.type not in ("SEP", "INALL")]
    claims = []
    for number, noun in zip(pairs[::2], pairs[1::2], strict=False):
        span = source.span(number.start, noun.end)
        if number.type != "NUM" or number.start > noun.start:
            return ()
        if noun.type == "REPEAT":
            claims.append(Claim(number.number, None, span=span))
        elif (kind := kind_of(noun)) is not None:
            claims.append(Claim(number.number, kind, span=span))
        else:
            return ()
    return tuple(claims) if len(pairs) % 2 == 0 else ()


def kind_of(terminal: Terminal) -> Kind | None:
    """The kind of site that a noun names."""
    match terminal.type:
        case "KIND":
            return terminal.kind
        case "STITCH":
            return Kind(terminal.name)
        case "CH":
            return Kind("ch")
        case "PICOT":
            return Kind("picot")
        case _:
            return None
