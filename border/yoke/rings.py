"""Rings: what goes round each motif, in working order.

Right side facing and right-handed, so counter-clockwise round the motif. The
ring of a motif is its own where it has a [[motif]]; otherwise that of its strip:

- any motif between two others: first side, join to the next, second side, join
  to the one before;
- the first (last) motif likewise, joined to `from` (`to`) in place of the one
  before (the next); where the strip does not say, there is no joint at that end,
  and the two sides meet, which they may only under one name;
- a strip of one motif: first side, join to `to`, second side, join to `from`.
  A strip closed in itself is one whose `from` is its last motif, `to` its first.

So the first side is met from motif 1 to motif N, the second from N to 1.
"""

from __future__ import annotations

import re

from border.findings import Finding
from border.yoke.mirrors import mirrored
from border.yoke.names import Names
from border.yoke.project import Motif, Project, Strip, Words
from border.yoke.ring import Free, Item, Join, Ring


def rings(project: Project, names: Names) -> tuple[dict[str, Ring], tuple[Finding, ...]]:
    """The ring of every motif, in the order of the file.

    Findings: `ring-faulty` for what cannot be read, `no-such-motif` for a mirror of nothing,
    `bad-value` where a number is not given by the file.
    """
    return _Reader(project, names).all_rings()


class _Reader:
    def __init__(self, project: Project, names: Names) -> None:
        self.project = project
        self.names = names
        self.findings: list[Finding] = []
        self.joined = project.yoke.joined if project.yoke else None
        self.own = {m.name: m for m in reversed(project.motifs)}
        self.strips: dict[str, Strip] = {}
        for strip in project.strips:
            self.strips.setdefault(strip.name, strip)

    def all_rings(self) -> tuple[dict[str, Ring], tuple[Finding, ...]]:
        made: dict[str, Ring] = {}
        if not self.names.sections:
            return made, ()
        for strip in self.strips.values():
            made.update(self.of_strip(strip))
        for name, motif in self.own.items():
            if motif.ring is not None and name in self.names.sections:
                made[name] = self.written(motif.ring, motif)
        made, faults = mirrored(self.own, self.strips, made, self.names)
        self.findings += faults
        made = {name: made[name] for name in self.names.sections}
        self.check_ends(made)
        self.check_joined(made)
        return made, tuple(self.findings)

    # --- one item ---------------------------------------------------------------

    def item(self, words: Words, of: str) -> Item | None:
        if found := re.fullmatch(r"(?i:join)\s+(.+?)(?:\s+by\s+([0-9]{1,7}))?", words.text):
            by = None if found[2] is None else int(found[2])
            loops = (self.joined or 0) if by is None else by
            return Join(found[1], loops, by, words.span)
        if found := re.fullmatch(r"(.+?)\s+([0-9]{1,7})", words.text):
            return Free(found[1], int(found[2]), words.span)
        message = f'"{words.text}" in the ring of {of} is neither an edge with a number nor a join'
        help_ = 'as in "neck 5", "join front.2" or "join front.2 by 2"'
        if not any(sign.isdigit() for sign in words.text):
            help_ += f'; with no loops left for it, "{words.text} 0"'
        self.findings.append(Finding("ring-faulty", message, help_, words.span))
        return None

    def written(self, ring: tuple[Words, ...], motif: Motif) -> Ring:
        items = [self.item(words, motif.name) for words in ring]
        span = ring[0].span.to(ring[-1].span)
        good = tuple(i for i in items if i is not None)
        return Ring(motif.name, good, span, readable=len(good) == len(items))

    # --- strips -----------------------------------------------------------------

    def of_strip(self, strip: Strip) -> dict[str, Ring]:
        motifs = [f"{strip.name}.{i}" for i in range(1, strip.motifs + 1)]
        motifs = [m for m in motifs if m in self.names.sections]
        missing = [m for m in motifs if m not in self.own]
        sides = self.sides(strip, missing)
        made = {}
        for number, motif in enumerate(motifs, 1):
            items: list[Item] = [*sides[:1]]
            items += self.join_to(strip, number + 1)
            items += sides[1:]
            items += self.join_to(strip, number - 1)
            readable = len(sides) == 2
            made[motif] = Ring(motif, tuple(items), strip.span, strip, readable=readable)
        return made

    def sides(self, strip: Strip, used_by: list[str]) -> list[Free]:
        if not strip.sides and used_by:
            message = f'strip "{strip.name}" has no sides, and {used_by[0]} no ring of its own'
            help_ = 'give the strip sides = ["neck 5", "hem 5"]'
            self.findings.append(Finding("bad-value", message, help_, strip.span))
        read = [self.item(words, strip.name) for words in strip.sides]
        for item in read:
            if isinstance(item, Join):
                message = f'a side of strip "{strip.name}" cannot be a joint'
                help_ = "a strip's motifs are joined to each other; its ends by from and to"
                self.findings.append(Finding("ring-faulty", message, help_, item.span))
        return [item for item in read if isinstance(item, Free)]

    def join_to(self, strip: Strip, number: int) -> list[Join]:
        default = self.joined or 0
        if 1 <= number <= strip.motifs:
            return [Join(f"{strip.name}.{number}", default, None, strip.span)]
        end = strip.first if number == 0 else strip.last
        return [Join(end.text, default, None, end.span)] if end else []

    def check_ends(self, made: dict[str, Ring]) -> None:
        """A `from` or `to` must be in the end motif's own ring, where it has one."""
        for strip in self.strips.values():
            ends = ((strip.first, "from", 1), (strip.last, "to", strip.motifs))
            for end, key, number in ends:
                motif = f"{strip.name}.{number}"
                if end is None or motif not in self.own or motif not in made:
                    continue
                ring = made[motif]
                met = any(isinstance(i, Join) and i.other == end.text for i in ring.items)
                if not met and ring.readable:
                    message = f'strip "{strip.name}" says {key} = "{end.text}", but {motif} has '
                    message += "a ring of its own without that joint"
                    help_ = f'leave out {key}, or write "join {end.text}" in the ring of {motif}'
                    self.findings.append(Finding("ring-faulty", message, help_, end.span))

    def check_joined(self, all_rings: dict[str, Ring]) -> None:
        yoke = self.project.yoke
        joins = (i for r in all_rings.values() for i in r.items if isinstance(i, Join))
        if yoke and yoke.joined is None and any(join.by is None for join in joins):
            message = "[yoke] does not say how many loops of each motif a joint takes up"
            help_ = 'write joined = 3, or a number to every joint: "join front.2 by 3"'
            self.findings.append(Finding("bad-value", message, help_, yoke.span))
