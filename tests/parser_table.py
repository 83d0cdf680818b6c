"""Makes the parser's table anew: `python tests/parser_table.py`, after each change of the grammar."""

from __future__ import annotations

from pathlib import Path

from border.text.parser import TABLE, made_table

WHERE = Path(__file__).parent.parent / "grammar" / TABLE

if __name__ == "__main__":
    WHERE.write_text(made_table(), encoding="utf-8")
    print(f"made {WHERE.name}")
