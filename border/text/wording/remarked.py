"""Words that only add to what is said: `on the double which joins the loops`, `…, eight in all`,
`; the double is missed`.

Such a clause is a remark, and told; what is missed in a roundabout way is missed.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.wording.asides import (
    are_left,
    both_ends,
    bracketed_count,
    counted_times,
    counting,
    for_space,
    in_all,
    joined_to,
    left_free,
    middle_on,
    must_be,
    of_which,
    one_over,
    one_under_each,
    passed_over,
    passing_on,
    sentence,
    to_form,
    with_care,
)
from border.text.wording.passing import (
    NOUNS,
    as_remark,
    ended,
    is_last,
    like,
    only_ends,
    past,
    types,
)

if TYPE_CHECKING:
    from border.text.terminals import Terminal

_STOPS = frozenset({"SEP", "LP", "RP", "STAR", "REPEAT", "ENDING", "CROSS"})
_HAVING = frozenset({"having", "getting", "giving", "forming"})
_MAKING = _HAVING | {"making"}
_LEFT = frozenset(
    {"THE", "OTHER", "NUM", "ORD", "KIND", "STITCH", "UNKNOWN", "REST", "NOTHING", "AS"}
)
_OPENED = frozenset({"LP", "STAR", "REPEAT", "CROSS"})
_LONGEST = 12
"""A clause of more words says more than where something stands."""


def with_remarks(terminals: Sequence[Terminal]) -> list[Terminal]:
    """The terminals with each such clause as one remark, or as the skip that it is."""
    for n, here in enumerate(terminals):
        said = here.type in _OPENERS or here.text in _LEAVING or here.text.startswith(_BEGINS)
        if here.type == "LP":
            said |= types(terminals, n, 4) in (_CLAIM, _FIRST)
            said |= types(terminals, n + 1, 1) == ["SKIP"]
        elif here.type == "CENTRE":
            said |= types(terminals, n + 1, 2) == ["NUM", "PREP"]
        if said:
            break
    else:
        return list(terminals)
    found: list[Terminal] = []
    at = 0
    while at < len(terminals):
        sort, before = terminals[at].type, terminals[at - 1].type if at else "SEP"
        if sort in _WITHIN or (sort in _SUBJECTS and before not in ("SEP", "AND", "LP")):
            found.append(terminals[at])
            at += 1
            continue
        opens = () if terminals[at].text in _MARKS else _REMARKS.get(sort, _BY_WORD)
        end = max((behind(terminals, at) for behind in opens), default=at)
        if end > at:
            dotted = types(found, len(found) - 1, 1) == ["SEP"] and found[-1].text == "."
            if dotted and terminals[at].text in ("which", "that"):
                found.pop()  # of the short name before it: `the sc. which …`
            found.append(as_remark(terminals[at:end]))
            at = end
            continue
        words, end = next((told for say in _SAYS if (told := say(terminals, at))[0]), ([], at))
        if words:
            found += words
            at = end
        elif terminals[at].type == "UNKNOWN" and terminals[at].text in _HAVING:
            found.append(replace(terminals[at], type="WITH"))
            at += 1
        elif _puts_hook(terminals, at):  # no step begins here: better an error than one too many
            found.append(replace(terminals[at], type="STRAY"))
            at += 1
        else:
            found.append(terminals[at])
            at += 1
    return found


_WITHIN = frozenset(
    {"PREP", "TIMES", "NEXT", "EACH", "ORD", "EACHOF", "REPEAT", "FROM", "STAR", "MORE", "RP"}
)
"""No such clause begins with these."""
_SUBJECTS = NOUNS | {"NUM"}
"""It may with these, at its head: `the dc is missed`, `eight in all`."""
_OPENERS = frozenset(
    {"TILL", "UNKNOWN", "STRAY", "NAMELY", "INALL", "SKIPPED", "EXCEPT", "AS", "REMAIN", "SOON"}
)
_LEAVING = frozenset({"leaving", "leaving out", "making"})
_CLAIM = ["LP", "NUM", "KIND", "RP"]
_FIRST = ["LP", "ORD", "KIND", "RP"]


def _stop(t: Sequence[Terminal], at: int) -> int:
    """Where a clause ends: at a mark or `then`, not at `worked`."""
    ends = (
        n
        for n in range(at, len(t))
        if t[n].type in _STOPS and (t[n].text == "then" or not t[n].text[0].isalpha())
    )
    return next(ends, len(t))


def _which(t: Sequence[Terminal], at: int) -> int:
    """Behind `which has joined the loops` of a thing that is named; else the same place."""
    which_is = t[at].type == "NAMELY" and t[at].text == "which is"
    which = at + (t[at].type == "WITH")  # `with which the last row commenced`
    if not which_is and (types(t, which, 1) != ["STRAY"] or t[which].text not in ("which", "that")):
        return at
    stop = _stop(t, at)
    works = range(at + 1, stop - 1)  # `the loops that surround the centre work one dc`
    stop = next((n for n in works if t[n].text in _WORK and t[n + 1].type == "NUM"), stop)
    if which_is:
        above = at > 1 and types(t, at + 1, 1) == ["PREP"]  # `in the next, which is over a cluster`
        return stop if above or types(t, at + 1, 1) == ["SKIPPED"] or _passed(t, at + 1) else at
    noun = at - 1 - (at > 0 and t[at - 1].text == ".")  # `on the sc. which …`
    named = noun >= 0 and (t[noun].type in NOUNS or types(t, noun - 1, 2) == ["OF", "NUM"])
    if not named:
        return at
    clause = t[which + 1 : stop]
    verb = bool(clause) and clause[0].type not in (*NOUNS, "NUM", "PREP", "THE", "UNDERIT")
    verb |= which > at and clause[-1:] != [] and clause[-1].type not in NOUNS
    verb &= not _passed(t, which + 2)  # `the 7 st. which were passed over`
    plain = len(clause) < _LONGEST and not any(x.type in ("SKIP", "REPEAT") for x in clause)
    return stop if verb and plain else at


def _first(t: Sequence[Terminal], at: int) -> int:
    """Behind `(first space)`, which counts what has been made; else the same place."""
    return at + 4 if at and types(t, at, 4) == _FIRST else at


def _bracketed(t: Sequence[Terminal], at: int) -> int:
    """Behind `(cotton twice round the needle)`, in which nothing is worked; else the same place."""
    if t[at].type != "LP":
        return at
    inside = types(t, at + 1, _LONGEST)
    end = inside.index("RP") if "RP" in inside else 0
    strange = "UNKNOWN" in inside[:end] and "LP" not in inside[:end]
    return at if not strange or _WORKS & set(inside[:end]) else at + end + 2


_WORK = ("work", "make", "crochet")
_WORKS = frozenset({"STITCH", "CH", "KIND", "PICOT", "CLUSTER", "SKIP", "REPEAT", "STAR"})


def _thus(t: Sequence[Terminal], at: int) -> int:
    """Behind `thus forming 6 petals`, which names no place; else the same place."""
    said = t[at].text in ("thus forming", "thus making", "forming", "there will be")
    if not said or not at or t[at - 1].type not in ("SEP", "AND"):
        return at
    stop = _stop(t, at + 1)
    steps = any(x.type in _STEPS for x in t[at + 1 : stop])
    claim = t[at].type == "WITH" and past(t, at + 1, "NUM", *NOUNS) == stop
    return at if steps or claim else stop


_STEPS = frozenset({"PREP", "SKIP", "CH", "REPEAT", "AFTER", "EACH", "EVERY"})


def _for(t: Sequence[Terminal], at: int) -> int:
    """Behind `then, for the scallop,` which says what the steps will be; else the same place."""
    opens = not at or t[at - 1].type in ("SEP", "AND")
    said = opens and t[at].text == "for" and types(t, at, 3) == ["AS", "THE", "UNKNOWN"]
    return at + 3 if said and _stop(t, at + 3) == at + 3 else at


def _counted(t: Sequence[Terminal], at: int) -> int:
    """Behind `eight in all` of what goes to the end already; else the same place."""
    if (at and t[at - 1].type not in ("SEP", "AND")) or t[at].type != "NUM":
        return at
    noun = past(t, at + 1, *NOUNS, "UNKNOWN")
    end = past(t, noun, "INALL")
    again = any(x.type in ("EACH", "EVERY", "REPEAT", "SOON", "TOEND") for x in t[:at])
    closed = types(t, end, 1) == ["RP"]  # `(48 dc and 24 ch in all)` is a claim
    return end if end > noun and _stop(t, end) == end and again and not closed else at


def _with_chain(t: Sequence[Terminal], at: int) -> int:
    """Behind `making 7 dc with the chain`, `making 7 with the 3 ch`, which have been made; else the
    same place."""
    noun = at + 2 + (types(t, at + 2, 1) == ["STITCH"])
    counts = types(t, at + 1, 1) == ["NUM"] and types(t, noun, 1) == ["WITH"]
    if t[at].text not in _MAKING or not counts:
        return at
    chain = past(t, noun + 1, "THE", "NUM")
    return chain + 1 if types(t, chain, 1) == ["CH"] and _stop(t, chain) == chain + 1 else at


def _taken_in(t: Sequence[Terminal], at: int) -> int:
    """Behind `taking in the two chains of the row below`, which are worked round; else the same
    place."""
    takes = t[at].type in ("NOTHING", "REMARK") and t[at].text.startswith(_TAKING)
    chain = past(t, at + 1, "ALL", "THE", "NUM") if takes else len(t)
    return _stop(t, chain) if types(t, chain, 1) == ["CH"] else at


_TAKING = ("taking in", "taking up", "enclosing")
_PUTTING = ("putting", "inserting", "taking")
_WORKING = ("working", "worked", "work")
_BY_HAND = (*_TAKING, *_PUTTING, *_WORKING)


_BEGINS = (*_BY_HAND, "over", "join", "unit", "you", "there", "missing")


def _where_the_hook_goes(t: Sequence[Terminal], at: int) -> tuple[list[Terminal], int]:
    """`inserting the hook under the 3 ch`, `(putting the needle in the dc)`, `working over the
    chain` behind a step, and the place behind it: a remark; but of a stitch that has no place this
    is its place."""
    bracketed = types(t, at, 1) == ["LP"]
    comma = at + (types(t, at, 1) in (["SEP"], ["AND"], ["LP"]))
    stitch = at - (types(t, at - 1, 1) == ["SEP"] and t[at - 1].text == ".") - 1  # `1 d.c.`
    if comma == at or comma == len(t) or stitch < 0:
        return _hook_first(t, at)
    said = t[comma]
    puts = said.type == "NOTHING" and said.text.startswith(_PUTTING)
    puts &= said.text != "putting" or types(t, comma + 1, 1) != ["NUM"]  # `putting 3 chain`
    works = said.text in _WORKING and types(t, comma + 1, 1) == ["PREP"]
    works &= t[at].type != "AND" and t[stitch].type in _BEFORE_HOOK  # `and work in the chain`
    noun = past(t, comma + 1 + works, *_WHICH_ONE)
    stop = _behind_hook(t, noun)
    dotted = past(t, stop, "SEP") if bracketed else stop  # `(putting the hook under the tr.)`
    ends = stop > noun and (not bracketed or types(t, dotted, 1) == ["RP"])
    if not (puts or works) or not ends:
        return [], at
    goes_on = past(t, stop, "SEP")
    first = works and types(t, goes_on, 1) == ["NUM"] and types(t, goes_on + 1, 1) != ["CH"]
    if first:  # `working over the 3 ch, 7 dc`: the place of those
        return [], at
    number = stitch - (types(t, stitch - 1, 1) == ["NUM"])
    opened = t[number - 1].type if number else "SEP"
    placed = opened not in ("SEP", "AND", "STAR", "LP", "CROSS") or t[stitch].type != "STITCH"
    if placed:
        return [as_remark(t[at + (not bracketed) : dotted + bracketed])], dotted + bracketed
    prep = t[comma + 1] if works else _put_into(said)
    return [prep, *t[comma + 1 + works : stop]], dotted + bracketed


def _hook_first(t: Sequence[Terminal], at: int) -> tuple[list[Terminal], int]:
    """`Inserting the hook in the chain, work 3 dc in each space` at the head of a row or a star,
    and the place behind it: a remark; of steps that have no place it is the place."""
    heads = at == 0 or t[at - 1].type in ("STAR", "LP")
    puts = heads and at < len(t) and t[at].type == "NOTHING" and t[at].text.startswith(_PUTTING)
    noun = past(t, at + 1, *_WHICH_ONE)
    stop = _behind_hook(t, noun) if puts else noun
    if not puts or stop == noun:
        return [], at
    stitch = past(t, past(t, stop, "SEP"), "NUM")
    if types(t, stitch, 1) == ["STITCH"] and types(t, stitch + 1, 1) != ["PREP"]:
        return [_put_into(t[at]), *t[at + 1 : stop]], past(t, stop, "SEP")
    return [as_remark(t[at:stop])], stop


def _puts_hook(t: Sequence[Terminal], at: int) -> bool:
    """Whether it is said where the hook goes, in words that no rule has read."""
    said = t[at].text.split()
    puts = (
        t[at].type == "NOTHING" and t[at].text.startswith(_PUTTING) and {"hook", "needle"} & {*said}
    )
    return bool(puts) and types(t, past(t, at + 1, *_WHICH_ONE), 1) in _WORKED_ON


def _put_into(here: Terminal) -> Terminal:
    """The `under` of `inserting the hook under the`."""
    *_, into = (word for word in here.text.split() if word != "the")
    return replace(here, type="PREP", text=into)


def _behind_hook(t: Sequence[Terminal], noun: int) -> int:
    """Behind what the hook is put into, by the place of its noun; that place where it goes on."""
    if types(t, noun, 1) not in _WORKED_ON:
        return noun
    behind = noun + 1 + (types(t, noun + 1, 1) in (["NOTHING"], ["NUM"]))
    and_ = behind < len(t) and t[behind].text in ("and", "&")
    goes_on = types(t, behind + and_, 1) in _GOES_ON or (and_ and ended(t, behind))
    stop = behind if goes_on else _stop(t, noun)
    return stop if stop <= behind else noun


_GOES_ON = (["REPEAT"], ["SOON"], ["ENDING"], ["SKIP"], ["CATCH"])


_WORKED_ON = (["CH"], ["STITCH"], ["KIND"])
_WHICH_ONE = ("ALL", "THE", "NEXT", "ORD", "CENTRE", "OF", "NUM")
_BEFORE_HOOK = NOUNS | {"UNKNOWN", "PLACE", "ENDST", "RP", "NUM", "NEXT", "TOEND", "MOD", "BETWEEN"}
"""With these a place ends, or a stitch without one: `between two scallops`, `in one place`."""


def _hook_of_repeat(t: Sequence[Terminal], at: int) -> tuple[list[Terminal], int]:
    """`repeat from *, always putting the hook under the 5 ch`, `…, working over the chain` where
    a row ends: a remark on all of it, and the place behind."""
    begins = past(t, at, "SEP")
    again = at - 1
    while again > 0 and t[again].type in _HOW_FAR:
        again -= 1
    if begins in (at, len(t)) or types(t, again, 1) != ["REPEAT"]:
        return [], at
    puts = t[begins].type == "NOTHING" and t[begins].text.startswith(_PUTTING)
    works = t[begins].type == "PREP" and t[begins - 1].text in _WORKING
    noun = past(t, begins + 1, "THE", "NEXT", "EACH", "NUM")
    stop = past(t, noun + 1, "NOTHING", "OF", "THE", "ORD", "ROW")
    if not (puts or works) or types(t, noun, 1) not in _WORKED_ON or not only_ends(t[stop:]):
        return [], at
    return [as_remark(t[begins - works : stop])], stop


_HOW_FAR = frozenset({"FROM", "STAR", "CROSS", "MARK", "NUM", "TIMES", "MORE", "INALL", "TOEND"})


def _round_left_out(t: Sequence[Terminal], at: int) -> tuple[list[Terminal], int]:
    """`ch 3 for first dc of the round`, without the round."""
    end = _of_the_round(t, at)
    return ([replace(t[at], type="NOTHING")] if end > at else []), end


def _of_the_round(t: Sequence[Terminal], at: int) -> int:
    """Behind `of the round` of chains that stand for its first stitch; else the same place."""
    stands = types(t, at - 1, 2) == ["STITCH", "OF"] and "AS" in types(t, max(0, at - 4), 3)
    end = past(t, at + 1, "THE", "EACH", "EVERY") if stands else len(t)
    return end + 1 if types(t, end, 1) in (["ROW"], ["ROUND"]) else at


def _first_shown(t: Sequence[Terminal], at: int) -> int:
    """Behind `(3 ch for first dc of round)` that follows what is worked in each place; else the
    same place."""
    chains = sorted(types(t, at + 1, 2)) == ["CH", "NUM"] and types(t, at + 3, 1) == ["AS"]
    before = at - 1 - (at > 1 and t[at - 1].type == "SEP")  # the place that the bracket follows
    if t[at].type != "LP" or not chains or not at or t[before].type not in NOUNS:
        return at
    stitch = past(t, at + 4, "THE", "ORD")
    end = _of_the_round(t, stitch + 1) if stitch + 1 < len(t) else stitch
    each = any(x.type in ("EACH", "EVERY") for x in t[:at])
    said = types(t, stitch, 1) == ["STITCH"] and types(t, end, 1) == ["RP"]
    worked = types(t, end + 1, 1) in (["TOEND"], ["TIMES"])
    return end + 1 if each and said and ended(t, end + 1) and not worked else at


def _claimed(t: Sequence[Terminal], at: int) -> int:
    """Behind `(8 loops)` in the middle of a row, the count of what has been made; else the same
    place."""
    if types(t, at, 4) != _CLAIM or not at or t[at - 1].type in _OPENED:
        return at
    behind = t[at + 4 :]
    return at + 4 if types(behind, 0, 1) == ["SEP"] and not only_ends(behind) else at


def _last_omitted(t: Sequence[Terminal], at: int) -> int:
    """Behind `omitting last sc` of a repeat that comes round to an sc before its star: there the
    last is the first of itself; else the same place."""
    omits = t[at].type in ("EXCEPT", "SKIP") and t[at].text.startswith(("omit", "leaving out"))
    if not omits or not at or t[at - 1].type not in ("SEP", "AND"):
        return at
    last = past(t, at + 1, "THE")
    named = "last" in t[at].text or is_last(t, last)
    stitch = past(t, last, "ORD", "NUM")
    if not named or types(t, stitch, 1) != ["STITCH"] or not only_ends(t[stitch + 1 :]):
        return at
    star = next((n for n in range(at) if t[n].type in ("STAR", "CROSS")), 0)
    first = any(x.type == "STITCH" and x.name == t[stitch].name for x in t[:star])
    again = any(x.type == "REPEAT" for x in t[star:at])
    return stitch + 1 if first and again else at


def _left(t: Sequence[Terminal], at: int) -> int:
    """Behind `leaving the scallop` where a row ends; else the same place."""
    if not t[at].text.startswith("leav") or t[at].type not in ("WITH", "UNKNOWN"):
        return at
    if at and t[at - 1].type not in ("SEP", "AND"):
        return at
    end = past(t, past(t, at + 1, *_LEFT), "LEAVE")
    made = any(x.type in NOUNS or x.type in ("UNKNOWN", "REST") for x in t[at + 1 : end])
    return end if made and only_ends(t[end:]) else at


def _missed(t: Sequence[Terminal], at: int) -> tuple[list[Terminal], int]:
    """`the double is passed over`, `making no stitch on the double`, `omit the double of the last
    row`: the skip, and the place behind it all."""
    if at and t[at - 1].type not in ("SEP", "AND", "LP"):
        return [], at
    here, stop = t[at], _stop(t, at)
    skip = like(here, "SKIP")
    no = at + (here.type == "WITH" and here.text in ("making", "with"))
    if t[no : no + 1] and t[no].text == "no" and types(t, no + 1, 2) == ["KIND", "PREP"]:
        if at and t[at - 1].type == "LP":
            return [as_remark(t[at:stop])], stop
        return [skip, *t[no + 3 : stop]], stop
    if here.type == "EXCEPT" and here.text == "omit the" and only_ends(t[stop:]):
        below = types(t, stop - 1, 1) == ["NOTHING"] and types(t, at + 1, 1) == ["STITCH"]
        return ([skip, like(here, "THE"), *t[at + 1 : stop]], stop) if below else ([], at)
    noun = past(t, at, "THE", "NUM")
    verb = next((n for n in range(noun, stop) if t[n].text in ("is", "are", "being")), stop)
    passive = types(t, verb + 1, 1) == ["SKIPPED"] or _passed(t, verb + 1)
    if verb == stop or not passive or types(t, noun, 1) not in (["STITCH"], ["KIND"], ["CH"]):
        return [], at
    return [skip, *t[at:verb]], stop


def _passed(t: Sequence[Terminal], at: int) -> bool:
    """Whether `passed over`, `passed by` stands here."""
    return [x.text for x in t[at : at + 1]] == ["passed"]


_BY_WORD = (_thus, _with_chain, counting, sentence, with_care)
_REMARKS = {
    **dict.fromkeys((*NOUNS, "SAME", "CENTRE"), ()),
    "LP": (
        _first,
        _bracketed,
        _claimed,
        _first_shown,
        bracketed_count,
        counted_times,
        in_all,
        middle_on,
        passed_over,
    ),
    "NUM": (_counted,),
    "THE": (are_left, middle_on, with_care),
    "CENTRE": (middle_on,),
    "OF": (of_which, middle_on),
    "AND": (one_over, passing_on),
    "SOON": (passing_on,),
    "NAMELY": (_which, one_under_each),
    "STRAY": (_which, *_BY_WORD),
    "WITH": (_which, _left, one_over, left_free, both_ends, *_BY_WORD),
    "UNKNOWN": (_left, left_free, both_ends, *_BY_WORD),
    "AS": (_for, for_space, to_form, *_BY_WORD),
    "EXCEPT": (_last_omitted,),
    "SKIP": (_last_omitted, both_ends),
    "NOTHING": (_taken_in, with_care),
    "REMARK": (_taken_in,),
    **dict.fromkeys(("ENDING", "CATCH", "UNITE"), (joined_to, with_care)),
}
"""What finds the place behind a remark that begins with a word of a sort; behind any other it is
told by the word itself."""
_MARKS = frozenset(",;.:-*")
"""No remark begins with one of these."""
_SAYS = (_missed, _round_left_out, _where_the_hook_goes, _hook_of_repeat, must_be)
"""What puts words that begin here in another way."""
