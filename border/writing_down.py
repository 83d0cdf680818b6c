"""The stage of `write`: every piece of work as a border text for its own edge."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from border.findings import Finding
from border.showing.written import WrittenAll, WrittenWork
from border.text.source import Source
from border.text.tree import Border
from border.text.written import write_border
from border.wanted import Wanted, told_of, worked_as_said
from border.writing.border import write_out


def written_down(
    wanted: Sequence[Wanted], terms: str | None, sources: Mapping[str, Source]
) -> WrittenAll:
    """Every piece of work written out, in these terms, or each in those of its border.

    A border text that goes on no edge is written as it stands.
    """
    works: list[WrittenWork] = []
    findings: list[Finding] = []
    for one in wanted:
        if one.edge is None and one.work is None and one.text.rows:
            text = write_border(Border(one.text.headings, one.text.rows), terms)
            own = terms or one.text.headings.terms or "us"
            works.append(WrittenWork(None, one.named, own, _to_the_fault(text, one)))
        if one.edge is None or one.text.reading is None:
            continue
        worked = worked_as_said(one, one.edge)
        own = terms or one.text.reading.rules.terms
        out = write_out(one.text.headings, one.text.reading, worked, one.given, own)
        text = _to_the_fault(out.text, one)
        works.append(WrittenWork(one.edge.name, one.named, own, text))
        findings += told_of(one.edge, (*worked.findings, *out.findings), len(wanted))
    return WrittenAll(tuple(works), tuple(findings), sources)


def _to_the_fault(text: str, one: Wanted) -> str:
    """A text that ends before a faulty row says so, lest it be taken for the whole border."""
    if one.text.faulty is None or not text:
        return text
    return f"{text}\n# not written: round {one.text.faulty} and what follows; mend the text first\n"
