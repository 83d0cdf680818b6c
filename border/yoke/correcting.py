"""What may be wrong in one line of a yoke: a joint, its number, or the name of an edge."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence

from msgspec import json
from msgspec.structs import replace

from border.yoke.changes import Change, ring_span, with_rings, with_strip
from border.yoke.laying import Laid
from border.yoke.mirrors import left_for_right
from border.yoke.project import Motif, Project, Strip, Words
from border.yoke.ring import Free, Item, Join, pasted


def corrections(project: Project, laid: Laid) -> Iterator[Change]:
    """Every change to one line that may set a joint or a name right."""
    corrector = _Corrector(project, laid)
    for motif in project.motifs:
        ring = laid.rings.get(motif.name)
        if ring is None or not ring.readable:
            continue
        if motif.ring is not None:
            yield from corrector.of_ring(motif, ring.items)
        elif motif.mirror_of is not None:
            yield from corrector.of_mirror(motif, motif.mirror_of, ring.items)
    for strip in project.strips:
        yield from corrector.of_ends(strip)
        yield from corrector.of_sides(strip)


class _Corrector:
    def __init__(self, project: Project, laid: Laid) -> None:
        self.project = project
        self.rings = laid.rings
        self.joined = project.yoke.joined if project.yoke else None
        self.own = {motif.name for motif in project.motifs}
        self.named_by: dict[str, list[str]] = defaultdict(list)
        self.edges: dict[str, None] = {}
        for name, ring in laid.rings.items():
            for item in ring.items:
                if isinstance(item, Join):
                    self.named_by[item.other].append(name)
                elif item.edge is not None:
                    self.edges[item.edge] = None
        at_odds = [called for face in laid.faces if len(called := laid.names(face)) > 1]
        odd = dict.fromkeys(name for called in at_odds for name in called)
        self.odd = {**odd, **dict.fromkeys(map(left_for_right, odd))}

    # --- what is known of a motif ------------------------------------------------

    def unanswered(self, motif: str) -> list[str]:
        """The motifs that name this one, and that it does not name."""
        named = {i.other for i in self.rings[motif].items if isinstance(i, Join)}
        return [other for other in self.named_by[motif] if other not in named]

    def holds(self, motif: str, other: str) -> bool:
        """Whether a joint is named once from either side."""
        return self.named_by[motif].count(other) == self.named_by[other].count(motif) == 1

    # --- a ring of its own ---------------------------------------------------------

    def of_ring(self, motif: Motif, items: Sequence[Item]) -> Iterator[Change]:
        missing = self.unanswered(motif.name)
        for n, item in enumerate(items):
            if isinstance(item, Free):
                yield from self.renamed(motif, n, item)
            elif not self.holds(motif.name, item.other):
                for other in missing:
                    join = replace(item, other=other)
                    what = f"join {motif.name} to {other}"
                    yield self.with_ring(4, what, motif, {n: join.text})
            else:
                yield from self.evened(motif, items, n, item)
        for other in missing:
            yield from self.joined_to(motif, other)

    def of_mirror(self, motif: Motif, mirrored: Words, items: Sequence[Item]) -> Iterator[Change]:
        """A ring written out, since it is no mirror in everything: straps of unequal length."""
        ring = tuple(Words(item.text, mirrored.span) for item in items)
        for change in self.of_ring(replace(motif, ring=ring, mirror_of=None), items):
            what = f"{change.what}, with a ring in place of mirror_of"
            yield replace(change, rank=change.rank + 1, what=what)

    def renamed(self, motif: Motif, n: int, run: Free) -> Iterator[Change]:
        for name in self.odd if run.edge in self.odd else ():
            if name != run.edge:
                what = f'if that is the same edge, call it "{name}" in the ring of {motif.name}'
                yield self.with_ring(4, what, motif, {n: replace(run, edge=name).text})

    def joined_to(self, motif: Motif, other: str) -> Iterator[Change]:
        """A joint put in anywhere, alone or with an edge of no loops before or behind it."""
        ring = motif.ring or ()
        what = f"join {motif.name} to {other}"
        join = f"join {other}"
        for rank, texts in [
            (4, [join]),
            *((5, [join, f"{name} 0"]) for name in self.edges),
            *((5, [f"{name} 0", join]) for name in self.edges),
        ]:
            for n in range(1, len(ring) + 1):
                new = [Words(text, motif.span) for text in texts]
                yield self.changed(rank, what, motif, [*ring[:n], *new, *ring[n:]])

    def evened(self, motif: Motif, items: Sequence[Item], n: int, join: Join) -> Iterator[Change]:
        """The number of the other side, alone or with the difference taken from beside it."""
        answer = next(
            i.loops
            for i in self.rings[join.other].items
            if isinstance(i, Join) and i.other == motif.name
        )
        more = answer - join.loops
        if not more:
            return
        what = f"give the joint {answer} on {motif.name} too"
        usual = answer == self.joined
        by = None if usual else answer
        new = {n: replace(join, by=by).text}
        rank = 4 if usual else 6
        yield self.with_ring(rank, what, motif, new)
        for beside in sorted({(n - 1) % len(items), (n + 1) % len(items)}):
            run = items[beside]
            if isinstance(run, Free) and run.places >= more:
                text = replace(run, places=run.places - more).text
                yield self.with_ring(rank + 1, what, motif, {**new, beside: text})

    def with_ring(self, rank: int, what: str, motif: Motif, new: dict[int, str]) -> Change:
        """The ring with some of its items, by number, written otherwise."""
        ring = list(motif.ring or ())
        for n, text in new.items():
            ring[n] = Words(text, ring[n].span)
        return self.changed(rank, what, motif, ring)

    def changed(self, rank: int, what: str, motif: Motif, ring: Sequence[Words]) -> Change:
        changed = with_rings(self.project, {motif.name: ring})
        return Change(rank, what, pasted(ring), ring_span(motif), changed)

    # --- a strip -------------------------------------------------------------------

    def of_ends(self, strip: Strip) -> Iterator[Change]:
        """What the ends of a strip are joined to, where its motifs have no rings of their own."""
        ends = (("from", 1, strip.first), ("to", strip.motifs, strip.last))
        for key, number, end in ends:
            motif = f"{strip.name}.{number}"
            if motif in self.own or motif not in self.rings:
                continue
            if end is not None and self.holds(motif, end.text):
                continue
            for other in self.unanswered(motif):
                words = Words(other, end.span if end else strip.span)
                changed = replace(strip, **{"first" if key == "from" else "last": words})
                made = with_strip(self.project, strip, changed)
                what = f'in strip "{strip.name}", write'
                paste = f"{key} = {json.encode(other).decode()}"
                yield Change(4, what, paste, words.span, made)

    def of_sides(self, strip: Strip) -> Iterator[Change]:
        """A side of a strip by another name."""
        for n, side in enumerate(strip.sides):
            edge, _, places = side.text.rpartition(" ")
            for name in self.odd if edge in self.odd else ():
                if name == edge:
                    continue
                sides = list(strip.sides)
                sides[n] = replace(side, text=f"{name} {places}")
                changed = with_strip(self.project, strip, replace(strip, sides=tuple(sides)))
                what = f'if that is the same edge, call it "{name}" in strip "{strip.name}"'
                yield Change(4, what, pasted(sides, "sides"), strip.sides_span, changed)
