"""Picots that a page or a row says in words: `p = 5 ch, 1 sc in the first`, `(P is 4 ch caught in
the 1st.)`.
"""

from __future__ import annotations

from msgspec.structs import replace

from border.text.framing.figures import Figure, Figures
from border.text.shaping.passes import shape
from border.text.source import Source
from border.text.vocabulary import Names
from border.text.wording.assumed import SPACES
from border.text.wording.terminals_read import read_terminals
from border.text.words import Sort, Word


def without_picots(figures: Figures, names: Names, source: Source) -> tuple[Figures, int]:
    """The figures without `p = 5 ch, 1 sc in the first`, and the chains of such a picot; else 0. A
    figure by another name that is such a picot, `dot = 4 ch, 1 sc in the first`, is one of 4."""
    found: Figures = {}
    picot = 0
    for form, figure in figures.items():
        size = _picot_of(figure.steps, names, source)
        if size and figure.name in _PICOTS:
            picot = size
            continue
        if figure.name in _PICOTS:  # `picot = ch 5, 1 sc in 4th ch from hook`: `p` is the same
            found |= dict.fromkeys(_PICOTS - set(figures), figure)
        if size:
            first = figure.steps[0]
            called = [replace(first, text=text, sort=Sort.WORD) for text in ("picot", "of")]
            number = replace(first, sort=Sort.NUMBER, text=str(size), number=size)
            figure = replace(figure, steps=(*called, number))
        found[form] = figure
    return found, picot


def _picot_of(steps: tuple[Word, ...], names: Names, source: Source) -> int:
    """The chains of the picot that steps make, and nothing else; else 0."""
    steps = _as_made(steps)
    if not steps:
        return 0
    last = steps[-1]
    called = [replace(last, text=text, sort=Sort.WORD) for text in ("for", "a", "picot")]
    for words in (steps, [*(steps[:-1] if last.text == "." else steps), *called]):
        terminals, _ = read_terminals(words, names, source, set(), SPACES)
        made = [t for t in shape(terminals)[0] if t.type != "SEP"]
        if [t.type for t in made] == ["PICOT"] and made[0].number:
            return made[0].number
    return 0


def _as_made(steps: tuple[Word, ...]) -> tuple[Word, ...]:
    """The steps of a picot without what changes no count: `turn`, and how its loop is drawn out:
    `drop the loop, insert the hook in the 1st chain, and draw it through` is a slip stitch."""
    kept = tuple(w for w in steps if w.text != "turn")
    comma = next((n for n, w in enumerate(kept) if w.text == ","), len(kept))
    behind = {w.text for w in kept[comma:]}
    if not (behind & {"draw", "drawing", "pull"} and behind & {"1st", "first"}):
        return kept
    first = next(w for w in kept[comma:] if w.text in ("1st", "first"))
    said = ("and", "1", "sl", "st", "in", "the", "1st")
    sorts = {"1": Sort.NUMBER, "1st": Sort.ORDINAL}
    return kept[:comma] + tuple(
        Word(sorts.get(text, Sort.WORD), text, first.start, first.end, first.line, number=1)
        for text in said
    )


def picot_said_last(words: list[Word], names: Names, source: Source) -> tuple[list[Word], int]:
    """A row without `For p, 5 ch, 1 sc back in the 1st.`, `(P is 4 ch caught in the 1st.)` at its
    end, and the chains of that picot; 0 where nothing so stands there."""
    for at in range(max(1, len(words) - _LAST), len(words)):
        opening = words[at - 1].text
        behind = at + (words[at].text in ("for", "the"))
        behind += behind < len(words) and words[behind].text in ("the", "a", "each")
        name = (words[behind].text,) if behind < len(words) else ()
        if opening not in (".", ";", "(") or name not in _PICOTS:
            continue
        steps = behind + 1
        while steps < len(words) and words[steps].text in _SAYS_OF:
            steps += 1
        end = trimmed(words, len(words) - (opening == "(" and words[-1].text == ")"))
        says = words[at].text == "for" or {w.text for w in words[behind + 1 : steps]} - {",", "."}
        if not says or not behind + 1 < steps < end:
            continue
        figure = Figure(name, tuple(words[steps:end]))
        picot = without_picots({name: figure}, names, source)[1]
        if picot:
            return words[: at - (opening == "(")], picot
    return words, 0


_PICOTS = {("p",), ("picot",), ("purl",), ("picots",), ("purls",)}


_LAST = 20
"""So many words at the end of a row may say what its picot is."""


_SAYS_OF = frozenset(
    {",", ":", ".", "--", "—", "=", "is", "are", "means", "made", "of", "thus", "consists"}
)


def trimmed(words: list[Word], end: int) -> int:
    """The end of some first words, without the commas they end in."""
    while end and words[end - 1].text in (",", "all"):
        end -= 1
    return end
