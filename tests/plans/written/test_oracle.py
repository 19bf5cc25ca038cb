"""The independent model of the fabric, from the JSON alone, agrees on pieces written by hand and on charted socks."""

import pytest

from plans.json_form import as_json, from_json, schema
from plans.pattern import StageName
from tests.plans.graph_oracle import Oracle
from tests.plans.written.pieces import PIECES, charted_sock, made

MORE = {
    "kfb": (1, 2), "pfb": (1, 2), "yo": (0, 1), "lifted_l": (0, 1), "lifted_r": (0, 1), "k3tog": (3, 1), "sssk": (3, 1),
    "s2kp2": (3, 1),
}  # fmt: skip
SOCKS = {
    "lace": charted_sock("front", '["foot", "leg"]', "||||||||", r"|O/|\O|-"),
    "colours": charted_sock("around", '["leg"]', "MMMC", "MMCC"),
}


class Whole(Oracle):
    """A piece whose round lies on the needle whole: where it ends, it begins."""

    def _place_finger(self, row, lies):
        if len(self.plan["socks"]) == 1 and self.plan["construction"]["needles"] == "one-circular":
            lies.finger = 0
        else:
            super()._place_finger(row, lies)


@pytest.mark.parametrize("text", [*PIECES.values(), *SOCKS.values()], ids=[*PIECES, *SOCKS])
def test_the_oracle_agrees_loop_for_loop(text):
    plan = made(text)
    oracle = Whole(as_json(plan))
    oracle.algebra |= MORE

    assert [row.stitches_after for row in plan.rows] == oracle.knit().counts
    assert oracle.is_one_way()
    gathered = {row.sock for row in plan.rows if row.stage is StageName.BIND_OFF and row.ops[0].op == "gather"}
    ends = sum(1 for row in plan.rows if row.stage is StageName.BIND_OFF for each in row.ops if each.op == "gather"
               for _ in range(each.times))  # fmt: skip
    assert not oracle.worked_not_once()
    assert sum(1 for _, ways in oracle.graph.out_degree() if not ways) == ends + len(oracle.fastened)
    assert len(oracle.fastened) == (0 if gathered else len(plan.socks))


@pytest.mark.parametrize("text", [*PIECES.values(), *SOCKS.values()], ids=[*PIECES, *SOCKS])
def test_the_json_form_fits_its_schema_and_comes_back(text):
    import json

    from jsonschema import Draft202012Validator

    form = as_json(made(text))

    Draft202012Validator(schema()).validate(form)
    assert from_json(json.dumps(form)).rows == made(text).rows
    assert {"toe", "heel", "bind_off", "direction", "needles"} <= form["construction"].keys()
    assert all(list(row)[:11] == list(form["rows"][0])[:11] for row in form["rows"])
