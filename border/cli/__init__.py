"""The command line: the only place that reads and writes files, prints, or exits.

Results go to standard output, findings to standard error. Exit 0: no error
finding; 1: error findings; 2: wrong usage, or a file that cannot be read.
"""

from __future__ import annotations

import gc
import io
import os
import sys
from collections.abc import Sequence
from contextlib import redirect_stdout, suppress
from pathlib import Path
from typing import TextIO

from border import __version__
from border.arguments import UsageFault, parsed
from border.cli.commands import COMMANDS, FAULTS, FINE, WRONG
from border.cli.files import completion, read_file, reason

__all__ = ["main", "read_file"]


def main(argv: Sequence[str] | None = None) -> int:
    """Do what the command line asks; the exit code."""
    gc.set_threshold(200_000)  # a short run throws little away, and looking for it takes time
    _open_streams()
    try:
        code = _asked(sys.argv[1:] if argv is None else argv)
        sys.stdout.flush()
        sys.stderr.flush()
    except BrokenPipeError:
        # The reader has gone (border count … | head): nothing more to say to it.
        _silence(sys.stdout)
        try:
            sys.stderr.flush()
        except OSError:  # … |& head
            _silence(sys.stderr)
        return FAULTS
    except OSError as fault:
        # Whatever reads or writes a file tells its own faults: this is what is printed.
        _silence(sys.stdout)
        with suppress(OSError):
            print(f"border: what comes out cannot be written: {reason(fault)}", file=sys.stderr)
            sys.stderr.flush()
            return WRONG
        _silence(sys.stderr)
        return WRONG
    except KeyboardInterrupt:
        return 130
    return code


def _open_streams() -> None:
    """Streams that take everything, even where there are none (`>&-`)."""
    nowhere = Path(os.devnull)
    sys.stdout = sys.stdout or nowhere.open("w")
    sys.stderr = sys.stderr or nowhere.open("w")
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")


def _silence(stream: TextIO) -> None:
    """Nothing more comes of a stream, nor of what it still holds."""
    with suppress(OSError, ValueError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())


def _asked(argv: Sequence[str]) -> int:
    help_ = io.StringIO()  # argparse would pass over a full disk in silence
    try:
        with redirect_stdout(help_):
            asked = parsed(argv, __version__)
        if asked.completion:
            print(completion(asked.completion), end="")
            return FINE
        return COMMANDS[asked.command](asked)
    except UsageFault as fault:
        print(f"border: {fault}\n{fault.usage}", file=sys.stderr, end="")
        return WRONG
    except SystemExit as done:  # --help and --version
        print(help_.getvalue(), end="")
        return done.code if isinstance(done.code, int) else FINE
