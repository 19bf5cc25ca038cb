"""Weights are found again that examples were drawn by, and what may not be acted on is not."""

import json
import math
import random

from models.fitting import ACT, Example, fit, main, reliability
from tests.models.test_evaluating import _made_set, _written


def _drawn(count, weights, seed=1):
    chance = random.Random(seed)
    found = []
    for _ in range(count):
        features = (chance.gauss(0, 1), chance.gauss(0, 2))
        odds = weights[0] + sum(weight * value for weight, value in zip(weights[1:], features, strict=True))
        found.append(Example(features, chance.random() < 1 / (1 + math.exp(-odds)), command=True))
    return found


def test_the_weights_that_examples_were_drawn_by_are_found():
    found = fit(_drawn(20_000, (-0.5, 1.0, 0.4)), most=1.0)

    assert all(abs(each - weight) < 0.1 for each, weight in zip(found, (-0.5, 1.0, 0.4), strict=True))


def test_of_what_is_no_command_no_more_is_acted_on_than_allowed():
    commands = _drawn(400, (2.0, 1.0, 1.0))
    others = [Example(each.features, right=False, command=False) for each in _drawn(400, (0.0, 1.0, 1.0), seed=2)]
    weights = fit([*commands, *others], most=0.02)
    odds = [weights[0] + sum(w * x for w, x in zip(weights[1:], each.features, strict=True)) for each in others]

    assert sum(1 / (1 + math.exp(-each)) >= ACT for each in odds) <= 0.02 * len(others)


def test_what_was_drawn_by_the_weights_is_as_reliable_as_they_say():
    rows = reliability(_drawn(20_000, (0.0, 1.5, 0.5)), (0.0, 1.5, 0.5))

    assert sum(row["n"] for row in rows) == 20_000
    assert all(abs(row["confidence"] - row["right"]) < 0.05 for row in rows)


def test_no_examples_have_no_reliability():
    assert reliability([], (0.0, 1.0)) == []


def test_the_command_line_says_what_a_set_lacks(tmp_path, capsys):
    arguments = ("--set", str(_made_set(tmp_path)), "--phrases", str(_written(tmp_path)))
    code = main(arguments)
    told = capsys.readouterr()

    assert (code == 0 and json.loads(told.out)["fitted_on"] >= 2) or (code == 2 and told.err.count("\n") == 1)


def test_what_cannot_be_read_is_one_sentence_and_exit_code_2(tmp_path, capsys):
    assert main(("--set", str(tmp_path / "nowhere.csv"), "--phrases", str(_written(tmp_path)))) == 2
    assert capsys.readouterr().err.count("\n") == 1
