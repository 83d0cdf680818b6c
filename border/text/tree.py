"""The tree: what a border text says, construct by construct.

Nodes compare equal when they say the same, wherever they stand in a file:
spans take no part in comparison. Counts are `int`. The tree stays close to
the text; what a row *means* (copies, start chains, the row as its own repeat)
is settled in `readings.py`.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Any, TypeAlias

from msgspec import Struct

from border.findings import Span

NOWHERE = Span("", 0, 0)


class Said(Struct, frozen=True, kw_only=True):
    """What stands somewhere in a text: equal to all that says the same, wherever it stands."""

    span: Span = NOWHERE

    def _content(self) -> tuple[Any, ...]:
        return tuple([getattr(self, f) for f in self.__struct_fields__ if f not in _WHERE])

    def __eq__(self, other: object) -> bool:
        if type(self) is not type(other):
            return NotImplemented
        return self is other or self._content() == other._content()

    def __hash__(self) -> int:
        return hash((type(self), self._content()))

    def __repr__(self) -> str:
        return f"{type(self).__name__}({', '.join(map(repr, self._content()))})"


_WHERE = ("span", "head", "said")


# --- kinds and places ---------------------------------------------------------


class Kind(Struct, frozen=True):
    """Something that can be worked into.

    `name`: `st`, `ch`, `loop`, `space`, `group`, `shell`, `block`, `picot`, `joint`, or
    the canonical name of a stitch (`dc`). `size`: N of `ch-N space`,
    `group of N`, `N-dc group`. `stitch`: the `dc` of `N-dc group`; of a space, what stands on
    both sides of it.
    `loop` (and hole, arch …) is what the text said; above row 0 it is a space.
    """

    name: str
    size: int | None = None
    stitch: str | None = None


ST = Kind("st")
SPACES = ("space", "loop")
"""The kinds that are runs of chains in every row but the first."""


class Whole(Struct, frozen=True):
    """A whole site: `block`, `ch-5 space`, `dc`."""

    of: Kind


class Part(Struct, frozen=True):
    """One atom of a site: `first st of next block`. `nth` from 1, or -1 for the last.

    `unit` is `st`, `ch` or a named stitch.
    """

    nth: int
    unit: Kind
    of: Kind


class Centre(Struct, frozen=True):
    """The centre of a site: its middle atom, or the point between the middle two."""

    of: Kind


class Between(Struct, frozen=True):
    """The point between two neighbouring sites: `between next 2 X`."""

    of: Kind


class BetweenPicots(Struct, frozen=True):
    """The point between the two picots of a site: `between the picots of next space`."""

    of: Kind


class AtOnce(Struct, frozen=True):
    """Several neighbouring sites that are taken up as one: `the next 3 X at once`."""

    count: int
    of: Kind


Target: TypeAlias = Whole | Part | Centre | Between | BetweenPicots | AtOnce


class Which(StrEnum):
    """Which of the sites is meant."""

    NEXT = "next"
    THE = "the"  # as `next`; in `begin in the X` it may straddle the start
    FIRST = "first"
    LAST = "last"
    CENTRE = "centre"  # centre M X
    NTH = "nth"  # in 2nd X: passing over count - 1
    EACH = "each"  # to the end of the scope
    EVERY = "every"  # every count-th, to the end of the scope
    SAME = "same"
    SKIPPED = "skipped"


class Place(Said, frozen=True):
    """A place: which of the sites, and what they are.

    `targets` is a union in the order of the text (empty only for `same place`).
    `count` is M of `next M X`, or N of `in Nth X` and `in every Nth X`. `each` tells `each of the
    next M X` from `the next M X`.
    """

    which: Which
    targets: tuple[Target, ...]
    count: int = 1
    each: bool = False


# --- steps --------------------------------------------------------------------


class Chains(Said, frozen=True):
    """`ch N`."""

    count: int


class Skip(Said, frozen=True):
    """`skip N X`; `target` is None for a bare `skip N` (as many `st`)."""

    count: int
    target: Target | None


class Stitches(Said, frozen=True):
    """`N dc`, `N dc in …`, `N dc together over …`, `N-dc cluster in …`.

    `count` stitches; `place` None: one in each of the next `count` st (inside a
    bracket with a place: all into that). `between`: chains between the `count`
    stitches. `parted`: chains between one working and the next
    (`… in each X, with ch 2 between`). `together`: all that the item makes are
    closed into one stitch. `cluster`: each stitch is a cluster of so many (0:
    plain stitches). `modifiers`: words kept for the sheet, no effect on counts.
    """

    count: int
    stitch: str
    place: Place | None = None
    between: int = 0
    parted: int = 0
    together: bool = False
    cluster: int = 0
    modifiers: tuple[str, ...] = ()


class Picots(Said, frozen=True):
    """`picot`, `picot of N`, `N picots`: `count` rings of `chains` chains each."""

    count: int = 1
    chains: int = 3


class StartChain(Said, frozen=True):
    """`ch N as dc [and ch M]`, `ch N, not counted`.

    `stands_for` None: not counted. `then`: chains made besides. `place`: where
    the stitch goes, if said.
    """

    count: int
    stands_for: str | None
    then: int = 0
    place: Place | None = None


class Bracket(Said, frozen=True):
    """`( … ) in next X` and `…, all in next X`: the list, all in that place.

    `place` is never None; `parted` as for `Stitches`.
    """

    items: tuple[Item, ...]
    place: Place
    parted: int = 0


class AsTheyCome(Said, frozen=True):
    """`(1 dc in each dc, 2 dc in each space) as they come`: to the end, each part where its
    site comes.

    Of `items` each names its next site, which is where it is worked once; the text says `in
    each`. `parted` as for `Stitches`.
    """

    items: tuple[Stitches | Bracket, ...]
    parted: int = 0

    @property
    def place(self) -> Place:
        """All that the parts go into, as one `in each`."""
        places = [item.place for item in self.items if item.place is not None]
        targets = tuple(target for place in places for target in place.targets)
        return Place(Which.EACH, targets, span=self.span)


class Arch(Said, frozen=True):
    """`turn, ch 8, 1 sl st in 9th st from hook, turn, 11 sc in the arch`.

    The row turns inside itself: `chains` are fastened with one `stitch` in the `back`-th stitch
    from the hook, the last one made being the first. So they lie over all that was made from that
    stitch on, and `items`, which name no place, fill them.
    """

    chains: int
    back: int
    items: tuple[Item, ...]
    stitch: str = "ss"


class ToLast(Struct, frozen=True):
    """`to last N X`."""

    count: int
    of: Target


class Repeat(Said, frozen=True):
    """A stretch worked again: `* … ; repeat from *`, `( … ) N times`.

    `times`: in all, counted from the first working; None: open-ended, to the
    end or `to_last`. `star`: opened by a star, so the stretch is worked once
    where it stands before `to_last` is looked at. A bracket with no number and
    no place is `times` 1, `star` False. `said`: the number that stands in the text,
    where it says neither "more" nor "in all"; it takes no part in comparison.
    """

    items: tuple[Item, ...]
    times: int | None
    to_last: ToLast | None = None
    star: bool = False
    said: int | None = None


class Begin(Said, frozen=True):
    """`begin in X`, `sl st to next X`, `fasten the thread to next X`."""

    place: Place


class Ending(StrEnum):
    """Words that make no stitch but end or close a row."""

    JOIN = "join"
    TURN = "turn"
    FASTEN_OFF = "fasten off"


class End(Said, frozen=True):
    """`join`, `turn`, `fasten off`: no atoms."""

    what: Ending


Item: TypeAlias = (
    "Chains | Skip | Stitches | Picots | StartChain | Bracket | AsTheyCome | Arch | Repeat | Begin"
    " | End"
)

# --- rows ---------------------------------------------------------------------


class Text(Said, frozen=True):
    """The steps of a row or a clause.

    `repeats`: the text ends in a bare `repeat` with no star to go back to, so
    the whole of it, start chain left out, is repeated to the end. `ends`:
    `join`, `turn`, `fasten off` at its end, in order (after the bare repeat
    where there is one). No items: `leave unworked`.
    """

    items: tuple[Item, ...]
    repeats: bool = False
    ends: tuple[End, ...] = ()


class OverMotifs(Struct, frozen=True):
    """`over each motif:`, `over each motif of NAME:`."""

    name: str | None = None


class Over(Struct, frozen=True):
    """`over NAME:`."""

    name: str


class Elsewhere(Struct, frozen=True):
    """`elsewhere:`, `elsewhere, over each motif:`."""

    each_motif: bool = False


class AtJoints(Struct, frozen=True):
    """`at each joint:`."""


class AtJoint(Struct, frozen=True):
    """`at joint A | B:`."""

    a: str
    b: str


Scope: TypeAlias = OverMotifs | Over | Elsewhere | AtJoints | AtJoint


class Clause(Said, frozen=True):
    """One clause of a row: a scope and the text worked there.

    `head` is the span of the scope's own words, up to the colon.
    """

    scope: Scope
    text: Text
    head: Span = NOWHERE


class Where(StrEnum):
    """Of all that a copied row makes, what a difference is said of."""

    ALL = ""
    BETWEEN = "between"  # chains between stitches
    APART = "between shells"  # chains between one place and the next
    GROUPS = "in the groups"  # stitches that go into one place


class Difference(Said, frozen=True):
    """What a copy has otherwise: `ch 7 instead of ch 5`, `omitting 3 dc`.

    `of`: `ch`, `picot`, `ring` (the chains of a picot), or the canonical name of a stitch.
    `number`: so many of it, 0 where it is left out. `instead_of` None: of the one number that
    the copied row makes of it.
    """

    of: str
    number: int
    instead_of: int | None = None
    where: Where = Where.ALL


class Named(Struct, frozen=True):
    """Something that a copied row makes: `the dc`, `3 dc`, `ch 3`; `number` None: however many.

    `of`: `ch`, `picot`, or the canonical name of a stitch.
    """

    of: str
    number: int | None = None


class Moved(Said, frozen=True):
    """What a copy works in another place: `working the 3 dc, ch 3, 3 dc in next ch-3 space`.

    `named`: one stitch, or a list of which all have a number and no two of a kind stand side by
    side; empty: all that the copied row works. `place`: the next one, or each; as many as the
    stitches where they go one by one into them.
    """

    named: tuple[Named, ...]
    place: Place


class Exchanged(Said, frozen=True):
    """A stitch of which a copy makes another throughout: `with dc instead of sc`."""

    stitch: str
    instead_of: str


Variation: TypeAlias = "Difference | Moved | Exchanged"


class Copy(Said, frozen=True):
    """`as round 2`, `repeat rounds 2 and 3 [twice]`, `as rounds 1-2 of "FILE"`.

    `rows` once through, `times` times over. `differences`: all said of the rows as they are
    copied, so that none changes what another has made.
    """

    rows: tuple[int, ...]
    times: int = 1
    file: str | None = None
    ends: tuple[End, ...] = ()
    differences: tuple[Variation, ...] = ()


class Claim(Said, frozen=True):
    """`(70 spaces)`, `(12 repeats)`: `of` None means repeats."""

    count: int
    of: Kind | None


Body: TypeAlias = Text | tuple[Clause, ...] | Copy


class Row(Said, frozen=True):
    """One row as written: `numbers` are the rounds that its head names, ascending.

    `head` is the span of the head's own words. `broken`: the row could not be
    read, and stands only for its numbers. `note`: what its head says besides, a colour.
    `foundation`: it makes only the edge that the others are worked on, and is no round.
    """

    numbers: tuple[int, ...]
    body: Body
    claims: tuple[Claim, ...] = ()
    head: Span = NOWHERE
    broken: bool = False
    note: str = ""
    foundation: bool = False


# --- the border ---------------------------------------------------------------


class Worked(StrEnum):
    """The heading `worked:`."""

    IN_ROUNDS = "in rounds"
    IN_ROWS = "in rows"
    ONE_WAY = "one way"


class Bare(StrEnum):
    """The heading `bare stitches:`, of stitches that stand without a place before a placed one."""

    EACH = "one in each"
    BEHIND = "in the place behind"


class Multiple(Said, frozen=True):
    """The heading `multiple of M plus A`, a claim that is checked."""

    multiple: int
    plus: int


class Headings(Struct, frozen=True):
    """The headings of a border; None where the text does not say.

    `terms` is `us`, `uk` or `early`. `overrides` maps words as written (lower
    case) to canonical stitch names. `in_all` has done its work when the tree
    is built (`Repeat.times` counts all workings).
    """

    name: str | None = None
    terms: str | None = None
    chains_count: bool | None = None
    in_all: bool | None = None
    rows_repeated: bool | None = None
    worked: Worked | None = None
    bare: Bare | None = None
    multiple: Multiple | None = None
    overrides: tuple[tuple[str, str], ...] = ()
    places: tuple[tuple[str, str], ...] = ()


class Border(Said, frozen=True):
    """A border text as a tree."""

    headings: Headings
    rows: tuple[Row, ...]
