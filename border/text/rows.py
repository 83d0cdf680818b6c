"""The rows of a border are read: a copy, one text, or clauses, with the claims behind."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby, pairwise

from msgspec.structs import replace

from border.findings import Finding
from border.text.copying.part_copies import part_copy_at
from border.text.copying.row_copies import last_put, read_copy, read_part_copy, said_out
from border.text.framing.copies import CopyWords, copy_at
from border.text.framing.figures import (
    Figure,
    Figures,
    figure_forms,
    is_place,
    opens_place,
    with_figures,
)
from border.text.framing.headings import is_heading
from border.text.framing.leads import behind_title
from border.text.framing.numbering import Section
from border.text.framing.set_apart import steps_set_apart
from border.text.numbers import number_at, row_list_at
from border.text.picots_said import picot_said_last
from border.text.row_texts import BREAKS, MOST_WORDS, Reader, read_texts
from border.text.shown import with_shown_figures
from border.text.source import Source
from border.text.squares.rows import turning_of, with_squares
from border.text.squares.words import SquareRow
from border.text.steps import walk
from border.text.terminals import behind_colour
from border.text.tree import Body, Bracket, Claim, Copy, Row, Text
from border.text.vocabulary import vocabulary
from border.text.wording.assumed import is_shell, made_by, shell_of
from border.text.wording.strangers import taken_as_remark
from border.text.words import Sort, Word, quoted, read_words, without_remarks

MOST_IN_ALL = 50_000
"""So many words, figures written out, and no further row of a border is read."""


def read_rows(sections: Iterable[Section], reader: Reader) -> Iterator[Row]:
    """The rows of a border, as many as are read; what is wrong in them goes to the reader."""
    for section in sections:
        if reader.words > MOST_IN_ALL:
            message = f"the rows up to here have more than {MOST_IN_ALL} words and marks"
            help_ = 'part the border; rows can be copied from another file: as rounds 1-2 of "FILE"'
            span = reader.source.span(*section.head)
            number = section.numbers[0]
            reader.findings.append(Finding("too-large", message, help_, span, number))
            return
        row = read_row(section, reader)
        if row.foundation:
            yield row
            continue
        reader.below = made_by(row, reader.made)
        reader.made |= dict.fromkeys(row.numbers, reader.below)
        reader.turning |= dict.fromkeys(row.numbers, turning_of(row, reader.turning))
        reader.shell = shell_of(row, reader.headings) or reader.shell
        _keep(row, reader.texts)
        yield row


def _keep(row: Row, texts: dict[int, Text]) -> None:
    """Keeps the steps of a row, for those that copy a part of it; not of one by clauses."""
    match row.body:
        case _ if row.broken:
            pass
        case Text() as text:
            texts |= dict.fromkeys(row.numbers, text)
        case Copy(rows=rows, file=None, differences=()):
            for n, number in enumerate(row.numbers):
                if (copied := texts.get(rows[n % len(rows)])) is not None:
                    texts[number] = copied


def read_row(section: Section, reader: Reader) -> Row:
    """One row of a border; what is wrong in it goes to the reader's findings.

    A row that cannot be read as it stands is `broken`, and has no steps.
    """
    source, number, before = reader.source, section.numbers[0], len(reader.findings)
    words, remarks = without_remarks(section.body, source)
    reader.findings += [*remarks, *steps_set_apart(section.body, reader.names, source, number)]
    words = _without_row_before(list(_without_headings(words, reader)), number)
    words = _without_purpose(words, source, reader)
    words = _without_rows_again(words, number, reader)
    words, picot = picot_said_last(words, reader.names, source)
    reader.picot = picot or reader.picot
    words = _with_squares(words, number, reader)
    if len(words) <= MOST_WORDS:
        words, reader.figures = with_shown_figures(words, reader.names, reader.figures)
    unclear = any(finding.code == "squares-unclear" for finding in reader.findings[before:])
    words = _shells_placed(_groups_as_shells(words), number, reader)
    figures = _with_shell_below(words, reader)
    part = part_copy_at(words, reader.names)
    if part is not None:
        part = replace(part, copy=_of_piece(part.copy, section.base))
    words = with_figures(words, figures, MOST_WORDS, reader.names)
    reader.words += len(words)
    start, end = section.head
    head = source.span(start, end)
    span = source.span(start, words[-1].end if words else end)
    plain, colour = _without_colours(words)
    copy = copy_at(plain)
    copy = copy and _of_piece(copy, section.base)
    words = plain if copy is not None else words
    note = ", ".join(filter(None, (section.note, colour if copy is not None else "")))
    body: Body = Text((), span=span)
    claims: tuple[Claim, ...] = ()
    if len(words) > MOST_WORDS:
        message = f"this row has more than {MOST_WORDS} words and marks"
        help_ = "say what is done over and over as a repeat, or part the row"
        reader.findings.append(Finding("too-large", message, help_, head))
    elif unclear:
        pass
    elif part is not None:
        own = with_figures(part.own, figures, MOST_WORDS, reader.names)
        body, claims = read_part_copy(part, own, head, number, reader)
    elif copy is not None:
        said = said_out(copy, words, head, number, reader)
        said = said or last_put(copy, words, number, reader)
        _tell_rows_from(copy, words, number, reader)
        body, claims = said or read_copy(section, copy, words, reader)
    else:
        body, claims = read_texts(words, head, number, reader)
    told = [replace(finding, round=number) for finding in reader.findings[before:]]
    reader.findings[before:] = told
    if any(finding.code in BREAKS for finding in told):
        body = Text((), span=span)
        return Row(section.numbers, body, claims, head, True, note, span=span)
    empty = isinstance(body, Text) and not body.items and not body.ends
    foundation = number < reader.first and empty
    return Row(section.numbers, body, claims, head, False, note, foundation, span=span)


def _of_piece(copy: CopyWords, base: int) -> CopyWords:
    """A copy by the numbers of a piece that counts its own rows: `2nd row of the top: as 1st`."""
    own = copy.rows if copy.file else tuple(n + base for n in copy.rows)
    return replace(copy, rows=own)


def _without_purpose(words: list[Word], source: Source, reader: Reader) -> list[Word]:
    """The words behind `For the border:`, which says what a row is for, `Crazy stitch:`, what it is
    called, or `Other edge of the braid.`, along which it goes, and is told; and behind a colon that
    nothing stands before, as where a remark is set apart."""
    if words and words[0].text == ":":
        return words[1:]
    stop = next((n for n, w in enumerate(words[:_PURPOSE]) if w.text in (":", ".")), 0)
    said = [word.text for word in words[:stop] if word.text != "the"]
    rows = vocabulary().rows
    if stop and words[stop].text == ":" and _tells_of_row(words[:stop]):
        span = source.span(words[0].start, words[stop].end)
        reader.findings.append(taken_as_remark(source, span))
        return words[stop + 1 :]
    purpose = 0 < stop < _SHORT and words[stop].text == ":" and words[0].text == "for"
    title = stop and words[stop].text == "." and _is_title([word.text for word in words[:stop]])
    title = (title and len(words) > stop + 1) or behind_title(words) == stop + 1 > 1
    if title:
        span = source.span(words[0].start, words[stop].end)
        reader.findings.append(taken_as_remark(source, span))
        return words[stop + 1 :]
    edge = said[1:] and stop < _SHORT and said[0] in rows["which"] and said[1] in rows["edge"]
    if not (purpose or edge) or any(word.number for word in words[:stop]):
        return words
    span = source.span(words[0].start, words[stop].end)
    reader.findings.append(taken_as_remark(source, span))
    return words[stop + 1 :]


def _is_title(said: Sequence[str]) -> bool:
    """Whether `For the scalloped edge.`, `Edge.` says what a row is for."""
    named = {"edge", "edging", "heading", "border", *vocabulary().rows["along"]}
    return said[-1] in named and (len(said) == 1 or (said[0] == "for" and len(said) < _SHORT))


def _tells_of_row(words: Sequence[Word]) -> bool:
    """Whether `Work a row of picots as follows:`, `Work on the length of chain as follows:`, `The
    last round is a row of purls:` only tells of the row, before a colon."""
    said = [word.text for word in words]
    places = {"each", "every", "next", "over", "elsewhere", "first", "same", "shell", "*"}
    named = vocabulary().rows["row"].intersection(said) or "length" in said
    tells = said[-1] in ("follows", "thus") or "is" in said
    numbers = any(word.number > 1 or word.sort is Sort.NUMBER for word in words)
    return bool(named) and tells and not numbers and not places.intersection(said)


_PURPOSE = 12
"""In no more words it is said what a row is for, or that it is a row of something."""
_SHORT = 6
"""In no more, `For the border:`."""


def _with_squares(words: list[Word], number: int, reader: Reader) -> list[Word]:
    """The words with the squares that they name as steps, as far as it is said what these are."""
    if len(words) > MOST_WORDS:
        return words
    turning = reader.turning.get(number - 1, 0)
    row = SquareRow(words, number, reader.names, reader.source, reader.told, turning)
    words = with_squares(row, reader.squares, counted=bool(reader.headings.chains_count))
    reader.findings += row.findings
    return words


def _without_colours(words: list[Word]) -> tuple[list[Word], str]:
    """The words of a copy without `with white`, and what was said so: no count depends on it."""
    colours = vocabulary().colours
    if not any(word.text in colours["colour"] or word.text in colours["behind"] for word in words):
        return words, ""
    kept: list[Word] = []
    said: list[str] = []
    at = 0
    while at < len(words):
        if (end := _behind_bracketed(words, at)) > at:
            said.append(" ".join(word.text for word in words[at + 1 : end - 1]))
            at = end
            continue
        opens = words[at].text in colours["opens"]
        end = behind_colour(words, at) if opens or at == 0 else at
        alone = end < len(words) and words[end].text in (".", ",", ";")  # `Next shade; the same`
        end = end if opens or alone else at
        if end > at:
            said.append(" ".join(word.text for word in words[at:end]))
        else:
            kept.append(words[at])
        at = max(end, at + 1)
    while said and kept and kept[0].text in (".", ",", ";"):
        kept.pop(0)
    return kept, ", ".join(said)


def _behind_bracketed(words: Sequence[Word], at: int) -> int:
    """Behind `(with red worsted)`; the same place where no colour stands in a bracket."""
    if words[at].text != "(" or at + 2 >= len(words):
        return at
    end = behind_colour(words, at + 1)
    return end + 1 if end > at + 1 and end < len(words) and words[end].text == ")" else at


def _with_shell_below(words: Sequence[Word], reader: Reader) -> Figures:
    """The figures; where a row makes a shell that nothing shows, those of the row below, told."""
    if not reader.shell or ("shell",) in reader.figures:
        return reader.figures
    named = {"shell", "shells", "sh"} - {name for (name, *_) in reader.names.given}
    called = (n for n, w in enumerate(words) if w.text in named)
    made = (n for n in called if not is_place(words[:n]) and opens_place(words, n + 1))
    if (at := next(made, None)) is None:
        return reader.figures
    steps = tuple(read_words(Source("", reader.shell)))
    shell = Figure(("shell",), steps)
    reader.figures |= dict.fromkeys(figure_forms(shell.name), shell)
    message = f'"{words[at].text}" is taken to be made as the last were: {reader.shell}'
    help_ = f'a heading settles it: "shell = {reader.shell}"'
    span = reader.source.span(words[at].start, words[at].end)
    reader.findings.append(Finding("place-assumed", message, help_, span))
    return reader.figures


def _groups_as_shells(words: list[Word]) -> list[Word]:
    """The words of a row that has `group on group`: these groups are shells, chains and all."""
    texts = [w.text for w in words]
    made = any(
        text == "group"
        and opens_place(words, n + 1)
        and [t for t in texts[n + 2 : n + 4] if t != "the"][:1] == ["group"]
        for n, text in enumerate(texts)
    )
    return [replace(w, text="shell") if w.text == "group" else w for w in words] if made else words


def _shells_placed(words: list[Word], number: int, reader: Reader) -> list[Word]:
    """`Shells in shells`: a shell in each; `3 ch, shell, 3 ch` over shells: in the next, told."""
    below = reader.texts.get(number - 1)
    if below is None or not any(isinstance(i, Bracket) and is_shell(i) for i in walk(below.items)):
        return words
    found: list[Word] = []
    at = 0
    while at < len(words):
        word = words[at]
        noun = at + 2 + ([w.text for w in words[at + 2 : at + 3]] == ["the"])
        several = word.text == "shells" and [w.text for w in words[noun : noun + 1]] == ["shells"]
        if several and opens_place(words, at + 1):
            each, shell = (replace(words[noun], text=text) for text in ("each", "shell"))
            found += [replace(word, text="shell"), words[at + 1], each, shell]
            at = noun + 1
            continue
        before = found[-1].text if found else ","
        behind = [w.text for w in words[at + 1 : at + 2]]
        found.append(word)
        at += 1
        if word.text == "shell" and before in _PARTED and behind in _PARTED_BEHIND:
            found += [replace(word, text=text) for text in ("in", "next", "shell")]
            message = '"shell", with no place, is taken to go into the next shell'
            help_ = 'write "shell in next shell" to say so, or where it goes: "shell in next st"'
            span = reader.source.span(word.start, word.end)
            reader.findings.append(Finding("place-assumed", message, help_, span))
    return found


_PARTED = frozenset({",", ";", ".", ":", "*", "then"})
_PARTED_BEHIND = ([","], [";"], ["."])


def _without_row_before(words: Sequence[Word], number: int) -> list[Word]:
    """The words without `of the 2nd row` in row 3: that is the row below, and says nothing."""
    kept: list[Word] = []
    at = 0
    while at < len(words):
        end = at + 1 if words[at].text == "of" else at
        end += end > at and words[min(end, len(words) - 1)].text == "the"
        behind = _behind_row(words, end, number - 1) if at < end < len(words) else at
        if behind > at:
            at = behind
            continue
        kept.append(words[at])
        at += 1
    return kept


def _names_rows(copy: CopyWords, words: Sequence[Word], before: Sequence[Word]) -> bool:
    """Whether `repeat 3rd and 4th till …`, `turn, repeat from 1st.` is said of rows; `from the
    1st` is else from the first stitch."""
    ended = all(w.text in (".", "till", "until", "for") for w in words[copy.after :][:1])
    turned = any(w.text == "turn" for w in before[-3:])
    return ended and bool(copy.rows) and (turned or copy.rows != (1,))


def _without_rows_again(words: list[Word], number: int, reader: Reader) -> list[Word]:
    """The words without `Repeat from the 2nd row …` behind the steps: that is said of rows."""
    for at in range(1, len(words)):
        if words[at - 1].text not in (".", ";", ",", "and"):
            continue
        if _more_rows_alike(words, at):
            help_ = f'for each of them write a line of its own: "as round {number}."'
            reader.findings.append(_rows_again(words[at:], help_, reader.source))
            return words[:at]
        if words[at - 1].text in (".", ";") and _other_side(words, at):
            help_ = "write them into a border file of its own, to be counted on that edge"
            reader.findings.append(_rows_again(words[at:], help_, reader.source))
            return words[:at]
        verb = at + (words[at].text in ("now", "then") and at + 1 < len(words))
        begun = _begin_again(words, verb)
        if words[verb].text != "repeat" and begun == verb:
            continue
        same_line = [w for w in words[verb : verb + 20] if w.line == words[at].line]
        this = [w.text for w in same_line[1:3]]
        if this[:1] == ["this"] and this[1:] and this[1] in vocabulary().rows["row"]:
            help_ = f'for each time write a line of its own: "as round {number}."'
            reader.findings.append(_rows_again(words[at:], help_, reader.source))
            return words[: max(0, at - 1)]
        said = same_line[max(begun - verb - 1, 0) :]
        copy = copy_at([replace(said[0], text="repeat"), *said[1:]])
        named = vocabulary().rows["row"].intersection(w.text for w in same_line)
        if copy is None or not (named or _names_rows(copy, same_line, words[:at])):
            continue
        first = min(copy.rows, default=number + 1 - copy.back)
        rows = f"rows {first}-{number}" if first < number else f"row {first}"
        help_ = f'for each time write a line of its own: "repeat {rows}."'
        reader.findings.append(_rows_again(words[at:], help_, reader.source))
        while at and words[at - 1].text in ("and", ";", ","):
            at -= 1
        return words[:at]
    return words


def _tell_rows_from(copy: CopyWords, words: Sequence[Word], number: int, reader: Reader) -> None:
    """`Repeat from the 2nd row` as row 4: rows 2 and 3 are to be worked again, and so on."""
    texts = [w.text for w in words[:2]]
    if texts != ["repeat", "from"] or len(copy.rows) != 1 or copy.rows[0] >= number - 1:
        return
    (first,) = copy.rows
    message = f"this row is taken for round {first} again; those behind it are meant, too"
    next_ = f"round {number + 1}: as round {first + 1}."
    help_ = f'for them write lines of their own, beginning with "{next_}"'
    span = reader.source.span(words[0].start, words[-1].end)
    reader.findings.append(Finding("rows-again", message, help_, span))


_LAST_WORDS = 50
"""In no more words a row says that others are worked again on the other side."""


def _other_side(words: Sequence[Word], at: int) -> bool:
    """Whether `Now work the other side of the foundation the same`, `This completes one half; the
    other half is worked in the same manner …` is the rest of a row."""
    opens = words[at].text in ("now", "the", "this", "then")
    if not opens or len(words) - at > _LAST_WORDS:
        return False
    texts = [w.text for w in words[at:]]
    sides = {("other", "side"), ("other", "half"), ("second", "half")} & set(pairwise(texts))
    steps = {"*", "repeat", "miss", "skip"} & set(texts)
    return bool(sides) and "same" in texts and not steps


def _begin_again(words: Sequence[Word], at: int) -> int:
    """Behind `begin again`, `and so continue`, before the rows from which; else the same place."""
    texts = [w.text for w in words[at : at + 4]]
    for said in _AGAIN:
        at_row = len(said) + (texts[len(said) : len(said) + 1] in (["at"], ["from"]))
        if tuple(texts[: len(said)]) == said and at_row > len(said):
            return at + at_row
    return at


_AGAIN = (
    *((verb, "again") for verb in ("begin", "commence", "start")),
    *((*so, "continue") for so in ((), ("so",))),
    ("proceed", "again"),
    ("go", "on"),
    ("work",),
)


def _rows_again(words: Sequence[Word], help_: str, source: Source) -> Finding:
    span = source.span(words[0].start, words[-1].end)
    said = quoted(source, span)
    message = f'this is said of whole rows, and is not worked here: "{said}"'
    return Finding("rows-again", message, help_, span)


def _more_rows_alike(words: Sequence[Word], at: int) -> bool:
    """`Make 3 more rounds like this`, `work two other rows the same`."""
    texts = [w.text for w in words[at : at + 8]]
    number = number_at(words, at + 1)
    if texts[0] not in ("make", "work", "do") or number is None:
        return False
    behind = texts[number[1] - at :]
    rows = vocabulary().rows["row"]
    more = len(behind) > 1 and behind[0] in ("more", "other", "others")
    like = len(behind) > 1 and behind[0] in rows and behind[1] == "like"  # `work 30 rows like this`
    return like or (more and behind[1] in rows)


def _behind_row(words: Sequence[Word], at: int, number: int) -> int:
    """Behind `2nd row`, `round 2`, of that number; 0 if none. `9 round the stem` is no row."""
    listed = row_list_at(words, at)
    if listed is None or not listed.named or listed.numbers != (number,):
        return 0
    return listed.after if listed.ordinal or words[at].sort is Sort.WORD else 0


def _without_headings(words: Sequence[Word], reader: Reader) -> Iterator[Word]:
    """The words of a body without lines that are headings; those are told."""
    for line_number, group in groupby(words, lambda word: word.line):
        line = list(group)
        if line_number != words[0].line and is_heading(line):
            span = reader.source.span(line[0].start, line[-1].end)
            message = "a heading stands behind the first row"
            help_ = (
                'move it up, before round 1; if it is a row, begin it with its number: "round 2:"'
            )
            reader.findings.append(Finding("bad-heading", message, help_, span))
        else:
            yield from line
