"""The stitches that a list has made so far, counted back from the hook.

Chains that are fastened back go into one of them, named as the 9th from the hook, the 4th of
the 8, or the 4th of the first loop.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from border.text.tree import (
    SPACES,
    Arch,
    AsTheyCome,
    Bracket,
    Chains,
    Item,
    Picots,
    Repeat,
    Skip,
    Stitches,
    Which,
)

FASTENED_BACK = (
    "where chains are fastened back, count the stitch from the hook, the last one made being the "
    'first, and say what fills them: "turn, ch 8, 1 sl st in 9th st from hook, turn, 11 dc in the '
    'arch"'
)

_ONE = (Which.NTH, Which.SAME, Which.SKIPPED)
_MOST = 500
"""So many runs of stitches in one place are looked through."""

Runs = list[tuple[str, int]]
"""Stitches one after the other: a name, and how many."""


class Made(Struct, frozen=True):
    """What a step has made: the `runs` of one place, so many `places` over. `behind`: how many
    stitches were made after it. `in_space`: its places are spaces."""

    runs: Runs
    places: int
    behind: int
    in_space: bool = False

    @property
    def each(self) -> int:
        return sum(n for _, n in self.runs)

    @property
    def all(self) -> int:
        return self.each * self.places

    def only(self, stitch: str | None) -> bool:
        return stitch is None or all(name == stitch for name, _ in self.runs)


def made_before(items: Sequence[Item], end: int) -> tuple[list[Made], bool]:
    """What the steps before one have made, the last first, and whether that is all of it.

    Beyond a start chain, an arch, or what goes on to an end, nothing is counted on; and chains
    that open a row may stand for a stitch.
    """
    found: list[Made] = []
    behind = 0
    for n in range(end - 1, -1, -1):
        item = items[n]
        if isinstance(item, Chains | Picots | Skip):
            continue
        runs, places = _runs(item), _places(item)
        if runs is None or not places:
            return found, False
        place = item.place if isinstance(item, Stitches | Bracket) else None
        kinds = {target.of.name for target in place.targets} if place is not None else set()
        made = Made(runs, places, behind, bool(kinds) and kinds <= {*SPACES})
        behind += made.all
        found.append(made)
    return found, not (items and isinstance(items[0], Chains))


def _runs(item: Item) -> Runs | None:
    """What a step makes in each of its places; None where that cannot be told."""
    match item:
        case Stitches():
            return [(item.stitch, 1 if item.together or _spread(item) else item.count)]
        case Bracket(inner):
            return _list(inner)
        case Repeat(inner, int()):
            return _list(inner)
        case _:
            return None


def _list(items: Sequence[Item]) -> Runs | None:
    found: Runs = []
    for item in items:
        if isinstance(item, Chains | Picots | Skip):
            continue
        runs, places = _runs(item), _places(item)
        if runs is None or not places or len(found) + len(runs) * places > _MOST:
            return None
        found += [(runs[0][0], runs[0][1] * places)] if len(runs) == 1 else runs * places
    return found


def _places(item: Item) -> int:
    """How many places a step makes its stitches in; 0 where that cannot be told."""
    if isinstance(item, Repeat):
        return item.times or 0
    place = item.place if isinstance(item, Stitches | Bracket) else None
    if place is None or place.which in _ONE:
        return 1
    if place.which in (Which.EACH, Which.EVERY):
        return 0
    together = isinstance(item, Stitches) and item.together
    return 1 if together else place.count


def _spread(item: Stitches) -> bool:
    """Whether stitches stand one by one in several places: `3 dc in the next 3 st`."""
    place = item.place
    return place is not None and place.which not in _ONE and place.count > 1 and not place.each


def unfastened(items: Sequence[Item]) -> Iterator[Arch]:
    """Arches that go back beyond what their list has made, or over nothing."""
    for n, item in enumerate(items):
        if isinstance(item, Arch):
            if not 2 <= item.back <= sum(m.all for m in made_before(items, n)[0]):
                yield item
        elif isinstance(item, Repeat | Bracket | AsTheyCome):
            yield from unfastened(item.items)


# --- a stitch that is named ---------------------------------------------------------


def from_hook(made: Sequence[Made], number: int, stitch: str) -> int | None:
    """The so many-th stitch of a kind, counted from the hook, among all of them."""
    for one in made:
        alike = sum(n for name, n in one.runs if name == stitch)
        if number > alike * one.places:
            number -= alike * one.places
            continue
        whole, number = divmod(number - 1, alike)
        behind = one.behind + whole * one.each
        for name, n in reversed(one.runs):
            if name == stitch and number < n:
                return behind + number + 1
            number -= n if name == stitch else 0
            behind += n
    return None


def of_so_many(
    made: Sequence[Made], number: int, of: int, stitch: str | None, which: int
) -> int | None:
    """`the 4th of the 8`, `the middle (0) of the first 7`: in a step that makes so many, or in
    the last steps together; of the first, the first steps. `which`: of several such, the first
    (1) or the last (-1)."""
    nth = _nth(number, of)
    starts: dict[int, None] = {}
    alike = True
    for one in made:
        alike = alike and one.only(stitch)
        if one.all == of and one.only(stitch):
            starts[one.behind + of] = None
        if alike and which != 1 and one.behind + one.all == of:
            starts[of] = None
    if which == 1 and _first_together(made, of, stitch):
        starts[sum(one.all for one in made)] = None
    ends = list(starts)
    if nth is None or not ends or (not which and len(ends) > 1) or which > len(ends):
        return None
    return (ends[-which] if which > 0 else ends[0]) - nth + 1


def _first_together(made: Sequence[Made], of: int, stitch: str | None) -> bool:
    """Whether the first steps together make so many of a stitch."""
    for one in reversed(made):
        of -= one.all
        if of <= 0 or not one.only(stitch):
            return of == 0 and one.only(stitch)
    return False


def of_place(made: Sequence[Made], number: int, stitch: str | None, which: int) -> int | None:
    """`the 4th dc of the first loop` (`which` 1; -1: of the last) that was worked into."""
    spaces = [one for one in reversed(made) if one.in_space]
    at = which - 1 if which > 0 else sum(one.places for one in spaces) - 1
    for one in spaces:
        if at < one.places:
            nth = _nth(number, one.each)
            if nth is None or not one.only(stitch):
                return None
            return one.behind + (one.places - at) * one.each - nth + 1
        at -= one.places
    return None


def _nth(number: int, of: int) -> int | None:
    """Which of so many: the last is -1, the middle 0; None where there is no such one."""
    if number == 0:
        return (of + 1) // 2 if of % 2 else None
    nth = of if number == -1 else number
    return nth if 1 <= nth <= of else None
