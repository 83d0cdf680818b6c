"""Hypothesis strategies: an edge, a border for it as a tree, and adjustments.

The trees are such as a border text could have. Most rows find what they name, and many close;
some have a fault that only the fabric can show.
"""

from __future__ import annotations

from itertools import pairwise

from hypothesis import strategies as st
from plainly.differences import numbers_made
from plainly.elsewhere import handfuls
from plainly.fabric import Fabric
from plainly.work import rounds_and_fabrics
from random_steps import (
    NAMES,
    Offer,
    chains,
    each,
    edge_offer,
    ends_of,
    numbers,
    offer_of,
    open_repeats,
    seldom,
    start_chains,
    stitch_names,
    stretches,
    unions,
)

from border.stitches import STITCHES
from border.text.readings import read_rounds
from border.text.tree import (
    AtJoint,
    AtJoints,
    Bare,
    Begin,
    Border,
    Clause,
    Copy,
    Difference,
    Elsewhere,
    End,
    Ending,
    Exchanged,
    Headings,
    Item,
    Moved,
    Named,
    Over,
    OverMotifs,
    Place,
    Repeat,
    Row,
    Scope,
    Stitches,
    Text,
    Variation,
    Which,
    Whole,
    Worked,
)
from border.yoke.edges import Edge, Run, plain_edge

Adjustments = list[tuple[int, str, int]]

# --- edges -------------------------------------------------------------------------------------


@st.composite
def edges(draw: st.DrawFn) -> Edge:
    """Plain, or of one to six motifs of a few sections, some with a label."""
    closed = draw(st.sampled_from((True, True, False)))
    of = draw(st.sampled_from(("loop", "loop", "picot", "chain", "stitch")))
    if draw(st.booleans()):
        handy = st.sampled_from((6, 8, 12, 12, 16, 18, 24, 24, 36))
        return plain_edge(draw(st.one_of(handy, handy, st.integers(1, 40))), closed, of)
    runs: list[Run] = []
    counts: dict[str, int] = {}
    usual = draw(st.sampled_from((4, 6, 3, 5, 8, 2, 1)))
    for _ in range(draw(st.integers(1, 6))):
        section = draw(st.sampled_from(("front", "front", "strap", "back")))
        counts[section] = counts.get(section, 0) + 1
        motif = f"{section}.{counts[section]}"
        labels = {"narrow"} if seldom(draw, 5) else set()
        places = draw(st.integers(1, 8)) if seldom(draw, 3) else usual
        runs.append(Run(motif, section, places, places, frozenset({motif, section} | labels)))
    known = frozenset({"front", "strap", "back", "narrow"}.union(*(run.names for run in runs)))
    return Edge("edge", closed, of, tuple(runs), sum(run.places for run in runs), known)


# --- rows --------------------------------------------------------------------------------------


@st.composite
def texts(draw: st.DrawFn, offer: Offer, closed: bool, row: bool) -> Text:
    """The steps of a row, or of a clause."""
    items: tuple[Item, ...] = ()
    if row and seldom(draw, 7):
        items += (draw(begins(offer)),)
    if row and seldom(draw, 5):
        begun = bool(items)  # and turned behind that is in the middle of a row, a fault
        items += (draw(start_chains(offer)),)
        if not begun and seldom(draw, 3):
            items += (End(Ending.TURN),)
    opened = bool(items)
    form = draw(st.integers(0, 16))
    if form <= 3:
        items += (draw(open_repeats(offer)),)
    elif form <= 5:
        items += (draw(each(offer)),) if not items else (draw(open_repeats(offer)),)
    elif form <= 8:
        if not opened and draw(st.booleans()):
            items += draw(ends_of(offer, Which.FIRST))
        else:
            items += draw(stretches(offer, 1))
        items += (draw(open_repeats(offer)),)
        items += draw(tails(offer))
    elif form == 9:
        return Text(items + draw(stretches(offer)), repeats=True, ends=draw(endings(closed)))
    elif form == 10:
        items += draw(stretches(offer, 4))
    elif form == 11:
        again = Repeat(draw(stretches(offer)), draw(st.integers(1, 5)), star=draw(st.booleans()))
        items += (again, *draw(tails(offer)))
    elif form == 12:
        items += draw(meeting_the_start(offer))
    elif form == 13:
        inner = (*draw(stretches(offer, 2)), Repeat(draw(stretches(offer, 2)), 2))
        items += (Repeat(inner, None, star=True),)
    elif form == 14:
        items += draw(ends_of(offer, Which.FIRST)) if not opened else ()
        items += draw(ends_of(offer, draw(st.sampled_from((Which.CENTRE, Which.LAST)))))
        items += draw(ends_of(offer, Which.LAST))
    elif form == 15:
        bracket = Repeat((draw(each(offer)),), draw(st.sampled_from((1, 1, 2))))
        items += (*draw(stretches(offer, 2)), bracket)
    else:
        items += (draw(open_repeats(offer)), *draw(stretches(offer, 1)), draw(open_repeats(offer)))
    return Text(items, ends=draw(endings(closed)))


@st.composite
def begins(draw: st.DrawFn, offer: Offer) -> Begin:
    """`begin in next X`, `in 2nd X`, `in the X`, whole, in part or in the centre."""
    kind = draw(st.sampled_from(offer.kinds))
    union = draw(unions(kind, offer))
    which = draw(st.sampled_from((Which.NEXT, Which.NEXT, Which.THE, Which.NTH)))
    return Begin(Place(which, union, 2 if which is Which.NTH else 1))


@st.composite
def tails(draw: st.DrawFn, offer: Offer) -> tuple[Item, ...]:
    match draw(st.integers(0, 4)):
        case 0:
            return draw(ends_of(offer, Which.LAST))
        case 1:
            return draw(stretches(offer, 1))
        case 2:
            return (draw(chains),)
        case _:
            return ()


@st.composite
def meeting_the_start(draw: st.DrawFn, offer: Offer) -> tuple[Item, ...]:
    """Steps, and a repeat that ends in the same steps."""
    kind = draw(st.sampled_from(offer.kinds))

    def step(which: Which, number: int, name: str) -> Item:
        return Stitches(number, name, Place(which, (Whole(kind),)))

    number, name, between = draw(numbers), draw(stitch_names), draw(chains)
    after: tuple[Item, ...] = (between,) if draw(st.booleans()) else ()
    other = (step(Which.NEXT, draw(numbers), draw(stitch_names)), draw(chains))
    first = draw(st.sampled_from((Which.FIRST, Which.NEXT)))
    head = (step(first, number, name), *after)
    body = (*other[: draw(st.integers(0, 2))], step(Which.NEXT, number, name), *after)
    return (*head, Repeat(body, None, star=True))


@st.composite
def endings(draw: st.DrawFn, closed: bool) -> tuple[End, ...]:
    if closed and not seldom(draw, 8):
        return draw(st.sampled_from(((), (End(Ending.JOIN),))))
    return draw(
        st.sampled_from(((), (), (End(Ending.TURN),), (End(Ending.JOIN), End(Ending.TURN))))
    )


# --- clauses -----------------------------------------------------------------------------------


@st.composite
def clauses(draw: st.DrawFn, edge: Edge, offer: Offer) -> tuple[Clause, ...]:
    """Over each motif, over a name, elsewhere; at the joints."""
    names = sorted(edge.known_names)
    scopes: list[Scope] = []
    for _ in range(draw(st.sampled_from((0, 0, 1, 1, 2)))):
        name = draw(st.sampled_from([*names, *names, "nowhere"] if len(scopes) == 1 else names))
        named: tuple[Scope, ...] = (Over(name), OverMotifs(name))
        scopes.append(draw(st.sampled_from(named)))
    rest: tuple[Scope, ...] = (OverMotifs(), Elsewhere(), Elsewhere(each_motif=True))
    if not seldom(draw, 12) or not scopes:
        scopes.append(draw(st.sampled_from(rest if scopes else (OverMotifs(), *rest))))
    found = [Clause(scope, draw(_scope_text(offer, edge))) for scope in scopes]
    motifs = [run.motif for run in edge.runs]
    if draw(st.booleans()):
        at = draw(st.integers(0, len(motifs) - 1))
        one = AtJoint(motifs[at - 1], motifs[at])
        if len(motifs) > 1 and seldom(draw, 3):
            found.append(Clause(one, Text(draw(joint_steps(offer)))))
        if not seldom(draw, 4):
            found.append(Clause(AtJoints(), Text(draw(joint_steps(offer)))))
    return tuple(found)


@st.composite
def _scope_text(draw: st.DrawFn, offer: Offer, edge: Edge) -> Text:
    if seldom(draw, 10):
        return Text(())  # leave unworked
    text = draw(texts(offer, True, row=False))
    return Text(text.items, text.repeats)


@st.composite
def joint_steps(draw: st.DrawFn, offer: Offer) -> tuple[Item, ...]:
    """Chains, stitches in the joint itself, or in what stands on it."""
    match draw(st.integers(0, 5)):
        case 0 | 1:
            return (draw(chains),)
        case 2:
            return (draw(chains), Stitches(draw(numbers), draw(stitch_names)), draw(chains))
        case 3:
            kind = draw(st.sampled_from(offer.kinds))
            return (Stitches(draw(numbers), draw(stitch_names), Place(Which.NEXT, (Whole(kind),))),)
        case 4:
            kind = draw(st.sampled_from(offer.kinds))
            return (Stitches(draw(numbers), draw(stitch_names), Place(Which.EACH, (Whole(kind),))),)
        case _:
            return (Stitches(draw(numbers), draw(stitch_names)),)


# --- the border --------------------------------------------------------------------------------


@st.composite
def headings(draw: st.DrawFn, closed: bool) -> Headings:
    return Headings(
        terms="us",
        chains_count=draw(st.sampled_from((True, True, False, False, None))),
        rows_repeated=draw(st.sampled_from((None, None, None, True, False))),
        worked=draw(st.sampled_from((None, None, *Worked))) if not closed else None,
        bare=Bare.EACH,
    )


@st.composite
def borders(draw: st.DrawFn, edge: Edge) -> Border:
    """One to five rows, now and then a copy of an earlier one or two rows with one text.

    A row that does not close is mostly thought over: another is drawn in its place, up to twice.
    """
    heads = draw(headings(edge.closed))
    rows: tuple[Row, ...] = ()
    fabrics: tuple[Fabric, ...] = ()
    offer = edge_offer(edge.of)
    last = draw(st.integers(1, 5))
    while len(rows) < last:
        for _ in range(draw(st.sampled_from((1, 3, 3)))):
            tried = (*rows, draw(_rows(edge, offer, heads, rows)))
            ((record, fabric),) = rounds_and_fabrics(Border(heads, tried), edge, known=fabrics)
            if record["closes"] and record["stitches"]:
                break
        rows, fabrics = tried, (*fabrics, fabric)
        if not record["stitches"] or len(fabric.atoms) > 300:
            break
        offer = offer_of(fabric)
    return Border(heads, rows)


@st.composite
def _rows(draw: st.DrawFn, edge: Edge, offer: Offer, heads: Headings, rows: tuple[Row, ...]) -> Row:
    number = len(rows) + 1
    if number > 1 and seldom(draw, 10):
        ends = (End(Ending.TURN),) if seldom(draw, 4) else ()
        copied = draw(st.integers(1, number - 1))
        exact = Row((number,), Copy((copied,), ends=ends))
        if draw(st.booleans()):
            return exact
        differences = draw(_variations(rows[copied - 1], offer))
        row = Row((number,), Copy((copied,), ends=ends, differences=differences))
        _, told = read_rounds(Border(heads, (*rows, row)), lambda source, name: None)
        return exact if any(f.code.startswith("difference") for f in told) else row
    if edge.runs and seldom(draw, 3):
        return Row((number,), draw(clauses(edge, offer)))
    return Row((number,), draw(texts(offer, edge.closed, row=True)))


@st.composite
def _variations(draw: st.DrawFn, row: Row, offer: Offer) -> tuple[Variation, ...]:
    """One or two things that a row makes: in another number or not at all, in another place, or
    in another stitch."""
    if isinstance(row.body, Copy):
        return ()
    texts = [row.body] if isinstance(row.body, Text) else [clause.text for clause in row.body]
    made = [one for text in texts for one in numbers_made(text.items, ())]
    if not made:
        return ()
    found: list[Variation] = []
    for what, number in draw(st.lists(st.sampled_from(made), min_size=1, max_size=2, unique=True)):
        stitch = what in STITCHES
        match draw(st.integers(0, 5)):
            case 0 if stitch:
                found.append(
                    Exchanged(draw(st.sampled_from([s for s in NAMES if s != what])), what)
                )
            case 1 | 2 | 3:
                lists = [h.made() for text in texts for h in handfuls(text.items)]
                several = [one for one in lists if len(one) > 1]
                named: list[tuple[str, int | None]] = []
                if several and seldom(draw, 2):
                    named = [*draw(st.sampled_from(several))]
                if stitch and not named:
                    named = [(what, None if draw(st.booleans()) else number)]
                which = draw(st.sampled_from((Which.NEXT, Which.NEXT, Which.EACH)))
                place = Place(which, draw(unions(draw(st.sampled_from(offer.kinds)), offer)))
                found.append(Moved(tuple(Named(*one) for one in named), place))
            case _:
                less = None if what != "ring" and seldom(draw, 4) else number
                found.append(Difference(what, draw(st.integers(0, 7)), less))
    return tuple(found)


@st.composite
def adjustments(draw: st.DrawFn, edge: Edge, rounds: int) -> Adjustments:
    """Mostly none; else one or two sites more or fewer, at a section, a motif or a joint."""
    if not edge.runs or not seldom(draw, 3):
        return []
    motifs = [run.motif for run in edge.runs]
    places = [*motifs, *(run.section for run in edge.runs)]
    places += [f"{a} | {b}" for a, b in pairwise(motifs)]
    if edge.closed and len(motifs) > 1:
        places.append(f"{motifs[-1]} | {motifs[0]}")
    one = st.tuples(
        st.integers(1, rounds), st.sampled_from(places), st.sampled_from((1, 1, 2, -1, -1, -2))
    )
    return draw(st.lists(one, min_size=1, max_size=3))


@st.composite
def works(draw: st.DrawFn) -> tuple[Edge, Border, Adjustments]:
    """An edge, a border, and its adjustments."""
    edge = draw(edges())
    border = draw(borders(edge))
    return edge, border, draw(adjustments(edge, len(border.rows)))
