"""What `border new` says: while it asks, and when the project is made."""

from __future__ import annotations

from collections.abc import Iterable
from shlex import quote

from border.showing.folding import edge_in_words
from border.showing.starter import Starter
from border.showing.telling import harmless, width_of
from border.yoke.answers import Question, Refused, Value, written
from border.yoke.shapes import SHAPES

WIDTH = 80


def opening() -> str:
    """What is said before the first question."""
    shapes = "".join(f"  {s.name:<8}{s.about}\n" for s in SHAPES.values())
    told = 'The return key takes what stands in [ ]; "back" goes back to the question before.'
    return f"{told}\n\n{shapes}"


def prompt(question: Question, usual: Value) -> str:
    """A question, with what is usual."""
    answer = harmless(written(usual))
    return f"{question.ask} [{answer}]: " if answer else f"{question.ask}: "


def not_so(refused: Refused, option: str = "") -> str:
    """Why an answer cannot be, and what can."""
    before = f"{option}: " if option else ""
    return f"  {before}{harmless(refused.message)}\n  {harmless(refused.help)}"


def what_next(starter: Starter) -> str:
    """What was made, what was taken as usual, and what to do with it."""
    project, border, picture = (quote(harmless(path)) for path in starter.paths)
    widest = max(width_of(edge.name) for edge in starter.edges)
    edges = "".join(f"  {e.name:<{widest}}  {edge_in_words(e)}\n" for e in starter.edges)
    usual = [f"{q.option} {quote(harmless(a))}" for q in starter.usual if (a := starter.answer(q))]
    told = f"{_listed('not said, so as usual:', usual)}\n" if usual else ""
    return (
        f"made {project} (the yoke), {border} (the rounds)\n"
        f"and {picture} (its picture: open it in a browser)\n\n"
        f"{edges}\n"
        f"{told}"
        f"count it:     border count {project}\n"
        f"draw it anew: border yoke {project} --svg > {picture}\n"
        f"then put your own rounds in {border},\n"
        f"and look for faults with: border check {project}\n"
    )


def _listed(head: str, items: Iterable[str]) -> str:
    """Items behind a head, in lines that break between them."""
    lines = [head]
    for item in items:
        if width_of(f"{lines[-1]} {item}") > WIDTH:
            lines.append(" ")
        lines[-1] += f" {item}"
    return "".join(f"{line}\n" for line in lines)
