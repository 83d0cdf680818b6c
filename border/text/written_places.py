"""Places and kinds are written out, in any terms."""

from __future__ import annotations

from typing import assert_never

from border.text.tree import (
    AtOnce,
    Between,
    BetweenPicots,
    Centre,
    Kind,
    Part,
    Place,
    Target,
    Which,
    Whole,
)
from border.text.vocabulary import name_of
from border.text.vocabulary import plural as in_plural

Overrides = tuple[tuple[str, str], ...]


def write_kind(kind: Kind, terms: str, plural: bool = False, overrides: Overrides = ()) -> str:
    """A kind of site: `space`, `ch-5 spaces`, `3-dc group`, `st`."""
    name = kind.name
    if name in ("st", "ch", "arch"):
        return name
    if name == "run":
        noun = in_plural(name) if plural else name
        of = f" {stitch_of(kind, terms, overrides)}" if kind.stitch is not None else ""
        return f"{noun} of {kind.size}{of}"
    if name == "space" and kind.stitch is not None:
        chains = "chain" if kind.size is None else f"ch-{kind.size}"
        noun = in_plural(name) if plural else name
        return f"{chains} {noun} between {stitch_of(kind, terms, overrides)}"
    if name in ("loop", "space", "group", "shell", "block", "picot", "joint"):
        noun = in_plural(name) if plural else name
        if kind.size is None:
            whole = kind.stitch is None
            return noun if whole else f"{noun} of {stitch_of(kind, terms, overrides)}"
        if name in ("loop", "space"):
            return f"ch-{kind.size} {noun}"
        if kind.stitch is None:
            return f"{noun} of {kind.size}"
        return f"{kind.size}-{stitch_of(kind, terms, overrides)} {noun}"
    stitch = name_of(name, terms, overrides)
    return in_plural(stitch) if plural and len(stitch) > 6 else stitch


def _parted(kind: Kind, terms: str, plural: bool, overrides: Overrides) -> str:
    """A kind that a part is of, where `ch` by itself would be a loop of chains."""
    if kind.name == "ch":
        return "chain stitches" if plural else "chain stitch"
    return write_kind(kind, terms, plural, overrides)


def stitch_of(kind: Kind, terms: str, overrides: Overrides) -> str:
    """The name of the stitch that a group, block or run is made of."""
    assert kind.stitch is not None
    return name_of(kind.stitch, terms, overrides)


def write_ordinal(nth: int) -> str:
    """`1st`, `2nd`, `12th`; `last` for -1, `first` for 1."""
    if nth in (1, -1):
        return "first" if nth == 1 else "last"
    ending = {1: "st", 2: "nd", 3: "rd"}.get(nth % 10 if nth % 100 not in (11, 12, 13) else 0, "th")
    return f"{nth}{ending}"


def write_place(place: Place, terms: str, overrides: Overrides = (), over: bool = False) -> str:
    """A place with the word that opens it: `in next space`, `over next 3 st`."""
    if not place.targets:
        return "in same place"
    first, *others = place.targets
    written = [_member(place, first, terms, overrides)]
    for target in others:
        if isinstance(target, Whole):
            many = place.count > 1 and place.which not in (Which.NTH, Which.EVERY)
            written.append(write_kind(target.of, terms, many, overrides))
        else:
            written.append(_member(place, target, terms, overrides))
    text = " or ".join(written)
    if text.startswith("between "):
        return text
    return f"{'over' if over else 'in'} {text}"


def write_target(target: Target, terms: str, many: bool, overrides: Overrides = ()) -> str:
    """A target without which of them: `spaces`, `centre of block`."""
    match target:
        case Whole(kind):
            return write_kind(kind, terms, many, overrides)
        case Part(nth, unit, kind):
            of = _parted(kind, terms, many, overrides)
            return f"{write_ordinal(nth)} {write_kind(unit, terms, overrides=overrides)} of {of}"
        case Centre(kind):
            return f"centre of {_parted(kind, terms, many, overrides)}"
        case Between(kind):
            return f"between 2 {write_kind(kind, terms, True, overrides)}"
        case BetweenPicots(kind):
            return f"between the picots of {write_kind(kind, terms, many, overrides)}"
        case AtOnce(number, kind):
            return f"{number} {write_kind(kind, terms, True, overrides)} at once"
        case _:
            assert_never(target)


def _member(place: Place, target: Target, terms: str, overrides: Overrides) -> str:
    match target:
        case Whole(kind):
            return _sites(place, kind, terms, overrides)
        case Part(nth, unit, kind):
            part = f"{write_ordinal(nth)} {write_kind(unit, terms, overrides=overrides)}"
            return f"{part} of {_sites(place, kind, terms, overrides, parted=True)}"
        case Centre(kind):
            return f"centre of {_sites(place, kind, terms, overrides, parted=True)}"
        case AtOnce():
            article = "" if place.which in (Which.EACH, Which.THE) else "the "
            return f"{article}{place.which.value} {write_target(target, terms, True, overrides)}"
        case BetweenPicots(kind):
            return f"between the picots of {_sites(place, kind, terms, overrides)}"
        case Between(kind):
            simple = (Which.NEXT, Which.FIRST, Which.LAST, Which.EACH)
            if place.which in simple and place.count == 1 and not place.each:
                noun = write_kind(kind, terms, True, overrides)
                return f"between {place.which.value} 2 {noun}"
            return f"between {_sites(place, kind, terms, overrides, pair=True)}"
        case _:
            assert_never(target)


def _sites(
    place: Place,
    kind: Kind,
    terms: str,
    overrides: Overrides,
    pair: bool = False,
    parted: bool = False,
) -> str:
    """`next 3 blocks`, `2nd space`, `each of the first 2 pairs of dc`; or what a part is of."""
    counted = place.which not in (Which.NTH, Which.EVERY)
    many = counted and (place.count > 1 or place.each)
    named = _parted if parted else write_kind
    noun = named(kind, terms, many or pair, overrides)
    if pair:
        noun = f"{'pairs' if many else 'pair'} of {noun}"
    number = f"{place.count} " if many else ""
    match place.which:
        case Which.NTH:
            return f"{write_ordinal(place.count)} {noun}"
        case Which.EVERY:
            return f"every {write_ordinal(place.count)} {noun}"
        case Which.NEXT | Which.FIRST | Which.LAST | Which.CENTRE:
            article = "each of the " if place.each else "the " if place.count > 1 else ""
            return f"{article}{place.which.value} {number}{noun}"
        case Which.THE | Which.EACH | Which.SAME:
            return f"{place.which.value} {noun}"
        case Which.SKIPPED:
            return f"the skipped {noun}"
        case _:
            assert_never(place.which)
