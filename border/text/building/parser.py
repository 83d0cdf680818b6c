"""The parser of texts: lark's LALR parser over `grammar/border.lark`.

lark is loaded with the first text. To make the parser from the grammar takes
longer than all the rest of a small border, so its table is kept ready-made in
`grammar/border.table.json`; `python tests/parser_table.py` makes it anew. A
table made by another lark, or from another grammar, is not used.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache
from pkgutil import get_data
from typing import TYPE_CHECKING, Any

from msgspec import json

from border.text.terminals import Terminal

if TYPE_CHECKING:
    from lark import Lark, Token, Tree

TABLE = "border.table.json"
_START = "text"


def parse(terminals: Sequence[Terminal]) -> Tree[Token] | int:
    """The parse of a text, or the place of the terminal that it goes wrong at.

    A token of the parse has the place of its terminal as `start_pos`.
    """
    from lark import Token
    from lark.exceptions import UnexpectedToken

    tokens = [Token(t.type, t.text, n) for n, t in enumerate(terminals)]
    try:
        return _parser().parse(tokens)
    except UnexpectedToken as wrong:
        at_end = wrong.token.type == "$END"
        return len(terminals) if at_end else int(wrong.token.start_pos or 0)


@lru_cache(maxsize=1)
def _parser() -> Lark:
    from lark import Lark
    from lark import __version__ as version

    kept = _kept()
    if kept is not None:
        table = json.decode(kept)
        if table["lark"] == version and table["grammar"] == grammar():
            lexer = _lexer()
            table["data"]["options"]["lexer"] = lexer
            table["data"]["parser"]["lexer_conf"]["lexer_type"] = lexer
            return Lark.load(_with_numbers(table["data"], table["memo"]))
    return _made()


def _kept() -> bytes | None:
    """The table as it was made; None where there is none."""
    try:
        return get_data("border.grammar", TABLE)
    except FileNotFoundError:
        return None


def _with_numbers(data: dict[str, Any], memo: dict[str, Any]) -> dict[str, Any]:
    """JSON has no numbers for keys; lark's tables do."""
    rows = data["parser"]["parser"]
    rows["tokens"] = _numbered(rows["tokens"])
    rows["states"] = {int(state): _numbered(row) for state, row in rows["states"].items()}
    return {"data": data, "memo": _numbered(memo)}


def _numbered(found: dict[str, Any]) -> dict[int, Any]:
    return {int(key): value for key, value in found.items()}


def grammar() -> str:
    """The grammar, as text."""
    data = get_data("border.grammar", "border.lark")
    assert data is not None
    return data.decode()


@lru_cache(maxsize=1)
def _lexer() -> type:
    from lark.lexer import Lexer

    class Ready(Lexer):
        """The terminals are made already: hand them on."""

        def __init__(self, conf: object) -> None:
            pass

        def lex(self, data: Any, state: object = None) -> Iterator[Token]:
            yield from data

    return Ready


def _made() -> Lark:
    from lark import Lark

    return Lark(grammar(), parser="lalr", lexer=_lexer(), start=_START)
