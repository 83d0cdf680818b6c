"""Rows that copy other rows, all of one or a part."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial

from msgspec.structs import replace

from border.findings import Finding, Span
from border.text.clauses import Part
from border.text.continued import Unclear, joined
from border.text.copies import CopyWords, behind_said
from border.text.copy_words import past_openings, past_separators
from border.text.differences import otherwise, read_differences
from border.text.moving import last_put_at
from border.text.numbering import Section
from border.text.part_copies import How, PartCopy, only_ends
from border.text.row_texts import BREAKS, MOST_WORDS, Reader, read_text, terminals_of, tried
from border.text.source import Source
from border.text.steps import is_open, walk, without_brackets
from border.text.terminals import Terminal
from border.text.tree import (
    Chains,
    Claim,
    Copy,
    End,
    Ending,
    Item,
    Skip,
    StartChain,
    Stitches,
    Text,
    Which,
)
from border.text.vocabulary import Names
from border.text.words import Word
from border.text.written import write_text


def read_copy(
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
    read = partial(tried, reader=reader, number=numbers[0])
    names = _fastened(behind, reader.texts.get(rows[0]), reader.names)
    said = read_differences(behind, names, source, reader.told, read)
    claimed = past_openings(behind, past_separators(behind, said.after))
    if behind_said(behind, claimed, "there_are") == claimed:
        claimed = said.after
    terminals, claims = terminals_of(behind[claimed:], reader, copied=True)
    rest = [t for t in terminals or () if t.type != "SEP"]
    ends = tuple(_ends(rest, source))
    exception = any(f.code == "exception-in-words" for f in reader.findings[told:])
    if exception or terminals is None or len(ends) < len(rest):
        reader.findings[told:] = [otherwise(behind, source)]
        return Copy(rows, found.times, found.file, ends, span=span), claims
    reader.findings += said.findings
    return Copy(rows, found.times, found.file, ends, said.differences, span=span), claims


def _fastened(words: Sequence[Word], copied: Text | None, names: Names) -> Names:
    """The names, with what `fastening` is where a row makes one low stitch and chains only."""
    known = ("fasten",) in names.known or copied is None
    if known or not any(behind_said(words, n, "fasten") > n for n in range(len(words))):
        return names
    assert copied is not None
    made = _made(copied) - {"ch"}
    if len(made) != 1 or not made <= {"sc", "ss"}:
        return names
    return replace(names, known={**names.known, ("fasten",): made.pop()})


def said_out(
    found: CopyWords, words: Sequence[Word], head: Span, number: int, reader: Reader
) -> tuple[Text, tuple[Claim, ...]] | None:
    """A copy behind which its row is said, `the same, that is, 1 tr on each tr`: that row."""
    start = past_separators(words, found.after)
    end = behind_said(words, start, "namely")
    if end == start or end == len(words) or found.file or len(found.rows) > 1:
        return None
    copied = reader.texts.get(found.rows[0] if found.rows else number - 1)
    before = len(reader.findings)
    text, claims = read_text(Part(None, (0, 0), words[end:]), head, number, reader, last=True)
    if any(finding.code in BREAKS for finding in reader.findings[before:]):
        return text, claims
    if copied is None or _made(copied) != _made(text):
        del reader.findings[before:]
        return None
    again = copied.repeats or any(map(is_open, walk(copied.items)))
    if again and not text.repeats and not any(map(is_open, walk(text.items))):
        text = replace(text, repeats=True)
    span = reader.source.span(words[0].start, words[end - 1].end)
    written = write_text(text, reader.headings.terms or "us", reader.headings.overrides)
    message = f'the row is read as it is said behind these words: "{written}"'
    help_ = "if it is the copied row that is meant, leave that out; otherwise leave these out"
    reader.findings.append(Finding("perhaps-this-part", message, help_, span))
    return text, claims


def last_put(
    found: CopyWords, words: Sequence[Word], number: int, reader: Reader
) -> tuple[Text, tuple[Claim, ...]] | None:
    """A copy of which the last stitch goes elsewhere: the row with that stitch there."""
    copied = reader.texts.get(found.rows[0] if found.rows else number - 1)
    if found.file or len(found.rows) > 1 or found.times > 1 or copied is None:
        return None
    start = past_separators(words, found.after)
    read = partial(tried, reader=reader, number=number)
    put = last_put_at(words, start, reader.names, read)
    if put is None or not only_ends(words[put.after :], reader.names):
        return None
    items = tuple(without_brackets(copied.items))
    steps = [n for n, item in enumerate(items) if not isinstance(item, Chains | End)]
    if copied.repeats or not steps or not _makes_one(items[last := steps[-1]], put.step):
        return None
    if len(steps) > 1 and isinstance(items[steps[-2]], Skip):
        return None  # whether that is still missed is not said
    terminals, claims = terminals_of(words[put.after :], reader, copied=True)
    ends = tuple(_ends(terminals or (), reader.source)) or copied.ends
    reader.told |= put.told
    text = replace(copied, items=(*items[:last], put.step, *items[last + 1 :]), ends=ends)
    written = write_text(text, reader.headings.terms or "us", reader.headings.overrides)
    message = f'with its last stitch where this says, the row is read as "{written}"'
    help_ = "if that is not what it means, write the row out"
    span = reader.source.span(words[start].start, words[put.after - 1].end)
    reader.findings.append(Finding("perhaps-this-part", message, help_, span))
    return text, claims


def _makes_one(item: Item, step: Stitches) -> bool:
    """Whether a step makes one stitch in all, the same as another."""
    match item:
        case Stitches(count=1, stitch=step.stitch, together=False, cluster=0, place=place):
            one = place is None or place.count == 1 or place.which is Which.NTH
            return one and not is_open(item)
    return False


def _made(text: Text) -> set[str]:
    """The stitches that steps make, and chains."""
    found = {item.stitch for item in walk(text.items) if isinstance(item, Stitches)}
    found |= {i.stands_for for i in walk(text.items) if isinstance(i, StartChain) and i.stands_for}
    chains = any(isinstance(i, Chains) or getattr(i, "between", 0) for i in walk(text.items))
    chains = chains or any(getattr(item, "parted", 0) for item in walk(text.items))
    return found | ({"ch"} if chains else set())


def read_part_copy(
    part: PartCopy, own: Sequence[Word], head: Span, number: int, reader: Reader
) -> tuple[Text, tuple[Claim, ...]]:
    """A row of steps of its own and a part of another row; how it is read is told."""
    source, before = reader.source, len(reader.findings)
    alone = part.how in (How.REST, How.FROM_STAR)
    text, claims = read_text(Part(None, (0, 0), own), head, number, reader, last=not alone)
    if alone:
        rest, claims = terminals_of(part.behind, reader, copied=True)
        ends = tuple(_ends(rest or (), source))
    if any(finding.code in BREAKS for finding in reader.findings[before:]):
        return text, claims
    span = part.span(source)
    copied, of = reader.texts.get(part.row(number)), part.row(number)
    if copied is None:
        message = f"round {of}, of which this copies a part, has no steps of its own to be parted"
        reader.findings.append(Finding("part-unclear", message, "write this row out", span))
        return text, claims
    repeated = bool(reader.headings.rows_repeated)
    made = joined(part, text, copied, ends if alone else (), repeated=repeated)
    steps = sum(1 for _ in walk(made.items)) if isinstance(made, Text) else 0
    reader.words += steps
    if steps > MOST_WORDS:
        message = f"with a part of round {of} this row has more than {MOST_WORDS} steps"
        help_ = "say what is done over and over as a repeat"
        reader.findings.append(Finding("too-large", message, help_, span))
        return text, claims
    rows = made.rows if isinstance(made, Unclear) else (made,)
    terms, overrides = reader.headings.terms or "us", reader.headings.overrides
    out = " or ".join(f'"{write_text(row, terms, overrides)}"' for row in rows)
    if isinstance(made, Unclear):
        help_ = f"write this row out: {out}" if out else "write this row out"
        reader.findings.append(
            Finding("part-unclear", f"a part of round {of}: {made.message}", help_, span)
        )
        return text, claims
    message = f"with a part of round {of} this row is read as {out}"
    help_ = "if that is not what it means, write the row out"
    reader.findings.append(Finding("perhaps-this-part", message, help_, span))
    return made, claims


def _ends(terminals: Sequence[Terminal], source: Source) -> Iterator[End]:
    for here in terminals:
        if here.type == "ENDING":
            yield End(Ending(here.name), span=source.span(here.start, here.end))
