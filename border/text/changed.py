"""Copied rows are made as their copies say: `but with 7 chain instead of 5`.

Where a row makes exactly so many, it makes the other number; what finds nothing there, or
could be meant in two ways, is told, and changes nothing.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct, field
from msgspec.structs import replace

from border.findings import Finding, Span
from border.text.made import Items, Making, Now, Stretch, makings, renumbered
from border.text.steps import passes_something, walk
from border.text.tree import Bracket, Copy, Difference, Headings, Repeat, Stitches, Where
from border.text.written_steps import made, write_difference

_WRITE_OUT = "write this row out"


_Said = tuple[Span, Difference]
"""A difference where it stands."""


class At(Struct, frozen=True):
    """Where a row stands that is a copy, and its words that say so."""

    row: Span
    copy: Span

    def of(self, one: Difference) -> Span:
        """Where to point for a difference: at itself, or where a row with it is copied."""
        inside = one.span.source == self.row.source and self.row.start <= one.span.start
        return one.span if inside and one.span.end <= self.row.end else self.copy


class _Met(Struct):
    """What the rows of a copy make that one of its differences speaks of.

    `number`: the round that it was first looked for in, and where that stands.
    """

    one: Difference
    number: int
    at: At
    numbers: dict[int, None] = field(default_factory=dict)
    changes: bool = False


class Changed(Struct):
    """Puts the differences of copies into what they copy, row by row."""

    headings: Headings
    findings: list[Finding]
    _met: dict[_Said, _Met] = field(default_factory=dict)
    _told: set[_Said] = field(default_factory=set)

    def put(
        self, copies: Sequence[Copy], stretches: Sequence[Stretch], number: int, at: At
    ) -> list[Items]:
        """The steps of a row's text, or of its clauses, with all that its copies have otherwise.

        `number` is the round that they are made for, `at` where its row stands.
        """
        for copy in copies:
            found = [making for stretch in stretches for making in makings(stretch)]
            sure = [self._settled(one, copy, found, number, at) for one in copy.differences]
            settled = [one for one in sure if one is not None]
            if any(len({c.number for c in settled if changes(c, m)}) > 1 for m in found):
                message = "two of these differences would change the same"
                self._tell("difference-unclear", message, _WRITE_OUT, settled[-1], number, at)
                continue
            stretches = self._with(settled, stretches, number, at)
        return [stretch.items for stretch in stretches]

    def _settled(
        self, one: Difference, copy: Copy, found: Sequence[Making], number: int, at: At
    ) -> Difference | None:
        """A difference with the number that it changes; None where nothing is sure to be meant."""
        own = any(other.of in ("picot", "ring") for other in copy.differences)
        fitting = [m for m in found if m.fits(one) and not (own and m.doubt and m.doubt.picots)]
        known = dict.fromkeys(m.number for m in fitting if m.doubt is None or not m.doubt.aside)
        met = self._met.setdefault((one.span, one), _Met(one, number, at))
        if len(copy.rows) > 1 and one.span.source != at.row.source:
            met.changes = True  # the other file tells of it: another of its rows may be meant
        met.numbers |= known
        if one.instead_of is None and len(met.numbers) > 1:
            makes = self._either(one, met)
            message = f"what is copied makes {makes}, and which of them is meant is not said"
            self._tell("difference-unclear", message, self._edits(one, met), one, number, at)
            return None
        old = next(iter(known), None) if one.instead_of is None else one.instead_of
        fitting = [m for m in fitting if m.number == old]
        if doubt := self._doubt(one, found, fitting):
            self._tell("difference-unclear", *doubt, one, number, at)
        if doubt or not fitting or old == one.number:
            return None
        met.changes = True
        return replace(one, instead_of=old)

    def _doubt(
        self, one: Difference, found: Sequence[Making], fitting: Sequence[Making]
    ) -> tuple[str, str] | None:
        """Why it is not sure what a difference changes, and what settles that."""
        all_left_out = one.number == 0 and one.instead_of is None and one.of != "ch"
        beside = [m for m in found if all_left_out and m.fits(one) and m.doubt]
        for making in [*fitting, *beside]:
            if making.doubt is not None:
                help_ = _WRITE_OUT
                if making.doubt.between:
                    between = self._written(replace(one, where=Where.BETWEEN))
                    help_ = f'if it is not meant, write "{between}"; otherwise {_WRITE_OUT}'
                return making.doubt.message, help_
            if not one.number and making.left:
                return making.left, 'write this row out, with "skip" for what is passed over'
            if 0 < one.number < making.least:
                said = f"{one.number} instead of {making.number}"
                return f"{said} cannot be made everywhere in the copied row", _WRITE_OUT
        insides = {making.inside for making in fitting}
        if one.where is Where.BETWEEN and len(insides) > 1:
            everywhere = self._written(replace(one, where=Where.ALL))
            message = "they stand between stitches in one place, and between one place and the next"
            return message, f'if both are meant, write "{everywhere}"; otherwise {_WRITE_OUT}'
        several = sum(making.inside for making in fitting) > 1
        if one.where is Where.GROUPS and one.instead_of is None and several:
            both = [f'"{self._written(replace(one, instead_of=m.number))}"' for m in fitting[:1]]
            return "there are several of them in one place", f"if all are meant, write {both[0]}"
        return None

    def _with(
        self, settled: list[Difference], stretches: Sequence[Stretch], number: int, at: At
    ) -> Sequence[Stretch]:
        """The stretches with what differs, where something is left of each of them."""

        def other(making: Making) -> Now:
            said = next((c for c in settled if changes(c, making)), None)
            return Now(said.number, at.of(said)) if said else Now(making.number)

        put = [replace(stretch, items=renumbered(stretch, other)) for stretch in stretches]
        for before, after in zip(stretches, put, strict=True):
            if settled and not _is_left(before) <= _is_left(after):
                message = "nothing is left to work in the copied row, or in one bracket or repeat"
                left_out = next((c for c in settled if not c.number), settled[-1])
                what = ("difference-leaves-nothing", message, _WRITE_OUT)
                self._tell(*what, left_out, number, at)
                return stretches
        return put

    def tell_unmet(self) -> None:
        """Tells of each difference that found nothing in all the rows that it is said of."""
        for said, met in self._met.items():
            if met.changes or said in self._told:
                continue
            one, makes = met.one, self._either(met.one, met)
            old = None if one.instead_of is None else self._made(one, one.instead_of)
            message = f"what is copied makes no {old or self._made(one, None)}"
            if one.number and one.number in met.numbers and one.instead_of in (None, one.number):
                message = f"what is copied makes {makes} as it is"
            message += ", so there is nothing to change"
            help_ = _WRITE_OUT
            if old and met.numbers and one.instead_of not in met.numbers:
                help_ = f"it makes {makes}: {self._edits(one, met)}"
            self._tell("difference-finds-nothing", message, help_, one, met.number, met.at)

    def _either(self, one: Difference, met: _Met) -> str:
        return " and ".join(self._made(one, n) for n in sorted(met.numbers))

    def _edits(self, one: Difference, met: _Met) -> str:
        """What to write for one of the numbers that the copied rows make."""
        each = [replace(one, instead_of=n) for n in sorted(met.numbers) if n != one.number]
        return "write " + " or ".join(f'"{self._written(c)}"' for c in each[:4])

    def _made(self, one: Difference, number: int | None) -> str:
        of = "picot" if one.of == "ring" and number is None else one.of
        return made(of, number, self.headings.terms or "us", self.headings.overrides)

    def _written(self, one: Difference) -> str:
        return write_difference(one, self.headings.terms or "us", self.headings.overrides)

    def _tell(
        self, code: str, message: str, help_: str, one: Difference, number: int, at: At
    ) -> None:
        """A finding where the difference is said; of another border's, where that is copied."""
        if (one.span, one) not in self._told:
            self._told.add((one.span, one))
            self.findings.append(Finding(code, message, help_, at.of(one), number))


def changes(one: Difference, making: Making) -> bool:
    """Whether a difference changes what is made here: it is that, and just so many."""
    return making.fits(one) and making.number == one.instead_of


def _is_left(stretch: Stretch) -> bool:
    """Whether something is worked in a stretch, in each of its brackets, and by each repeat."""
    for item in walk(stretch.items):
        if isinstance(item, Repeat) and not item.items:
            return False
        if isinstance(item, Bracket) and not _makes_stitches(item.items):
            return False
        if isinstance(item, Repeat) and item.times is None and not _passes(item.items, stretch):
            return False
    return bool(stretch.items) and (not stretch.repeats or _passes(stretch.items, stretch))


def _passes(items: Items, stretch: Stretch) -> bool:
    return passes_something(items, stretch.at_joint)


def _makes_stitches(items: Items) -> bool:
    return any(isinstance(item, Stitches) for item in walk(items))
