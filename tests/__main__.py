"""All checks of the project: `python tests`, from the top of the repository.

Style, layout and types first, the tests last, so that the last line says how
many of them were run. Whatever is given behind it goes to pytest.
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

CHECKS = (
    ("ruff", "check", "."),
    ("ruff", "format", "--check", "."),
    ("mypy", "--strict"),
)


def main(for_pytest: list[str]) -> int:
    failed: list[str] = []
    for check in (*CHECKS, ("pytest", "-n", "auto", *for_pytest)):
        if check[0] == "pytest" and failed:
            print(f"\nfailed: {', '.join(failed)}", flush=True)
        print(f"\n$ {' '.join(check)}", flush=True)
        command = [sys.executable, "-m", *check]
        if subprocess.run(command, cwd=Path(__file__).parent.parent, check=False).returncode:
            failed.append(" ".join(check))
    return 1 if failed else 0


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
