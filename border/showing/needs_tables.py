"""What borders need, for a needleworker: round by round, and as loops of the edge."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace
from rich.console import Group, RenderableType
from rich.text import Text

from border.planning.lacks import OnEdge
from border.planning.needs import RoundNeed
from border.planning.rules import Rule
from border.planning.telling import in_words, several
from border.showing.folding import edge_in_words
from border.showing.layout import Rows
from border.showing.needed import Needed, NeededWork
from border.showing.tables import TERMS
from border.showing.telling import harmless
from border.text.amounts import in_terms, some


def needs_tables(needed: Needed) -> Group:
    """All borders of one file."""
    parts: list[RenderableType] = []
    for work in needed.works:
        parts += [_heading(work), Text(), _rounds(work), _whole(work)]
        if work.there is not None:
            parts.append(_there(work.there, work.terms))
        parts.append(Text())
    return Group(*parts[:-1])


def _heading(work: NeededWork) -> Text:
    title = harmless(work.title or work.border)
    text = Text(f"{harmless(work.edge)}: {title}" if work.edge else title, style="bold")
    edge = f"{'a closed' if work.closed else 'an open'} edge"
    if work.there is not None:
        edge = edge_in_words(work.there.edge)
    terms = TERMS.get(work.terms, work.terms)
    text.append(f"\n{edge}; stitch names: {terms}", style="not bold")
    return text


def _rounds(work: NeededWork) -> Rows:
    rows: list[tuple[str, Text]] = []
    for need in work.needs.rounds:
        for i, line in enumerate(_lines(need, work.terms)):
            rows.append(("" if i else f"round {need.number}", Text(harmless(line))))
    return Rows(rows)


def _lines(need: RoundNeed, terms: str) -> Iterator[str]:
    if not need.stretches:
        yield _rule(replace(need.rule, least=None), terms)
    for stretch in need.stretches:
        yield f"{stretch.clause}: {_rule(stretch.rule, terms)}"


def _rule(rule: Rule, terms: str) -> str:
    return in_words(replace(rule, of=in_terms(rule.of, terms)))


def _whole(work: NeededWork) -> Text:
    told = _rule(work.needs.whole, work.terms)
    text = Text("the whole border: ")
    text.append(told, style="bold")
    return text


def _there(there: OnEdge, terms: str) -> Text:
    places = some(there.edge.places, there.edge.of)
    adjusted = ", adjusted as the project says" if there.adjusted else ""
    if there.closes:
        return Text(f"on {places}{adjusted}: every round closes", style="green")
    told = [
        _left(r.number, r.left_over, in_terms(r.of, terms)) for r in there.rounds if not r.closes
    ]
    text = Text(f"on {places}{adjusted}: {'; '.join(told) or 'not every round could be worked'}")
    if there.nearest:
        numbers = " or ".join(str(n) for n in there.nearest)
        one = there.nearest == (1,)
        of = there.edge.of if one else several(there.edge.of)
        text.append(f"\n{numbers} {of} {'closes' if one else 'close'}")
    return text


def _left(number: int, over: int, of: str) -> str:
    if not over:
        return f"round {number} does not come out even"
    return (
        f"round {number} leaves {some(over, of)} over"
        if of
        else f"round {number} leaves {over} over"
    )
