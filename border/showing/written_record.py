"""The record of `write`, as plain dictionaries."""

from __future__ import annotations

from border.showing.record import findings_record
from border.showing.shapes import FORMAT_VERSION
from border.showing.written import WrittenAll
from border.showing.written_shapes import WriteRecord


def write_record(written: WrittenAll) -> WriteRecord:
    """The record of `write`."""
    return {
        "format_version": FORMAT_VERSION,
        "works": [
            {"edge": w.edge, "border": w.border, "terms": w.terms, "text": w.text}
            for w in written.works
        ],
        "findings": findings_record(written.findings, written.sources),
    }
