"""Words that join or part steps: `and`, commas, `round`, and what a row is joined with."""

from __future__ import annotations

from msgspec.structs import replace

from border.text.terminals import Terminal
from border.text.wording.passing import (
    HOW_OFTEN,
    NOUNS,
)

DETERMINERS = frozenset({"EACH", "EACHOF", "EVERY", "CENTRE", "ORD", "BETWEEN"})
LIST_MARKS = frozenset({"SEP", "LP", "RP", "STAR"})
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
        since = set() if terminal.type in LIST_MARKS else since | {terminal.type}
    return found


def _joined(since: set[str], behind: list[Terminal]) -> str:
    """What an `and` is, by what stands before it in its step, and behind it."""
    kinds = [terminal.type for terminal in behind]
    if "AS" in since and (kinds[:1] == ["CH"] or kinds == ["NUM", "CH"]):
        return "PLUS"
    placed = since & {"PREP", "ALLIN", "BETWEEN", "ROUND"}
    return "OR" if placed and kinds and kinds[0] in DETERMINERS | {"KIND"} else "SEP"


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


def separators(terminals: list[Terminal]) -> list[Terminal]:
    """Separators next to each other as one; without those inside a step."""
    found: list[Terminal] = []
    for n, terminal in enumerate(terminals):
        behind = terminals[n + 1].type if n + 1 < len(terminals) else ""
        if found and found[-1].type == "SEP":
            if terminal.type == "SEP":
                if terminal.name:
                    found[-1] = replace(found[-1], name=terminal.name)
                elif terminal.text == "and" and found[-1].text == ",":
                    found[-1] = replace(found[-1], text=", and", end=terminal.end)
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
