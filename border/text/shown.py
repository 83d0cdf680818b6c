"""Figures that a row shows as it makes them: `a shell of 3 dc, 2 ch, 3 dc in next loop`,
`2 dc, 2 ch and 2 dc (this forms a shell) in next loop`, `1 shell (5 dc) in next loop`. Where
none is shown, `shell in shell` makes what the row below did.

The steps stand in a bracket there, and the name is theirs from then on.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from border.stitches import STITCHES
from border.text.framing.copies import behind_said
from border.text.framing.figures import Figure, Figures, figure_forms, is_place, opens_place
from border.text.phrases import longest
from border.text.picots_said import trimmed
from border.text.vocabulary import Names, opens_one, vocabulary
from border.text.words import Sort, Word

_NAMES = {
    **{name: name for name in ("shell", "fan", "tuft", "scallop")},
    "shells": "shell",
    "sh": "shell",
    "fans": "fan",
    "tufts": "tuft",
}
"""What a row shows under these names, and the name that it has from then on."""
_SAYS = frozenset(
    {"this", "these", "which", "form", "forms", "forming", "make", "makes", "making", "called"}
    | {"to", "for", "is", "a", "an", "one", "1", "the", "thus"}
)
_NEVER = frozenset({"(", ")", "*", ";", "[", "]"})


def with_shown_figures(
    words: list[Word], names: Names, figures: Figures
) -> tuple[list[Word], Figures]:
    """The words with each such figure as its name, and the figures with those among them."""
    while (found := _first_shown(words, names, figures)) is not None:
        (words, steps), name = found
        figure = Figure((name,), steps)
        figures = figures | dict.fromkeys(figure_forms(figure.name), figure)
    return words, figures


def _first_shown(
    words: list[Word], names: Names, figures: Figures
) -> tuple[tuple[list[Word], tuple[Word, ...]], str] | None:
    """The words with the first such figure as its name, its steps, and that name."""
    for at, word in enumerate(words):
        if word.text not in _NAMES and (word.text,) not in figures:
            continue
        found = _explained(words, at, names)
        if word.text in _NAMES:
            found = found or _made_of(words, at) or _so_called(words, at, names)
            found = found or _behind_place(words, at, names) or _the_same(words, at, names)
            found = found or _place_first(words, at, names)
        if found is not None:
            return found, _NAMES.get(word.text, word.text)
    return None


_Found = tuple[list[Word], tuple[Word, ...]] | None


def _made_of(words: list[Word], at: int) -> _Found:
    """`a shell of 3 dc, 2 ch, 3 dc`, `a shell, that is, 3 dc, …,` before its place: the name alone,
    and the steps."""
    start = _behind_of(words, at + 1)
    place_first = opens_place(words, _clause_start(words, at))
    if start == at + 1 or is_place(words[:at]) or place_first:
        return None
    while start < len(words) and words[start].text in _BIDS:
        start += 1
    end = start
    while end < len(words) and words[end].text not in _NEVER:
        parted = words[end].text == "between" and any(w.text == "with" for w in words[start:end])
        if opens_place(words, end) and not parted:  # `6 dc with 1 ch between each dc`
            break
        end += 1
    steps = words[start : trimmed(words, end)]
    if not steps or end == len(words) or not opens_place(words, end) or not _counts(steps[0]):
        return None
    return [*words[: at + 1], *words[end:]], tuple(steps)


def _behind_of(words: Sequence[Word], at: int) -> int:
    """Behind `of`, `consisting of`, `, that is,`; the same place where none stands here."""
    texts = [w.text for w in words[at : at + 2]]
    if texts[:1] == ["of"]:
        return at + 1
    if texts[1:] == ["of"] and texts[0] in ("consisting", "composed"):
        return at + 2
    said = at + (texts[:1] == [","])
    behind = behind_said(words, said, "namely")
    return behind if behind > said else at


def _explained(words: list[Word], at: int, names: Names) -> _Found:
    """`1 shell (2 dc, 2 ch, 2 dc) in …`, `a shell of (…) in …`: the name alone, and the steps."""
    opens = at + 1 + (words[at + 1 : at + 2] != [] and words[at + 1].text == "of")
    if is_place(words[:at]):
        return None
    return _shown_in(words, at + 1, opens, names)


def _shown_in(words: list[Word], keep: int, opens: int, names: Names) -> _Found:
    """The words up to a place without the bracket that opens behind it, and the steps in that."""
    if [w.text for w in words[opens : opens + 1]] != ["("]:
        return None
    end = next((n for n in range(opens, len(words)) if words[n].text == ")"), 0)
    start = opens + 1 + (words[opens + 1].text == "of")
    steps = words[start:end]
    listed = all(_is_step(w, names) or w.text in (",", ".", "and") for w in steps)
    if not steps or not listed or not _counts(steps[0]):
        return None
    return [*words[:keep], *words[end + 1 :]], tuple(steps)


_MARKS = frozenset({"*", "x", "\u00d7", "+"})
_STOPS = _MARKS | {",", ";", ".", ")", "and", "repeat"}
"""At these a step ends: a mark may be the second of a pair."""

_PLACE = 5
"""A place has no more words before the bracket that says what is worked there."""


def _behind_place(words: list[Word], at: int, names: Names) -> _Found:
    """`a shell in 3rd st (2 dc, 2 ch, 2 dc)`: the name and its place, and the steps."""
    if is_place(words[:at]) or not opens_place(words, at + 1):
        return None
    place = range(at + 2, min(at + 2 + _PLACE, len(words)))
    opens = next((n for n in place if words[n].sort is Sort.MARK), 0)
    found = _shown_in(words, opens, opens, names)
    if found is None or len([w for w in found[1] if _counts(w)]) < 2:
        return None
    behind = found[0][opens : opens + 1]
    return found if not behind or behind[0].sort is Sort.MARK else None


def _place_first(words: list[Word], at: int, names: Names) -> _Found:
    """`in the 6th st make a shell of 3 dc, 2 ch, 3 dc;`: the name, before its place, and the
    steps."""
    start = _behind_of(words, at + 1)
    stops = (n for n in range(start, len(words)) if words[n].text in _NEVER or words[n].text == ".")
    stop = next(stops, len(words))
    own = next((n for n in range(start, stop) if _opens_its_own(words, n)), 0)
    if own:  # `in next loop a shell of 6 dc, 1 sc on the sc`
        stop = max((n for n in range(start, own) if words[n].text == ","), default=stop)
    opens = _clause_start(words, at)
    one = next((n for n in range(opens, at) if words[n].text in ("a", "1", "one")), at)
    place = [w for w in words[opens:one] if w.text not in _BIDS]
    steps = words[start:stop]
    listed = all(_parts_or_makes(w, names) or w.text in _PARTED for w in steps)
    several = len([w for w in steps if _counts(w)]) > 1
    if start == at + 1 or one != at - 1 or not place or not opens_place(words, opens):
        return None
    if not listed or not several or not _counts(steps[0]):
        return None
    return [*words[:opens], words[one], words[at], *place, *words[stop:]], tuple(steps)


def _opens_its_own(words: Sequence[Word], at: int) -> bool:
    """Whether a place opens at a word, and not what parts stitches."""
    return opens_place(words, at) and words[at].text not in _PARTED


def _clause_start(words: Sequence[Word], at: int) -> int:
    """Where the words begin that stand before a name without a mark."""
    opens = at
    while opens and words[opens - 1].sort is not Sort.MARK and at - opens < _BEFORE:
        opens -= 1
    return opens


_PARTED = frozenset({"with", "between", "each", "every", "them"})
"""They say that what is made is parted: `6 dc with 1 ch between each`."""

_NEAR = 20
"""So many words back stands the place where a shell was begun."""

_BEFORE = 8
"""A place said before what is made in it has no more words."""


def _so_called(words: list[Word], at: int, names: Names) -> _Found:
    """`2 dc, 2 ch, 2 dc (this forms a shell) in …`, `(shell made)`, `4 dc in next, to form a
    shell`."""
    opens = at
    while opens and words[opens - 1].text in _SAYS:
        opens -= 1
    said = [w.text for w in words[opens:at]]
    bracket = opens > 0 and words[opens - 1].text == "("
    after = at + 1
    after += bracket and [w.text for w in words[after : after + 1]] in (["made"], ["formed"])
    behind = words[after].text if after < len(words) else "."
    if bracket:
        says = behind == ")" and (len(said) > 1 or _is_gloss(words, opens - 1))
    else:
        says = behind in _STOPS and (len(said) > 1 or said == ["for"]) and _says_so(said)
    if not says:
        return None
    end = trimmed(words, opens - bracket)
    place = next((n for n in range(end - 1, max(-1, end - 7), -1) if opens_place(words, n)), end)
    if any(w.text in (",", *_NEVER) for w in words[place:end]):
        place = end
    stop = trimmed(words, place)
    behind_all = words[after + bracket :]
    same = "same" in [w.text for w in words[place + 1 : end]]
    if same:
        begun = _with_begun(words, stop, names, [words[at], *behind_all])
        if begun is not None:
            return begun
    printed = words[stop - 1].text == ")"
    inside = stop - printed
    start = _behind_skip(words, _steps_before(words, inside, names), inside)
    behind_place = [*words[place:end], *behind_all]
    opens = start - printed
    first = _first_of_row(words, start, inside, names)
    if first is not None:
        opens, steps, stands_for = first
        begins = opens + (words[opens].text == "(")
        chains = begins + _CHAINS
        stands_for = [] if printed else stands_for  # in brackets chains stand as they are written
        return [
            *words[:opens],
            replace(words[begins], text="(", sort=Sort.MARK),
            *words[begins:chains],
            *stands_for,
            *words[chains:inside],
            replace(words[inside - 1], text=")", sort=Sort.MARK),
            *behind_place,
        ], steps
    goes_on = same and not printed and start > 0 and words[start - 1].text not in _MARKS
    if goes_on or (printed and words[opens].text != "("):
        return None
    numbers = [w for w in words[start:inside] if _counts(w)]
    if not numbers or (len(numbers) == 1 and numbers[0].text in ("1", "a", "one")):
        return None
    return [*words[:opens], words[at], *behind_place], tuple(words[start:inside])


def _first_of_row(
    words: Sequence[Word], start: int, stop: int, names: Names
) -> tuple[int, tuple[Word, ...], list[Word]] | None:
    """`ch 3, 2 dc, 2 ch, 3 dc` at a row's head: where it begins, and the shell of 3 dc, 2 ch, 3 dc
    that it shows, whose first stitch the chains stand for; and the words that say so, `as dc`."""
    chains = start
    before = words[start - 3 : start] if start > _CHAINS else []
    if before and before[-1].text == "," and _chains_in(before[:2]):
        chains = start - _CHAINS - 1
    elif _chains_in(words[start : start + 2]) and words[start + 2].text == ",":
        start += _CHAINS + 1
    else:
        return None
    counted = _counts(words[start])
    stitch, end = longest(words, start + counted, names.phrases)
    more = _chains_in(words[chains : chains + 2])
    more -= STITCHES[stitch.name].height if stitch is not None else more + 1
    high = more >= 0 and STITCHES[stitch.name].height >= _CHAINS if stitch is not None else False
    if not high or _is_behind_steps(words, chains, names):
        return None
    comma, one = words[start - 1], replace(words[start], sort=Sort.NUMBER)
    own = [replace(one, text="1", number=1), *words[start + counted : end], comma]
    stands_for = [replace(one, text="as", sort=Sort.WORD), *words[start + counted : end]]
    if more:
        ch = replace(one, text="ch", sort=Sort.WORD)
        also = replace(one, text="and", sort=Sort.WORD)
        stands_for += [also, ch, replace(one, text=str(more), number=more)]
        own += [replace(one, text=str(more), number=more), ch, comma, *words[start:stop]]
    else:
        number = (_number(words[start]) if counted else 1) + 1
        own = [replace(one, text=str(number), number=number), *words[start + counted : stop]]
    opens = chains - (words[chains - 1].text == "(" if chains else 0)
    return opens, tuple(own), stands_for


def _is_behind_steps(words: Sequence[Word], at: int, names: Names) -> bool:
    """Whether anything but slip stitches is made before a place in a row, or a repeat opens."""
    for n, word in enumerate(words[:at]):
        stitch, _ = longest(words, n, names.phrases)
        made = stitch is not None and stitch.name != "ss" and not is_place(words[:n])
        if word.text in _MARKS or made:
            return True
    return False


_CHAINS = 2
"""Chains are said in so many words, and no fewer stand for a stitch."""


def _chains_in(words: Sequence[Word]) -> int:
    """How many chains two words are, `ch 3`, `3 ch`; else 0."""
    count = next((w for w in words if _counts(w)), None)
    said = count is not None and any(opens_one(w.text, "CH") for w in words)
    return _number(count) if count is not None and said else 0


def _number(word: Word) -> int:
    return word.number or vocabulary().numbers.get(word.text, 0)


def _the_same(words: list[Word], at: int, names: Names) -> _Found:
    """`2 dc, 2 ch, 2 dc all in the 6th st, 3 ch, a shell the same in last st`: it is made so."""
    texts = [w.text for w in words]
    if texts[at + 1 : at + 3] != ["the", "same"] or not opens_place(words, at + 3):
        return None
    all_in = next((n for n in range(at - 1, 0, -1) if texts[n] == "all"), 0)
    if not all_in or not opens_place(words, all_in + 1):
        return None
    end = trimmed(words, all_in)
    start = _steps_before(words, end, names)
    return ([*words[: at + 1], *words[at + 3 :]], tuple(words[start:end])) if start < end else None


def _with_begun(words: list[Word], stop: int, names: Names, behind: Sequence[Word]) -> _Found:
    """`3 dc in next, 2 ch, 3 dc` before `in same (this forms a shell)`: all of it, in the first
    place. `behind`: the name, and what stands behind it."""
    into = next((n for n in range(stop - 1, max(-1, stop - _NEAR), -1) if opens_place(words, n)), 0)
    parts = (",", ";")
    more = next((n for n in range(into, stop) if words[n].text in parts), stop)
    start = _steps_before(words, trimmed(words, into), names)
    listed = all(w.text == ";" or _parts_or_makes(w, names) for w in words[more:stop])
    if not listed or not start < into < more < stop or words[into + 1].text == "same":
        return None
    name, *rest = behind
    softly = [replace(w, text=",") if w.text == ";" else w for w in words[more:stop]]
    steps = (*words[start:into], *softly)
    return [*words[:start], name, *words[into:more], *rest], steps


def _steps_before(words: list[Word], stop: int, names: Names) -> int:
    """Where the list of steps begins that ends at a place."""
    start = stop
    while start and _parts_or_makes(words[start - 1], names):
        start -= 1
    while start < stop and not (_counts(words[start]) and _is_step(words[start + 1], names)):
        start += 1
    return start


def _parts_or_makes(word: Word, names: Names) -> bool:
    return _is_step(word, names) or word.text in _BESIDE_STEPS


_BIDS = frozenset({"work", "make"})
_BESIDE_STEPS = _BIDS | {".", ",", "and", "of", "loosely"}


def _is_gloss(words: Sequence[Word], bracket: int) -> bool:
    """Whether `(a shell)` stands right behind what it is the name of."""
    return bracket > 0 and words[bracket - 1].sort is not Sort.MARK


def _behind_skip(words: Sequence[Word], start: int, stop: int) -> int:
    """Behind `miss 5 st,`, which is no step of what is shown."""
    if not start or not opens_one(words[start - 1].text, "SKIP"):
        return start
    return 1 + next((n for n in range(start, stop) if words[n].text == ","), stop - 1)


def _says_so(said: list[str]) -> bool:
    """Whether words without brackets say that what stands before them makes something."""
    return said[0] in ("to", "for", "forming", "making") or said[:2] in (
        ["this", "forms"],
        ["this", "makes"],
    )


def _counts(word: Word) -> bool:
    return word.sort is Sort.NUMBER or word.text in vocabulary().numbers


def _is_step(word: Word, names: Names) -> bool:
    """Whether a word is of stitches, chains or picots, or their number."""
    made = opens_one(word.text, "CH", "PICOT")
    stitch = any(word.text in phrase for phrase in names.known)
    return _counts(word) or made or stitch
