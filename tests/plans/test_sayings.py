"""What plans say, against the English sentences: each key has one, and it says the values given and no others."""

import pytest

from assistant.languages import trying
from plans.proof.sayings import PROOF_SAYINGS
from plans.sayings import SAYINGS
from plans.sizing.sayings import SIZING_SAYINGS
from plans.written.sayings import WRITTEN_SAYINGS
from plans.yarn.sayings import YARN_SAYINGS
from tests.languages_under_test import ENGLISH

KINDS = {"all": SAYINGS, "proof": PROOF_SAYINGS, "sizing": SIZING_SAYINGS, "written": WRITTEN_SAYINGS,
         "yarn": YARN_SAYINGS}  # fmt: skip
ONCE = ("wrap-turn", "ds", "twin", "fasten", "k2tog-strand", "ssk-strand", "place-marker", "slip-marker",
        "remove-marker")  # fmt: skip
LEFT_OUT = {
    **{f"op-{name}": {"times"} for name in ONCE},
    **{f"wish-{kind}{on}": {"round", "stage"} for kind in ("at-round", "ripped-back") for on in ("", "-on")},
    "where-heel-row": {"of"}, "new-ball-here": {"round", "stage", "of"},
    "needle-unknown": {"field"}, "needle-ambiguous": {"field"},
}  # fmt: skip
"""Given, and not said in English: what is done once, and what is told of the place instead."""


@pytest.fixture(scope="module")
def said() -> dict[str, set[str]]:
    """Values that each English sentence uses; `where` is any problem's place, `before` and `after` any list's."""
    return {
        key: set().union(*(set(used.values) for used in patterns.values())) - {"before", "after"}
        for key, patterns in trying.uses(ENGLISH.sentences).items()
    }


@pytest.mark.parametrize("kind", KINDS)
def test_english_says_every_value_that_is_given_and_no_other(kind, said):
    assert KINDS[kind]
    for key, names in KINDS[kind].items():
        assert said[key] | LEFT_OUT.get(key, set()) | {"where"} == names - {"before", "after"} | {"where"}, key
