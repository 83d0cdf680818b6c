"""The vocabulary: the phrases of a border text, and the names of stitches by terms.

Read from `grammar/vocabulary.toml`, which says how its phrases are written.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterable
from functools import lru_cache
from itertools import product
from pkgutil import get_data
from typing import Any

from msgspec import Struct, field
from msgspec.structs import replace

TERMS = ("us", "uk", "early")
_PART = re.compile(r"\[([^\]]*)\]|(\S+)")

Phrase = tuple[str, ...]
"""The words of a phrase, lower case."""


class Entry(Struct, frozen=True):
    """What a phrase is: the terminal, and the name or the number that goes with it.

    `many`: a plural. `chain`: it speaks of chains (`chain space`).
    """

    terminal: str
    name: str = ""
    number: int = 0
    many: bool = False
    chain: bool = False


class Way(Struct):
    """How phrases go on behind a word: what one is that ends here, and what may come next."""

    entry: Entry | None = None
    further: Phrases = field(default_factory=dict)


Phrases = dict[str, Way]
"""Phrases by their first word, and then by each further one."""

Pattern = tuple[list[list[Phrase]], Entry]
"""What may stand one behind the other, `()` where it may be left out; and what it all is."""


class Vocabulary(Struct, frozen=True):
    """The words that mean the same in all terms, and each stitch's names in each.

    `patterns`: by each word that they can begin with. `asked`: names that no terms settle ->
    the stitch that they mostly are; `places_asked`: of things to work into -> what each
    mostly is. `copies`: what may stand behind a copied row, by what it says; `distances`: what a
    distance on cloth is made of; `squares`: the names of a space and of a block that are made.
    """

    patterns: dict[str, list[Pattern]]
    numbers: dict[str, int]
    ordinals: dict[str, int]
    times: dict[str, int]
    rows: dict[str, frozenset[str]]
    short: frozenset[str]
    modifiers: tuple[str, ...]
    expected: dict[str, str]
    stitches: dict[str, dict[str, list[str]]]
    asked: dict[str, str]
    places_asked: dict[str, list[str]]
    colours: dict[str, frozenset[str]]
    copies: dict[str, list[str]]
    distances: dict[str, list[str]]
    squares: dict[str, list[str]]


class Names(Struct, frozen=True):
    """The names of stitches under the stated terms and overrides.

    `known`: phrase -> canonical stitch. `elsewhere`: a phrase that only other
    terms have, or that none has, -> the stitch that it is there, or mostly is.
    `unsettled`: another name of a stitch one of whose names has been overridden
    -> that overridden name. `given`: a phrase whose meaning a heading gives -> the name there.
    """

    terms: str
    phrases: Phrases
    known: dict[Phrase, str]
    elsewhere: dict[Phrase, str]
    unsettled: dict[Phrase, str]
    given: dict[Phrase, str]


def _choices(pattern: str) -> list[list[Phrase]]:
    """What may stand one behind the other in a pattern."""
    choices: list[list[Phrase]] = []
    for optional, plain in _PART.findall(pattern):
        words = [part.split("|") for part in (optional or plain).split()]
        forms: list[Phrase] = list(product(*words))
        choices.append([(), *forms] if optional else forms)
    return choices


@lru_cache(maxsize=1024)
def phrases_from(word: str) -> tuple[tuple[Phrase, Entry], ...]:
    """The phrases of the vocabulary that begin with a word, longest first.

    A pattern can stand for thousands: only those that a text may have are made.
    """
    found: dict[Phrase, Entry] = {}
    for choices, entry in vocabulary().patterns.get(word, ()):
        for parts in product(*choices):
            form = tuple(w for part in parts for w in part)
            if form[0] == word:
                found[form] = _of_form(entry, form)
    return tuple(sorted(found.items(), key=lambda item: len(item[0]), reverse=True))


@lru_cache(maxsize=1024)
def ways_from(word: str) -> Phrases:
    """The phrases of the vocabulary that begin with a word, by their words."""
    return ways(phrases_from(word))


def ways(phrases: Iterable[tuple[Phrase, Entry]]) -> Phrases:
    """Phrases by their words."""
    found: Phrases = {}
    for phrase, entry in phrases:
        further = found
        for word in phrase:
            way = further.setdefault(word, Way())
            further = way.further
        way.entry = entry
    return found


def _of_form(entry: Entry, form: Phrase) -> Entry:
    return replace(entry, many=form[-1].endswith("s")) if entry.terminal == "KIND" else entry


def _first_words(choices: list[list[Phrase]]) -> set[str]:
    """The words that a pattern can begin with."""
    words: set[str] = set()
    for forms in choices:
        words |= {form[0] for form in forms if form}
        if () not in forms:
            break
    return words


@lru_cache(maxsize=1)
def vocabulary() -> Vocabulary:
    """The vocabulary, read once."""
    data = get_data("border.grammar", "vocabulary.toml")
    assert data is not None
    table: dict[str, Any] = tomllib.loads(data.decode())
    meant = [(p, Entry(terminal)) for terminal, ps in table["words"].items() for p in ps]
    for name, patterns in table["kinds"].items():
        chain, kind = name.startswith("chain_"), name.removeprefix("chain_")
        meant += [(p, Entry("KIND", kind, chain=chain)) for p in patterns]
    for part, terminal in (("modifiers", "MOD"), ("endings", "ENDING")):
        meant += [(p, Entry(terminal, name)) for name, ps in table[part].items() for p in ps]
    found: dict[str, list[Pattern]] = {}
    for pattern, entry in meant:
        choices = _choices(pattern)
        for word in _first_words(choices):
            found.setdefault(word, []).append((choices, entry))
    return Vocabulary(
        found,
        table["numbers"],
        table["ordinals"],
        table["times"],
        {name: frozenset(words) for name, words in table["rows"].items()},
        frozenset(table["short"]["words"]),
        tuple(table["modifiers"]),
        table["expected"],
        table["stitches"],
        table["stitches_asked"],
        table["places_asked"],
        _colours(table["colours"]),
        table["copies"],
        table["distances"],
        table["squares"],
    )


@lru_cache(maxsize=16)
def said_of_copies(what: str) -> tuple[Phrase, ...]:
    """The phrases of one kind that stand behind a copied row, longest first."""
    return _spelt(vocabulary().copies[what])


@lru_cache(maxsize=16)
def said_of_distances(what: str) -> tuple[Phrase, ...]:
    """The phrases of one kind of which a distance on cloth is made, longest first."""
    return _spelt(vocabulary().distances[what])


@lru_cache(maxsize=1)
def squares_by_name() -> tuple[tuple[Phrase, str], ...]:
    """The names of squares that are made, longest first, and which each is: space or block."""
    table = vocabulary().squares
    found = [(phrase, kind) for kind, patterns in table.items() for phrase in _spelt(patterns)]
    return tuple(sorted(found, key=lambda one: -len(one[0])))


def _spelt(patterns: list[str]) -> tuple[Phrase, ...]:
    """All phrases that some patterns stand for, longest first."""
    spelt = (product(*_choices(pattern)) for pattern in patterns)
    found = {tuple(w for part in parts for w in part) for forms in spelt for parts in forms}
    return tuple(sorted(found, key=lambda phrase: (-len(phrase), phrase)))


def _colours(table: dict[str, list[str]]) -> dict[str, frozenset[str]]:
    """The words of a colour; `opens`: with which one can begin."""
    opens = ["the", *table["by"], *table["before"], *table["colour"]]
    return {name: frozenset(words) for name, words in (table | {"opens": opens}).items()}


def opens_one(word: str, *terminals: str) -> bool:
    """Whether a phrase for one of these terminals begins with a word: `miss` for SKIP."""
    return any(entry.terminal in terminals for _, entry in phrases_from(word))


def is_colour(word: str) -> bool:
    """Whether a word belongs to a colour: `scarlet`, `lightest`, `wool`."""
    colours = vocabulary().colours
    return any(word in colours[part] for part in ("colour", "before", "behind", "aside"))


def plural(word: str) -> str:
    """The plural of a stitch's name: `treble` -> `trebles`, `slip stitch` -> `slip stitches`."""
    return word + ("es" if word.endswith(("ch", "ss")) else "s")


def _spoken(name: str) -> list[Phrase]:
    """A stitch's name in all its forms: plural, and with `crochet` or `stitch` behind it."""
    words = [name, plural(name)] if name != "s" else [name]  # `ss` is a slip stitch
    words += [f"{name[:-1]}ves"] if name.endswith("leaf") else []
    if name.endswith(" st"):
        words.append(name[:-2] + "sts")
    else:
        behind = ("crochet", "crochets", "stitch", "stitches", "st", "sts")
        words += [f"{name} {b}" for b in behind]
        words += [f"{name} crochet {b}" for b in behind[2:]]
    return [tuple(w.split()) for w in words]


@lru_cache(maxsize=32)
def names(terms: str, overrides: tuple[tuple[str, str], ...] = ()) -> Names:
    """The names of stitches in `terms`, with `overrides` (name as written, canonical stitch)."""
    stitches = vocabulary().stitches
    overridden = dict(overrides)
    known: dict[Phrase, str] = {}
    unsettled: dict[Phrase, str] = {}
    elsewhere: dict[Phrase, str] = {}
    for stitch, by_terms in stitches.items():
        for other in TERMS:
            for name in by_terms[other]:
                for form in _spoken(name):
                    elsewhere.setdefault(form, stitch)
        own = by_terms[terms]
        moved = next((n for n in own if overridden.get(n, stitch) != stitch), None)
        for name in own:
            for form in _spoken(name):
                known[form] = stitch
                if moved is not None and name not in overridden:
                    unsettled[form] = moved
    for name, stitch in vocabulary().asked.items():
        for form in _spoken(name):
            elsewhere.setdefault(form, stitch)
    given: dict[Phrase, str] = {}
    for name, stitch in (*_cut_short(overrides), *_respelt(overrides), *overrides):
        for form in _spoken(name):
            known[form] = stitch
            given[form] = name
            unsettled.pop(form, None)
    entries = {f: _entry(f, s) for f, s in (elsewhere | known).items()}
    elsewhere = {f: s for f, s in elsewhere.items() if f not in known}
    return Names(terms, ways(entries.items()), known, elsewhere, unsettled, given)


def _cut_short(overrides: tuple[tuple[str, str], ...]) -> list[tuple[str, str]]:
    """`long stitch` overridden is `long` as well, and `l`, which no terms settle."""
    asked = vocabulary().asked
    short = [(name.removesuffix(" stitch"), stitch) for name, stitch in overrides]
    short += [("l", stitch) for name, stitch in short if name == "long"]
    return [(name, stitch) for name, stitch in short if name in asked]


def _respelt(overrides: tuple[tuple[str, str], ...]) -> list[tuple[str, str]]:
    """`dc` overridden is `d c` as well, and the other way round: `d.c.`, `d. c.` are one thing."""
    found: list[tuple[str, str]] = []
    for name, stitch in overrides:
        letters = name.replace(" ", "")
        if len(letters) != 2 or not letters.isalpha():
            continue
        other = " ".join(letters) if letters == name else letters
        if (other,) not in dict(phrases_from(letters)):  # `s t means hdc` leaves `st` alone
            found.append((other, stitch))
    return found


def _entry(form: Phrase, meaning: str) -> Entry:
    """What a name is: mostly a stitch; by an override also chains, a picot, or a place."""
    if meaning in vocabulary().stitches:
        return Entry("STITCH", meaning)
    if meaning in ("ch", "picot"):
        return Entry(meaning.upper())
    size, _, sized = meaning.removeprefix("ch-").partition(" ")
    many = form[-1].endswith("s")
    return Entry("KIND", sized or meaning, int(size) if sized else 0, many=many)


def name_of(stitch: str, terms: str, overrides: tuple[tuple[str, str], ...] = ()) -> str:
    """How a stitch is written in `terms`; its US name where these terms have none."""
    if stitch == "ch":
        return "ch"
    table = names(terms, overrides)
    candidates = [*vocabulary().stitches[stitch][terms], *(name for name, _ in overrides)]
    for name in candidates:
        form = tuple(name.split())
        if table.known.get(form) == stitch and form not in table.unsettled:
            return name
    us = vocabulary().stitches[stitch]["us"]
    return us[1] if len(us) > 1 and stitch != "ss" else us[0]


def has_name(stitch: str, terms: str, overrides: tuple[tuple[str, str], ...] = ()) -> bool:
    """Whether a stitch can be written in `terms`."""
    form = tuple(name_of(stitch, terms, overrides).split())
    return names(terms, overrides).known.get(form) == stitch
