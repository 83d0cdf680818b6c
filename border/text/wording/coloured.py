"""The colour of what is worked into: `under the blue chain`, `on each white double`.

A row below is kept without its colours, so that any such place is meant; that is told once.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from border.findings import Finding
from border.text.source import Source
from border.text.wording.passing import NOUNS, OPENS, WHICH, like, types

if TYPE_CHECKING:
    from border.text.terminals import Terminal


def without_place_colours(
    terminals: list[Terminal], source: Source, told: set[str]
) -> tuple[list[Terminal], list[Finding]]:
    """The terminals without such colours. `told`: what has been spoken of already."""
    found: list[Terminal] = []
    findings: list[Finding] = []
    for n, here in enumerate(terminals):
        words = _instead(found, here, types(terminals, n + 1, 1))
        if words is None:
            found.append(here)
            continue
        found += words
        if "colours" not in told:
            told.add("colours")
            findings.append(_told(here, terminals[n + 1], source))
    return found, findings


def _instead(found: list[Terminal], here: Terminal, noun: list[str]) -> list[Terminal] | None:
    """What stands there without the colour; None where it is none of a place."""
    if here.type != "COLOUR" or not noun or noun[0] not in NOUNS:
        return None
    said = here.text.split()
    the = [like(here, "THE")] if "the" in said else []
    if said[0] == "in":  # `3 dc in white double` is how they are made
        return [like(here, "PREP"), *the] if found and (the or noun == ["KIND"]) else None
    last = len(found) - 1
    last -= types(found, last, 1) == ["NUM"]
    placed = last >= 0 and found[last].type in OPENS | WHICH
    return the if placed and said[0] != "with" else None


def _told(colour: Terminal, noun: Terminal, source: Source) -> Finding:
    span = source.span(colour.start, noun.end)
    said = source.text[span.start : span.end]
    message = f'"{said}" is taken for any of them: the colours of the row below are not kept'
    help_ = 'if only some are meant, say which by their order: "in every 2nd dc", "in next space"'
    return Finding("place-assumed", message, help_, span)
