"""What was read through once by a person stays as it was read, until it is changed on purpose."""

import pytest

from tests.plans.read_through import TEXTS, kept, read_through


@pytest.mark.parametrize(("file", "name"), [(file, name) for file, (names, _) in TEXTS.items() for name in names])
def test_it_is_as_it_was_read(file, name):
    assert kept(file)[name] == read_through(file, name)


@pytest.mark.parametrize("file", TEXTS)
def test_nothing_else_was_read(file):
    assert list(TEXTS[file][0]) == list(kept(file))
