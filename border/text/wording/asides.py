"""What a row says of itself besides its steps: `and one over`, `for the first space`, `(ch 5 and
this dc make 1 space)`, `of which the last 3 stand for a dc`, `the loops are left`.

No count depends on it, and it is told; but `repeat to the end, which must be 1 dc` says how the
row ends.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from border.text.tree import SPACES
from border.text.wording.passing import NOUNS, ended, like, only_ends, past, types

if TYPE_CHECKING:
    from border.text.terminals import Terminal

_MAKES = frozenset({"make", "makes", "making", "form", "forms", "forming", "count", "counts"})


def one_over(t: Sequence[Terminal], at: int) -> int:
    """Behind `and one over`, `with 1 dc over` before anything is counted: said of the length of a
    foundation; else the same place."""
    if t[at].type not in ("AND", "WITH") or types(t, at + 1, 1) != ["NUM"]:
        return at
    noun = past(t, at + 2, *NOUNS)
    if noun == len(t) or t[noun].text != "over" or not ended(t, noun + 1):
        return at
    counted = any(types(t, n, 1) == ["NUM"] and t[n + 1].type in NOUNS for n in range(at - 1))
    return at if counted else noun + 1


def for_space(t: Sequence[Terminal], at: int) -> int:
    """Behind `for the first space` of chains and a stitch that make it; else the same place."""
    order = past(t, at + 1, "THE")
    if t[at].type != "AS" or types(t, order, 2) != ["ORD", "KIND"]:
        return at
    kind = t[order + 1].kind
    space = kind is not None and kind.name in SPACES and not kind.size
    return order + 2 if space and ended(t, order + 2) else at


def bracketed_count(t: Sequence[Terminal], at: int) -> int:
    """Behind `(ch 5 and this dc make 1 space)`, `(3 ch standing for the first of all)`; else the
    same place."""
    before = t[at - 1] if at else t[at]
    if t[at].type != "LP" or before.type in ("LP", "STAR") or before.name == "hard":
        return at
    near = range(at + 1, min(at + _LONGEST, len(t)))
    end = next((n for n in near if t[n].type in ("RP", "LP")), at)
    inside = t[at + 1 : end]
    if end == at or t[end].type != "RP" or len(inside) < _FEWEST:
        return at
    makes = inside[-3].text in _MAKES and types(inside, len(inside) - 2, 2) == ["NUM", "KIND"]
    of_all = [x.type for x in inside[-3:]] == ["ORD", "OF", "ALL"]
    stands = of_all and any(x.type == "AS" for x in inside)
    return end + 1 if makes or stands else at


_FEWEST, _LONGEST = 4, 20
"""In fewer words no bracket says what has been made, nor in more."""


def in_all(t: Sequence[Terminal], at: int) -> int:
    """Behind `(8 in all)` of what has been made; else the same place."""
    noun = past(t, at + 2, *NOUNS)
    said = types(t, at, 2) == ["LP", "NUM"] and types(t, noun, 2) == ["INALL", "RP"]
    made = at > 0 and t[at - 1].type not in ("LP", "STAR", "REPEAT", "TOEND")
    return noun + 2 if said and made and not only_ends(t[noun + 2 :]) else at


def counting(t: Sequence[Terminal], at: int) -> int:
    """Behind `counting each ch as one`, said of what stands before it; else the same place."""
    if t[at].text not in ("counting", "reckoning") or not at or t[at - 1].type != "SEP":
        return at
    stop = _stop(t, at)
    said = t[at:stop]
    as_one = any(x.type == "AS" for x in said)
    return stop if as_one and all(x.type not in ("REPEAT", "SKIP", "PREP") for x in said) else at


def of_which(t: Sequence[Terminal], at: int) -> int:
    """Behind `of which the last three stand for a dc`; else the same place."""
    said = types(t, at, 2) == ["OF", "STRAY"] and t[at + 1].text == "which"
    if not said or not at or t[at - 1].type != "SEP":
        return at
    stop = _stop(t, at)
    return stop if any(x.type == "AS" for x in t[at:stop]) else at


def to_form(t: Sequence[Terminal], at: int) -> int:
    """Behind `to form a dot` of a stitch that has its place: what it makes is no stitch; else the
    same place."""
    noun = past(t, at + 1, "THE", "NUM")
    said = t[at].type == "AS" and t[at].text.endswith(("to form", "to make", "to represent"))
    what = types(t, noun, 1) in (["UNKNOWN"], ["KIND"]) and ended(t, noun + 1)
    before = t[at - 1].type if at else ""
    return noun + 1 if said and what and before in ("THEM", "KIND", "STITCH", "ORD") else at


def one_under_each(t: Sequence[Terminal], at: int) -> int:
    """Behind `that is 1 under each` of as many stitches as places; else the same place."""
    said = t[at].type == "NAMELY" and types(t, at + 1, 3) in _ONE_EACH
    return at + 4 if said and t[at + 1].number == 1 and ended(t, at + 4) else at


_ONE_EACH = (["NUM", "PREP", "EACH"], ["NUM", "PREP", "EVERY"])


def middle_on(t: Sequence[Terminal], at: int) -> int:
    """Behind `the middle one on the dc`, `of which the centre one comes on the dc` of stitches for
    which places were passed over: the skip says where they stand; else the same place."""
    of = types(t, at, 2) == ["OF", "STRAY"] and t[at + 1].text == "which"
    one = past(t, at + 2 * of, "THE")
    named = types(t, one, 2) == ["CENTRE", "NUM"] and t[one + 1].number == 1
    if not named or types(t, at - 1, 1) != ["SEP"]:
        return at
    prep = past(t, one + 2, "UNKNOWN", "SEP", "STRAY")
    stop = _stop(t, prep)
    alone = types(t, prep, 1) == ["PREP"] and not any(x.type in _STEPS for x in t[prep + 1 : stop])
    star = max((n for n in range(at) if t[n].type in ("STAR", "LP")), default=0)
    return stop if alone and any(x.type == "SKIP" for x in t[star:at]) else at


def are_left(t: Sequence[Terminal], at: int) -> int:
    """Behind `the loops are left, and form the point`, where a row ends; else the same place."""
    opens = at and t[at - 1].type in ("SEP", "AND") and t[at].type == "THE"
    if not opens or types(t, at + 1, 2) != ["KIND", "REMAIN"]:
        return at
    rest = t[at + 3 :]
    return len(t) if all(x.type not in (*_STEPS, *NOUNS) for x in rest) else at


_STEPS = ("NUM", "REPEAT", "STAR", "SKIP", "PREP", "ENDING")


def left_free(t: Sequence[Terminal], at: int) -> int:
    """Behind `leaving 6 loops free along the edge`, said of the wheels; else the same place."""
    if not t[at].text.startswith("leav") or types(t, at + 1, 2) != ["NUM", "KIND"]:
        return at
    stop = _stop(t, at)
    return stop if any(x.text == "free" for x in t[at:stop]) else at


def joined_to(t: Sequence[Terminal], at: int) -> int:
    """Behind `joining the 2nd picot to the 2nd picot of the last scallop`, which makes nothing of
    its own; else the same place."""
    joins = t[at].type in ("ENDING", "CATCH", "UNITE") and t[at].text.startswith(("join", "unit"))
    which = past(t, at + 1, "THE")
    named = types(t, which, 2) in _PARTS_JOINED and t[which].number != -1
    if not joins or not named or all(x.type in _LITTLE for x in t[:at]):
        return at
    stop = _stop(t, at)
    steps = any(x.type in ("REPEAT", "SKIP") for x in t[at:stop])
    return stop if any(x.type == "TO" for x in t[which + 2 : stop]) and not steps else at


_PARTS_JOINED = (["ORD", "PICOT"], ["CENTRE", "PICOT"], ["NUM", "PICOT"], ["ORD", "STITCH"])
_LITTLE = frozenset({"SEP", "AND", "STAR"})


def passing_on(t: Sequence[Terminal], at: int) -> int:
    """Behind `and pass to the next scallop` before a repeat, which goes there; else the same
    place."""
    verb = at + (t[at].type == "AND")
    said = types(t, verb, 1) == ["SOON"] and t[verb].text.split()[0] in ("pass", "go", "proceed")
    noun = past(t, verb + 1, "UNKNOWN", "KIND") if said else at
    again = types(t, past(t, noun, "SEP", "AND"), 1) == ["REPEAT"]
    return noun if said and noun > verb + 1 and again else at


def sentence(t: Sequence[Terminal], at: int) -> int:
    """Behind `This forms the middle of the point`, `You now have three loops of 5 ch on the edge`;
    else the same place. `There should be 12 loops` is a claim."""
    opens = at > 0 and t[at - 1].name == "hard" and t[at - 1].text != "then"
    if opens and t[at].text in _ADVICE:
        return next((n for n in range(at, len(t)) if t[n].name == "hard"), len(t))
    forms = t[at].type == "AS" and t[at].text.startswith("this")
    have = t[at].type == "WITH" and t[at].text.split()[0] in ("you", "there")
    if not opens or not (forms or have):
        return at
    stop = next((n for n in range(at, len(t)) if t[n].name == "hard"), len(t))
    if have and past(t, at + 1, "NUM", *NOUNS) == stop:
        return at
    steps = ("REPEAT", "SKIP", "STAR", "EACH", "ENDING", "LP")
    return at if any(x.type in steps for x in t[at:stop]) else stop


_ADVICE = frozenset({"always", "remember", "note", "observe", "notice"})


_BOTH_ENDS = ("one at each end", "the first and last", "first and last", "one at either end")


def both_ends(t: Sequence[Terminal], at: int) -> int:
    """Behind `leaving one at each end`, `missing the first and last` of stitches on more than they
    are: they stand on the middle ones in any case; else the same place."""
    led = t[at].type in ("WITH", "SKIP", "UNKNOWN") and at > 2 and t[at - 1].type == "SEP"
    if not led or t[at].text not in ("leaving", "missing", "skipping"):
        return at
    stop = _stop(t, at)
    said = " ".join(x.text for x in t[at + 1 : stop]) in _BOTH_ENDS
    number = at - 2 - (t[at - 2].type in ("STITCH", "KIND"))
    return stop if said and t[number].type == "NUM" else at


def passed_over(t: Sequence[Terminal], at: int) -> int:
    """Behind `(passing over the dc)` of a stitch on the next of what is named, which passes over
    it in any case; else the same place."""
    skips = types(t, at, 2) == ["LP", "SKIP"] and t[at + 1].text.split()[0].endswith("ing")
    noun = past(t, at + 2, "THE", "NUM", "NEXT")
    placed = at > 1 and t[at - 1].type in NOUNS and t[at - 2].type in ("NEXT", "THE")
    closed = noun < len(t) and t[noun].type in NOUNS and types(t, noun + 1, 1) == ["RP"]
    if closed and (t[noun].type, t[noun].name) == (t[at - 1].type, t[at - 1].name):
        return at  # of its own kind one more is passed over
    return noun + 2 if skips and placed and closed else at


def counted_times(t: Sequence[Terminal], at: int) -> int:
    """Behind `(9 times)` of what goes into each; else the same place."""
    if t[at].type != "LP" or types(t, at + 1, 3) != ["NUM", "TIMES", "RP"]:
        return at
    each = any(x.type in ("EACH", "EVERY") for x in t[max(0, at - _NEAR) : at])
    return at + 4 if each else at


_NEAR = 8
"""So many words name a place at most."""


def must_be(t: Sequence[Terminal], at: int) -> tuple[list[Terminal], int]:
    """`repeat to the end, which must be 1 dc`: as `end with 1 dc`, and the place behind it."""
    stray = at < len(t) and t[at].text == "which" and at > 0 and t[at - 1].type == "SEP"
    said = [x.text for x in t[at + 1 : at + 3]] in (
        ["must", "be"],
        ["should", "be"],
        ["will", "be"],
    )
    step = types(t, at + 3, 2) == ["NUM", "STITCH"]
    if not (stray and said and step and only_ends(t[at + 5 :])):
        return [], at
    if all(x.type != "REPEAT" for x in t[:at]):
        return [], at
    return [like(t[at], "ENDWITH"), *t[at + 3 : at + 5]], at + 5


def _stop(t: Sequence[Terminal], at: int) -> int:
    """Where a step ends: the next stop, bracket or star from here on, or the end of the row."""
    return next((n for n in range(at, len(t)) if t[n].type in ("SEP", "LP", "RP", "STAR")), len(t))
