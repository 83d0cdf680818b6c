"""Brackets and stars in pairs, and not too deep, before anything is parsed."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from border.findings import Finding
from border.text.source import Source
from border.text.terminals import Terminal

DEEPEST = 20
_PAIRS = {")": "(", "]": "[", "}": "{"}


def pair_brackets(
    terminals: Sequence[Terminal], source: Source
) -> tuple[list[Terminal] | None, list[Finding]]:
    """The terminals with every bracket in a pair; None where they nest too deep.

    A bracket that is never closed ends at the end of the text, one never
    opened is left out; both are told.
    """
    kept: list[Terminal] = []
    findings: list[Finding] = []
    open_: list[Terminal] = []
    for terminal in terminals:
        if terminal.type in ("LP", "STAR"):
            # A star behind "from" opens nothing.
            if terminal.type == "LP" or not (kept and kept[-1].type == "FROM"):
                open_.append(terminal)
            if len(open_) > DEEPEST:
                message = f"brackets and repeats stand more than {DEEPEST} deep in each other"
                help_ = "write the inner ones out"
                span = source.span(terminal.start, terminal.end)
                return None, [*findings, Finding("nested-too-deep", message, help_, span)]
        elif terminal.type == "REPEAT" and open_ and open_[-1].type == "STAR":
            open_.pop()
        elif terminal.type == "RP":
            while open_ and open_[-1].type == "STAR":
                open_.pop()
            if not open_ or open_[-1].text != _PAIRS[terminal.text]:
                findings.append(_unpaired(terminal, source, open_))
                if not open_:
                    continue
            open_.pop()
        kept.append(terminal)
    for terminal in [t for t in open_ if t.type == "LP"]:
        message, help_ = "this bracket is not closed", "write the other half of it"
        span = source.span(terminal.start, terminal.end)
        findings.append(Finding("not-understood", message, help_, span))
        kept.append(replace(terminal, type="RP", text=")"))
    return kept, findings


def _unpaired(terminal: Terminal, source: Source, open_: Sequence[Terminal]) -> Finding:
    span = source.span(terminal.start, terminal.end)
    if not open_:
        message, help_ = "this bracket closes none", "leave it out, or open one before it"
    else:
        message = f'this bracket closes one that was opened with "{open_[-1].text}"'
        help_ = "close each bracket with its own kind"
    return Finding("not-understood", message, help_, span)
