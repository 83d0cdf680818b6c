"""Terminals that stand together as one thing become one: `ch-5 space`, `3 times more`.

Each pass takes the terminals of a text and returns them nearer to the grammar. `PASSES`
has their order, and for each the words without which it changes nothing.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from msgspec.structs import replace

from border.text.framing.clauses import claims_said
from border.text.shaping import again
from border.text.shaping.after import after_each
from border.text.shaping.arches import arches
from border.text.shaping.between import (
    behind_between,
    between_behind,
    between_what,
    betweens,
    chains_after,
    chains_behind,
    each_and_between,
    in_turn,
    joined_on,
    picot_follows,
)
from border.text.shaping.between_steps import between_steps, off_together
from border.text.shaping.binding import bind_numbers
from border.text.shaping.caught import caught
from border.text.shaping.closings import (
    closed_with_more,
    closing_slips,
    joins,
    rounds,
)
from border.text.shaping.colours import behind_repeats, colours
from border.text.shaping.counted import counted_places, parts
from border.text.shaping.described import described
from border.text.shaping.each_again import with_more
from border.text.shaping.end_ones import on_the_end_ones
from border.text.shaping.joining import (
    BEHIND_COMMA,
    ands,
    articles,
    separators,
)
from border.text.shaping.listed_on import listed_on
from border.text.shaping.naming import (
    after_next,
    all_in_one,
    missed_before,
    orders,
    placed_in_brackets,
)
from border.text.shaping.nouns import unsaid
from border.text.shaping.on_runs import (
    begun_further_on,
    centre_as_named,
    centre_of_group,
    middle_of_several,
    on_the_centre,
    on_the_middle,
    over_more,
    times_on_each,
)
from border.text.shaping.parted import parted
from border.text.shaping.picots_shown import namely, ring_in_bracket
from border.text.shaping.places_first import (
    places_first,
    repeats_placed,
)
from border.text.shaping.same_place import (
    begun_same,
    first_same,
    of_the_same,
    same_again,
    the_same_in,
)
from border.text.shaping.sentences import (
    PLACE,
    begun,
    chains_placed,
    fastened,
    filled,
    next_first,
    worked_in,
)
from border.text.shaping.several_named import (
    counted_off,
    each_named,
)
from border.text.shaping.shared_out import on_both, shared_out
from border.text.shaping.start_chains import (
    first_of_which,
    start_chain_brackets,
)
from border.text.shaping.times_said import times_on_like
from border.text.shaping.together import one_in_each, worked_off
from border.text.shaping.widening import widened
from border.text.terminals import Terminal
from border.text.tree import Kind
from border.text.wording.missed import chains_over, missed_by_name, missing_every, under_chains
from border.text.wording.passing import (
    ARCHES,
    NOUNS,
    OPENS,
    WHICH,
    Pass,
    chains_at,
    pairs,
    turned,
    where,
)
from border.text.wording.picots_named import picots_named
from border.text.wording.rings import SHOWN, caught_back, rings
from border.text.wording.two_places import in_two_places, of_both_kinds

_Terminals = list[Terminal]


def shape(terminals: Sequence[Terminal]) -> tuple[_Terminals, list[Terminal]]:
    """The terminals as the grammar takes them, and the numbers that could go two ways."""
    return bind_numbers(turned(list(terminals), PASSES))


def _merged(
    terminals: _Terminals,
    rule: Callable[[Sequence[Terminal]], tuple[Terminal, int] | None],
    opens: frozenset[str],
) -> _Terminals:
    """Each place where the rule finds something put together: (the whole, how many it takes).

    `opens`: the words that such a thing can begin with.
    """
    found: _Terminals = []
    at = 0
    while at < len(terminals):
        whole = rule(terminals[at : at + _LONGEST]) if terminals[at].type in opens else None
        if whole is None:
            found.append(terminals[at])
            at += 1
        else:
            found.append(whole[0])
            at += whole[1]
    return found


_LONGEST = 20
"""No such thing is put together of more."""


def _as_one(parts: Sequence[Terminal], type_: str, number: int = 0) -> Terminal:
    text = parts[0].text
    for part in parts[1:]:
        text += f"-{part.text}" if part.glued else f" {part.text}"
    first, last = parts[0], parts[-1]
    return replace(
        first, type=type_, text=text, end=last.end, number=number, many=last.many, short=last.short
    )


def _types(terminals: Sequence[Terminal], first: str, *others: str) -> bool:
    if not terminals or terminals[0].type != first:  # mostly, and asked very often
        return False
    return [t.type for t in terminals[1 : len(others) + 1]] == list(others)


# --- how often, and from where ----------------------------------------------------


def _times_rule(t: Sequence[Terminal]) -> tuple[Terminal, int] | None:
    if _types(t, "NUM", "MORE", "TIMES") and not t[2].number:
        return _as_one(t[:3], "MORE", t[0].number), 3
    if _types(t, "NUM", "TIMES") and not t[1].number:
        number, taken = t[0].number, 2
    elif _types(t, "CROSS", "NUM"):
        number, taken = t[1].number, 2
    elif _types(t, "TIMES"):
        number, taken = t[0].number, 1
    elif len(t) > 1 and _types(t, "FROM") and t[1].type in ("STAR", "STARWORD"):
        return _as_one(t[:2], "FROMSTAR"), 2
    else:
        return None
    if taken < len(t) and t[taken].type in ("MORE", "INALL"):
        return _as_one(t[: taken + 1], t[taken].type, number), taken + 1
    return _as_one(t[:taken], "TIMES", number), taken


def _times(terminals: _Terminals) -> _Terminals:
    return _merged(terminals, _times_rule, frozenset({"NUM", "CROSS", "TIMES", "FROM"}))


# --- sites ------------------------------------------------------------------------


def _kind_rule(t: Sequence[Terminal]) -> tuple[Terminal, int] | None:
    first = t[0].type
    if _types(t, "CH", "NUM", "KIND") and t[2].kind in ARCHES and not t[2].chain:
        return _kind(t[:3], Kind("space", t[1].number)), 3
    if first == "CH" and _types(t, "CH", "KIND") and t[1].kind in ARCHES:
        return _kind(t[:2], t[1].kind), 2
    if _types(t, "KIND", "LP") and t[0].kind in ARCHES and not t[0].many and _sized_behind(t):
        return _kind(t[:5], Kind("space", chains_at(t, 2)[0])), 5  # `in loop (ch 5)`
    if _types(t, "NUM", "CH", "KIND") and t[2].kind in ARCHES and (t[1].glued or not t[2].many):
        return _kind(t[:3], Kind("space", t[0].number)), 3
    if first == "CH" and _types(t, "CH", "NUM", "PICOT") and t[1].glued:
        return _as_one(t[:3], "PICOT", t[1].number), 3
    if _types(t, "NUM", "KIND") and t[1].chain and (_sized(t) or not t[1].many):
        return _kind(t[:2], Kind("space", t[0].number)), 2
    if _types(t, "NUM", "CH", "PICOT") and t[1].glued:
        return _as_one(t[:3], "PICOT", t[0].number), 3
    if _types(t, "NUM", "STITCH", "KIND") and t[2].kind in _HEAPS:
        if t[1].glued or not t[2].many:
            return _kind(t[:3], replace(t[2].kind, size=t[0].number, stitch=t[1].name)), 3
    elif _types(t, "NUM", "STITCH", "CLUSTER") and (t[1].glued or not t[2].many):
        return replace(_as_one(t[:3], "CLUSTER", t[0].number), name=t[1].name), 3
    elif _types(t, "CLUSTER", "OF", "NUM", "STITCH"):
        return replace(_as_one(t[:4], "CLUSTER", t[2].number), name=t[3].name), 4
    elif _types(t, "KIND", "OF", "NUM") and t[0].kind in _HEAPS:
        stitch = t[3].name if _types(t[3:], "STITCH") else None
        taken = 4 if stitch else 3
        whole = _kind(t[:taken], replace(t[0].kind, size=t[2].number, stitch=stitch))
        return replace(whole, many=t[0].many), taken
    elif _types(t, "KIND", "OF", "NUM") and t[0].kind in ARCHES:
        if len(t) < 4 or t[3].type not in (*NOUNS, "FOUNDATION"):  # `under the loop of 7`
            return _kind(t[:3], Kind("space", t[2].number)), 3
    elif _types(t, "KIND", "OF", "CH", "NUM") and t[0].kind in ARCHES:
        if len(t) > 4 and t[4].type in ("STITCH", "PICOT", "CLUSTER"):
            return replace(_kind(t[:3], t[0].kind), many=t[0].many), 3  # `in the loop of ch 7 dc`
        return replace(_kind(t[:4], Kind("space", t[3].number)), many=t[0].many), 4
    elif _types(t, "KIND", "OF", "STITCH") and t[0].kind in _HEAPS[:2]:
        named = _kind(t[:3], replace(t[0].kind, stitch=t[2].name))
        return replace(named, many=t[0].many), 3
    elif _types(t, "PICOT", "LP") and chains_at(t, 2)[0] and (taken := ring_in_bracket(t)):
        ring = _as_one(t[:taken], "PICOT", chains_at(t, 2)[0])
        return replace(ring, name=SHOWN), taken
    elif _types(t, "PICOT", "OF", "NUM") and not (len(t) > 3 and t[3].glued):
        taken = 4 if _types(t[3:], "CH") else 3
        taken = caught_back(t, taken)
        return _as_one(t[:taken], "PICOT", t[2].number), taken
    return None


def _sized_behind(t: Sequence[Terminal]) -> bool:
    """Whether `(ch 5)`, `(5 ch)` stands behind a space here, and is not worked so many times."""
    chains = chains_at(t, 2)[0] > 0 and _types(t[4:], "RP")
    return chains and (len(t) < 6 or t[5].type in ("SEP", "RP", "AND"))


def _sized(t: Sequence[Terminal]) -> bool:
    """Whether a number is that of the chains: `3-chain spaces`, `1 chain spaces`."""
    return t[1].glued or t[0].number == 1


_HEAPS = (Kind("group"), Kind("block"), Kind("run"))


def _kind(parts: Sequence[Terminal], kind: Kind) -> Terminal:
    return replace(_as_one(parts, "KIND"), kind=kind)


def _kinds(terminals: _Terminals) -> _Terminals:
    opens = frozenset({"CH", "NUM", "CLUSTER", "KIND", "PICOT"})
    named = _merged(_spaces_counted(terminals), _kind_rule, opens)
    return _merged(named, _between_stitches_rule, frozenset({"KIND"}))


def _chains_of_rule(t: Sequence[Terminal]) -> tuple[Terminal, int] | None:
    """`9 chains of 5`, `in each of the chains of 5`: the spaces of so many chains."""
    if not _types(t, "CH", "OF", "NUM") or not t[0].text.endswith("s"):
        return None
    return replace(_kind(t[:3], Kind("space", t[2].number)), many=True), 3


def _chains_of(terminals: _Terminals) -> _Terminals:
    return _merged(terminals, _chains_of_rule, frozenset({"CH"}))


def _between_stitches_rule(t: Sequence[Terminal]) -> tuple[Terminal, int] | None:
    """`ch-3 space between [the 2] dc`: the space with dc on both sides of it."""
    kind, at = t[0].kind, 2
    if kind is None or kind.name not in ("space", "loop") or not (kind.size or t[0].chain):
        return None
    if not _types(t[1:], "BETWEEN"):
        return None
    at += _types(t[at:], "THE")
    at += _types(t[at:], "NUM") and t[at].number == 2
    if not _types(t[at:], "STITCH"):
        return None
    whole = _kind(t[: at + 1], Kind("space", kind.size, t[at].name))
    return replace(whole, many=t[0].many, chain=False), at + 1


def _spaces_counted(terminals: _Terminals) -> _Terminals:
    """`a chain space`, `one chain loop`, `skip 1 chain space`: one of them, not of one chain."""
    found: list[Terminal] = []
    for n, here in enumerate(terminals):
        two = [x.type for x in found[-2:]] == ["NUM", "NUM"]
        if two and (here.chain or (here.type == "CH" and _types(terminals[n + 1 :], "KIND"))):
            here = replace(here, glued=True)  # `each of the three 5 ch loops`
        one = bool(found) and found[-1].type == "NUM" and found[-1].number == 1
        if one and here.chain and not (here.many or here.glued):
            leads = [x.type for x in found[-4:-1] if x.type not in ("THE", "NEXT")]
            if found[-1].text in ("a", "an", "one") or leads[-1:] == ["SKIP"]:
                here = replace(here, chain=False)
        found.append(here)
    return found


def _each_rule(t: Sequence[Terminal]) -> tuple[Terminal, int] | None:
    if _types(t, "EACH", "OTHER"):
        return _as_one(t[:2], "EVERY", 2), 2
    if _types(t, "EACH", "ORD") and t[1].number > 0:
        return _as_one(t[:2], "EVERY", t[1].number), 2
    if _types(t, "EACHOF", "THE") and len(t) > 2 and t[2].type in NOUNS:
        return _as_one(t[:2], "EACH"), 2
    if _types(t, "ALL", "PREP"):
        return _as_one(t[:2], "ALLIN"), 2
    return None


def _each(terminals: _Terminals) -> _Terminals:
    return _merged(terminals, _each_rule, frozenset({"EACH", "EACHOF", "ALL"}))


def _between_rule(t: Sequence[Terminal]) -> tuple[Terminal, int] | None:
    """`with ch 2 between [each]`, `divided by 2 ch`: the chains between, as one."""
    if t[0].type not in ("WITH", "DIVIDED"):
        return None
    number, at = 1, 1
    if _types(t[1:], "CH", "NUM"):
        number, at = t[2].number, 3
    elif _types(t[1:], "NUM", "CH", "OF", "NUM") and t[1].number == 1:
        number, at = t[4].number, 5  # `with a chain of three between`
    elif _types(t[1:], "NUM", "CH"):
        number, at = t[1].number, 3
    elif _types(t[1:], "CH"):
        at = 2
    if at == 1:
        return None
    if t[0].type == "WITH":
        if not _types(t[at:], "BETWEEN"):
            return None
        start = at + 1
        at = behind_between(t, start)
        return between_what(_as_one(t[:at], "BETW", number), t[start:at]), at
    if picot_follows(t, at):
        return None
    return replace(_as_one(t[:at], "BETW", number), name="divided"), at


def _between(terminals: _Terminals) -> _Terminals:
    return _merged(terminals, _between_rule, frozenset({"WITH", "DIVIDED"}))


PASSES: tuple[Pass, ...] = (
    where(colours, "COLOUR MOD"),
    where(arches, "ENDING"),
    where(behind_repeats, "MOD"),
    where(worked_off, "KEEPING DRAWING TOGETHER"),
    where(one_in_each, "TOGETHER"),
    where(filled, "FILL ENDST"),
    where(picots_named, "CH-PICOT PICOT-CH STITCH-PICOT"),
    where(namely, "NAMELY PICOT-LP PICOT-OF PICOT-SEP"),
    where(first_of_which, "AS"),
    where(_times, "CROSS-NUM TIMES FROM-STAR FROM-STARWORD"),
    where(_chains_of, "CH-OF"),
    where(
        _kinds,
        "CH-KIND NUM-KIND STITCH-KIND KIND-LP KIND-OF KIND-BETWEEN STITCH-CLUSTER CLUSTER-OF "
        "NUM-PICOT CH-PICOT PICOT-LP PICOT-OF",
    ),
    where(claims_said, "WITH NUM-KIND"),
    where(rounds, "ROUND"),
    where(times_on_each, "TIMES-PREP"),
    where(times_on_like, "TIMES MORE"),
    where(missed_before, "KIND-SKIPPED CH-SKIPPED STITCH-SKIPPED PICOT-SKIPPED NUM-SKIPPED"),
    where(of_the_same, "ORD-OF STITCH-OF", "SAME"),
    where(each_named, "ORD-SEP ORD-AND", "PREP"),
    where(counted_off, "ORD-ORD ORD-SEP ORD-AND ORD-THE"),
    where(next_first, "NEXT-NUM"),
    where(
        orders,
        "CENTRE-NUM NUM-CENTRE NUM-OF ORD-NUM EACH-NUM NEXT-NUM NUM-NEXT NUM-ORD NUM-MORE ORD-NEXT "
        "STITCH-NEXT "
        "TO-EACH TO-EVERY KIND-MORE STITCH-MORE CH-MORE PICOT-MORE EACHOF OTHER INALL ALL BUT",
    ),
    where(_each, "EACH-OTHER EACH-ORD EACHOF-THE ALL-PREP"),
    where(with_more, "WITH", "EACH"),
    where(between_steps, "BETWEEN DIVIDED", "CH"),
    where(joined_on, "BETWEEN"),
    where(each_and_between, "BETWEEN"),
    where(caught, "ATONCE TOGETHER UNITE PUTHOOK ENDING CATCH"),
    where(listed_on, "NUM-PREP", "EACHOF", "SEP"),
    where(shared_out, "STITCH-SEP STITCH-LP", "NUM-PREP KIND-PREP STITCH-PREP"),
    where(on_both, "STITCH-PREP", "AND"),
    where(same_again, "STRAY NUM-PREP KIND-PREP"),
    where(off_together, "ALLTOGETHER TOGETHER"),
    where(placed_in_brackets, "LP-ALLIN LP-PREP LP-BETWEEN"),
    where(all_in_one, "ALLIN", "SAME"),
    where(on_the_end_ones, "ORD-NUM", "NUM-OF STITCH-OF KIND-OF CH-OF"),
    where(described, "ATEND BETWEEN PREP OF"),
    where(parted, "WITH DIVIDED BETWEEN"),
    where(after_next, "AFTER", "NEXT"),
    where(chains_after, "AFTER-EACH"),
    where(after_each, "AFTER BETWEEN CENTRE"),
    where(of_both_kinds, "AND"),
    where(in_two_places, "AND"),
    where(in_turn, "EVERY"),
    where(chains_behind, "BETWEEN"),
    where(betweens, "BETWEEN"),
    where(rings, "CH", "PICOT ORD SAME PREP-STITCH PREP-THE TO-STITCH TO-THE"),
    where(middle_of_several, "CENTRE"),
    where(centre_of_group, "CENTRE-OF", "STITCH"),
    where(on_the_middle, "CENTRE"),
    where(on_the_centre, "CENTRE-OF", "STITCH-PREP"),
    where(over_more, "PREP-NUM THE-NUM NEXT-NUM"),
    where(centre_as_named, "CENTRE-STITCH", "STITCH-OF CENTRE-OF"),
    where(counted_places, pairs(OPENS | WHICH | {"TO"}, *NOUNS, "NUM") + " CH-OF KIND-OF"),
    where(parts, "ORD-OF"),
    where(begun, "ENDING BEGIN TO TOLAST PREP"),
    where(worked_in, "PREP-STITCH STITCH-TOEND STITCH-SEP"),
    where(fastened, "ENDING CATCH WITH SAME BUT"),
    where(chains_over, "CH-PREP"),
    where(under_chains, "SKIP UNDERIT", "UNDERIT PREP"),
    where(missing_every, "SKIP-EACH SKIP-THE"),
    where(missed_by_name, "SKIP", "SKIP-THE NUM-OF CH-OF KIND-OF NUM-NUM"),
    where(chains_placed, "CH-PREP SEP-PREP", "STITCH-SEP STITCH-AND"),
    where(begun_further_on, "BEGIN-PREP ORD-PREP ORD-NUM", "NUM-STITCH"),
    where(unsaid, pairs(OPENS | WHICH, "NUM", "NEXT", "EACH", "ORD", "EVERY")),
    where(articles, "THE"),
    where(_between, "WITH DIVIDED"),
    where(between_behind, "BETWEEN AFTER"),
    where(closing_slips, "ORD ENDWITH KIND", "STITCH"),
    where(closed_with_more, "ENDING-WITH ENDING-TO ENDING-PREP", "WITH"),
    where(joins, "ENDING"),
    where(
        start_chain_brackets,
        "EQUALS LP-AS LP-NOTCOUNTED CH-LP NUM-LP SKIP-ORD SKIP-THE",
    ),
    where(ands, "AND"),
    where(widened, "WIDEN NARROW EVERY"),
    where(repeats_placed, "FROMSTAR", "PREP", pairs(PLACE | NOUNS, "STAR")),
    where(places_first, "-PREP SEP-PREP STAR-PREP LP-PREP -ALLIN STAR-ALLIN LP-ALLIN"),
    where(the_same_in, "SAME-PREP NUM-PREP"),
    where(first_same, "SAME"),
    where(begun_same, "SAME", "REPEAT SOON"),
    *again.PASSES,
    where(separators, "BETW-SEP " + pairs({"SEP"}, "SEP", "MOD", "PREP", *BEHIND_COMMA)),
)
