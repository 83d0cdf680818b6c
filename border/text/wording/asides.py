"""What a row says of itself besides its steps: `and one over`, `for the first space`, `(ch 5 and
this dc make 1 space)`, `of which the last 3 stand for a dc`, `the loops are left`.

No count depends on it, and it is told; but `repeat to the end, which must be 1 dc` says how the
row ends.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from border.text.tree import SPACES
from border.text.vocabulary import vocabulary
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
    """Behind `to form a dot`, `which forms a rib`: what it makes is no stitch; else the same place.
    `3 chain to form a trable` may be a slip of the pen."""
    noun = past(t, at + 1, "THE", "NUM")
    said = t[at].type == "AS" and t[at].text.split()[-1] in _FORM
    before = t[at - 1].type if at else ""
    if before == "NUM" and types(t, at - 2, 1) in (["THE"], ["OF"]):
        before = "ORD"  # `in the first of the five to form a point`
    strange = types(t, noun, 1) in (["UNKNOWN"], ["COLOUR"]) and before not in ("CH", "NUM")
    closed = at - 2 if before == "SEP" else at - 1
    if strange and t[noun].text in _PICOTS:  # which a heading may make a picot
        strange = types(t, closed, 1)[:1] in (["THEM"], ["ORD"]) or before in ("KIND", "STITCH")
    kind = types(t, noun, 1) == ["KIND"] and before in ("THEM", "KIND", "STITCH", "ORD")
    kind &= t[at].text.endswith(("to form", "to make", "to represent"))
    end = past(t, noun, "UNKNOWN", "COLOUR") if strange else noun + 1  # `this forms the rose`
    return end if said and (strange or kind) and ended(t, end) else at


_PICOTS = frozenset(word for word, kinds in vocabulary().places_asked.items() if "picot" in kinds)
_FORM = frozenset({"form", "forms", "make", "makes", "represent", "represents", "forming"})


def one_under_each(t: Sequence[Terminal], at: int) -> int:
    """Behind `that is 1 under each` of as many stitches as places; else the same place."""
    said = t[at].type == "NAMELY" and types(t, at + 1, 3) in _ONE_EACH
    return at + 4 if said and t[at + 1].number == 1 and ended(t, at + 4) else at


_ONE_EACH = (["NUM", "PREP", "EACH"], ["NUM", "PREP", "EVERY"])


def middle_on(t: Sequence[Terminal], at: int) -> int:
    """Behind `the middle one on the dc`, `of which 3 come on the 3 dc`, `(of which the centre one
    comes on the dc)` of stitches for which places were passed over: the skip says where they stand;
    else the same place."""
    if types(t, at, 2) == ["LP", "OF"]:
        end = middle_on(t, at + 1)
        return end + 1 if end > at + 1 and types(t, end, 1) == ["RP"] else at
    of = types(t, at, 2) == ["OF", "STRAY"] and t[at + 1].text == "which"
    one = past(t, at + 2 * of, "THE")
    named = types(t, one, 2) == ["CENTRE", "NUM"] and t[one + 1].number == 1
    some = of and types(t, one, 1) == ["NUM"]
    if not (named or some) or types(t, at - 1, 1) not in (["SEP"], ["LP"]):
        return at
    prep = past(t, one + 1 + named, "UNKNOWN", "SEP", "STRAY")
    stop = _stop(t, prep)
    on = past(t, prep + 1, "THE", "NUM")
    many = some and types(t, on - 1, 2) == ["NUM", "STITCH"] and t[on - 1].number == t[one].number
    alone = not some and not any(x.type in _STEPS for x in t[prep + 1 : stop])
    alone = types(t, prep, 1) == ["PREP"] and (alone or (many and on + 1 == stop))
    star = max((n for n in range(at - 1) if t[n].type in ("STAR", "LP")), default=0)
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
    if completes(t, at):
        return _mark(t, at)
    have = t[at].type == "WITH" and t[at].text.split()[0] in ("you", "there")
    if not opens or not (forms or have):
        return at
    stop = next((n for n in range(at, len(t)) if t[n].name == "hard"), len(t))
    if have and past(t, at + 1, "NUM", *NOUNS) == stop:
        return at
    steps = ("REPEAT", "SKIP", "STAR", "EACH", "ENDING", "LP")
    return at if any(x.type in steps for x in t[at:stop]) else stop


def completes(t: Sequence[Terminal], at: int) -> bool:
    """Whether `this completes the rose`, `, which finishes the first wheel` stands here, where a
    row ends."""
    opens = at > 0 and t[at - 1].type in ("SEP", "TOEND", "RP", "KIND", "AND")
    said = t[at].text in ("this", "which", "that") and at + 1 < len(t)
    if not (opens and said and t[at + 1].text in _COMPLETES):
        return False
    stop = _mark(t, at)
    return only_ends(t[stop:]) and all(x.type not in _WORKED for x in t[at:stop])


_COMPLETES = frozenset({"completes", "finishes", "ends", "closes", "concludes"})
_WORKED = frozenset({"REPEAT", "SKIP", "STAR", "LP", "CH", "ENDING", "STITCH"})


def _mark(t: Sequence[Terminal], at: int) -> int:
    """Where a clause ends: at the next mark, bracket or repeat, or the end of the row."""
    return next((n for n in range(at, len(t)) if _breaks(t[n])), len(t))


_ADVICE = frozenset({"always", "remember", "note", "observe", "notice"})


def with_care(t: Sequence[Terminal], at: int) -> int:
    """Behind `taking care not to draw in the edge`, `keeping the work flat`, which say how it is
    worked; else the same place. Not where something is counted or missed: `taking care to have 5
    ch between`, `keeping 2 loops on the hook`."""
    opens = not at or t[at - 1].type in ("SEP", "AND", "LP")
    first = next((n for n in (1, 2, 3) if _care(t[at : at + n])), 0) if opens else 0
    if not first:
        return at
    stop = _mark(t, at + first)
    steps = range(at + first, stop - 1)  # `taking care to keep it flat work 5 dc`
    stop = next((n for n in steps if t[n].text in _STEPS_NOW and t[n + 1].type == "NUM"), stop)
    said = t[at + first : stop]
    counted = any(x.type in _COUNTS or _is_number(said, n) for n, x in enumerate(said))
    keeps = t[at].text.startswith(("keep", "hold"))
    held = keeps and any(set(x.text.split()) & _HELD for x in said)
    missed = any(x.type == "SKIP" for x in said) and all(x.text != "not" for x in said)
    while stop > at + first and t[stop - 1].type == "AND":
        stop -= 1
    return at if not said or counted or held or missed else stop


def _care(words: Sequence[Terminal]) -> bool:
    """Whether such a clause begins with these words."""
    said = " ".join(x.text for x in words)
    return said in _CARE


def _is_number(said: Sequence[Terminal], at: int) -> bool:
    """Whether something is counted here: not so in `without missing a stitch`."""
    one = said[at].text in ("a", "an", "one") and types(said, at + 1, 1) not in _COUNTED
    return said[at].type == "NUM" and not one


_COUNTED = (["STITCH"], ["CH"], ["PICOT"])
_CARE = frozenset(
    {"keep", "keeping", "holding", "easing", "minding", "mind", "not drawing", "not pulling"}
    | {"taking great care", "take great care"}
    | {f"{be}{very} careful" for be in ("be", "being") for very in ("", " very")}
    | {"be sure", "being sure", "so that", "so as not", "so as to keep", "observing"}
    | {f"the {what} {must}" for what in ("work", "edge", "lace") for must in ("must", "should")}
    | {f"{take} care" for take in ("take", "taking", "with")}
    | {f"{draw} the thread" for draw in ("draw", "drawing", "pull", "pulling")}
)
_COUNTS = frozenset(
    {"WIDEN", "NARROW", "EXCEPT", "TIMES", "TOLAST", "TOEND", "ENDWITH", "INALL", "EQUALS"}
)
_HELD = frozenset({"hook", "needle", "last", "top", "upper", "back", "unfinished"})
_STEPS_NOW = ("work", "make", "crochet")


def _breaks(here: Terminal) -> bool:
    """Whether a clause ends before a word: at a mark, a bracket, a repeat."""
    mark = here.type == "SEP" and (here.text == "then" or not here.text[0].isalpha())
    return mark or here.type in ("LP", "RP", "STAR", "CROSS", "MARK", "REPEAT", "ENDING", "SOON")


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
