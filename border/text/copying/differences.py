"""What a copied row has otherwise: `but with 7 chain instead of 5, omitting the picots`."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from border.findings import Finding
from border.text.copying.moving import Try, move_at, past_dot, place_behind
from border.text.framing.copies import begins_otherwise, behind_said
from border.text.framing.copy_words import (
    SEPARATES,
    Amount,
    amount_at,
    past_openings,
    past_separators,
)
from border.text.numbers import number_at
from border.text.source import Source
from border.text.terminals import terminal_at
from border.text.tree import Difference, Exchanged, Variation, Where
from border.text.vocabulary import Names
from border.text.wording.side import at_the_side
from border.text.wording.stitch_names import unknown_terms
from border.text.wording.strangers import taken_as_remark
from border.text.words import LARGEST, Word, quoted, shortened

_Said = tuple[Variation, Amount]
"""What is otherwise, and the words that say so."""


class Behind(Struct, frozen=True):
    """What stands behind a copy and is read here, up to the word `after`; and what is told."""

    differences: tuple[Variation, ...]
    after: int
    findings: tuple[Finding, ...]


def read_differences(
    words: Sequence[Word], names: Names, source: Source, told: set[str], read: Try
) -> Behind:
    """The differences, and the remarks on how long it goes on, with which words begin.

    `read`: reads words as the steps of a row, and tells nothing yet.
    """
    found: list[Variation] = []
    findings: list[Finding] = []
    after = 0
    while True:
        start = past_separators(words, after)
        if (end := max(_keeping(words, start), _by_the_hook(words, start))) > start:
            span = source.span(words[start].start, words[end - 1].end)
            findings.append(taken_as_remark(source, span))
            after = end
            continue
        if (end := _beside(words, start, source)) > start:
            findings.append(
                at_the_side(source, source.span(words[start].start, words[end - 1].end))
            )
            after = end
            continue
        if (end := behind_said(words, start, "again")) > start:
            findings.append(_goes_on(words[start:end], source))
            after = end
            continue
        # a list is said of its place, and not of its first number
        moving = move_at(words, start, names, source, read, lists=True)
        said = None if moving else _number_or_stitch(words, start, names, found)
        if said is not None:
            variation, amount = said
            span = source.span(words[start].start, words[amount.after - 1].end)
            found.append(replace(variation, span=span))
            findings += unknown_terms(amount.named, names, source, told)
            after = amount.after
        elif moving := moving or move_at(words, start, names, source, read):
            found.append(moving.moved)
            findings += moving.tried.findings
            told |= moving.tried.told
            after = moving.after
        else:
            return Behind(tuple(found), after, tuple(findings))


def _keeping(words: Sequence[Word], at: int) -> int:
    """Behind `keeping the dc over those of the 2nd row`, which is so of itself; else the same
    place."""
    stop = next((n for n in range(at, len(words)) if words[n].text in (".", ";", ",")), len(words))
    said = [word.text for word in words[at:stop]]
    keeps = said[:1] in (["keeping"], ["keep"], ["bringing"])
    return stop if keeps and "those" in said and {"over", "on", "above"} & set(said) else at


_JOINS = frozenset(
    {"join", "joining", "catch", "catching", "fasten", "fastening", "unite", "uniting"}
)
_LEADS = frozenset({"but", "except", "that", "you", "only"})
_BEFORE = frozenset({"last", "preceding", "previous", "former", "foregoing"})
_EDGED = frozenset({"scallop", "fan", "point", "leaf", "shell"})


def _by_the_hook(words: Sequence[Word], at: int) -> int:
    """Behind `but putting the needle through the back part of the loop only`, on which no count
    depends; the same place where no such words stand."""
    end = at
    while end < len(words) and words[end].text not in (",", ";", "."):
        end += 1
    said = {word.text for word in words[at:end]}
    if said & _TOOLS == {"working"} and said & _PARTS <= {"loop", "loops"}:
        return at  # `working in each loop`, where the stitches go
    return end if said & _TOOLS and said & _PARTS and said <= _TOOLS | _PARTS | _HOW else at


_TOOLS = frozenset({"hook", "needle", "taking", "taken", "take", "working"})
_PARTS = frozenset({"back", "front", "both", "thread", "threads", "part", "half", "loop", "loops"})
_HOW = frozenset(
    {"but", "only", "this", "time", "always", "putting", "inserting", "passing", "the", "of", "up"}
    | {"in", "into", "through", "under", "each", "every", "stitch", "stitches", "from", "at"}
)


def _beside(words: Sequence[Word], at: int, source: Source) -> int:
    """Behind `catch with 1 dc in the next loop of the last fan`, `after the 8 dc join to …`, which
    fastens the row to what lies beside it; else the same place."""
    stop = next((n for n in range(at, len(words)) if _ends_sentence(words, n, source)), len(words))
    said = [word.text for word in words[at:stop] if word.text not in (",", ".")]
    verb = next((n for n, text in enumerate(said) if text in _JOINS), len(said))
    leads = [text for text in said[:verb] if text not in _LEADS]
    made = said[-2:] == ["already", "made"]
    tail = said[: len(said) - 2 * made][verb:][-2:]
    of_last = len(tail) == 2 and tail[1] in _EDGED and (tail[0] in _BEFORE or made)
    placed = {"in", "into", "to", "with"} & set(said[verb:])
    return stop if of_last and placed and (not leads or leads[0] == "after") else at


def _ends_sentence(words: Sequence[Word], at: int, source: Source) -> bool:
    """Whether a stop here is none of an abbreviation: `3-ch. loop`."""
    behind = source.text[words[at + 1].start] if at + 1 < len(words) else ""
    return words[at].text == ";" or (words[at].text == "." and not behind.islower())


def _number_or_stitch(
    words: Sequence[Word], at: int, names: Names, found: Sequence[Variation]
) -> _Said | None:
    """Another number, something left out, or another stitch, with nothing behind it."""
    said = _change(words, at, names) or _omission(words, at, names, found)
    if said is None or not _ended(words, said[1].after, names):
        said = _exchange(words, at, names)
    return said if said is not None and _ended(words, said[1].after, names) else None


def _exchange(words: Sequence[Word], at: int, names: Names) -> _Said | None:
    """`with dc instead of sc`, `in long instead of treble`, `instead of sc work dc`."""
    opened = past_openings(words, at)
    made = behind_said(words, opened, "with")
    if (old_at := behind_said(words, made, "instead")) > made:
        old = _stitch(words, old_at, names)
        behind = past_separators(words, old.after) if old else at
        new = _stitch(words, behind_said(words, behind, "with"), names) if old else None
        after = new.after if new else at
    else:
        new = _stitch(words, made + (made < len(words) and words[made].text == "in"), names)
        behind = _past_dot(words, new.after) if new else at
        behind = behind_said(words, behind, "each")
        old_at = behind_said(words, behind, "instead")
        old = _stitch(words, old_at, names) if new and old_at > behind else None
        after = behind_said(words, old.after, "each") if old else at
    if new is None or old is None or new.of == old.of:
        return None
    both = Amount(new.of, None, after, (*new.named, *old.named))
    return Exchanged(new.of, old.of), both


def _stitch(words: Sequence[Word], at: int, names: Names) -> Amount | None:
    """The name of a stitch, with no number."""
    amount = amount_at(words, at, names)
    stitch = amount is not None and amount.of not in ("", "ch", "picot", "ring")
    return amount if amount and stitch and amount.number is None else None


def _change(words: Sequence[Word], at: int, names: Names) -> _Said | None:
    """`with 7 chain instead of 5`, `instead of 5 chain make 7`, `with 7 chain`."""
    opened = past_openings(words, at)
    made = behind_said(words, opened, "with")
    if (old_at := behind_said(words, made, "instead")) > made:
        old = amount_at(words, old_at, names)
        behind = past_separators(words, old.after) if old else at
        new = amount_at(words, behind_said(words, behind, "with"), names) if old else None
        return _changed(new, old, Where.ALL, new.after) if new and old else None
    new = amount_at(words, made, names)
    if new is None or not new.of or not new.number:
        return None
    to, *turn = [word.text for word in words[new.after : new.after + _TURN]] or [""]
    if to in _TO and {"turn", "turning"} & set(turn):
        return None  # `with 7 ch to turn` changes these chains alone
    where, behind = _where(words, _past_done(words, _past_dot(words, new.after)))
    behind = behind_said(words, behind, "each")
    if (old_at := behind_said(words, behind, "instead")) > behind:
        old = amount_at(words, old_at, names)
        if old is None:
            return None
        also, end = _where(words, old.after)
        end = behind_said(words, end, "each")
        return _changed(new, old, where if where is not Where.ALL else also, end)
    alone = behind_said(words, behind, "alone")
    if alone == behind and made == opened and (new.of != "ch" or opened == at):
        return None  # `but 3 sc` may be one thing or another; `but 3 chain` is one
    behind = alone if alone > behind else behind if where is not Where.ALL else new.after
    return _fitting(Difference(new.of, new.number, None, where), replace(new, after=behind))


_TURN = 3
_TO = ("to", "for", "in", "at")
"""Within so many words, and by one of these, chains are told to turn with."""


def _past_done(words: Sequence[Word], at: int) -> int:
    """Behind `are worked`, as in `except that 7 chain are worked instead of 5`."""
    end = at
    while end < len(words) and words[end].text in _DONE:
        end += 1
    return end if end < len(words) and behind_said(words, end, "instead") > end else at


_DONE = frozenset({"are", "is", "worked", "made", "done", "taken", "being"})


def _changed(new: Amount, old: Amount, where: Where, after: int) -> _Said | None:
    """So many instead of so many, the thing named once or twice."""
    of = new.of or old.of
    ring = of == "ring" and old.of in ("ring", "ch", "")
    if not (ring or {new.of, old.of} <= {of, ""}) or not new.number or not old.number:
        return None
    both = Amount(of, new.number, after, (*new.named, *old.named))
    return _fitting(Difference(of, new.number, old.number, where), both)


def _omission(
    words: Sequence[Word], at: int, names: Names, before: Sequence[Variation]
) -> _Said | None:
    """`omitting the 2 chain`, and behind another one `and the picots`."""
    opened = past_openings(words, at)
    omits = behind_said(words, opened, "omit")
    goes_on = before and isinstance(before[-1], Difference) and before[-1].number == 0
    if omits == opened and not goes_on:
        return None
    left = amount_at(words, omits, names)
    if left is None or not left.of or left.number == 0:
        return None
    where, after = _where(words, left.after)
    return _fitting(Difference(left.of, 0, left.number, where), replace(left, after=after))


def _ended(words: Sequence[Word], at: int, names: Names) -> bool:
    """Whether nothing stands here that would go with what is said: `… at the corners`."""
    if at >= len(words) or words[at].text in SEPARATES:
        dotted = past_dot(words, at)  # `the 4 tr. on the 2 ch`
        return dotted == at or not place_behind(words, dotted, names)
    ends = ("LP", "ENDING", "REMARK")
    return begins_otherwise(words, at) or terminal_at(words, at, names)[0].type in ends


def _fitting(one: Difference, amount: Amount) -> _Said | None:
    """A difference, where what it is said of fits: chains are between, stitches in groups."""
    chains = one.of == "ch"
    places = {
        Where.APART: chains,
        Where.BETWEEN: chains,
        Where.GROUPS: one.of not in ("ch", "picot", "ring"),
    }
    too_large = max(one.number, one.instead_of or 0) > LARGEST
    return (one, amount) if places.get(one.where, True) and not too_large else None


_PLACES = ((Where.APART, "apart"), (Where.BETWEEN, "between"), (Where.GROUPS, "groups"))


def _where(words: Sequence[Word], at: int) -> tuple[Where, int]:
    for where, what in _PLACES:
        if (end := behind_said(words, at, what)) > at:
            return where, end
    if (side := behind_said(words, at, "side")) > at:
        return Where.GROUPS, _behind_middle(words, side)
    return Where.ALL, at


def _behind_middle(words: Sequence[Word], at: int) -> int:
    """Behind `of the 2 chain`, that stand in the middle of a group; else the same place."""
    texts = [word.text for word in words[at : at + 4]]
    if texts[:1] != ["of"]:
        return at
    the = at + 1 + (texts[1:2] == ["the"])
    number = number_at(words, the)
    noun = number[1] if number else the
    named = noun < len(words) and words[noun].text in (
        "chain",
        "chains",
        "ch",
        "picot",
        "p",
        "purl",
    )
    return noun + 1 if named else at


def _past_dot(words: Sequence[Word], at: int) -> int:
    """Behind the full stop of an abbreviation inside a difference: `7 ch. instead of 5`."""
    end = past_dot(words, at)
    inside = any(behind_said(words, end, w) > end for w in ("instead", "alone", "apart", "between"))
    return end if inside else at


def _goes_on(words: Sequence[Word], source: Source) -> Finding:
    """`until the lace is long enough`: the rows are those that the head names."""
    span = source.span(words[0].start, words[-1].end)
    said = quoted(source, span)
    message = f'"{said}" is taken for a remark: the rows are worked as often as is said'
    help_ = f'write a line of its own for each time more, and set this apart: "-- {said} --"'
    return Finding("taken-as-remark", message, help_, span)


def otherwise(words: Sequence[Word], source: Source) -> Finding:
    """`as the last, but turn at the corner`: no copy, and no row either."""
    first = past_separators(words, 0)
    span = source.span(words[first].start, words[-1].end)
    said = quoted(source, span)
    message = f'"{said}" makes this row another than the one that it copies'
    help_ = 'say what it makes otherwise, as in "with 7 chain instead of 5", '
    help_ += '"working the dc in the 5 chain"'
    help_ += ", or write the row out; what changes no count can be set apart: "
    apart = shortened(source.text[span.start : span.end], 160)
    help_ += f'"-- {apart} --"'
    return Finding("exception-in-words", message, help_, span)
