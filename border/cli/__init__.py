"""The command line: the only place that reads and writes files, prints, or exits.

Results go to standard output, findings to standard error. Exit 0: no error
finding; 1: error findings; 2: wrong usage, or a file that cannot be read.
"""

from __future__ import annotations

import gc
import os
import sys
from collections.abc import Sequence

from border import __version__
from border.arguments import UsageFault, parsed
from border.cli.commands import COMMANDS, FAULTS, FINE, WRONG
from border.cli.files import completion, read_file

__all__ = ["main", "read_file"]


def main(argv: Sequence[str] | None = None) -> int:
    """Do what the command line asks; the exit code."""
    gc.set_threshold(200_000)  # a short run throws little away, and looking for it takes time
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")
    try:
        code = _asked(sys.argv[1:] if argv is None else argv)
        sys.stdout.flush()
    except BrokenPipeError:
        # The reader has gone (border count … | head): nothing more to say to it.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return FAULTS
    except KeyboardInterrupt:
        return 130
    return code


def _asked(argv: Sequence[str]) -> int:
    try:
        asked = parsed(argv, __version__)
        if asked.completion:
            print(completion(asked.completion), end="")
            return FINE
        return COMMANDS[asked.command](asked)
    except UsageFault as fault:
        print(f"border: {fault}\n{fault.usage}", file=sys.stderr, end="")
        return WRONG
    except SystemExit as done:  # --help and --version
        return done.code if isinstance(done.code, int) else FINE
