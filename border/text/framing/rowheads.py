"""Row heads: where each row of a border begins, and which rounds it is.

`round 1:`, `1st round.`, `2d row--`, `rounds 2 and 4:`, `last row:`, `edging:` at
the start of a line. A line that goes on from `as`, `repeat`, `of` or `and` is none,
but for a head that comes next and has a colon or a dash.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from border.text.framing.copies import copy_at
from border.text.framing.leads import behind_lead
from border.text.framing.preamble import behind_words, bids, of_chain
from border.text.numbers import LAST_ROW, number_at, row_list_at
from border.text.vocabulary import is_colour, vocabulary
from border.text.words import Sort, Word

_ENDED = frozenset({".", ")", "--", "\u2014", "*"})
_BARE = frozenset({".", ":", ")", "\u2014"})
_FIRM = frozenset({".", ":", "--", "\u2014"})
_CHAIN = 40
"""So many words and marks may speak of a chain before a head on their line."""
_EDGES = frozenset({"edge", "side", "scallops", "points", "heading"})
_SEVERAL = 3
"""So many rows may have one head without the word row."""
_MARKS = frozenset({":", ".", ",", ";", "—", "--", "-"})


class Head(Struct, frozen=True):
    """A row head: words [at, body) of the text, and the numbers that it names.

    No numbers: `last row`, `edging`, which go on from the highest so far. Words
    [note[0], note[1]) say something of the row that is no step: a colour. Words [edge[0],
    edge[1]) name an edge, and no row: `heading`, `other side of the braid`. Words [lead[0],
    lead[1]) stand before the number: `Border.`, `For the upper edge,`; words [piece[0], piece[1])
    behind it, and name a piece: `of the heading`.
    """

    at: int
    body: int
    numbers: tuple[int, ...]
    sound: bool
    note: tuple[int, int] = (0, 0)
    edge: tuple[int, int] = (0, 0)
    lead: tuple[int, int] = (0, 0)
    piece: tuple[int, int] = (0, 0)


def find_heads(words: Sequence[Word]) -> tuple[list[Head], int]:
    """All row heads, in the order of the text, and where it ends: behind the first head with
    which there are more rounds than a border has nothing is read."""
    heads: list[Head] = []
    goes_on = vocabulary().rows["goes_on"]
    coming = 1
    named = 0
    for at, word in enumerate(words):
        if at > 0 and words[at - 1].line == word.line:
            inside = words[at - 1].text == "." if heads else _behind_chain(words, at)
            head = _run_in(words, at, coming) if inside else None
            if inside and not heads:
                head = head or _bare_head(words, at, coming)  # `Chain 35, turn. 1. …`
            if head is not None:
                heads.append(head if heads else replace(head, at=behind_words(words, at)))
                coming += 1
            continue
        if heads and words[at - 1].text in goes_on and not _plainly(words, at, coming):
            continue
        begins = not heads or words[at - 1].text in _ENDED
        unbegun = bool(heads) and heads[-1].body == at
        head = _led_head(words, at, coming) if begins and not unbegun else None
        head = head or _head_at(words, at, begins)
        if head is None and begins:
            head = _bare_head(words, at, coming) or _edge_head(words, at)
            head = head or _told_edge(words, at)
            head = head or (_copy_alone(words, at) if heads else None)
        if head is not None:
            named += len(head.numbers) if head.sound and head.numbers else 1
            if named > LAST_ROW:
                return [*heads, replace(head, numbers=(), sound=False)], head.body
            heads.append(head)
            coming = max(head.numbers, default=coming) + 1
    return heads, len(words)


def _behind_chain(words: Sequence[Word], at: int) -> bool:
    """Whether what stands before a word on its line is the chain to begin with."""
    end = bids(words, at)
    if words[at - 1].text not in (".", "--") and end == at:
        return False
    start = at
    while start > 0 and words[start - 1].line == words[at].line:
        start -= 1
        if at - start > _CHAIN:
            return False
    return of_chain(words[start:end])


def _run_in(words: Sequence[Word], at: int, coming: int) -> Head | None:
    """`… in each st. 2nd row.—…` inside a line: the head of the row that comes next."""
    if words[at].sort is Sort.MARK:
        return None
    head = _head_at(words, at, begins=False)
    marked = head is not None and words[head.body - 1].text in _FIRM
    return head if head is not None and marked and head.numbers == (coming,) else None


def _plainly(words: Sequence[Word], at: int, coming: int) -> bool:
    """Whether `2nd row.—`, which comes next, begins below `…; repeat`, and is not repeated."""
    head = _run_in(words, at, coming)
    return head is not None and words[head.body - 1].text != "."


def _led_head(words: Sequence[Word], at: int, coming: int) -> Head | None:
    """`Border. 1st row.--`, `For the border crochet the 1st round:`: words before a numbered head.

    Its number comes next; or it is 1 again, with a mark before it.
    """
    for start in behind_lead(words, at):
        head = _head_at(words, start, begins=False)
        if head is None or not head.sound or words[head.body - 1].text not in _FIRM:
            continue
        named = any(w.text in vocabulary().rows["row"] for w in words[start : head.body])
        parted = words[start - 1].sort is Sort.MARK or bids(words, start) < start
        if named and (head.numbers[:1] == (coming,) or (parted and head.numbers[:1] == (1,))):
            end = start
            while words[end - 1].sort is Sort.MARK:
                end -= 1
            return replace(head, at=at, lead=(at, end))
    return None


def _bare_head(words: Sequence[Word], at: int, coming: int) -> Head | None:
    """`1.`, `2nd.`, `5, 6.`, `2 row.` at the start of a line: a head only where its number comes
    next."""
    listed = row_list_at(words, at)
    if listed is None or listed.numbers[:1] != (coming,):
        return None
    several = len(listed.numbers)
    if several > _SEVERAL or listed.numbers != tuple(range(coming, coming + several)):
        return None
    row = listed.named and words[at + 1].text in _ONE_ROW
    if (listed.named and not row) or (several == 1 and listed.after != at + 1 + row):
        return None
    closed = listed.after < len(words) and words[listed.after].text == ")"
    body = listed.after + 1 if closed else _past_mark(words, listed.after)
    marks = _BARE | {"--"} if row else _BARE
    if body is None or body == listed.after or words[listed.after].text not in marks:
        return None
    return Head(at, body, listed.numbers, True)


_ONE_ROW = frozenset({"row", "round", "rnd", "rd", "r"})
"""What a number of no order stands before as a head: `2 row.`, `1 r--`, not `2 rows.`."""


def _edge_head(words: Sequence[Word], at: int) -> Head | None:
    """`Heading.--`, `For the edging:`, `Other edge of the braid--`: an edge, and a firm mark."""
    rows = vocabulary().rows

    def past(n: int, *alike: str) -> int:
        return n + (n < len(words) and words[n].text in alike)

    start = past(past(at, "for"), "the")
    end = past(start, *rows["alone"], *rows["along"])
    named = end == start or words[start].text in rows["along"]
    qualified = past(start, *rows["which"])
    if qualified > start and (behind := past(qualified, *rows["edge"])) > qualified:
        end, named = behind, True
    of = past(end, "of")
    pieces = past(past(of, "the"), *rows["piece"])
    if end > start and of > end and pieces > of:
        end = past(pieces, "chain")
    body = _past_mark(words, end) if end > start else None
    if body is None or not (
        {":", "—", "--"} & {w.text for w in words[end:body]} or _bids(words, at, body)
    ):
        return None
    return Head(at, body, (), True, edge=(start, end) if named else (0, 0))


def _told_edge(words: Sequence[Word], at: int) -> Head | None:
    """`When the stars are joined, work along the upper edge:`: words that name an edge, no step,
    a colon and a mark."""
    for end in behind_lead(words, at):
        colon = end - 1
        while words[colon].sort is Sort.MARK and words[colon - 1].sort is Sort.MARK:
            colon -= 1
        marked = words[colon].text == ":" and words[end].text in ("*", "x", "\u00d7", "+")
        said = {word.text for word in words[at:colon]}
        if marked and said & {"along", "on", "for"} and said & _EDGES:
            return Head(at, end, (), True, edge=(at, colon))
    return None


def _bids(words: Sequence[Word], at: int, body: int) -> bool:
    """Whether `For the edge, work …`, `For the edge, 2 dc …` begins a row: for what, and what."""
    if words[at].text != "for" or body >= len(words):
        return False
    return words[body].text in ("work", "make") or number_at(words, body) is not None


def _copy_alone(words: Sequence[Word], at: int) -> Head | None:
    """`Repeat these two rows.` on a line of its own: rows without a head."""
    alone = words[at].text == "repeat" and copy_at(words[at : at + 12]) is not None
    return Head(at, at, (), True) if alone else None


def _head_at(words: Sequence[Word], at: int, begins: bool) -> Head | None:
    """The head at a word; where a row is bound to begin there, its mark may be forgotten."""
    rows = vocabulary().rows
    text = words[at].text if words[at].sort is Sort.WORD else ""
    first = at + 1 if text == "the" else at
    if text == "for" and at + 2 < len(words) and words[at + 1].text == "the":
        first = at + 2
    if first >= len(words):
        return None
    text = words[first].text
    if text in rows["coming"] and first + 1 < len(words) and words[first + 1].text in rows["row"]:
        body = _past_mark(words, first + 2)
        return Head(at, body, (), True) if body is not None else None
    if text in rows["alone"] and words[at].text != "for":
        body = _past_mark(words, first + 1)
        return Head(at, body, (), True) if body is not None and body > first + 1 else None
    listed = row_list_at(words, first)
    if listed is None:
        return None
    after = _past_and_last(words, listed.after)
    named = listed.named or after > listed.after
    piece = (after, _past_piece(words, after)) if named else (after, after)
    after = piece[1]
    piece = piece if after > piece[0] else (0, 0)
    note, after = _note(words, after)
    body = _past_mark(words, after)
    if body is not None and note == (0, 0):
        note, body = _aside(words, body)
    if named and text in rows["row"]:
        # With "round 2" in front, a forgotten colon does no harm.
        return Head(at, body or after, listed.numbers, listed.sound, note, piece=piece)
    if body is None and named and listed.ordinal and begins:
        body = after
    if body is None or not listed.ordinal:
        return None
    if not named:
        marks = "".join(word.text for word in words[after:body])
        if marks in ("", ".", ",", ";", "-"):
            return None
    return Head(at, body, listed.numbers, listed.sound, note, piece=piece)


def _past_piece(words: Sequence[Word], at: int) -> int:
    """Behind `of the border`, as in `1st row of the edging`."""
    end = at + 1 if at < len(words) and words[at].text == "of" else at
    end += end > at and words[min(end, len(words) - 1)].text == "the"
    rows = vocabulary().rows
    pieces = (*rows["alone"], *rows["along"], "border", "lace")
    return end + 1 if at < end < len(words) and words[end].text in pieces else at


def _past_and_last(words: Sequence[Word], at: int) -> int:
    """Behind `and last row`, as in `6th and last round`."""
    rows = vocabulary().rows
    if at + 2 < len(words) and words[at].text == "and" and words[at + 1].text in rows["coming"]:
        return at + 3 if words[at + 2].text in rows["row"] else at
    return at


def _aside(words: Sequence[Word], at: int) -> tuple[tuple[int, int], int]:
    """`(Wrong side.)` behind the mark of a head, and the place behind it."""
    end = at + 1
    while end < len(words) and is_colour(words[end].text):
        end += 1
    behind = end + 1 if end < len(words) and words[end].text == "." else end
    opens = at < len(words) and words[at].text == "(" and end > at + 1
    if opens and behind < len(words) and words[behind].text == ")":
        return (at + 1, end), _past_mark(words, behind + 1) or behind + 1
    return (0, 0), at


def _note(words: Sequence[Word], at: int) -> tuple[tuple[int, int], int]:
    """What a head says besides: `(lightest scarlet)`, `, white`, `, wrong side`; and the place
    behind it."""
    line = [n for n in range(at, min(at + 12, len(words))) if words[n].line == words[at - 1].line]
    if line and words[at].text == "(":
        end = next((n for n in line if words[n].text == ")"), None)
        behind = None if end is None else _past_mark(words, end + 1)
        colour = end is not None and any(is_colour(words[n].text) for n in range(at + 1, end))
        if end is not None and behind is not None and (behind > end + 1 or colour):
            return (at + 1, end), end + 1
    start = at + 1 if line and words[at].text == "," else at
    end = start
    while end in line and (is_colour(words[end].text) or words[end].text in ("and", "in", "with")):
        end += 1
    colours = vocabulary().colours["colour"] | {"side", "outside", "inside"}
    coloured = any(words[n].text in colours for n in range(start, end))
    if coloured and end in line and words[end].text in (":", "—", "--", "."):
        return (start, end), end
    return (0, 0), at


def _past_mark(words: Sequence[Word], at: int) -> int | None:
    """Behind the mark that ends a head; None where neither a mark nor the line's end is."""
    if at >= len(words) or words[at].line != words[at - 1].line:
        return at
    if words[at].text not in _MARKS or words[at].sort is not Sort.MARK:
        return None
    behind = at + 1
    if behind < len(words) and words[behind].start == words[at].end:
        dotted = words[at].text in (".", ",", ":") and words[behind].text in ("—", "--", "-", ":")
        dashed = words[at].text in ("—", "--") and words[behind].text in (":", ".")
        behind += dotted or dashed
    return behind
