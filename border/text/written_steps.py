"""Steps are written out: stitches, brackets, repeats, and lists of them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import assert_never

from msgspec.structs import replace

from border.text.steps import OPEN_PLACES
from border.text.tree import (
    Arch,
    AsTheyCome,
    Begin,
    Bracket,
    Chains,
    End,
    Exchanged,
    Item,
    Kind,
    Moved,
    Named,
    Picots,
    Place,
    Repeat,
    Skip,
    StartChain,
    Stitches,
    Target,
    Variation,
    Where,
    Which,
    Whole,
)
from border.text.vocabulary import name_of, plural
from border.text.written_places import (
    Overrides,
    write_kind,
    write_ordinal,
    write_place,
    write_target,
)

_SIDES = ("back", "front", "both")


def write_list(items: Sequence[Item], terms: str, overrides: Overrides = ()) -> str:
    """Steps one after the other; a semicolon where a comma would leave two readings."""
    written = ""
    bare = chains = False
    before: Item | None = None
    for item in items:
        place = item.place if isinstance(item, Stitches | Bracket) else None
        placed = place is not None and place.which not in (Which.SAME, Which.SKIPPED)
        parts = placed and (bare or (chains and place is not None and place.which in OPEN_PLACES))
        parts = parts or (chains and may_close(item)) or _all_of_both(before, item)
        text = write_item(item, terms, overrides)
        if not written:
            written = text
        else:
            written += f"{';' if parts else ','} {text}"
        match item:
            case Chains() | Picots():
                chains = chains or isinstance(item, Chains)
            case Stitches(place=None):
                bare = True
            case Repeat(items=inner, times=1, star=False) if all(map(_is_unplaced, inner)):
                bare = bare or any(isinstance(one, Stitches) for one in inner)
            case _:
                bare = chains = False
        before = before if isinstance(item, Skip) else item
    return written


def _all_of_both(before: Item | None, item: Item) -> bool:
    """Whether `all together`, behind a step, may be said of the one before it as well."""
    match before, item:
        case Stitches(stitch=stitch, place=Place()), Stitches(stitch=again, together=True):
            return stitch == again
        case _:
            return False


def _is_unplaced(item: Item) -> bool:
    """Whether a step of a figure has no place: such a figure is listed with the steps round it."""
    return isinstance(item, Chains | Picots) or (isinstance(item, Stitches) and item.place is None)


def may_close(item: Item) -> bool:
    """Whether a step may close the chains before it into a picot: `1 sl st in first ch`."""
    match item:
        case Stitches(1, "sc" | "ss", Place(Which.FIRST, (Whole(Kind("ch")),), 1)):
            return True
        case _:
            return False


def write_item(item: Item, terms: str, overrides: Overrides = ()) -> str:
    """One step: `2 dc in next space`, `skip 1 st`, `* … ; repeat from *`."""
    match item:
        case Chains(count):
            return f"ch {count}"
        case Skip(count, target):
            if target is None:
                return f"skip {count}"
            return f"skip {_skipped(count, target, terms, overrides)}"
        case Stitches():
            return _write_stitches(item, terms, overrides)
        case Picots(count, size):
            return f"{count} picots of {size}" if count > 1 else f"picot of {size}"
        case StartChain():
            return _start_chain(item, terms, overrides)
        case Bracket():
            return _bracket(item, terms, overrides)
        case AsTheyCome():
            return _as_they_come(item, terms, overrides)
        case Arch():
            return _arch(item, terms, overrides)
        case Repeat():
            return _repeat(item, terms, overrides)
        case Begin(place):
            return f"begin {write_place(place, terms, overrides)}"
        case End(what):
            return what.value
        case _:
            assert_never(item)


def _skipped(count: int, target: Target, terms: str, overrides: Overrides) -> str:
    if isinstance(target, Whole):
        return f"{count} {write_kind(target.of, terms, count > 1, overrides)}"
    place = Place(Which.NEXT, (target,), count)
    return write_place(place, terms, overrides).removeprefix("in ")


def _write_stitches(item: Stitches, terms: str, overrides: Overrides) -> str:
    name = name_of(item.stitch, terms, overrides)
    if item.cluster:
        name = f"{item.cluster}-{name} cluster{'s' if item.count > 1 else ''}"
    elif item.count > 1 and len(name) > 6:
        name = plural(name)
    written = f"{item.count} {name}"
    each = item.place is not None and (item.place.each or item.place.which in OPEN_PLACES)
    if item.between:
        comma = "," if item.place is not None and not (item.together and not each) else ""
        written += f", with ch {item.between} between{comma}"
    if item.together and not each:
        written += " together"
    if item.place is not None:
        over = item.together and not each
        written += f" {write_place(item.place, terms, overrides, over)}"
    for modifier in item.modifiers:
        written += f" in {modifier}" if modifier.split(" ")[0] in _SIDES else f" {modifier}"
    if item.together and each:
        written += ", all together"
    if item.parted:
        written += f", with ch {item.parted} between"
    return written


def _start_chain(item: StartChain, terms: str, overrides: Overrides) -> str:
    if item.stands_for is None:
        return f"ch {item.count}, not counted"
    written = f"ch {item.count} as {name_of(item.stands_for, terms, overrides)}"
    if item.then:
        written += f" and ch {item.then}"
    if item.place is not None:
        written += f" {write_place(item.place, terms, overrides)}"
    return written


def _bracket(item: Bracket, terms: str, overrides: Overrides) -> str:
    match item.items:
        case (Repeat(inner, int() as times, None, False),):
            times_words = "once" if times == 1 else f"{times} times"
            written = f"({write_list(inner, terms, overrides)}) {times_words}"
        case _:
            written = f"({write_list(item.items, terms, overrides)})"
    written += f" {write_place(item.place, terms, overrides)}"
    if item.parted:
        written += f", with ch {item.parted} between"
    return written


def _as_they_come(item: AsTheyCome, terms: str, overrides: Overrides) -> str:
    each = [
        replace(part, place=replace(part.place, which=Which.EACH))
        for part in item.items
        if part.place
    ]
    written = f"({write_list(each, terms, overrides)}) as they come"
    return f"{written}, with ch {item.parted} between" if item.parted else written


def _arch(item: Arch, terms: str, overrides: Overrides) -> str:
    fastens = write_item(Stitches(1, item.stitch), terms, overrides)
    place = Place(Which.THE, (Whole(Kind("arch")),))
    match item.items:
        case (Stitches() as only,):
            filling: Item = replace(only, place=place)
        case several:
            filling = Bracket(several, place)
    filled = write_item(filling, terms, overrides)
    back = f"{write_ordinal(item.back)} st from hook"
    return f"turn, ch {item.chains}, {fastens} in {back}, turn, {filled}"


def _repeat(item: Repeat, terms: str, overrides: Overrides) -> str:
    inner = write_list(item.items, terms, overrides)
    last = ""
    if item.to_last is not None:
        count = item.to_last.count
        last = f" to last {count} {write_target(item.to_last.of, terms, count > 1, overrides)}"
    if item.star:
        times = f" {item.times} times in all" if item.times is not None else last
        return f"*{' ' if inner.startswith('*') else ''}{inner}; repeat from *{times}"
    if item.times is None:
        return f"({inner}){last or ' to end'}"
    if item.times > 1:
        return f"({inner}) {item.times} times"
    # "(3 dc)" alone at the end of a row would be a claim.
    could_be_claim = all(isinstance(i, Stitches | Chains | Picots) for i in item.items)
    return f"({inner}) once" if could_be_claim else f"({inner})"


def write_difference(one: Variation, terms: str, overrides: Overrides = ()) -> str:
    """What a copy has otherwise: `ch 7 instead of ch 5`, `omitting 3 dc in the groups`."""
    match one:
        case Moved(named, place):
            what = f"the {write_named(named, terms, overrides)} " if named else ""
            return f"working {what}{write_place(place, terms, overrides)}"
        case Exchanged(stitch, old):
            return (
                f"{name_of(stitch, terms, overrides)} instead of {name_of(old, terms, overrides)}"
            )
    where = f" {one.where.value}" if one.where is not Where.ALL else ""
    if not one.number:
        return f"omitting {made(one.of, one.instead_of, terms, overrides)}{where}"
    written = made(one.of, one.number, terms, overrides) + where
    if one.instead_of is None:
        return written
    return f"{written} instead of {made(one.of, one.instead_of, terms, overrides)}"


def write_named(named: Sequence[Named], terms: str, overrides: Overrides = ()) -> str:
    """What a copied row makes: `3 dc, ch 3, 3 dc`, `dc`."""
    return ", ".join(made(one.of, one.number, terms, overrides) for one in named)


def made(of: str, number: int | None, terms: str, overrides: Overrides = ()) -> str:
    """So many of what a row makes, or any number of it: `ch 5`, `3 dc`, `picots of 4`."""
    if of == "ring":
        return f"picots of {number}"
    if of == "ch":
        return "ch" if number is None else f"ch {number}"
    name = of if of == "picot" else name_of(of, terms, overrides)
    many = number != 1 and (of == "picot" or len(name) > 6)
    return f"{'' if number is None else f'{number} '}{plural(name) if many else name}"
