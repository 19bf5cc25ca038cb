"""What plans say, against the English sentences: each key has one, and it says the values given and no others."""

import re

import pytest

from plans.charts import CHART_SAYINGS
from plans.proof.sayings import PROOF_SAYINGS
from plans.sayings import SAYINGS
from plans.sizing.sayings import SIZING_SAYINGS
from plans.written.sayings import WRITTEN_SAYINGS
from plans.yarn.sayings import YARN_SAYINGS
from tests.source import ROOT

KINDS = {"all": SAYINGS, "proof": PROOF_SAYINGS, "sizing": SIZING_SAYINGS, "written": WRITTEN_SAYINGS,
         "yarn": YARN_SAYINGS, "charts": CHART_SAYINGS}  # fmt: skip
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
    """Values that each English sentence uses, itself or by another that it holds."""
    text = (ROOT / "assistant" / "languages" / "en" / "sentences.ftl").read_text("utf-8")
    _, *parts = re.split(r"^([a-z][a-z0-9-]*) =", text, flags=re.MULTILINE)
    messages = dict(zip(parts[::2], parts[1::2], strict=True))
    return {key: _used(key, messages, {key}) for key in messages}


def _used(key: str, messages: dict[str, str], seen: set[str]) -> set[str]:
    names = set(re.findall(r"\$(\w+)", messages[key]))
    held = set(re.findall(r"\{ *([a-z][a-z0-9-]*) *\}", messages[key])) & messages.keys() - seen
    return names.union(*(_used(other, messages, seen | held) for other in held))


@pytest.mark.parametrize("kind", KINDS)
def test_english_says_every_value_that_is_given_and_no_other(kind, said):
    anyway = {"where", "before", "after"}  # the place of a problem; what stands beside a part of a list
    assert KINDS[kind]
    for key, names in KINDS[kind].items():
        assert said[key] | LEFT_OUT.get(key, set()) | anyway == names | anyway, key
