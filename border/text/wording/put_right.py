"""What is put right in a row's words before it is told what is strange in them: adjectives,
glosses, how chains are named, where a row begins.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from border.text.wording.after_every import made_after_every, said_before
from border.text.wording.beside import on_either_side
from border.text.wording.catching import drawn_together
from border.text.wording.chains_named import (
    before_stitches,
    chains_of,
    end_ones,
    loops_of_chain,
    of_end_chain,
    round_loops,
    slips_along,
)
from border.text.wording.commas_left_out import commas_left_out
from border.text.wording.dots import without_dots
from border.text.wording.every_time import (
    all_round_and_each,
    all_round_with,
    alternately_missing,
    always,
    begins_again,
    but_in_the_middle,
    do_so,
    every_at_head,
    every_other,
    first_every_time,
    followed_by,
    making_after,
    times_behind_comma,
    twice_in_every,
)
from border.text.wording.glosses import (
    just_before,
    made_of,
    without_adjectives,
    without_glosses,
    without_the_row_below,
)
from border.text.wording.gone_back import (
    begun_from_mark,
    last_fastened,
    last_united,
    mark_to_mark,
    repeated_in,
    steps_repeated,
    to_the_right,
)
from border.text.wording.instead_of import chains_instead, last_replaced
from border.text.wording.last_time import last_chain_omitted, last_omitted, last_time
from border.text.wording.left_out import (
    a_row_of,
    at_near_end,
    at_the_end_of_row,
    beside_what,
    chains_in_every,
    close_stitches,
    each_on_one,
    each_with,
    forms_picot,
    in_next_nth,
    in_so_many,
    long_names,
    picot_with,
    picots_each,
    prep_before_each,
    same_as,
    so_many_in_one,
    the_others,
    to_reach,
    unite_with,
    worked_last,
)
from border.text.wording.missed import (
    bare_chain_missed,
    chain_missed_under,
    missed_among,
    missed_each_time,
    under_first_chains,
)
from border.text.wording.named_elsewhere import (
    between_first,
    each_but,
    ends_with_last,
    from_first_star,
    named_later,
    next_first,
    none_between,
    on_each_of,
    pair_to_end,
    repeat_mark,
    same_under_each,
    times_behind_place,
    together_again,
)
from border.text.wording.of_so_many import (
    each_of_one,
    in_the_first_of,
    of_the_chain,
    of_them_in_one,
    on_the_sum,
)
from border.text.wording.pairs_of_marks import pairs_of_marks
from border.text.wording.passing import (
    NOUNS,
    ended,
    like,
    opens_again,
    pairs,
    past,
    types,
    where,
)
from border.text.wording.picots_named import made_thus, on_last_made, shown_behind
from border.text.wording.popcorns import popcorns
from border.text.wording.remarked import with_remarks
from border.text.wording.row_begun import (
    along_all,
    begun_at_corner,
    begun_there,
    closed_first,
    closely,
    each_of_a_chain,
    having_made,
    hook_put,
    last_made,
    on_a_chain,
    row_along,
)
from border.text.wording.said_once import chains_loosely, said_once
from border.text.wording.same_again import in_this, more_in
from border.text.wording.spots import (
    any_one,
    at_beginning,
    at_the_back,
    at_the_end,
    each_in_shell,
    heaps_by_number,
    in_its_top,
    of_a_loop,
    of_them,
    second_of_two,
    spots,
    this_and_next,
)
from border.text.wording.two_places import between_two_kinds, in_orders, told_one_by_one
from border.text.wording.whole_rows import on_the_foundation, the_rest
from border.text.wording.worked_on import in_one_and_other, on_these, shared_out_each, taken_up

if TYPE_CHECKING:
    from border.text.terminals import Terminal


def _passed(terminals: Sequence[Terminal]) -> list[Terminal]:
    """`pass the dc`, `passing 2 ch`, `leave 2`: as `miss`; not `pass the thread`. `* Miss the
    first dc`, `…, miss the last; repeat` miss the next one each time, `miss the last loop, 4 dc`
    the one that is left."""
    found = list(terminals)
    for n, here in enumerate(terminals):
        order = past(terminals, n + 1, "THE")
        first = types(terminals, order, 1) == ["ORD"] and terminals[order].number == 1
        if here.text == "leave" and types(terminals, n + 1, 1) != ["NUM"]:
            continue  # `leave the loops`, where a row ends
        again = n > 0 and (terminals[n - 1].type == "CROSS" or opens_again(terminals, n - 1))
        each_time = (
            first and again and types(terminals, past(terminals, order + 1, *NOUNS), 1) != ["OF"]
        )
        last = types(terminals, order, 1) == ["ORD"] and terminals[order].number == -1
        noun = past(terminals, order + 1, *NOUNS)
        last = last and ended(terminals, noun)
        before = {x.type for x in terminals[:n]} if last and noun > order + 1 else set()
        left = "STITCH" in before and "REPEAT" not in before
        if here.type == "SKIP" and (each_time or left or (last and _goes_on(terminals, n))):
            found[order] = like(terminals[order], "NUM", number=1)
        behind = terminals[n + 1 : n + 3]
        behind = behind[1:] if behind and behind[0].type in ("THE", "PREP") else behind
        nth = behind[:1] != [] and behind[0].type in ("ORD", "NEXT")
        nth = nth and ended(terminals, past(terminals, order + 1, *NOUNS))  # `pass the third`
        if here.text in ("pass", "passing", "leave") and (
            nth or (types(behind, 0, 1)[:1] != [] and behind[0].type in ("NUM", *NOUNS))
        ):
            found[n] = replace(here, type="SKIP")
    return found


def _goes_on(t: Sequence[Terminal], at: int) -> bool:
    """Whether steps stand before a word, and a repeat of them behind it."""
    steps = any(x.type == "STITCH" for x in t[:at])
    return steps and any(x.type in ("REPEAT", "TIMES") for x in t[at:])


def _first_missed(t: Sequence[Terminal]) -> list[Terminal]:
    """`Miss the first dc, 1 dc in each of the next 10, miss 2; repeat`: it is missed once."""
    start = past(t, 0, "SEP", "ENDING")
    order = past(t, start + 1, "THE")
    stop = past(t, order + 1, *NOUNS)
    first = (
        types(t, start, 1) == ["SKIP"] and types(t, order, 1) == ["ORD"] and t[order].number == 1
    )
    marked = any(x.type in ("STAR", "CROSS", "MARK") for x in t)
    bare = any(x.type == "REPEAT" for x in t) and not marked
    if not first or not bare or types(t, stop, 1) != ["SEP"] or stop == order + 1:
        return list(t)
    if not _misses_last(t):  # `miss the first dc, 7 dc, miss 1, 3 ch, 1 dc in the loop; repeat`
        return [*t[:order], like(t[order], "NUM", number=1), *t[order + 1 :]]
    return [*t[: stop + 1], like(t[stop], "STAR"), *t[stop + 1 :]]


def _misses_last(t: Sequence[Terminal]) -> bool:
    """Whether the last step before a repeat is a miss, perhaps with chains over it."""
    again = next(n for n, x in enumerate(t) if x.type == "REPEAT")
    skip = max((n for n in range(again) if t[n].type == "SKIP"), default=again)
    stop = next((n for n in range(skip, again) if t[n].type == "SEP"), again)
    behind = [x.type for x in t[stop:again] if x.type != "SEP"]
    return skip < again and all(x.type in _OF_MISS for x in t[skip + 1 : stop]) and not behind


_OF_MISS = frozenset({"NUM", "CH", "KIND", "STITCH", "THE", "SEP"})


def _again_behind_mark(t: Sequence[Terminal]) -> list[Terminal]:
    """`* 1 sc, 5 chain *; and so on`: as `repeat`."""
    found = list(t)
    for n, here in enumerate(t):
        mark = n - 1
        while mark > 0 and t[mark].type == "SEP":
            mark -= 1
        back = types(t, mark - 1, 1) == ["FROM"]  # `repeat from *, &c.`
        marked = mark > 0 and not back and t[mark].type in ("STAR", "CROSS", "MARK")
        if here.type == "SOON" and marked:
            found[n] = replace(here, type="REPEAT")
    return found


def _so_on_round(t: Sequence[Terminal]) -> list[Terminal]:
    """`and so on around the scallop`: as `repeat round it`."""
    return [
        replace(x, type="REPEAT") if x.type == "SOON" and types(t, n + 1, 1) == ["ROUND"] else x
        for n, x in enumerate(t)
    ]


def _all_worked_in(t: Sequence[Terminal]) -> list[Terminal]:
    """`all worked under the loop`, `all made in it`: all in it."""
    found: list[Terminal] = []
    for n, here in enumerate(t):
        says = here.text in _WORKED and types(found, len(found) - 1, 1) == ["ALL"]
        if not says or types(t, n + 1, 1) != ["PREP"]:
            found.append(here)
    return found


_WORKED = frozenset({"worked", "made", "placed", "put", "taken"})

PUT_RIGHT = (
    where(pairs_of_marks, "STAR MARK CROSS"),
    where(commas_left_out, "STITCH-NUM STITCH-CH CH-NUM CH-CH KIND-NUM", "NUM-CH CH-NUM -BEGIN"),
    where(without_dots, "SEP"),
    where(but_in_the_middle, "SEP-WITH", "CENTRE ORD", "EACH EVERY"),
    where(hook_put, "PUTHOOK-PREP", "-PUTHOOK SEP-PUTHOOK"),
    where(shown_behind, "PICOT-EQUALS PICOT-NAMELY"),
    where(made_thus, "PICOT", "NOTHING", "CH"),
    where(under_first_chains, "SKIP-THE", "UNDERIT NOTHING PREP", "CH"),
    where(slips_along, "STITCH-UNKNOWN STITCH-PREP STITCH-TO", "CH"),
    where(without_the_row_below, "BELOW"),
    where(all_round_with, "PREP-EACH", "-STITCH -NUM -SEP"),
    where(said_once, "-SEP SEP-SEP AND-REPEAT AND-NUM AND-SEP LP-SEP STAR-SEP SEP-AND SEP-PREP"),
    where(chains_loosely, "CH-MOD NUM-MOD"),
    where(followed_by, "EACH-SEP"),
    where(prep_before_each, "STITCH-EACH STITCH-EVERY"),
    where(picot_with, "PICOT-WITH"),
    where(each_with, "EACH-WITH"),
    where(ends_with_last, "REPEAT", "AND-PREP", "ORD"),
    where(same_as, "SAME", "AS"),
    where(worked_last, "KIND-ORD KIND-PREP KIND-UNKNOWN"),
    where(the_others, "OTHER-NUM THE-OTHER THE-NEXT"),
    where(same_under_each, "SAME-PREP", "EACH EVERY"),
    where(missed_among, "SKIP", "BETWEEN-EACH BETWEEN- BETWEEN-SEP BETWEEN-EVERY"),
    where(from_first_star, "FROMHEAD-STAR ORD-STAR"),
    where(at_near_end, "KIND-ATEND", "ENDING"),
    where(on_the_foundation, "STITCH-PREP STITCH-UNKNOWN STITCH-TOEND", "CH FOUNDATION"),
    where(a_row_of, "ROW-OF"),
    where(between_first, "-BETWEEN SEP-BETWEEN STAR-BETWEEN LP-BETWEEN"),
    where(at_the_end_of_row, "CH-ATEND SEP-ATEND"),
    where(do_so, "REPEAT-TIMES REPEAT-NUM"),
    where(repeated_in, "STAR-PREP REPEAT-PREP", "REPEAT", "NUM-KIND NUM-STITCH"),
    where(times_behind_comma, "SEP-TIMES"),
    where(times_behind_place, "SEP-PREP", "NUM-TIMES"),
    where(alternately_missing, "ALTERNATELY", "SKIP"),
    where(last_chain_omitted, "EXCEPT SKIP", "PREP-EACH PREP-EACHOF"),
    where(twice_in_every, "TIMES-PREP"),
    where(every_other, "OTHER-KIND EACH-OTHER EVERY-OTHER"),
    where(begins_again, "REMARK- REMARK-SEP"),
    where(making_after, "WITH AND", "AFTER"),
    where(first_every_time, pairs({"", "SEP", "ENDING"}, "STAR", "LP", "MARK", "CROSS"), "ORD"),
    where(missed_each_time, "SKIP", "BETWEEN NOTHING SEP"),
    where(every_at_head, "-EACH -EVERY SEP-EACH SEP-EVERY"),
    where(each_but, "SKIP-THE SKIP-EACH", "EACH-KIND EVERY-KIND"),
    where(always, "-SEP"),
    where(beside_what, "UNKNOWN-THE"),
    where(in_next_nth, "NEXT-ORD"),
    where(long_names, "STITCH-STITCH"),
    where(unite_with, "ENDING-WITH"),
    where(drawn_together, "UNKNOWN", "TOGETHER-WITH"),
    where(on_last_made, "PICOT", "ORD", "PREP"),
    where(picots_each, "CH-EACH"),
    where(said_before, "SEP-AFTER AND-AFTER", "CH PICOT"),
    where(made_after_every, "EACH EVERY", "STITCH", "PICOT AFTER"),
    where(repeat_mark, "REPEAT-CROSS REPEAT-MARK REPEAT-STAR"),
    where(pair_to_end, "ENDWITH", "CROSS MARK STAR"),
    where(in_so_many, "PREP-NUM"),
    where(chains_in_every, "CH", "PREP-EACH PREP-EVERY"),
    where(forms_picot, "AS", "PICOT"),
    where(so_many_in_one, "STITCH-SEP", "NUM-PREP"),
    where(loops_of_chain, "KIND-OF"),
    where(of_the_chain, "KIND-OF"),
    where(of_them_in_one, "OF-THEM OF-STRAY OF-THE", "STITCH", "NUM-OF"),
    where(each_of_one, "EACHOF"),
    where(taken_up, "NOTHING-NUM NOTHING-STITCH NOTHING-CH NOTHING-KIND", "STITCH"),
    where(in_this, "PREP-KIND PREP-STITCH PREP-PICOT"),
    where(more_in, "MORE-STITCH STITCH-SEP SEP-NUM", "PREP"),
    where(bare_chain_missed, "SKIP-CH"),
    where(chain_missed_under, "SKIP-NUM", "NUM-CH", "THE-NEXT PREP-NEXT"),
    where(all_round_and_each, "STITCH-TOEND", "-STITCH", "PREP-EACH"),
    where(shared_out_each, "CH KIND", "NUM-STITCH -STITCH", "PREP-EACH"),
    where(on_these, "PREP-THE PREP-STRAY SEP-SEP", "CH"),
    where(in_one_and_other, "AND-STITCH AND-KIND AND-CH", "NUM-STITCH", "PREP"),
    where(on_the_sum, "AND", "NUM-STITCH", "CH"),
    where(in_the_first_of, "ORD-NUM ORD-CH", "CH"),
    where(close_stitches, "ENDING-STITCH"),
    where(together_again, "TOGETHER DRAWING", "STITCH-NOTHING"),
    where(none_between, "BETWEEN", "NOTHING"),
    where(named_later, "ORD-SEP ORD-AND", "PREP"),
    where(next_first, "NEXT-NUM NEXT-SEP", "PREP"),
    where(to_reach, "SEP-TO"),
    where(each_on_one, "EACH-PREP"),
    where(popcorns, "SEP", "ORD", "UNITE UNKNOWN STITCH-STRAY SEP-SEP"),
    where(
        the_rest,
        "UNKNOWN-STITCH THE-UNKNOWN PREP-UNKNOWN PREP-STITCH AFTER-EACH AFTER-EVERY PREP-STRAY",
        "STITCH",
    ),
    where(having_made, "STRAY UNKNOWN WITH ENDING-NUM"),
    where(round_loops, "INALL-KIND INALL-STRAY"),
    where(chains_of, "CH-OF CH-NUM"),
    where(chains_instead, "EXCEPT-THE EXCEPT-NUM EXCEPT-ORD", "CH"),
    where(last_replaced, "EXCEPT AS", "ORD", "REPEAT"),
    where(to_the_right, "TO-UNKNOWN TO-THE", "CH", "ORD"),
    where(last_fastened, "UNKNOWN", "REPEAT", "CH"),
    where(last_united, "THE-ORD SEP-ORD", "REPEAT", "UNKNOWN"),
    where(mark_to_mark, "REPEAT-CROSS REPEAT-STAR REPEAT-MARK"),
    where(begun_from_mark, "REMARK-FROM BEGIN-FROM"),
    where(steps_repeated, "REPEAT SOON", "CH-AND NUM-AND CH-SEP NUM-SEP", "STITCH"),
    where(before_stitches, "CH-UNKNOWN KIND-UNKNOWN"),
    where(made_of, "MADEOF KIND-OF"),
    where(closely, "STITCH-NOTHING SEP-STITCH"),
    where(at_the_end, "NUM-ATEND"),
    where(heaps_by_number, "THE-UNKNOWN NEXT-UNKNOWN BETWEEN-UNKNOWN EACH-UNKNOWN"),
    where(each_in_shell, "EACH EVERY", "CH-PREP KIND-PREP"),
    where(at_the_back, "UNKNOWN-THE UNKNOWN-EACH UNKNOWN-NEXT UNKNOWN-NUM UNKNOWN-OF NOTHING-OF"),
    where(at_beginning, "PREP-BEGIN THE-BEGIN"),
    where(just_before, "PICOT-LP", "UNKNOWN"),
    where(_passed, "UNKNOWN STAR-SKIP CROSS-SKIP SKIP-THE SKIP-ORD"),
    where(_first_missed, "-SKIP SEP-SKIP ENDING-SKIP", "REPEAT", "ORD"),
    where(
        without_adjectives,
        "STITCH-STITCH STITCH-KIND STITCH-CH STITCH-UNKNOWN STITCH-TOEND OF-STITCH OF-CH EACH-NEXT "
        "NEXT-NEXT NUM-NEXT PREP-TO EACH-UNKNOWN NUM-UNKNOWN",
        "STITCH",
    ),
    where(of_them, "OF-THEM OF-THE", "ORD"),
    where(in_its_top, "PREP-SAME", "SAME-STITCH"),
    where(any_one, "NEXT-NUM OF-NUM SKIP-NUM", "NUM-OF"),
    where(this_and_next, "BETWEEN-UNKNOWN", "AND-NEXT AND-THE"),
    where(second_of_two, "BETWEEN", "ORD-KIND ORD-STITCH ORD-PICOT"),
    where(spots, "THE-UNKNOWN THE-STRAY"),
    where(end_ones, "ENDWITH ENDST"),
    where(told_one_by_one, "ORD-PREP", "THE-ORD SEP-ORD", "NUM-STITCH"),
    where(between_two_kinds, "BETWEEN", "STITCH-AND KIND-AND PICOT-AND"),
    where(in_orders, "ORD-SEP ORD-AND"),
    where(of_end_chain, "NUM-OF KIND-OF NEXT-OF", "CH"),
    where(of_a_loop, "PICOT-OF KIND-BETWEEN"),
    where(each_of_a_chain, "OF-REMARK"),
    where(closed_first, "-ENDING SEP-ENDING", "FOUNDATION CH-OF"),
    where(on_a_chain, "-PREP -SEP -NUM -REMARK", "NUM-CH NUM-FOUNDATION REMARK"),
    where(row_along, "ROW-OF", "-PREP SEP-PREP"),
    where(along_all, "-PREP", "REPEAT EACH EVERY"),
    where(on_each_of, "PREP-EACH", "NUM-STITCH"),
    where(begun_at_corner, "EXCEPT STRAY", "-BEGIN -ENDING -CATCH"),
    where(_so_on_round, "SOON-ROUND"),
    where(_all_worked_in, "ALL-SEP ALL-STRAY ALL-UNKNOWN ALL-NOTHING", "PREP"),
    where(_again_behind_mark, "SOON", "STAR CROSS MARK"),
    where(without_glosses, "LP"),
    where(on_either_side, "UNKNOWN TOEND STRAY REMARK", "STITCH"),
    where(last_time, "ENDWITH ORD-TIMES ORD-REPEAT", "REPEAT SOON"),
    where(with_remarks),
    where(last_omitted, "EXCEPT SKIP", "STAR", "REPEAT"),
    where(last_made, "ENDING", "CH", "ORD"),
    where(begun_there, "BEGIN-SEP BEGIN-REMARK BEGIN-PREP REMARK-WITH"),
)
"""What puts words right before it is told what is strange in them."""
