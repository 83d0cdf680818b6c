"""Asking: one question after the other, every answer looked at before the next."""

from __future__ import annotations

import sys
from collections.abc import Mapping

from border.arguments import UsageFault
from border.cli.printing import is_terminal
from border.showing.starter_sketch import sketch
from border.showing.starter_words import not_so, opening, prompt
from border.starting import next_question, questions, shapes_with
from border.yoke.answers import FreeLoops, Question, Refused, Value, numbers, written

BACK = "back"
"""Typed in place of an answer, it goes back to the question before."""


def someone_is_there() -> bool:
    """Whether a terminal is there to ask and to answer at."""
    return is_terminal(sys.stdin) and is_terminal(sys.stdout)


class Answering:
    """The answers for a project in `folder`: from `given` options, typed, or as usual.

    `said`: all answers by key; `usual`: the questions that nobody answered.
    """

    def __init__(self, folder: str, given: Mapping[str, str], ask: bool) -> None:
        self.folder = folder
        self.given = dict(given)
        self.ask = ask
        self.said: dict[str, Value] = {}
        self.usual: list[Question] = []
        self.typed: list[str] = []

    def find_all(self) -> None:
        """Answer every question. Raises UsageFault."""
        if self.ask:
            print(opening())
        while question := next_question(self.folder, self.said):
            if question.key in self.given:
                self._take_option(question)
            elif self.ask:
                self._take_typed(question)
            else:
                self.said[question.key] = question.usual(self.said)
                self.usual.append(question)
            if question.key == "shape":
                self._refuse_strangers()
        if self.ask:
            print()

    def _take_option(self, question: Question) -> None:
        text = self.given[question.key]
        value = question.read(text, self.said)
        if not isinstance(value, Refused):
            self.said[question.key] = value
        elif self.ask:
            print(not_so(value, question.option))
            del self.given[question.key]
        else:
            raise UsageFault(f"{question.option}: {value.message}", f"{value.help}\n")

    def _take_typed(self, question: Question) -> None:
        if question.key == "loops":
            print(f"\n{sketch(self.said)}")
        usual = question.usual(self.said)
        text = _typed(prompt(question, usual), self.folder).strip()
        if text.casefold() == BACK:
            self._go_back()
            return
        value = question.read(text, self.said) if text else usual
        if isinstance(value, Refused):
            print(not_so(value))
            return
        self.said[question.key] = value
        self.typed.append(question.key)
        if isinstance(question, FreeLoops):
            print(f"  {question.shown(numbers(self.said, question.key), self.said)}")

    def _go_back(self) -> None:
        """Forget the last answer that was typed, and all that came after it."""
        if self.typed:
            keys = list(self.said)
            for key in keys[keys.index(self.typed.pop()) :]:
                del self.said[key]

    def _refuse_strangers(self) -> None:
        """Options that are for other shapes."""
        if "shape" not in self.said:
            return
        asked = questions(self.folder, self.said)
        strange = [key for key in self.given if key not in {q.key for q in asked}]
        if strange:
            option = f"--{strange[0].replace('_', '-')}"
            raise UsageFault(
                f"{option} goes with --shape {' or '.join(shapes_with(strange[0]))}, "
                f"not with {written(self.said['shape'])}",
                f"with it go {', '.join(q.option for q in asked)}\n",
            )


def _typed(asked: str, folder: str) -> str:
    """What is typed behind a prompt. Raises UsageFault where the input ends."""
    if hasattr(sys.stdin, "reconfigure"):
        sys.stdin.reconfigure(errors="replace")
    try:
        return input(asked)
    except EOFError:
        print()
        raise UsageFault(
            f"the questions were left, and {folder} is not made", "--usual asks nothing\n"
        ) from None
