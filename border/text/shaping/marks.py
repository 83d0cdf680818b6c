"""Printed marks round a repeat: `x … x 8 times`, `repeat from +`, `repeat from * to **`.

Books print stars, crosses, daggers and letters in brackets. Here they all become
the stars and brackets that the grammar knows, before anything else is put together.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from border.findings import Finding
from border.text.source import Source
from border.text.terminals import Terminal
from border.text.wording.pairs_of_marks import MARKS, counts
from border.text.wording.passing import past

_HOW_OFTEN = frozenset({"TIMES", "MORE", "INALL", "TOEND", "TOLAST", "NUM", "FROM", "TO", "MARK"})
_FROM_TO = ["FROM", "MARK", "TO", "MARK"]
_LETTERS = frozenset("abcdef")

MOST = 200
"""No text has more marks: for each one, all that stands behind it is looked through."""


def printed_marks(terminals: Sequence[Terminal], most: int) -> list[Terminal] | None:
    """The terminals with every printed mark as a star, or as half a bracket.

    None where there are more than `MOST` marks, or where what they say is done once
    more comes to more than `most` terminals.
    """
    if _is_plain(terminals):
        return list(terminals)
    found = _joined(_whole_marks(_continued(terminals)))
    if sum(t.type == "MARK" for t in found) > MOST:
        return None
    while (opening := _next_mark(found, 0)) is not None:
        found = _settled(found, opening)
        if len(found) > max(most, len(terminals)):
            return None
    return [replace(t, type="STAR") if t.type == "MARK" else t for t in _without_ends(found)]


def without_lone_mark(
    terminals: list[Terminal], source: Source
) -> tuple[list[Terminal], list[Finding]]:
    """`3 treble, 3 chain, miss 3, * repeat`: the second of a pair of marks, whose first is missing
    or stood at the head of the row; what is told of it."""
    marks = [n for n, t in enumerate(terminals) if t.type in MARKS]
    if len(marks) != 1:
        return terminals, []
    at = marks[0]
    behind = past(terminals, at + 1, "SEP", "AND")
    before = past(terminals, 0, "SEP")
    stands = [t.type for t in terminals[behind : behind + 2]]
    mark = terminals[at]
    each = any(t.type in ("EACH", "EVERY") for t in terminals)
    if at <= before and each and not any(t.type in _AGAIN for t in terminals):
        message = f'no repeat goes back to this "{mark.text}": the row goes to its end without'
        told = Finding("star-assumed", message, "leave it out", source.span(mark.start, mark.end))
        return [*terminals[:at], *terminals[at + 1 :]], [told]
    if at <= before or stands[:1] != ["REPEAT"] or stands[1:] == ["FROM"]:
        return terminals, []
    message = f'this "{mark.text}" ends what is repeated, and no mark begins it: the row is taken '
    message += "to be repeated from its beginning"
    help_ = f'write "{mark.text}" before the first step of the repeat'
    told = Finding("star-assumed", message, help_, source.span(mark.start, mark.end))
    return [*terminals[:at], *terminals[at + 1 :]], [told]


_AGAIN = frozenset({"REPEAT", "SOON", "ALTERNATELY"})


def _is_plain(t: Sequence[Terminal]) -> bool:
    """Whether there are no marks, or one star alone that `repeat from *` goes back to."""
    marks = [n for n, x in enumerate(t) if x.type in _MARKS or x.text in _LETTERS]
    if not marks:
        return True
    opens, *back = marks
    star = len(back) == 1 and t[opens].type == t[back[0]].type == "STAR" and back[0] > 1
    around = [x.type for x in t[back[0] - 2 : back[0] + 2]] if star else []
    return around[:2] == _REPEAT_FROM and around[3:] != ["TO"]


_MARKS = frozenset({"STAR", "MARK", "CROSS", "STARWORD", "SOON"})
_REPEAT_FROM = ["REPEAT", "FROM"]


def _without_ends(t: Sequence[Terminal]) -> list[Terminal]:
    """Without the second half of `repeat from * to *`, where nothing stands at the second mark."""
    ends = {n for n in range(3, len(t)) if [x.type for x in t[n - 3 : n + 1]] == _FROM_TO}
    return [x for n, x in enumerate(t) if not {n, n + 1} & ends]


def _continued(terminals: Sequence[Terminal]) -> list[Terminal]:
    """`continue from *`, `work from star`, `3 times from *`: as `repeat from *`."""
    marks = ("STAR", "MARK", "CROSS", "STARWORD", "LP")
    found: list[Terminal] = []
    for n, here in enumerate(terminals):
        behind = [x.type for x in terminals[n + 1 : n + 4] if x.type != "THE"]
        goes_back = behind[:1] == ["FROM"] and behind[1:2] and behind[1] in marks
        closes = here.type == "SOON" and n > 1 and terminals[n - 1].type in ("STAR", "CROSS")
        if closes:
            here = replace(here, type="REPEAT", name="")  # `* …, * and so on to the end`
        if here.type in ("SOON", "SEP") and here.text not in (",", ".", ";") and goes_back:
            here = replace(here, type="REPEAT", name="")
        found.append(here)
        if here.type in ("TIMES", "MORE") and goes_back and len(found) > 1:
            start = len(found) - 1
            while start and found[start - 1].type in ("NUM", "TIMES"):
                start -= 1
            if not start or found[start - 1].type != "REPEAT":
                found.insert(start, replace(here, type="REPEAT", number=0))
    return found


# --- what is a mark ---------------------------------------------------------------


def _whole_marks(terminals: Sequence[Terminal]) -> list[Terminal]:
    """Crosses that are no `3 times`, stars side by side, and `(a)`, each as one mark."""
    found: list[Terminal] = []
    letters = {t.text for n, t in enumerate(terminals) if n and terminals[n - 1].type == "FROM"}
    letters &= _LETTERS
    doubled = sum(_touches(terminals, n + 1) for n, t in enumerate(terminals) if t.type == "STAR")
    at = 0
    while at < len(terminals):
        here, taken = terminals[at], 1
        if here.type == "STAR":
            # One `**` alone is two repeats that begin together.
            while doubled > 1 and _touches(terminals, at + taken):
                taken += 1
            end = terminals[at + taken - 1].end
            here = replace(here, type="MARK", text="*" * taken, end=end)
        elif here.type == "CROSS" and not counts(terminals, at):
            here = replace(here, type="MARK")
        elif _is_letter(terminals[at : at + 3]):
            taken = 3
            here = replace(terminals[at + 1], type="MARK")
        elif here.text in letters and _stands_alone(terminals, at):
            here = replace(here, type="MARK")
            taken += [t.text for t in terminals[at + 1 : at + 2]] == [","]
        found.append(here)
        at += taken
    return found


def _touches(terminals: Sequence[Terminal], at: int) -> bool:
    if at >= len(terminals) or terminals[at].type != "STAR":
        return False
    return terminals[at - 1].end == terminals[at].start


def _stands_alone(terminals: Sequence[Terminal], at: int) -> bool:
    """Whether a letter that is gone back to, `repeat from a`, is a mark here: `a, 1 dc, 2 ch`."""
    before = terminals[at - 1].type if at else "SEP"
    behind = terminals[at + 1].type if at + 1 < len(terminals) else "SEP"
    return before == "FROM" or (before == "SEP" and behind in ("SEP", "RP"))


def _is_letter(three: Sequence[Terminal]) -> bool:
    types = [t.type for t in three]
    bracket = types[:1] == ["LP"] and types[2:] == ["RP"]
    return bracket and types[1] in ("NUM", "UNKNOWN") and three[1].text in _LETTERS


def _joined(terminals: Sequence[Terminal]) -> list[Terminal]:
    """Without the words that only lead to a mark: `from the *`, `from star`."""
    found: list[Terminal] = []
    for n, terminal in enumerate(terminals):
        behind = terminals[n + 1].type if n + 1 < len(terminals) else ""
        led = bool(found) and found[-1].type in ("FROM", "TO")
        if terminal.type == "THE" and led and behind in ("MARK", "STARWORD"):
            continue
        if terminal.type == "STARWORD" and led:
            terminal = replace(terminal, type="MARK", text="*")
        found.append(terminal)
    return found


def _next_mark(t: Sequence[Terminal], at: int, text: str | None = None) -> int | None:
    """The next mark that stands in the text itself, not behind `from` or `to`."""
    for n in range(at, len(t)):
        named = n > 0 and t[n - 1].type in ("FROM", "TO")
        if t[n].type == "MARK" and not named and text in (None, t[n].text):
            return n
    return None


# --- what belongs to it -----------------------------------------------------------


def _settled(t: list[Terminal], opening: int) -> list[Terminal]:
    """The terminals with one mark, and what closes it, as the grammar has them."""
    text = t[opening].text
    kinds = [x.type for x in t]
    last = len(t) - 1
    while last > opening and kinds[last] in ("SEP", "ENDING", "TOEND"):
        last -= 1  # `x … x`, `x … x all round` at the end of a row: to the end, then
    for n in range(opening + 1, len(t)):
        if kinds[n] == "REPEAT":
            behind = _behind_repeat(t, n)
            words = [x.text for x in t[n:behind] if x.type == "MARK"]
            again = _next_mark(t, opening + 1, text)
            if words == [text] and again is not None and again == _before(t, n):
                return _dropped(_as_star(_stars(t, n, behind), opening), {again})
            if words[:1] == [text]:
                return _from_mark(t, opening, n, behind, words[-1] if len(words) > 1 else None)
            if not words and _before(t, n) == _next_mark(t, opening + 1, text):
                return _dropped(
                    _as_star(t, opening), {_before(t, n)} | set(range(_before(t, n), n))
                )
        elif kinds[n] == "MARK" and t[n].text == text:
            behind_it = kinds[n + 1 : n + 4]
            if n - opening > 1 and (n == last or behind_it[:1] == ["TOEND"]):
                return [*_as_star(t[:n], opening), replace(t[n], type="REPEAT"), *t[n + 1 :]]
            if behind_it[:1] != ["MARK"] and _are_times(behind_it):
                return _bracketed(t, opening, n)
            if _are_placed(kinds, opening, n):
                return _bracketed(t, opening, n)
    return _as_star(t, opening)


def _from_mark(
    t: list[Terminal], opening: int, repeat: int, behind: int, to: str | None
) -> list[Terminal]:
    """`* A ** B; repeat from * to **`: A once more; with no B it is a plain star."""
    closing = None if to is None else _next_mark(t, opening + 1, to)
    if closing is None or closing > repeat or closing == _before(t, repeat):
        drop = {n for n in range(repeat, behind) if t[n].type == "TO"}
        drop |= {n + 1 for n in drop}
        if closing is not None and closing < repeat:
            drop |= {closing}
        return _dropped(_stars(_as_star(t, opening), repeat, behind), drop)
    again = t[opening + 1 : closing]
    how_often = [x for x in t[repeat:behind] if x.type in ("NUM", "TIMES", "MORE", "INALL")]
    head = t[:opening] + again + t[closing + 1 : repeat]
    bracket = [
        replace(t[repeat], type="LP", text="("),
        *again,
        replace(t[behind - 1], type="RP", text=")"),
    ]
    return head + bracket + how_often + t[behind:]


def _behind_repeat(t: Sequence[Terminal], repeat: int) -> int:
    at = repeat + 1
    while at < len(t) and t[at].type in _HOW_OFTEN:
        at += 1
    return at


def _before(t: Sequence[Terminal], at: int) -> int:
    """The place of the last terminal before one, separators left out."""
    at -= 1
    while at > 0 and t[at].type == "SEP":
        at -= 1
    return at


def _are_times(kinds: Sequence[str]) -> bool:
    """Whether these are the kinds of `8 times`, or of `, 8 times`."""
    kinds = kinds[1:] if kinds[:1] == ["SEP"] else kinds
    return kinds[:1] in (["TIMES"], ["MORE"]) or kinds[:2] in (["NUM", "TIMES"], ["NUM", "MORE"])


def _are_placed(kinds: Sequence[str], opening: int, closing: int) -> bool:
    """Whether `x 1 dc, 5 tr, 1 dc, x under every loop` is a list with its place behind it."""
    bare = {"PREP", "BETWEEN", "ALLIN", "SKIP"}.isdisjoint(kinds[opening:closing])
    start = closing + 1 + (kinds[closing + 1 : closing + 2] == ["SEP"])
    place = kinds[start : start + 2]
    rest = {"REPEAT", "MARK", "STITCH", "CH"} & set(kinds[closing + 1 :])
    return bare and place in (["PREP", "EACH"], ["PREP", "EVERY"]) and not rest


def _bracketed(t: Sequence[Terminal], opening: int, closing: int) -> list[Terminal]:
    found = list(t)
    found[opening] = replace(t[opening], type="LP", text="(")
    found[closing] = replace(t[closing], type="RP", text=")")
    return found


def _as_star(t: Sequence[Terminal], at: int) -> list[Terminal]:
    return [replace(x, type="STAR") if n == at else x for n, x in enumerate(t)]


def _stars(t: Sequence[Terminal], start: int, end: int) -> list[Terminal]:
    """The terminals with the marks of [start, end) as stars."""
    return [
        replace(x, type="STAR") if start < n < end and x.type == "MARK" else x
        for n, x in enumerate(t)
    ]


def _dropped(t: Sequence[Terminal], places: set[int]) -> list[Terminal]:
    return [x for n, x in enumerate(t) if n not in places]
