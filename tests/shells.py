"""Makes the manual page and the completions anew: `python tests/shells.py`.

Both are made from the parser of the command line, by libraries that only developers
need, and come along as they are: a user's shell asks for words while she types.
"""

from __future__ import annotations

import argparse
import os
from collections.abc import Iterator
from pathlib import Path

import shtab
from argparse_manpage.manpage import Manpage

from border import __version__
from border.arguments import COMMANDS, parser_of
from border.examples import EXAMPLES
from border.option_values import SHELLS

WHERE = Path(__file__).parent.parent / "border" / "cli" / "shells"

EXIT_STATUS = """\
.TP
0
all is well
.TP
1
there are errors; a round that does not close is one
.TP
2
the command is wrong, or a file cannot be read"""

CARE = """\
Forty hours is a long time on a fine hook: rest your hands every half hour, work in good
light, keep a steel hook sheathed. Pain that stays is a matter for a doctor."""


def parsers(parser: argparse.ArgumentParser) -> dict[str, argparse.ArgumentParser]:
    """The parser of every command."""
    for action in parser._actions:
        if isinstance(action, argparse._SubParsersAction):
            return dict(action.choices)
    raise LookupError("no commands")


def options(parser: argparse.ArgumentParser) -> Iterator[argparse.Action]:
    """What can be said to every command, and before one."""
    yield from parser._actions
    for command in parsers(parser).values():
        yield from command._actions


def completion(shell: str) -> str:
    """What lets a shell finish words; of choices that the help shows as `a|b`, too."""
    parser = parser_of(__version__)
    for action in options(parser):
        shown = action.metavar if isinstance(action.metavar, str) else ""
        if "|" in shown:
            action.choices = shown.split("|")
        elif shown == "SHELL":
            action.choices = SHELLS
        elif shown in ("FILE", "DIR"):
            kind = shtab.FILE if shown == "FILE" else shtab.DIRECTORY
            setattr(action, "complete", kind)  # noqa: B010  (a name of shtab's own)
    return str(shtab.complete(parser, shell))


def page() -> str:
    """The manual page, in the markup of `man`. It bears no date: the same source, the same page."""
    parser = parser_of(__version__)
    parser.epilog = None
    for command in parsers(parser).values():
        command.epilog = command.description = None  # the one below, the other said already
    made = Manpage(parser, format="single-commands-section")
    made.date, made.manual, made.source = "", "border", f"border {__version__}"
    made.description = "counts a written crochet border, round by round, on your own edge"
    lines = (f".TP\n{typed}\n{comes}" for name in COMMANDS for typed, comes in EXAMPLES[name])
    made.add_section("examples", ">", "\n".join(lines).replace("-", r"\-"))
    made.add_section("exit status", ">", EXIT_STATUS)
    made.add_section("care", ">", CARE)
    return str(made)


def main() -> None:
    os.environ["COLUMNS"] = "68"  # the page is indented; and it is not to depend on a terminal
    for shell in SHELLS:
        (WHERE / f"border.{shell}").write_text(completion(shell), encoding="utf-8")
    (WHERE / "border.1").write_text(page(), encoding="utf-8")
    print(f"made {', '.join(sorted(path.name for path in WHERE.iterdir()))}")


if __name__ == "__main__":
    main()
