"""The manual page and the completions: whole, and understood by those who read them."""

from __future__ import annotations

import re
import shutil
import subprocess
from pathlib import Path

import pytest
from shells import WHERE, completion, options, page

from border import __version__
from border.arguments import COMMANDS, parser_of
from border.cli import main
from border.option_values import SHELLS

TRIED = {
    "border co": {"count"},
    "border count --lo": {"--loops"},
    "border write fern.toml --terms ": {"us", "uk", "early"},
    "border --completion ": set(SHELLS),
}
"""What is typed -> what may follow."""

IN_BASH = """\
source "$1"; shift
COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _shtab_border
printf '%s\\n' "${COMPREPLY[@]}"
"""


def said_in(text: str) -> set[str]:
    """The options that a page or a completion speaks of, fish's `-l loops` among them."""
    plain = text.replace(r"\-", "-")
    found = re.findall(r"(?:(?<![\w-])--|^complete.* -l )([a-z]+(?:-[a-z]+)*)", plain, re.MULTILINE)
    return set(found)


@pytest.mark.parametrize("name", ["border.1", *(f"border.{shell}" for shell in SHELLS)])
def test_what_comes_along_is_of_this_command_line(name: str) -> None:
    """If this fails: `python tests/shells.py`."""
    kept = (WHERE / name).read_text()
    made = page() if name == "border.1" else completion(name.rpartition(".")[2])
    assert said_in(kept) == said_in(made)
    parser = parser_of(__version__)
    long = {word[2:] for option in options(parser) for word in option.option_strings}
    assert said_in(kept) | {"help"} >= {word for word in long if len(word) > 1}
    assert {command for command in COMMANDS if command not in kept} == set()


def test_the_page_is_of_this_version() -> None:
    assert f'"border {__version__}"' in (WHERE / "border.1").read_text()


@pytest.mark.parametrize("command", COMMANDS)
def test_the_page_has_an_example_of_every_command(command: str) -> None:
    _, _, examples = page().partition(".SH EXAMPLES")
    assert f"\nborder {command}" in examples


@pytest.mark.parametrize("shell", SHELLS)
def test_a_completion_is_printed(shell: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["--completion", shell]) == 0
    assert capsys.readouterr().out == (WHERE / f"border.{shell}").read_text()


def test_no_other_shell_is_known(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["--completion", "ash"]) == 2
    assert '--completion: "ash" is no shell: give bash, zsh, fish' in capsys.readouterr().err


def in_shell(shell: str, *arguments: str) -> list[str]:
    if not shutil.which(shell):
        pytest.skip(f"{shell} is not installed")
    done = subprocess.run([shell, *arguments], capture_output=True, text=True, check=True)
    return done.stdout.splitlines()


@pytest.mark.parametrize("typed", TRIED)
def test_bash_finishes_the_words(typed: str) -> None:
    script = str(WHERE / "border.bash")
    assert set(in_shell("bash", "-c", IN_BASH, "bash", script, *typed.split(" "))) == TRIED[typed]


@pytest.mark.parametrize("typed", TRIED)
def test_fish_finishes_the_words(typed: str, tmp_path: Path) -> None:
    script = f"source {WHERE / 'border.fish'}; cd {tmp_path}; complete -C '{typed}'"
    assert {line.split("\t")[0] for line in in_shell("fish", "-c", script)} == TRIED[typed]


def test_zsh_reads_its_completion() -> None:
    assert in_shell("zsh", "-n", str(WHERE / "border.zsh")) == []


def test_the_page_is_read_without_complaint() -> None:
    if not shutil.which("groff"):
        pytest.skip("groff is not installed")
    command = ["groff", "-man", "-Tutf8", "-ww", str(WHERE / "border.1")]
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    assert done.stderr == ""
    assert "border new collar" in done.stdout
