"""Printing: tables, records and findings, as the terminal can take them."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING, Any, TextIO

from border.findings import Finding, Severity
from border.text.source import Source

if TYPE_CHECKING:
    from rich.console import RenderableType

    from border.pipeline import Pipeline


def _coloured(stream: TextIO) -> bool:
    dull = os.environ.get("NO_COLOR") or os.environ.get("TERM") == "dumb"
    return is_terminal(stream) and not dull


def is_terminal(stream: TextIO) -> bool:
    """Whether someone sits behind a stream."""
    return stream.isatty()


def _columns(stream: TextIO) -> int:
    try:
        return os.get_terminal_size(stream.fileno()).columns or 80
    except (OSError, ValueError):
        return 80


def show(tables: RenderableType) -> None:
    """Print tables: as wide as the terminal, or 80 columns where there is none."""
    from rich.console import Console

    colour = _coloured(sys.stdout)
    width = _columns(sys.stdout) if is_terminal(sys.stdout) else 80
    console = Console(
        file=sys.stdout,
        width=width,
        force_terminal=colour,
        color_system="standard" if colour else None,
        markup=False,
        emoji=False,
        highlight=False,
    )
    with console.capture() as captured:
        console.print(tables)
    lines = captured.get().splitlines()
    print("\n".join(lines if colour else (line.rstrip() for line in lines)))


def print_json(record: Mapping[str, Any]) -> None:
    """Print a record."""
    from border.showing.record import to_json

    sys.stdout.write(to_json(record))


def tell(findings: Iterable[Finding], sources: Mapping[str, Source]) -> None:
    """Print findings to standard error, and how many faults there are."""
    from border.showing.telling import summed_up, tell_all

    findings = tuple(findings)
    sys.stdout.flush()
    sys.stderr.write(tell_all(findings, sources, _coloured(sys.stderr)))
    if any(f.severity is Severity.ERROR for f in findings):
        sys.stderr.write(f"{summed_up(findings)}\n")


def in_a_word(pipeline: Pipeline) -> str:
    """What `check` says of one file: what was looked at, and how it came out."""
    from border.text.amounts import some
    from border.wanted import is_project

    faults = sum(f.severity is Severity.ERROR for f in pipeline.findings)
    pieces = pipeline.counted.pieces
    rounds = sum(len(p.rounds) for p in pieces)
    if faults:
        return f"{pipeline.name}: {some(faults, 'fault')}"
    if pieces:
        which = "every one" if all(p.closes for p in pieces) else "every one still to be worked"
        told = f"{some(rounds, 'round')} on {some(len(pieces), 'edge')}, {which} closes"
    elif is_project(pipeline.name):
        told = "no border is worked in it"
    else:
        told = "the text reads well; with --loops or --runs it is counted too"
    return f"{pipeline.name}: no faults ({told})"
