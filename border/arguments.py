"""What can be asked on the command line, and what is said when it is asked wrongly."""

from __future__ import annotations

import argparse
import re
from collections.abc import Sequence
from typing import Any, NoReturn

from border import option_values as values
from border.examples import first_of_each, told

COMMANDS = {
    "new": "ask for a yoke, and make a project of it that works",
    "check": "look for faults in border and project files",
    "count": "count every round: stitches, repeats, what is left over",
    "close": "tell how many loops a border needs in order to close",
    "adjust": "plan where to ease in so that every round closes",
    "thread": "reckon the thread by round and edge, and where each ball runs out",
    "sheet": "make the row sheet: what stands at every joint, with boxes to tick",
    "write": "write a border out for its edge, every repeat counted",
    "flat": "tell whether every round lies flat, and what mends it",
    "attach": "tell how an edge is sewn to its cloth: parts, pins, stitches",
    "size": "tell how many wheels a measure needs, or what more wheels change",
    "yoke": "show how the loops of every motif are used, and the edges",
    "chart": "draw a border as a symbol chart, in SVG",
    "schema": "print the JSON Schema of what --json prints",
}

NEW = {
    "shape": (
        "yoke|collar|cuff|strip",
        "what it is: a chemise yoke, a round collar, a cuff, a strip",
    ),
    "wheels": ("N", "collar, cuff, strip: its wheels"),
    "front": ("N", "yoke: wheels across the front"),
    "back": ("N", "yoke: wheels across the back"),
    "strap": ("N", "yoke: wheels in each strap"),
    "underarm": ("N", "yoke: wheels under each arm"),
    "loops": ("N", "loops round one wheel"),
    "joined": ("N", "loops of it that one joint takes up"),
    "seam": ("N", "of those, at each end of a joint, those free for the edge beside"),
    "free": (
        "N,N",
        "free loops of a wheel between two others: at neck and hem; "
        "collar: neck and outside; cuff: wrist and sleeve; strip: bordered and other side",
    ),
    "strap_free": ("N,N", "yoke: those of a strap wheel, at neck and armhole"),
    "underarm_free": ("N,N", "yoke: those of an underarm wheel, at armhole and hem"),
    "corner_free": (
        "N,N,N",
        "yoke: those where a strap and an underarm are joined side by side, "
        "at neck, hem and armhole",
    ),
    "across": ("MM", "a wheel measures so much across"),
    "name": ("NAME", "the name of the project"),
    "hand": ("right|left", "the hand that works"),
    "terms": ("us|uk|early", "name the stitches in these terms"),
}
"""What `border new` takes, by the keys of its questions: as shown, and what it is."""

_FILE = "a project (.toml), or a border text with --loops or --runs"
_FILES = f"{_FILE}; or several borders, or folders of them, with or without a project"


class UsageFault(Exception):
    """The command line cannot be understood. `usage`: how it could be asked."""

    def __init__(self, message: str, usage: str) -> None:
        super().__init__(message)
        self.usage = usage


class _Parser(argparse.ArgumentParser):
    """A parser whose help has plain headings, and examples as they are."""

    def __init__(self, **said: Any) -> None:
        plain = argparse.RawDescriptionHelpFormatter
        super().__init__(add_help=False, allow_abbrev=False, formatter_class=plain, **said)
        self._positionals.title = "to be named"
        self.add_argument("-h", "--help", action="help", help="show this, and do nothing")

    def error(self, message: str) -> NoReturn:
        raise UsageFault(in_plain_words(message), self.format_usage())


def in_plain_words(message: str) -> str:
    """What argparse says, as one would say it to a needleworker."""
    if m := re.match(r"argument command: invalid choice: '(.*?)'", message, re.DOTALL):
        from difflib import get_close_matches

        near = get_close_matches(m[1], COMMANDS, 1)
        hint = f"did you mean {near[0]}?" if near else f"there are {', '.join(COMMANDS)}"
        return f'there is no command "{m[1]}": {hint}'
    if m := re.match(r"the following arguments are required: (.*)", message):
        return f"{m[1]} is missing"
    if m := re.match(r"argument (\S+): expected one argument", message):
        return f"{m[1]} needs a value behind it"
    return re.sub(r"^argument (\S+): ", r"\1: ", message)


def parsed(argv: Sequence[str], version: str) -> argparse.Namespace:
    """The command line as asked. Raises UsageFault; `--help` and `--version` raise SystemExit."""
    parser = parser_of(version)
    asked, strange = parser.parse_known_args(argv)
    if strange:
        of = f"border {asked.command}" if asked.command else "border"
        message = f"{' '.join(strange)} means nothing here"
        help_ = f"{of} --help tells what does\n"
        if getattr(asked, "runs", None) and all(word.isdecimal() for word in strange):
            runs = ",".join([*map(str, asked.runs), *strange])
            help_ = f"the loops of all motifs are one word: --runs {runs}\n"
        raise UsageFault(message, help_)
    if asked.command is None and asked.completion is None:
        raise UsageFault("say what is to be done", parser.format_help())
    return asked


def parser_of(version: str) -> argparse.ArgumentParser:
    """The parser of the command line; the manual page and the completions are made of it too."""
    parser = _Parser(
        prog="border",
        description="Counts a written crochet border, round by round, on your own edge.",
        epilog=first_of_each(),
    )
    about = "show which version this is, and do nothing"
    parser.add_argument("--version", action="version", version=f"border {version}", help=about)
    about = "print what lets bash, zsh or fish finish words behind border"
    parser.add_argument("--completion", metavar="SHELL", type=values.shell, help=about)
    commands = parser.add_subparsers(dest="command", metavar="command", title="commands")
    for name, about in COMMANDS.items():
        sentence = f"{about[0].upper()}{about[1:]}."
        command = commands.add_parser(name, help=about, description=sentence, epilog=told(name))
        match name:
            case "new":
                command.add_argument("dir", metavar="DIR", help="a folder that is not there yet")
                _shape(command)
            case "check":
                command.add_argument("files", metavar="FILE", nargs="+", help=_FILE)
                about = "show for each row which of its readings come out"
                command.add_argument("--readings", action="store_true", help=about)
            case "close":
                command.add_argument("files", metavar="FILE", nargs="+", help=_FILES)
            case "count" | "adjust" | "thread" | "sheet" | "write" | "chart":
                command.add_argument("file", metavar="FILE", help=_FILE)
            case "flat" | "attach":
                _in_project(command)
            case "size":
                _size(command)
            case "yoke":
                command.add_argument("file", metavar="FILE", help="a project (.toml)")
                command.add_argument("--svg", action="store_true", help="draw it, as SVG")
        if name in ("check", "count", "close", "adjust", "thread", "sheet", "write", "chart"):
            _edge(command)
        if name == "adjust":
            _plans(command)
        if name == "thread":
            _balls(command)
        if name == "sheet":
            command.add_argument("--text", action="store_true", help="for the terminal, no HTML")
        if name in ("write", "chart"):
            about = "name the stitches in these terms; left out: in those of the border"
            command.add_argument("--terms", metavar="us|uk|early", type=values.terms, help=about)
        if name == "chart":
            about = "draw this section, or one motif between its neighbours; left out: a repeat"
            command.add_argument("--section", metavar="NAME", help=about)
        command.add_argument("--json", action="store_true", help="print JSON, for programs")
    return parser


def _edge(command: argparse.ArgumentParser) -> None:
    edge = command.add_mutually_exclusive_group()
    about = "the edge of a border text: N loops"
    edge.add_argument("--loops", metavar="N", type=values.number, help=about)
    about = "or motifs with so many loops each"
    edge.add_argument("--runs", metavar="6,6,3,3", type=values.runs, help=about)
    about = "that edge has two ends, and is worked to and fro"
    command.add_argument("--open", dest="opened", action="store_true", help=about)
    command.add_argument("--work", metavar="EDGE", help="of a project: only this edge")


def _size(command: argparse.ArgumentParser) -> None:
    command.add_argument("file", metavar="FILE", help="a project (.toml)")
    command.add_argument("--edge", metavar="EDGE", help="the edge that is to have a length")
    command.add_argument(
        "--length", metavar="820", type=values.length, help="its length in mm (or 82cm), as it lies"
    )
    about = "so many more wheels in each of these sections (below 0: fewer)"
    command.add_argument("--more", metavar="front=1,back=1", type=values.more, help=about)
    command.set_defaults(loops=None, runs=None, opened=False, work=None)


def _in_project(command: argparse.ArgumentParser) -> None:
    """A file that has to be a project, and one of its pieces of work."""
    command.add_argument("file", metavar="FILE", help="a project (.toml)")
    command.add_argument("--work", metavar="EDGE", help="only the work on this edge of the project")
    command.set_defaults(loops=None, runs=None, opened=False)


def _shape(command: argparse.ArgumentParser) -> None:
    for key, (shown, about) in NEW.items():
        command.add_argument(f"--{key.replace('_', '-')}", metavar=shown, help=about)
    about = "ask nothing: what is not said is as usual"
    command.add_argument("--usual", action="store_true", help=about)


def _plans(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "--all",
        metavar="N",
        type=values.few,
        default=1,
        help="the N best plans, and what each pays for",
    )
    command.add_argument(
        "--sections", action="store_true", help="show how the repeats lie over the sections"
    )
    command.add_argument("--write", action="store_true", help="put the plan into the project file")


def _balls(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "--plan", action="store_true", help="tell how far your balls go, and what to leave out"
    )
    command.add_argument(
        "--balls",
        metavar="N",
        type=values.amount,
        help="plan for N balls, not those of the project",
    )
