"""What a row says of a place besides its name, and the grammar has no words for: `on the treble of
the row before the last`, `in each of 5 stitches of the braid`. It is left out, and told.
"""

from __future__ import annotations

from collections.abc import Sequence

from border.findings import Finding
from border.text.source import Source
from border.text.terminals import Terminal
from border.text.wording.passing import ended, past, prep_before
from border.text.words import quoted

_OPENS = frozenset({"OF", "PREP", "BETWEEN", "ATEND"})
_COUNTS = frozenset({"ORD", "CENTRE", "EACH", "EVERY"})
"""Words that make another place of it, whether they stand before or behind."""


def without_rest(
    t: Sequence[Terminal], at: int, source: Source
) -> tuple[list[Terminal], Finding] | None:
    """The terminals without what is said besides of the place that ends before `at`, and what is
    told of it; None where no place does, or where it would be another place without that."""
    prep = prep_before(t[:at])
    behind = t[at].type == "AFTER" or t[at].text == "following"  # `in the dc after the shell`
    if prep is None or not (behind or t[at].type in _OPENS):
        return None
    end = at + 1
    while not ended(t, end) and t[end].type != "AND":
        end += 1
    end = past(t, end, "MOD")
    if any(x.type in _COUNTS for x in t[prep:end]):
        return None
    span = source.span(t[at].start, t[end - 1].end)
    place = quoted(source, source.span(t[prep].start, t[at - 1].end))
    message = f'"{quoted(source, span)}" is left out: the place is taken to be the one "{place}"'
    help_ = 'if it is another, say which: "in 3rd st", "in the ch-5 space", "skip 2 st" before it'
    return [*t[:at], *t[end:]], Finding("place-assumed", message, help_, span)
