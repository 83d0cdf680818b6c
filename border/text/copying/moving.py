"""Where a copied row is worked otherwise: `the 3 tr, 3 ch, 3 tr going into the 3 ch`."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from msgspec import Struct
from msgspec.structs import replace

from border.findings import Finding, Severity
from border.text.copying.units import merged
from border.text.framing.copies import behind_said
from border.text.framing.copy_words import SEPARATES, amount_at, noun_at, past_openings
from border.text.numbers import number_at
from border.text.source import Source
from border.text.steps import OPEN_PLACES
from border.text.terminals import terminal_at
from border.text.tree import Bracket, Moved, Named, Place, Stitches, Text, Which
from border.text.vocabulary import Names
from border.text.words import Sort, Word

_TRIES = 6
"""So many words for a place are tried, from one separator to the next."""

_LONGEST = 40
"""No words for a place are more."""

_ELSEWHERE = frozenset({"end", "ends", "beginning", "corner", "corners", "start", "same"})
"""Words of a place that is one of a row's places only."""

_BESIDES = frozenset({"also", "too", "besides", "extra", "additional", "additionally"})
"""What is so worked is not moved, but more is made."""

_UNDERSTOOD = "term-unknown-here"
"""The one fault after which it is clear all the same what is said."""

_LEFT_OUT = "corners-left-out"
"""What is told where words are passed over that make another place of it."""


class Tried(Struct, frozen=True):
    """Some words read as the steps of a row, and what would be told of them."""

    text: Text
    findings: tuple[Finding, ...]
    told: frozenset[str]


Try = Callable[[Sequence[Word]], Tried]


class Moving(Struct, frozen=True):
    """What is worked elsewhere, the words up to `after`, and what they are read from."""

    moved: Moved
    after: int
    tried: Tried


class _What(Struct, frozen=True):
    """What is said to go elsewhere; `words` of a step that makes it; the place behind."""

    named: tuple[Named, ...]
    words: tuple[Word, ...]
    after: int
    noun: tuple[Word, ...] = ()


def move_at(
    words: Sequence[Word],
    at: int,
    names: Names,
    source: Source,
    read: Try,
    *,
    lists: bool = False,
) -> Moving | None:
    """`working the dc in the 5 chain`, `the dc on the dc`, `but between the groups`.

    `lists`: only what is more than one thing, `the 3 tr, 3 ch, 3 tr going into the 3 ch`.
    """
    opened = past_openings(words, at)
    put = max(behind_said(words, opened, what) for what in ("with", "put"))
    what = _fastened(words, put, names) or _what(words, put, names)
    if what is None or what.after >= len(words) or (lists and len(what.named) < 2):
        return None
    if put == at and (not what.named or not _sure(words, put, what)):
        return None
    if not place_behind(words, what.after, names) or _in_a_stitch(words, what, names):
        return None
    for end in _ends(words, what.after):
        place_words = _without_those(words[what.after : end], what)
        if place_words is None or (_ELSEWHERE | _BESIDES).intersection(w.text for w in place_words):
            continue
        for said in (place_words, _as_a_space(place_words, what)):
            tried = read([*what.words, *said]) if said else None
            place = _place(tried, what) if tried else None
            if tried is not None and place is not None:
                span = source.span(words[at].start, words[end - 1].end)
                return Moving(Moved(what.named, place, span=span), end, tried)
    return None


class LastPut(Struct, frozen=True):
    """A step that the row copied makes last, as it is worked here; the words up to `after`."""

    step: Stitches
    after: int
    told: frozenset[str]


def last_put_at(words: Sequence[Word], at: int, names: Names, read: Try) -> LastPut | None:
    """`but the dc at the end is put into the last dc`, `working the last treble in the loop`."""
    opened = past_openings(words, at)
    put = max(behind_said(words, opened, what) for what in ("with", "put"))
    start = behind_said(words, put, "the")
    last = start < len(words) and words[start].text == "last"
    noun = noun_at(words, start + last, names)
    if noun is None or noun[0] in ("ch", "picot"):
        return None
    end = past_dot(words, noun[2])
    after = behind_said(words, end, "at_the_end")
    if not last and after == end:
        return None
    after = behind_said(words, after, "going")
    if not place_behind(words, after, names):
        return None
    said = (_figure_one(words[start]), *words[start + last : noun[2]])
    for stop in _ends(words, after):
        tried = read([*said, *words[after:stop]])
        faults = any(f.severity is Severity.ERROR for f in tried.findings)
        if faults or len(tried.text.items) != 1 or tried.text.ends or tried.text.repeats:
            continue
        match tried.text.items[0]:
            case Stitches(count=1, place=Place(targets=(_, *_)) as place) as step:
                one = place.count == 1 or place.which is Which.NTH
                if one and place.which not in OPEN_PLACES:
                    return LastPut(step, stop, tried.told)
    return None


def place_behind(words: Sequence[Word], at: int, names: Names) -> bool:
    """Whether a place is said here: `in the 5 chain`, `coming between the groups`."""
    at = max(at, behind_said(words, at, "going"))
    opens = ("PREP", "BETWEEN", "ROUND")
    return at < len(words) and terminal_at(words, at, names)[0].type in opens


def _in_a_stitch(words: Sequence[Word], what: _What, names: Names) -> bool:
    """Whether `but in treble` may say the stitch that all is worked in, and no place."""
    bare = not what.named and words[what.after].text in ("in", "with")
    noun = noun_at(words, what.after + 1, names) if bare else None
    return noun is not None and noun[0] not in ("ch", "picot")


def _sure(words: Sequence[Word], at: int, what: _What) -> bool:
    """Whether no more is made: `the 3 dc in the 5 chain`, `dc on dc`, but not `3 dc in it`."""
    said = behind_said(words, at, "the") > at
    return said or (len(what.named) == 1 and what.named[0].number is None)


def _fastened(words: Sequence[Word], at: int, names: Names) -> _What | None:
    """`fastening in the 5 chain`, where a heading says what stitch that is."""
    stitch = names.known.get(("fasten",))
    end = behind_said(words, at, "fasten")
    if stitch is None or end == at or end >= len(words):
        return None
    noun = _named_words(names, stitch, words[at])
    return _What((Named(stitch),), (_figure_one(words[at]), *noun), end, noun)


def _what(words: Sequence[Word], at: int, names: Names) -> _What | None:
    """`the 2 long coming`, `the 3 tr, 3 ch, 3 tr going`; nothing, where a place stands."""
    start = behind_said(words, at, "the")
    named: list[Named] = []
    end = start
    while (amount := amount_at(words, end, names)) is not None and amount.of:
        if amount.of == "ring" or amount.number == 0:
            return None
        named.append(Named(amount.of, amount.number))
        end = amount.after
        behind = past_dot(words, end)
        if behind >= len(words) or words[behind].text not in (",", "and"):
            break
        behind += 1 + (
            words[behind].text == ","
            and [w.text for w in words[behind + 1 : behind + 2]] == ["and"]
        )
        following = amount_at(words, behind, names)
        if following is None or not following.of:
            break
        end = behind
    if not named:
        return _What((), _any_stitch(names, words[at]), at) if start == at < len(words) else None
    after = past_dot(words, end)
    after = max(after, behind_said(words, after, "going"))
    said = tuple(words[start:end])
    if len(named) == 1:
        if named[0].of in ("ch", "picot"):
            return None
        one = () if named[0].number is not None else (_figure_one(words[start]),)
        return _What((named[0],), (*one, *said), after, said)
    if any(one.number is None for one in named) or all(n.of in ("ch", "picot") for n in named):
        return None
    bracket = [replace(words[start], text=mark, sort=Sort.MARK, glued=False) for mark in "()"]
    return _What(merged(named), (bracket[0], *said, bracket[1]), after)


def _figure_one(beside: Word) -> Word:
    return Word(Sort.NUMBER, "1", beside.start, beside.start, beside.line, number=1)


def _any_stitch(names: Names, beside: Word) -> tuple[Word, ...]:
    """A stitch to be put before a place that is said without one."""
    return (_figure_one(beside), *_named_words(names, "sc", beside))


def _named_words(names: Names, stitch: str, beside: Word) -> tuple[Word, ...]:
    """The words of a name that is surely that stitch's; of any other, where it has none."""
    sure = (phrase for phrase in names.known if phrase not in names.unsettled)
    phrase = min(sure, key=lambda phrase: names.known[phrase] != stitch)
    return tuple(Word(Sort.WORD, t, beside.start, beside.start, beside.line) for t in phrase)


def past_dot(words: Sequence[Word], at: int) -> int:
    """Behind the full stop of an abbreviation: `3 tr., 3 ch.`."""
    dot = at < len(words) and words[at].text == "." and words[at - 1].end == words[at].start
    return at + 1 if dot else at


def _ends(words: Sequence[Word], start: int) -> Iterator[int]:
    """Where the words for a place may end, the furthest first."""
    last = min(len(words), start + _LONGEST)
    stops = [n for n in range(start + 1, last) if words[n].text in SEPARATES][:_TRIES]
    if last == len(words) and len(stops) < _TRIES:
        stops.append(last)
    return reversed(stops)


def _without_those(words: Sequence[Word], what: _What) -> list[Word] | None:
    """`over those of the row before`: over the next of what is worked there; None if unclear."""
    for at in range(1, len(words)):
        if words[at].text not in ("those", "that"):
            continue
        end = behind_said(words, at, "those")
        if end == at or not what.noun:
            return None
        nouns = [word for word in what.noun if word.sort is not Sort.NUMBER]
        return [*words[:at], replace(words[at], text="the"), *nouns, *words[end:]]
    return list(words)


def _as_a_space(words: Sequence[Word], what: _What) -> list[Word]:
    """`the 4 dc on the next 2 ch`, which cannot be one on each, as in a space of 2; or nothing."""
    made = [one.number for one in what.named if one.of != "ch" and one.number]
    number = number_at(words, len(words) - 2) if len(words) > 2 else None
    spaces = number is not None and number[1] == len(words) - 1 and words[-1].text == "ch"
    if not made or number is None or not spaces or number[0] in (1, sum(made)):
        return []
    return [*words[:-1], replace(words[-1], text="chain")]


def _place(tried: Tried, what: _What) -> Place | None:
    """The place that one step goes into, as it is said of a copy; None where there is none."""
    faults = {f.code for f in tried.findings if f.severity is Severity.ERROR}
    left_out = any(f.code == _LEFT_OUT for f in tried.findings)
    text = tried.text
    if faults - {_UNDERSTOOD} or left_out or text.repeats or text.ends or len(text.items) != 1:
        return None
    a_list = what.words[0].text == "("
    one = what.named[0] if len(what.named) == 1 else Named("")
    match text.items[0]:
        case Bracket(place=place, parted=0) if a_list:
            pass
        case Stitches(place=Place() as place) as item if not a_list:
            number = one.number or 1
            plain = Stitches(number, one.of or item.stitch)
            if replace(item, place=None) not in (plain, replace(plain, count=1)):
                return None
        case _:
            return None
    return _of_a_copy(place, one.number)


def _of_a_copy(place: Place, number: int | None) -> Place | None:
    if place.which in (Which.NEXT, Which.THE) and place.targets:
        one_by_one = place.count > 1 and place.count == number
        if place.count == 1 or one_by_one:
            return Place(Which.NEXT, place.targets, place.count, span=place.span)
    if place.which is Which.EACH and place.targets and not place.each:
        return place
    return None
