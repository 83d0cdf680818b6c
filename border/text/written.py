"""The tree as text again, in any terms; read back, it gives the same tree."""

from __future__ import annotations

from typing import assert_never

from border.text.steps import OPEN_PLACES, walk
from border.text.tree import (
    AtJoint,
    AtJoints,
    Begin,
    Between,
    BetweenPicots,
    Border,
    Bracket,
    Centre,
    Chains,
    Claim,
    Copy,
    Elsewhere,
    End,
    Headings,
    Item,
    Kind,
    Over,
    OverMotifs,
    Part,
    Picots,
    Place,
    Repeat,
    Row,
    Scope,
    Skip,
    StartChain,
    Stitches,
    Target,
    Text,
    ToLast,
    Which,
    Whole,
)
from border.text.vocabulary import has_name, name_of

_NAMES = {"st": ("st", "st"), "ch": ("ch", "ch")}
_KINDS = ("loop", "space", "group", "block", "picot", "joint")


def ordinal(n: int) -> str:
    """1 -> `first`, -1 -> `last`, 3 -> `3rd`."""
    if n in (1, -1):
        return "first" if n == 1 else "last"
    tail = "th" if 10 <= n % 100 <= 20 else {1: "st", 2: "nd", 3: "rd"}.get(n % 10, "th")
    return f"{n}{tail}"


def stitch_name(stitch: str, terms: str) -> str:
    """A stitch in these terms (its US name where they have none)."""
    return name_of(stitch, terms)


def write_kind(kind: Kind, terms: str, plural: bool = False) -> str:
    """A kind of site: `ch-5 space`, `groups of 3`."""
    s = "s" if plural else ""
    match kind:
        case Kind(name="st" | "ch" as name):
            return _NAMES[name][plural]
        case Kind(name="loop" | "space" as name, size=int(size)):
            return f"ch-{size} {name}{s}"
        case Kind(name=name, size=int(size), stitch=str(stitch)):
            return f"{size}-{name_of(stitch, terms)} {name}{s}"
        case Kind(name=name, size=int(size)):
            return f"{name}{s} of {size}"
        case Kind(name=name) if name in _KINDS:
            return name + s
        case _:
            return name_of(kind.name, terms)


# --- places -------------------------------------------------------------------


def _which(place: Place) -> str:
    """The words that say which, with a blank behind; and the number of them."""
    of = "each of the " if place.each else ""
    number = f"{place.count} " if place.count > 1 else ""
    match place.which:
        case Which.NEXT:
            the = "the " if place.count > 1 and not of else ""
            return f"{of}{the}next {number}"
        case Which.FIRST | Which.LAST | Which.CENTRE:
            return f"{of}{place.which} {number}"
        case Which.NTH:
            return f"{ordinal(place.count)} "
        case Which.EVERY:
            return f"every {ordinal(place.count)} "
        case Which.SKIPPED:
            return "the skipped "
        case Which.THE | Which.EACH | Which.SAME:
            return f"{place.which} "
        case _:
            assert_never(place.which)


def _member(target: Target, place: Place, terms: str) -> str:
    which = _which(place)
    many = place.count > 1 and place.which not in (Which.NTH, Which.EVERY)
    of = write_kind(target.of, terms, many)
    match target:
        case Whole():
            return which + of
        case Part(nth=nth, unit=unit):
            return f"{ordinal(nth)} {write_kind(unit, terms)} of {which}{of}"
        case Centre():
            return f"centre of {which}{of}"
        case Between():
            return f"between {which}2 {write_kind(target.of, terms, True)}"
        case BetweenPicots():
            return f"between the picots of {which}{of}"
        case _:
            assert_never(target)


def write_place(place: Place, terms: str, preposition: str = "in") -> str:
    """A place with its preposition: `in each of the next 3 spaces`."""
    if not place.targets:
        return f"{preposition} same place"
    union = " or ".join(_member(target, place, terms) for target in place.targets)
    between = isinstance(place.targets[0], Between | BetweenPicots)
    return union if between else f"{preposition} {union}"


# --- steps --------------------------------------------------------------------


def write_item(item: Item, terms: str) -> str:
    """One step."""
    match item:
        case Chains(count=count):
            return f"ch {count}"
        case Skip():
            return _skip(item, terms)
        case Stitches():
            return _stitches(item, terms)
        case Picots(count=count, chains=chains):
            number = f"{count} picots" if count > 1 else "picot"
            return number if chains == 3 else f"{number} of {chains}"
        case StartChain():
            return _start_chain(item, terms)
        case Bracket(items=items, place=place, parted=parted):
            between = f", with ch {parted} between" if parted else ""
            return f"({_steps(items, terms)}) {write_place(place, terms)}{between}"
        case Repeat():
            return _repeat(item, terms)
        case Begin(place=place):
            return f"begin {write_place(place, terms)}"
        case End(what=what):
            return str(what)
        case _:
            assert_never(item)


def _skip(item: Skip, terms: str) -> str:
    match item.target:
        case None:
            return f"skip {item.count}"
        case Whole(of=of):
            return f"skip {item.count} {write_kind(of, terms, item.count > 1)}"
        case target:
            return f"skip {_member(target, Place(Which.NEXT, (target,), item.count), terms)}"


def _stitches(item: Stitches, terms: str) -> str:
    name = name_of(item.stitch, terms)
    made = f"{item.count} {name}"
    if item.cluster:
        made = f"{item.cluster}-{name} cluster"
        made = f"{item.count} {made}s" if item.count > 1 else f"1 {made}"
    made += "".join(f" in {m}" if "loop" in m or "thread" in m else f" {m}" for m in item.modifiers)
    if item.between:
        made += f", with ch {item.between} between" + ("," if item.place else "")
    over = item.together and item.place is not None and not item.place.each
    over = over and item.place is not None and item.place.which not in OPEN_PLACES
    if item.together and (over or item.place is None):
        made += " together"
    if item.place is not None:
        made += " " + write_place(item.place, terms, "over" if over else "in")
    if item.together and item.place is not None and not over:
        made += ", all together"
    if item.parted:
        made += f", with ch {item.parted} between"
    return made


def _start_chain(item: StartChain, terms: str) -> str:
    if item.stands_for is None:
        return f"ch {item.count}, not counted"
    place = f" {write_place(item.place, terms)}" if item.place else ""
    then = f" and ch {item.then}" if item.then else ""
    return f"ch {item.count} as {name_of(item.stands_for, terms)}{place}{then}"


def _repeat(item: Repeat, terms: str) -> str:
    steps = _steps(item.items, terms)
    last = f" {_to_last(item.to_last, terms)}" if item.to_last else ""
    if item.star:
        times = f" {item.times} times in all" if item.times is not None else last
        return f"*{steps}; repeat from *{times}"
    if item.times is None:
        return f"({steps}){last or ' to end'}"
    return f"({steps}) {item.times} times" if item.times > 1 else f"({steps})"


def _to_last(to_last: ToLast, terms: str) -> str:
    match to_last.of:
        case Whole(of=of):
            return f"to last {to_last.count} {write_kind(of, terms, to_last.count > 1)}"
        case target:
            return f"to last {to_last.count} {_member(target, Place(Which.NEXT, ()), terms)}"


def _steps(items: tuple[Item, ...], terms: str) -> str:
    """Steps with separators such that no list before a place is left open."""
    text = ""
    bare = chains = False
    for n, item in enumerate(items):
        placed = isinstance(item, Stitches | Bracket) and item.place is not None
        opens = placed and item.place.which in OPEN_PLACES  # type: ignore[union-attr]
        if n:
            text += "; " if placed and (bare or (opens and chains)) else ", "
        text += write_item(item, terms)
        loose = isinstance(item, Chains | Picots) or (isinstance(item, Stitches) and not placed)
        bare = loose and (bare or isinstance(item, Stitches))
        chains = isinstance(item, Chains)
    return text


def write_text(text: Text, terms: str) -> str:
    """The steps of a row or a clause."""
    if not text.items and not text.ends:
        return "leave unworked"
    steps = _steps(text.items, terms)
    tail = [str(end.what) for end in text.ends]
    return ", ".join([s for s in (steps, "repeat" if text.repeats else "", *tail) if s])


# --- rows and headings ----------------------------------------------------------


def _scope(scope: Scope) -> str:
    match scope:
        case OverMotifs(name=None):
            return "over each motif"
        case OverMotifs(name=name):
            return f"over each motif of {name}"
        case Over(name=name):
            return f"over {name}"
        case Elsewhere(each_motif=each):
            return "elsewhere, over each motif" if each else "elsewhere"
        case AtJoints():
            return "at each joint"
        case AtJoint(a=a, b=b):
            return f"at joint {a} | {b}"
        case _:
            assert_never(scope)


def _numbers(numbers: tuple[int, ...]) -> str:
    told = [str(n) for n in numbers]
    if len(told) == 1:
        return f"round {told[0]}"
    return f"rounds {', '.join(told[:-1])} and {told[-1]}"


def _copy(copy: Copy) -> str:
    file = f' of "{copy.file}"' if copy.file else ""
    if copy.times == 1:
        words = f"as {_numbers(copy.rows)}{file}"
    else:
        words = f"repeat {_numbers(copy.rows)}{file} {copy.times} times"
    return ", ".join([words, *(str(end.what) for end in copy.ends)])


def _claims(claims: tuple[Claim, ...], terms: str) -> str:
    told = [
        f"{c.count} {write_kind(c.of, terms, c.count != 1) if c.of else 'repeats'}" for c in claims
    ]
    return f" ({', '.join(told)})" if told else ""


def write_row(row: Row, terms: str) -> str:
    """A row with its head and claims, on one line (clauses on a line each)."""
    match row.body:
        case Text() as text:
            body = write_text(text, terms)
        case Copy() as copy:
            body = _copy(copy)
        case clauses:
            body = ";\n    ".join(
                f"{_scope(c.scope)}: {write_text(c.text, terms)}" for c in clauses
            )
    return f"{_numbers(row.numbers)}: {body}.{_claims(row.claims, terms)}"


def _headings(h: Headings, terms: str, border: Border) -> list[str]:
    lines = [f"border: {h.name}"] if h.name else []
    lines.append(f"terms: {terms}")
    for words, value, yes, no in (
        ("chains count as stitches", h.chains_count, "yes", "no"),
        ("repeats", h.in_all, "in all", "more"),
        ("rows without a repeat", h.rows_repeated, "are repeated", "once"),
    ):
        if value is not None:
            lines.append(f"{words}: {yes if value else no}")
    lines += [f"worked: {h.worked}"] if h.worked else []
    lines += ["bare stitches: one in each"] if h.bare_in_each else []
    if h.multiple:
        plus = f" plus {h.multiple.plus}" if h.multiple.plus else ""
        lines.append(f"multiple of {h.multiple.multiple}{plus}")
    missing = (s for s in _stitches_used(border) if not has_name(s, terms))
    lines += [f"{name_of(s, terms)} means us {name_of(s, 'us')}" for s in missing]
    return lines


def _stitches_used(border: Border) -> list[str]:
    used: dict[str, None] = {}
    for row in border.rows:
        texts: list[Text] = []
        if isinstance(row.body, Text):
            texts = [row.body]
        elif not isinstance(row.body, Copy):
            texts = [clause.text for clause in row.body]
        for text in texts:
            for item in walk(text.items):
                if isinstance(item, Stitches):
                    used[item.stitch] = None
    return list(used)


def write_border(border: Border, terms: str | None = None) -> str:
    """A border in its own terms or in others. Names given by overrides are written out."""
    terms = terms or border.headings.terms or "us"
    lines = _headings(border.headings, terms, border)
    rows = [write_row(row, terms) for row in border.rows]
    return "\n".join([*lines, "", *rows, ""])
