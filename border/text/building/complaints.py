"""What is said where known words stand in an order that makes no step."""

from __future__ import annotations

from collections.abc import Sequence

from border.text.shaping.between_steps import SEVERAL
from border.text.terminals import Terminal
from border.text.tree import ST, Kind
from border.text.vocabulary import vocabulary
from border.text.wording.passing import OPENS, WHICH
from border.text.wording.strangers import asked_place
from border.text.words import shortened

_STEP = "a step is stitches, chains, picots, a skip, a bracket or a repeat"
_STANDING = {
    "KIND": 'this is a place, not a stitch: "2 dc in next {0}", "skip 1 {0}"',
    "PREP": "a place goes right behind its stitches, without a comma: 2 dc in next space",
    "DIVIDED": 'what stands between more than chains do is a repeat: "*1 dc in next loop, ch 3, '
    'picot, ch 3; repeat from *"',
    "BETWEEN": "a place goes right behind its stitches, without a comma: 2 dc between next 2 dc",
    "ALLIN": 'write the list before it: "2 dc, ch 2, 2 dc, all in next space"',
    "TIMES": 'put what is repeated in brackets: "(1 dc, ch 1) 3 times"',
    "MORE": 'put what is repeated in brackets: "(1 dc, ch 1) 3 times"',
    "TOEND": 'put what is repeated in brackets: "(1 dc, ch 1) to end"',
    "TOLAST": 'put what is repeated in brackets: "(1 dc, ch 1) to last 2 st"',
    "EACH": 'write "1 dc in each st"',
    "NEXT": 'write "1 dc in next st"',
    "ORD": 'write "1 dc in 2nd st", "1 dc in first st of next block"',
    "CENTRE": 'write "1 dc in centre of next block"',
    "SAME": 'write "1 dc in same place"',
    "AS": 'write "ch 3 as dc"; a copy of a row stands alone: "as round 2"',
    "LIKE": 'a copy of a row stands alone in its row: "as round 2"',
    "ROW": 'a row begins on a line of its own: "round 2:"; a copy stands alone: "as round 1"',
    "QUOTED": 'a file is named only in a copy: as round 1 of "cuff.border"',
    "NUM": "put a comma between two numbers, or say of what this is the number",
    "OTHER": 'write "every other st"',
    "CROSS": 'write "3 times" behind the bracket',
    "STRAY": 'set a remark apart: "-- {0} --", or leave it out',
    "WITH": 'write "3 dc, with ch 2 between, in next space"',
    "TO": 'only a sl st goes to a place, at the head of a row: "sl st to next space"',
    "PLACE": 'write "in same place"',
}


_TWO = 2
"""So far back stands what parts a number from the step before."""


def complaint(terminals: Sequence[Terminal], at: int) -> tuple[str, str, Terminal]:
    """The message and the help for a text that goes wrong at a terminal (or at its end).

    And the terminal that they speak of: where something is missing, the one before.
    """
    before = terminals[at - 1] if at else None
    expected = vocabulary().expected
    if at >= len(terminals):
        assert before is not None
        help_ = expected.get(before.type, _STEP)
        return f'something is missing behind "{shortened(before.text)}"', help_, before
    here = terminals[at]
    message = f'"{shortened(here.text)}" makes no step here'
    if here.type == "STRAY" and (asked := asked_place(here.text)) is not None:
        message = f'"{shortened(here.text)}" is one thing in this book, and another in that'
        return message, asked, here
    if (here.type, here.text) == ("OF", "(") and before is not None and before.type == "PICOT":
        message = "what this bracket says does not close a picot into its own chains"
        named = shortened(before.text)
        help_ = f'if these are the steps, leave out "{named}" and the brackets; else "picot of 4"'
        return message, help_, here
    if here.text.endswith("side of"):
        message = f'what stands "{shortened(here.text)}" something has two places'
        help_ = "write its stitches twice, each with the place that they go into"
        return message, help_, here
    if here.text.endswith(("cord only", "cord alone", "cords only", "cords alone")):
        message = f'what goes "{shortened(here.text)}" goes into no stitch of the row below'
        help_ = 'write as many chains in its place, as in "ch 10", and count its stitches apart'
        return message, help_, here
    if here.text in ("just made", "just worked"):
        message = "what this row has just made is no place of the row below"
        help_ = "write what it comes to on the row, as a picot, or a figure with a name of its own"
        return message, help_, here
    if here.name == SEVERAL:
        message = "which of these stitches are worked off together is not said"
        help_ = 'write them as one step: "2 dc in each of the next 2 loops, all together"'
        return message, help_, here
    if here.kind == Kind("shell"):
        message = f'of what "{here.text}" is made is not said'
        return message, f'write a heading: "{here.text} = 2 dc, ch 2, 2 dc"', here
    if here.type == "CLUSTER" and before is not None and before.type in OPENS | WHICH | {"NUM"}:
        message = "which of the stitches of the row below these are is not said"
        help_ = 'one that is worked off as one is a stitch like others: "in next dc", "in 3rd dc", '
        return message, f'{help_}or "in next run of 1 dc" where it stands alone', here
    opened = at < _TWO or terminals[at - _TWO].type in ("SEP", "STAR", "LP")
    counted = before is not None and before.type == "NUM" and opened
    if counted and (here.kind == ST or here.type == "PREP"):  # `2 in each loop`
        assert before is not None
        message = "which stitch is made here is not said"
        return message, f'name it: "{shortened(before.text)} dc in each st"', before
    if before is not None and before.type in expected:
        opens = here.type in ("SEP", "RP", "LP", "STAR", "ENDING", "REPEAT")
        if opens:
            message = f'something is missing behind "{shortened(before.text)}"'
        return message, expected[before.type], before if opens else here
    if before is not None and before.type == "ENDING" and here.type in ("PREP", "TO", "WITH"):
        help_ = (
            'say with which stitch: "1 sc in next space", or write a heading "fasten means sc"; '
            'to join new thread at the head of a row write "fasten the thread to next space"; '
            'to close the round write "join"'
        )
        return message, help_, here
    return message, _STANDING.get(here.type, _STEP).format(shortened(here.text)), here
