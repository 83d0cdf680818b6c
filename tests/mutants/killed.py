"""Whether the tests notice the change that stands in the working copy: 0 if none does.

Runs the quick tests of the module that is changed, those nearest to it first, until one fails.
"""

from __future__ import annotations

import resource
import subprocess
from pathlib import Path

import pytest
from hypothesis import Phase, settings

TESTS = Path(__file__).parent.parent
QUICK = {
    "text": "rows clauses places sentences words headings points lists brackets syntax naming marks figures "
    "complaints parser passing amounts source tree phrases golden errors",
    "yoke": "edges rings mirrors positions yoke_table costs project project_written golden errors faces mending",
    "working": "closing rows places points clauses telling unclosed questions golden adjust found running errors",
    "planning": "spots costs offers falling choosing close adjust needs plans errors",
}
"""Tests of each floor, by the part of their name before `_test.py`, the quickest first."""
NEAR = {
    "answers": "new",
    "attachments": "attaching",
    "resized": "sizing",
    "shapes": "new",
}
"""Tests of a module that have another name."""
SECONDS = 60
"""A test takes less, unless the change keeps it from ending: several times the slowest here."""
MEMORY = 4 << 30


def tests_of(module: Path) -> list[str]:
    """The tests of a module: those of its own name or its first word, then those of its floor."""
    own = [module.stem, module.stem.split("_")[0], *NEAR.get(module.stem, "").split()]
    names = dict.fromkeys(["structs", *own, *QUICK[module.parent.name].split()])
    files = [path for name in names for path in (TESTS / f"{name}_test.py", TESTS / name)]
    return [str(path) for path in files if path.exists()]


def main() -> int:
    asked = ["git", "diff", "--name-only", "--", "border"]
    changed = subprocess.run(asked, capture_output=True, text=True, check=True).stdout.split()
    files = list(dict.fromkeys(f for name in changed for f in tests_of(Path(name))))
    if not files:
        print("nothing is changed")
        return 0
    phases = (Phase.explicit, Phase.generate)  # one case that fails is enough
    settings.register_profile("mutants", phases=phases, derandomize=True)
    settings.load_profile("mutants")
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
    ends = ["-o", f"faulthandler_timeout={SECONDS}", "-o", "faulthandler_exit_on_timeout=true"]
    return pytest.main(["-xq", "-p", "no:cacheprovider", *ends, *files])


if __name__ == "__main__":
    raise SystemExit(main())
