"""Closing: what every repeat took and made, what is left over, and where it lies."""

from __future__ import annotations

from bisect import bisect_right
from collections import Counter
from collections.abc import Iterable, Sequence

from msgspec import Struct, field

from border.text.steps import is_open, leading_targets, walk
from border.text.tree import (
    AtOnce,
    Between,
    Clause,
    Item,
    Kind,
    Repeat,
    Target,
    Text,
    Whole,
)
from border.working.cursor import Cursor, Mark
from border.working.fabric import CHAIN, PICOT, Fabric
from border.working.stations import Sites, Stations


class Trouble(Struct, frozen=True):
    """A step that ran out. `short`: it asks for more than its stretch of the edge has."""

    item: Item
    short: bool
    has: int
    needs: int


class Left(Struct, frozen=True):
    """What a repeat saw ahead of its `cursor` where it stopped: `sites` as far as number `stop`.

    `since`: how many touched sites were on account then. `unmade`: the repeat
    was made no times, and should have been.
    """

    item: Item
    sites: Sites
    cursor: int
    stop: int
    since: int
    times: int
    unmade: bool

    def over(
        self, touched: Sequence[tuple[int, int]], stations: Stations, last: bool = False
    ) -> list[int]:
        """The indices of those that nothing later worked or skipped; `last`: the last N too."""
        stop = len(self.sites) if last else self.stop
        a, b = self.sites.a, self.sites.b
        ahead = [i for i in self.sites.ahead(self.cursor) if i < stop]
        starts = [a[i] for i in ahead]
        over = set(ahead)
        for site in touched[self.since :]:
            # None ahead lies over another: only the last that begins before it reaches into it.
            k = max(bisect_right(starts, site[0]) - 1, 0)
            while k < len(ahead) and starts[k] < site[1]:
                if stations.touch((starts[k], b[ahead[k]]), site):
                    over.discard(ahead[k])
                k += 1
        return sorted(over)


Sample = tuple[tuple[int, ...], tuple[str, ...]]
"""What one repeat took (of each leading kind) and the elements that it made."""


class Account(Struct):
    """The account of one open-ended repeat over all the parts of the edge it was worked on.

    `named`: what its first place names, `leading`: what is counted of it. `seen`: how often
    one repeat took and made just so; `last`: what the last one did. `spans`: the elements
    [start, stop) of the new row that each repeat made.
    """

    named: tuple[Target, ...]
    leading: tuple[Target, ...]
    times: int = 0
    left_over: int = 0
    seen: Counter[Sample] = field(default_factory=Counter)
    last: Sample = ((), ())
    spans: list[tuple[int, int]] = field(default_factory=list)
    passed: list[tuple[dict[Target, int], int]] = field(default_factory=list)

    def add(self, cursor: Cursor, mark: Mark, sites: Sites) -> None:
        """One repeat more, worked from the mark to where the cursor is."""
        self.last = self._takes(cursor, mark, sites), tuple(cursor.made.kinds[mark.made :])
        self.seen[self.last] += 1
        self.spans.append((mark.made, len(cursor.made.kinds)))
        if cursor.watched:
            at = min(sites.after(mark.at), len(sites) - 1)
            self.passed.append((dict(cursor.passed), sites.p[at] if at >= 0 else 0))

    def without_chains(self, count: int) -> None:
        """The chains that part the last repeat from a next one are not made after all."""
        takes, kinds = self.last
        self.seen[self.last] -= 1
        if not self.seen[self.last]:
            del self.seen[self.last]  # on a tie the first counts, and no repeat was like that
        self.last = takes, kinds[: len(kinds) - count]
        self.seen[self.last] += 1
        start, stop = self.spans[-1]
        self.spans[-1] = start, stop - count

    def _takes(self, cursor: Cursor, mark: Mark, sites: Sites) -> tuple[int, ...]:
        if len(self.leading) == 1:
            takes: tuple[int, ...] = (sites.after(cursor.at) - sites.after(mark.at),)
        else:
            lists = [cursor.window.sites((target,)) for target in self.leading]
            takes = tuple(s.after(cursor.at) - s.after(mark.at) for s in lists)
        if self.leading == self.named:  # no parts
            return takes
        unseen = (
            self._unseen(cursor, mark, target.of) if isinstance(target, Whole) else 0
            for target in self.leading
        )
        return tuple(n + more for n, more in zip(takes, unseen, strict=True))

    def _unseen(self, cursor: Cursor, mark: Mark, of: Kind) -> int:
        """Parts taken of sites that are not seen as a whole, since the text begins or ends inside
        them: each stands for its site."""
        whole, found = cursor.window.sites((Whole(of),)), 0
        for part in self.named:
            if part.of != of or isinstance(part, Whole | Between | AtOnce):
                continue
            s = cursor.window.sites((part,))
            for i in range(s.after(mark.at), s.after(cursor.at)):
                at = bisect_right(whole.a, s.a[i]) - 1
                found += at < 0 or whole.b[at] < s.b[i]
        return found

    def takes(self, fabric: Fabric) -> dict[str, int]:
        """Sites of each leading kind that one repeat takes, as most repeats do."""
        return self._usual(fabric)[0]

    def otherwise(self, fabric: Fabric) -> int:
        """How many repeats take more or fewer than most do."""
        usual = self.takes(fabric)
        return sum(n for (takes, _), n in self.seen.items() if self._told(takes, fabric) != usual)

    def makes(self, fabric: Fabric) -> tuple[str, ...]:
        """The elements that one repeat makes, as most repeats do."""
        return self._usual(fabric)[1]

    def _usual(self, fabric: Fabric) -> tuple[dict[str, int], tuple[str, ...]]:
        same: Counter[tuple[object, ...]] = Counter()
        first: dict[tuple[object, ...], Sample] = {}
        for (takes, kinds), n in self.seen.items():
            taken = frozenset(self._told(takes, fabric).items())
            key = (taken, frozenset(Counter(kinds).items()))
            same[key] += n
            first.setdefault(key, (takes, kinds))
        takes, kinds = first[same.most_common(1)[0][0]] if same else ((), ())
        return self._told(takes or (0,) * len(self.leading), fabric), kinds

    def _told(self, takes: tuple[int, ...], fabric: Fabric) -> dict[str, int]:
        """What a repeat takes by name: on the edge `loop or st` is one kind, under two names."""
        taken: dict[tuple[str, type[Target]], int] = {}
        for target, n in zip(self.leading, takes, strict=True):
            taken[kind_name(target.of, fabric), type(target)] = n
        told: Counter[str] = Counter()
        for (name, _), n in taken.items():
            told[name] += n
        return dict(told)

    def uneven(self) -> tuple[int, int] | None:
        """The first repeat (from 1) that passes over more than most do, and its position."""
        for target in {t: None for passes, _ in self.passed for t in passes}:
            counts = [passes.get(target, 0) for passes, _ in self.passed]
            fewer = sorted(counts)[len(counts) // 2]  # as many as this, or fewer: more than half
            for i, n in enumerate(counts):
                if n > fewer:
                    return i + 1, self.passed[i][1]
        return None


def accounts_of(body: Text | tuple[Clause, ...]) -> dict[int, Account]:
    """An empty account for every open-ended repeat of a row, in the order of the text.

    Keyed by the identity of its step: the parts of the edge that one clause
    works share it.
    """
    texts = [body] if isinstance(body, Text) else [clause.text for clause in body]
    found: dict[int, Account] = {}
    for text in texts:
        for item in walk(text.items):
            if is_open(item):
                inner = item.items if isinstance(item, Repeat) else (item,)
                named = leading_targets(inner)
                found[id(item)] = Account(named, counted_as(named))
    return found


def counted_as(targets: tuple[Target, ...]) -> tuple[Target, ...]:
    """What is counted of a leading kind: of a part, its whole site; between two, the points."""
    kept = (t if isinstance(t, Between) else Whole(t.of) for t in targets)
    return tuple(dict.fromkeys(kept))


def kind_name(kind: Kind, fabric: Fabric) -> str:
    """The name of a kind in the record: on the edge, that of its places."""
    if fabric.base and kind.name in ("st", "ch", "loop", "space", "shell", "picot"):
        return fabric.kinds[0] if fabric.kinds else kind.name
    match kind:
        case Kind(name="space", size=size, stitch=str(stitch)):
            return f"{f'{CHAIN}-{size}' if size else 'chain'} space between {stitch}"
        case Kind(name="loop" | "space", size=None):
            return "space"
        case Kind(name="loop" | "space", size=n):
            return f"{CHAIN}-{n} space"
        case Kind(name=name, size=None):
            return name
        case Kind(name=name, size=n, stitch=None):
            return f"{name} of {n}"
        case Kind(name=name, size=n, stitch=stitch):
            return f"{n}-{stitch} {name}"


def tally(kinds: Iterable[str]) -> tuple[dict[str, int], int, int]:
    """Stitches by kind, chains and picots among elements, or of elements counted already."""
    counted = Counter(kinds)
    chains, picots = counted.pop(CHAIN, 0), counted.pop(PICOT, 0)
    return dict(counted), chains, picots


def whereabouts(fabric: Fabric, positions: Sequence[int]) -> str:
    """Where on the yoke some positions lie: "on left strap.2", "from front.5 to left strap.1"."""
    line, tick = fabric.line, fabric.tick
    if not positions:
        return ""
    if not line.stretches:
        places = [p // tick % line.length + 1 for p in (positions[0], positions[-1])]
        if line.flipped:
            places = [line.length + 1 - n for n in places]
        if places[0] == places[1]:
            return f"at place {places[0]} of the edge"
        if line.flipped:
            places.reverse()
        if places[0] > places[1]:  # over where the round begins
            places.insert(1, line.length)
            return f"at places {places[0]} to {places[1]} and 1 to {places[2]} of the edge"
        return f"at places {places[0]} to {places[1]} of the edge"
    names: dict[str, None] = {}
    for position in positions:
        at, on_joint = line.owner(position, tick)
        if on_joint:
            before, behind = line.joint_between(at)
            names[f"the joint {before.run.motif} | {behind.run.motif}"] = None
        else:
            names[line.stretches[at].run.motif] = None
    told = list(names)
    if len(told) <= 3:
        return "on " + " and ".join(told)
    return f"from {told[0]} to {told[-1]}"
