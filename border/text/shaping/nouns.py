"""The noun that a place leaves out: `in next`, `in the 3rd`, `in one`, `over the 9`, `in last`."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct, field
from msgspec.structs import replace

from border.stitches import STITCHES
from border.text.shaping.counted_chains import is_under
from border.text.shaping.naming import BUT
from border.text.terminals import Terminal
from border.text.tree import SPACES, Kind
from border.text.wording.missed import MADE
from border.text.wording.passing import (
    ARCHES,
    NOUNS,
    OPENS,
    WHICH,
    Terminals,
    chains_at,
    ended,
    is_counted,
    is_last,
    like,
    made,
    only_ends,
    opener,
    past,
    types,
)
from border.text.wording.rings import CLOSING

OF_SIZE = "of size"
"""The name of a place that is taken for a space of so many chains, as the one before it was."""
_WHICH = frozenset({"NUM", "NEXT", "EACH", "ORD", "EVERY"})
_HEAPS = frozenset({*SPACES, "group", "shell", "block"})
_MADE = frozenset({"NUM", "STITCH", "CH", "PICOT", "CLUSTER"})
_BEGINS_STEP = frozenset({"SEP", "AND", "STAR", "LP"})


def unsaid(t: Terminals) -> Terminals:
    """`in next`, `in the 3rd`, `in one`, `over the 9`: with the noun that is left out.

    It is that of the place or skip before it in the text; bare stitches, a bare
    skip, or nothing before it: st. Behind `the 4th treble of the shell` it is a treble, where
    chains come first the next shell; and that is asked. One stitch `in last` behind shells, or
    behind several in a loop, goes into the last stitch; told.
    """
    if not any(_stands_alone(t, at) for at in range(1, len(t))):
        return t
    nouns = _Nouns(t)
    for at, here in enumerate(t):
        nouns.found.append(here)
        nouns.learn(at)
        before = nouns.before
        if not ended(t, at + 1) or before not in OPENS | WHICH | {"TO"}:
            continue
        if here.type == "NUM" and before not in ("SKIP", "OF"):
            nouns.add_counted(at)
        elif before != "BETWEEN":
            nouns.add_which(at)
    return nouns.found


def _stands_for(found: Terminals) -> bool:
    """Whether the last word found is the stitch that chains stand for: `as the 1st treble`."""
    at = len(found) - 2
    while at > 0 and found[at].type in ("ORD", "NUM", "THE"):
        at -= 1
    return found[-1].type == "STITCH" and 0 <= at < len(found) - 1 and found[at].type == "AS"


class _Nouns(Struct):
    """What has been named up to a place: the words so far, with the nouns that were left out.

    `last`: the noun named last; `space`: the space. `nth`: the stitch of `4th treble of the shell`;
    `chained`: chains have come since. `part`: a part of a run. `one`: one stitch was made in the
    place named last, `by_order`: the 1st, the 2nd. `named`: a place was.
    `on_stitch`: so was a stitch to work on. `by_step`: where a step was worked last.
    `on_several`: several stitches were named to work on. `worked`: what steps were worked into.
    `passed`: what the last passed over, where that is no step's place. `whole`: what a part was of.
    `reached`: the how-manieth chain of a loop was worked last (0: none of one).
    `depth`: of brackets.
    """

    t: Terminals
    found: Terminals = field(default_factory=list)
    last: Kind = Kind("st")
    space: Kind = Kind("space")
    nth: Kind | None = None
    chained: bool = False
    named: bool = False
    part: Terminals = field(default_factory=list)
    one: bool = True
    by_order: bool = False
    on_stitch: bool = False
    by_step: dict[tuple[int, str], Kind] = field(default_factory=dict)
    on_several: bool = False
    worked: list[Kind] = field(default_factory=list)
    passed: Kind | None = None
    whole: Kind | None = None
    reached: int = 0
    depth: int = 0

    @property
    def before(self) -> str:
        """The sort of the word before the last one found."""
        return self.found[-2].type if len(self.found) > 1 else ""

    def learn(self, at: int) -> None:
        """What the word at a place, which is the last one found, names."""
        found, here, before = self.found, self.t[at], self.before
        if _stands_for(found):
            return  # `3 chain for the 1st treble` names no place
        if self.last in ARCHES or self.last.name == "space":
            self.space = self.last
        part = _part_before(found, self.part)
        if part != self.part:
            self.part, self.reached = part, _chain_of(part)
        whole = types(self.t, at + 1, 1) != ["OF"] and not _parts_stitches(found)
        if whole and here.type in NOUNS and before in OPENS | WHICH | {"NUM", "PAIR"}:
            skips = here.type == "CH" and types(found, len(found) - 3, 2) == ["SKIP", "NUM"]
            bare = skips and self.last != Kind("ch")
            self.last = Kind("st") if bare else _noun(here, found, self.last)
            self._weigh()
            opened = before in OPENS | WHICH
            counted = before == "NUM" and len(found) > 2 and found[-3].type in OPENS | WHICH
            self.named = self.named or counted or opened
            self.on_stitch |= (opened or counted) and here.type in ("STITCH", "CLUSTER")
            one = before == "NUM" and found[-2].number == 1  # `in one loop`
            if (opened or counted or one) and (step := self._step(_opens_at(found))):
                self.by_step[step] = self.last
            if opened or counted:
                # `on the 3 dc`; not `in each of the next 3 dc`, `miss 3 dc`
                said = counted and found[-3].type == "NEXT" and found[-3].start != found[-2].start
                these = counted and not said and found[-3].type != "SKIP"
                self.on_several = these and found[-2].number > 1 and here.type == "STITCH"
            if opened:
                self.nth, self.chained = _stitch_of(found), False
                self.one = made(found[:-1]) == 1
                self.by_order = before == "ORD"
        self.depth += (here.type == "LP") - (here.type == "RP")
        self.chained = self.chained or (here.type == "CH" and not self.depth)
        self.on_several = self.on_several and here.type != "CH"
        skipped = before == "SKIP" and here.type == "NUM"
        if skipped and types(self.t, at + 1, 1) not in (["KIND"], ["CH"]):
            self.last = Kind("st")

    def _weigh(self) -> None:
        """Whether a place named is a step's own, or lies between: `miss the dc`, `2 ch over it`."""
        found = self.found
        opens = opener(found, len(found) - 1)
        if found[opens].type == "OF":
            self.whole = found[-1].kind or self.last
        if found[opens].type == "SKIP":
            self.passed = self.last
            if self.worked and (found[opens].text == "over" or found[-2].type != "NUM"):
                self.last = self.worked[-1]
        elif found[opens].type in OPENS:
            self.passed = None
            self.worked.append(self.last)

    def add_counted(self, at: int) -> None:
        """The noun of `in one`, `over the 9`."""
        found, here, before = self.found, self.t[at], self.before
        if before in ("PREP", "THE") and (here.number == 1 or made(found[:-1]) == here.number):
            found.insert(-1, like(here, "NEXT"))
        pair = "BETWEEN" in types(found, max(0, len(found) - 4), 4)
        ahead = None if pair else _named_next(self.t, at)
        if self.named and (here.number > 1 or self.last.name not in STITCHES):
            ahead = None  # not `1 dc on dc, 5 dc in one, 1 sc in the next loop`
        if ahead is not None and (prep := _prep_of(found)) is not None:
            found[prep] = replace(found[prep], name=found[prep].name or "counted")
        follows = before == "NEXT" and self.named and self.last.name in (*SPACES, "ch")
        if before == "NEXT" and self._goes_on_in_loop(_prep_of(found), here.number):
            ahead, follows = Kind("ch"), False  # `…, miss 1 ch, 1 tr in each of the next 2`
        elif follows and not self.chained and self._is_left(here.number):
            self.reached += here.number
            ahead, follows = Kind("ch"), False  # `in the 1st of the 5 ch, in each of the next 3`
        if follows and not pair and (prep := _prep_of(found)) is not None:
            count = made(found[:prep])
            count = count if "EACHOF" not in types(found, prep, len(found)) else 0
            on = count > 1 and found[prep].text.split()[0] in ("on", "upon")
            if count != here.number and not on:  # `3 dc in the space, 6 dc on the next 6`
                ahead = self.last  # `5 dc in a loop, 1 sc in next two`
            found[prep] = replace(found[prep], name=found[prep].name or "counted")
        kind = self.last if pair else ahead or Kind("st")
        found.append(replace(like(here, "KIND", kind), text="st"))

    def add_which(self, at: int) -> None:
        """The noun of `in next`, `in the 3rd`, `in each`."""
        found, here = self.found, self.t[at]
        part = self.part
        if here.type == "ORD" and part and here.name == BUT:  # `on the next but one`
            of = part[-1].kind
            stitch = of.stitch if of is not None else None
            found.append(like(here, "KIND", kind=Kind(stitch)) if stitch else part[1])
        elif here.type == "ORD" and part and here.number not in range(part[0].number + 1):
            found += [part[1], like(here, "OF"), like(here, "SAME"), part[-1]]
        elif here.type == "ORD" and part and here.number > 0 and self._goes_back(at):
            self._add_as_before(at)
        elif here.type in _WHICH - {"NUM"} and not _is_same(found):
            prep = len(found) - 2 - (self.before == "THE")
            kind, doubt = self._kind_and_doubt(at, prep)
            if doubt:
                found[prep] = replace(found[prep], name=doubt)
            found.append(like(here, "KIND", kind))

    def _goes_back(self, at: int) -> bool:
        """Whether `on third` names no noun behind a part of a group, `3rd treble of the group`, and
        cannot lie further on in it."""
        placed = types(self.found, len(self.found) - 2 - (self.before == "THE"), 1) == ["PREP"]
        return placed and (self.t[at].number > 1 or self._only_begun())

    def _add_as_before(self, at: int) -> None:
        """`Slip to the 3rd tr of the group, 1 dc on third`: on the same; `1 dc in the 3rd tr of the
        group, 6 ch, 1 dc in the 3rd`: of the next group."""
        found, here, part = self.found, self.t[at], self.part
        prep = len(found) - 2 - (self.before == "THE")
        if self._only_begun() and here.number == part[0].number:
            found[prep + 1 :] = [like(here, "SAME"), like(here, "PLACE")]
            return
        doubt = MADE if _in_chains_before(found, prep, here.number) else "counted"
        found[prep] = replace(found[prep], name=found[prep].name or doubt)
        found += [part[1], like(here, "OF"), like(here, "NEXT"), part[-1]]

    def _only_begun(self) -> bool:
        """Whether the row has made nothing before this step, and only slips to where it begins."""
        before = self.found[: max(0, (_prep_of(self.found) or 0) - 2)]
        return not any(
            x.type in _MADE
            and (not n or before[n - 1].type in _BEGINS_STEP)
            and "ss" not in (x.name, *(y.name for y in before[n + 1 : n + 2]))
            for n, x in enumerate(before)
        )

    def _step(self, prep: int | None) -> tuple[int, str] | None:
        """The number and the stitch of the step whose place opens there."""
        if not prep or types(self.found, prep - 2, 2) != ["NUM", "STITCH"]:
            return None
        return self.found[prep - 2].number, self.found[prep - 1].name

    def _is_left(self, count: int) -> bool:
        """Whether the loop of which a chain was worked last has so many more."""
        size = self.part[-1].kind.size if self.part and self.part[-1].kind is not None else None
        return self.reached > 0 and (size is None or self.reached + count <= size)

    def _goes_on_in_loop(self, prep: int | None, count: int) -> bool:
        """Whether a place, behind chains that are missed, is of the loop of which a chain was
        worked before them, as far as it has so many: `1 dc in the 2nd of the 5 ch, 2 ch, miss 1
        ch, 1 dc in the next`. Then these are reached."""
        missed = _chains_missed(self.found, prep) if prep is not None and self.reached else 0
        goes_on = missed > 0 and self._is_left(missed + count)
        self.reached += missed + count if goes_on else 0
        return goes_on

    def _kind_and_doubt(self, at: int, prep: int) -> tuple[Kind, str]:
        """The noun that is left out, and the name of the doubt that it leaves."""
        found, here = self.found, self.t[at]
        placed = types(found, prep, 1) == ["PREP"]
        kind = self.space if is_under(found) else self.last
        of = types(found, opener(found, len(found) - 1), 1) == ["OF"]
        if of and kind.name in (*STITCHES, *SPACES) and self.whole is not None:
            return self.whole, "counted"  # `in last of group, 1 tr on dc, 1 tr in first of next`
        if placed and here.type == "NEXT" and self._goes_on_in_loop(prep, 1):
            return Kind("ch"), ""
        if placed and here.type == "NEXT" and self.reached and kind.name in SPACES:
            if self.chained or not self._is_left(1):
                return kind, "nth"  # `in the 2nd of the 5 ch, 3 ch, 1 tr in the next`
            self.reached += 1
            return Kind("ch"), ""  # `in the 1st of the 5 ch, 1 tr in the next`
        missed = _behind_miss(found, prep)  # `miss 1 tr, 1 dc in the next`
        step = self._step(prep) if placed and here.type in ("NEXT", "ORD") and not missed else None
        there = self.by_step.get(step, kind) if step else kind
        alike = there == kind or {there.name, kind.name} <= set(SPACES)
        if not alike and Kind("st") not in (there, kind):
            return there, "counted"  # `5 dc in loop, 1 sc on sc, 5 dc in the next`
        doubt = ""
        if here.type == "ORD" and _in_chains_before(found, prep, here.number):
            doubt = MADE  # `7 chain, 1 single in the 4th`
        loose = here.type == "ORD" and here.number > 1 and kind.name in STITCHES
        if loose and placed and not (self.one or self.by_order):
            doubt = "counted"  # `5 dc in sc, 1 sc in 3rd`
        if self.nth is not None and here.type == "NEXT" and placed:
            doubt, kind = "nth", kind if self.chained else self.nth
        several = not self.one or (self.last.name in SPACES and _is_to_and_fro(self.t, at))
        if several and self.last.name in _HEAPS and _closes_row(self.t, at, found):
            doubt, kind = "last", Kind("st")
        on = prep > 0 and found[prep].text.split()[0] in ("on", "upon")
        mixed = self.on_stitch and made(found[:prep]) == 1 and here.type == "NEXT"
        if placed and self.on_several and here.type == "NEXT":
            doubt = doubt or "counted"  # `3 dc on the 3 dc, 1 dc in the next`
        named = {one.name for one in self.worked}
        if kind.name in SPACES:
            named -= set(SPACES)
        if self.passed is not None:
            named.add(self.passed.name)
        if is_under(found):
            named.clear()
        if placed and here.type == "NEXT" and kind != Kind("st") and named - {kind.name, "st"}:
            doubt = doubt or "counted"  # `1 dc in loop, 1 dc on dc, 2 in next`
        if placed and here.type == "NEXT" and kind.name in SPACES and kind.size and not kind.stitch:
            doubt = doubt or OF_SIZE  # `7 dc in the 2 ch, 3 ch, 1 sc in the next`
        if kind.name in SPACES and (on or mixed):
            doubt = "counted"  # `on the next`, behind a space; `1 dc on dc, 2 in space, 1 in next`
        return kind, doubt


def _behind_miss(found: Sequence[Terminal], prep: int) -> bool:
    """Whether the step whose place opens there stands right behind so many missed, of a kind: not
    behind `miss the dc`, which lies between the places."""
    start = _step_start(found, prep)
    noun = start < prep - 2 and found[start - 1].type in NOUNS
    return noun and types(found, max(0, start - 3), 2) == ["SKIP", "NUM"]


def _chains_missed(found: Sequence[Terminal], prep: int) -> int:
    """How many chains are missed right before the step whose place opens there."""
    at = _step_start(found, prep) - 3
    missed = at >= 0 and types(found, at, 3) == ["SKIP", "NUM", "CH"]
    return found[at + 1].number if missed else 0


def _step_start(found: Sequence[Terminal], prep: int) -> int:
    """Behind what stands before the step, `1 dc`, whose place opens there."""
    start = prep - 2
    while start > 0 and found[start - 1].type == "SEP":
        start -= 1
    return start


def _opens_at(found: Sequence[Terminal]) -> int | None:
    """Where the place opens that ends in the last word."""
    at = len(found) - 2
    while at >= 0 and found[at].type in WHICH | NOUNS | {"OF", "NUM", "EACHOF"}:
        at -= 1
    return at if types(found, at, 1) == ["PREP"] and at >= 0 else None


def _parts_stitches(found: Sequence[Terminal]) -> bool:
    """Whether chains or a picot stand between what is named last: no place is, then."""
    at = len(found) - 2
    while at > 0 and found[at].type in WHICH | {"NUM", "PAIR"}:
        at -= 1
    return types(found, at, 1) == ["BETWEEN"] and types(found, at - 1, 1) in (["CH"], ["PICOT"])


def _stands_alone(t: Terminals, at: int) -> bool:
    """Whether a word that says which, or how many, has no noun behind it."""
    slips = t[at - 1].type == "TO" and t[at].type == "NEXT" and at > 1 and t[at - 2].name == "ss"
    opened = slips or t[at - 1].type in OPENS | WHICH  # `slip to next, * 1 dc`
    return t[at].type in _WHICH and opened and ended(t, at + 1)


def _in_chains_before(found: Sequence[Terminal], prep: int, nth: int) -> bool:
    """Whether one closing stitch, with as many chains before it, may go into that one of them."""
    at = prep - 1
    closes = types(found, at, 1) == ["STITCH"] and found[at].name in CLOSING
    at -= 1 + (types(found, at - 1, 1) == ["NUM"])
    if not closes or types(found, at, 1) != ["SEP"] or found[at].name or nth < 3:
        return False
    if types(found, at - 3, 1) not in (["SEP"], ["AND"]) or at < 4:
        return False  # `5 chain, 1 double in the 4th; repeat`: there is nothing that they stand on
    chains = found[at - 2 : at]
    made = sorted(types(chains, 0, 2)) == ["CH", "NUM"] and sum(x.number for x in chains) >= nth
    return made and types(found, prep, 1) == ["PREP"] and found[prep].name == ""


def _named_next(t: Sequence[Terminal], at: int) -> Kind | None:
    """The space that the next place names, of `5 dc in one, 1 sc in the next loop`."""
    near = range(at + 1, min(len(t) - 1, at + _NEAR))
    noun = next((t[n + 1] for n in near if t[n].type == "NEXT"), None)
    kind = noun.kind if noun is not None else None
    return kind if kind is not None and kind.name in SPACES else None


_NEAR = 10
"""The next step has its place within so many words."""


def _prep_of(found: Sequence[Terminal]) -> int | None:
    """Where the place opens that ends here."""
    at = len(found) - 1
    while at > 0 and found[at].type in WHICH | {"NUM", "EACHOF"}:
        at -= 1
    return at if types(found, at, 1) == ["PREP"] else None


def _closes_row(t: Sequence[Terminal], at: int, found: Sequence[Terminal]) -> bool:
    """Whether one stitch `in last` ends the row here."""
    last = is_last(t, at)
    return last and types(t, at - 1, 1) == ["PREP"] and made(found) == 1 and only_ends(t[at + 1 :])


def _is_to_and_fro(t: Sequence[Terminal], at: int) -> bool:
    """Whether a row that ends `in last` seems to go to and fro, or has had all its spaces before in
    a repeat: `ch 3, * 1 dc in next space, 3 ch; repeat from *, 1 dc in last`."""
    ends = {x.name for x in t[at:] if x.type == "ENDING"}
    begun = chains_at(t, past(t, 0, "SEP", "ENDING"))[0] > 0
    again = [n for n in range(at) if t[n].type == "REPEAT" and not is_counted(t, n)]
    if any(x.type == "TOLAST" for x in t[:at]):
        return False  # `repeat from * to last loop; 1 dc in last`
    return "join" not in ends and ("turn" in ends or begun or bool(again))


def _stitch_of(found: Sequence[Terminal]) -> Kind | None:
    """The stitch of `4th treble of the shell`, where these words end in that."""
    at = len(found) - 2
    while at > 0 and found[at].type in WHICH:
        at -= 1
    said = found[at].type == "OF" and found[-1].type == "KIND" and at > 1
    nth = said and found[at - 1].type == "STITCH" and found[at - 2].type in ("ORD", "CENTRE")
    return Kind(found[at - 1].name) if nth else None


def _part_before(found: Sequence[Terminal], before: Terminals) -> Terminals:
    """The part named last, `1st st of … run`: what a bare `the last` behind it is of."""
    here = found[-1]
    at = len(found) - 2
    at -= types(found, at, 1) == ["NUM"] and found[at].number == 1  # `3rd treble of one group`
    if here.type not in NOUNS or at < 0 or found[at].type not in OPENS | WHICH:
        return before
    if here.type == "CH" and types(found, at, 2) == ["SKIP", "NUM"]:
        return before  # `miss 1 ch` of the same loop
    while at > 0 and found[at].type in WHICH:
        at -= 1
    whole = found[at].type == "OF" and types(found, at - 2, 1) == ["ORD"] and at > 1
    if whole:
        return [*found[at - 2 : at], here]
    return before if types(found, len(found) - 2, 1) == ["ORD"] else []


def _chain_of(part: Sequence[Terminal]) -> int:
    """The how-manieth chain of a loop a part is; the last counts as one behind which none is
    left."""
    whole = part[-1].kind if part else None
    if whole is None or whole.name not in SPACES:
        return 0
    return part[0].number if part[0].number > 0 else whole.size or _NEVER


_NEVER = 10**6
"""No loop has so many chains."""


def _is_same(found: Sequence[Terminal]) -> bool:
    return any(x.type == "SAME" for x in found[-3:])


def _noun(here: Terminal, found: Sequence[Terminal], last: Kind) -> Kind:
    """What a noun names, if it is that of a place or a skip and not a count of stitches."""
    if here.type == "KIND":
        kind = here.kind or last
        if kind.name == "run" and kind.stitch:
            return Kind(kind.stitch)  # `on the first of 7 dc, on next`
        part = types(found, len(found) - 3, 2) == ["OF", "THE"]  # `on the first of the nine`
        return Kind("st") if part and kind.name == "block" and kind.size else kind
    opened = [x.type for x in found[-4:-1]]
    ends = [n for n, type_ in enumerate(opened) if type_ in {"SEP", "KIND"}]
    if ends:  # `in the same, 1 dc`, `in loop 5 dc`
        del opened[: ends[-1] + 1]
    if not any(type_ in OPENS | WHICH for type_ in opened):
        return last
    if here.type == "STITCH":
        return Kind(here.name)
    return Kind("ch" if here.type == "CH" else "picot")
