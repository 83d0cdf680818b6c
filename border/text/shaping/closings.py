"""Where a round is closed: `join with sl st to first sc`, `ending with 1 sl st on the first`."""

from __future__ import annotations

from msgspec.structs import replace

from border.text.shaping.joining import DETERMINERS, LIST_MARKS
from border.text.terminals import Terminal
from border.text.tree import Kind
from border.text.wording.passing import (
    ARCHES,
    HOW_OFTEN,
    NOUNS,
    chains_at,
    ended,
    goes_on,
    like,
    past,
    types,
)


def joins(terminals: list[Terminal]) -> list[Terminal]:
    """`join with sl st to first sc` is `join`: where it joins makes no difference.

    At the head of a text it may be the joining of new thread, and stands.
    """
    found: list[Terminal] = []
    swallowing = False
    for n, terminal in enumerate(terminals):
        if swallowing and not _parts(terminal):
            continue
        swallowing = False
        if terminal.text == "fasten" and _closes_on_first(terminals, n + 1):
            terminal = replace(terminal, name="join")
        found.append(terminal)
        if terminal.type == "ENDING" and terminal.name == "join":
            behind = terminals[n + 1].type if n + 1 < len(terminals) else ""
            head = all(t.type == "SEP" for t in terminals[:n])
            inside = "REPEAT" not in [t.type for t in terminals[:n]] and goes_on(terminals, n + 1)
            last = behind == "ORD" and terminals[n + 1].number == -1  # `joining the last 3 ch to`
            swallowing = not head and not inside and (behind in ("WITH", "TO", "PREP") or last)
            swallowing = swallowing and not _over_and_over(terminals, n)
            if swallowing and last:
                found[-1:] = [*_last_chains(terminals[: n + 4], n), terminal]
            if swallowing:
                end = next((i for i in range(n + 1, len(terminals)) if _parts(terminals[i])), None)
                found[-1] = replace(terminal, number=_chain_of_head(terminals[n + 1 : end]))
    return found


def _over_and_over(t: list[Terminal], at: int) -> bool:
    """Whether a row joins after each of its steps: `9 dc in each loop, joining with 1 sl st on
    each sc`, `joining with 1 sc on the sc`, and no more than once."""
    end = next((n for n in range(at + 1, len(t)) if _parts(t[n])), len(t))
    before = {x.type for x in t[:at]}
    words = [x.type for x in t[at:end]]
    named = [x.name for x in t[at:end] if x.type == "STITCH"]
    on_its_like = words[-2:] == ["THE", "STITCH"] and named.count(named[-1]) > 1
    again = bool(_EACH & before) and "REPEAT" not in before
    return bool(_EACH & set(words)) or (again and on_its_like)


_EACH = frozenset({"EACH", "EVERY"})


def closed_with_more(t: list[Terminal]) -> list[Terminal]:
    """`repeat; join with 2 ch, 1 tr in first dc`: these chains and that treble are made, and are
    the last loop; `join with 5 ch to first dc`: so are these; so is `join to the first dc by a
    treble`. One low stitch only closes it."""
    repeat = next((n for n, x in enumerate(t) if x.type == "REPEAT"), len(t))
    made = next((n for n, x in enumerate(t) if x.type in ("STITCH", "CH")), len(t))
    for n in range(made, len(t)):
        if t[n].type != "ENDING" or t[n].name != "join" or (n < repeat and goes_on(t, n + 1)):
            continue
        stop = like(t[n], "SEP", name="hard")
        with_ = next((i for i in range(n + 1, len(t)) if t[i].type in ("WITH", "SEP")), len(t))
        if types(t, with_, 1) != ["WITH"]:
            continue
        chains, behind = chains_at(t, with_ + 1)
        to = types(t, behind, 1) in (["TO"], ["PREP"])
        if chains and to and with_ == n + 1:
            return [*t[:n], stop, *t[n + 2 : behind], stop, *t[n : n + 1], *t[behind:]]
        stitch = with_ + 1 + (types(t, with_ + 1, 1) == ["NUM"])
        tall = types(t, stitch, 1) == ["STITCH"] and t[stitch].name not in ("ss", "sc")
        if (chains and with_ == n + 1 and n > repeat) or tall:
            place = [like(x, "PREP") if x.type == "TO" else x for x in t[n + 1 : with_]]
            rest = t[with_ + 1 :]
            if tall and with_ == n + 1 and types(t, stitch + 1, 1) == ["TO"]:
                rest[stitch - with_] = like(t[stitch + 1], "PREP")
            return [*t[:n], stop, *rest[: stitch - with_], *place, *rest[stitch - with_ :]]
    return t


def _last_chains(t: list[Terminal], at: int) -> list[Terminal]:
    """The chains of `* 5 chain, 1 long in next loop; repeat, joining the last 5 chain to …`: they
    are those of a repeat that goes no further; none where they are the last step of each."""
    star = max((n for n in range(at) if t[n].type == "STAR"), default=-1)
    repeat = next((n for n in range(star + 1, at) if t[n].type == "REPEAT"), 0)
    chains = t[at + 2 : at + 4]
    named = chains[0].kind if chains else None
    if named is not None and named.name == "space" and named.size:  # `joining last ch 6 to`
        number = like(chains[0], "NUM", number=named.size)
        chains = [number, replace(like(chains[0], "CH"), text="ch")]
    if star < 0 or not repeat or sorted(types(chains, 0, 2)) != ["CH", "NUM"]:
        return []
    own, last = t[star + 1 : star + 3], [x for x in t[star:repeat] if x.type != "SEP"][-2:]

    if sorted(types(own, 0, 2)) != ["CH", "NUM"] or sorted(types(last, 0, 2)) == ["CH", "NUM"]:
        return []
    stop = like(t[at], "SEP", name="hard")
    return [stop, like(t[at], "ENDWITH"), *chains, stop]


def _parts(terminal: Terminal) -> bool:
    return terminal.type in LIST_MARKS | {"ENDING", "REPEAT"}


def _chain_of_head(words: list[Terminal]) -> int:
    """Which of the chains at its head a round is joined to, `to the 3rd of 5 ch`; 0 for none."""
    number = next((t.number for t in words if t.type == "ORD"), 0)
    chains = any(t.type == "CH" or t.chain or t.kind in ARCHES for t in words)
    return number if number > 1 and chains else 0


def _closes_on_first(terminals: list[Terminal], at: int) -> bool:
    """Whether `to the first treble`, `into the first`, `to the 3rd of 5 chain` ends a row here."""
    behind = [t for t in terminals[at:] if t.type != "THE"]
    kinds = [t.type for t in behind]
    if kinds[:2] not in (["TO", "ORD"], ["PREP", "ORD"]):
        return False
    rest = kinds[2:][kinds[2:3] != [] and kinds[2] in NOUNS :]
    if rest[:2] in (["OF", "KIND"], ["OF", "CH"], ["OF", "NUM"]):
        rest = [type_ for type_ in rest if type_ not in ("OF", "KIND", "CH", "NUM")]
    elif behind[1].number != 1:
        return False
    return all(type_ in ("SEP", "ENDING") for type_ in rest)


_IN_CHAINS = {
    ("CH",),
    ("CH", "OF", "CH"),
    ("CH", "OF", "ORD", "CH"),
    ("KIND", "OF", "CH"),
    ("KIND", "OF", "ORD", "CH"),
    ("KIND", "OF", "KIND"),
}
"""What stands behind the number of a chain that a row began with: `3rd st of first ch`."""


def closing_slips(terminals: list[Terminal]) -> list[Terminal]:
    """`repeat; 1 slip stitch on the first double`, at a row's end: as `join`; so is `1 slip
    stitch on the 3rd of the 5 chain`, `in 3rd st of ch`, where the row opens with 5 chain."""
    if not any(t.name == "ss" for t in terminals):
        return terminals
    words = [n for n, t in enumerate(terminals) if t.type not in ("SEP", "THE", "ENDWITH", "ATEND")]
    kinds = [terminals[n].type for n in words]
    last = len(kinds)
    while last and kinds[last - 1] == "ENDING":
        last -= 1
    slip = last - 1 if kinds[last - 1 : last] == ["STITCH"] else 0
    one = slip - (kinds[slip - 1 : slip] == ["NUM"] and terminals[words[slip - 1]].number == 1)
    closes = slip and terminals[words[one] - 1].type == "ENDWITH" and "REPEAT" in kinds
    if closes and terminals[words[slip]].name == "ss":  # `repeat from *, end with sl st`
        number = _chain_of_head([terminals[n] for n in words[slip:last]])
        join = replace(terminals[words[slip]], type="ENDING", name="join", number=number)
        return [*terminals[: words[one]], join, *terminals[words[last - 1] + 1 :]]
    placed = [n for n in range(last) if kinds[n : n + 2] in (["STITCH", "PREP"], ["STITCH", "TO"])]
    step = [terminals[n] for n in words[placed[-1] : last]] if placed else []
    if [t.type for t in step[4:6]] == ["OF", "ORD"] and step[5].number == 1:
        del step[5]  # `on the 3rd of the first 3 chain in this round`
    shape = [t.type for t in step[2:]]
    opens = 4 if kinds[:4] == ["BEGIN", "PREP", "NEXT", "KIND"] else 0
    chains = sorted(kinds[opens : opens + 2]) == ["CH", "NUM"]
    opening = sum(terminals[n].number for n in words[opens : opens + 2]) if chains else 0
    top = chains and shape == ["KIND"] and "top" in step[1].text
    top = top and step[2].kind == Kind("space", opening)
    if not placed or step[0].name != "ss" or not (top or shape[:1] == ["ORD"]):
        return terminals
    start, closing = placed[-1], step[0]
    on_first = step[2].number == 1 and shape[1:] in ([], ["KIND"], ["STITCH"], ["CH"])
    on_head = top or (shape[1:] == ["CH", "OF", "KIND"] and step[-1].kind == Kind("space", opening))
    in_chains = tuple(shape[1:]) in _IN_CHAINS and step[2].number <= opening
    in_chains |= shape[1:] == ["KIND"] and step[-1].kind == Kind("space", opening)  # `of 5`
    in_chains = in_chains and all(
        t.kind in (None, Kind("st"), Kind("space", opening)) for t in step
    )
    said = {"REPEAT", "TOEND"} & set(kinds[:start])
    said |= {t.type for t in terminals if t.text == "finally" or t.type == "ATEND"}
    if start and terminals[words[start - (kinds[start - 1] == "NUM")] - 1].type == "ENDWITH":
        said |= {"EACH", "EVERY"} & set(kinds[:start])
    said |= {"BEGIN"} & set(kinds[:opens])  # all of it in one place, a ring
    one = start > 0 and kinds[start - 1] == "NUM" and terminals[words[start - 1]].number == 1
    start -= one
    said |= _has_made(terminals[: words[start]], step[3:] if on_first else None)
    led = start > 0 and terminals[words[start] - 1].type == "WITH"
    if led or not ((on_head and opening) or ((on_first or in_chains) and said)):
        return terminals  # `join with a slip stitch to the first`
    ended_at = terminals[words[last - 1]].end
    number = opening if top else step[2].number
    join = replace(closing, type="ENDING", name="join", number=number, end=ended_at)
    before = terminals[: words[start]]
    while before and before[-1].type in ("SEP", "ENDWITH", "ATEND"):
        before.pop()
    stop = replace(closing, type="SEP", name="hard", kind=None)
    return [*before, stop, join, *terminals[words[last - 1] + 1 :]]


def _has_made(before: list[Terminal], first: list[Terminal] | None) -> set[str]:
    """Whether what stands before `1 single in the first dc`, at a row's end, has made that one:
    behind other steps it is none of the row below. Else, and where `first` is None, whether the
    row has just gone so many times. Chains with no number of times behind them may be a ring."""
    end = len(before)
    while end and (
        before[end - 1].type in ("SEP", "AND", "ENDWITH") or before[end - 1].text == "1"
    ):
        end -= 1
    if types(before, end - 1, 1)[:1] in _HOW_OFTEN:
        return {"TIMES"}
    turned = any(x.type == "ENDING" and x.name == "turn" for x in before)
    if first is None or not end or before[end - 1].type == "CH" or turned:
        return set()
    stopped = any(x.name == "hard" for x in before[end:])
    if before[end - 1].type == "STITCH" and _is_made(before, end - 1) and not stopped:
        return set()  # `12 dc, 1 single in the first dc`: a list before a place
    names = {x.name for x in first if x.type == "STITCH"}
    made = {x.name for n, x in enumerate(before) if x.type == "STITCH" and _is_made(before, n)}
    return {"STITCH"} if made and names <= made and all(x.type != "CH" for x in first) else set()


_HOW_OFTEN = [[type_] for type_ in HOW_OFTEN]


def _is_made(t: list[Terminal], at: int) -> bool:
    """Whether a stitch is worked, and not worked into: no place opens before it."""
    number = at - (types(t, at - 1, 1) == ["NUM"])
    return types(t, number - 1, 1)[:1] in ([], ["SEP"], ["AND"], ["STAR"], ["LP"], ["ENDING"])


def rounds(terminals: list[Terminal]) -> list[Terminal]:
    """`round next loop` is a place, a lonely `round` is all round; behind `in each loop` the
    scallop that these lie round says nothing more."""
    found = list(terminals)
    for n, terminal in enumerate(terminals):
        noun = past(terminals, n + 1, "THE")
        each = {"EACH", "EVERY"} & {t.type for t in terminals[max(0, n - 5) : n]}
        if terminal.type == "ROUND" and each and _ends_with_heap(terminals, noun):
            found[n : noun + 1] = [like(terminal, "NOTHING")] * (noun + 1 - n)
        elif terminal.type == "ROUND":
            behind = terminals[n + 1].type if n + 1 < len(terminals) else ""
            places = NOUNS | DETERMINERS | {"NEXT", "THE", "SAME", "SKIPPED", "NUM", "MOD"}
            found[n] = replace(terminal, type="PREP" if behind in places else "TOEND")
            once = types(found, n - 1, 1) == ["NUM"] and found[n - 1].number == 1
            if once and behind == "STITCH" and ended(terminals, n + 2):  # `work one round plain`
                found[n - 1 : n + 2] = [
                    like(terminal, "NOTHING"),
                    terminals[n + 1],
                    like(terminal, "TOEND"),
                ]
    return [t for t in found if t.type != "NOTHING"]


def _ends_with_heap(t: list[Terminal], at: int) -> bool:
    """Whether `fan`, `scallop` stands here, and the step ends."""
    kind = t[at].kind if at < len(t) else None
    return kind is not None and kind.name in ("shell", "group", "space") and ended(t, at + 1)
