"""The cursor, and what comes next from it (section "Working a row")."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from border.text.tree import Between, Target, Whole
from plainly.sites import ATOMS, JOINT, PICOT, POINT, Site

FRESH, BEHIND_ATOM, BEHIND_POINT = -1, 0, 1


@dataclass(frozen=True)
class Cursor:
    """Where the work has got to among the atoms of the fabric below.

    `rank`: FRESH, nothing has been worked up to here, or a picot on the atom before; BEHIND_ATOM, an atom that ends here has been
    worked or passed; BEHIND_POINT, a point that lies here has, at the position `at`.
    """

    spot: Fraction
    rank: int = FRESH
    at: Fraction = Fraction(0)


def lies_ahead(site: Site, cursor: Cursor) -> bool:
    """A site starts at or beyond the cursor; a point of X lies strictly beyond it.

    At the cursor, too, while nothing has been worked. A joint is a site of its own: it may lie
    just where an atom ended, and is only behind when it was worked or passed itself.
    """
    if site.start != cursor.spot:
        return site.start > cursor.spot
    if site.shape == POINT:
        return cursor.rank == FRESH
    if site.shape == JOINT:
        return cursor.rank != BEHIND_POINT or site.at > cursor.at
    return True


def beyond(site: Site) -> Cursor:
    """Working into a site moves the cursor beyond it."""
    if site.is_point:
        return Cursor(site.start, BEHIND_POINT, site.at)
    if site.shape == PICOT and site.end == int(site.end):
        return Cursor(site.end)  # the stitch that it stands on is passed, the point behind is not
    return Cursor(site.end, BEHIND_ATOM)


def further(one: Cursor, other: Cursor) -> Cursor:
    """The cursor only moves forward."""
    return max(one, other, key=lambda cursor: (cursor.spot, cursor.rank, cursor.at))


def walk(union: list[list[Site]], cursor: Cursor) -> Iterator[Site]:
    """The sites one after the other, from the cursor on.

    Unions: whichever of the named comes next; at one atom, the one named first. A point comes
    before the atom that begins where it lies.
    """
    in_order = sorted(
        ((order, site) for order, listed in enumerate(union) for site in listed),
        key=lambda entry: (entry[1].start, not entry[1].is_point, entry[0]),
    )
    for _, site in in_order:
        if lies_ahead(site, cursor):
            yield site
            cursor = further(cursor, beyond(site))


def overlap(one: Site, other: Site) -> bool:
    """Whether working one touches the other: an atom of both, or a point inside the other.

    A picot stands on its atom and is none of it.
    """
    if one.is_point and other.is_point:
        return one.start == other.start and one.at == other.at
    if one.is_point:
        return other.start < one.start < other.end
    if other.is_point:
        return one.start < other.start < one.end
    if (one.shape == ATOMS) != (other.shape == ATOMS):
        return False
    return one.start < other.end and other.start < one.end


def counted_as(target: Target) -> Target:
    """What is counted of a leading kind: of a part, its X; of `between`, the points."""
    return target if isinstance(target, Between) else Whole(target.of)
