"""How often a repeat goes `to the end of the scallop`, `round the fan`: as it has places.

The scallop is what the row below works into one place, or makes in a repeat with its own number
of times. Where that row has several that differ, or the steps do not come out on it, it is not
known.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence

from border.stitches import STITCHES
from border.text.tree import (
    ST,
    Begin,
    Between,
    Bracket,
    Chains,
    End,
    Item,
    Kind,
    Place,
    Repeat,
    Skip,
    StartChain,
    Stitches,
    Target,
    Text,
    Which,
    Whole,
)
from border.text.vocabulary import name_of
from border.text.wording.assumed import is_shell

Group = Counter[str]
"""What a scallop has: stitches by their US names, and spaces of 1, 2 … chains as `ch-1`, `ch-2`."""

_FEWEST = 4
"""Fewer are no scallop that is gone round."""
_LARGE = 9
_SPACES = ("space", "loop")


def group_of(text: Text | None) -> Group:
    """The one scallop that a row makes; empty where it makes none, or several that differ."""
    made = list(_groups(text.items)) if text is not None else []
    large = [group for group in made if not _is_small(group)]
    found = {tuple(sorted(group.items())) for group in large or made}
    return Counter(dict(found.pop())) if len(found) == 1 else Counter()


def _is_small(group: Group) -> bool:
    """Whether it is no more than a shell with chains between its halves."""
    chains = sum(count for name, count in group.items() if name.startswith("ch-"))
    return chains == 1 and group.total() - chains < _LARGE


def _groups(items: Sequence[Item]) -> Iterator[Group]:
    for n, item in enumerate(items):
        if not isinstance(item, Stitches | Bracket | Repeat):
            continue
        repeats = isinstance(item, Repeat) and item.times is not None
        group = _made([item])
        if repeats:
            group += _beside(reversed(items[:n]), group) + _beside(items[n + 1 :], group)
        stitches = [name for name in group if not name.startswith("ch-")]
        scallop = len(stitches) == 1 and group[stitches[0]] >= _FEWEST
        if scallop and (repeats or is_shell(item) or _in_each(item)):
            yield group
        elif not isinstance(item, Stitches):
            yield from _groups(item.items)


def _in_each(item: Item) -> bool:
    """`1 dc in each of the 9 dc`: on each of a scallop, which makes another."""
    return isinstance(item, Stitches) and item.place is not None and item.place.each


def _beside(items: Iterable[Item], group: Group) -> Group:
    """What stands right beside a repeat and is like its steps."""
    found: Group = Counter()
    for item in items:
        own: Group = Counter()
        match item:
            case StartChain(stands_for=str(stitch), then=then):
                own = Counter({stitch: 1, f"ch-{then}": int(then > 0)})
            case Stitches(count=1) | Chains():
                own = _made([item])
            case _:
                pass
        if isinstance(item, Chains) and set(own) - set(group):
            own = _first(item, group)  # `ch 4` at a row's head, as dc and ch 1
        if not own or set(+own) - set(group):
            break
        found += own
    return found


def _first(chains: Chains, group: Group) -> Group:
    """The stitch of a group worked as chains, with those of a space behind it."""
    for stitch in set(group) & set(STITCHES):
        space = f"ch-{chains.count - STITCHES[stitch].height}"
        if space in group:
            return Counter({stitch: 1, space: 1})
    return Counter()


def _made(items: Sequence[Item]) -> Group:
    group: Group = Counter()
    for item in items:
        match item:
            case Stitches():
                several = item.place.count if item.place is not None and item.place.each else 1
                group[item.stitch] += item.count * several
                if item.between:
                    group[f"ch-{item.between}"] += item.count - 1
            case Chains():
                group[f"ch-{item.count}"] += 1
            case Bracket() | Repeat():
                times = item.times if isinstance(item, Repeat) else 1
                for name, count in _made(item.items).items():
                    group[name] += count * (times or 1)
            case _:
                pass
    return group


def times_round(unit: Sequence[Item], before: Sequence[Item], group: Group) -> int | None:
    """How often such steps go round a group; `before`: the steps that stand before them, which
    may take its first places. None where that cannot be told, or does not come out."""
    kinds = {kind for item in (*unit, *before) if (kind := _kind(item, group)) is not None}
    if len(kinds) != 1 or "" in kinds:
        return None
    kind = kinds.pop()
    name, between = kind.removesuffix("|"), kind.endswith("|")
    places = group[name] - between - sum(map(_taken, before))
    each = sum(map(_taken, unit))
    return places // each if each > 0 and places > 0 and places % each == 0 else None


def written_group(group: Group, terms: str, overrides: tuple[tuple[str, str], ...]) -> str:
    """What a group has, in words: `9 dc`, `8 dc, 7 ch-1 spaces`."""
    return ", ".join(
        f"{count} {name} spaces"
        if name.startswith("ch-")
        else f"{count} {name_of(name, terms, overrides)}"
        for name, count in group.items()
    )


def _kind(item: Item, group: Group) -> str | None:
    """What a step goes into: a name of the group, with | for the gaps between such stitches; ""
    for anything else; None for a step that takes nothing."""
    match item:
        case Chains() | StartChain() | Begin() | End():
            return None
        case Stitches(place=None) | Skip(target=None):
            return _named(Whole(ST), group)
        case Skip(target=target):
            return _named(target, group)
        case (
            Stitches(place=Place(which=Which.NEXT | Which.THE | Which.FIRST, targets=(target,)))
            | Bracket(place=Place(which=Which.NEXT | Which.THE | Which.FIRST, targets=(target,)))
        ):
            return _named(target, group)
        case _:
            return ""


def _named(target: Target | None, group: Group) -> str:
    stitches = [name for name in group if not name.startswith("ch-")]
    spaces = [name for name in group if name.startswith("ch-")]
    match target:
        case Whole(of=Kind(name=name)) if name in stitches:
            return name
        case Between(of=Kind(name=name)) if name in stitches:
            return f"{name}|"
        case Whole(of=of) if of == ST and len(group) == 1:
            return stitches[0]
        case Whole(of=Kind(name=name, size=size)) if name in _SPACES:
            alike = [space for space in spaces if size is None or space == f"ch-{size}"]
            return alike[0] if len(alike) == 1 else ""
        case _:
            return ""


def _taken(item: Item) -> int:
    """How many places a step takes."""
    match item:
        case Skip():
            return item.count
        case Stitches(place=None):
            return item.count
        case Stitches(place=Place() as place) | Bracket(place=Place() as place):
            return place.count
        case _:
            return 0
