"""Named figures: `fan = 2 dc, ch 2, 2 dc` among the headings, and `1 fan in next space` in a row.

A figure is read wherever its name stands as its steps in a bracket, so what is
said of a bracket (in a place, so many times) is said of it.
"""

from __future__ import annotations

import re
from collections import deque
from collections.abc import Sequence
from itertools import groupby

from msgspec import Struct
from msgspec.structs import replace

from border.findings import Finding
from border.text.framing.headings import is_heading
from border.text.framing.preamble import founds, goes_on, of_chain
from border.text.source import Source
from border.text.terminals import Terminal
from border.text.vocabulary import Names, Phrase, phrases_from, plural, vocabulary
from border.text.words import Sort, Word

DEEPEST = 8
"""Figures made of figures are followed so far."""


_BLANK = re.compile(r"\n[^\S\n]*\n|\r[^\S\n]*\r")
_OPENS = frozenset({"PREP", "OF", "OR", "BETWEEN", "SKIP", "ROUND", "AFTER", "TO"})
_WHICH = frozenset({"NEXT", "THE", "EACH", "SAME", "CENTRE", "CH", "OTHER"})


class Figure(Struct, frozen=True):
    """A figure: the words of its name, and of its steps."""

    name: Phrase
    steps: tuple[Word, ...]


Figures = dict[Phrase, Figure]
"""By the name, in the singular and the plural."""


def split_figures(
    words: Sequence[Word], source: Source
) -> tuple[list[Word], Figures, tuple[Finding, ...]]:
    """The words of the headings without those of figures, the figures, and their faults.

    A figure goes on over the lines behind it, to the next heading or figure, a blank line, or
    the chain to begin with.
    """
    kept: list[Word] = []
    figures: Figures = {}
    findings: list[Finding] = []
    lines = deque(list(line) for _, line in groupby(words, lambda word: word.line))
    while lines:
        line = lines.popleft()
        equals = next((n for n, word in enumerate(line) if word.text == "="), 0)
        if not equals:
            kept += line
            continue
        while lines and _goes_on(line[-1], lines[0], source):
            line += lines.popleft()
        called = [w for w in line[:equals] if w.text not in ("a", "an", "the", "1", ".")]
        name = tuple(w.text for w in called)
        span = source.span(line[0].start, line[-1].end)
        while line[-1].text in (".", ";"):
            line.pop()
        steps = tuple(line[equals + 1 :])
        if not name or not steps or any(w.sort is not Sort.WORD for w in called):
            message, help_ = "this figure cannot be read", 'write "fan = 2 dc, ch 2, 2 dc"'
            findings.append(Finding("bad-heading", message, help_, span))
        elif _is_word(name):
            message = f'"{" ".join(name)}" is a word of its own, and cannot name a figure'
            findings.append(Finding("bad-heading", message, "leave this line out", span))
        elif name in figures:
            message = f'the figure "{" ".join(name)}" is given twice'
            findings.append(Finding("bad-heading", message, "leave one of them out", span))
        else:
            figures |= {form: Figure(name, steps) for form in figure_forms(name)}
    return kept, figures, tuple(findings)


def _is_word(name: Phrase) -> bool:
    """Whether a name is that of something done in any row: `join`, `turn`, `repeat`."""
    known = (entry for phrase, entry in phrases_from(name[0]) if phrase == name)
    return any(entry.terminal in ("ENDING", "REPEAT", "SKIP", "PREP") for entry in known)


def _goes_on(last: Word, line: Sequence[Word], source: Source) -> bool:
    """Whether the figure that has come to a last word goes on in the next line."""
    if is_heading(line) or any(word.text == "=" for word in line):
        return False
    if of_chain(line):
        return not founds(line, last)
    return goes_on(last) or not _BLANK.search(source.text[last.end : line[0].start])


def no_groups(
    figures: Figures, places: Sequence[tuple[str, str]], source: Source
) -> tuple[Finding, ...]:
    """Figures that are said to be groups, though chains stand between their stitches."""
    chains = ("ch", "chain", "chains")
    findings = []
    for word, meaning in places:
        figure = figures.get(tuple(word.split(" ")))
        if figure is None or meaning not in ("group", "block"):
            continue
        if any(w.text in chains for w in figure.steps):
            message = f"a {word} with chains in it is no {meaning}, which is stitches side by side"
            help_ = f'say what of it is worked into: "{word} means ch-2 space"'
            span = source.span(figure.steps[0].start, figure.steps[-1].end)
            findings.append(Finding("bad-heading", message, help_, span))
    return tuple(findings)


def figure_forms(name: Phrase) -> list[Phrase]:
    """A figure's name as a row may have it: in the plural, or a shell cut short."""
    *before, last = name
    if name == ("shell",):
        return [name, ("shells",), ("sh",)]
    leaves = [(*before, f"{last[:-1]}ves")] if last.endswith("f") else []
    return [name, (*before, plural(last)), (*before, f"{last}es"), *leaves]


def with_figures(
    words: Sequence[Word], figures: Figures, most: int, names: Names, depth: int = 0
) -> list[Word]:
    """The words with every figure's name as its steps in a bracket; `2 fans` twice.

    Worked into, a figure is a shell, unless its name says otherwise.

    A figure made of itself is followed no further than `DEEPEST`, and its name is
    then no word. Beyond `most` words no more are put in.
    """
    if not figures or depth > DEEPEST:
        return list(words)
    found: list[Word] = []
    at = 0
    while at < len(words) and len(found) <= most:
        figure, end = _figure_at(words, at, figures)
        if figure is not None and is_place(found) and not _is_named(figure, names):
            found.append(_word("cluster" if _is_cluster(figure) else "shell", words[at]))
            at = end
            continue
        if figure is None or is_place(found):
            found += words[at:end]
            at = end
            continue
        here = words[at]
        placed = opens_place(words, end) or _listed_with_place(words, end, figure, figures)
        said = _without_place(figure.steps) if placed else figure.steps
        steps = with_figures(said, figures, most, names, depth + 1)
        opens, closes = (_mark(mark, here) for mark in "()")
        times = _number_before(found)
        found += [opens, *steps, closes]
        if times is not None:
            found += [times, _word("times", here)]
        at = end
    return found


def _is_cluster(figure: Figure) -> bool:
    """Whether its stitches are worked off as one, so that it is one stitch to work into."""
    return bool(_AS_ONE & {word.text for word in figure.steps})


_AS_ONE = frozenset({"together", "keeping", "keep", "kept", "holding", "cluster", "retaining"})


def _listed_with_place(words: Sequence[Word], at: int, figure: Figure, figures: Figures) -> bool:
    """Whether a figure comes again, with its place: `a leaf, 4 ch, and another leaf on the dc`."""
    for n in range(at, min(at + _NEAR, len(words))):
        if opens_place(words, n) or words[n].text in (";", "*", "(", ")"):
            return False
        again, end = _figure_at(words, n, figures)
        if again is figure:
            return opens_place(words, end)
    return False


_NEAR = 10
"""Two figures of one list stand in so many words."""


def opens_place(words: Sequence[Word], at: int) -> bool:
    """Whether `in`, `under`, `between` or the like stands here."""
    text = words[at].text if at < len(words) else ""
    return any(entry.terminal in ("PREP", "BETWEEN") for _, entry in phrases_from(text))


def _without_place(steps: Sequence[Word]) -> Sequence[Word]:
    """The steps of a figure without `all in one st`, where a row says in which."""
    found: list[Word] = []
    at = 0
    while at < len(steps):
        end = _behind_one_place(steps, at)
        if end > at:
            while found and found[-1].text in ("all", ",", "worked"):
                found.pop()
            at = end
            continue
        found.append(steps[at])
        at += 1
    return found


def _behind_one_place(words: Sequence[Word], at: int) -> int:
    """Behind `in one st`, `into the same place`; else the same place."""
    texts = [word.text for word in words[at : at + 4]]
    the = texts[1:2] == ["the"]
    one, place = texts[1 + the : 2 + the], texts[2 + the : 3 + the]
    said = texts[:1] in (["in"], ["into"]) and one in (["one"], ["1"], ["same"])
    return at + 3 + the if said and place and place[0] in _ONE_PLACE else at


_ONE_PLACE = frozenset(
    {"st", "stitch", "place", "space", "sp", "loop", "lp", "hole", "ch", "chain", "point"}
)


def _is_named(figure: Figure, names: Names) -> bool:
    """Whether a figure's name is that of a place, by the vocabulary or a heading."""
    known = (entry for phrase, entry in phrases_from(figure.name[0]) if phrase == figure.name)
    return figure.name in names.known or any(e.terminal in ("KIND", "PICOT") for e in known)


def is_place(before: Sequence[Word]) -> bool:
    """Whether something is worked into what is named here: `in next fan`, `between the fans`."""
    if _is_between(before):
        return True  # `1 dc between dc and shell`
    behind = ""
    for word in reversed(before):
        if behind == "the" and word.text in ("following", "before", "beyond", "preceding"):
            return True  # `in the dc following the fan`
        behind = word.text
        entries = [e.terminal for phrase, e in phrases_from(word.text) if len(phrase) == 1]
        if set(entries) & _OPENS:
            return True
        which = set(entries) & _WHICH or word.sort in (Sort.NUMBER, Sort.ORDINAL)
        if not which and word.text not in (*vocabulary().numbers, *vocabulary().ordinals):
            return False
    return False


def _is_between(before: Sequence[Word]) -> bool:
    """Whether words end in `between [the] dc and [the]`."""
    texts = [word.text for word in before[-6:] if word.text not in ("the", "last", "next")]
    return texts[-1:] == ["and"] and texts[-3:-2] == ["between"]


def _figure_at(words: Sequence[Word], at: int, figures: Figures) -> tuple[Figure | None, int]:
    for length in range(min(_LONGEST, len(words) - at), 0, -1):
        said = [word.text for word in words[at : at + length]]
        name = tuple(text for text in said if text != ".")  # `1 p. loop`
        figure = figures.get(name) if "." not in (said[0], said[-1]) else None
        if figure is not None:
            return figure, at + length
    return None, at + 1


_LONGEST = 5
"""No name of a figure has more words, with the full stops of its abbreviations."""


def _number_before(found: list[Word]) -> Word | None:
    """The number of figures, taken from before the name; None where it is one."""
    if not found or found[-1].sort is Sort.QUOTED:
        return None
    last = found[-1]
    if last.text in ("a", "an", "one", "another"):
        found.pop()
    elif last.sort is Sort.NUMBER:
        found.pop()
        return last if last.number != 1 else None
    return None


def _mark(text: str, at: Word) -> Word:
    return Word(Sort.MARK, text, at.start, at.end, at.line)


def _word(text: str, at: Word) -> Word:
    return Word(Sort.WORD, text, at.start, at.end, at.line)


def placed(terminals: Sequence[Terminal], first: int) -> list[Terminal]:
    """The terminals of a text that begins at `first`, those of figures where their name stands."""
    found: list[Terminal] = []
    here: Terminal | None = None
    for terminal in terminals:
        if terminal.type == "LP" and terminal.start >= first:
            here = terminal
        if terminal.start < first and here is not None:
            terminal = replace(terminal, start=here.start, end=here.end)
        found.append(terminal)
    return found
