"""A count made with the fingers."""

import pytest

from plans.conversation import Counted, IHave, Next
from plans.pattern import Half, StageName
from tests.plans.knitter import Knitter, shown
from tests.strategies import practice


def knitter_in(stage: StageName, number: int = 1) -> Knitter:
    return Knitter(practice()).knits_to(stage, number)


@pytest.mark.parametrize("stitches", [6, 8])
def test_right_before_or_right_after_both_count(stitches: int):
    knitter = knitter_in(StageName.TOE, 4)

    assert shown(knitter.say(IHave(stitches=stitches))) == (
        f"count-right(stitches {stitches}; where where-half(half half-front; sock sock-first))"
    )
    assert knitter.events[-1] == Counted(
        sock=1, half=Half.FRONT, stitches=stitches, expected=(6, 8), right=True
    )


def test_a_wrong_count_tells_the_difference_and_changes_nothing():
    knitter = knitter_in(StageName.TOE, 4)
    before = knitter.progress
    said = knitter.say(IHave(stitches=7, half=Half.BACK, sock=2))

    where = "where where-half(half half-back; sock sock-second)"
    assert shown(said).startswith(f"count-too-many(stitches 7; {where}; expected 6; difference 1; causes ")
    assert before == knitter.progress
    assert knitter.events[-1] == Counted(sock=2, half=Half.BACK, stitches=7, expected=(6,), right=False)


CAUSES = [
    # the usual mistakes by stage (common practice): stitches said, how many off, what is likely
    (StageName.CAST_ON, 1, Half.FRONT, 3, -1, ["cause-first-loop-lost", "cause-cast-on-miscounted"]),
    (StageName.CAST_ON, 1, Half.FRONT, 5, 1, ["cause-cast-on-miscounted"]),
    (StageName.TOE, 5, Half.BACK, 7, -1, ["cause-increase-missed", "cause-dropped-stitch"]),
    (StageName.TOE, 5, Half.BACK, 9, 1, ["cause-increase-round-twice", "cause-yarn-over-or-split"]),
    (StageName.FOOT, 2, Half.BACK, 11, -1, ["cause-dropped-stitch"]),
    (StageName.FOOT, 2, Half.BACK, 14, 2, ["cause-yarn-over-or-split"]),
    (StageName.GUSSET, 6, Half.BACK, 17, -1, ["cause-increase-missed", "cause-dropped-stitch"]),
    (StageName.GUSSET, 6, Half.BACK, 19, 1, ["cause-increase-round-twice", "cause-yarn-over-or-split"]),
    (StageName.GUSSET, 6, Half.FRONT, 14, 2, ["cause-increased-on-front", "cause-yarn-over-or-split"]),
    (StageName.GUSSET, 6, Half.FRONT, 11, -1, ["cause-dropped-stitch"]),
    (StageName.HEEL_TURN, 4, Half.BACK, 25, 1, ["cause-yarn-over-or-split"]),
    (StageName.HEEL_FLAP, 6, Half.BACK, 20, 1, ["cause-join-forgotten", "cause-yarn-over-or-split"]),
    (StageName.HEEL_FLAP, 6, Half.BACK, 16, -2, ["cause-two-eaten", "cause-dropped-stitch"]),
    (StageName.LEG, 2, Half.FRONT, 13, 1, ["cause-corner-not-joined", "cause-yarn-over-or-split"]),
    (StageName.CUFF, 2, Half.FRONT, 11, -1, ["cause-dropped-stitch"]),
    (StageName.BIND_OFF, 1, Half.FRONT, 10, -2, ["cause-bound-off-early", "cause-dropped-stitch"]),
]


@pytest.mark.parametrize("case", CAUSES)
def test_likely_causes_go_with_the_stage(case: tuple[StageName, int, Half, int, int, list[str]]):
    stage, number, half, stitches, off, expected = case
    said = knitter_in(stage, number).say(IHave(stitches=stitches, half=half))
    values = dict(said.values)

    assert (said.key, values["difference"]) == ("count-too-many" if off > 0 else "count-too-few", abs(off))
    assert expected == [part.key for part in values["causes"]]


def test_a_count_of_one_row_further_on_is_told_first():
    said = knitter_in(StageName.HEEL_FLAP, 6).say(IHave(stitches=17))

    assert "cause-worked-too-far" in shown(said)
    assert "cause-two-eaten" in shown(said)


def test_the_count_of_the_following_step_is_told_to_be_that():
    knitter = Knitter(practice(), "group").knits_to(StageName.TOE, 4)
    knitter.say(Next())
    said = knitter.say(IHave(stitches=8))

    assert shown(dict(said.values)["causes"]).startswith("cause-increase")
    knitter.say(Next())
    assert shown(dict(knitter.say(IHave(stitches=8)).values)["causes"]).startswith("cause-worked-too-far")


def test_a_count_of_none_at_the_end_is_right():
    knitter = Knitter(practice(), "round")
    while not knitter.finished:
        knitter.say(Next())

    assert knitter.say(IHave(stitches=0)).key == "count-right"
    assert knitter.say(IHave(stitches=1)).key == "count-too-many"
