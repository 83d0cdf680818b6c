"""What the passes share that turn a text's words the way the grammar has them."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence, Set
from itertools import pairwise
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.tree import Kind

if TYPE_CHECKING:
    from border.text.terminals import Terminal

Terminals = list["Terminal"]
Pass = tuple[Callable[[Terminals], Terminals], tuple[frozenset[str], ...]]
"""What turns a text's words, and the sets of words of each of which a text must have one to be
changed by it."""

NOUNS = frozenset({"KIND", "STITCH", "CH", "PICOT"})
OPENS = frozenset({"PREP", "ALLIN", "OF", "OR", "BETWEEN", "SKIP"})
"""Behind these a place is named."""

NAMED_BEHIND = frozenset({"PREP", "OF", "NEXT", "THE", "EACH", "SAME", "ORD", "SKIP", "BETWEEN"})
"""Behind these something is named that is worked into."""

WHICH = frozenset({"NEXT", "THE", "EACH", "EVERY", "SAME", "SKIPPED", "ORD", "CENTRE"})
"""They say which of the places it is."""

ENDS = frozenset(
    {"", "SEP", "RP", "LP", "STAR", "REPEAT", "ENDING", "ENDWITH", "TOEND", "COME", "MOD"}
    | {"WITH", "DIVIDED", "TIMES"}
)
HOW_OFTEN = frozenset({"TIMES", "MORE", "INALL"})
ARCHES = (Kind("loop"), Kind("space"))


_PARTS = frozenset({"SEP", "LP", "RP", "STAR", "REPEAT", "ENDING"})


def types(t: Sequence[Terminal], at: int, count: int) -> list[str]:
    """The types of so many terminals from a place, or of as many as there are."""
    return [x.type for x in t[at : at + count]]


def where(turn: Callable[[Terminals], Terminals], *needed: str) -> Pass:
    """A pass, with the words that it needs, one of each set: `"KIND STITCH"`; side by side as
    `"KIND-OF"`, at the head of a text as `"-PREP"`, at its end as `"NEXT-"`."""
    return turn, tuple(frozenset(words.split()) for words in needed)


def said(t: Sequence[Terminal]) -> set[str]:
    """The words of a text as passes need them: each by itself, and with the one behind it."""
    sorts = [x.type for x in t]
    return {*sorts, *map("-".join, pairwise(["", *sorts, ""]))}


def turned(t: Terminals, passes: Iterable[Pass]) -> Terminals:
    """A text's words as passes turn them, one after the other."""
    there = said(t)
    for turn, needed in passes:
        for words in needed:
            if words.isdisjoint(there):
                break
        else:
            new = turn(t)
            if new != t:
                t, there = new, said(new)
    return t


def pairs(before: Set[str], *words: str) -> str:
    """Each of some words behind any of those before it, side by side, as passes need them."""
    return " ".join(f"{first}-{word}" for first in sorted(before) for word in words)


def like(
    here: Terminal, type_: str, kind: Kind | None = None, number: int = 0, name: str = ""
) -> Terminal:
    """A terminal that the text leaves unsaid, where another one stands."""
    return replace(here, type=type_, kind=kind, number=number, name=name, glued=False, chain=False)


def as_remark(words: Sequence[Terminal]) -> Terminal:
    """Some words as one remark."""
    said = " ".join(word.text for word in words)
    return replace(words[0], type="REMARK", text=said, end=max(word.end for word in words), name="")


def is_last(t: Sequence[Terminal], at: int) -> bool:
    """Whether `last` stands at a place."""
    return types(t, at, 1) == ["ORD"] and t[at].number == -1


def stitch_left_out(here: Terminal) -> Terminal:
    """The `st` of `in the next`, `over the 9`, where a text leaves its noun out."""
    return replace(like(here, "KIND", Kind("st")), text="st")


def chain_of_at(t: Sequence[Terminal], at: int) -> tuple[int, int]:
    """How many chains stand here, `5 chain`, `ch 5`, `a chain of 5`, and the place behind them."""
    if types(t, at, 4) == ["NUM", "CH", "OF", "NUM"] and t[at].number == 1:
        at += 1
    if types(t, at, 3) == ["CH", "OF", "NUM"]:
        return t[at + 2].number, at + 3
    return chains_at(t, at)


def past(t: Sequence[Terminal], at: int, *of: str) -> int:
    """The place behind all words of some sorts that stand here."""
    while at < len(t) and t[at].type in of:
        at += 1
    return at


def only_ends(t: Sequence[Terminal]) -> bool:
    """Whether these words only part steps, or end a row."""
    return all(x.type in ("SEP", "ENDING") for x in t)


def chains_at(t: Sequence[Terminal], at: int) -> tuple[int, int]:
    """How many chains stand here, `3 ch` or `ch 3`, and the place behind them; 0 where none do."""
    if types(t, at, 2) in (["NUM", "CH"], ["CH", "NUM"]):
        return t[at].number or t[at + 1].number, at + 2
    return 0, at


def behind_chains(found: Sequence[Terminal]) -> bool:
    """Whether chains stand right before one step, and are perhaps joined: `9 chain, form into a
    ring, 15 double`."""
    at = len(found) - 1
    at -= types(found, at, 1) == ["STITCH"]
    at -= types(found, at, 1) == ["NUM"]
    while at > 0 and found[at].type in ("SEP", "AND", "ENDING"):
        at -= 1
    if types(found, at - 2, 3) == ["CH", "OF", "NUM"] and at > 2:  # `a chain of 6`
        at -= 1 + (types(found, at - 3, 1) == ["NUM"])
        return at < 2 or found[at - 2].type not in OPENS | WHICH | {"TO"}
    made = at > 1 and sorted(types(found, at - 1, 2)) == ["CH", "NUM"]
    return made and found[at - 2].type not in OPENS | WHICH | {"TO"}


def list_start(t: Sequence[Terminal], end: int) -> int:
    """Where the list begins that ends before a place: behind the last stop, mark or repeat."""
    start = end
    while start and not stops(t[start - 1]):
        start -= 1
    return start


def stops(here: Terminal) -> bool:
    """Whether a list ends, or begins, at a word."""
    hard = here.type == "SEP" and here.name == "hard"
    return hard or here.type in ("STAR", "LP", "RP", "REPEAT", "ENDING", *HOW_OFTEN)


def is_stop(here: Terminal) -> bool:
    """Whether a word is a semicolon or a full stop: not `then`, which leads on as well."""
    return here.type == "SEP" and here.name == "hard" and here.text != "then"


def opens_again(t: Sequence[Terminal], at: int) -> bool:
    """Whether what is worked over and over opens at a place: a star; a bracket, `(…, repeat)`,
    `(…) 8 times`; a pair of marks, `+ … + 8 times`."""
    here = t[at].type if 0 <= at < len(t) else ""
    if here in ("MARK", "CROSS"):
        close = next((n for n in range(at + 1, len(t)) if t[n].type == here), len(t))
        return _said_how_often(t, past(t, close + 1, "SEP"))
    if here != "LP":
        return here == "STAR"
    close, depth = at, 1
    while depth and close + 1 < len(t):
        close += 1
        depth += (t[close].type == "LP") - (t[close].type == "RP")
        if depth == 1 and t[close].type == "REPEAT":
            return True
    behind = past(t, close + 1, "SEP")
    return _said_how_often(t, behind) or types(t, behind, 1) == ["REPEAT"]


def _said_how_often(t: Sequence[Terminal], at: int) -> bool:
    """Whether `8 times`, `twice` stands at a place, and not of one place: `twice in the loop`."""
    times = past(t, at, "NUM")
    end = past(t, times, *HOW_OFTEN)
    return end > times and types(t, end, 1) not in (["PREP"], ["ALLIN"])


def is_counted(t: Sequence[Terminal], repeat: int) -> bool:
    """Whether a repeat says how often: `repeat from * 3 times`."""
    often = past(t, repeat + 1, "FROMSTAR")
    return often < len(t) and t[often].type in HOW_OFTEN


def ended(t: Sequence[Terminal], at: int) -> bool:
    """Whether a place cannot go on here: not before `and 5 chain`, `and 1 picot`, `and 1 dc in the
    next`, which are made."""
    if at >= len(t) or t[at].type in ENDS:
        return True
    if t[at].type != "AND":
        return False
    if chains_at(t, at + 1)[0]:
        return at + 3 >= len(t) or t[at + 3].type in ENDS
    if types(t, at + 1, 2) == ["NUM", "PICOT"]:
        return at + 3 >= len(t) or t[at + 3].type in ENDS
    return types(t, at + 1, 3) == ["NUM", "STITCH", "PREP"]


def goes_on(t: Sequence[Terminal], at: int) -> bool:
    """Whether a row goes on behind the step at a place: with more steps, or worked again."""
    end = next((n for n in range(at, len(t)) if t[n].type in _PARTS), len(t))
    ends = next((n for n in range(end, len(t)) if t[n].type == "ENDING"), len(t))
    return any(x.type in ("STITCH", "CH", "REPEAT", "SOON") for x in t[end:ends])


def made(before: Sequence[Terminal]) -> int:
    """The number of stitches that stand before the place that is being named."""
    at = len(before) - 1
    while at >= 0 and before[at].type in WHICH | OPENS | {"MOD"}:
        at -= 1
    last = at - (at > 0 and before[at].type == "SEP" and not before[at].name)
    if last > 2 and before[last].type == "CH" and before[last - 2].type in ("DIVIDED", "WITH"):
        # `5 treble divided by 1 chain on the 5`, `with 1 chain between, on the 5`
        at = last - 3
        at -= at > 0 and before[at].type == "SEP" and not before[at].name
    if at < 0 or before[at].type not in ("STITCH", "CLUSTER"):
        return 0
    if at and before[at - 1].type == "NUM":
        return before[at - 1].number
    return 1


def opens_before(t: Sequence[Terminal], at: int) -> bool:
    """Whether a place opens before the word that stands there."""
    back = at - 1
    while back > 0 and t[back].type in ("THE", "NEXT", "NUM", "EACH", "EACHOF"):
        back -= 1
    return back >= 0 and t[back].type == "PREP"


def opener(t: Sequence[Terminal], at: int) -> int:
    """Where the word stands that opens what the word at a place ends: `in`, `of`, `miss`."""
    at -= 1
    while at > 0 and t[at].type in WHICH | {"NUM", "PAIR", "EACHOF"}:
        at -= 1
    return at


def prep_before(found: Sequence[Terminal]) -> int | None:
    """Where a place opens that is complete with the last terminal found; None if there is none."""
    if not found or found[-1].type not in NOUNS:
        return None
    at = len(found) - 2
    while at >= 0 and found[at].type in _WHICH_ONE:
        at -= 1
    return at if at >= 0 and found[at].type in ("PREP", "ALLIN", "SKIP") else None


_WHICH_ONE = frozenset({"THE", "NUM", "ORD", "NEXT", "EACH", "EACHOF", "EVERY", "SAME"})
