"""Words of the sheet: rows and headings as they are written, short words, and the thread."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from msgspec import Struct

from border.findings import Span
from border.reckoning.counts import RoundCount
from border.reckoning.thread import Thread, ball_in_hand, thread_mm, thread_used
from border.showing.counted import Piece
from border.showing.folding import length, told_apart
from border.showing.telling import harmless
from border.stitches import STITCHES
from border.text.readings import Round
from border.text.source import Source
from border.text.tree import Text
from border.text.vocabulary import name_of, vocabulary
from border.text.written import write_scope, write_text

_REMARK = re.compile(r"\"[^\"\n]*\"|#[^\n]*|--.*?--", re.DOTALL)
_HEADING = re.compile(r"\s*(border|name|terms)\s*:", re.IGNORECASE)


class Abbreviation(Struct, frozen=True):
    """A short word of the rows, and what it stands for."""

    short: str
    full: str


def row_as_written(round_: Round, sources: Mapping[str, Source]) -> str:
    """A row as it stands in its file, on one line and without remarks."""
    return _plainly(round_.span, sources)


def _plainly(span: Span, sources: Mapping[str, Source]) -> str:
    if span.source not in sources:
        return ""
    text = sources[span.source].text[span.start : span.end]
    kept = _REMARK.sub(lambda m: m[0] if m[0].startswith('"') else " ", text)
    return harmless(" ".join(kept.split()))


def row_as_read(round_: Round, terms: str) -> str:
    """The steps of a round written out anew, copies followed."""
    if isinstance(round_.body, Text):
        return write_text(round_.body, terms)
    return "; ".join(f"{write_scope(c.scope)}: {write_text(c.text, terms)}" for c in round_.body)


def is_copied(round_: Round) -> bool:
    """Whether the steps of a round stand elsewhere than in its own row."""
    body = round_.body
    at = body.span if isinstance(body, Text) else body[0].span
    own = round_.span
    return at.source != own.source or not own.start <= at.start < own.end


def headings_said(piece: Piece, sources: Mapping[str, Source]) -> list[str]:
    """The headings of a border, its name and terms left out, in a list of one; or none."""
    rounds = piece.reading.rounds if piece.reading else ()
    if not rounds:
        return []
    first = min((r.head for r in rounds), key=lambda head: head.start)
    lines = (
        sources[first.source].text[: first.start].splitlines() if first.source in sources else []
    )
    kept = [" ".join(_REMARK.sub(" ", line).split()) for line in lines if not _HEADING.match(line)]
    said = "; ".join(line for line in kept if line)
    return [harmless(said)] if said else []


def abbreviations(piece: Piece, rows: Sequence[str]) -> tuple[Abbreviation, ...]:
    """The stitches that the rows name or the counts have, in the border's terms."""
    words = " ".join(rows).lower()
    counted = {kind for r in piece.rounds for kind in r.made.stitches}
    found = []
    for stitch in STITCHES.values():
        short = name_of(stitch.name, piece.terms)
        if stitch.name in counted or re.search(rf"\b{re.escape(short)}\b", words):
            chains = "chain" if stitch.height == 1 else "chains"
            high = f", {stitch.height} {chains} high" if stitch.height else ""
            found.append(Abbreviation(short, f"{full_name(stitch.name, piece.terms)}{high}"))
    found.append(Abbreviation("ch", "chain"))
    if re.search(r"\bst\b", words):
        found.append(Abbreviation("st", "stitch, of any kind"))
    if "picot" in words or any(r.made.picots for r in piece.rounds):
        told = "chains (3 where no number is given) closed into a ring on the stitch before"
        found.append(Abbreviation("picot", told))
    return tuple(found)


def full_name(stitch: str, terms: str) -> str:
    """`double crochet`, `half treble`, `slip stitch`: the longest name that the terms have."""
    table = vocabulary().stitches[stitch]
    names = [n for n in table[terms] or table["us"] if max(map(len, n.split())) > 3]
    full = max(names, key=len)
    return full if full.endswith(("stitch", "treble")) else f"{full} crochet"


def thread_in_words(count: RoundCount, loops: Sequence[int], thread: Thread) -> str:
    """Thread for a round, and so far, where `loops` are those of all rounds up to it; and
    whether the ball lasts."""
    used = thread_used(loops, thread)
    this = length(thread_mm(count.loops, thread))
    about, least, most = told_apart(length, used.mm, used.low_mm, used.high_mm)
    told = f"about {this} for this round; about {about} so far, between {least} and {most}"
    balls = ball_in_hand(used, thread)
    if balls is None:
        return told
    low, high = balls
    if low == high:
        lasts = "the first ball lasts" if high == 1 else f"ball {high} lasts"
    elif high == low + 1:
        lasts = f"ball {low} may run out here: have ball {high} at hand"
    else:
        lasts = f"this may be ball {low} and may be ball {high}: have that many at hand"
    return f"{told}; {lasts}"
