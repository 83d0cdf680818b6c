"""Fuzzing led by what is reached: `python tests/fuzz/guided.py SECONDS [FOLDER]`.

Needs `pip install atheris`. Border texts are changed byte by byte; one that reaches a
line of the program that none before it did is kept (in FOLDER, if named) and changed
further. It ends at the first text that does not hold, and shows it.
"""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

import atheris  # type: ignore[import-not-found, import-untyped, unused-ignore]

sys.path[:0] = [str(Path(__file__).parent.parent), str(Path(__file__).parent.parent.parent)]

with atheris.instrument_imports(include=["border.text", "border.working"]):
    from fuzz import held, inputs

LONGEST = 600


def one(data: bytes) -> None:
    """The first byte says whether a text is only read, or also counted, and on which edge."""
    if not data:
        return
    text = data[1:].decode("utf-8", "replace")
    edge = data[0] % 16
    if edge < len(held.EDGES):
        held.count_holds(text, held.EDGES[edge])
    else:
        held.text_holds(text)


def main(seconds: str, folder: str) -> None:
    for n, text in enumerate(inputs.borders()):
        Path(folder, f"begin-{n}").write_bytes(bytes([n % 256]) + text.encode()[:LONGEST])
    words = Path(folder).parent / "words.dict"
    plain = sorted({p for p in inputs.phrases() if p.isascii() and '"' not in p and len(p) < 24})
    words.write_text("".join(f'"{phrase}"\n' for phrase in plain if "\\" not in phrase))
    options = [f"-max_total_time={seconds}", f"-max_len={LONGEST}", f"-dict={words}"]
    atheris.Setup([sys.argv[0], *options, "-timeout=20", folder], one)
    atheris.Fuzz()


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as made:
        own = Path(made, "texts")
        own.mkdir()
        main(sys.argv[1], sys.argv[2] if len(sys.argv) > 2 else str(own))
