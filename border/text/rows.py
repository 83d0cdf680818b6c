"""The rows of a border are read: a copy, one text, or clauses, with the claims behind."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from functools import partial
from itertools import groupby

from msgspec import Struct, field
from msgspec.structs import replace

from border.findings import Finding, Span
from border.text.assumed import EDGE, made_by, shell_of
from border.text.build import build_text
from border.text.clauses import Part, split_claims, split_clauses
from border.text.complaints import complaint
from border.text.copies import CopyWords, copy_at
from border.text.differences import otherwise, read_differences
from border.text.figures import Figure, Figures, figure_forms, is_place, placed, with_figures
from border.text.headings import is_heading
from border.text.marks import printed_marks
from border.text.moving import Tried
from border.text.nesting import pair_brackets
from border.text.nodes import Building
from border.text.numbering import Section
from border.text.numbers import number_at, row_list_at
from border.text.parser import parse
from border.text.rings import SHOWN
from border.text.shaping import shape
from border.text.shown import opens_place, picot_said_last, with_shown_figures
from border.text.source import Source
from border.text.terminals import Terminal, behind_colour, read_terminals
from border.text.tree import Body, Claim, Clause, Copy, End, Ending, Headings, Row, Text
from border.text.vocabulary import Names, vocabulary
from border.text.words import Sort, Word, read_words, shortened, without_remarks

_BREAKS = frozenset({"not-understood", "unknown-word", "nested-too-deep", "too-large"})
"""Faults after which a row's steps are not what was meant."""


MOST_WORDS = 5_000
"""No row has more: many a pass looks from one word for another."""
MOST_IN_ALL = 50_000
"""So many words, figures written out, and no further row of a border is read."""


class Reader(Struct):
    """What the rows of one border are read with, and the findings so far.

    `told`: the strange words that have been spoken of already. `words`: how many the rows
    read so far have. `below`: what the next row is worked into; `made`: what each row makes.
    `picot`: the chains of a picot as they were explained last; 0 where they were not.
    `shell`: the steps of the shell that a row made last.
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


def read_rows(sections: Iterable[Section], reader: Reader) -> Iterator[Row]:
    """The rows of a border, as many as are read; what is wrong in them goes to the reader."""
    for section in sections:
        if reader.words > MOST_IN_ALL:
            message = f"the rows up to here have more than {MOST_IN_ALL} words and marks"
            help_ = 'part the border; rows can be copied from another file: as rounds 1-2 of "FILE"'
            span = reader.source.span(*section.head)
            number = section.numbers[0]
            reader.findings.append(Finding("too-large", message, help_, span, number))
            return
        row = read_row(section, reader)
        reader.below = made_by(row, reader.made)
        reader.made |= dict.fromkeys(row.numbers, reader.below)
        reader.shell = shell_of(row, reader.headings) or reader.shell
        yield row


def read_row(section: Section, reader: Reader) -> Row:
    """One row of a border; what is wrong in it goes to the reader's findings.

    A row that cannot be read as it stands is `broken`, and has no steps.
    """
    source, number, before = reader.source, section.numbers[0], len(reader.findings)
    words, remarks = without_remarks(section.body, source)
    reader.findings += remarks
    words = _without_row_before(list(_without_headings(words, reader)), number)
    words = _without_rows_again(words, number, reader)
    words, said = picot_said_last(words, reader.names, source)
    reader.picot = said or reader.picot
    if len(words) <= MOST_WORDS:
        words, reader.figures = with_shown_figures(words, reader.names, reader.figures)
    figures = _with_shell_below(words, reader)
    words = with_figures(words, figures, MOST_WORDS, reader.names)
    reader.words += len(words)
    start, end = section.head
    head = source.span(start, end)
    span = source.span(start, words[-1].end if words else end)
    plain, colour = _without_colours(words)
    copy = copy_at(plain)
    words = plain if copy is not None else words
    note = ", ".join(filter(None, (section.note, colour if copy is not None else "")))
    body: Body = Text((), span=span)
    claims: tuple[Claim, ...] = ()
    if len(words) > MOST_WORDS:
        message = f"this row has more than {MOST_WORDS} words and marks"
        help_ = "say what is done over and over as a repeat, or part the row"
        reader.findings.append(Finding("too-large", message, help_, head))
    elif copy is not None:
        body, claims = _copy(section, copy, words, reader)
    else:
        body, claims = _texts(words, head, number, reader)
    told = [replace(finding, round=number) for finding in reader.findings[before:]]
    reader.findings[before:] = told
    if any(finding.code in _BREAKS for finding in told):
        body = Text((), span=span)
        return Row(section.numbers, body, claims, head, True, note, span=span)
    return Row(section.numbers, body, claims, head, note=note, span=span)


def _without_colours(words: list[Word]) -> tuple[list[Word], str]:
    """The words of a copy without `with white`, and what was said so: no count depends on it."""
    kept: list[Word] = []
    said: list[str] = []
    at = 0
    while at < len(words):
        opens = words[at].text in vocabulary().colours["opens"]
        end = behind_colour(words, at) if opens else at
        if end > at:
            said.append(" ".join(word.text for word in words[at:end]))
        else:
            kept.append(words[at])
        at = max(end, at + 1)
    while said and kept and kept[0].text in (".", ",", ";"):
        kept.pop(0)
    return kept, ", ".join(said)


def _with_shell_below(words: Sequence[Word], reader: Reader) -> Figures:
    """The figures; where a row makes a shell that nothing shows, those of the row below, told."""
    if not reader.shell or ("shell",) in reader.figures:
        return reader.figures
    at = next((n for n, w in enumerate(words) if w.text in ("shell", "shells", "sh")), None)
    if at is None or is_place(words[:at]) or not opens_place(words, at + 1):
        return reader.figures
    steps = tuple(read_words(Source("", reader.shell)))
    shell = Figure(("shell",), steps)
    reader.figures |= dict.fromkeys(figure_forms(shell.name), shell)
    message = f'"{words[at].text}" is taken to be made as the last were: {reader.shell}'
    help_ = f'a heading settles it: "shell = {reader.shell}"'
    span = reader.source.span(words[at].start, words[at].end)
    reader.findings.append(Finding("place-assumed", message, help_, span))
    return reader.figures


def _without_row_before(words: Sequence[Word], number: int) -> list[Word]:
    """The words without `of the 2nd row` in row 3: that is the row below, and says nothing."""
    kept: list[Word] = []
    at = 0
    while at < len(words):
        end = at + 1 if words[at].text == "of" else at
        end += end > at and words[min(end, len(words) - 1)].text == "the"
        behind = _behind_row(words, end, number - 1) if at < end < len(words) else at
        if behind > at:
            at = behind
            continue
        kept.append(words[at])
        at += 1
    return kept


def _without_rows_again(words: list[Word], number: int, reader: Reader) -> list[Word]:
    """The words without `Repeat from the 2nd row …` behind the steps: that is said of rows."""
    for at in range(1, len(words)):
        if words[at - 1].text not in (".", ";", ",", "and"):
            continue
        if _more_rows_alike(words, at):
            help_ = f'for each of them write a line of its own: "as round {number}."'
            reader.findings.append(_rows_again(words[at:], help_, reader.source))
            return words[:at]
        if words[at].text != "repeat":
            continue
        same_line = [w for w in words[at : at + 20] if w.line == words[at].line]
        copy = copy_at(same_line)
        named = vocabulary().rows["row"].intersection(w.text for w in same_line)
        if copy is None or not named:
            continue
        first = min(copy.rows, default=number + 1 - copy.back)
        rows = f"rows {first}-{number}" if first < number else f"row {first}"
        help_ = f'for each time write a line of its own: "repeat {rows}."'
        reader.findings.append(_rows_again(words[at:], help_, reader.source))
        return words[:at]
    return words


def _rows_again(words: Sequence[Word], help_: str, source: Source) -> Finding:
    span = source.span(words[0].start, words[-1].end)
    said = shortened(source.text[span.start : span.end])
    message = f'this is said of whole rows, and is not worked here: "{said}"'
    return Finding("rows-again", message, help_, span)


def _more_rows_alike(words: Sequence[Word], at: int) -> bool:
    """`Make 3 more rounds like this`, `work two other rows the same`."""
    texts = [w.text for w in words[at : at + 8]]
    number = number_at(words, at + 1)
    if texts[0] not in ("make", "work", "do") or number is None:
        return False
    behind = texts[number[1] - at :]
    more = len(behind) > 1 and behind[0] in ("more", "other", "others")
    return more and behind[1] in vocabulary().rows["row"]


def _behind_row(words: Sequence[Word], at: int, number: int) -> int:
    """Behind `2nd row`, `round 2`, of that number; 0 if none. `9 round the stem` is no row."""
    listed = row_list_at(words, at)
    if listed is None or not listed.named or listed.numbers != (number,):
        return 0
    return listed.after if listed.ordinal or words[at].sort is Sort.WORD else 0


def _texts(
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
        text, claims = _read_text(part, where, number, reader, last=part is parts[-1])
        if part.scope is None:
            return text, claims
        clauses.append(Clause(part.scope, text, where, span=where.to(text.span)))
    return tuple(clauses), claims


def _without_headings(words: Sequence[Word], reader: Reader) -> Iterator[Word]:
    """The words of a body without lines that are headings; those are told."""
    for line_number, group in groupby(words, lambda word: word.line):
        line = list(group)
        if line_number != words[0].line and is_heading(line):
            span = reader.source.span(line[0].start, line[-1].end)
            message, help_ = "a heading stands behind the first row", "move it up, before round 1"
            reader.findings.append(Finding("bad-heading", message, help_, span))
        else:
            yield from line


def _read_text(
    part: Part, where: Span, number: int, reader: Reader, *, last: bool
) -> tuple[Text, tuple[Claim, ...]]:
    """The text of a row or a clause, and behind the last one the row's claims."""
    source = reader.source
    row = number if part.scope is None else 0
    terminals, claims = _terminals(part.words, reader, row, last=last)
    span = source.span(part.words[0].start, part.words[-1].end) if part.words else where
    if terminals is None:
        return Text((), span=span), ()
    clause = part.scope is not None
    building = Building(terminals, source.name, reader.headings, number, clause)
    parsed = parse(terminals)
    if isinstance(parsed, int):
        message, help_, wrong = complaint(terminals, parsed)
        reader.findings.append(
            Finding("not-understood", message, help_, source.span(wrong.start, wrong.end))
        )
        return Text((), span=span), claims
    text = build_text(parsed, building, span)
    reader.findings += building.findings
    return text, claims


def _terminals(
    words: Sequence[Word], reader: Reader, row: int = 0, *, last: bool = True, copied: bool = False
) -> tuple[list[Terminal] | None, tuple[Claim, ...]]:
    """The terminals of a text and its claims; None where words or nesting make it hopeless."""
    source = reader.source
    terminals, findings = read_terminals(
        words, reader.names, source, reader.told, reader.below, row
    )
    terminals = placed(terminals, words[0].start) if words else terminals
    strange = any(finding.code == "unknown-word" for finding in findings)
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
    shaped, unclear = shape(paired)
    shaped = _picots_alike(shaped, reader)
    claims: tuple[Claim, ...] = ()
    if copied:
        # A claim needs something before it to be counted: here, the copy.
        copy = Terminal("COPY", "", 0, 0)
        shaped, claims = split_claims([copy, *shaped], source)
        shaped = shaped[1:]
    elif last:
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
    """A picot explained once, `picot (5 chain, 1 dc in the first)`, is that size from there on."""
    found: list[Terminal] = []
    for here in terminals:
        if here.type == "PICOT" and not here.number and reader.picot:
            here = replace(here, number=reader.picot)
        elif here.type == "PICOT" and here.name == SHOWN:
            reader.picot = here.number
        found.append(here)
    return found


def _nought(terminal: Terminal) -> bool:
    if terminal.type == "KIND":
        return terminal.kind is not None and terminal.kind.size == 0
    return terminal.number == 0 and terminal.type in ("NUM", "BETW")


def _tried(words: Sequence[Word], reader: Reader, number: int) -> Tried:
    """Words as the steps of a row; nothing is told of them, nor learnt from them."""
    before, told, picot = len(reader.findings), reader.told, reader.picot
    reader.told = set(told)
    where = reader.source.span(words[0].start, words[-1].end)
    text, _ = _read_text(Part(None, (0, 0), words), where, number, reader, last=False)
    tried = Tried(text, tuple(reader.findings[before:]), frozenset(reader.told))
    del reader.findings[before:]
    reader.told, reader.picot = told, picot
    return tried


def _copy(
    section: Section, found: CopyWords, words: Sequence[Word], reader: Reader
) -> tuple[Copy, tuple[Claim, ...]]:
    """A row that is a copy: behind it only differences, endings and claims."""
    source, numbers = reader.source, section.numbers
    span = source.span(words[0].start, words[found.after - 1].end)
    rows = found.rows or tuple(range(max(1, numbers[0] - found.back), max(2, numbers[0])))
    if not found.sound:
        message, help_ = "the rounds to be copied cannot be counted out", 'write "as rounds 2-5"'
        reader.findings.append(Finding("not-understood", message, help_, span))
    elif not found.rows and numbers[0] <= found.back:
        message, help_ = "there is no row before the first", "write this row out"
        reader.findings.append(Finding("no-such-row", message, help_, span))
    made = len(rows) * found.times
    if found.sound and (len(numbers) % len(rows) or (found.times > 1 and made != len(numbers))):
        message = f"{made} rounds are copied, and the head names {len(numbers)}"
        help_ = "name as many rounds at the head as are copied"
        head = source.span(*section.head)
        reader.findings.append(Finding("copies-uneven", message, help_, head))
    told = len(reader.findings)
    behind = words[found.after :]
    read = partial(_tried, reader=reader, number=numbers[0])
    said = read_differences(behind, reader.names, source, reader.told, read)
    terminals, claims = _terminals(behind[said.after :], reader, copied=True)
    rest = [t for t in terminals or () if t.type != "SEP"]
    ends = [
        End(Ending(t.name), span=source.span(t.start, t.end)) for t in rest if t.type == "ENDING"
    ]
    exception = any(f.code == "exception-in-words" for f in reader.findings[told:])
    if exception or terminals is None or len(ends) < len(rest):
        reader.findings[told:] = [otherwise(behind, source)]
        return Copy(rows, found.times, found.file, tuple(ends), span=span), claims
    reader.findings += said.findings
    return Copy(rows, found.times, found.file, tuple(ends), said.differences, span=span), claims
