"""The counts as tables for a needleworker: one line a round, then each round in full.

Every name that a user wrote goes through `harmless` and into `Text`, so that
nothing in it is taken for markup or for a command to the terminal.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rich.console import Group, RenderableType
from rich.table import Table
from rich.text import Text

from border.findings import Finding, Severity
from border.reckoning.counts import RepeatCount, RoundCount
from border.reckoning.thread import (
    Thread,
    ThreadUse,
    ball_named,
    described,
    thread_mm,
    trusted,
)
from border.showing.counted import Counted, Piece
from border.showing.folding import (
    each_repeat,
    edge_in_words,
    everything,
    joint_lines,
    length,
    motif_lines,
    stitches,
    told_apart,
    weight,
)
from border.showing.layout import Rows
from border.showing.telling import harmless
from border.text.amounts import kinds, often, some
from border.working.found import in_words

MOST = 40
"""Lines of one sort shown under one round."""

TERMS = {"us": "US", "uk": "UK", "early": "early (1840s and 1850s)"}


def count_tables(counted: Counted) -> Group:
    """All pieces of work, and the thread they take."""
    parts: list[RenderableType] = []
    for piece in counted.pieces:
        parts += [_heading(piece), Text()]
        parts += [_overview(piece, counted.thread), Text()] if piece.rounds else []
        for count in piece.rounds:
            parts += [_round_heading(count), _details(piece, count)]
    if any(piece.rounds for piece in counted.pieces):
        parts.append(_thread(counted.thread_used, counted.thread))
    return Group(*parts)


def _heading(piece: Piece) -> Text:
    title = piece.title or piece.border
    text = Text(f"{harmless(piece.edge.name)}: {harmless(title)}", style="bold")
    terms = TERMS.get(piece.terms, piece.terms)
    text.append(f"\n{edge_in_words(piece.edge)}; stitch names: {terms}", style="not bold")
    failing = [str(r.number) for r in piece.rounds if not r.closes and not r.done]
    if not piece.whole:
        text.append(f"\n{_not_counted(piece)}", style="red")
    if failing:
        which = "round" if len(failing) == 1 else "rounds"
        verb = "does" if len(failing) == 1 else "do"
        text.append(f"\n{which} {_listed(failing)} {verb} not close", style="red")
    elif piece.whole:
        which = "every round" if piece.closes else "every round still to be worked"
        text.append(f"\n{which} closes", style="not bold green")
    return text


def _not_counted(piece: Piece) -> str:
    if not piece.rounds:
        return "no round could be counted"
    return f"nothing is counted after round {piece.rounds[-1].number}: mend the text first"


def _overview(piece: Piece, thread: Thread) -> Table:
    table = Table(box=None, pad_edge=False, padding=(0, 2, 0, 0), header_style="bold")
    table.add_column("round", justify="right", no_wrap=True)
    table.add_column("stitches", min_width=12)
    for name in ("chains", "picots", "spaces", "thread"):
        table.add_column(name, justify="right", no_wrap=True)
    table.add_column("")
    for count in piece.rounds:
        table.add_row(
            str(count.number),
            Text(stitches(count.made, piece.terms)),
            *(str(n) if n else "-" for n in (count.made.chains, count.made.picots, count.spaces)),
            length(thread_mm(count.loops, thread)),
            _closing(count),
        )
    return table


def _closing(count: RoundCount) -> Text:
    """Nothing of a round that closes; what is worked already is a fact, and no fault."""
    text = "" if count.closes else "does not close"
    return Text(text, style="yellow" if count.done else "red")


def _round_heading(count: RoundCount) -> Text:
    text = Text(f"round {count.number}", style="bold")
    if count.done:
        text.append(", worked already", style="not bold")
    return text if count.closes else text.append(": ").append_text(_closing(count))


def _details(piece: Piece, count: RoundCount) -> Rows:
    rows: list[tuple[str, Text]] = []
    for label, lines in _detail_lines(piece, count):
        rows += [(label if i == 0 else "", line) for i, line in enumerate(lines[:MOST])]
        if len(lines) > MOST:
            rows.append(("", Text(f"... and {len(lines) - MOST} more, all of them with --json")))
    return Rows(rows)


def _detail_lines(piece: Piece, count: RoundCount) -> Iterator[tuple[str, list[Text]]]:
    terms = piece.terms
    yield "made", [Text(everything(count.made, terms))]
    yield "repeats", [Text(_repeat(r, terms)) for r in count.repeats]
    several = len(count.sections) > 1
    sections = [f"{s.section}: {everything(s.made, terms)}" for s in count.sections if several]
    yield "sections", [Text(harmless(line)) for line in sections]
    yield "motifs", [_motif(line, usual) for line, usual in motif_lines(count.motifs, terms)]
    yield "joints", [Text(harmless(line)) for line in joint_lines(count.joints, terms)]
    eased = [
        f"{a.at}: {adjusted(a.by, count, terms)}, after repeat {a.before_repeat}"
        for a in count.adjustments
    ]
    yield "adjusted", [Text(harmless(line)) for line in eased]
    found = [f"{in_words(count.found, terms)}; counted on from there"] if count.found else []
    yield "found", [Text(line) for line in found]
    yield "faults", [_fault(f) for f in piece.findings if _concerns(f, count.number)]


def _repeat(count: RepeatCount, terms: str) -> str:
    over = f"; {count.left_over} left over" if count.left_over else "; none left over"
    if not count.times:
        return f"not made{over}"
    return f"{often(count.times)}, {each_repeat(count, terms)}{over}"


def _motif(line: str, usual: bool) -> Text:
    text = Text(harmless(line))
    if not usual:
        text.append("  (not the usual)", style="yellow")
    return text


def adjusted(by: int, count: RoundCount, terms: str) -> str:
    """What an adjustment does: `1 space more passed over`, `2 spaces worked twice`."""
    takes = {kind for repeat in count.repeats for kind in repeat.takes}
    what = kinds({takes.pop(): abs(by)}, terms) if len(takes) == 1 else str(abs(by))
    return f"{what} more passed over" if by > 0 else f"{what} worked twice"


def _concerns(finding: Finding, number: int) -> bool:
    return finding.round == number and finding.severity is Severity.ERROR


def _fault(finding: Finding) -> Text:
    text = Text(harmless(finding.message), style="red")
    for line in (finding.help or "").splitlines():
        text.append(f"\n{harmless(line)}", style="default")
    return text


def _listed(names: Sequence[str]) -> str:
    if len(names) < 2:
        return "".join(names)
    return f"{', '.join(names[:-1])} and {names[-1]}"


def _thread(used: ThreadUse, thread: Thread) -> Text:
    text = Text("thread", style="bold")
    about, low, high = told_apart(length, used.mm, used.low_mm, used.high_mm)
    text.append(
        f"\nabout {about}, between {low} and {high}, "
        f"{weight(used.grams)}, for {harmless(described(thread))}"
        f"\n{trusted(thread.gauge)}; in these rounds alone: no motifs, tails or swatch",
        style="not bold",
    )
    if used.balls is not None:
        text.append(
            f"\nhave in hand {some(used.balls, 'ball')} of {ball_named(thread)}: the upper figure "
            f"and {thread.waste * 100:.0f} % for waste",
            style="not bold",
        )
    return text
