"""What a whole row comes to, in a word: told where a round is called by more than its stitches."""

import pytest

from plans.conversation import Next
from plans.engine.working import kind_of
from plans.pattern import Half, StageName
from tests.plans.knitter import Knitter
from tests.plans.written.pieces import made
from tests.strategies import practice, varied

RIBS = """
name = "invented wristlet"
pattern = '''
CO 16. Join in the round.
Cuff
Rnds 1-4: *k1, p1; rep from * to end.
Hand
Rnd 1: *k3, p1; rep from * to end.
Rnd 2: *k1, p3; rep from * to end.
Rnd 3: *k3, p1; rep from * to end.
Rnd 4: *k1, p3; rep from * to end.
Rnd 5: *k1, p3; rep from * to end.
BO all.
'''
[swatch]
stitches = 20
rounds = 28
"""


@pytest.mark.parametrize(
    ("choice", "place", "kind"),
    [
        (("toe", "wedge"), (StageName.CAST_ON, 1, Half.FRONT), "work-cast-on"),
        (("toe", "wedge"), (StageName.FOOT, 1, Half.FRONT), "work-plain"),
        (("increase", "make-one"), (StageName.GUSSET, 1, Half.BACK), "work-increase"),
        (("increase", "make-one-left-first"), (StageName.GUSSET, 1, Half.BACK), "work-increase-left-first"),
        (("increase", "lifted"), (StageName.GUSSET, 1, Half.BACK), "work-increase-lifted"),
        (("increase", "kfb"), (StageName.GUSSET, 1, Half.BACK), "work-increase-kfb"),
        (("heel", "french"), (StageName.GUSSET, 1, Half.BACK), "work-pick-up"),
        (("heel", "french"), (StageName.GUSSET, 2, Half.BACK), "work-narrow"),
        (("heel", "wrapped"), (StageName.HEEL_FLAP, 1, Half.BACK), "work-decrease"),
        (("heel", "forethought"), (StageName.HEEL, 1, Half.FRONT), "work-open-heel"),
        (("heel", "german"), (StageName.HEEL_TURN, 2, Half.BACK), "work-mixed"),
        (("leg_style", "ribbed"), (StageName.LEG, 4, Half.FRONT), "work-rib"),
        (("cuff_style", "rib-2x2"), (StageName.CUFF, 2, Half.BACK), "work-rib"),
        (("bind_off", "decrease"), (StageName.BIND_OFF, 1, Half.FRONT), "work-bind-off"),
    ],
)
def test_a_row_is_summed_up_by_what_it_does(choice, place, kind):
    row = next(row for row in varied(*choice).rows if (row.stage, row.round, row.half) == place)

    assert kind == kind_of(row)


@pytest.mark.parametrize(("alone", "key"), [(False, "call-round"), (True, "call-round-one")])
def test_a_plain_round_is_told_by_its_number_of_one_sock_or_of_both(alone, key):
    plan = varied("heel", "wrapped", alone=alone) if alone else practice()
    knitter = Knitter(plan, "round").knits_to(StageName.FOOT, 3)

    assert (key, (("round", 3), ("of", 4))) == (knitter.call.key, knitter.call.values)


def test_of_a_written_piece_a_round_is_told_by_its_number_only_where_it_is_as_the_one_before():
    knitter = Knitter(made(RIBS), "round")
    told = []
    while not knitter.finished:
        told.append(dict(knitter.call.values)["round"] if knitter.call.key == "call-round-same" else 0)
        knitter.say(Next())

    assert [0, 0, 0, 2, 3, 4, 0, 0, 0, 0, 5, 0] == told[:12]
