"""What was read through once by a person stays as it was read, until it is changed on purpose."""

import pytest

from tests.plans.read_through import GOLDEN, TEXTS, read_through


@pytest.mark.parametrize("file", TEXTS)
def test_it_is_as_it_was_read(file):
    assert (GOLDEN / f"{file}.txt").read_text(encoding="utf-8") == read_through(file)
