"""Plans for a needleworker: where to ease in, what is done there, and how the repeats lie then."""

from __future__ import annotations

from collections.abc import Iterator

from rich.console import Group, RenderableType
from rich.text import Text

from border.planning.costs import SHORT
from border.planning.falling import Falls, Lying, Over
from border.showing.eased import EasedAll, EasedWork, PlanTold
from border.showing.folding import edge_in_words
from border.showing.layout import Rows
from border.showing.tables import TERMS, adjusted
from border.showing.telling import harmless
from border.text.amounts import some
from border.working.adjusting import Adjustment


def eased_tables(eased: EasedAll, *, sections: bool = False) -> Group:
    """All pieces of work; `sections`: with how the repeats lie over them."""
    parts: list[RenderableType] = []
    for work in eased.works:
        parts += [_heading(work), Text(), _as_it_stands(work)]
        several = len(work.plans) > 1
        for number, told in enumerate(work.plans, 1):
            parts += _plan(work, told, number if several else None)
        if sections and work.plans:
            heading = Text("how the repeats lie: where the first of them begins, the last ends")
            parts += [heading, _lying(work.plans[0], work.edge.of)]
    return Group(*parts)


def _heading(work: EasedWork) -> Text:
    title = harmless(work.title or work.border)
    text = Text(f"{harmless(work.edge.name)}: {title}", style="bold")
    terms = TERMS.get(work.terms, work.terms)
    text.append(f"\n{edge_in_words(work.edge)}; stitch names: {terms}", style="not bold")
    return text


def _as_it_stands(work: EasedWork) -> Rows:
    if work.as_it_stands:
        rows = [
            ("as it stands" if not i else "", Text(harmless(line)))
            for i, line in enumerate(work.as_it_stands)
        ]
    elif any(told.plan.adjustments for told in work.plans[:1]):
        rows = [("as it stands", Text("it cannot be worked to its end"))]
    else:
        with_ = ", adjusted as the file says" if work.given else ""
        rows = [("as it stands", Text(f"every round closes{with_}: nothing is to be eased in"))]
    return Rows(rows)


def _plan(work: EasedWork, told: PlanTold, number: int | None) -> Iterator[RenderableType]:
    plan = told.plan
    if not plan.adjustments:
        if number:
            yield Text(f"{number}. nothing eased in (0 points)\n", style="bold")
        return
    places = sum(abs(a.by) for a in plan.adjustments)
    heading = Text(f"{number}. " if number else "", style="bold")
    heading.append(f"ease in {some(places, 'place')} ({plan.cost} points)")
    if work.like:
        heading.append(f", as on the {harmless(work.like)}", style="not bold")
    yield heading
    rows = [
        (f"round {a.round}, at {harmless(a.at)}", Text(_done(a, told, work.terms)))
        for a in plan.adjustments
    ]
    if number:
        paid = ", ".join(f"{SHORT[key]} {points}" for key, points in told.why.items())
        rows.append(("paid for", Text(paid)))
    if not plan.cheapest:
        rows.append(("", Text("the search was given up: there may be a cheaper plan")))
    yield Rows(rows)


def _done(a: Adjustment, told: PlanTold, terms: str) -> str:
    """What is done at one spot, and after which repeat."""
    count = next(r for r in told.rounds if r.number == a.round)
    fell = next(f for f in count.adjustments if (f.at, f.by) == (a.at, a.by))
    return f"{adjusted(a.by, count, terms)}, after repeat {fell.before_repeat}"


# --- how the repeats lie ---------------------------------------------------------


def _lying(told: PlanTold, of: str) -> Rows:
    rows: list[tuple[str, Text]] = []
    for count, lying in zip(told.rounds, told.lying, strict=True):
        lines = [*(_falls(falls, of) for falls in lying.falls), *_sides(lying)]
        rows += [
            (f"round {count.number}" if not i else "", Text(harmless(line)))
            for i, line in enumerate(lines)
        ]
    return Rows(rows)


def _falls(falls: Falls, of: str) -> str:
    return (
        f"{falls.section}: {some(falls.repeats, 'repeat')}, "
        f"{_over(falls.first, of)} to {_over(falls.last, of)}"
    )


def _over(over: Over, of: str) -> str:
    return f"{over.motif} {of} {over.place}"


def _sides(lying: Lying) -> list[str]:
    if lying.alike is None:
        return []
    return ["the two sides are alike" if lying.alike else "the two sides differ"]


def what_next(eased: EasedAll, file: str, *, project: bool, written: bool) -> str:
    """What to do with the plans; `project`: the file is one, so that they can go into it."""
    if not any(told.plan.adjustments for w in eased.works for told in w.plans[:1]):
        return ""
    best = "the plan" if all(len(w.plans) < 2 for w in eased.works) else "the first of the plans"
    if written:
        return f"{best} now stands in {file}\n"
    if not project:
        return f"{best} can go into a project with this edge, as [[work.adjust]]\n"
    return f"to put {best} into the project: border adjust {file} --write\n"
