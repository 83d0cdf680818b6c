"""What is told of the variations of copies: what they find nothing of, and what is not sure."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct, field
from msgspec.structs import replace

from border.findings import Finding, Span
from border.text.copying.made import Stretch
from border.text.tree import (
    Copy,
    Difference,
    Exchanged,
    Headings,
    Moved,
    Named,
    Text,
    Variation,
    Where,
)
from border.text.written import write_text
from border.text.written_steps import made, write_difference, write_named

WRITE_OUT = "write this row out"
THE_SAME = "two of these differences would change the same"

_Said = tuple[Span, Variation]
"""A variation where it stands."""


class At(Struct, frozen=True):
    """Where a row stands that is a copy, and its words that say so."""

    row: Span
    copy: Span

    def of(self, one: Variation) -> Span:
        """Where to point for a difference: at itself, or where a row with it is copied."""
        inside = one.span.source == self.row.source and self.row.start <= one.span.start
        return one.span if inside and one.span.end <= self.row.end else self.copy


class Met(Struct):
    """What the rows of a copy make that one of its differences speaks of.

    `number`: the round that it was first looked for in, and where that stands.
    """

    one: Variation
    number: int
    at: At
    numbers: dict[int, None] = field(default_factory=dict)
    changes: bool = False


class Variations(Struct):
    """What the copies of a border have otherwise: what is known of each, and what is told."""

    headings: Headings
    findings: list[Finding]
    _met: dict[_Said, Met] = field(default_factory=dict)
    _told: set[_Said] = field(default_factory=set)

    def look(self, one: Variation, copy: Copy, number: int, at: At) -> Met:
        """What is known of a variation, which is now looked for in one row more."""
        met = self._met.setdefault((one.span, one), Met(one, number, at))
        if len(copy.rows) > 1 and one.span.source != at.row.source:
            met.changes = True  # the other file tells of it: another of its rows may be meant
        return met

    def row(self, stretches: Sequence[Stretch]) -> str:
        """The steps as they are written, of a row or of its clauses one after the other."""
        terms, overrides = self.headings.terms or "us", self.headings.overrides
        texts = (Text(s.items, s.repeats and bool(s.items)) for s in stretches)
        return " … ".join(write_text(text, terms, overrides) for text in texts)

    def tell_unmet(self) -> None:
        """Tells of each difference that found nothing in all the rows that it is said of."""
        for said, met in self._met.items():
            if met.changes or said in self._told:
                continue
            one = met.one
            if not isinstance(one, Difference):
                self._tell_not_made(one, met)
                continue
            makes = self.either(one, met)
            old = None if one.instead_of is None else self.made(one.of, one.instead_of)
            message = f"what is copied makes no {old or self.made(one.of, None)}"
            message += f" {one.where.value}" if one.where is Where.APART else ""
            if one.number and one.number in met.numbers and one.instead_of in (None, one.number):
                message = f"what is copied makes {makes} as it is"
            message += ", so there is nothing to change"
            help_ = WRITE_OUT
            if old and met.numbers and one.instead_of not in met.numbers:
                help_ = f"it makes {makes}: {self.edits(one, met)}"
            self.tell("difference-finds-nothing", message, help_, one, met.number, met.at)

    def _tell_not_made(self, one: Moved | Exchanged, met: Met) -> None:
        """Tells that what is worked elsewhere, or in another stitch, is not made."""
        terms, overrides = self.headings.terms or "us", self.headings.overrides
        help_ = WRITE_OUT
        if isinstance(one, Exchanged):
            what = self.made(one.instead_of, None)
        else:
            what = write_named(one.named, terms, overrides)
            if len(one.named) > 1:
                what += " in one place"
            elif one.named and one.named[0].number is not None and one.place.count == 1:
                any_ = replace(one, named=(Named(one.named[0].of),))
                help_ = f'write "{self.written(any_)}" for all that it makes'
                if len(met.numbers) == 1:
                    new, old = one.named[0].number, next(iter(met.numbers))
                    other = self.written(Difference(one.named[0].of, new, old))
                    help_ += f', or "{other}, {self.written(any_)}" for the other number'
        message = f"what is copied makes no {what or 'stitches'}, so there is nothing to change"
        self.tell("difference-finds-nothing", message, help_, one, met.number, met.at)

    def either(self, one: Difference, met: Met) -> str:
        return " and ".join(self.made(one.of, n) for n in sorted(met.numbers))

    def edits(self, one: Difference, met: Met) -> str:
        """What to write for one of the numbers that the copied rows make."""
        each = [replace(one, instead_of=n) for n in sorted(met.numbers) if n != one.number]
        return "write " + " or ".join(f'"{self.written(c)}"' for c in each[:4])

    def made(self, of: str, number: int | None) -> str:
        of = "picot" if of == "ring" and number is None else of
        return made(of, number, self.headings.terms or "us", self.headings.overrides)

    def written(self, one: Variation) -> str:
        return write_difference(one, self.headings.terms or "us", self.headings.overrides)

    def tell(
        self, code: str, message: str, help_: str, one: Variation, number: int, at: At
    ) -> None:
        """A finding where the difference is said; of another border's, where that is copied."""
        if (one.span, one) not in self._told:
            self._told.add((one.span, one))
            self.findings.append(Finding(code, message, help_, at.of(one), number))
