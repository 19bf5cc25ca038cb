"""The ribbed flap: its columns run on from row to row, right side and wrong side."""

from plans.pattern import Facing, Half, Heel, StageName
from tests.strategies import adult, practice

RIBBED = Heel("ribbed-flap")


def flap(plan):
    """Rows of the first sock's flap, one operation a stitch, without the first pair and the row across."""
    rows = [row for row in plan.rows if row.stage is StageName.HEEL_FLAP and row.sock == 1 and row.half is Half.BACK]
    return [(row.facing, [group.op for group in row.ops for _ in range(group.times)]) for row in rows[2:-1]]


def test_every_column_of_the_rib_stays_knit_or_purl_as_seen_from_the_right_side():
    seen = {"k": "knit", "p": "purl"}
    turned = {"k": "purl", "p": "knit"}
    columns = []
    for facing, ops in flap(adult(RIBBED)):
        middle = ops[1:-1] if facing is Facing.RS else ops[-2:0:-1]
        columns.append([(seen if facing is Facing.RS else turned)[op] for op in middle])

    assert len(columns) == 30
    assert len(columns[0]) == 30
    assert all(column == columns[0] for column in columns)
    assert columns[0] == ["purl", "knit"] * 15


def test_its_rows_join_the_gusset_as_those_of_every_flap_do():
    ends = {facing: {ops[-1] for at, ops in flap(practice(RIBBED)) if at is facing} for facing in Facing}

    assert ends == {Facing.RS: {"ssk"}, Facing.WS: {"p2tog"}}
