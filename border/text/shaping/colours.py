"""What goes with a stitch and changes no count: a colour, and what is said behind a repeat."""

from __future__ import annotations

from msgspec.structs import replace

from border.text.wording.passing import HOW_OFTEN, OPENS, WHICH, Terminals, types

_EXTENT = HOW_OFTEN | {"TOEND", "FROM", "THE", "STAR", "STARWORD", "FROMHEAD", "NUM"}


def colours(t: Terminals) -> Terminals:
    """A colour goes with its stitches or chains: with those before it, else the next ones."""
    found: Terminals = []
    waiting: Terminals = []
    for n, here in enumerate(t):
        at_head = all(x.type in ("SEP", "ENDING", "AND") for x in found)
        if here.type == "MOD" and at_head:  # `Turn, taking up the back thread, * 1 dc …`
            waiting.append(here)
            continue
        if here.type == "TOEND" and at_head and waiting:
            continue  # `…, throughout`
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
    parts = [n for n, x in enumerate(found) if x.type != "SEP"][-1:]
    if waiting and parts and parts[0] < len(found) - 1:
        return [*found[: parts[0] + 1], *waiting]  # `1 treble in each stitch, with white wool`
    return found + [replace(x, type="STRAY") for x in waiting]


def _is_new_thread(found: Terminals) -> bool:
    """Whether a colour stands behind the first word of a row, `fasten`, `join`."""
    words = [x for x in found if x.type != "THE"]
    one = [x.type for x in words] in (["ENDING"], ["BEGIN"])
    return one and words[0].text.split()[0] in ("fasten", "join", "tie", "attach")


def _ends_its_noun(t: Terminals, n: int) -> bool:
    """Whether what a colour goes with ends here: a stitch, or chains, `3 ch` as well as `ch 3`."""
    if types(t, n + 1, 1) == ["AS"]:
        return False  # `white, 3 chain for the first dc`
    if types(t, n - 1, 2) == ["CH", "NUM"]:
        return types(t, n - 2, 1) != ["NUM"]
    before = n - 1 - (types(t, n - 1, 1) == ["NUM"])
    of_row = types(t, before - 1, 2) == ["ROW", "OF"]  # `a row of dc`
    if before >= 0 and t[before].type in WHICH | OPENS and not of_row:
        return False  # that is what is worked into
    chains = t[n].type == "CH" and (types(t, n - 1, 1) == ["NUM"] or types(t, n + 1, 1) != ["NUM"])
    return chains or t[n].type == "STITCH"


def behind_repeats(t: Terminals) -> Terminals:
    """`repeat from *, taking the back loops`: as said of the last stitch before the repeat."""
    found: Terminals = []
    made = 0
    for here in t:
        end = _behind_repeat(found) if here.type == "MOD" and made else 0
        if end:
            del found[end:]
            found.insert(made, here)
            made += 1
            continue
        found.append(here)
        if here.type == "STITCH" and _makes(found):
            made = len(found)
    return found


def _behind_repeat(found: Terminals) -> int:
    """Behind the repeat that these words end in, and how often it is worked; 0 for none."""
    end = len(found)
    while end and found[end - 1].type in ("THE", "PREP", "SEP"):
        end -= 1
    at = end
    while at and found[at - 1].type in _EXTENT:
        at -= 1
    return end if types(found, at - 1, 1) in (["REPEAT"], ["SOON"]) and at else 0


def _makes(found: Terminals) -> bool:
    """Whether the stitch that these words end in is made, and not worked into."""
    before = len(found) - 2
    before -= before >= 0 and found[before].type == "NUM"
    return before < 0 or found[before].type not in WHICH | OPENS
