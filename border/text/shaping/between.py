"""What stands between, and between which: `3 chain between each`, `between the 1st and 2nd`."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from msgspec.structs import replace

from border.text.terminals import Terminal
from border.text.tree import Kind
from border.text.wording.passing import (
    ARCHES,
    NOUNS,
    Terminals,
    ended,
    is_stop,
    like,
    past,
    stops,
    types,
)
from border.text.wording.two_places import TWO_KINDS


def joined_on(t: Terminals) -> Terminals:
    """`…; and four chain between`, `…; with 4 chain between`: they are of the step before them."""
    found: Terminals = []
    for n, here in enumerate(t):
        stands = found[-1] if found else here
        parted = is_stop(stands)
        step = past(t, n, "AND", "WITH")
        chains = sorted(types(t, step, 2)) == ["CH", "NUM"] and types(t, step + 2, 1) == ["BETWEEN"]
        leads = types(t, step, 1) == ["BETWEEN"] and _chains_end(t, step)
        if parted and (leads or (chains and step > n)) and here.type in ("AND", "WITH", "BETWEEN"):
            found[-1] = replace(stands, name="")
            if here.type == "AND":
                continue
        found.append(here)
    return found


def _chains_end(t: Sequence[Terminal], at: int) -> bool:
    """Whether `between the loops` has chains behind it, and no more."""
    stop = next((n for n in range(at, len(t)) if t[n].type in ("SEP", "RP", "REPEAT")), len(t))
    return sorted(types(t, stop - 2, 2)) == ["CH", "NUM"] and stop - 2 > at


HOLE = "hole"
"""The name of a place between two that is called a hole, or a space."""


FIRST_TWO = "first two"
"""The name of a place between the first and the second of what may stand in groups."""
_PAIR = 7
"""So many words name the two that something lies between."""
EACH_PAIR = "each pair"
"""The name of a place between each two of a stitch that may stand in pairs."""
UNSAID = "unsaid"
"""The name of a place between two of what is not said."""


def betweens(t: Terminals) -> Terminals:
    """`between the 1st and 2nd treble`, `in the space between the treble`: between the next 2;
    between the 2nd and 3rd, the 2nd pair."""
    found: Terminals = []
    at = 0
    while at < len(t):
        here = t[at]
        space = here.type == "KIND" and here.kind in ARCHES and found and types(t, at + 1, 1)
        if space == ["BETWEEN"] and found[-1].type in ("PREP", "THE"):
            while found and found[-1].type in ("PREP", "THE"):
                found.pop()
            t = [*t[: at + 1], replace(t[at + 1], name=t[at + 1].name or HOLE), *t[at + 2 :]]
            at += 1
            continue
        found.append(here)
        at += 1
        middle, end = _middle_pair(t, at) if here.type == "BETWEEN" else ([], at)
        if middle:
            found[-1:] = middle
            at = end
        elif here.type == "BETWEEN" and here.name != TWO_KINDS and not _of_chains(found[:-1]):
            if _of_a_group(t, at):
                found[-1] = replace(here, name="pair")
            elif _of_each_pair(t, at):
                found[-1] = replace(here, name=EACH_PAIR)
            if _of_a_run(t, at):
                found[-1] = replace(here, name="gap")
            first_two = types(t, past(t, at, "THE"), 3) == ["ORD", "AND", "ORD"]
            first_two = first_two and t[past(t, at, "THE")].number == 1
            if first_two and "OF" not in types(t, at, _PAIR) and not found[-1].name:
                found[-1] = replace(here, name=FIRST_TWO)  # `between the 1st and 2nd treble`
            two = past(t, at, "THE", "NEXT")
            first = all(x.type != "BETWEEN" for x in found[:-1])
            if first and types(t, two, 1) == ["NUM"] and t[two].number == 2 and ended(t, two + 1):
                found[-1] = replace(here, name=UNSAID)  # `1 dc between the two`
            which, at = _pair(t, at)
            found += which
    return found


def _of_a_run(t: Sequence[Terminal], at: int) -> bool:
    """Whether it is between the 1st and 2nd of so many more."""
    first = past(t, at, "THE")
    of = past(t, first + 3, "STITCH")
    more = past(t, of + 1, "THE", "NEXT")
    orders = types(t, first, 3) == ["ORD", "AND", "ORD"] and types(t, of, 1) == ["OF"]
    return orders and types(t, more, 1) == ["NUM"] and t[more].number > 2


def _middle_pair(t: Sequence[Terminal], at: int) -> tuple[Terminals, int]:
    """`the 2nd and 3rd treble of the next 4`: the centre of these, and the place behind it all."""
    two = past(t, at, "THE")
    if types(t, two, 3) == ["NUM", "CENTRE", "STITCH"] and t[two].number == 2:
        here, stitch = t[at - 1], t[two + 2]  # `between the two middle treble [of the 8]`
        of = past(t, two + 4, "THE") if types(t, two + 3, 1) == ["OF"] else len(t)
        size = t[of].number if types(t, of, 1) == ["NUM"] else 0
        end = past(t, of + 1, "STITCH") if size else two + 3
        if not ended(t, end) or size % 2:
            return [], at
        kind = Kind("group", size or None, stitch.name)
        group = replace(stitch, type="KIND", kind=kind, many=False)
        middle = [like(here, "PREP"), like(here, "CENTRE"), like(here, "OF"), like(here, "NEXT")]
        return [*middle, group], end
    words = [(n, x) for n, x in enumerate(t) if at <= n < at + 10 and x.type not in _WHICH_OF]
    kinds = [x.type for _, x in words]
    named = kinds[3:4] == ["STITCH"]
    whole = words[4 + named :]
    if kinds[:3] != ["ORD", "AND", "ORD"] or kinds[3 + named :][:1] != ["OF"]:
        return [], at
    first, last = words[0][1].number, words[2][1].number
    if kinds[4 + named :][:1] == ["KIND"] and 1 < first == last - 1:
        return _in_middle(t, at, first, words[3 + named][0], whole[0][0], words[3][1])
    if kinds[4 + named :][:1] != ["NUM"]:
        return [], at
    (of, count), end = whole[0], whole[0][0] + 1
    behind = end < len(t) and t[end].type == "STITCH"
    if (not named and not behind) or not (0 < first == last - 1 == count.number - first):
        return [], at
    noun = t[end] if behind else words[3][1]
    end += behind
    if not ended(t, end):
        return [], at
    here = t[at - 1]
    next_ = [x for x in t[at:of] if x.type == "NEXT"] or [like(here, "THE")]
    return [like(here, "PREP"), like(here, "CENTRE"), like(here, "OF"), *next_, count, noun], end


_WHICH_OF = frozenset({"THE", "NEXT", "EACH", "SAME"})


def _in_middle(
    t: Sequence[Terminal], at: int, half: int, of: int, noun: int, stitch: Terminal
) -> tuple[Terminals, int]:
    """`the 2nd and 3rd treble of each shell`: the centre of a group of just 4."""
    kind = t[noun].kind
    chains = stitch.type == "STITCH" and kind in ARCHES  # of the stitches worked over it
    heap = kind is not None and (chains or kind.name in ("group", "shell", "block"))
    if kind is None or not heap or not ended(t, noun + 1):
        return [], at
    name = "block" if kind.name == "block" else "group"
    named = stitch.name if stitch.type == "STITCH" else None
    whole = replace(t[noun], kind=Kind(name, 2 * half, named or None))
    here = t[at - 1]
    which = [x for x in t[of + 1 : noun] if x.type != "THE"] or [like(here, "THE")]
    middle = [like(here, "PREP"), like(here, "CENTRE"), like(here, "OF"), *which, whole]
    return middle, noun + 1


def _of_a_group(t: Sequence[Terminal], at: int) -> bool:
    """Whether `the 2 treble`, `treble`, `the 2nd and 3rd treble` may be those of a group; a second
    pair in the row is asked where it is counted from."""
    two = past(t, at, "THE")
    stitches = types(t, two, 2) in (["NUM", "STITCH"], ["NUM", "PICOT"]) and t[two].number == 2
    ordered = types(t, two, 4) == ["ORD", "AND", "ORD", "STITCH"] and t[two].number > 1
    ordered = ordered and all(x.type != "ORD" for x in t[:at])
    next_ = types(t, two, 1) == ["NEXT"]  # `between the next 2 picots`
    stitches |= next_ and types(t, two + 1, 2) == ["NUM", "PICOT"] and t[two + 1].number == 2
    picots = types(t, two, 1) == ["PICOT"] and t[two].text.endswith("s")  # `between the picots`
    if picots or types(t, two, 1) == ["STITCH"]:  # `between d c`
        return ended(t, two + 1)
    return (stitches and ended(t, two + 2 + next_)) or (ordered and ended(t, two + 4))


def _of_each_pair(t: Sequence[Terminal], at: int) -> bool:
    """Whether it is between `every 2 treble`, `the next two treble`."""
    which = past(t, at, "THE")
    two = types(t, which, 3) in (["EACH", "NUM", "STITCH"], ["NEXT", "NUM", "STITCH"])
    return two and t[which + 1].number == 2 and ended(t, which + 3)


def _of_chains(before: Sequence[Terminal]) -> bool:
    """Whether chains stand right before: `3 chain between …` is no place."""
    return "CH" in types(before, max(0, len(before) - 2), 2)


def _pair(t: Sequence[Terminal], at: int) -> tuple[Terminals, int]:
    """What says between which two, as the grammar has it, and where its noun stands."""
    named = at + (types(t, at, 1) == ["THE"])
    if named >= len(t):
        return [], at
    here = t[named]
    two = like(here, "NUM", number=2)
    if types(t, named, 3) == ["EACH", "NUM", "STITCH"] and t[named + 1].number > 2:
        sized = Kind("group", t[named + 1].number, t[named + 2].name)  # `between each 7 long`
        return [like(here, "EACH"), two, replace(t[named + 2], type="KIND", kind=sized)], named + 3
    if types(t, named, 3) == ["NUM", "PICOT", "OF"] and here.number == 2:
        return [], named + 1  # `between the 2 picots of next loop`
    if here.type == "EACH" and types(t, named + 1, 1) in (["KIND"], ["STITCH"], ["PICOT"]):
        return [like(here, "EACH"), two], named + 1
    if types(t, named, 3) == ["ORD", "AND", "ORD"] and named + 3 < len(t):
        follows = 0 < here.number == t[named + 2].number - 1
        # `the 1st and 2nd of the 12 dc`
        noun = past(t, named + 3, "OF", "THE", "NUM")
        if types(t, noun, 1) == [] or t[noun].type not in NOUNS or not follows:
            return [], at
        if here.number > 1:  # the point behind that many
            return [here, like(here, "PAIR"), like(here, "OF")], noun
        return [like(here, "NEXT"), two], noun
    of = past(t, named + 1, "OF", "THE")
    if here.type == "PAIR" and here.text == "pairs" and types(t, of, 1) == ["STITCH"]:
        pair = Kind("group", 2, t[of].name)  # `between the pairs of dc`
        return [like(here, "NEXT"), two, like(t[of], "KIND", pair)], of + 1
    if here.type == "NEXT" and named + 1 < len(t) and _many(t[named + 1]):
        return [here, two], named + 1  # `between the next groups`
    if types(t, named, 3) in (["STITCH", "AND", "CH"], ["STITCH", "AND", "STITCH"]):
        other = past(t, named + 2, "THE")
        if ended(t, other + 1):  # `between dc and ch`: no two of a kind
            return [], at
    if here.type == "STITCH" or _many(here):
        of = types(t, named, 2) == ["PICOT", "OF"]
        return ([], at) if of else ([like(here, "NEXT"), two], named)
    return [], at


def _many(here: Terminal) -> bool:
    return (here.type == "KIND" and here.many) or (here.type == "PICOT" and here.text.endswith("s"))


def in_turn(t: Terminals) -> Terminals:
    """`3 dc in every other loop, 1 dc in the loops between`: in the next, and in the next."""
    first = next((n for n, x in enumerate(t) if x.type == "EVERY" and x.number == 2), 0)
    kind = t[first + 1].kind if 0 < first < len(t) - 1 else None
    for n in range(first + 2, len(t)):
        noun = n + 1 + (types(t, n + 1, 1) == ["THE"])
        said = t[n].type == "PREP" and types(t, noun, 2) == ["KIND", "BETWEEN"]
        if not said or kind is None or t[noun].kind != kind or not ended(t, noun + 2):
            continue
        next_ = [like(t[n], "NEXT")]
        steps = [*t[:first], *next_, *t[first + 1 : n + 1], *next_, t[noun]]
        rest = t[noun + 2 :]
        again = [] if any(x.type == "REPEAT" for x in rest) else [like(t[n], "REPEAT")]
        return [*steps, like(t[n], "SEP", name="hard"), *again, *rest]
    return t


def chains_behind(t: Terminals) -> Terminals:
    """`, between each treble 2 chain`: chains, and what they part."""
    return _with_chains_first(t, lambda at: t[at].type == "BETWEEN" and _behind_them(t, at))


def chains_after(t: Terminals) -> Terminals:
    """`, after each 4 chain`, `, after each treble 1 chain`: chains, and what they stand behind."""

    def chains(at: int) -> int | bool:
        noun = at + 2
        return types(t, at, 2) == ["AFTER", "EACH"] and noun + (types(t, noun, 1) == ["STITCH"])

    return _with_chains_first(t, chains)


def _behind_them(t: Terminals, at: int) -> int:
    return past(t, behind_between(t, at + 1), "SEP")


def _with_chains_first(t: Terminals, chains_at: Callable[[int], int | bool]) -> Terminals:
    """The chains before what says where they stand; `chains_at`: where they stand behind it."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        chains = types(found, len(found) - 1, 1) in _LEADS and chains_at(at)
        made = chains > at + 1 and types(t, chains, 2) == ["NUM", "CH"] and ended(t, chains + 2)
        if made and not picot_follows(t, chains + 2):
            if t[at].type == "AFTER" and found[-1].type == "AND":
                comma = types(found, len(found) - 2, 1) == ["SEP"]
                found[-1:] = [] if comma else [replace(like(found[-1], "SEP"), text=",")]
            found += [*t[chains : chains + 2], *t[at:chains]]
            at = chains + 2
            continue
        found.append(t[at])
        at += 1
    return found


def picot_follows(t: Sequence[Terminal], at: int) -> bool:
    """Whether more stands between than chains: `between each 3 chain, a picot, and 3 chain`."""
    picot = past(t, past(t, at, "SEP", "AND"), "NUM")
    return picot > at and types(t, picot, 1) == ["PICOT"]


_LEADS = (["SEP"], ["AND"], ["WITH"])


def each_and_between(t: Terminals) -> Terminals:
    """`7 dc in each space, with 1 sc on the sc between`, `…, with 1 sc between each`: both as
    they come."""
    for n, here in enumerate(t):
        if here.type != "EACH" or types(t, n - 1, 1) != ["PREP"]:
            continue
        sized = types(t, n + 1, 2) == ["NUM", "CH"]
        end = n + 2 + sized
        noun = t[n + 1] if t[n + 1 : end] else here
        noun = like(noun, "KIND", Kind("space", noun.number)) if sized else noun
        start = n - 2 - (types(t, n - 3, 2) == ["NUM", "STITCH"])
        alone = types(t, n - 2, 1) == ["STITCH"] and _opens_list(t, start)
        if noun.type not in NOUNS or not alone:
            continue
        second, behind = _between_these(t, past(t, end, "SEP", "AND", "WITH"), noun)
        if not second or past(t, behind, "SEP", "ENDING") < len(t):
            continue
        left, right = like(t[start], "LP"), like(t[behind - 1], "RP")
        place = [*t[n - 1 : n + 1], noun]
        both = [left, *t[start : n - 1], *place, like(here, "SEP"), *second, right]
        return [*t[:start], *both, like(here, "COME"), *t[behind:]]
    return t


def _opens_list(t: Sequence[Terminal], at: int) -> bool:
    """Whether a step is the first of its list: only words like `work` stand before it."""
    while at and t[at - 1].type == "SEP" and not t[at - 1].name:
        at -= 1
    return at == 0 or stops(t[at - 1])


def _between_these(t: Sequence[Terminal], at: int, noun: Terminal) -> tuple[Terminals, int]:
    """`1 sc on the sc between [them]`, `1 sc between each`, and the place behind it."""
    uniting = types(t, at, 3) == ["UNITE", "BETWEEN", "EACH"] and types(t, at + 3, 1) == ["WITH"]
    stitch = at + 4 if uniting else at
    end = stitch + (types(t, stitch, 1) == ["NUM"]) + 1
    if types(t, end - 1, 1) != ["STITCH"]:
        return [], at
    here, made = t[end - 1], list(t[stitch:end])
    gap = [like(here, "BETWEEN"), like(here, "EACH"), like(here, "NUM", number=2), noun]
    if uniting:
        return [*made, *gap], end
    on = past(t, end + 1, "THE") if types(t, end, 1) == ["PREP"] else end
    named = on > end and on < len(t) and t[on].type in NOUNS
    between = on + 1 if named else end
    if types(t, between, 1) != ["BETWEEN"]:
        return [], at
    behind = past(t, between + 1, "THEM", "THE", "EACH", "NUM")
    behind += behind < len(t) and t[behind].type in NOUNS
    if not ended(t, behind):
        return [], at
    where = [like(here, "PREP"), like(here, "EACH"), t[on]] if named else gap
    return [*made, *where], behind


_ENDS = frozenset({"", "SEP", "RP", "REPEAT", "STAR", "PREP", "ENDING"})


def between_behind(t: Terminals) -> Terminals:
    """`1 treble in each stitch, 1 chain between [each]`: as `with 1 chain between`."""
    found: Terminals = []
    at = 0
    while at < len(t):
        taken = _between_at(t, at)
        before = found[-1].type if found else ""
        if taken and before not in ("WITH", "DIVIDED"):
            number = next((x.number for x in t[at : at + 2] if x.type == "NUM"), 1)
            last = all(x.type in ("SEP", "ENDING") for x in t[at + taken :])
            if before == "SEP" and (last or not found[-1].name):
                found.pop()
            words = t[at : at + taken]
            start, end = min(x.start for x in words), max(x.end for x in words)
            whole = replace(t[at], type="BETW", number=number, start=start, end=end)
            found.append(between_what(whole, words))
            at += taken
            continue
        found.append(t[at])
        at += 1
    return found


def _between_at(t: Sequence[Terminal], at: int) -> int:
    """How many terminals are `3 chain between [each]`, with no place behind; 0 if none."""
    pair = types(t, at, 2)
    taken = 2 if pair in (["NUM", "CH"], ["CH", "NUM"]) else 1 if pair[:1] == ["CH"] else 0
    between = types(t, at + taken, 1) == ["BETWEEN"]
    after = types(t, at + taken, 2) == ["AFTER", "EACH"]
    if not taken or not (between or after):
        return 0
    taken = behind_between(t, at + taken + 1) - at
    behind = t[at + taken].type if at + taken < len(t) else ""
    return taken if behind in _ENDS else 0


def between_what(chains: Terminal, words: Sequence[Terminal]) -> Terminal:
    """Chains with what the words behind `between` name, and in groups of how many, as its kind;
    its name says whether they are between `each` of these."""
    start = next((n + 1 for n, x in enumerate(words) if x.type in ("BETWEEN", "AFTER")), 0)
    named = words[start + (types(words, start, 2) == ["NUM", "STITCH"]) :]  # `the 2 treble`
    noun = next((x for x in named if x.type in ("STITCH", "KIND")), None)
    size = next((x.number for x in named if x.type == "NUM"), None)
    kind = noun.kind or Kind(noun.name) if noun is not None else None
    if kind is None and any(x.type == "THEM" for x in named):
        kind = Kind("st")  # `between them`: the stitches
    if any(x.type == "PAIR" for x in named):
        size = 2
    if size is not None:
        kind = Kind("group", size)
    each = any(x.type == "EACH" for x in named)
    return replace(chains, kind=kind, name="each" if each else "")


def behind_between(t: Sequence[Terminal], at: int) -> int:
    """Behind the `each treble`, `them`, `the stitches` of `with 1 chain between …`."""
    if types(t, at, 2) == ["EACH", "NUM"] and types(t, at + 2, 1) != ["CH"]:  # `between every 3`
        noun = at + 2  # `between every two`, `each two treble`
        return noun + (noun < len(t) and t[noun].type in NOUNS)
    if types(t, at, 2) == ["NUM", "STITCH"] and ended(t, at + 2):
        return at + 2  # `between the 2 treble`
    noun = at + (types(t, at, 1) in (["EACH"], ["THE"]))
    if noun > at and types(t, noun, 1) == ["PAIR"]:
        of = past(t, noun + 1, "OF", "THE")
        return past(t, of, "STITCH", "THEM") if of > noun + 1 else noun + 1
    if noun < len(t) and t[noun].type in NOUNS:
        said = noun > at or t[noun].type == "STITCH" or _many(t[noun])
        return noun + 1 if said else at
    return at + (types(t, at, 1) in (["EACH"], ["THEM"]))
