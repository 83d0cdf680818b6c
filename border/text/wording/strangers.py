"""Words that a border text does not know, and those that are taken for a remark."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.findings import Finding, Span
from border.text.distances import DISTANCE
from border.text.source import Source
from border.text.vocabulary import Names, names, vocabulary
from border.text.wording.passing import NOUNS, OPENS, WHICH, behind_chains, ended, past
from border.text.wording.wheels import WHEELS
from border.text.words import quoted, shortened

if TYPE_CHECKING:
    from border.text.terminals import Terminal

_REMARK = 3
"""So many unknown words close together are a remark, and told as one."""

_LITTLE = frozenset(
    {"THE", "TO", "STRAY", "WITH", "OF", "OR", "AS", "FROM", "PREP", "BUT", "SAME", "OTHER"}
    | {"NOTHING", "ROUND", "AFTER", "ATEND", "PUTHOOK"}
)
"""Words that begin or end a remark: `to keep it flat`, `of which it is made`."""

_WORK = frozenset({"work", "working", "make", "making", "put"})

_GUESSES = 40
"""So many unknown words are given their nearest known one; to look is slow."""


def strangers(
    terminals: Sequence[Terminal], known: Names, source: Source, told: set[str]
) -> Iterator[Finding]:
    """Words that the vocabulary does not have; a run of them, as of a remark, is told once."""
    apart = 0  # where the last remark of several words ends
    for run in _runs(terminals, source):
        for words in [run] if len(run) >= _REMARK else [[one] for one in run]:
            here = words[0]
            if here.start < apart:
                continue
            near = None
            if len(words) > 1:
                first, last = _widened(words, terminals)
            elif (asked := asked_place(here.text)) is not None:
                word = shortened(source.text[here.start : here.end])
                message = f'"{word}" is one thing in this book, and another in that'
                yield Finding("unknown-word", message, asked, source.span(here.start, here.end))
                continue
            else:
                looked_up = len(told) < _GUESSES and here.end - here.start < _LONG
                near = _nearest(here.text, known) if looked_up else None
                told.add(here.text)
                first, last = _remark_round(here, terminals, slip=near is not None)
            apart = last.end if first is not last else apart
            span = source.span(first.start, last.end)
            if _says_how_often(first, last, terminals):
                yield Finding("unknown-word", _HOW_OFTEN, _SAY_HOW_OFTEN, span)
            elif len(words) > 1:
                said = source.text[span.start : span.end]
                message = f'these words are no part of a border text: "{shortened(said)}"'
                yield Finding("unknown-word", message, _offer(span, source), span)
            else:
                yield _of_one(here, span, near, terminals, source)


_LONG = 30
"""No longer word is a slip of the pen for another."""


def _offer(span: Span, source: Source) -> str:
    remark = shortened(source.text[span.start : span.end], 160)
    return f'set a remark apart: "-- {remark} --", or put it behind a #'


def _of_one(
    here: Terminal, remark: Span, near: str | None, terminals: Sequence[Terminal], source: Source
) -> Finding:
    """What is told of one strange word, and of the remark round it; `near`: the word it may be."""
    word = shortened(source.text[here.start : here.end])
    offer = _offer(remark, source)
    help_ = f'did you mean "{near}"? Otherwise {offer}' if near else offer
    at = next(n for n, terminal in enumerate(terminals) if terminal is here)
    counted = at > 0 and terminals[at - 1].type == "NUM" and terminals[at - 1].text.isdigit()
    if counted and near is None and here.text.isalpha() and ended(terminals, at + 1):
        help_ = (
            f'it is counted: say in a heading what it is, as in "{word} = 3 dc", or, where it is '
        )
        help_ += f'another name of a stitch, "{word} means us dc"'
    pronoun = here.text in ("this", "these", "those")
    if near is None and not pronoun and _named_as_place(terminals, at):
        means = " or ".join(f'"{word} means {one}"' for one in ("shell", "space"))
        help_ = f"if it is worked into, say what it is in a heading: {means}; else {offer}"
    if here.text in WHEELS:
        help_ = f'what is worked on each of them is a clause: "over each motif: …"; {offer}'
    behind = terminals[at + 1].type if at + 1 < len(terminals) else ""
    if here.text in ("before", "beyond") and behind in ("THE", "NEXT", "NUM", "STITCH", "KIND"):
        help_ = 'name the place itself: "in last ch of next space", "in 2nd st", "in next dc"; '
        help_ += f"or, where a place is named already, {offer}"
    if here.text == "down" and any(t.type == "CH" for t in terminals):
        help_ = f"where these are stitches back along chains just made, {_WORKED_BACK}"
    before = source.text[max(0, remark.start - _INDENT) : remark.start].rstrip(" ")
    if remark.start > terminals[0].start and before.endswith("\n"):
        help_ += '; if a row begins here, write its number first: "round 2:"'
    span = source.span(here.start, here.end)
    return Finding("unknown-word", f'"{word}" is not a word known here', help_, span)


_HOW_OFTEN = "this says how often, in words that are not known here"
_SAY_HOW_OFTEN = 'write the number of times in its place: "repeat from * 5 times"'


def _says_how_often(first: Terminal, last: Terminal, terminals: Sequence[Terminal]) -> bool:
    """Whether `until you have 12 spokes` stands from the first of these words to the last."""
    at = next(n for n, t in enumerate(terminals) if t is first)
    end = next(n for n, t in enumerate(terminals) if t is last)
    opens = first.type == "TILL" or first.text in ("until", "till")
    return opens and any(t.type == "NUM" for t in terminals[at : end + 1])


def _named_as_place(t: Sequence[Terminal], at: int) -> bool:
    """Whether a strange word stands where a place is named, as its noun: `in each wheel`."""
    before = at - 1
    while before > at - _FEW and before >= 0 and t[before].type in WHICH | {"NUM", "EACHOF"}:
        before -= 1
    opened = before >= 0 and t[before].type in ("PREP", "OF", "BETWEEN", "SKIP")
    return opened and ended(t, at + 1)


_FEW = 6
"""No place is named with more words before its noun."""
_INDENT = 20
"""No line is indented by more."""


def remarks(terminals: Sequence[Terminal], source: Source) -> Iterator[Finding]:
    """`a chain of the required length`, `begin at a corner`: no count depends on them."""
    for at, terminal in enumerate(terminals):
        if terminal.text in _BACK and behind_chains(terminals[:at]):
            span = source.span(terminal.start, terminal.end)
            message = "what stands behind this is worked into the row below; it may be worked back "
            message += "down the chains just made"
            help_ = f'if so, {_WORKED_BACK}; if not, set this apart: "-- {quoted(source, span)} --"'
            yield Finding("perhaps-just-made", message, help_, span)
        if terminal.type == "REMARK":
            span = source.span(terminal.start, terminal.end)
            told, said = taken_as_remark(source, span), quoted(source, span)
            if terminal.name == DISTANCE:
                message = f'"{said}" is a distance on the cloth, where no places are counted: the '
                message += "places of this edge are where the stitches go"
                told = replace(told, message=message)
            words = set(terminal.text.split())
            if words & {"turn", "turning"}:
                message = f'"{said}" is passed over: whether rows are turned a heading says'
                help_ = 'write "worked: one way" above row 1, if no row of an open edge is turned'
                told = replace(told, message=message, help=help_)
            ends = {"end", "hand"} & words and not _SEWN & words
            if ends and terminal.text[:4] != "leav":
                message = f'"{said}" is taken for a remark: a heading says where rows begin'
                help_ = 'write "worked: one way" above row 1, if an open edge is not turned'
                told = replace(told, message=message, help=help_)
            if terminal.text in _ON_SIDES and at and terminals[at - 1].type in ("CH", "PICOT"):
                message = f'"{said}" is passed over, so that what stands before it is made once'
                help_ = "write it twice, before and behind the stitch that it is on both sides of; "
                told = replace(told, message=message, help=f"{help_}or {told.help}")
            yield told


_WORKED_BACK = (
    "they cannot be counted: write what it comes to as one stitch, "
    'as in "leaf = 3 dc together", or its chains alone, "leaf = ch 7"'
)
_SEWN = frozenset({"sew", "weave", "darn", "run", "draw"})
"""What is done with the end of a thread."""
_BACK = frozenset({"work back", "working back"})
_ON_SIDES = frozenset(f"{at} {each} side" for at in ("on", "at") for each in ("each", "either"))


def taken_as_remark(source: Source, span: Span) -> Finding:
    """What is told of words on which no count depends."""
    message = f'"{quoted(source, span)}" is taken for a remark, and changes nothing'
    apart = shortened(source.text[span.start : span.end], 160)
    return Finding("taken-as-remark", message, f'set it apart: "-- {apart} --"', span)


def asked_place(word: str) -> str | None:
    """How to say what a `scallop` or a `tuft` is here; None for other words."""
    table = vocabulary().places_asked
    singular = (word, word[:-1], word[:-2], word.replace("leaves", "leaf"))
    one = next((w for w in singular if w in table), None)
    if one is None:
        return None
    means = " or ".join(f'"{one} means {kind}"' for kind in table[one])
    made = f'; where it is made, say of what: "{one} = 2 dc, ch 2, 2 dc"'
    made = made if "shell" in table[one] else ""
    return f"write a heading that says what is worked into: {means}{made}"


def _widened(run: Sequence[Terminal], terminals: Sequence[Terminal]) -> tuple[Terminal, Terminal]:
    """The first and last word of a remark: with all up to the commas round it, where nothing is
    made there, or else with the little words on either side of it."""
    first = next(n for n, t in enumerate(terminals) if t is run[0])
    last = next(n for n, t in enumerate(terminals) if t is run[-1])
    chunk = _between_commas(terminals, first, last)
    if not (_makes(chunk) or _copies(chunk)):
        return _with_bracket(chunk, terminals)
    behind = last + 1
    while behind < len(terminals) and _is_little(terminals[behind]):
        behind += 1
    number = terminals[behind : behind + 1]
    if number and number[0].type == "NUM" and ended(terminals, behind + 1):
        behind += 1  # `divisible by 19`
    which = first
    while which and terminals[which - 1].type in WHICH | {"NUM"}:
        which -= 1
    opened = which > 0 and terminals[which - 1].type in OPENS | {"TO"}
    if behind < len(terminals) and terminals[behind].type in NOUNS | WHICH | {"NUM"}:
        placed = any(t.type in _PLACED for t in terminals[last + 1 : behind])
        if opened and not placed:  # `on the finished dc`, `in the remaining half of the loop`
            return terminals[first], terminals[behind - 1]
        behind = last + 1 if placed else behind
    first = which - 1 if opened else first
    while first and _is_little(terminals[first - 1]):
        first -= 1
    return terminals[first], terminals[behind - 1]


def _between_commas(terminals: Sequence[Terminal], first: int, last: int) -> Sequence[Terminal]:
    """What stands between two commas, or up to a `work` that steps follow."""
    start = first
    while first and not _divides(terminals[first - 1]):
        first -= 1
    while last + 1 < len(terminals) and not _divides(terminals[last + 1]):
        last += 1
    if terminals[first].text == "if":  # `if it does not come out even, skip one less`
        while last + 1 < len(terminals) and terminals[last + 1].name != "hard":
            last += 1
        return terminals[first : last + 1]
    ends = [n for n in range(first, start) if terminals[n].type in _ENDS_ROW]
    first = ends[-1] + 1 if ends else first  # `fasten off and weave the end in`
    chunk = terminals[first : last + 1]
    work = next((n for n, t in enumerate(chunk) if t.text in _WORK and n > start - first), 0)
    made = work and _makes(chunk[work:])
    return chunk[:work] if made and not _makes(chunk[:work]) else chunk


_ENDS_ROW = frozenset({"ENDING", "TOEND", "REPEAT"})
"""What these say is worked: `all round the shawl`, `turn the work`."""


def _with_bracket(
    chunk: Sequence[Terminal], terminals: Sequence[Terminal]
) -> tuple[Terminal, Terminal]:
    """The first and last of these words, or the halves of the bracket that they fill."""
    start = next(n for n, t in enumerate(terminals) if t is chunk[0])
    end = past(terminals, start + len(chunk), "SEP")
    opens = start > 0 and terminals[start - 1].type == "LP"
    if opens and end < len(terminals) and terminals[end].type == "RP":
        return terminals[start - 1], terminals[end]
    return chunk[0], chunk[-1]


def _remark_round(
    stranger: Terminal, terminals: Sequence[Terminal], *, slip: bool
) -> tuple[Terminal, Terminal]:
    """The first and last word of the remark that a strange word is of.

    That is all between two commas where nothing is made there, or more is strange; otherwise
    the word with the little words beside it, and what is perhaps a slip alone.
    """
    at = next(n for n, t in enumerate(terminals) if t is stranger)
    chunk = _between_commas(terminals, at, at)
    counted = (
        stranger is not chunk[0] and terminals[at - 1].type == "NUM" and stranger.text.isalpha()
    )
    named = counted and terminals[at - 1].text not in ("a", "an") and stranger.text not in _HAS
    strange = [t for t in chunk if t.type == "UNKNOWN"]
    if not named and not _copies(chunk) and not _makes(chunk):
        return _with_bracket(chunk, terminals)
    if len(strange) > 1 and not named and not _makes(_from_to(chunk, strange)):
        return _widened(strange, terminals)
    return (stranger, stranger) if slip else _widened([stranger], terminals)


def _from_to(chunk: Sequence[Terminal], strange: Sequence[Terminal]) -> Sequence[Terminal]:
    """The words of a chunk from the first strange one of it to the last."""
    first = next(n for n, t in enumerate(chunk) if t is strange[0])
    last = next(n for n, t in enumerate(chunk) if t is strange[-1])
    return chunk[first : last + 1]


_BEHIND = 2
"""No further on, a number of times is said of what stands before these words."""
_MADE = frozenset({"STITCH", "CH", "PICOT", "CLUSTER", "TIMES", "REPEAT"})
_SPOKEN_OF = frozenset({"THE", "ALL", "THEM"})
_HAS = frozenset({"has", "have", "had", "is", "are", "contains", "gets"})


def _makes(words: Sequence[Terminal]) -> bool:
    """Whether a step may stand among these words: not where the stitches in them are only spoken
    of, as in `the treble should be worked loosely`."""
    if [x.text for x in words[:2]] in _TELLS_ON or words[0].text in ("so that", "if"):
        return False  # `so that you have five dc with 3 ch between each`
    for n, here in enumerate(words):
        if here.type == "SKIP" and any(x.type == "NUM" for x in words[n + 1 : n + 3]):
            return True  # `after every treble pass over 1 stitch`
        if here.type not in _MADE:
            continue
        which = n - 1
        while which >= 0 and words[which].type in ("NUM", "ORD", "OF"):
            which -= 1
        spoken_of = which >= 0 and words[which].type in _SPOKEN_OF
        spoken_of |= which >= 0 and words[which].text.endswith(" the")  # `putting the sc beyond`
        of = n > 0 and words[n - 1].type == "OF"  # `a length of chain`
        spoken_of |= of and which >= 0 and words[which].type == "UNKNOWN"
        placed = which > 0 and words[which - 1].type in _PLACED
        has = (which >= 0 and words[which].text in _HAS) or (
            which > 0 and words[which].text == "now" and words[which - 1].text in _HAS
        )
        spoken_of |= has and words[0].type != "NUM"  # `the leaf has now 6 dc`
        told = here.type == "TIMES" and n > _BEHIND  # `thread over the needle 10 times`
        if not told and (placed or not spoken_of or here.type in ("TIMES", "REPEAT")):
            return True
    return False


_PLACED = frozenset({"PREP", "BETWEEN", "TO", "SKIP"})
_TELLS_ON = (["so", "that"], ["that", "you"], ["which", "makes"], ["this", "makes"])
"""What begins so tells what has come of the steps before it."""


def _copies(words: Sequence[Terminal]) -> bool:
    """Whether words may be a copy of another row: `as the 2nd row`, but not `so as to have 3`."""
    types = {t.type for t in words}
    rows = "ROW" in types and types & {"SAME", "REPEAT"}  # not so: `run ribbon through 1st row`
    before = ["", *(t.text for t in words)]
    like = (t.type == "LIKE" or (t.text == "as" and before[n] != "so") for n, t in enumerate(words))
    return bool(rows) or any(like)


def _divides(terminal: Terminal) -> bool:
    """Whether a comma, bracket or mark parts what stands on either side of it."""
    mark = terminal.type == "SEP" and not terminal.text.isalpha()
    return mark or terminal.text == "then" or terminal.type in ("LP", "RP", "STAR")


def _is_little(terminal: Terminal) -> bool:
    """Whether a word is of no use in a row without what stands beside it."""
    return terminal.type in _LITTLE or (terminal.type == "SEP" and terminal.text.isalpha())


def _runs(terminals: Sequence[Terminal], source: Source) -> Iterator[list[Terminal]]:
    """Unknown words in runs: at most two known ones, and nothing that parts them, in between."""
    run: list[Terminal] = []
    last = 0
    for n, terminal in enumerate(terminals):
        if terminal.type != "UNKNOWN":
            continue
        between = terminals[last + 1 : n]
        if run and (len(between) > 2 or any(_parts(t, source) for t in between)):
            yield run
            run = []
        run.append(terminal)
        last = n
    if run:
        yield run


def _parts(terminal: Terminal, source: Source) -> bool:
    """Whether remarks end here: at a hard separator, and where the steps of a figure begin or end,
    which stand among the headings; the bracket round them is not in the text."""
    bracket = terminal.type in ("LP", "RP")
    unwritten = bracket and source.text[terminal.start : terminal.end] != terminal.text
    return unwritten or terminal.name == "hard"


def _nearest(word: str, known: Names) -> str | None:
    from difflib import get_close_matches

    close = get_close_matches(word, _known_words(known.terms), cutoff=0.7)
    return close[0] if close and close[0] != word else None


@lru_cache(maxsize=4)
def _known_words(terms: str) -> tuple[str, ...]:
    table = vocabulary()
    patterns = (choices for alike in table.patterns.values() for choices, _ in alike)
    phrases = [phrase for choices in patterns for forms in choices for phrase in forms]
    phrases += names(terms).known
    words = {word for phrase in phrases for word in phrase if len(word) > 1}
    return tuple(sorted(words | {*table.numbers, *table.ordinals, *table.times}))
