"""The text of a row or a clause, worked in one window ("Working a row", "Repeats", "Closing")."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field, replace
from fractions import Fraction

from border.text.tree import (
    Begin,
    Bracket,
    Chains,
    Item,
    Picots,
    Place,
    Repeat,
    Skip,
    StartChain,
    Stitches,
    Target,
    Which,
    Whole,
)
from plainly.cursor import FRESH, Cursor, counted_as, overlap
from plainly.fabric import Made, MadeChain, MadePicot, MadeStitch
from plainly.hand import PASSED, Hand, RunsOut, Use
from plainly.openings import leading
from plainly.readings import flat, is_open, one_stretch, same_steps
from plainly.sites import JOINT, Site, kind_label, meant

Path = tuple[int, ...]


@dataclass
class Open:
    """One open-ended repeat as it came out. Lists have one entry for each whole working."""

    path: Path
    leading: tuple[Target, ...]
    takes: list[Counter[str]] = field(default_factory=list)
    makes: list[Counter[str]] = field(default_factory=list)
    silently: list[Counter[Target]] = field(default_factory=list)
    boundaries: list[Fraction] = field(default_factory=list)
    left: list[Site] = field(default_factory=list)
    uses_before: int = 0
    comes_out: bool = True

    @property
    def times(self) -> int:
        return len(self.takes)


@dataclass
class Worked:
    """What came of a text in a window. `adjusted`: the boundaries where an adjustment was made."""

    opens: list[Open]
    left_over: list[int]
    closes: bool
    codes: set[str]
    adjusted: set[int]


def tally(made: list[Made]) -> Counter[str]:
    """Stitches by name, `ch` and `picot`."""
    found: Counter[str] = Counter()
    for piece in made:
        match piece:
            case MadeStitch(stitch):
                found[stitch] += 1
            case MadeChain():
                found["ch"] += 1
            case MadePicot():
                found["picot"] += 1
    return found


def counted(targets: tuple[Target, ...]) -> tuple[Target, ...]:
    """What is counted of a leading kind, each once."""
    return tuple(dict.fromkeys(counted_as(target) for target in targets))


def steps_of(items: tuple[Item, ...]) -> list[Item]:
    """The steps one by one: counted repeats written out."""
    found: list[Item] = []
    for item in items:
        if isinstance(item, Repeat) and item.times is not None:
            found += steps_of(item.items) * item.times
        else:
            found.append(item)
    return found


class Work:
    """A text being worked. `adjust`: by how much at which boundary, counted from 1."""

    def __init__(self, hand: Hand, items: tuple[Item, ...], adjust: dict[int, int]) -> None:
        self.hand, self.items, self.adjust = hand, items, adjust
        self.opens: list[Open] = []
        self.ran_out = False
        self.adjusted: set[int] = set()
        self.last_open = last_open(items)

    def whole(self) -> Worked:
        for i, item in enumerate(self.items):
            self._outside_repeats(item, (i,))
        hand = self.hand
        left_over = [self._left_over(told) for told in self.opens]
        closes = not self.ran_out and not any(left_over)
        closes = closes and all(told.comes_out for told in self.opens)
        # Closing: no site of its leading kind is left beyond the cursor.
        ends = counted(self.opens[-1].leading) if self.opens else self._kinds_worked()
        closes = closes and not any(hand.ahead((target,)) for target in ends)
        if any(passes_more(told) for told in self.opens):
            hand.codes.add("passes-more")
        return Worked(self.opens, left_over, closes, hand.codes, self.adjusted)

    def _kinds_worked(self) -> tuple[Target, ...]:
        """Every kind that the text works into."""
        worked = [use.site for use in self.hand.uses if use.how == "worked"]
        if self.hand.window.what == "joint":
            worked = [site for site in worked if site.shape != JOINT]
        return counted(tuple(site.target for site in worked))

    def _left_over(self, told: Open) -> int:
        """What was left where the repeat stopped, and no later step works or skips."""
        later = self.hand.uses[told.uses_before :]
        return sum(not any(overlap(site, use.site) for use in later) for site in told.left)

    # --- outside an open-ended repeat ---

    def _outside_repeats(self, item: Item, path: Path) -> None:
        """A step that runs out outside a repeat works nothing; the text goes on behind it.

        Small rulings: a counted repeat is undone from the working that ran out.
        """
        if isinstance(item, Repeat) and item.times is not None:
            times, parts = item.times, item.items
        else:
            times, parts = 1, (item,)
        for _ in range(times):
            mark, opens = self.hand.mark(), len(self.opens)
            try:
                for i, part in enumerate(parts):
                    self.step(part, (*path, i))
            except RunsOut as runs_out:
                self.hand.undo_to(mark)
                del self.opens[opens:]
                self.ran_out = True
                # Scopes: a text that asks more of a stretch than it has.
                if runs_out.too_short or self.hand.window.what == "stretch":
                    self.hand.codes.add("run-too-short")
                return

    def step(self, item: Item, path: Path = ()) -> None:
        """One item of a text; raises RunsOut."""
        hand = self.hand
        if is_open(item):
            self.opens.append(self._open(item, path))
            return
        match item:
            case Repeat(items, int(times)):
                for _ in range(times):
                    for i, part in enumerate(items):
                        self.step(part, (*path, i))
            case Bracket():
                self._bracket(item)
            case Skip():
                hand.skip(item)
            case Begin():
                hand.begin(item)
            case _:
                self._inside(item, None)

    def _inside(self, item: Item, site: Site | None) -> None:
        """A step that may stand in a bracket, all of which goes into a site."""
        match item:
            case Chains(count):
                self.hand.chain(count)
            case Picots(count):
                self.hand.made.extend([MadePicot()] * count)
            case Stitches():
                self.hand.stitches(item, site)
            case StartChain():
                self.hand.start_chain(item, site)
            case Repeat(items, times) if site is not None:
                for _ in range(times or 1):
                    for part in items:
                        self._inside(part, site)
            case Bracket(items) if site is not None:
                for part in items:
                    self._inside(part, site)

    def _bracket(self, item: Bracket) -> None:
        """`( … ) in next X`: the stitches that name no place all go into that X."""
        hand = self.hand
        hand.pass_to(item.place)
        found = hand.places(hand.after_passing(item.place))
        for k, site in enumerate(found):
            hand.work_into(site, stays=item.place.which is Which.SKIPPED)
            if k > 0:
                hand.chain(item.parted)
            for part in item.items:
                self._inside(part, site)

    # --- open-ended repeats ---

    def _open(self, item: Item, path: Path) -> Open:
        hand = self.hand
        stretch = _stretch(item)
        told = Open(path, leading(stretch))
        steps = steps_of(stretch)
        parted = item.parted if isinstance(item, Stitches | Bracket) else 0
        met = False
        while self._wants_more(item, told):
            mark = hand.mark()
            uses = len(hand.uses)
            if told.times:
                hand.chain(parted)
            start = len(hand.made)
            at = self._once(steps)
            if at is None and self._fits(item, told):
                cursor, moved = mark[2], mark[3]
                assert isinstance(cursor, Cursor) and isinstance(moved, bool)
                told.takes.append(self._passed(told, cursor, moved))
                told.makes.append(tally(hand.made[start:]) + Counter(ch=parted))
                told.silently.append(self._silently(cursor, hand.uses[uses:]))
                self._boundary(told)
                if hand.cursor == cursor:
                    break  # it takes nothing, and would never end
                continue
            if at is not None and self._meets_start(item, told, steps, at):
                met = True
                hand.codes.add("meets-its-start")
                break
            hand.undo_to(mark)
            break
        if parted and told.times and hand.window.is_round:
            hand.chain(parted)  # on a closed round also between the last and the first
        if not met:
            told.left, told.comes_out = self._where_it_stopped(item, told)
        told.uses_before = len(hand.uses)
        return told

    def _once(self, steps: list[Item]) -> int | None:
        """The repeat worked once more; or the number of the step that ran out."""
        opens = len(self.opens)
        for i, step in enumerate(steps):
            try:
                self.step(step)
            except RunsOut:
                return i
            finally:
                del self.opens[opens:]
        return None

    def _remaining(self, item: Repeat) -> list[Site]:
        assert item.to_last is not None
        return self.hand.ahead(counted((item.to_last.of,)))

    def _wants_more(self, item: Item, told: Open) -> bool:
        """`to last N X`: while more than N of X remain. A star's first takes no notice of it."""
        if not isinstance(item, Repeat) or item.to_last is None:
            return True
        if item.star and not told.times:
            return True
        return len(self._remaining(item)) > item.to_last.count

    def _fits(self, item: Item, told: Open) -> bool:
        """Whether a working has left the last N alone."""
        if not isinstance(item, Repeat) or item.to_last is None:
            return True
        if item.star and not told.times:
            return True
        return len(self._remaining(item)) >= item.to_last.count

    def _where_it_stopped(self, item: Item, told: Open) -> tuple[list[Site], bool]:
        """What is left of the leading kind, and whether the repeat came out as it should."""
        left = self.hand.ahead(counted(told.leading)) if told.leading else []
        if not isinstance(item, Repeat):
            return left, True  # small rulings: `in each X` with none left closes, zero times
        comes_out = told.times > 0
        if item.to_last is not None:
            last = self._remaining(item)
            comes_out = comes_out and len(last) == item.to_last.count
            if len(last) < item.to_last.count:
                return [], False  # fewer than N from the outset: leaves 0 over
            first = last[-item.to_last.count]
            left = [site for site in left if site.start < first.start]
        return left, comes_out

    def _meets_start(self, item: Item, told: Open, steps: list[Item], at: int) -> bool:
        """Meeting the start: what is still to come are the steps before the repeat."""
        hand = self.hand
        if not hand.window.is_round or not isinstance(item, Repeat) or item.to_last is not None:
            return False
        if self.items[-1] is not item or not told.times:
            return False
        before, to_come = flat(self.items[:-1]), flat(tuple(steps[at:]))
        # A row whose steps before its repeat are the whole of it is simply that repeat.
        if (
            not to_come
            or not same_steps(to_come, before)
            or len(to_come) == len(flat(tuple(steps)))
        ):
            return False
        return not hand.ahead(counted(told.leading))

    # --- what a working takes and passes ---

    def _passed(self, told: Open, before: Cursor, moved: bool) -> Counter[str]:
        """Takes: the sites of the leading kind that one round passes or works."""
        hand = self.hand
        found: Counter[str] = Counter()
        for target in counted(told.leading):
            after = len(hand.ahead((target,)))
            cursor_now, moved_now, hand.cursor, hand.moved = hand.cursor, hand.moved, before, moved
            ahead_before = len(hand.ahead((target,)))
            hand.cursor, hand.moved = cursor_now, moved_now
            label = kind_label(meant(hand.window.fabric, target.of))
            found[label] += ahead_before - after
        return found

    def _silently(self, before: Cursor, uses: list[Use]) -> Counter[Target]:
        """Passing unevenly: the sites between, that no step worked, skipped or named."""
        hand = self.hand
        found: Counter[Target] = Counter()
        for target in self._text_works():
            passed = [
                site
                for site in hand.sites(target)
                if _lies_between(site, before, hand.cursor)
                and not any(overlap(site, use.site) for use in uses)
            ]
            found[target] = len(passed)
        return found

    def _text_works(self) -> tuple[Target, ...]:
        """Every X that the text works into, or into a part of."""
        return works_into(self.items, self.hand)

    # --- adjustments ---

    def _boundary(self, told: Open) -> None:
        """A boundary: one repeat has been worked, and the next, or the tail, has not begun."""
        if told.path != self.last_open:
            return
        hand = self.hand
        kinds = counted(told.leading)
        ahead = hand.ahead(kinds)
        told.boundaries.append(ahead[0].at if ahead else hand.window.end_at)
        number = sum(len(one.boundaries) for one in self.opens) + len(told.boundaries)
        by = self.adjust.get(number, 0)
        if by > 0 and len(ahead) >= by:
            for site in ahead[:by]:
                hand.pass_over(site, PASSED)
            self.adjusted.add(number)
        if by < 0:
            every = hand.union(kinds)
            behind = sorted(
                (s for listed in every for s in listed if s not in ahead),
                key=lambda site: site.start,
            )
            if len(behind) >= -by:
                hand.cursor = Cursor(behind[by].start, FRESH)
                self.adjusted.add(number)


def works_into(items: tuple[Item, ...], hand: Hand) -> tuple[Target, ...]:
    from plainly.openings import named, steps

    found: list[Target] = []
    for item in steps(items):
        if isinstance(item, Stitches | Bracket):
            if hand.window.what == "joint" and item.place is None:
                continue
            found += [Whole(target.of) for target in named(item)]
    return tuple(dict.fromkeys(found))


def _lies_between(site: Site, before: Cursor, now: Cursor) -> bool:
    return before.spot <= site.start and site.end <= now.spot


def _stretch(item: Item) -> tuple[Item, ...]:
    """The text of an open-ended repeat, worked once: for `in each X`, the item in the next X."""
    match item:
        case Repeat(items):
            return one_stretch(items)
        case Stitches() | Bracket():
            assert item.place is not None
            which = Which.NTH if item.place.which is Which.EVERY else Which.NEXT
            return (replace(item, place=Place(which, item.place.targets, item.place.count)),)
        case _:
            raise AssertionError(item)


def passes_more(told: Open) -> bool:
    """Whether one repeat silently passes over more than most of its repeats do."""
    for target in {target for one in told.silently for target in one}:
        numbers = [one[target] for one in told.silently]
        if any(2 * sum(other < number for other in numbers) > len(numbers) for number in numbers):
            return True
    return False


def last_open(items: tuple[Item, ...], path: Path = ()) -> Path | None:
    """The last open-ended repeat of a text, which adjustments act on."""
    for i in reversed(range(len(items))):
        item = items[i]
        if is_open(item):
            return (*path, i)
        if isinstance(item, Repeat) and (found := last_open(item.items, (*path, i))) is not None:
            return found
    return None
