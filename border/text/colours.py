"""A colour goes with its stitches or chains, and changes nothing."""

from __future__ import annotations

from msgspec.structs import replace

from border.text.passing import Terminals, types


def colours(t: Terminals) -> Terminals:
    """A colour goes with its stitches or chains: with those before it, else the next ones."""
    found: Terminals = []
    waiting: Terminals = []
    for n, here in enumerate(t):
        if here.type == "COLOUR":
            leads = not found or found[-1].type in ("SEP", "STAR", "LP", "NUM")
            kept = replace(here, type="MOD")
            if _is_new_thread(found):
                placed = types(t, n + 1, 1) == ["PREP"]  # `fasten the pink in a dc`
                found[:] = [replace(found[0], type="BEGIN")] if placed else []
                leads = True
                if placed:
                    continue
            if leads:
                waiting.append(kept)
            else:
                found.append(kept)
            continue
        found.append(here)
        if waiting and _ends_its_noun(t, n):
            found += waiting
            waiting = []
    if waiting and types(found, len(found) - 1, 1) == ["SEP"]:
        return [*found[:-1], *waiting]  # `1 treble in each stitch, with white wool`
    return found + [replace(x, type="STRAY") for x in waiting]


def _is_new_thread(found: Terminals) -> bool:
    """Whether a colour stands behind the first word of a row, `fasten`, `join`."""
    words = [x for x in found if x.type != "THE"]
    return [x.type for x in words] == ["ENDING"] and words[0].text in ("fasten", "join")


def _ends_its_noun(t: Terminals, n: int) -> bool:
    """Whether what a colour goes with ends here: a stitch, or chains, `3 ch` as well as `ch 3`."""
    if types(t, n - 1, 2) == ["CH", "NUM"]:
        return types(t, n - 2, 1) != ["NUM"]
    chains = t[n].type == "CH" and (types(t, n - 1, 1) == ["NUM"] or types(t, n + 1, 1) != ["NUM"])
    return chains or t[n].type == "STITCH"
