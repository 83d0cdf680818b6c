"""The catalogue of findings: a real case of every code, and a page that is fresh."""

from __future__ import annotations

import pytest
from errors import write

from border.findings import CODES, Severity


@pytest.mark.parametrize("code", CODES)
def test_every_code_has_a_case_that_produces_it(code: str) -> None:
    exit_code, told = write.said(code)
    severity = CODES[code].severity
    lines = [line for line in told.splitlines() if line.endswith(f"[{code}]")]
    assert lines, told
    assert all(f"{severity}: " in line for line in lines)
    if severity is Severity.ERROR:
        assert exit_code in (1, 2)


def test_every_case_is_of_a_code() -> None:
    assert set(write.cases()) <= CODES.keys()


def test_the_page_is_fresh() -> None:
    """Run `python -m tests.errors.write` where this fails, and look at what changed."""
    assert write.PAGE.read_text(encoding="utf-8") == write.page()


def test_a_page_is_the_same_however_often_it_is_written() -> None:
    assert write.page() == write.page()
