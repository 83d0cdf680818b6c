"""What a step is worked on, in other words: `1 dc taking up 2 tr`, `6 ch, on these 1 dc, 1 tr`, `1
tr in loop and dc`, `10 tr on the 5 chain, 2 in each loop`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.wording.passing import behind_chains, chain_of_at, ended, like, past, types

if TYPE_CHECKING:
    from border.text.terminals import Terminal


def taken_up(t: Sequence[Terminal]) -> list[Terminal]:
    """`1 dc taking up 2 tr`, `1 tr taking the dc`: worked into these; not the back loops."""
    found: list[Terminal] = []
    for n, here in enumerate(t):
        noun = past(t, n + 1, "NUM")
        takes = here.type == "NOTHING" and here.text.startswith("taking")
        whole = types(t, noun, 1) in (["STITCH"], ["CH"], ["KIND"]) and not t[noun].many
        behind = found[-1:] and (found[-1].type == "STITCH" or types(t, n - 2, 1) == ["STITCH"])
        step = here.text.endswith(("taking", "up", "the"))
        if takes and step and behind and whole and (ended(t, noun + 1) or _together(t, noun + 1)):
            here = like(here, "UNITE")
        found.append(here)
    return found


def _together(t: Sequence[Terminal], at: int) -> bool:
    return types(t, at, 1) in (["TOGETHER"], ["ATONCE"])


def on_these(t: Sequence[Terminal]) -> list[Terminal]:
    """`6 ch, on these 1 dc, 1 tr, 3 dtr`, `6 ch, on which work 1 dc, 1 tr`: worked back on them."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        here = t[at]
        on = here.type in ("PREP", "SEP") and not {"on", "upon"}.isdisjoint(here.text.split())
        these = types(t, at, 1) == ["PREP"] and types(t, at + 1, 1) in (["THE"], ["STRAY"])
        these = these and t[at + 1].text in ("these", "those", "which")
        step = at + 1 + these
        step += types(t, step, 1) == ["SEP"] and t[step].text.isalpha()  # `on these work 1 dc`
        back = on and (these or "which" in here.text) and types(t, step, 2) == ["NUM", "STITCH"]
        end = len(found) - past(found[::-1], 0, "SEP", "AND")
        missed = types(found, end - 2, 2) == ["SKIP", "NUM"]  # `6 ch, miss 1, on these`
        chains = found[: end - 2] if missed else found
        if back and behind_chains(chains) and not t[step + 1].many:
            said = replace(like(here, "NOTHING"), text="working back", end=t[step - 1].end)
            found = [*chains, said]
            at = step
            continue
        found.append(here)
        at += 1
    return found


def in_one_and_other(t: Sequence[Terminal]) -> list[Terminal]:
    """`1 tr in the loop and dc, 3 ch`, `1 dc on tr and ch`: one in each, where steps are counted,
    and this is not; asked."""
    found: list[Terminal] = []
    for n, here in enumerate(t):
        found.append(here)
        prep = n - 2
        while prep > 0 and t[prep].type in ("THE", "NEXT"):
            prep -= 1
        two = here.type == "AND" and prep > 1 and (t[n - 1].type, *types(t, n + 1, 1)) in _TWO
        made = two and types(t, prep - 2, 3) == ["NUM", "STITCH", "PREP"]
        if made and not t[n - 1].many and ended(t, n + 2) and t[n + 1].name != "ss":
            put = len(found) - 1 - (n - prep)
            found[put] = replace(found[put], name="counted")
            if t[prep - 2].number == 1:
                found.append(like(here, "NEXT"))
    return found


_TWO = (("KIND", "STITCH"), ("STITCH", "KIND"), ("STITCH", "CH"))


def shared_out_each(t: Sequence[Terminal]) -> list[Terminal]:
    """`10 tr on the 5 chain, 2 in each loop`: two in each of these five; `sc under the chains, 6 in
    each loop`: six in each loop, where no number stands before."""
    found: list[Terminal] = []
    at = 0
    while at < len(t):
        the = past(t, at + 3, "THE") if types(t, at, 3) == ["NUM", "STITCH", "PREP"] else len(t)
        size, behind = chain_of_at(t, the)
        each = types(t, behind, 4) == ["SEP", "NUM", "PREP", "EACH"] if size else False
        noun = behind + 4
        if each and size * t[behind + 1].number == t[at].number:
            of = types(t, noun, 1) in (["CH"], ["KIND"], ["STITCH"])
            if ended(t, noun + of):
                many = [like(t[at], "EACHOF"), like(t[at], "NEXT")]
                number = replace(like(t[at], "NUM"), number=size)
                chain = replace(like(t[the], "CH"), number=1)
                found += [t[behind + 1], t[at + 1], t[at + 2], *many, number, chain]
                at = noun + of
                continue
        chains = past(t, at + 2, "THE") if types(t, at, 2) == ["STITCH", "PREP"] else len(t)
        so_many = types(t, chains + 1, 4) == ["SEP", "NUM", "PREP", "EACH"] and t[chains].many
        if so_many and not at and t[chains].type in ("CH", "KIND"):
            found += [t[chains + 2], t[at]]
            at = chains + 3
            continue
        found.append(t[at])
        at += 1
    return found
