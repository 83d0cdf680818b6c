"""The sites that a fabric offers (section "Sites"), listed by going over all of it.

Sites are told apart by where they lie among the atoms: atom i covers [i, i + 1). A point lies at
one spot. On a closed round the numbers run on past the start.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from dataclasses import replace as changed
from fractions import Fraction
from itertools import pairwise

from msgspec.structs import replace

from border.text.tree import AtOnce, Between, BetweenPicots, Centre, Kind, Part, Target, Whole
from plainly.fabric import CHAIN, PLACE, STITCH, Atom, Fabric, Identity

ATOMS, POINT, JOINT, PICOT = "atoms", "point", "joint", "picot"

PLACE_WORDS = ("st", "ch", "loop", "shell", "picot")


@dataclass(frozen=True)
class Site:
    """Somewhere that a stitch can be worked: [start, end) among the atoms; a point has no width.

    `shape`: made of atoms, a point, a joint or a picot. `target`: how it was named, with its kind
    as it is meant on this fabric. `whole`: of a part or a point of X, that X.
    """

    start: Fraction
    end: Fraction
    at: Fraction
    shape: str
    target: Target
    whole: Site | None = None

    @property
    def is_point(self) -> bool:
        return self.shape in (POINT, JOINT)

    def moved(self, laps: int, fabric: Fabric) -> Site:
        """The same site, so many laps further on."""
        shift = laps * fabric.length
        whole = self.whole.moved(laps, fabric) if self.whole else None
        return changed(
            self,
            start=self.start + shift,
            end=self.end + shift,
            at=self.at + laps * fabric.line.n,
            whole=whole,
        )

    def identity(self, fabric: Fabric) -> Identity:
        """Sites with equal identities are one and the same site, whatever they were called."""
        start, at = self.start, self.at
        if fabric.line.closed:
            start = start % fabric.length if fabric.length else start
            at %= fabric.line.n
        shape = POINT if self.is_point else self.shape
        return start, self.end - self.start, at, shape


def meant(fabric: Fabric, kind: Kind) -> Kind:
    """Sites: on row 0 any word for a place means the places; later `loop` means `space`."""
    if fabric.edge and kind.name in PLACE_WORDS and kind.size is None:
        return Kind(fabric.line.of)
    if not fabric.edge and kind.name == "loop":
        return replace(kind, name="space")
    return kind


def meant_target(fabric: Fabric, target: Target) -> Target:
    """A target with its kind as it is meant on this fabric."""
    return replace(target, of=meant(fabric, target.of))


def kind_label(kind: Kind) -> str:
    """The words for a kind (already as it is meant)."""
    match kind:
        case Kind("space", int(size), None):
            return f"ch-{size} space"
        case Kind("space", size, str(stitch)):
            return f"{f'ch-{size}' if size else 'chain'} space between {stitch}"
        case Kind(name, int(size), str(stitch)):
            return f"{size}-{stitch} {name}"
        case Kind(name, int(size), None):
            return f"{name} of {size}"
        case Kind(name, None, str(stitch)):
            return f"{stitch} {name}"
        case _:
            return kind.name


def sites(fabric: Fabric, target: Target, chains_count: bool) -> list[Site]:
    """All sites of a target, each once, in order. On a closed round they start in [0, length)."""
    key = (target, chains_count)
    if key not in fabric.listed:
        fabric.listed[key] = _listed(fabric, target, chains_count)
    return fabric.listed[key]


def _listed(fabric: Fabric, target: Target, chains_count: bool) -> list[Site]:
    target = meant_target(fabric, target)
    wholes = _wholes(fabric, target.of, chains_count)
    match target:
        case Whole():
            found = wholes
        case Part():
            found = [part for x in wholes for part in _part(fabric, x, target, chains_count)]
        case Centre():
            found = [_centre(fabric, x, target) for x in wholes]
        case Between():
            found = _betweens(fabric, wholes, target)
        case BetweenPicots():
            found = [point for x in wholes for point in _between_picots(fabric, x, target)]
        case AtOnce():
            more = [x.moved(1, fabric) for x in wholes] if fabric.line.closed else []
            found = taken_up(wholes, more, target)
    if fabric.line.closed and fabric.length:
        found = [site.moved(-int(site.start // fabric.length), fabric) for site in found]
    return sorted(found, key=lambda site: (site.start, site.at))


# --- whole sites -------------------------------------------------------------------------------


def _wholes(fabric: Fabric, kind: Kind, chains_count: bool) -> list[Site]:
    if fabric.edge:
        if kind == Kind(fabric.line.of):
            return [_of_atoms(fabric, i, i + 1, Whole(kind)) for i in range(fabric.length)]
        return _joints(fabric, kind) if kind.name == "joint" else []
    match kind.name:
        case "joint":
            return _joints(fabric, kind)
        case "picot":
            return _picots(fabric, kind, 0, fabric.length)
        case "space":
            runs = _runs(fabric, lambda atom: atom.what == CHAIN, lambda one, other: True)
            runs = [(a, b) for a, b in runs if kind.size in (None, b - a)]
            if kind.stitch is not None:
                runs = [(a, b) for a, b in runs if _stands_between(fabric, a, b, kind.stitch)]
        case "block":
            runs = _runs(fabric, lambda atom: atom.what == STITCH, lambda one, other: True)
            runs = [(a, b) for a, b in runs if _is_size(fabric, a, b, kind)]
        case "run":
            runs = _runs(
                fabric,
                lambda atom: atom.what == STITCH and atom.stitch == kind.stitch,
                lambda one, other: True,
            )
            runs = [(a, b) for a, b in runs if kind.size in (None, b - a)]
        case "group":
            runs = _runs(
                fabric,
                lambda atom: atom.what == STITCH and atom.into is not None,
                lambda one, other: one.into == other.into,
            )
            runs = [(a, b) for a, b in runs if _is_size(fabric, a, b, kind)]
        case "shell":
            runs = _shells(fabric)
        case _:
            runs = [
                (i, i + 1)
                for i in range(fabric.length)
                if _is_unit(fabric, fabric.atom(i), kind, chains_count)
            ]
    return [_of_atoms(fabric, a, b, Whole(kind)) for a, b in runs]


def _stands_between(fabric: Fabric, a: int, b: int, stitch: str) -> bool:
    """Whether a run has that stitch right before it and right behind it."""
    if not fabric.line.closed and (a == 0 or b == fabric.length):
        return False
    return all(
        fabric.atom(i).what == STITCH and fabric.atom(i).stitch == stitch for i in (a - 1, b)
    )


def _shells(fabric: Fabric) -> list[tuple[int, int]]:
    """From the first to the last of two or more stitches of one site, which follow each other
    with nothing but chains between."""
    length = fabric.length
    stitches = [i for i in range(length) if fabric.atom(i).what == STITCH]
    shells = []
    for first in stitches:
        into = fabric.atom(first).into
        if into is None:
            continue
        before = first - 1
        while before > first - length and fabric.atom(before).what != STITCH:
            if not fabric.line.closed and before < 0:
                break
            before -= 1
        begun = (fabric.line.closed or before >= 0) and fabric.atom(before).into == into
        if begun and not (first == stitches[0] and _all_of(fabric, into, stitches)):
            continue  # the shell began with an earlier stitch
        last = here = first
        while here + 1 < first + length and (fabric.line.closed or here + 1 < length):
            here += 1
            if fabric.atom(here).what == STITCH:
                if fabric.atom(here).into != into:
                    break
                last = here
        if last > first:
            shells.append((first, last + 1))
    return shells


def _all_of(fabric: Fabric, into: object, stitches: list[int]) -> bool:
    """Whether the whole round is of one site; then it begins at the start."""
    return all(fabric.atom(i).into == into for i in stitches)


def _of_atoms(fabric: Fabric, a: int, b: int, target: Target, whole: Site | None = None) -> Site:
    at = (fabric.atom(a).at + fabric.atom(b - 1).at) / 2
    return Site(Fraction(a), Fraction(b), at, ATOMS, target, whole)


def _is_size(fabric: Fabric, a: int, b: int, kind: Kind) -> bool:
    """Two atoms or more; exactly so many, and all of one stitch, where the kind says so."""
    if b - a < 2 or kind.size not in (None, b - a):
        return False
    return kind.stitch is None or all(fabric.atom(i).stitch == kind.stitch for i in range(a, b))


def _is_unit(fabric: Fabric, atom: Atom, kind: Kind, chains_count: bool) -> bool:
    """Whether an atom is an `st`, a `ch`, or a stitch of that name."""
    if atom.what == PLACE:
        return meant(fabric, kind) == Kind(fabric.line.of)
    if kind.name == "st":
        return atom.what == STITCH or chains_count
    if kind.name == "ch":
        return atom.what == CHAIN
    return atom.what == STITCH and atom.stitch == kind.name


def _runs(
    fabric: Fabric, belongs: Callable[[Atom], bool], together: Callable[[Atom, Atom], bool]
) -> list[tuple[int, int]]:
    """The longest runs of adjacent atoms that belong; on a closed round the start is no seam."""
    length, atom = fabric.length, fabric.atom

    def goes_on(i: int) -> bool:
        """Whether atoms i and i + 1 are of one run."""
        return belongs(atom(i)) and belongs(atom(i + 1)) and together(atom(i), atom(i + 1))

    if fabric.line.closed:
        firsts = [i for i in range(length) if not goes_on(i - 1)]
        if not firsts and length:
            return [(0, length)]  # small rulings: all round is one site, beginning at the start
    else:
        firsts = [i for i in range(length) if i == 0 or not goes_on(i - 1)]
    runs = []
    for first in firsts:
        if not belongs(atom(first)):
            continue
        end = first + 1
        while end - first < length and (fabric.line.closed or end < length) and goes_on(end - 1):
            end += 1
        runs.append((first, end))
    return runs


def _picots(fabric: Fabric, kind: Kind, a: int, b: int) -> list[Site]:
    """The picots on atoms a to b: those of one atom share its width, so that they have an order."""
    found = []
    for i in range(a, b):
        atom = fabric.atom(i)
        for k in range(atom.picots):
            start, end = i + Fraction(k, atom.picots), i + Fraction(k + 1, atom.picots)
            found.append(Site(start, end, atom.at, PICOT, Whole(kind)))
    return found


def _joints(fabric: Fabric, kind: Kind) -> list[Site]:
    """A joint lies before the first atom that stands on it or beyond it."""
    found = []
    for joint in fabric.line.joints():
        if fabric.line.closed:
            around = range(-2 * fabric.length, 3 * fabric.length)
            spot = sum(fabric.atom(i).at < joint.at for i in around) - 2 * fabric.length
        else:
            spot = sum(atom.at < joint.at for atom in fabric.atoms)
        found.append(Site(Fraction(spot), Fraction(spot), joint.at, JOINT, Whole(kind)))
    return found


# --- parts and points --------------------------------------------------------------------------


def _atoms_of(x: Site) -> range:
    return range(int(x.start), int(x.end)) if x.shape == ATOMS else range(0)


def _part(fabric: Fabric, x: Site, target: Part, chains_count: bool) -> list[Site]:
    """The nth atom of X that is of the unit; none where X has not so many."""
    fitting = [
        i for i in _atoms_of(x) if _is_unit(fabric, fabric.atom(i), target.unit, chains_count)
    ]
    index = len(fitting) - 1 if target.nth == -1 else target.nth - 1
    if not 0 <= index < len(fitting):
        return []
    return [_of_atoms(fabric, fitting[index], fitting[index] + 1, target, x)]


def _centre(fabric: Fabric, x: Site, target: Centre) -> Site:
    """The middle atom, or the point between the middle two."""
    atoms = _atoms_of(x)
    if not atoms:
        return changed(x, target=target, whole=x)
    if len(atoms) % 2 == 1:
        middle = atoms[len(atoms) // 2]
        return _of_atoms(fabric, middle, middle + 1, target, x)
    right = atoms[len(atoms) // 2]
    at = (fabric.atom(right - 1).at + fabric.atom(right).at) / 2
    return Site(Fraction(right), Fraction(right), at, POINT, target, x)


def _betweens(fabric: Fabric, wholes: list[Site], target: Between) -> list[Site]:
    """Between each X and the next; on a closed round the last and the first are a pair too."""
    pairs = list(pairwise(wholes))
    if fabric.line.closed and len(wholes) >= 2:
        pairs.append((wholes[-1], wholes[0].moved(1, fabric)))
    return [between(one, other, target) for one, other in pairs]


def between(one: Site, other: Site, target: Between) -> Site:
    """The point in the middle of what lies between two sites."""
    spot = (one.end + other.start) / 2
    return Site(spot, spot, (one.at + other.at) / 2, POINT, target)


def taken_up(wholes: list[Site], more: list[Site], target: AtOnce) -> list[Site]:
    """So many X in a row as one site, beginning with each X; `more` come behind the last."""
    found: list[Site] = []
    if target.count > len(wholes):
        return found
    line = wholes + more
    for k in range(len(wholes)):
        together = line[k : k + target.count]
        if len(together) == target.count:
            first, last = together[0], together[-1]
            middle = (first.at + last.at) / 2
            found.append(Site(first.start, last.end, middle, first.shape, target))
    return found


def _between_picots(fabric: Fabric, x: Site, target: BetweenPicots) -> list[Site]:
    """The point between the two picots of X: none where X has not just two."""
    atoms = _atoms_of(x)
    picots = _picots(fabric, Kind("picot"), atoms.start, atoms.stop)
    if len(picots) != 2:
        return []
    one, other = picots
    spot = (one.end + other.start) / 2
    return [Site(spot, spot, (one.at + other.at) / 2, POINT, target, x)]
