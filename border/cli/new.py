"""`border new`: the yoke as it was asked for, written into a folder of its own."""

from __future__ import annotations

from argparse import Namespace

from border.arguments import NEW, UsageFault
from border.cli.files import make_folder, place_for, reason
from border.cli.printing import print_json
from border.cli.questions import Answering, someone_is_there
from border.starting import made


def new(asked: Namespace) -> None:
    """Ask for what is not said, and make the folder. Raises UsageFault; then nothing is made."""
    _make(asked.dir, None)
    given = {key: text for key in NEW if (text := getattr(asked, key)) is not None}
    ask = not asked.usual and not asked.json and someone_is_there()
    answers = Answering(asked.dir, given, ask)
    answers.find_all()
    starter = made(asked.dir, answers.said, answers.usual)
    _make(asked.dir, starter.files)
    if asked.json:
        from border.showing.starter_record import new_record

        print_json(new_record(starter))
    else:
        from border.showing.starter_words import what_next

        print(what_next(starter), end="")


def _make(folder: str, files: dict[str, str] | None) -> None:
    """Make the folder; without files, only see whether it can be, before anything is asked."""
    try:
        if files is None:
            place_for(folder)
        else:
            make_folder(folder, files)
    except FileExistsError:
        raise UsageFault(
            f"there is already something at {folder}, and nothing is ever overwritten",
            "give a folder that is not there yet\n",
        ) from None
    except (OSError, ValueError) as fault:
        raise UsageFault(
            f"{folder} cannot be made: {reason(fault)}", "give a folder that can be made\n"
        ) from None
