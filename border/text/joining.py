"""Words that join or part steps: `and`, commas, `round`, and what a row is joined with."""

from __future__ import annotations

from msgspec.structs import replace

from border.stitches import STITCHES
from border.text.passing import (
    ARCHES,
    HOW_OFTEN,
    NOUNS,
    ended,
    goes_on,
    like,
    only_ends,
    past,
    types,
)
from border.text.terminals import Terminal
from border.text.tree import Kind

_DETERMINERS = frozenset({"EACH", "EACHOF", "EVERY", "CENTRE", "ORD", "BETWEEN"})
_LIST_MARKS = frozenset({"SEP", "LP", "RP", "STAR"})
BEHIND_COMMA = HOW_OFTEN | {
    "AS",
    "NOTCOUNTED",
    "BETW",
    "TOGETHER",
    "ALLTOGETHER",
    "TOEND",
    "TOLAST",
    "FROMSTAR",
    "FROMHEAD",
    "COME",
}
"""What goes on with the step before it although a comma stands between."""


def ands(terminals: list[Terminal]) -> list[Terminal]:
    """`and` joins two places, or chains to a start chain; otherwise it only separates."""
    found: list[Terminal] = []
    since: set[str] = set()
    for n, terminal in enumerate(terminals):
        if terminal.type == "AND":
            terminal = replace(terminal, type=_joined(since, terminals[n + 1 : n + 3]))
        found.append(terminal)
        since = set() if terminal.type in _LIST_MARKS else since | {terminal.type}
    return found


def _joined(since: set[str], behind: list[Terminal]) -> str:
    """What an `and` is, by what stands before it in its step, and behind it."""
    kinds = [terminal.type for terminal in behind]
    if "AS" in since and (kinds[:1] == ["CH"] or kinds == ["NUM", "CH"]):
        return "PLUS"
    placed = since & {"PREP", "ALLIN", "BETWEEN", "ROUND"}
    return "OR" if placed and kinds and kinds[0] in _DETERMINERS | {"KIND"} else "SEP"


def articles(terminals: list[Terminal]) -> list[Terminal]:
    """`the` stays only before what is worked into: in `the next st` it says nothing."""
    kept: list[Terminal] = []
    for n, terminal in enumerate(terminals):
        behind = [t.type for t in terminals[n + 1 : n + 3]]
        pair = behind[:2] == ["PICOT", "OF"] and kept and kept[-1].type == "BETWEEN"
        ends_with = bool(kept) and kept[-1].type == "ENDWITH"  # `ending with the double`
        noun = bool(behind) and behind[0] in NOUNS | {"PAIR"}
        if terminal.type == "THE" and (pair or ends_with or not noun):
            continue
        kept.append(terminal)
    return kept


def start_chain_brackets(terminals: list[Terminal]) -> list[Terminal]:
    """`ch 3 (counts as dc)`, `ch 5 (= 1 dc and 2 ch)` without its brackets."""
    terminals = [replace(t, type="AS") if t.type == "EQUALS" else t for t in terminals]
    terminals = _first_missed(_standing_for(terminals))
    found = list(terminals)
    for n, terminal in enumerate(terminals[:-1]):
        if terminal.type != "LP" or terminals[n + 1].type not in ("AS", "NOTCOUNTED"):
            continue
        end = next((i for i in range(n, len(terminals)) if terminals[i].type == "RP"), None)
        if end is not None and end - n <= 8:
            found[n] = replace(terminal, type="DROP")
            found[end] = replace(terminals[end], type="DROP")
    return [t for t in found if t.type != "DROP"]


def _standing_for(t: list[Terminal]) -> list[Terminal]:
    """`ch 5 (1 dc, 2 ch)`, `ch 3 (1 dc)` at the head of a row: as `ch 5 (as 1 dc and 2 ch)`."""
    head = past(t, 0, "SEP")
    begun = types(t, head, 4) == ["BEGIN", "PREP", "NEXT", "KIND"]
    head = past(t, head + 4, "SEP") if begun else head
    bracket = head + 2
    if sorted(types(t, head, 2)) != ["CH", "NUM"] or types(t, bracket, 1) != ["LP"]:
        return t
    inside = [x for x in t[bracket + 1 : bracket + 8] if x.type not in ("SEP", "AND")]
    end = next((n for n, x in enumerate(inside) if x.type == "RP"), 0)
    one = types(inside, 0, 2) == ["NUM", "STITCH"] and inside[0].number == 1
    stitch = inside[one] if end else t[bracket]
    chains = inside[1 + one : end]
    if stitch.type != "STITCH" or sorted(x.type for x in chains) not in ([], ["CH", "NUM"]):
        return t
    plus = [like(stitch, "AND"), *chains] if chains else []
    opened = [t[bracket], like(t[bracket], "AS"), like(stitch, "NUM", number=1), stitch, *plus]
    behind = next(n for n in range(bracket, len(t)) if t[n].type == "RP")
    return [*t[:bracket], *opened, *t[behind:]]


def _first_missed(t: list[Terminal]) -> list[Terminal]:
    """`3 chain, miss the first dc, 5 dc` at the head of a row: the chains stand for that one."""
    head = past(t, 0, "SEP", "ENDING")
    turn = past(t, head + 2, "SEP", "AND")
    turns = turn < len(t) and t[turn].name == "turn"  # `3 chain, turn, miss the first dc`
    skip = past(t, turn + turns, "SEP", "AND")
    order = past(t, skip + 1, "THE")
    chained = sorted(types(t, head, 2)) == ["CH", "NUM"] and types(t, skip, 1) == ["SKIP"]
    if not chained or types(t, order, 1) != ["ORD"] or t[order].number != 1:
        return t
    end = order + 1 + (order + 1 < len(t) and t[order + 1].type in NOUNS)
    stitch = next((x for x in t[end:] if x.type == "STITCH"), None)
    count = sum(x.number for x in t[head : head + 2])
    more = count - STITCHES[stitch.name].height if stitch is not None else -1
    if stitch is None or not ended(t, end) or more < 0 or count - more < 2:
        return t
    chain = next(x for x in t[head : head + 2] if x.type == "CH")
    rest = [like(stitch, "AND"), like(stitch, "NUM", number=more), chain] if more else []
    said = [like(t[skip], "AS"), like(t[skip], "NUM", number=1), stitch, *rest]
    return [*t[: head + 2], *said, *t[head + 2 : skip], *t[end:]]


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
            if swallowing and last:
                found[-1:] = [*_last_chains(terminals[: n + 4], n), terminal]
            if swallowing:
                end = next((i for i in range(n + 1, len(terminals)) if _parts(terminals[i])), None)
                found[-1] = replace(terminal, number=_chain_of_head(terminals[n + 1 : end]))
    return found


def _last_chains(t: list[Terminal], at: int) -> list[Terminal]:
    """The chains of `* 5 chain, 1 long in next loop; repeat, joining the last 5 chain to …`: they
    are those of a repeat that goes no further; none where they are the last step of each."""
    star = max((n for n in range(at) if t[n].type == "STAR"), default=-1)
    repeat = next((n for n in range(star + 1, at) if t[n].type == "REPEAT"), 0)
    chains = t[at + 2 : at + 4]
    if star < 0 or not repeat or sorted(types(chains, 0, 2)) != ["CH", "NUM"]:
        return []
    own, last = t[star + 1 : star + 3], [x for x in t[star:repeat] if x.type != "SEP"][-2:]

    def size(pair: list[Terminal]) -> tuple[list[str], int]:
        return sorted(types(pair, 0, 2)), sum(x.number for x in pair)

    if size(own) != size(chains) or size(last)[0] == ["CH", "NUM"]:
        return []
    stop = like(t[at], "SEP", name="hard")
    return [stop, like(t[at], "ENDWITH"), *chains, stop]


def _parts(terminal: Terminal) -> bool:
    return terminal.type in _LIST_MARKS | {"ENDING", "REPEAT"}


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
    said |= {"BEGIN"} & set(kinds[:opens])  # all of it in one place, a ring
    one = start > 0 and kinds[start - 1] == "NUM" and terminals[words[start - 1]].number == 1
    start -= one
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
            places = NOUNS | _DETERMINERS | {"NEXT", "THE", "SAME", "SKIPPED", "NUM", "MOD"}
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


def separators(terminals: list[Terminal]) -> list[Terminal]:
    """Separators next to each other as one; without those inside a step."""
    found: list[Terminal] = []
    for n, terminal in enumerate(terminals):
        behind = terminals[n + 1].type if n + 1 < len(terminals) else ""
        if found and found[-1].type == "SEP":
            if terminal.type == "SEP":
                if terminal.name:
                    found[-1] = replace(found[-1], name=terminal.name)
                continue
            soft = not found[-1].name
            loose = terminal.type == "MOD" or (terminal.type == "PREP" and behind == "MOD")
            of_bracket = terminal.type in HOW_OFTEN and behind == "RP"
            if soft and not of_bracket and (terminal.type in BEHIND_COMMA or loose):
                found.pop()
        found.append(terminal)
        goes_on = {"PREP", "BETWEEN", "ALLTOGETHER", "TOGETHER"}
        if terminal.type == "BETW" and behind == "SEP" and not terminals[n + 1].name:
            after = terminals[n + 2].type if n + 2 < len(terminals) else ""
            if after in goes_on:
                found.append(replace(terminals[n + 1], type="DROP"))
    return _undropped(found)


def _undropped(terminals: list[Terminal]) -> list[Terminal]:
    return [
        t
        for n, t in enumerate(terminals)
        if t.type != "DROP" and not (t.type == "SEP" and n and terminals[n - 1].type == "DROP")
    ]


def _of_first_and_chain(
    terminals: list[Terminal], at: int, words: list[Terminal]
) -> list[Terminal]:
    """`4 chain for the first long and the chain`: as `4 chain as 1 long and 1 chain`."""
    stitch, chain = words[4], words[6]
    count = words[0].number + words[1].number - STITCHES[stitch.name].height
    end = next(i for i in range(at, len(terminals)) if terminals[i] is chain) + 1
    if words[3].number != 1 or count < 1:
        return terminals
    plus = [words[5], replace(chain, type="NUM", number=count), chain]
    return [*terminals[:at], *words[:3], stitch, *plus, *terminals[end:]]


def _without_standing(t: list[Terminal]) -> list[Terminal]:
    """`1 sl on the third of the 3 ch counting as first dc`: what they stand for is said."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        before = [x.type for x in found[-10:] if x.type not in ("SEP", "THE")]
        stitch = past(t, at + 1, "NUM", "ORD", "THE")
        closes = before[-3:] == ["OF", "NUM", "CH"] or before[-4:-2] == ["OF", "ORD"]
        said = t[at].type == "AS" and closes and types(t, stitch, 1) == ["STITCH"]
        if said and only_ends(t[stitch + 1 :]):
            at = stitch + 1
            continue
        found.append(t[at])
        at += 1
    return found


def first_of_which(terminals: list[Terminal]) -> list[Terminal]:
    """`6 chain, the first 3 of which form 1 treble`: as `6 chain as 1 treble and 3 chain`."""
    terminals = _without_standing(terminals)
    for n in range(len(terminals)):
        words = [t for t in terminals[n : n + 12] if t.type not in ("SEP", "THE")]
        kinds = [t.type for t in words]
        if sorted(kinds[:2]) == ["CH", "NUM"] and kinds[2:7] == [
            "AS",
            "ORD",
            "STITCH",
            "AND",
            "CH",
        ]:
            return _of_first_and_chain(terminals, n, words)
        if sorted(kinds[:2]) != ["CH", "NUM"] or kinds[2:6] != ["ORD", "NUM", "OF", "AS"]:
            continue
        stitch = next((t for t in words[6:9] if t.type not in ("NUM", "ORD")), None)
        if stitch is None or stitch.type != "STITCH" or words[2].number != 1:
            continue
        more = sum(t.number for t in words[:2]) - words[3].number
        chain = next(t for t in words[:2] if t.type == "CH")
        number = replace(words[3], number=more)
        plus = [replace(words[4], type="AND"), number, chain] if more > 0 else []
        end = next(i for i in range(n, len(terminals)) if terminals[i] is stitch) + 1
        return [*terminals[:n], *words[:2], words[5], stitch, *plus, *terminals[end:]]
    return terminals
