"""Words become terminals: the longest phrase of the vocabulary that fits, each time.

What the vocabulary does not have is told here; what stands together as one
thing (`ch-5 space`, `with ch 2 between`) is put together in `shaping.py`.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from border.findings import Finding
from border.text.assumed import with_assumed_places
from border.text.beside import on_either_side
from border.text.both_rows import with_both_rows
from border.text.catching import with_fastenings
from border.text.coloured import without_place_colours
from border.text.distances import DISTANCE, behind_distance
from border.text.exceptions import without_exceptions
from border.text.foundations import of_the_edge
from border.text.last_stitches import without_last_stitches
from border.text.numbers import number_at, ordinal_at, words_that_count
from border.text.passing import NOUNS, turned, where
from border.text.phrases import longest
from border.text.remarked import with_remarks
from border.text.side import without_sides
from border.text.source import Source
from border.text.stitch_names import names_alike, unknown_terms
from border.text.strangers import remarks, strangers
from border.text.tree import Kind
from border.text.vocabulary import Entry, Names, vocabulary, ways_from
from border.text.words import LARGEST, Sort, Word

_MARKS = {
    ",": ("SEP", ""),
    ";": ("SEP", "hard"),
    ".": ("SEP", "hard"),
    ":": ("SEP", "hard"),
    "—": ("SEP", "hard"),
    "-": ("SEP", "hard"),
    "(": ("LP", ""),
    "[": ("LP", ""),
    "{": ("LP", ""),
    ")": ("RP", ""),
    "]": ("RP", ""),
    "}": ("RP", ""),
    "*": ("STAR", ""),
}

_PRINTED = frozenset(
    "+\u2020\u2021\u00a7\u00b6\u2715\u2716\u2717\u2718\u2042\u2051\u2605\u2606\u271d\u2720\u25ca\u2022"
)
"""Marks that books print round a repeat, besides stars and crosses."""


_WRITTEN_OUT = ("treble", "double", "single", "half")
_NAMED_BEHIND = frozenset({"PREP", "OF", "NEXT", "THE", "EACH", "SAME", "ORD", "SKIP", "BETWEEN"})
"""Behind these something is named that is worked into."""


class Terminal(Struct, frozen=True):
    """A word of the grammar, as it stands in the text at [start, end).

    `name`: a stitch, ending or modifier; `hard` on a separator that ends a
    list. `number`: of figures, ordinals (-1: last), times and all sizes.
    `glued`: a hyphen ties it to the one before. `many`: a plural. `chain`: it
    speaks of chains. `short`: an abbreviation.
    """

    type: str
    text: str
    start: int
    end: int
    name: str = ""
    number: int = 0
    kind: Kind | None = None
    glued: bool = False
    many: bool = False
    chain: bool = False
    short: bool = False


def read_terminals(
    words: Sequence[Word],
    names: Names,
    source: Source,
    told: set[str],
    below: str,
    row: int = 0,
    clusters: str = "",
) -> tuple[list[Terminal], list[Finding]]:
    """The terminals of a text; words that no phrase has become findings and are left out.

    `told`: names already spoken of, so that each is told once. `below`: what the row is worked
    into, as `assumed.py` has it. `row`: the number of the row whose words they are, from its
    head on. `clusters`: the stitch that the row below makes in clusters.
    """
    found: list[Terminal] = []
    at = 0
    while at < len(words):
        terminal, at = terminal_at(words, at, names)
        found.append(terminal)
    found = turned(found, _PUT_RIGHT)
    found, told_of = without_place_colours(found, source, told)
    found, findings = with_assumed_places(found, below, source, told, clusters)
    findings += told_of
    for terminal in found:
        if terminal.number > LARGEST and terminal.type in ("NUM", "ORD"):
            message, help_ = "this number is too large", "write a number that can be worked"
            span = source.span(terminal.start, terminal.end)
            findings.append(Finding("too-large", message, help_, span))
    found, told_of = without_last_stitches(found, source)
    findings += told_of
    found, told_of = with_both_rows(found, source)
    findings += told_of
    found, told_of = with_fastenings(found, source)
    findings += told_of
    found, told_of = without_sides(found, source, row)
    findings += told_of
    found, told_of = of_the_edge(found, source, row)
    findings += told_of
    found, told_of = without_exceptions(_begun_again(found), source)
    findings += told_of
    findings += unknown_terms(found, names, source, told)
    findings += names_alike(found, names, source, told)
    findings += strangers(found, names, source, told)
    findings += remarks(found, source)
    found = _without_told_brackets(found)
    kept = (t for t in found if t.type not in ("UNKNOWN", "NOTHING", "MADEOF", "REMARK"))
    within = [t if t.number <= LARGEST else replace(t, number=LARGEST) for t in kept]
    return within, findings


def _begun_again(terminals: list[Terminal]) -> list[Terminal]:
    """`commence again in the centre of any loop`: there the row begins; alone it is a remark."""
    places = ("PREP", "TO")
    behind = [t.type for t in terminals[1:]] + [""]
    return [
        replace(t, type="BEGIN") if t.text in _AGAIN and after in places else t
        for t, after in zip(terminals, behind, strict=False)
    ]


_AGAIN = frozenset(f"{word} again" for word in ("begin", "commence", "start"))


def _without_told_brackets(terminals: list[Terminal]) -> list[Terminal]:
    """`(Drop the cord.)`: a remark in brackets goes with them."""
    if not any(t.type == "REMARK" for t in terminals):
        return terminals
    drop: set[int] = set()
    for n, here in enumerate(terminals):
        if here.type != "LP":
            continue
        end = n + 1
        while end < len(terminals) and terminals[end].type in ("REMARK", "SEP", "NOTHING"):
            end += 1
        told = any(t.type == "REMARK" for t in terminals[n:end])
        if told and end < len(terminals) and terminals[end].type == "RP":
            drop |= {n, end}
    return [t for n, t in enumerate(terminals) if n not in drop]


def _made_of(terminals: Sequence[Terminal]) -> list[Terminal]:
    """`a shell of 5 treble` is these; `in the next shell of 5 treble` the group of them."""
    found: list[Terminal] = []
    for n, here in enumerate(terminals):
        named = bool(found) and found[-1].type in _NAMED_BEHIND
        if here.type == "MADEOF" and named:
            chains = [t.type for t in terminals[n + 1 : n + 3]] == ["NUM", "CH"]
            kind = Kind("loop" if chains else "group")  # `in the scallop of 7 chain`
            found.append(replace(here, type="KIND", kind=kind))
            here = replace(here, type="OF")
        found.append(here)
    return found


def _without_adjectives(terminals: Sequence[Terminal]) -> list[Terminal]:
    """`plain d. c.`, `long ones`: the stitch alone; `on the single treble`: one that stands alone;
    `1 single chain`: one."""
    found: list[Terminal] = []
    for n, here in enumerate(terminals):
        behind = terminals[n + 1] if n + 1 < len(terminals) else None
        if any(_is_stitch_of(terminals, start) for start in (n, n - 1)):
            continue
        of_stitch = behind is not None and here.type == behind.type == "STITCH"
        if of_stitch and here.text in ("plain", "single"):
            continue
        if here.type == "STITCH" and here.text == "single" and behind and behind.type == "KIND":
            continue  # `in a single loop`
        if here.text == "ones" and found and found[-1].type == "STITCH":
            continue
        if here.text == "along" and found and found[-1].name == "ss":
            here = replace(here, type="PREP", text="over")
        if behind is not None and here.text == "single" and behind.type == "CH":
            if found and found[-1].type in _NAMED_BEHIND:  # `under each single chain`
                found.append(replace(here, type="NUM", name="", number=1, glued=False))
            continue
        alone = n > 1 and terminals[n - 1].text == "single" and terminals[n - 1].type == "STITCH"
        if alone and here.type == "STITCH" and terminals[n - 2].type in ("THE", "EACH", "NEXT"):
            here = replace(here, type="KIND", kind=Kind("run", 1, here.name))
        found.append(here)
    return found


def _is_stitch_of(t: Sequence[Terminal], at: int) -> bool:
    """Whether `stitch of double crochet` stands here, which is a dc."""
    three = t[at : at + 3] if at >= 0 else []
    named = [x.type for x in three] == ["KIND", "OF", "STITCH"] and three[0].kind == Kind("st")
    part = at > 0 and t[at - 1].type == "ORD"  # `first st of the dc`
    return named and not three[2].many and not part


def _without_glosses(terminals: list[Terminal]) -> list[Terminal]:
    """`16 sc (single crochet)`: a name in brackets right behind the same stitch makes none."""
    found: list[Terminal] = []
    at = 0
    while at < len(terminals):
        three = terminals[at : at + 3]
        if [t.type for t in three] == ["LP", "CLUSTER", "RP"] and found and not three[1].number:
            at += 3  # `…, thread over and through all (cluster)`
            continue
        before = found[-1] if found else None
        if [t.type for t in three] in (
            ["LP", "STITCH", "RP"],
            ["LP", "CH", "RP"],
            ["LP", "KIND", "RP"],
        ):
            name = three[1]
            same = before is not None and (before.type, before.kind) == (name.type, name.kind)
            if before is not None and same and name.name in (before.name, ""):
                at += 3
                continue
        found.append(terminals[at])
        at += 1
    return found


def terminal_at(words: Sequence[Word], at: int, names: Names) -> tuple[Terminal, int]:
    """The terminal that begins at a word, and the place behind it."""
    word = words[at]
    if word.sort is Sort.QUOTED:
        return _terminal("QUOTED", words, at, at + 1), at + 1
    if word.sort is Sort.MARK:
        type_, name = _MARKS.get(word.text, ("", ""))
        if type_:
            return _terminal(type_, words, at, at + 1, name=name), at + 1
        if word.text in _PRINTED:
            return _terminal("MARK", words, at, at + 1), at + 1
        if word.text not in ("\u00d7", "&", "="):
            return _terminal("UNKNOWN", words, at, at + 1), at + 1
    if (end := behind_distance(words, at, names)) > at:
        return _terminal("REMARK", words, at, end, name=DISTANCE), end
    if word.text in vocabulary().colours["opens"] and (end := behind_colour(words, at)) > at:
        return _terminal("COLOUR", words, at, end, name=_in_words(words[at:end])), end
    entry, end = longest(words, at, ways_from(word.text))
    stitch, stitch_end = longest(words, at, names.phrases)
    made_of = entry is not None and entry.terminal == "MADEOF"
    if made_of and (stitch is not None or number_at(words, end) is None):
        entry, end = None, at
    counts = word.sort is not Sort.WORD or word.text in words_that_count()
    ordinal = ordinal_at(words, at) if counts else None
    number = number_at(words, at) if counts else None
    times = vocabulary().times.get(word.text)
    if stitch is not None and stitch_end >= end:
        named = _from_entry(stitch, words, at, stitch_end)
        # A name that the text itself gives: `sdc.`, `lt.`, `treb.`
        letters = not any(vowel in named.text for vowel in "aeiouy")
        cut = any(full.startswith(named.text) and full != named.text for full in _WRITTEN_OUT)
        return replace(named, short=named.short or letters or cut), stitch_end
    if entry is not None and end > max(ordinal[1] if ordinal else 0, number[1] if number else 0):
        return _from_entry(entry, words, at, end), end
    if ordinal is not None and (number is None or ordinal[1] > number[1]):
        return _terminal("ORD", words, at, ordinal[1], number=ordinal[0]), ordinal[1]
    if number is not None:
        return _terminal("NUM", words, at, number[1], number=number[0]), number[1]
    if times is not None:
        return _terminal("TIMES", words, at, at + 1, number=times), at + 1
    if word.text in ("x", "\u00d7"):
        return _terminal("CROSS", words, at, at + 1), at + 1
    return _terminal("UNKNOWN", words, at, at + 1), at + 1


def _in_words(words: Sequence[Word]) -> str:
    return " ".join(word.text for word in words)


def behind_colour(words: Sequence[Word], at: int) -> int:
    """The place behind `with the darkest scarlet wool`, or `at` where no colour stands."""
    colours, end = vocabulary().colours, at
    if words[end].text in ("with", "in"):
        end += 1
    if end < len(words) and words[end].text == "the":
        end += 1
    while end < len(words) and (words[end].text in colours["before"] or ordinal_at(words, end)):
        end += 1
    behind = end
    while behind < len(words) and words[behind].text in colours["colour"]:
        behind += 1
        of = behind + 1 < len(words) and words[behind].text == "of"  # `the darkest shade of red`
        behind += of and words[behind + 1].text in colours["colour"]
    if behind == end:  # `dark wool` has no colour of its own
        shaded = end > at and words[end - 1].text in colours["before"]
        shaded = shaded or (end == at + 2 and words[end - 1].text == "the")  # `with the silk`
        material = end < len(words) and words[end].text in colours["behind"]
        return end + 1 if shaded and material else at
    return behind + (behind < len(words) and words[behind].text in colours["behind"])


def _from_entry(entry: Entry, words: Sequence[Word], at: int, end: int) -> Terminal:
    type_, name = entry.terminal, entry.name
    if type_ in ("SOFT", "HARD"):
        type_, name = "SEP", type_.lower() if type_ == "HARD" else ""
    terminal = _terminal(type_, words, at, end, name=name)
    if type_ == "KIND":
        kind = Kind(entry.name, entry.number or None)
        terminal = replace(terminal, kind=kind, many=entry.many, chain=entry.chain)
    return terminal


def _terminal(
    type_: str, words: Sequence[Word], at: int, end: int, name: str = "", number: int = 0
) -> Terminal:
    first, last = words[at], words[end - 1]
    text = first.text
    if end > at + 1:
        text = " ".join(word.text for word in words[at:end] if word.text != ".")
    short = last.text in vocabulary().short
    return Terminal(
        type_, text, first.start, last.end, name, number, None, first.glued, short=short
    )


_GOES_ON = frozenset(
    {"PREP", "BETWEEN", "TOGETHER", "ALLTOGETHER", "AS", "NOTCOUNTED", "OF", "KIND", "PICOT"}
    | {"CLUSTER", "TO", "TOEND", "TOLAST", "MORE", "INALL", "FROM", "FROMHOOK", "ROUND", "MOD"}
    | {"NOTHING", "WITH", "DIVIDED", "AND", "SEP", "LP", "AFTER", "ENDST", "ATEND", "REST"}
)
"""What may stand behind an abbreviation whose full stop ends nothing."""


def _dots_alone(terminals: Sequence[Terminal], at: int) -> bool:
    """Whether full stops stand for commas here: `3 tr. 3 ch. 3 tr. under the next 5 ch.`"""
    return any(
        0 <= n < len(terminals) and terminals[n].text == "." and terminals[n - 1].short
        for n in (at - 3, at + 3)
    )


DOTTED = "dotted"
"""The name of chains that a book abbreviates with a full stop: `3 ch.`"""


def _dotted(terminal: Terminal) -> Terminal:
    return replace(terminal, name=DOTTED) if terminal.type == "CH" else terminal


def _opens_more(before: Terminal, t: Sequence[Terminal]) -> bool:
    """Whether no step can end in what stands before a full stop: `ea.`, `sk. 2`, `3d. ch.`"""
    touches = before.end == t[0].start
    opens = touches and before.type in ("EACH", "SKIP") and len(t) > 1
    return opens or _is_dotted_order(before, t)


def _is_dotted_order(order: Terminal, t: Sequence[Terminal]) -> bool:
    """Whether the full stop that stands first belongs to `3d.`, as in `1 sc in 3d. ch., 6 ch.`:
    what it is the third of stands behind it, and begins no step of its own."""
    types = [x.type for x in t[1:]]
    figure = order.type == "ORD" and order.text[0].isdigit() and order.end == t[0].start
    begins = types[1:2] in (["NUM"], ["PREP"])
    begins |= types == ["CH", "SEP", "NUM"] and t[2].text == "."  # `3d. Ch. 6`
    return figure and types[:1] != [] and types[0] in NOUNS and not begins


_FIRST_STEP = 3
"""Before so many words the first step of a row has no place yet."""


def _without_dots(terminals: list[Terminal]) -> list[Terminal]:
    """The terminals without the full stops that belong to an abbreviation."""
    types = [terminal.type for terminal in terminals] + ["", ""]
    kept: list[Terminal] = []
    for n, terminal in enumerate(terminals):
        if terminal.text == "." and kept and _opens_more(kept[-1], terminals[n : n + 4]):
            continue
        if terminal.text == "." and kept and kept[-1].short and kept[-1].end == terminal.start:
            # `ch. 3` is one thing, `2 ch. 3 dc` are two.
            counted = types[n + 1] == "NUM" and types[n - 2 if n > 1 else -1] != "NUM"
            behind = types[n + 2]
            made = n + 1 < len(terminals) and terminals[n + 1].text == "made"
            # `1 d.c. into the corner d.c.`
            corner = types[n + 1] == "EXCEPT" and terminals[n + 1].text.startswith("in")
            begins = n < _FIRST_STEP and behind == "SEP"  # `1 d.c. in the corner, * …`
            if (
                made
                or (corner and (begins or behind in ("STITCH", "CH", "KIND")))
                or types[n + 1] in _GOES_ON
                or (counted and behind in ("", "SEP", "RP", "BETWEEN", "AND", "AS"))
            ):
                kept[-1] = _dotted(kept[-1])
                continue
            if types[n + 1] == "SEP":
                kept[-1] = _dotted(kept[-1])
            if types[n + 1] == "NUM" and _dots_alone(terminals, n):
                terminal = replace(terminal, name="")
        kept.append(terminal)
    return kept


def _just_before(terminals: Sequence[Terminal]) -> list[Terminal]:
    """`1 p. (4 ch. and 1 sl. on the preceding sc.)`: on the last one made."""
    found: list[Terminal] = []
    shown = False
    for here in terminals:
        shown = shown if here.type != "LP" else bool(found) and found[-1].type == "PICOT"
        if shown and here.type == "UNKNOWN" and here.text in ("preceding", "previous"):
            here = replace(here, type="ORD", number=-1)
        shown = shown and here.type != "RP"
        found.append(here)
    return found


_PUT_RIGHT = (
    where(_without_dots, "SEP"),
    where(_made_of, "MADEOF"),
    where(_just_before, "PICOT-LP", "UNKNOWN"),
    where(_without_adjectives, "STITCH"),
    where(_without_glosses, "LP"),
    where(on_either_side, "UNKNOWN TOEND STRAY REMARK", "STITCH"),
    where(with_remarks),
)
"""What puts words right before it is told what is strange in them."""
