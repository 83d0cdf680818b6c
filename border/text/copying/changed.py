"""Copied rows are made as their copies say: `but with 7 chain instead of 5`.

Where a row makes exactly so many, it makes the other number; what finds nothing there, or
could be meant in two ways, is told, and changes nothing.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from border.text.copying.exchanged import exchanged, makes, stands_for
from border.text.copying.made import Items, Making, Now, Stretch, makings, renumbered
from border.text.copying.moved import Asked, Doubtful, Move, Others, move, put_there
from border.text.copying.variations import THE_SAME, WRITE_OUT, At, Variations
from border.text.steps import passes_something, walk
from border.text.tree import (
    Arch,
    Bracket,
    Copy,
    Difference,
    Exchanged,
    Moved,
    Repeat,
    Stitches,
    Where,
)


class _Settled(Struct, frozen=True):
    """The numbers and the stitches of a copy that are sure."""

    numbers: list[Difference]
    stitches: dict[str, str]


class Changed(Variations):
    """Puts the variations of copies into what they copy, row by row."""

    def put(
        self, copies: Sequence[Copy], stretches: Sequence[Stretch], number: int, at: At
    ) -> list[Items]:
        """The steps of a row's text, or of its clauses, with all that its copies have otherwise.

        `number` is the round that they are made for, `at` where its row stands.
        """
        turned = any(isinstance(item, Arch) for s in stretches for item in walk(s.items))
        for copy in copies:
            if turned:
                self._turned_back(copy, number, at)
                continue
            moves = self._moves(copy, stretches, number, at)
            others = {n: item for _, moved in moves for n, item in moved.others.items()}
            numbers = self._numbers(copy, put_there(stretches, others), number, at)
            stitches = self._stitches(copy, stretches, number, at)
            if numbers is None or stitches is None:
                continue
            settled = _Settled(numbers, stitches)
            copied, stretches = stretches, self._with(settled, stretches, others, number, at)
            for one, moved in moves:
                if (asked := moved.asked) is not None:
                    besides = None
                    if asked.others is not None:
                        besides = self._with(settled, copied, others | asked.others, number, at)
                    self._ask(one, asked, stretches, besides, number, at)
        return [stretch.items for stretch in stretches]

    def _turned_back(self, copy: Copy, number: int, at: At) -> None:
        """No number of a row that turns inside itself stands alone: it counts back."""
        message = "the copied row turns inside itself, and counts back over what it has made"
        for one in copy.differences:
            self.look(one, copy, number, at).changes = True
            self.tell("difference-unclear", message, WRITE_OUT, one, number, at)

    def _moves(
        self, copy: Copy, stretches: Sequence[Stretch], number: int, at: At
    ) -> list[tuple[Moved, Move]]:
        """What is worked elsewhere."""
        found: list[tuple[Moved, Move]] = []
        for one in copy.differences:
            if not isinstance(one, Moved):
                continue
            met = self.look(one, copy, number, at)
            moved = move(one, stretches, at.of(one))
            if moved is None and one.named:
                made = (m for s in stretches for m in makings(s) if m.of == one.named[0].of)
                met.numbers |= dict.fromkeys(m.number for m in made if m.doubt is None)
            if isinstance(moved, Move) and any(
                moved.others.keys() & other.others.keys() for _, other in found
            ):
                moved = Doubtful(THE_SAME)
            if isinstance(moved, Doubtful):
                self.tell("difference-unclear", moved.message, WRITE_OUT, one, number, at)
            elif moved is not None:
                met.changes = True
                found.append((one, moved))
        return found

    def _stitches(
        self, copy: Copy, stretches: Sequence[Stretch], number: int, at: At
    ) -> dict[str, str] | None:
        """Which stitches are made instead of which; None where two are for one."""
        found: dict[str, str] = {}
        for one in copy.differences:
            if not isinstance(one, Exchanged):
                continue
            met = self.look(one, copy, number, at)
            if found.get(one.instead_of, one.stitch) != one.stitch:
                self.tell("difference-unclear", THE_SAME, WRITE_OUT, one, number, at)
                return None
            if stands_for(one, stretches):
                message = "in the copied row chains stand for it, which are not as high here"
                self.tell("difference-unclear", message, WRITE_OUT, one, number, at)
            elif makes(one, stretches):
                met.changes = True
                found[one.instead_of] = one.stitch
        return found

    def _ask(
        self,
        one: Moved,
        asked: Asked,
        taken: Sequence[Stretch],
        besides: Sequence[Stretch] | None,
        number: int,
        at: At,
    ) -> None:
        """Tells how a place is taken, with the row written out, and what it may be besides."""
        other = f'"{self.row(besides)}" {asked.otherwise}' if besides else asked.otherwise
        help_ = f'write the row out: "{self.row(taken)}" if that is meant; {other}'
        self.tell("perhaps-placed-otherwise", asked.message, help_, one, number, at)

    def _numbers(
        self, copy: Copy, stretches: Sequence[Stretch], number: int, at: At
    ) -> list[Difference] | None:
        """The numbers that are other ones; None where two are for one."""
        found = [making for stretch in stretches for making in makings(stretch)]
        said = [one for one in copy.differences if isinstance(one, Difference)]
        own = any(one.of in ("picot", "ring") for one in said)
        sure = [self._settled(one, copy, found, number, at, own) for one in said]
        settled = [one for one in sure if one is not None]
        if any(len({c.number for c in settled if changes(c, m)}) > 1 for m in found):
            self.tell("difference-unclear", THE_SAME, WRITE_OUT, settled[-1], number, at)
            return None
        return settled

    def _settled(
        self, one: Difference, copy: Copy, found: Sequence[Making], number: int, at: At, own: bool
    ) -> Difference | None:
        """A difference with the number that it changes; None where nothing is sure to be meant.

        `own`: the copy says something of picots too.
        """
        fitting = [m for m in found if m.fits(one) and not (own and m.doubt and m.doubt.picots)]
        known = dict.fromkeys(m.number for m in fitting if m.doubt is None or not m.doubt.aside)
        met = self.look(one, copy, number, at)
        met.numbers |= known
        if one.instead_of is None and len(met.numbers) > 1:
            makes = self.either(one, met)
            message = f"what is copied makes {makes}, and which of them is meant is not said"
            self.tell("difference-unclear", message, self.edits(one, met), one, number, at)
            return None
        old = next(iter(known), None) if one.instead_of is None else one.instead_of
        fitting = [m for m in fitting if m.number == old]
        if doubt := self._doubt(one, found, fitting):
            self.tell("difference-unclear", *doubt, one, number, at)
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
                help_ = WRITE_OUT
                if making.doubt.between:
                    between = self.written(replace(one, where=Where.BETWEEN))
                    help_ = f'if it is not meant, write "{between}"; otherwise {WRITE_OUT}'
                return making.doubt.message, help_
            if not one.number and making.left:
                return making.left, 'write this row out, with "skip" for what is passed over'
            if 0 < one.number < making.least:
                said = f"{one.number} instead of {making.number}"
                return f"{said} cannot be made everywhere in the copied row", WRITE_OUT
        insides = {making.inside for making in fitting}
        if one.where is Where.BETWEEN and len(insides) > 1:
            everywhere = self.written(replace(one, where=Where.ALL))
            message = "they stand between stitches in one place, and between one place and the next"
            return message, f'if both are meant, write "{everywhere}"; otherwise {WRITE_OUT}'
        added = one.where is Where.BETWEEN and one.number and one.instead_of is None
        if added and _all_inside(fitting):
            number = fitting[0].number
            inside = self.written(replace(one, instead_of=number))
            message = f"the copied row makes ch {number} in one place, and none between two"
            help_ = f'if those are meant, write "{inside}"; if more are made, {WRITE_OUT}'
            return message, help_
        several = sum(making.inside for making in fitting) > 1
        if one.where is Where.GROUPS and one.instead_of is None and several:
            both = [f'"{self.written(replace(one, instead_of=m.number))}"' for m in fitting[:1]]
            return "there are several of them in one place", f"if all are meant, write {both[0]}"
        return None

    def _with(
        self,
        settled: _Settled,
        stretches: Sequence[Stretch],
        others: Others,
        number: int,
        at: At,
    ) -> list[Stretch]:
        """The stretches with what differs, where something is left of each of them."""
        there = put_there(stretches, others)

        def other(making: Making) -> Now:
            said = next((c for c in settled.numbers if changes(c, making)), None)
            return Now(said.number, at.of(said)) if said else Now(making.number)

        put = [replace(stretch, items=renumbered(stretch, other)) for stretch in there]
        for before, after in zip(there, put, strict=True):
            if settled.numbers and not _is_left(before) <= _is_left(after):
                message = "nothing is left to work in the copied row, or in one bracket or repeat"
                left_out = (c for c in settled.numbers if not c.number)
                what = ("difference-leaves-nothing", message, WRITE_OUT)
                self.tell(*what, next(left_out, settled.numbers[-1]), number, at)
                put = there
                break
        return [replace(s, items=exchanged(s.items, settled.stitches)) for s in put]


def changes(one: Difference, making: Making) -> bool:
    """Whether a difference changes what is made here: it is that, and just so many."""
    return making.fits(one) and making.number == one.instead_of


def _all_inside(fitting: Sequence[Making]) -> bool:
    """Whether all stand in one place, and not between the stitches of one step alone."""
    return all(m.inside for m in fitting) and not all(m.parts for m in fitting)


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
