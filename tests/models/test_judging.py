import math

import pytest
from hypothesis import given
from hypothesis import strategies as some

from models.judging import Evidence, confidence, features, weigh
from models.pocketsphinx_decoding import Decoding, Spoken
from models.pocketsphinx_recogniser import Tuning

WEIGHTS = Tuning().weights
_PHONES = Decoding(
    "",
    -0.5,
    (
        Spoken("SIL", 0, 30, -0.05),
        Spoken("N", 30, 40, -0.05),
        Spoken("EH", 40, 50, -0.05),
        Spoken("SIL", 50, 60, -0.01),
    ),
)


def _command(*parts, score=-0.5):
    return Decoding("next", score, parts)


def test_a_command_that_explains_all_as_well_as_phones_has_no_lead_and_no_fault():
    command = _command(Spoken("<sil>", 0, 30, -0.05), Spoken("next", 30, 50, -0.1), Spoken("<sil>", 50, 60, -0.01))
    found = weigh(command, ["N", "EH"], _PHONES)

    assert found == Evidence(
        lead=0.0, worst_word=0.0, likeness=1.0, surplus=0.0, skipped=0.0,
        hurry=pytest.approx(math.log(0.2 / 0.18)), phones=math.log(2),
    )  # fmt: skip


def test_speech_that_the_command_takes_for_silence_is_skipped():
    command = _command(Spoken("<sil>", 0, 40, -0.2), Spoken("next", 40, 50, -0.05), Spoken("<sil>", 50, 60, -0.01))

    assert weigh(command, ["N", "EH"], _PHONES).skipped == pytest.approx(0.5)


def test_leads_are_for_each_second_of_speech():
    command = _command(Spoken("<sil>", 0, 30, -0.05), Spoken("next", 30, 50, -0.3), score=-0.9)
    found = weigh(command, ["N", "EH"], _PHONES)

    assert found.lead == pytest.approx((-0.9 + 0.5) / 0.2)
    assert found.worst_word == pytest.approx((-0.3 + 0.1) / 0.2)


def test_more_phones_than_the_command_has_are_a_surplus():
    assert weigh(_command(Spoken("next", 0, 60, -1.0)), ["EH"], _PHONES).surplus == pytest.approx(math.log(3 / 2))


_EVIDENCE = some.builds(
    Evidence,
    lead=some.floats(-5, 1),
    worst_word=some.floats(-5, 1),
    likeness=some.floats(0, 1),
    surplus=some.floats(-3, 3),
    skipped=some.floats(0, 1),
    hurry=some.floats(-3, 3),
    phones=some.floats(0, 4),
)


@given(_EVIDENCE)
def test_confidence_is_a_share(evidence):
    assert 0.0 <= confidence(evidence, WEIGHTS) <= 1.0


@given(_EVIDENCE, some.floats(0.01, 1))
def test_a_better_lead_never_makes_less_sure(evidence, more):
    better = Evidence(**{name: getattr(evidence, name) for name in Evidence.__slots__} | {"lead": evidence.lead + more})

    assert confidence(better, WEIGHTS) >= confidence(evidence, WEIGHTS)


def test_there_is_a_weight_for_each_feature():
    evidence = Evidence(0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0)

    assert len(WEIGHTS) == 1 + len(features(evidence))
    with pytest.raises(ValueError, match="zip"):
        confidence(evidence, WEIGHTS[:-1])


def test_no_evidence_leaves_the_constant():
    assert confidence(Evidence(0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0), (0.0,) * 10) == 0.5
