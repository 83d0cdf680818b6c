"""Makes the parser's table anew: `python tests/parser_table.py`, after each change of the grammar.

The same grammar and lark make the same bytes, whatever order lark's sets come in: states
are numbered as they are come to from the first, tokens by their names.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

from lark import __version__
from lark.grammar import Rule
from lark.lexer import TerminalDef
from msgspec import json

from border.text.building.parser import TABLE, _made, grammar

WHERE = Path(__file__).parent.parent / "grammar" / TABLE


def made_table() -> str:
    """The parser's table as JSON, made from the grammar."""
    data, memo = _made().memo_serialize([TerminalDef, Rule])
    data["options"]["lexer"] = None
    data["parser"]["lexer_conf"]["lexer_type"] = None
    data["parser"]["parser"] = in_order(data["parser"]["parser"])
    made = {"lark": __version__, "grammar": grammar(), "data": data, "memo": memo}
    return json.encode(made, enc_hook=list).decode() + "\n"


def in_order(rows: dict[str, Any]) -> dict[str, Any]:
    """The rows of the table with tokens by name, and states as they are come to."""
    names: dict[int, str] = rows["tokens"]
    token = {old: new for new, old in enumerate(sorted(names, key=names.__getitem__))}
    tables = {
        old: {token[t]: row[t] for t in sorted(row, key=token.__getitem__)}
        for old, row in rows["states"].items()
    }
    order = list(rows["start_states"].values())
    for state in order:  # it grows on the way
        following = [to for act, to in tables[state].values() if act == SHIFT]
        order += [to for to in dict.fromkeys(following) if to not in order]
    assert len(order) == len(tables)
    number = {old: new for new, old in enumerate(order)}
    return {
        "tokens": {token[old]: names[old] for old in sorted(names, key=token.__getitem__)},
        "states": {
            number[old]: {
                t: (act, number[to] if act == SHIFT else to) for t, (act, to) in tables[old].items()
            }
            for old in order
        },
        "start_states": {k: number[old] for k, old in rows["start_states"].items()},
        "end_states": {k: number[old] for k, old in rows["end_states"].items()},
    }


SHIFT = 0
"""What lark's tables have for an action that goes on to another state; 1 is a rule that is made."""

if __name__ == "__main__":
    WHERE.write_text(made_table(), encoding="utf-8")
    print(f"made {WHERE.name}")
