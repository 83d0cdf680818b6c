"""A list before a place: `1 sc, 5 dc in next space` can be bracketed in two ways.

What could be read two ways is asked: the finding shows both as edits. Meanwhile
each stitch without a place takes the next st, and each site all that is said.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import islice

from msgspec.structs import replace

from border.stitches import STITCHES
from border.text.doubting.doubts import tell_doubts
from border.text.doubting.lists_asked import (
    bracketed,
    same_backwards,
    tell_bare,
    tell_begun,
    tell_chains,
    tell_chains_each,
    tell_chains_once,
    tell_perhaps_apart,
    tell_perhaps_together,
    tell_same,
)
from border.text.doubting.picot_doubts import (
    may_be_picot,
    may_be_picot_on,
    space_of,
    tell_picot,
    tell_ring,
)
from border.text.in_each import BY_NUMBER, count_of
from border.text.nodes import Building, Step
from border.text.steps import OPEN_PLACES, walk
from border.text.tree import (
    SPACES,
    ST,
    Bare,
    Begin,
    Bracket,
    Chains,
    End,
    Item,
    Kind,
    Picots,
    Place,
    Repeat,
    Skip,
    Stitches,
    Which,
    Whole,
)
from border.text.written_steps import may_close

_UNPLACED = (Which.SAME, Which.SKIPPED)


def settled_list(steps: Sequence[Step], b: Building, opening: bool = False) -> list[Step]:
    """The steps with every list before a place bracketed, where the headings say so, or told.

    `opening`: the list is a whole row, and begins it.
    """
    settled: list[Step] = []
    across: list[Item] = []  # since the last place
    listed: list[Item] = []  # of these, since the last stop
    then = 0  # how many of these stand before the last `then`
    into: Kind | None = None
    worked: Kind | None = None
    begun: Item | None = None
    for n, step in enumerate(steps):
        item = step.item
        settled.append(step)
        if step.hard == "stop":
            begun = None if tell_begun(begun, across, b) else begun
            listed, then = [], 0
        elif step.hard:
            then = len(listed)
        if _is_listed(item):
            listed.append(item)
            across.append(item)
            continue
        since = listed[then:]
        match item:
            case Stitches(place=Place() as place) | Bracket(place=place):
                if since and isinstance(since[-1], Chains) and may_close(item):
                    tell_ring(since[-1], item, b)
                elif place.which is Which.SAME:
                    on = [one.item for one in settled[-3:]]
                    if may_be_picot(listed, item) or (len(on) > 2 and may_be_picot_on(*on)):
                        tell_picot(settled[-2].item, b, item.span)
                    if _may_share(listed, item, into, worked):
                        start = opening and _opens_row(steps, n - len(listed))
                        tell_same(listed[start:], item, worked, b)
                    elif (shell := _shell(across, item)) and b.stopped(shell[0], item):
                        tell_same(shell, item, worked, b)
                    elif not listed and len(settled) > 1 and _over_and_over(settled[-2].item, item):
                        tell_same([settled[-2].item], item, worked, b)
                elif place.which not in _UNPLACED:
                    chains_may_stand = opening and _opens_row(steps, n - len(since))
                    led = settled[: -1 - len(since)]
                    among = bool(led) or n + 1 < len(steps)
                    if gathered := _gathered(since, item, b, chains_may_stand, led, among):
                        first = settled[-1 - gathered]
                        list_ = bracketed(since[-gathered:], item)
                        whole = replace(list_, span=first.item.span.to(item.span))
                        settled[-1 - gathered :] = [Step(whole, first.hard)]
                    elif then and (shell := _shell(listed, item)):
                        tell_perhaps_together(shell, item, b)
                    elif then and _too_low(listed[-1], item) and place.which in OPEN_PLACES:
                        tell_chains(listed[-1:], item, b)  # `1 ch, then 1 dc in every 2nd st`
                    elif (shell := _shell(across, item)) and b.stopped(shell[0], item):
                        tell_perhaps_together(shell, item, b)  # `3 dc. Ch 2. 3 dc in next loop`
        placed = isinstance(item, Stitches | Bracket) and item.place is not None
        tell_begun(begun, across[: len(across) - len(since)] if placed else across, b)
        across, listed, then = [], [], 0
        into, worked, begun = space_of(item, into), _worked_into(item, worked), item
    tell_begun(begun, across, b)
    tell_doubts(settled, b)
    return settled


def _is_listed(item: Item) -> bool:
    """Whether a step has no place; so has a figure among others, `2 dc, 1 knob, 2 dc in loop`."""
    match item:
        case Chains() | Picots() | Stitches(place=None):
            return True
        case Repeat(items=items, times=1, star=False):
            chains = all(isinstance(one, Chains) for one in items)  # `(ch 5)` are chains that stand
            return all(map(_is_listed, items)) and not chains
        case _:
            return False


def _over_and_over(item: Item, placed: Stitches | Bracket) -> bool:
    """Whether so many times the same stitch without a place stands before it: `(1 dc, 3 ch) twice,
    1 dc in same st`."""
    if not isinstance(item, Repeat) or item.star or not item.times:
        return False
    bare = [one for one in item.items if isinstance(one, Stitches)]
    alike = isinstance(placed, Stitches) and all(one.stitch == placed.stitch for one in bare)
    return bool(bare) and alike and all(_is_listed(one) for one in item.items)


def _is_made(item: Item) -> bool:
    """Whether a step without a place makes stitches."""
    if isinstance(item, Repeat):
        return any(map(_is_made, item.items))
    return isinstance(item, Stitches)


def _gathered(
    since: Sequence[Item],
    placed: Stitches | Bracket,
    b: Building,
    opens_row: bool,
    led: Sequence[Step],
    among: bool,
) -> int:
    """How many steps before a placed one go with it; what can be read two ways is told. `led`: the
    steps before these. `among`: others stand before or behind all of them."""
    bare = next((n for n, item in enumerate(since) if _is_made(item)), None)
    if bare is not None:
        if b.headings.bare is Bare.BEHIND and _behind_skip(since, placed, led):
            tell_perhaps_together(since[bare:], placed, b)
            return 0
        if b.headings.bare is Bare.BEHIND and _is_figure(since[bare:], placed):
            before = since[bare - 1] if bare else led[-1].item if led else None
            tell_perhaps_apart(since[bare:], placed, before, b)
            return len(since) - bare
        if b.headings.bare is Bare.BEHIND:
            tell_perhaps_together(since[bare:], placed, b)
        elif b.headings.bare is not Bare.EACH:
            tell_bare(since[bare:], placed, b)
        return 0
    assert placed.place is not None
    chains = any(isinstance(item, Chains) for item in since)
    starts = opens_row and len(since) == 1 and not _and_both(since[-1], placed, b)
    starts = starts and not _too_low(since[-1], placed)
    if starts and placed.place.which in OPEN_PLACES and _too_high(since[-1], placed):
        tell_chains_once(since, placed, b)
    if chains and placed.place.which in OPEN_PLACES and not starts:
        once = placed.parted or (among and isinstance(placed, Bracket))
        if b.headings.bare is Bare.BEHIND and once:
            # `2 ch, 1 dc in each dc with 2 ch between`; `1 dc, 2 ch, shell in each space`
            tell_chains_once(since, placed, b)
            return 0
        if b.headings.bare is Bare.BEHIND:
            if led and not starts:
                tell_chains_each(since, placed, b)
            return len(since)
        tell_chains(since, placed, b)
    return 0


def _and_both(chains: Item, placed: Stitches | Bracket, b: Building) -> bool:
    """Whether `1 ch and 1 dc in each dc`, `3 ch and 1 dc in the centre of each loop` may make both
    in each."""
    place = placed.place
    loops = place is not None and all(target.of.name in SPACES for target in place.targets)
    made = isinstance(chains, Chains) and (chains.count == 1 or loops)
    return made and b.joined_by_and(chains, placed)


def _too_low(chains: Item, placed: Stitches | Bracket) -> bool:
    """Whether one chain before `1 dc in every other st` cannot stand up for such a stitch."""
    tall = isinstance(placed, Stitches) and STITCHES[placed.stitch].height > 1
    return tall and isinstance(chains, Chains) and chains.count == 1


def _too_high(chains: Item, placed: Stitches | Bracket) -> bool:
    """Whether chains before `1 dc in every 2nd space` are more than stand up for the stitch and
    one beside it, with none between the others."""
    heights = [STITCHES[s].height for s in _stitches(placed)]
    high = isinstance(chains, Chains) and chains.count > max(heights, default=0) + 1
    return high and not placed.parted


def _behind_skip(since: Sequence[Item], placed: Stitches | Bracket, led: Sequence[Step]) -> bool:
    """Whether one stitch stands right behind a skip, and one on a stitch behind chains: `miss 2, 1
    dc, 2 ch, 1 dc on dc`, as squares go; or behind chains, and one in the last: `2 ch, 1 dc, 2 ch,
    1 dc in last st`."""
    place = placed.place
    on = place is not None and all(target.of.name not in SPACES for target in place.targets)
    skipped = bool(led) and isinstance(led[-1].item, Skip)
    last = place is not None and place.which is Which.LAST
    match since, placed:
        case [Stitches(1), Chains()], Stitches(1):
            return on and skipped
        case [Chains(), Stitches(1), Chains()], Stitches(1):
            return on and last
    return False


def _is_figure(since: Sequence[Item], placed: Stitches | Bracket) -> bool:
    """Whether steps look like one shell: not `1 sc, ch 5, 1 sc in next space`, a loop as well."""
    first = since[0]
    if placed.place is None or (placed.place.count > 1 and placed.place.which in BY_NUMBER):
        return False
    if len(since) < 2 or not same_backwards((*since, placed)):
        return False
    if isinstance(placed, Bracket) or not isinstance(first, Stitches):
        return isinstance(first, Repeat)  # `shell, 2 ch, shell in next loop`
    loop = placed.stitch in ("sc", "ss") and len(since) == 2 and isinstance(since[1], Chains)
    return placed.stitch == first.stitch and not (loop and first.count == placed.count == 1)


def _shell(since: Sequence[Item], placed: Stitches | Bracket) -> Sequence[Item]:
    """The steps of a list with a `then` among them that look like one shell for all that, with what
    is placed behind them: not one stitch and chains and one more on a stitch, as a mesh goes; else
    none."""
    first = next((n for n, item in enumerate(since) if _is_made(item)), len(since))
    numbers = [_number_made(item) for item in since if _is_made(item)]
    spaces = placed.place is not None and all(t.of.name in SPACES for t in placed.place.targets)
    several = max(numbers, default=0) > 1
    made = since[first:]
    return made if made and (several or spaces) and _is_figure(made, placed) else ()


def _number_made(item: Item) -> int:
    return item.count if isinstance(item, Stitches) else 2


def _opens_row(steps: Sequence[Step], at: int) -> bool:
    """Whether the chains at a step are the start chain of the row.

    They are if they open it, and are one, or high enough for a stitch of the row.
    """
    chains = steps[at].item if at < len(steps) else None
    opens = all(isinstance(step.item, Begin | End) for step in islice(steps, at))
    if not opens or not isinstance(chains, Chains):
        return False
    if chains.count == 1:
        return True
    later = (item for item in walk([step.item for step in steps[at + 1 :]]))
    heights = (STITCHES[i.stitch].height for i in later if isinstance(i, Stitches))
    return any(2 <= height <= chains.count for height in heights)


def _may_share(
    since: Sequence[Item], placed: Stitches | Bracket, into: Kind | None, worked: Kind | None
) -> bool:
    """Whether bare stitches may be meant to go where those behind them say `same`.

    Not where one stitch only is added to the last of them: `9 dc, ch 9, 1 dc in same st`; but
    where a space was worked into last (`into`), or is named, that is the place: `1 sc in loop, 5
    dc, 1 sc in the same`, `1 dc, ch 1, 1 dc in the same loop`. So are all of `1 dc, ch 1, 1 dc, ch
    1, 1 dc in same st`; and `1 dc, ch 1, 1 dc in same st` behind a step in a stitch (`worked`).
    """
    bare = [item for item in since if isinstance(item, Stitches)]
    singly = bare and count_of(placed) == 1 and all(item.count == 1 for item in bare)
    if singly and (worked is not None or _several_alike(bare, placed)):
        return True
    targets = placed.place.targets if placed.place is not None else ()
    if bare and (into is not None or any(target.of.name in SPACES for target in targets)):
        return True
    alike = [i for i in bare if i.stitch in _stitches(placed)]
    several = any(item.count > 1 for item in bare) or (alike and count_of(placed) > 1)
    picots = any(isinstance(i, Picots) for i in since)
    heaps = count_of(placed) > 1 and any(item.count > 1 for item in bare)
    if not several or (picots and not heaps):
        return False
    place, single = placed.place, isinstance(placed, Stitches) and placed.count == 1
    return not single or (place is not None and place.targets not in ((), (Whole(ST),)))


def _several_alike(bare: Sequence[Stitches], placed: Stitches | Bracket) -> bool:
    return len(bare) > 1 and {item.stitch for item in bare} == _stitches(placed)


def _stitches(placed: Stitches | Bracket) -> set[str]:
    inside = [placed] if isinstance(placed, Stitches) else list(walk(placed.items))
    return {item.stitch for item in inside if isinstance(item, Stitches)}


def _worked_into(item: Item, before: Kind | None) -> Kind | None:
    """What the last step with a place went into; `before` is that of the steps before this one."""
    match item:
        case (
            Stitches(place=Place() as place) | Bracket(place=Place() as place) | Begin(place=place)
        ):
            if place.which is Which.SAME:
                return before
            return place.targets[-1].of if place.targets else None
        case _:
            return before
