"""Whether the tests notice the change that stands in the working copy: 0 if none does.

Runs the quick test files of the module that is changed, those nearest to it first.
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

TESTS = Path(__file__).parent.parent
QUICK = {
    "text": "rows places naming sentences marks figures lists brackets words headings clauses points syntax written",
    "yoke": "edges rings mirrors positions yoke_table costs project project_written faces mending",
    "working": "closing places points clauses golden running found telling",
    "planning": "spots costs falling choosing planning close plans needs",
}
"""Test files of each floor, by the part of their name before `_test.py`."""


def tests_of(module: Path) -> list[str]:
    """The test files of a module: that of its own name, then those of its floor."""
    names = dict.fromkeys([module.stem, *QUICK[module.parent.name].split()])
    files = [TESTS / f"{name}_test.py" for name in names]
    return [str(file) for file in files if file.exists()]


def main() -> int:
    asked = ["git", "diff", "--name-only", "--", "border"]
    changed = subprocess.run(asked, capture_output=True, text=True, check=True).stdout.split()
    files = list(dict.fromkeys(f for name in changed for f in tests_of(Path(name))))
    if not files:
        print("nothing is changed")
        return 0
    pytest = [sys.executable, "-m", "pytest", "-xq", "-p", "no:cacheprovider", *files]
    return subprocess.run(pytest, check=False).returncode


if __name__ == "__main__":
    raise SystemExit(main())
