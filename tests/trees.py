"""Hypothesis strategies: any tree that a border text can say.

For the identity of tree -> text -> tree. These trees need not make sense on an
edge; what they must be is what the text floor can build. So a place that says
`each` has a number, what is put between stitches has two of them, endings at
the end of a text are its `ends`, and so on: each rule is said at its strategy.
"""

from __future__ import annotations

from itertools import pairwise

from hypothesis import strategies as st

from border.text.steps import is_open, walk
from border.text.tree import (
    SPACES,
    ST,
    Arch,
    AsTheyCome,
    AtJoint,
    AtJoints,
    AtOnce,
    Bare,
    Begin,
    Between,
    BetweenPicots,
    Border,
    Bracket,
    Centre,
    Chains,
    Claim,
    Clause,
    Copy,
    Difference,
    Elsewhere,
    End,
    Ending,
    Exchanged,
    Headings,
    Item,
    Kind,
    Moved,
    Multiple,
    Named,
    Over,
    OverMotifs,
    Part,
    Picots,
    Place,
    Repeat,
    Row,
    Scope,
    Skip,
    StartChain,
    Stitches,
    Target,
    Text,
    ToLast,
    Variation,
    Where,
    Which,
    Whole,
    Worked,
)

US = ("ss", "sc", "hdc", "dc", "tr", "dtr", "trtr")
EARLY = ("ss", "sc", "dc", "tr", "dtr")
NAMES = (
    "front",
    "front.1",
    "left strap",
    "Left Strap.2",
    "skip",
    "2 dc",
    "back & forth",
    "edging",
    "the last row",
)

counts = st.integers(1, 30)
stitches = st.sampled_from(EARLY)
"""Stitches that all terms have a name for."""


@st.composite
def kinds(draw: st.DrawFn) -> Kind:
    """Any kind of site, with a size where it can have one."""
    name = draw(
        st.sampled_from(
            ("st", "ch", "loop", "space", "group", "shell", "block", "run", "picot", "joint")
        )
    )
    size = draw(st.none() | st.integers(1, 12))
    if name == "run":
        return Kind(name, size or 1, draw(stitches))
    if size is None or name in ("st", "ch", "loop", "shell", "picot", "joint"):
        return draw(st.sampled_from((Kind(name), Kind(draw(stitches)))))
    if name in ("group", "block"):
        return Kind(name, size, draw(st.none() | stitches))
    if name == "space":
        return Kind(name, size, draw(st.none() | stitches))
    return Kind(name, size)


wholes = st.builds(Whole, kinds())
units = st.just(ST) | st.just(Kind("ch")) | stitches.map(Kind)
parts = st.builds(Part, st.integers(1, 25) | st.just(-1), units, kinds()).filter(
    # in a space every st is a ch; a single chain has no parts
    lambda part: (part.unit != ST or part.of.name not in SPACES) and part.of.name != "ch"
)
targets: st.SearchStrategy[Target] = (
    wholes
    | parts
    | st.builds(Centre, kinds())
    | st.builds(Between, kinds().filter(lambda kind: kind.name != "picot"))  # "2 picots" is asked
    | st.builds(BetweenPicots, kinds())
)
_single = (Which.NEXT, Which.FIRST, Which.LAST, Which.CENTRE)


@st.composite
def places(draw: st.DrawFn, one: bool = False) -> Place:
    """Any place; `one`: it names a single site, as where one stitch goes.

    `count` is more than 1 for `next M` and its like, for `Nth` and `every Nth`.
    """
    which = draw(st.sampled_from(tuple(Which)))
    named = tuple(draw(st.lists(targets, min_size=1, max_size=3, unique=True)))
    if which is Which.THE and any(isinstance(t, Centre) and _of_one_stitch(t) for t in named):
        which = Which.NEXT  # "the centre of the dc" is that of their group
    if which in (Which.NTH, Which.EVERY):
        return Place(which, named, draw(st.integers(2, 25)))
    if which is Which.SAME:
        return draw(st.sampled_from((Place(which, ()), Place(which, named[:1]))))
    if which not in _single or one:
        return Place(which, named)
    count, each = draw(st.integers(1, 5)), draw(st.booleans())
    if not each and any(_of_one_stitch(target) for target in named):
        count = 1  # "centre of the next 3 dc" is that of the three together
    return Place(which, named, count, each)


@st.composite
def places_at_once(draw: st.DrawFn) -> Place:
    """So many taken up as one: more than any other place has, which then says nothing of these."""
    which = draw(st.sampled_from((*_single, Which.EACH)))
    # of what no other step of the row takes several: whether those go at once is asked
    of = st.sampled_from([Kind(name, 40) for name in ("space", "group", "block")])
    return Place(which, (AtOnce(draw(st.integers(6, 9)), draw(of)),))


def _of_one_stitch(target: Target) -> bool:
    """A part, or the centre, of what is a single stitch or chain."""
    inside = isinstance(target, Part | Centre | BetweenPicots)
    return inside and target.of.name in (*US, "ch")


def _over_all(place: Place) -> bool:
    return place.each or place.which in (Which.EACH, Which.EVERY)


def _shared(place: Place) -> bool:
    return place.count > 1 and not place.each and place.which in _single


@st.composite
def placed_stitches(draw: st.DrawFn) -> Stitches:
    """Stitches in a place. Without `each` there are one, or as many as there are places."""
    place = draw(places() | places_at_once())
    count = draw(counts)
    if _shared(place):
        count = draw(st.sampled_from((1, place.count)))
    parted = draw(st.sampled_from((0, 0, 3))) if _over_all(place) else 0
    return _finished(draw, Stitches(count, draw(stitches), place, parted=parted))


@st.composite
def bare_stitches(draw: st.DrawFn) -> Stitches:
    """Stitches without a place."""
    return _finished(draw, Stitches(draw(counts), draw(stitches)))


def _finished(draw: st.DrawFn, made: Stitches) -> Stitches:
    """With chains between (of two at least), as clusters, together, with modifiers.

    Not with chains between where the place is between something, too: nobody says both at once.
    """
    apart = made.place is not None and any(isinstance(t, Between) for t in made.place.targets)
    between = draw(st.sampled_from((0, 0, 2))) if made.count > 1 and not apart else 0
    modifiers = draw(st.sampled_from(((), (), ("back loop",), ("loosely",), ("round the stem",))))
    return Stitches(
        made.count,
        made.stitch,
        made.place,
        between,
        made.parted,
        draw(st.sampled_from((False, False, False, True))),
        draw(st.sampled_from((0, 0, 0, 2, 3))),
        modifiers,
    )


@st.composite
def skips(draw: st.DrawFn) -> Skip:
    """A number of whole sites, or the next part or point."""
    if draw(st.booleans()):
        return Skip(draw(counts), draw(st.none() | wholes))
    return Skip(1, draw(targets))


chains = st.builds(Chains, counts)
picots = st.builds(Picots, counts, st.integers(1, 9))
to_lasts = st.builds(ToLast, counts, targets)
endings = st.builds(End, st.sampled_from(tuple(Ending)))


@st.composite
def start_chains(draw: st.DrawFn) -> StartChain:
    """Counted or not; a place of one site, if any."""
    count = draw(counts)
    if draw(st.booleans()):
        return StartChain(count, None)
    place = draw(st.none() | places(one=True).filter(lambda p: not _over_all(p)))
    return StartChain(count, draw(stitches), draw(st.integers(0, 4)), place)


inner_steps: st.SearchStrategy[Item] = (
    chains
    | picots
    | bare_stitches()
    | st.builds(Stitches, counts, stitches, st.just(Place(Which.SAME, ())))
)
"""What can stand in a bracket that goes into one place: no place but the same."""


@st.composite
def brackets(draw: st.DrawFn) -> Bracket:
    """A list that goes into a place: each of them, if there are several."""
    items: tuple[Item, ...] = tuple(draw(st.lists(inner_steps, min_size=1, max_size=3)))
    if draw(st.booleans()):
        items = (Repeat(items, draw(st.integers(1, 5))), *draw(st.lists(inner_steps, max_size=1)))
    place = draw((places() | places_at_once()).filter(lambda p: not _shared(p)))
    return Bracket(items, place, draw(st.sampled_from((0, 2))) if _over_all(place) else 0)


@st.composite
def as_they_come(draw: st.DrawFn) -> AsTheyCome:
    """Two parts or more, no two of them in the same target; chains stand between them all."""
    named = draw(st.lists(targets, min_size=2, max_size=4, unique=True))
    unions = (tuple(named[:1]), tuple(named[1:-1]), tuple(named[-1:]))
    parts: list[Stitches | Bracket] = []
    for place in (Place(Which.NEXT, union) for union in unions if union):
        if draw(st.booleans()):
            parts.append(_finished(draw, Stitches(draw(counts), draw(stitches), place)))
        else:
            parts.append(Bracket(tuple(draw(st.lists(inner_steps, min_size=1, max_size=3))), place))
    return AsTheyCome(tuple(parts), draw(st.sampled_from((0, 0, 2))))


@st.composite
def arches(draw: st.DrawFn) -> Repeat:
    """Stitches, and an arch over them that stitches fill first of all."""
    inside = chains | picots | bare_stitches()
    first: Item = draw(bare_stitches())
    if draw(st.booleans()):
        first = Repeat((first, draw(inside)), draw(st.integers(2, 5)))
    filling = (first, *draw(st.lists(inside, max_size=2)))
    fastens = draw(st.sampled_from(("ss", "sc")))
    arch = Arch(draw(counts), draw(st.integers(1, 25)), filling, fastens)
    return Repeat((draw(bare_stitches()), arch), 2)


steps: st.SearchStrategy[Item] = (
    chains
    | skips()
    | bare_stitches()
    | placed_stitches()
    | picots
    | start_chains()
    | brackets()
    | as_they_come()
    | arches()
)


@st.composite
def repeats(draw: st.DrawFn, inner: st.SearchStrategy[Item]) -> Repeat:
    """Stars and brackets, so many times, to the end or to the last N."""
    items = tuple(draw(st.lists(inner, min_size=1, max_size=3)))
    star = draw(st.booleans())
    times = draw(st.none() | st.integers(1, 6))
    return Repeat(items, times, draw(st.none() | to_lasts) if times is None else None, star)


items: st.SearchStrategy[Item] = st.recursive(steps, repeats, max_leaves=6)


def _begins_somewhere(worked: list[Item]) -> bool:
    """Whether the first step is not in the same place as one that there is not, nor in the first
    one each time that it is repeated: books that say so mean the next. Chains alone are an edge."""
    placed = [i for i in walk(worked[:1]) if isinstance(i, Stitches | Bracket)]
    not_meant = {Which.SAME} | (
        {Which.FIRST} if worked and isinstance(worked[0], Repeat) else set()
    )
    whichs = [item.place.which for item in placed if item.place]
    return not_meant.isdisjoint(whichs) and [type(i) for i in worked] != [Chains]


@st.composite
def texts(draw: st.DrawFn, row: bool = True) -> Text:
    """A text: a beginning only at the head of a row; endings at the end are its `ends`."""
    worked = draw(st.lists(items, max_size=4).filter(_begins_somewhere))
    ends = tuple(draw(st.lists(endings, max_size=2)))
    if worked and row and draw(st.booleans()):
        whichs = (Which.NEXT, Which.THE, Which.FIRST, Which.NTH)
        begun = draw(places(one=True).filter(lambda p: p.which in whichs and bool(p.targets)))
        worked.insert(0, Begin(begun))
    # A repeat of all that goes on to the end by itself is read as something else, and told.
    whole = bool(worked) and not any(is_open(item) for item in walk(worked))
    return Text(tuple(worked), whole and draw(st.booleans()), ends)


scopes: st.SearchStrategy[Scope] = (
    st.builds(OverMotifs, st.none() | st.sampled_from(NAMES))
    | st.builds(Over, st.sampled_from(NAMES))
    | st.builds(Elsewhere, st.booleans())
    | st.just(AtJoints())
    | st.builds(AtJoint, st.sampled_from(NAMES), st.sampled_from(NAMES))
)


@st.composite
def claims(draw: st.DrawFn) -> tuple[Claim, ...]:
    """Claims, none of one kind twice."""
    of = draw(st.lists(st.none() | kinds(), max_size=3, unique=True))
    return tuple(Claim(draw(st.integers(0, 999)), kind) for kind in of)


@st.composite
def differences(draw: st.DrawFn) -> Difference:
    """Chains may be those between; stitches those in groups; a picot's chains have a number."""
    of = draw(st.sampled_from(("ch", "ch", "picot", "ring", *EARLY)))
    where = {"ch": Where.BETWEEN, "picot": Where.ALL, "ring": Where.ALL}.get(of, Where.GROUPS)
    number = draw(st.integers(0, 40))
    instead_of = draw(st.none() | counts) if number or of != "ring" else draw(counts)
    wheres = (Where.ALL, where, Where.APART) if of == "ch" else (Where.ALL, where)
    return Difference(of, number, instead_of, draw(st.sampled_from(wheres)))


@st.composite
def moves(draw: st.DrawFn) -> Moved:
    """In the next place, in each, or so many one by one; a list has numbers, and no two alike
    side by side."""
    place = Place(
        draw(st.sampled_from((Which.NEXT, Which.EACH))),
        tuple(draw(st.lists(targets, min_size=1, max_size=3, unique=True))),
    )
    match draw(st.integers(0, 3)):
        case 0:
            return Moved((), place)
        case 1:
            return Moved((Named(draw(stitches), draw(st.none() | counts)),), place)
        case 2 if not any(_of_one_stitch(target) for target in place.targets):
            number = draw(st.integers(2, 9))
            place = Place(Which.NEXT, place.targets, number)
            return Moved((Named(draw(stitches), number),), place)
        case _:
            kinds_made = st.lists(st.sampled_from((*EARLY, "ch", "picot")), min_size=2, max_size=4)
            named = draw(kinds_made.filter(_a_list))
            return Moved(tuple(Named(of, draw(counts)) for of in named), place)


def _a_list(named: list[str]) -> bool:
    apart = all(one != other for one, other in pairwise(named))
    return apart and any(of in EARLY for of in named)


exchanges = st.builds(Exchanged, stitches, stitches).filter(lambda e: e.stitch != e.instead_of)
variations: st.SearchStrategy[Variation] = differences() | moves() | exchanges


@st.composite
def rows(draw: st.DrawFn, number: int) -> Row:
    """A row of any body; a copy makes as many rounds as its head names."""
    told = draw(claims())
    match draw(st.sampled_from(("text", "text", "clauses", "copy"))):
        case "text":
            return Row((number,), draw(texts()), told)
        case "clauses":
            pairs = draw(st.lists(st.tuples(scopes, texts(row=False)), min_size=1, max_size=3))
            return Row((number,), tuple(Clause(scope, text) for scope, text in pairs), told)
        case _:
            copied = tuple(draw(st.lists(st.integers(1, 40), min_size=1, max_size=4, unique=True)))
            times = draw(st.integers(1, 3))
            numbers = tuple(range(number, number + len(copied) * times))
            file = draw(st.sampled_from((None, None, "cuff.border", "My cuff, no. 2.border")))
            ends = tuple(draw(st.lists(endings, max_size=2)))
            differs = tuple(draw(st.lists(variations, max_size=3, unique=True)))
            return Row(numbers, Copy(copied, times, file, ends, differs), told)


@st.composite
def headings(draw: st.DrawFn) -> Headings:
    """Any headings; overrides give a word of one's own to a stitch."""
    terms = draw(st.sampled_from(("us", "uk", "early")))
    words = draw(st.lists(st.sampled_from(("plain", "long", "half stitch", "tc")), unique=True))
    maybe = st.sampled_from((None, True, False))
    return Headings(
        draw(st.sampled_from((None, "Fern edge", "Ärmel: No. 2 (cuff)"))),
        terms,
        draw(maybe),
        draw(maybe),
        draw(maybe),
        draw(st.sampled_from((None, *Worked))),
        draw(st.sampled_from((None, *Bare))),
        draw(st.none() | st.builds(Multiple, counts, st.integers(0, 20))),
        tuple((word, draw(st.sampled_from(US))) for word in words),
    )


@st.composite
def borders(draw: st.DrawFn) -> Border:
    """A border of one to four rows, numbered on."""
    made: list[Row] = []
    for _ in range(draw(st.integers(1, 4))):
        made.append(draw(rows(made[-1].numbers[-1] + 1 if made else 1)))
    return Border(draw(headings()), tuple(made))
