"""The tree: what a border text says, construct by construct.

Nodes compare equal when they say the same, wherever they stand in a file:
spans take no part in comparison. Counts are `int`. The tree stays close to
the text; what a row *means* (copies, start chains, the row as its own repeat)
is settled in `readings.py`.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from typing import TypeAlias

from border.findings import Span

NOWHERE = Span("", 0, 0)


def _span() -> Span:
    return field(default=NOWHERE, compare=False, repr=False)


# --- kinds and places ---------------------------------------------------------


@dataclass(frozen=True, slots=True)
class Kind:
    """Something that can be worked into.

    `name`: `st`, `ch`, `loop`, `space`, `group`, `block`, `picot`, `joint`, or
    the canonical name of a stitch (`dc`). `size`: N of `ch-N space`,
    `group of N`, `N-dc group`. `stitch`: the `dc` of `N-dc group`.
    `loop` (and hole, arch …) is what the text said; above row 0 it is a space.
    """

    name: str
    size: int | None = None
    stitch: str | None = None


ST = Kind("st")


@dataclass(frozen=True, slots=True)
class Whole:
    """A whole site: `block`, `ch-5 space`, `dc`."""

    of: Kind


@dataclass(frozen=True, slots=True)
class Part:
    """One atom of a site: `first st of next block`. `nth` from 1, or -1 for the last.

    `unit` is `st`, `ch` or a named stitch.
    """

    nth: int
    unit: Kind
    of: Kind


@dataclass(frozen=True, slots=True)
class Centre:
    """The centre of a site: its middle atom, or the point between the middle two."""

    of: Kind


@dataclass(frozen=True, slots=True)
class Between:
    """The point between two neighbouring sites: `between next 2 X`."""

    of: Kind


@dataclass(frozen=True, slots=True)
class BetweenPicots:
    """The point between the two picots of a site: `between the picots of next space`."""

    of: Kind


Target: TypeAlias = Whole | Part | Centre | Between | BetweenPicots


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


@dataclass(frozen=True, slots=True)
class Place:
    """A place: which of the sites, and what they are.

    `targets` is a union in the order of the text (empty only for `same place`).
    `count` is M of `next M X`, or N of `in Nth X` and `in every Nth X`. `each` tells `each of the
    next M X` from `the next M X`.
    """

    which: Which
    targets: tuple[Target, ...]
    count: int = 1
    each: bool = False
    span: Span = _span()


# --- steps --------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class Chains:
    """`ch N`."""

    count: int
    span: Span = _span()


@dataclass(frozen=True, slots=True)
class Skip:
    """`skip N X`; `target` is None for a bare `skip N` (as many `st`)."""

    count: int
    target: Target | None
    span: Span = _span()


@dataclass(frozen=True, slots=True)
class Stitches:
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
    span: Span = _span()


@dataclass(frozen=True, slots=True)
class Picots:
    """`picot`, `picot of N`, `N picots`: `count` rings of `chains` chains each."""

    count: int = 1
    chains: int = 3
    span: Span = _span()


@dataclass(frozen=True, slots=True)
class StartChain:
    """`ch N as dc [and ch M]`, `ch N, not counted`.

    `stands_for` None: not counted. `then`: chains made besides. `place`: where
    the stitch goes, if said.
    """

    count: int
    stands_for: str | None
    then: int = 0
    place: Place | None = None
    span: Span = _span()


@dataclass(frozen=True, slots=True)
class Bracket:
    """`( … ) in next X` and `…, all in next X`: the list, all in that place.

    `place` is never None; `parted` as for `Stitches`.
    """

    items: tuple[Item, ...]
    place: Place
    parted: int = 0
    span: Span = _span()


@dataclass(frozen=True, slots=True)
class ToLast:
    """`to last N X`."""

    count: int
    of: Target


@dataclass(frozen=True, slots=True)
class Repeat:
    """A stretch worked again: `* … ; repeat from *`, `( … ) N times`.

    `times`: in all, counted from the first working; None: open-ended, to the
    end or `to_last`. `star`: opened by a star, so the stretch is worked once
    where it stands before `to_last` is looked at. A bracket with no number and
    no place is `times` 1, `star` False.
    """

    items: tuple[Item, ...]
    times: int | None
    to_last: ToLast | None = None
    star: bool = False
    span: Span = _span()


@dataclass(frozen=True, slots=True)
class Begin:
    """`begin in X`, `sl st to next X`, `fasten the thread to next X`."""

    place: Place
    span: Span = _span()


class Ending(StrEnum):
    """Words that make no stitch but end or close a row."""

    JOIN = "join"
    TURN = "turn"
    FASTEN_OFF = "fasten off"


@dataclass(frozen=True, slots=True)
class End:
    """`join`, `turn`, `fasten off`: no atoms."""

    what: Ending
    span: Span = _span()


Item: TypeAlias = "Chains | Skip | Stitches | Picots | StartChain | Bracket | Repeat | Begin | End"

# --- rows ---------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class Text:
    """The steps of a row or a clause.

    `repeats`: the text ends in a bare `repeat` with no star to go back to, so
    the whole of it, start chain left out, is repeated to the end. `ends`:
    `join`, `turn`, `fasten off` at its end, in order (after the bare repeat
    where there is one). No items: `leave unworked`.
    """

    items: tuple[Item, ...]
    repeats: bool = False
    ends: tuple[End, ...] = ()
    span: Span = _span()


@dataclass(frozen=True, slots=True)
class OverMotifs:
    """`over each motif:`, `over each motif of NAME:`."""

    name: str | None = None


@dataclass(frozen=True, slots=True)
class Over:
    """`over NAME:`."""

    name: str


@dataclass(frozen=True, slots=True)
class Elsewhere:
    """`elsewhere:`, `elsewhere, over each motif:`."""

    each_motif: bool = False


@dataclass(frozen=True, slots=True)
class AtJoints:
    """`at each joint:`."""


@dataclass(frozen=True, slots=True)
class AtJoint:
    """`at joint A | B:`."""

    a: str
    b: str


Scope: TypeAlias = OverMotifs | Over | Elsewhere | AtJoints | AtJoint


@dataclass(frozen=True, slots=True)
class Clause:
    """One clause of a row: a scope and the text worked there.

    `head` is the span of the scope's own words, up to the colon.
    """

    scope: Scope
    text: Text
    head: Span = _span()
    span: Span = _span()


@dataclass(frozen=True, slots=True)
class Copy:
    """`as round 2`, `repeat rounds 2 and 3 [twice]`, `as rounds 1-2 of "FILE"`.

    `rows` once through, `times` times over.
    """

    rows: tuple[int, ...]
    times: int = 1
    file: str | None = None
    ends: tuple[End, ...] = ()
    span: Span = _span()


@dataclass(frozen=True, slots=True)
class Claim:
    """`(70 spaces)`, `(12 repeats)`: `of` None means repeats."""

    count: int
    of: Kind | None
    span: Span = _span()


Body: TypeAlias = Text | tuple[Clause, ...] | Copy


@dataclass(frozen=True, slots=True)
class Row:
    """One row as written: `numbers` are the rounds that its head names, ascending.

    `head` is the span of the head's own words. `broken`: the row could not be
    read, and stands only for its numbers.
    """

    numbers: tuple[int, ...]
    body: Body
    claims: tuple[Claim, ...] = ()
    head: Span = _span()
    span: Span = _span()
    broken: bool = False


# --- the border ---------------------------------------------------------------


class Worked(StrEnum):
    """The heading `worked:`."""

    IN_ROUNDS = "in rounds"
    IN_ROWS = "in rows"
    ONE_WAY = "one way"


@dataclass(frozen=True, slots=True)
class Multiple:
    """The heading `multiple of M plus A`, a claim that is checked."""

    multiple: int
    plus: int
    span: Span = _span()


@dataclass(frozen=True, slots=True)
class Headings:
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
    bare_in_each: bool = False
    multiple: Multiple | None = None
    overrides: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Border:
    """A border text as a tree."""

    headings: Headings
    rows: tuple[Row, ...]
    span: Span = _span()
