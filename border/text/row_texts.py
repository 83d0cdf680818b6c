"""The steps of a row: one text, or clauses, with the claims behind."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from msgspec import Struct, field
from msgspec.structs import replace

from border.findings import Finding, Span
from border.text.building.build import build_text
from border.text.building.complaints import complaint
from border.text.building.parser import parse
from border.text.copying.moving import Tried
from border.text.framing.clauses import Part, split_claims, split_clauses, without_claims
from border.text.framing.figures import Figures, placed
from border.text.framing.nesting import pair_brackets
from border.text.framing.spoken import told_clause
from border.text.nodes import Building
from border.text.shaping.made_below import of_made_below, on_the_one
from border.text.shaping.marks import printed_marks, without_lone_mark
from border.text.shaping.passes import shape
from border.text.shaping.said_besides import without_rest
from border.text.source import Source
from border.text.squares.meanings import Squares
from border.text.terminals import Terminal
from border.text.tree import Chains, Claim, Clause, Headings, Text
from border.text.vocabulary import Names
from border.text.wording.assumed import CLUSTERS, EDGE, clusters_of, picots_in_shells
from border.text.wording.first_stitches import on_first_stitch
from border.text.wording.passing import only_ends
from border.text.wording.rings import COUNTED, SHOWN
from border.text.wording.terminals_read import read_terminals
from border.text.wording.whole_rows import between_all, one_stitch_alone
from border.text.words import Word, shortened

BREAKS = frozenset(
    {"not-understood", "unknown-word", "nested-too-deep", "too-large", "part-unclear"}
    | {"squares-unclear"}
)
"""Faults after which a row's steps are not what was meant."""

MOST_WORDS = 5_000
"""No row has more: many a pass looks from one word for another."""


class Reader(Struct):
    """What the rows of one border are read with, and the findings so far.

    `told`: the strange words that have been spoken of already. `words`: how many the rows
    read so far have. `below`: what the next row is worked into; `made`: what each row makes.
    `picot`: the chains of a picot as they were explained last; 0 where they were not.
    `shell`: the steps of the shell that a row made last. `texts`: the steps of the rows read so
    far. `squares`: what a space and a block are, or which of them are figures; `turning`: the
    chains that each row makes ahead of its turn. `first`: the number of the row that is worked on
    the edge: behind a row that makes only a foundation it is the next. `trying`: nothing is read
    but to see whether it can be.
    """

    source: Source
    headings: Headings
    names: Names
    figures: Figures
    findings: list[Finding] = field(default_factory=list)
    told: set[str] = field(default_factory=set)
    words: int = 0
    below: str = EDGE
    made: dict[int, str] = field(default_factory=dict)
    picot: int = 0
    shell: str = ""
    texts: dict[int, Text] = field(default_factory=dict)
    squares: Squares | frozenset[str] = frozenset()
    first: int = 1
    turning: dict[int, int] = field(default_factory=dict)
    trying: bool = False


def read_texts(
    words: Sequence[Word], head: Span, number: int, reader: Reader
) -> tuple[Text | tuple[Clause, ...], tuple[Claim, ...]]:
    """The one text of a row, or its clauses, and the claims at its end."""
    source = reader.source
    parts, faults = split_clauses(words, source)
    reader.findings += faults
    if parts[0].scope is None and len(parts) > 1:
        message = "these steps belong to no clause of their row"
        help_ = 'write "over each motif:" before them, or "elsewhere:"'
        stray = source.span(parts[0].words[0].start, parts[0].words[-1].end)
        reader.findings.append(Finding("not-understood", message, help_, stray))
        parts = parts[1:]
    clauses: list[Clause] = []
    claims: tuple[Claim, ...] = ()
    for part in parts:
        where = head if part.scope is None else source.span(*part.head)
        text, claims = read_text(part, where, number, reader, last=part is parts[-1])
        if part.scope is None:
            return text, claims
        clauses.append(Clause(part.scope, text, where, span=where.to(text.span)))
    return tuple(clauses), claims


def read_text(
    part: Part, where: Span, number: int, reader: Reader, *, last: bool
) -> tuple[Text, tuple[Claim, ...]]:
    """The text of a row or a clause, and behind the last one the row's claims."""
    source = reader.source
    row = number if part.scope is None else 0
    before = len(reader.findings)
    terminals, claims = terminals_of(part.words, reader, row, last=last)
    span = source.span(part.words[0].start, part.words[-1].end) if part.words else where
    if terminals is None:
        return Text((), span=span), ()
    if row == reader.first and only_ends(terminals) and _is_foundation(reader.findings[before:]):
        reader.first = row + 1
        return Text((), span=span), ()
    clause = part.scope is not None
    below = reader.texts.get(number - 1)
    building = Building(terminals, source.name, reader.headings, number, clause, below=below)
    parsed = parse(terminals)
    while isinstance(parsed, int) and parsed < len(terminals):
        rest = without_rest(terminals, parsed, source)
        if rest is None:
            break
        terminals, told = rest
        reader.findings.append(told)
        building.terminals = terminals
        parsed = parse(terminals)
    if isinstance(parsed, int):
        message, help_, wrong = complaint(terminals, parsed)
        here = _in_figure(part.words, wrong, where) or wrong
        if not reader.trying:
            fault = partial(_first_fault, reader=reader, number=number)
            if said := told_clause(part.words, here.start, source, fault):
                help_ += f'; or, where this only tells of the work, set it apart: "-- {said} --"'
        reader.findings.append(
            Finding("not-understood", message, help_, source.span(here.start, here.end))
        )
        return Text((), span=span), claims
    text = build_text(parsed, building, span)
    reader.findings += building.findings
    if row == reader.first and text.items and all(isinstance(one, Chains) for one in text.items):
        reader.first = row + 1
    return text, claims


def _is_foundation(told: Sequence[Finding]) -> bool:
    """Whether it was told of a row that it makes a foundation, or a chain of no number."""
    return any(
        f.code == "foundation-named" or (f.code == "taken-as-remark" and "chain" in f.message)
        for f in told
    )


def _in_figure(words: Sequence[Word], wrong: Terminal, row: Span) -> Word | None:
    """Where a word that stands in a figure's steps is written, before the rows."""
    said = wrong.text.split()[:1]
    at_name = [w for w in words if w.start == wrong.start and [w.text] == said]
    steps = (w for w in words if w.start < row.start and [w.text] == said)
    return None if at_name else next(steps, None)


def terminals_of(
    words: Sequence[Word], reader: Reader, row: int = 0, *, last: bool = True, copied: bool = False
) -> tuple[list[Terminal] | None, tuple[Claim, ...]]:
    """The terminals of a text and its claims; None where words or nesting make it hopeless."""
    source = reader.source
    named = any(word.text in CLUSTERS for word in words)
    clusters = clusters_of(reader.texts.get(row - 1)) if named else ""
    terminals, findings = read_terminals(
        words,
        reader.names,
        source,
        reader.told,
        reader.below,
        max(row - reader.first + 1, min(row, 1)),
        clusters,
        picots_in_shells(reader.texts.get(row - 1)),
    )
    terminals = placed(terminals, words[0].start) if words else terminals
    terminals = on_first_stitch(terminals, reader.texts.get(row - 1))
    terminals = on_the_one(terminals, reader.texts.get(row - 1))
    strange = any(finding.code == "unknown-word" for finding in findings)
    terminals, alone = without_lone_mark(terminals, source)
    findings += alone
    marked = printed_marks(terminals, MOST_WORDS)
    if marked is None:
        message = "there are too many stars and crosses here, or too many inside each other"
        help_ = 'put brackets round what is repeated: "(1 dc, ch 2) 3 times"'
        span = source.span(terminals[0].start, terminals[-1].end)
        findings.append(Finding("too-large", message, help_, span))
    paired, faults = pair_brackets(marked or [], source)
    findings += faults
    reader.findings += findings
    if paired is None or marked is None or strange:
        return None, ()
    whole = row and not reader.trying

    def shaped_as(words: list[Terminal]) -> tuple[list[Terminal], list[Terminal]]:
        return shape(one_stitch_alone(between_all(words)) if whole else words)

    shaped, unclear = shaped_as(paired)
    claims: tuple[Claim, ...] = ()
    if last and not copied:
        _, claims = split_claims(shaped, source)
        if (steps := without_claims(paired, claims)) != paired:
            shaped, unclear = shaped_as(steps)  # what ends a row ends it before a claim too
        else:
            claims = ()
    shaped = of_made_below(shaped, reader.texts.get(row - 1))
    shaped = _picots_alike(shaped, reader)
    if copied:
        # A claim needs something before it to be counted: here, the copy.
        copy = Terminal("COPY", "", 0, 0)
        shaped, claims = split_claims([copy, *shaped], source)
        shaped = shaped[1:]
    elif last and not claims:
        shaped, claims = split_claims(shaped, source)
    for terminal in unclear:
        message = (
            f'"{shortened(terminal.text)}" may go with the word before it or the word behind it'
        )
        help_ = "put a comma on the side where it does not belong"
        span = source.span(terminal.start, terminal.end)
        reader.findings.append(Finding("not-understood", message, help_, span))
    for terminal in shaped:
        if terminal.type in ("NUM", "KIND", "PICOT", "CLUSTER", "BETW") and _nought(terminal):
            message, help_ = (
                "nothing can be made 0 times",
                "leave the step out, or write its number",
            )
            span = source.span(terminal.start, terminal.end)
            reader.findings.append(Finding("not-understood", message, help_, span))
    return shaped, claims


def _picots_alike(terminals: Sequence[Terminal], reader: Reader) -> list[Terminal]:
    """A picot explained once, `picot (5 chain, 1 dc in the first)`, is that size from there on; in
    its row, so is `a picot of 5`, where all of them are alike, and for another."""
    found: list[Terminal] = []
    said: list[int] = []
    for here in terminals:
        if here.type == "PICOT" and not here.number:
            another = said[-1:] if found and found[-1].text == "another" else []
            alike = said[-1:] if len(set(said)) == 1 else []
            sizes = another or [n for n in (reader.picot, *alike) if n]
            here = replace(here, number=sizes[0]) if sizes else here
        elif here.type == "PICOT":
            said.append(here.number)
            if here.name in (SHOWN, COUNTED):
                reader.picot = here.number
        found.append(here)
    return found


def _nought(terminal: Terminal) -> bool:
    if terminal.type == "KIND":
        return terminal.kind is not None and terminal.kind.size == 0
    return terminal.number == 0 and terminal.type in ("NUM", "BETW")


def tried(words: Sequence[Word], reader: Reader, number: int, *, last: bool = False) -> Tried:
    """Words as the steps of a row; nothing is told of them, nor learnt from them."""
    before, told, picot = len(reader.findings), reader.told, reader.picot
    first, trying = reader.first, reader.trying
    reader.told, reader.trying = set(told), True
    where = reader.source.span(words[0].start, words[-1].end)
    text, _ = read_text(Part(None, (0, 0), words), where, number, reader, last=last)
    tried = Tried(text, tuple(reader.findings[before:]), frozenset(reader.told))
    del reader.findings[before:]
    reader.told, reader.picot, reader.first, reader.trying = told, picot, first, trying
    return tried


def _first_fault(words: Sequence[Word], reader: Reader, number: int) -> int:
    """Where words go wrong as the steps of a row; behind all the text where they do not."""
    found = tried(words, reader, number, last=True).findings
    faults = (f.span.start for f in found if f.code in BREAKS and f.span is not None)
    return min(faults, default=len(reader.source.text) + 1)
