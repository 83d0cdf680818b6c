"""What a row fastens to the side of the work: `12 dc under 5 ch, 1 sc in end of 1st row`.

Lace that is worked to and fro in short rows has its scallops caught down there. The side is no
part of the row below, so that such a stitch takes nothing of it and is met by no row: it is left
out, and that is told.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.findings import Finding, Span
from border.text.source import Source
from border.text.wording.passing import (
    NOUNS,
    ended,
    like,
    only_ends,
    past,
    prep_before,
    stitch_left_out,
    types,
)
from border.text.words import quoted, shortened

if TYPE_CHECKING:
    from border.text.terminals import Terminal

_SIDES = frozenset({"edge", "side", "end", "corner"})
_LOOPS = frozenset({"loop", "scallop", "chain", "ch"})
_FASTENS = frozenset({"ENDING", "CATCH"})
_WORDS = frozenset({"ROW", "FOUNDATION", "BEGIN"})


def without_sides(
    terminals: list[Terminal], source: Source, row: int
) -> tuple[list[Terminal], list[Finding]]:
    """The terminals without such steps, and what is told of them.

    `row`: the number of the row; the end of the one right below it is its last stitch.
    """
    along, told = _along_ends(terminals, source)
    if told:
        return along, told
    terminals, lower = _of_lower_rows(terminals, source, row)
    said = ("row", "foundation", "at the edge")
    if not any(t.type in _WORDS or any(word in t.text for word in said) for t in terminals):
        return terminals, lower
    found: list[Terminal] = []
    findings = lower
    at = 0
    while at < len(terminals):
        end = _behind_side(terminals, at, row)
        end = max(end, _behind_foundation(terminals, at, row), _of_older_row(terminals, at, row))
        start = _step_before(found) if end > at else len(found)
        if start == len(found):
            found.append(terminals[at])
            at += 1
            continue
        if terminals[end - 1].text.endswith("foundation"):
            end = past(terminals, end, "CH")  # `in end st of foundation ch`
        end = _behind_stitch(terminals, end)
        listed, last = _list_before(found, start), terminals[end - 1]
        if listed < start:
            findings.append(_asked(found[listed], found[start], last, source))
        else:
            findings.append(_told(found[start], last, source))
        del found[start:]
        at = end
        if only_ends(terminals[end:]):
            _stand(found)
    return found, findings


def _of_lower_rows(
    t: list[Terminal], source: Source, row: int
) -> tuple[list[Terminal], list[Finding]]:
    """The terminals without `of the 2nd row` in row 4, behind a place with more steps behind it:
    what goes there is met by no row, which is told."""
    if all(x.type != "ROW" for x in t):
        return t, []
    found: list[Terminal] = []
    findings: list[Finding] = []
    at = 0
    while at < len(t):
        order = past(t, at + 1, "THE")
        lower = types(t, at, 1) == ["OF"] and types(t, order, 2) == ["ORD", "ROW"]
        lower = lower and row > 0 and _is_lower(t[order].number, row)
        placed = prep_before(found) is not None
        if not lower or not placed or not any(x.type in ("CH", "REPEAT") for x in t[order:]):
            found.append(t[at])
            at += 1
            continue
        span = source.span(t[at].start, t[order + 1].end)
        message = f'"{quoted(source, span)}" is a row further down than the one below'
        help_ = (
            "what is worked there cannot be counted: write where it comes on the row below, as in "
            '"between next 2 shells", or what the row leaves there, as in "ch 6"'
        )
        findings.append(Finding("not-understood", message, help_, span))
        at = order + 2
    return found, findings


def _stand(found: list[Terminal]) -> None:
    """The chains that are fastened there, in a bracket: they are no stitch of the next row."""
    end = len(found)
    while end and found[end - 1].type in ("SEP", "AND"):
        end -= 1
    made = types(found, end - 3, 1) in ([], ["SEP"], ["AND"], ["RP"]) or end < 3
    if made and sorted(types(found, max(0, end - 2), 2)) == ["CH", "NUM"]:
        chain, number = sorted(found[end - 2 : end], key=lambda t: t.type)
        start, last = min(chain.start, number.start), max(chain.end, number.end)
        # as `(ch 6)`: `(6 ch)` would be a claim
        pair = [replace(chain, start=start, end=last), replace(number, start=last, end=last)]
        opens, closes = (replace(like(chain, x), text=y) for x, y in (("LP", "("), ("RP", ")")))
        found[end - 2 : end] = [opens, *pair, closes]


def _along_ends(
    terminals: Sequence[Terminal], source: Source
) -> tuple[list[Terminal], list[Finding]]:
    """`1 dc in the end of every row`, `in end of first row, * 5 ch, 1 dc in end of next row`: along
    the side of lace, its rows are the places."""
    rows = [n for n, t in enumerate(terminals) if t.type == "ROW"]
    if not any(_end_of(terminals, n) in _ONE_OF for row in rows for n in range(row - 4, row)):
        return list(terminals), []
    again = any(t.type in ("REPEAT", "STAR", "CROSS") for t in terminals)
    found: list[Terminal] = []
    findings: list[Finding] = []
    skip = 0
    for n, here in enumerate(terminals):
        if skip:
            skip -= 1
            continue
        one_of = _end_of(terminals, n)
        if not one_of:
            if here.type == "ROW" and types(found, len(found) - 2, 2) == ["SKIP", "NUM"]:
                here = stitch_left_out(here)  # `miss 1 row`
            behind = past(terminals, n + 1, "OF", "THE")
            of_next = here.type == "ENDST" and types(terminals, behind, 1) == ["NEXT"]
            if of_next and ended(terminals, behind + 1):  # `in the end of the next`
                next_ = terminals[behind]
                found += [replace(like(here, "PREP"), text="in"), next_, stitch_left_out(next_)]
                skip = behind - n
                continue
            found.append(here)
            continue
        at = past(terminals, n + 1, "OF", "THE")
        which, last = terminals[at], terminals[at + 1]
        skip = at + 1 - n
        one = which.type == "NUM" or (again and one_of in _ONE_OF)
        which = like(which, "NEXT") if one else which
        found += [replace(like(here, "PREP"), text="in"), which, stitch_left_out(last)]
        if not findings:
            span = source.span(here.start, last.end)
            message = f'"{quoted(source, span)}": each row is taken for one place of this edge'
            help_ = "give the edge as many places as the lace has rows"
            findings.append(Finding("place-assumed", message, help_, span))
    return found, findings


_ONE_OF = ("NEXT", "EACH", "EVERY")


def _end_of(t: Sequence[Terminal], at: int) -> str:
    """What stands before the word for a row in `in the end of every row`; "" elsewhere."""
    if at < 0:
        return ""
    edge = t[at].text == "at the edge" and types(t, at + 1, 1) == ["OF"]  # `at the edge of a row`
    which = past(t, at + 1 + edge, "THE")
    ends = t[at].type == "ENDST" and t[at].text.split()[-1] in ("end", "of", "the")
    if not (edge or ends) or types(t, which + 1, 1) != ["ROW"]:
        return ""
    one = t[which].type == "NUM" and t[which].number == 1
    return "NEXT" if one else t[which].type


def _behind_side(t: Sequence[Terminal], at: int, row: int) -> int:
    """Behind `in end of 1st row`, `in edge of the foundation`, `to the dc at end of 1st row`; else
    the same place."""
    if t[at].type == "ENDST" and t[at].text.endswith("row") and types(t, at + 1, 1) == ["NUM"]:
        return at + 2 if _is_lower(t[at + 1].number, row) else at
    of = at + 1
    if t[at].text == "at the edge" and types(t, at - 1, 1) == ["STITCH"]:  # `fasten with 1 sc`
        step = t[_step_before(t[:at]) : at]
        return of if step and step[0].type in _FASTENS else at
    if t[at].type == "ATEND" and of < len(t) and t[of].text == "of foundation":
        return of + 1
    if t[at].type in ("PREP", "TO") and "point" not in t[at].text:
        side = past(t, of, "THE")
        said = _SIDES if types(t, past(t, side + 2, "THE"), 1) != ["ORD"] else _SIDES | _LOOPS
        named = side < len(t) and t[side].text in said and types(t, side + 1, 1) == ["OF"]
        noun = past(t, side, "NUM")
        at_end = types(t, noun + 1, 2) == ["ATEND", "OF"] and t[noun].type in NOUNS
        of = noun + 3 if at_end else side + 2 if named else len(t)
    elif t[at].type == "EXCEPT" and "corner" in t[at].text and _of_foundation(t, of):
        return of + 1
    elif t[at].type == "EXCEPT" and "corner" in t[at].text:
        of += types(t, of, 2) == ["ATEND", "OF"]  # `in corner at end of 1st row`
        of = past(t, of, "OF") if types(t, of, 1) == ["OF"] else len(t)
    elif t[at].type not in ("ENDST", "PREP", "TO"):
        return at
    of = past(t, of, "OF", "THE") if t[at].type == "ENDST" else past(t, of, "THE")
    if types(t, of, 2) == ["ORD", "ROW"] and (t[at].type != "TO" or of > at + 2):
        return of + 2 if _is_lower(t[of].number, row) else at
    if types(t, of, 1) == ["FOUNDATION"] or types(t, of, 2) == ["BEGIN", "CH"]:
        return past(t, of + 1, "CH")
    return at


def _of_older_row(t: Sequence[Terminal], at: int, row: int) -> int:
    """Behind `in the loop at the beginning of the 1st row`, where a row ends; else the same
    place."""
    end = past(t, at + 1, *_PLACE_WORDS) if t[at].type == "PREP" and at > _FEW else at
    if types(t, end - 1, 2) != ["ORD", "ROW"] or not _is_lower(t[end - 1].number, row):
        return at
    rest = t[end + 1 :]
    fastens = any(x.type in _FASTENS and x.name != "turn" for x in rest)
    lower = fastens and any(x.type in ("ROW", "FOUNDATION") for x in rest)
    done = only_ends(rest) or (lower and all(x.type not in ("CH", "REPEAT") for x in rest))
    return end + 1 if done else at


_FEW = 3
"""Behind so few words no row ends."""
_PLACE_WORDS = ("THE", "ORD", "KIND", "CH", "NUM", "STITCH", "OF", "PREP", "BEGIN", "ATEND")


def _of_foundation(t: Sequence[Terminal], at: int) -> bool:
    return types(t, at, 1) == ["NOTHING"] and "foundation" in t[at].text


def _behind_foundation(t: Sequence[Terminal], at: int, row: int) -> int:
    """Behind `in the 3d ch of the foundation`, `fasten to end of foundation chain`, `to the end
    of the 1st row`; else the same place. The first row is worked into the foundation."""
    if t[at].type == "TOEND":
        if types(t, at + 1, 2) == ["ORD", "ROW"]:
            return at + 3 if _is_lower(t[at + 1].number, row) else at
        step = t[_step_before(t[:at]) : at]
        fastens = step != [] and step[0].type in _FASTENS
        one = step != [] and step[0].type == "NUM" and step[0].number == 1
        fastens |= one and row > 1 and step[-1].name in ("sc", "ss")
        return at + 1 if fastens and "foundation" in t[at].text else at
    if row < 2 or t[at].type not in ("PREP", "TO"):
        return at
    noun = past(t, at + 1, "THE", "NEXT", "ORD")
    if types(t, noun, 1) in (["FOUNDATION"], ["KIND"]) and t[noun].text.startswith("foundation"):
        return past(t, noun + 1, "CH")
    named = types(t, noun, 2) in (["KIND", "NOTHING"], ["CH", "NOTHING"])
    return noun + 2 if named and "foundation" in t[noun + 1].text else at


def _is_lower(number: int, row: int) -> bool:
    """Whether a row so named is another than the one below: none is worked into itself."""
    return number > 0 and (row == 0 or number != row - 1)


def _step_before(found: Sequence[Terminal]) -> int:
    """Where the stitch begins that goes there, with the `fasten with` before it."""
    at = len(found)
    at -= types(found, at - 2, 1) == ["STITCH"] and found[at - 1].text == "."
    made = at
    at -= types(found, at - 1, 1) == ["STITCH"]
    if at < made:
        at -= types(found, at - 1, 1) == ["NUM"]
        at -= types(found, at - 1, 1) == ["WITH"]
    at -= at > 0 and found[at - 1].type in _FASTENS
    return at if at < made else len(found)


def _list_before(found: Sequence[Terminal], start: int) -> int:
    """Where `4 dc, 3 ch,` begins before the same stitches in the side: all of it may go there."""
    step = [(t.type, t.name, t.number) for t in found[start:]]
    at = start - 1
    while at >= 0 and found[at].type in ("SEP", "CH"):
        at -= 1 + (found[at].type == "CH" and types(found, at - 1, 1) == ["NUM"])
        at -= types(found, at - 1, 2) == ["CH", "NUM"]
    first = at + 1 - len(step)
    chains = any(t.type == "CH" for t in found[at + 1 : start])
    alike = [(t.type, t.name, t.number) for t in found[max(first, 0) : at + 1]] == step
    return first if chains and alike and step[0][0] in ("NUM", "STITCH") else start


def _behind_stitch(t: Sequence[Terminal], at: int) -> int:
    """Behind `with a double`, where the stitch is named last."""
    stitch = past(t, at + 1, "NUM")
    said = types(t, at, 1) == ["WITH"] and types(t, stitch, 1) == ["STITCH"]
    return stitch + 1 if said else at


def _asked(first: Terminal, last_step: Terminal, last: Terminal, source: Source) -> Finding:
    """Of a list of which all, or its last stitches, go into the side."""
    span = source.span(first.start, last.end)
    said = source.text[span.start : span.end]
    step = source.text[last_step.start : span.end]
    before = said[: last_step.start - span.start]
    message = f'the side of the work may be for all of "{shortened(said)}", or for its end only'
    help_ = (
        f'set apart what goes there, for it is not counted: "-- {shortened(said)} --", or '
        f'"{shortened(before)} -- {shortened(step)} --"'
    )
    return Finding("not-understood", message, help_, span)


def _told(first: Terminal, last: Terminal, source: Source) -> Finding:
    return at_the_side(source, source.span(first.start, last.end))


def at_the_side(source: Source, span: Span) -> Finding:
    """What is told of words that fasten a row to what lies beside it."""
    said = quoted(source, span)
    message = (
        f'"{said}" goes into the side of the work, which is no part of the row below: it is left '
        "out of the counts"
    )
    help_ = (
        'where it goes into the last stitch of the row below, write "in last st"; otherwise '
        f'set it apart: "-- {said} --"'
    )
    return Finding("at-the-side", message, help_, span)
