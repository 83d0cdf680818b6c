"""What a text sees: a whole row, a stretch of motifs or a joint ("Working a row", "Scopes").

Also which clause has which stretch, and in which order they are worked.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from border.text.tree import (
    AtJoint,
    AtJoints,
    AtOnce,
    Between,
    Clause,
    Elsewhere,
    Kind,
    Over,
    OverMotifs,
    Scope,
    Target,
    Whole,
)
from plainly.fabric import Fabric
from plainly.line import Joint, Line, Stretch
from plainly.sites import Site, between, meant, sites, taken_up

BEFORE_ALL = Fraction(-(10**9))


@dataclass(frozen=True)
class Window:
    """The part of the fabric that a text is worked into.

    For a whole row, `start` is where it begins among the atoms; a closed round runs from there
    once round. `opening` is the site that made it begin there. A point just there is the first of
    the round with `point_first`, else the last. For a stretch, [low, high] is the
    part of the edge line, with the sites exactly on its ends where `with_low`, `with_high`. For a
    joint, low and high are the joint. `end_at`: the position of the end.
    """

    fabric: Fabric
    chains_count: bool
    what: str  # "row", "stretch" or "joint"
    end_at: Fraction
    start: Fraction = BEFORE_ALL
    opening: Site | None = None
    point_first: bool = False
    low: Fraction = Fraction(0)
    high: Fraction = Fraction(0)
    with_low: bool = False
    with_high: bool = False

    @property
    def is_round(self) -> bool:
        """Whether this is a whole closed round."""
        return self.what == "row" and self.fabric.line.closed

    def sites(self, target: Target) -> list[Site]:
        """The sites of a target that the text sees, in order."""
        if isinstance(target, Between) and self.what != "row":
            pairs = pairwise(self.sites(Whole(target.of)))
            said = Between(meant(self.fabric, target.of))
            return [between(one, other, said) for one, other in pairs]
        if isinstance(target, AtOnce) and self.what != "row":
            return taken_up(self.sites(Whole(target.of)), [], target)
        found = sites(self.fabric, target, self.chains_count)
        if self.fabric.line.closed:
            found = [site.moved(lap, self.fabric) for lap in range(-2, 3) for site in found]
        if self.what == "row":
            found = [site for site in found if self._in_row(site)]
        else:
            found = [site for site in found if self._in_part(site)]
        return sorted(found, key=lambda site: (site.start, site.at))

    def _in_row(self, site: Site) -> bool:
        """Where a closed round ends: a site that straddles the start lies whole at the end."""
        end = self.start + self.fabric.length if self.is_round else self.fabric.length
        if self.is_round and site.is_point and site.start in (self.start, end):
            return site.start == (self.start if self.point_first else end)
        return self.start <= site.start and site.end <= end

    def _in_part(self, site: Site) -> bool:
        """Scopes: the sites whose positions lie strictly inside, or are given to it at its ends."""
        if self.low < site.at < self.high:
            return True
        return (self.with_low and site.at == self.low) or (self.with_high and site.at == self.high)


def joint_itself(window: Window) -> Site:
    """Scopes: where a bare stitch of a joint's clause goes."""
    return window.sites(Whole(Kind("joint")))[0]


# --- the clauses of a row ----------------------------------------------------------------------


@dataclass(frozen=True)
class Piece:
    """A clause's text to be worked once, in a window."""

    clause: int
    window: Window


@dataclass
class _Series:
    """Neighbouring motifs that are worked as one stretch [low, high] of the edge line."""

    clause: int | None
    stretches: list[Stretch]
    low: Fraction
    high: Fraction


def pieces(
    fabric: Fabric, clauses: tuple[Clause, ...], chains_count: bool
) -> tuple[list[Piece], set[str]]:
    """The pieces of a row of clauses in the order of work, and the codes of what is wrong."""
    line, scopes = fabric.line, [clause.scope for clause in clauses]
    names = {name for scope in scopes for name in _names(scope)}
    codes = set() if names <= line.known_names else {"unknown-name"}
    all_series = _all_series(line, scopes)
    if any(series.clause is None for series in all_series):
        codes.add("not-covered")
    found: list[Piece] = []
    for k, series in enumerate(all_series):
        behind = _joint_behind(line, all_series, k)
        if series.clause is not None:
            ahead = _joint_behind(line, all_series, k - 1)
            window = Window(
                fabric,
                chains_count,
                "stretch",
                end_at=series.high,
                low=series.low,
                high=series.high,
                with_low=ahead is not None and _owner(scopes, ahead, all_series, k - 1) == k,
                with_high=(
                    _owner(scopes, behind, all_series, k) == k
                    if behind is not None
                    else line.closed  # one stretch all round: the point 0 comes at its end
                ),
            )
            found.append(Piece(series.clause, window))
        joint_clause = _joint_clause(scopes, behind) if behind is not None else None
        if joint_clause is not None:
            at = series.high
            window = Window(
                fabric, chains_count, "joint", end_at=at, low=at, high=at, with_low=True
            )
            found.append(Piece(joint_clause, window))
    return found, codes


def _names(scope: Scope) -> tuple[str, ...]:
    match scope:
        case OverMotifs(str(name)) | Over(name):
            return (name,)
        case AtJoint(a, b):
            return (a, b)
        case _:
            return ()


def _takes(scope: Scope, stretch: Stretch) -> bool:
    """Whether a clause names a motif, if no clause above it does."""
    match scope:
        case OverMotifs(None) | Elsewhere():
            return True
        case OverMotifs(str(name)) | Over(name):
            return stretch.answers_to(name)
        case _:
            return False


def _clause_of(scopes: list[Scope], stretch: Stretch) -> int | None:
    """Each stretch is worked by the first clause that names it."""
    return next((i for i, scope in enumerate(scopes) if _takes(scope, stretch)), None)


def _joint_clause(scopes: list[Scope], joint: Joint) -> int | None:
    for i, scope in enumerate(scopes):
        match scope:
            case AtJoints():
                return i
            case AtJoint(a, b) if joint.lies_between(a, b):
                return i
    return None


def _all_series(line: Line, scopes: list[Scope]) -> list[_Series]:
    """Stretches in the order of the edge; a series across the point 0 is one, and comes last."""
    if not line.stretches:
        return _plain_series(line, scopes)
    found: list[_Series] = []
    for stretch in line.stretches:
        clause = _clause_of(scopes, stretch)
        if found and found[-1].clause == clause and _is_serial(scopes, clause):
            found[-1].stretches.append(stretch)
            found[-1].high = stretch.end
        else:
            found.append(_Series(clause, [stretch], stretch.start, stretch.end))
    first, last = found[0], found[-1]
    across = first.clause == last.clause and _is_serial(scopes, first.clause)
    if line.closed and len(found) >= 2 and across:
        last.stretches += first.stretches
        last.high = line.n + first.high
        del found[0]
    return found


def _plain_series(line: Line, scopes: list[Scope]) -> list[_Series]:
    """An edge of plain places has no motif and no name: only `elsewhere` takes it."""
    clause = next((i for i, scope in enumerate(scopes) if isinstance(scope, Elsewhere)), None)
    return [_Series(clause, [], Fraction(0), line.n)]


def _is_serial(scopes: list[Scope], clause: int | None) -> bool:
    """`over NAME` and `elsewhere` work once for each longest series of neighbouring motifs."""
    if clause is None:
        return False
    scope = scopes[clause]
    return isinstance(scope, Over) or scope == Elsewhere(each_motif=False)


def _joint_behind(line: Line, all_series: list[_Series], k: int) -> Joint | None:
    """The joint between one stretch and the next; k = -1 is the one before the first."""
    if len(all_series) < 2:
        # A stretch all round has no joint at its ends; two motifs worked singly are two series.
        return None
    last = k in (-1, len(all_series) - 1)
    if last and not line.closed:
        return None
    return line.joint_at(all_series[k].high)


def _owner(scopes: list[Scope], joint: Joint, all_series: list[_Series], k: int) -> int | None:
    """Which stretch has the sites on the joint behind series k: None where the joint has a clause.

    The neighbour whose clause stands first in the text; for the same clause, the motif before.
    """
    if _joint_clause(scopes, joint) is not None:
        return None
    before, after = k % len(all_series), (k + 1) % len(all_series)
    one, other = all_series[before].clause, all_series[after].clause
    if one is None:
        return after if other is not None else None
    if other is None or one <= other:
        return before
    return after
