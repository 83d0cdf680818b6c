"""A whole border written out for one edge, as a needleworker would write it down."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import chain

from msgspec import Struct
from msgspec.structs import replace

from border.findings import Finding
from border.text.readings import Reading, Round
from border.text.tree import (
    Begin,
    Border,
    Bracket,
    Chains,
    Claim,
    End,
    Ending,
    Headings,
    Item,
    Kind,
    Place,
    Repeat,
    Row,
    StartChain,
    Stitches,
    Text,
    Which,
    Whole,
)
from border.text.vocabulary import plural
from border.text.written import write_border
from border.text.written_places import write_kind
from border.working.adjusting import Adjustment
from border.working.closing import tally
from border.working.fabric import Fabric, edge_fabric
from border.working.sites import SiteFinder
from border.working.work import WorkedEdge, as_met_next
from border.writing.proving import proved
from border.writing.ways import Aim, Body, aim_at, ways
from border.yoke.edges import Edge


class WrittenOut(Struct, frozen=True):
    """A border as written for one edge, as far as it could be, in the terms asked for.

    `text`: empty where not one round could be. `beside`: the rounds whose adjustments the text
    could not say; they are still to be made in the project.
    """

    text: str
    beside: tuple[int, ...] = ()
    findings: tuple[Finding, ...] = ()


def write_out(
    headings: Headings,
    reading: Reading,
    worked: WorkedEdge,
    adjustments: Sequence[Adjustment],
    terms: str,
) -> WrittenOut:
    """Write a border out for the edge that it has been worked into."""
    headings = _headings(headings, reading)
    rows: list[Row] = []
    remarks: dict[int, str] = {}
    beside: list[int] = []
    findings: list[Finding] = []
    below = edge_fabric(worked.edge)
    rounds = reading.rounds[: len(worked.rounds)]
    for round_, one, following in zip(rounds, worked.rounds, [*rounds, None][1:], strict=True):
        mine = tuple(a for a in adjustments if a.round == round_.number)
        aim = aim_at(round_, below, mine, one.found)
        row, in_text = _row(aim, headings, terms, following)
        if row is None:
            findings.append(_cannot(round_))
            break
        rows.append(row)
        if aim.plan:
            remarks[round_.number] = _eased(aim, terms, in_text)
        if not in_text and aim.plan:
            beside.append(round_.number)
            findings.append(_stands_apart(round_))
        below = as_met_next(aim.fabric, round_, reading.rules.worked, worked.edge.closed)
    written = write_border(Border(headings, tuple(rows)), terms, remarks)
    text = f"# {_on(worked.edge)}\n{written}" if rows else ""
    return WrittenOut(text, tuple(beside), tuple(findings))


def _headings(headings: Headings, reading: Reading) -> Headings:
    """The headings that still hold: stitches have their usual names, every repeat its number,
    and a multiple would speak of other edges than this."""
    rules = [reading.rules, *(r.rules for r in reading.rounds)]
    said = [r.chains_count for r in rules if r.chains_count is not None]
    return replace(
        headings,
        chains_count=said[0] if said else None,
        rows_repeated=False if headings.rows_repeated else headings.rows_repeated,
        multiple=None,
        overrides=(),
    )


def _row(
    aim: Aim, headings: Headings, terms: str, following: Round | None
) -> tuple[Row | None, bool]:
    """The row, and whether its adjustments are in its text; no row where none comes to the same."""
    claims = _claims(aim.fabric)
    # as it is, an only repeat can still be claimed to be worked so many times
    often = [Claim(account.times, None) for account in aim.done.accounts.values()]
    uncounted = (*claims, *(often if len(often) == 1 else []))
    counted = ((body, False, claims) for body in ways(aim))
    as_it_is = (_stripped(aim.round.body), True, uncounted)
    for body, beside, best in chain(counted, [as_it_is]):
        whole = _ended(_each_said(_headed(body)), aim.round, following)
        for told in (best, claims, ()):
            row = Row((aim.round.number,), whole, told)
            if proved(row, headings, terms, aim, beside=beside):
                return row, not beside
    return None, False


def _stripped(body: Body) -> Body:
    """A body without the words that end it; those of all clauses come behind the last."""
    if isinstance(body, Text):
        return replace(body, ends=())
    return tuple(replace(clause, text=replace(clause.text, ends=())) for clause in body)


def _headed(body: Body) -> Body:
    """Chains that open a row, and stand, in a bracket, so that they are no start chain."""
    if not isinstance(body, Text):
        return body
    at = next((i for i, item in enumerate(body.items) if not isinstance(item, Begin)), 0)
    return replace(body, items=tuple(_held(i) if k == at else i for k, i in enumerate(body.items)))


def _each_said(body: Body) -> Body:
    """`1 sc in the next 3 ch` as `1 sc in each of the next 3 ch`, which says no other thing."""
    if isinstance(body, Text):
        return replace(body, items=tuple(map(_with_each, body.items)))
    texts = [replace(c.text, items=tuple(map(_with_each, c.text.items))) for c in body]
    return tuple(replace(c, text=text) for c, text in zip(body, texts, strict=True))


def _with_each(item: Item) -> Item:
    if isinstance(item, Repeat | Bracket):
        item = replace(item, items=tuple(map(_with_each, item.items)))
    counted = (Which.NEXT, Which.FIRST, Which.LAST, Which.CENTRE)
    match item:
        case Stitches(count=1, place=Place(which=which, count=count) as place):
            if count > 1 and which in counted:
                return replace(item, place=replace(place, each=True))
    return item


def _held(item: Item) -> Item:
    return Repeat((item,), 1) if isinstance(item, Chains) else item


def _ended(body: Body, round_: Round, following: Round | None) -> Body:
    """The words that end a row behind its steps, with the chains that turn to the next one."""
    if not isinstance(body, Text):
        last = body[-1]
        text = _ended(last.text, round_, following)
        assert isinstance(text, Text)
        return (*body[:-1], replace(last, text=text))
    own = round_.body
    texts = [own] if isinstance(own, Text) else [clause.text for clause in own]
    ends = list(dict.fromkeys(end.what for text in texts for end in text.ends))
    items = body.items
    if round_.turns:
        turning = following.turning if following else ()
        ends = [e for e in ends if e is not Ending.TURN]
        ends.insert(0 if turning else len(ends), Ending.TURN)
        if items and isinstance(items[-1], Chains | StartChain):
            items = (*items[:-1], _held(items[-1]))
        items += turning
    return Text(items, ends=tuple(End(what) for what in ends))


def _claims(fabric: Fabric) -> tuple[Claim, ...]:
    """What one can count when the round is done: stitches, picots, and spaces."""
    stitches, _, picots = tally(fabric.kinds)
    spaces = len(SiteFinder(fabric, False).sites(Whole(Kind("space"))))
    counts = {**stitches, "picot": picots, "space": spaces}
    return tuple(Claim(n, Kind(name)) for name, n in counts.items() if n)


# --- what is told beside it -----------------------------------------------------------


def _on(edge: Edge) -> str:
    """For which edge a text is: `for neck: a closed edge of 88 loops on 16 motifs`."""
    one = edge.places == 1
    of = edge.of if one else plural(edge.of)
    name = "" if edge.name == "edge" else f"{_plainly(edge.name)}: "
    motifs = f" on {_many(len(edge.runs), 'motif')}" if edge.runs else ""
    kind = "a closed" if edge.closed else "an open"
    return f"for {name}{kind} edge of {edge.places} {of}{motifs}"


def _eased(aim: Aim, terms: str, in_text: bool) -> str:
    """`eased in at back.3: 1 group of 5 more passed over`."""
    leading = {t for account in aim.done.accounts.values() for t in account.leading}
    told = []
    for adjustment in aim.plan.values():
        n = abs(adjustment.by)
        only = leading.copy().pop() if len(leading) == 1 else None
        what = _many(n, "place")
        if isinstance(only, Whole):
            what = f"{n} {write_kind(only.of, terms, n > 1)}"
        done = "more passed over" if adjustment.by > 0 else "worked twice"
        where = f"at {_plainly(adjustment.at)}" if adjustment.at else "as it was found"
        told.append(f"{where}, {what} {done}")
    by = "" if in_text else " by the project, beside this text"
    return f"eased in{by}: {'; '.join(told)}"


def _plainly(name: str) -> str:
    """A name on one line."""
    return " ".join(name.split())


def _many(n: int, word: str) -> str:
    return f"{n} {word}" if n == 1 else f"{n} {plural(word)}"


def _stands_apart(round_: Round) -> Finding:
    message = (
        f"what is eased in in round {round_.number} cannot be said in the words of the round, "
        "so that is written as it was"
    )
    help_ = "keep what the project says of this round, beside the text"
    return Finding("eased-in-beside", message, help_, round_.head, round_.number)


def _cannot(round_: Round) -> Finding:
    message = (
        f"round {round_.number} cannot be written out so that it is read again as the same; the "
        "rounds before it are written"
    )
    help_ = "if it is a copy from another border, see whether the headings of the two agree"
    return Finding("not-written-out", message, help_, round_.head, round_.number)
