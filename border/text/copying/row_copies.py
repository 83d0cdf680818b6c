"""Rows that copy other rows, all of one or a part."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial

from msgspec.structs import replace

from border.findings import Finding, Span
from border.text.copying.continued import Unclear, joined
from border.text.copying.differences import otherwise, read_differences
from border.text.copying.moving import last_put_at
from border.text.copying.part_copies import How, PartCopy, ends_here
from border.text.framing.clauses import Part
from border.text.framing.copies import CopyWords, behind_said
from border.text.framing.copy_words import past_openings, past_separators
from border.text.framing.numbering import Section
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
    next_ = numbers[0] - found.over
    rows = found.rows or tuple(range(max(1, next_ - found.back), max(2, next_)))
    if not found.sound:
        message, help_ = "the rounds to be copied cannot be counted out", 'write "as rounds 2-5"'
        reader.findings.append(Finding("not-understood", message, help_, span))
    elif not found.rows and next_ <= found.back:
        message, help_ = "there is no row before the first", "write this row out"
        reader.findings.append(Finding("no-such-row", message, help_, span))
    made = len(rows) * found.times
    if found.sound and (len(numbers) % len(rows) or (found.times > 1 and made != len(numbers))):
        message = f"{made} rounds are copied, and the head names {len(numbers)}"
        help_ = "name as many rounds at the head as are copied"
        head = source.span(*section.head)
        reader.findings.append(Finding("copies-uneven", message, help_, head))
    before, told = len(reader.findings), set(reader.told)
    behind = words[found.after :]
    read = partial(tried, reader=reader, number=numbers[0])
    copied = None if found.file else reader.texts.get(rows[0])
    names = _fastened(behind, copied, reader.names)
    said = read_differences(behind, names, source, reader.told, read)
    claimed = past_openings(behind, past_separators(behind, said.after))
    if behind_said(behind, claimed, "there_are") == claimed:
        claimed = said.after
    ends, claims = _only_ends(behind[claimed:], reader)
    if ends is None or any(f.code == "exception-in-words" for f in reader.findings[before:]):
        reader.findings[before:] = [otherwise(behind, source)]
        reader.told = told
        return Copy(rows, found.times, found.file, ends or (), span=span), claims
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
    if end == start or end == len(words) or not found.one:
        return None
    copied = reader.texts.get(found.only(number))
    before, told, picot = len(reader.findings), set(reader.told), reader.picot
    text, claims = read_text(Part(None, (0, 0), words[end:]), head, number, reader, last=True)
    if any(finding.code in BREAKS for finding in reader.findings[before:]):
        return text, claims
    if copied is None or _made(copied) != _made(text):
        del reader.findings[before:]
        reader.told, reader.picot = told, picot
        return None
    again = copied.repeats or any(map(is_open, walk(copied.items)))
    if again and not text.repeats and not any(map(is_open, walk(text.items))):
        text = replace(text, repeats=True)
    span = reader.source.span(words[0].start, words[end - 1].end)
    message = "the row is read as it is said behind these words: {}"
    help_ = "if it is the copied row that is meant, leave that out; otherwise leave these out"
    _tell_read(text, message, help_, span, reader)
    return text, claims


def last_put(
    found: CopyWords, words: Sequence[Word], number: int, reader: Reader
) -> tuple[Text, tuple[Claim, ...]] | None:
    """A copy of which the last stitch goes elsewhere: the row with that stitch there."""
    copied = reader.texts.get(found.only(number))
    if not found.one or copied is None:
        return None
    start = past_separators(words, found.after)
    read = partial(tried, reader=reader, number=number)
    put = last_put_at(words, start, reader.names, read)
    if put is None or not ends_here(words[put.after :], reader.names):
        return None
    items = tuple(without_brackets(copied.items))
    steps = [n for n, item in enumerate(items) if not isinstance(item, Chains | End)]
    if copied.repeats or not steps or not _makes_one(items[last := steps[-1]], put.step):
        return None
    if len(steps) > 1 and isinstance(items[steps[-2]], Skip):
        return None  # whether that is still missed is not said
    ends, claims = _only_ends(words[put.after :], reader)
    if ends is None:
        return None
    reader.told |= put.told
    items = (*items[:last], put.step, *items[last + 1 :])
    text = replace(copied, items=items, ends=ends or copied.ends)
    message = "with its last stitch where this says, the row is read as {}"
    span = reader.source.span(words[start].start, words[put.after - 1].end)
    _tell_read(text, message, _OTHERWISE, span, reader)
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
    alone = part.how in (How.REST, How.FROM_STAR, How.BEHIND)
    text, claims = read_text(Part(None, (0, 0), own), head, number, reader, last=not alone)
    span, ends = part.span(source), None
    if alone:
        ends, claims = _only_ends(part.behind, reader)
        if ends is None:
            message = "behind this part of another row more is worked, and where is not said"
            reader.findings.append(Finding("part-unclear", message, "write this row out", span))
    if any(finding.code in BREAKS for finding in reader.findings[before:]):
        return text, claims
    of = part.copy.only(number)
    copied = reader.texts.get(of)
    if copied is None:
        message = f"round {of}, of which this copies a part, has no steps of its own to be parted"
        if of not in reader.made:
            message = f"there is no round {of} before this one, of which it copies a part"
        reader.findings.append(Finding("part-unclear", message, "write this row out", span))
        return text, claims
    repeated = bool(reader.headings.rows_repeated)
    made = joined(part, text, copied, ends or (), repeated=repeated)
    steps = sum(1 for _ in walk(made.items)) if isinstance(made, Text) else 0
    reader.words += steps
    if steps > MOST_WORDS:
        message = f"with a part of round {of} this row has more than {MOST_WORDS} steps"
        help_ = "say what is done over and over as a repeat"
        reader.findings.append(Finding("too-large", message, help_, span))
        return text, claims
    if isinstance(made, Unclear):
        out = " or ".join(_quoted(row, reader) for row in made.rows)
        help_ = f"write this row out: {out}" if out else "write this row out"
        reader.findings.append(
            Finding("part-unclear", f"a part of round {of}: {made.message}", help_, span)
        )
        return text, claims
    message = f"with a part of round {of} this row is read as {{}}"
    _tell_read(made, message, _OTHERWISE, span, reader)
    return made, claims


_OTHERWISE = "if that is not what it means, write the row out"


def _tell_read(text: Text, message: str, help_: str, span: Span, reader: Reader) -> None:
    """Tell how a copy is read; `message` has a place for the row."""
    message = message.format(_quoted(text, reader))
    reader.findings.append(Finding("perhaps-this-part", message, help_, span))


def _quoted(text: Text, reader: Reader) -> str:
    return f'"{write_text(text, reader.headings.terms or "us", reader.headings.overrides)}"'


def _only_ends(
    words: Sequence[Word], reader: Reader
) -> tuple[tuple[End, ...] | None, tuple[Claim, ...]]:
    """The endings that stand behind a copy, None where more does; and the claims."""
    terminals, claims = terminals_of(words, reader, copied=True)
    rest = [t for t in terminals or () if t.type != "SEP"]
    ends = tuple(_ends(rest, reader.source))
    return None if terminals is None or len(ends) < len(rest) else ends, claims


def _ends(terminals: Sequence[Terminal], source: Source) -> Iterator[End]:
    for here in terminals:
        if here.type == "ENDING":
            yield End(Ending(here.name), span=source.span(here.start, here.end))
