"""The terminals of a text: its words put right, and what is strange in them told."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from border.findings import Finding
from border.text.source import Source
from border.text.terminals import Terminal, terminal_at
from border.text.vocabulary import Names
from border.text.wording.assumed import with_assumed_places
from border.text.wording.both_rows import with_both_rows
from border.text.wording.catching import with_fastenings
from border.text.wording.coloured import without_place_colours
from border.text.wording.exceptions import without_exceptions
from border.text.wording.foundations import of_the_edge
from border.text.wording.last_stitches import without_last_stitches
from border.text.wording.passing import turned
from border.text.wording.picots_named import of_shells
from border.text.wording.put_right import PUT_RIGHT
from border.text.wording.side import without_sides
from border.text.wording.stitch_names import names_alike, unknown_terms
from border.text.wording.strangers import remarks, strangers
from border.text.wording.wheels import without_wheels
from border.text.words import LARGEST, Word


def read_terminals(
    words: Sequence[Word],
    names: Names,
    source: Source,
    told: set[str],
    below: str,
    row: int = 0,
    clusters: str = "",
    picots: int = 0,
) -> tuple[list[Terminal], list[Finding]]:
    """The terminals of a text; words that no phrase has become findings and are left out.

    `told`: names already spoken of, so that each is told once. `below`: what the row is worked
    into, as `assumed.py` has it. `row`: the number of the row whose words they are, from its
    head on. `clusters`: the stitch that the row below makes in clusters. `picots`: how many each
    shell of that row has.
    """
    found: list[Terminal] = []
    at = 0
    while at < len(words):
        terminal, at = terminal_at(words, at, names)
        found.append(terminal)
    found = turned(found, PUT_RIGHT)
    found, told_of = without_place_colours(found, source, told)
    found, of_wheels = without_wheels(found, source)
    found, of_same = of_shells(found, picots) if picots else (found, [])
    found, findings = with_assumed_places(found, below, source, told, clusters)
    findings += [*told_of, *of_wheels]
    for picot in of_same:
        message = "this picot is taken to be of the same as the one named before it"
        help_ = 'say of which: "in 3rd picot of same scallop", "of next scallop"'
        span = source.span(picot.start, picot.end)
        findings.append(Finding("place-assumed", message, help_, span))
    for terminal in found:
        if terminal.number > LARGEST and terminal.type in ("NUM", "ORD"):
            message, help_ = "this number is too large", "write a number that can be worked"
            span = source.span(terminal.start, terminal.end)
            findings.append(Finding("too-large", message, help_, span))
    found, told_of = without_last_stitches(found, source)
    findings += told_of
    found, told_of = with_both_rows(found, source)
    findings += told_of
    found, told_of = with_fastenings(found, source)
    findings += told_of
    found, told_of = without_sides(found, source, row)
    findings += told_of
    found, told_of = of_the_edge(found, source, row)
    findings += told_of
    found, told_of = without_exceptions(_begun_again(found), source)
    findings += told_of
    findings += unknown_terms(found, names, source, told)
    findings += names_alike(found, names, source, told)
    findings += strangers(found, names, source, told)
    findings += remarks(found, source)
    found = _without_told_brackets(found)
    kept = (t for t in found if t.type not in ("UNKNOWN", "NOTHING", "MADEOF", "REMARK"))
    within = [t if t.number <= LARGEST else replace(t, number=LARGEST) for t in kept]
    return within, findings


def _begun_again(terminals: list[Terminal]) -> list[Terminal]:
    """`commence again in the centre of any loop`: there the row begins; alone it is a remark."""
    places = ("PREP", "TO")
    behind = [t.type for t in terminals[1:]] + [""]
    return [
        replace(t, type="BEGIN") if t.text in _AGAIN and after in places else t
        for t, after in zip(terminals, behind, strict=False)
    ]


_AGAIN = frozenset(f"{word} again" for word in ("begin", "commence", "start"))


def _without_told_brackets(terminals: list[Terminal]) -> list[Terminal]:
    """`(Drop the cord.)`: a remark in brackets goes with them."""
    if not any(t.type == "REMARK" for t in terminals):
        return terminals
    drop: set[int] = set()
    for n, here in enumerate(terminals):
        if here.type != "LP":
            continue
        end = n + 1
        while end < len(terminals) and terminals[end].type in ("REMARK", "SEP", "NOTHING"):
            end += 1
        told = any(t.type == "REMARK" for t in terminals[n:end])
        if told and end < len(terminals) and terminals[end].type == "RP":
            drop |= {n, end}
    return [t for n, t in enumerate(terminals) if n not in drop]
