"""The wheels of an edge, in the words of a row: `the first loop of the next wheel`, `between two
wheels`, `repeat from * on each wheel`.

Where one wheel ends and the next begins the yoke says, not the row. So a loop of the next wheel is
the next loop, and what lies between two wheels is their joint; and that is told.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.findings import Finding
from border.text.source import Source
from border.text.tree import Kind
from border.text.wording.passing import NOUNS, ended, like, past, types
from border.text.words import quoted

if TYPE_CHECKING:
    from border.text.terminals import Terminal

WHEELS = frozenset(
    {"wheel", "wheels", "motif", "motifs", "rosette", "rosettes", "medallion", "medallions"}
)
"""What books call the parts that an edge is joined of."""

_WHICH = ("THE", "NEXT", "EACH", "EVERY", "ORD", "NUM", "ALL", "EACHOF", "OTHER", "SAME")
_JOINS = frozenset({"join", "joining", "joinings", "joins"})
_ALONG = frozenset({"on", "over", "round", "around", "across", "along", "in", "to"})


def without_wheels(
    terminals: list[Terminal], source: Source
) -> tuple[list[Terminal], list[Finding]]:
    """The terminals without such words, and what is told of them."""
    if all(t.text not in WHEELS for t in terminals):
        return terminals, []
    found: list[Terminal] = []
    findings: list[Finding] = []
    at = 0
    while at < len(terminals):
        wheel = past(terminals, at + 1, *_WHICH)
        named = wheel < len(terminals) and terminals[wheel].text in WHEELS
        said = named and terminals[wheel].type == "UNKNOWN" and ended(terminals, wheel + 1)
        instead = _instead(found, terminals[at : wheel + 1]) if said else None
        if instead is None:
            found.append(terminals[at])
            at += 1
            continue
        words = terminals[at : wheel + 1]
        leads = words[0].type == "OF" and any(x.type in _LEADS for x in words)
        leads = leads and "NEXT" in types(found, len(found) - 3, 2)
        findings.append(_told(words, source, joint=instead != [], leads=leads))
        found += instead
        at = wheel + 1
    return found, findings


def _instead(found: list[Terminal], words: Sequence[Terminal]) -> list[Terminal] | None:
    """What stands for these words, from `of`, `on` or `between` to the wheel; None where they say
    what is worked into."""
    here, last = words[0], len(found) - 1
    joint = replace(like(here, "KIND", Kind("joint")), text="joint")
    joins = last > 0 and found[last].text in _JOINS and here.type in ("OF", "BETWEEN")
    opener = past(found[::-1], 1, "THE", "NUM") if joins else 0
    if joins and types(found[::-1], opener, 1) == ["PREP"]:  # `in the joining of two wheels`
        del found[last + 1 - opener :]
        return [like(here, "NEXT"), joint]
    if here.type == "BETWEEN":
        if types(found, last, 1) == ["STITCH"] and not _is_place(found):
            return [like(here, "PREP"), like(here, "NEXT"), joint]
        return [] if last >= 0 and found[last].type in NOUNS else None
    if here.type == "OF" and last >= 0 and found[last].type in NOUNS:
        which = last - 1
        which -= types(found, which, 1) == ["NOTHING"]  # `in the first free loop`
        if types(found, which, 1) == ["ORD"] and found[which].number == 1 and len(words) > 2:
            found[which] = like(found[which], "NEXT")
        return []
    along = here.type in ("PREP", "ROUND", "TO", "TOEND") and here.text.split()[0] in _ALONG
    behind = found[last].type if last >= 0 else "SEP"
    return [] if along and behind in ("STAR", "CROSS", "MARK", "REPEAT", "TOEND") else None


def _is_place(found: Sequence[Terminal]) -> bool:
    """Whether a stitch that stands last is one that is worked on: `on the dc`."""
    at = len(found) - 2
    while at >= 0 and found[at].type in _WHICH:
        at -= 1
    return at >= 0 and found[at].type in ("PREP", "OF", "SKIP", "BETWEEN")


def _told(words: Sequence[Terminal], source: Source, *, joint: bool, leads: bool) -> Finding:
    """`joint`: it is read as that. `leads`: the row goes on to the next wheel there."""
    span = source.span(words[0].start, words[-1].end)
    said = quoted(source, span)
    if joint:
        message = f'"{said}" is taken for the joint where two of them meet'
        help_ = 'write "in next joint" to say so; where it is a stitch or a space, name that'
        return Finding("place-assumed", message, help_, span)
    if words[0].type == "BETWEEN":
        message = f'"{said}" is passed over, so that any such place is meant, on a wheel as well'
        help_ = 'where only those between two wheels are, write a clause: "at each joint: …"'
        return Finding("place-assumed", message, help_, span)
    clause = 'write what is worked on each as a clause, "over each motif: …"'
    if leads:
        message = f'"{said}" is passed over: this goes on to the next place, wherever a wheel ends'
        help_ = f"where a wheel has more places, or fewer, {clause}"
        return Finding("place-assumed", message, help_, span)
    message = f'"{said}" is passed over: where a wheel ends the yoke says, and not the row'
    help_ = f'where the wheels are not alike, {clause}; else set it apart: "-- {said} --"'
    return Finding("taken-as-remark", message, help_, span)


_LEADS = frozenset({"NEXT", "EACH", "EVERY"})
