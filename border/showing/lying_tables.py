"""How rounds lie, for a needleworker: what lies flat, what cups or ruffles, what mends it,
and what the tape should say on the way."""

from __future__ import annotations

from collections.abc import Iterator

from rich.console import Group, RenderableType
from rich.table import Table
from rich.text import Text

from border.reckoning.changing import Change
from border.reckoning.flat import Lies, RoundLies
from border.reckoning.mending import Mended
from border.reckoning.stitch_sizes import EASE
from border.showing.folding import edge_in_words
from border.showing.layout import Rows
from border.showing.lengths import between, measure, whole
from border.showing.lying import LyingAll, LyingWork
from border.showing.tables import TERMS
from border.showing.tape_words import tape_in_words
from border.showing.telling import harmless
from border.text.amounts import in_terms
from border.text.tree import Clause
from border.text.written import write_scope

MOST = 4
"""Parts of an edge that are named for one round."""

_STYLES = {Lies.CUPS: "red", Lies.FLAT: "green", Lies.RUFFLES: "red"}
_SAID_BY = {
    "loops": "as its loops have it",
    "project": "as the project says",
    "name": "as an edge of its name does (assumed)",
}


def lying_tables(lying: LyingAll) -> Group:
    """All pieces of work."""
    parts: list[RenderableType] = []
    for work in lying.works:
        parts += [_heading(work), Text(), _rounds(work), Text()]
        if work.mended is not None:
            parts += _part("what mends it, reckoned again", _mended(work, work.mended))
        parts += _part("with a tape, laid flat", _marks(work))
        if work.back is not None:
            parts += _part("to come back to size in the rounds to come", _back(work, work.back))
    if lying.works:
        parts.append(_known(lying.works[0]))
    return Group(*parts)


def _part(head: str, rows: Iterator[tuple[str, Text]]) -> list[RenderableType]:
    return [Text(head, style="bold"), Rows(tuple(rows))]


def _heading(work: LyingWork) -> Text:
    title = harmless(work.title or work.border)
    text = Text(f"{harmless(work.edge.name)}: {title}", style="bold")
    terms = work.reading.rules.terms
    told = f"\n{edge_in_words(work.edge)}; stitch names: {TERMS.get(terms, terms)}"
    told += f"\nturns {_turns(work.turns)} in all, {_SAID_BY[work.turned_by]}"
    parts = [f"{t.section} {_turns(t.degrees)}" for t in work.turning]
    told += f": {harmless(', '.join(parts))}" if len(parts) > 1 else ""
    return text.append(told, style="not bold")


def _turns(degrees: float) -> str:
    told = f"{round(abs(degrees))}\N{DEGREE SIGN}"
    if not round(abs(degrees)):
        return told
    return f"{told} {'inwards' if degrees < 0 else 'outwards'}"


def _rounds(work: LyingWork) -> Table:
    table = Table(box=None, pad_edge=False, padding=(0, 2, 0, 0), header_style="bold")
    table.add_column("round", justify="right", no_wrap=True)
    for name in ("from the edge", "flat is", "it can be"):
        table.add_column(name, no_wrap=True)
    table.add_column("")
    for lies in work.rounds:
        table.add_row(
            str(lies.number),
            between(lies.away),
            between(lies.length.needed),
            between(lies.length.worked),
            Text(harmless(said_of(lies)), style=_STYLES[lies.lies]),
        )
    return table


def said_of(lies: RoundLies) -> str:
    """`lies flat`, or `will cup, 24 mm too short: front 17 mm, back 17 mm`."""
    if lies.lies is Lies.FLAT:
        return str(lies.lies)
    told = str(lies.lies)
    if lies.length.out:
        told += f", {whole(abs(lies.length.out))} too {_which(lies.length.out)}"
    else:
        told += " in part"
    several = len(lies.sections) > 1
    parts = [s for s in lies.sections if s.length.out and several]
    if lies.radius is not None:
        told += f" (in folds of a radius of {measure(lies.radius)})"
    main = lies.length.out or max((s.length.out for s in parts), key=abs, default=0.0)
    for sign in (main, -main):
        mine = [s for s in parts if s.length.out * sign > 0]
        mine.sort(key=lambda s: -abs(s.length.out))
        names = [f"{s.section} {whole(abs(s.length.out))}" for s in mine[:MOST]]
        names += [f"{len(mine) - MOST} more"] if len(mine) > MOST else []
        if names:
            told += f"{';' if ':' in told else ':'} {', '.join(names)}"
            told += "" if sign == lies.length.out else f" too {_which(sign)}"
    return told


def _which(mm: float) -> str:
    return "short" if mm < 0 else "long"


# --- what mends it -----------------------------------------------------------------


def _mended(work: LyingWork, mended: Mended) -> Iterator[tuple[str, Text]]:
    yield from _changes(work, mended)
    left = [r for r in mended.rounds if r.lies is not Lies.FLAT]
    if not left:
        yield "then", Text("every round lies flat", style="green")
    for lies in left:
        yield f"then round {lies.number}", Text(harmless(f"{said_of(lies)}{_stitches(work, lies)}"))
    yield from _opened(mended)
    if mended.given_up:
        yield "", Text("the search was given up: more may be found by hand")


def _changes(work: LyingWork, mended: Mended) -> Iterator[tuple[str, Text]]:
    for change in mended.changes:
        yield f"round {change.round}", Text(harmless(change_in_words(change, work)))


def _opened(mended: Mended) -> Iterator[tuple[str, Text]]:
    for number in mended.opened:
        yield f"then round {number}", Text("does not close: border adjust", style="red")


def _back(work: LyingWork, back: Mended) -> Iterator[tuple[str, Text]]:
    """What makes rounds at the size that was measured fit the edge as it was reckoned."""
    done = max(mark.round for mark in work.marks if mark.measured is not None)
    out = [r for r in back.rounds if r.number > done and r.lies is not Lies.FLAT]
    if not back.changes and not out:
        yield "", Text("nothing need be changed: they have room for it")
    yield from _changes(work, back)
    for lies in out:
        yield f"then round {lies.number}", Text(harmless(said_of(lies)))
    yield from _opened(back)


def change_in_words(change: Change, work: LyingWork) -> str:
    """`7 dc in place of 5 dc`, `over underarm: ch 6 in place of ch 3`."""
    terms = work.reading.rules.terms
    now, was = (_number(change.what, n, terms) for n in (change.now, change.was))
    body = next(r.body for r in work.reading.rounds if r.number == change.round)
    where = ""
    if change.clause is not None and isinstance(body, tuple):
        clause: Clause = body[change.clause]
        where = f"{write_scope(clause.scope)}: "
    return f"{where}{now} in place of {was}"


def _number(what: str, n: int, terms: str) -> str:
    return f"ch {n}" if what == "ch" else f"{n} {in_terms(what, terms)}"


def _stitches(work: LyingWork, lies: RoundLies) -> str:
    """How many stitches a round has too many or too few, where no number of it mends that."""
    out = lies.length.out
    made = next(r for r in work.counted if r.number == lies.number).made.stitches
    kind = max(made, key=lambda k: made[k])
    number = round(abs(out) / work.sizes.widths[kind])
    if not number:
        return ""
    which = "too few" if out < 0 else "too many"
    return f"; about {number} {in_terms(kind, work.reading.rules.terms)} {which}"


# --- the measuring line -----------------------------------------------------------------


def _marks(work: LyingWork) -> Iterator[tuple[str, Text]]:
    for mark in work.marks:
        yield f"after round {mark.round}", Text(tape_in_words(mark, work.edge.name))


def _known(work: LyingWork) -> Text:
    sizes = work.sizes
    told = [f"wheels {measure(work.wheel_mm)} across"] if work.wheel_mm else []
    told += [f"{kind} {measure(sizes.widths[kind])} wide" for kind in sizes.measured]
    told += [f"{kind} {measure(sizes.heights[kind])} high" for kind in sizes.measured_high]
    taken = ["other stitches as wide as these, their heights by the usual ratios"]
    taken += ["a chain as long as a stitch is wide"] if "ch" not in sizes.measured else []
    taken += ["loops evenly round a wheel"] if work.wheel_mm else []
    taken += [
        "arches anywhere from slack to pulled up",
        f"pressing takes up {EASE * 100:.0f} %",
    ]
    text = Text("measured: ", style="bold")
    text.append(", ".join(told), style="not bold")
    return text.append("\nassumed: ").append("; ".join(taken), style="not bold")
