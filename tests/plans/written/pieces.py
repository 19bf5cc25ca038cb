"""Invented pieces, written by hand in the usual abbreviations; no pattern of anyone's."""

from functools import cache

from plans.making import Made
from plans.opening import made_of
from plans.pattern import Plan

HAT = '''\
name = "invented hat"
sizes = ["small", "medium", "large"]
size = "medium"
multiple = 8

pattern = """
CO 88 (96, 104). Place marker, join in the round.

Brim
Rnds 1-10: *k2, p2; rep from * to end.

Body
Rnds 1-20: knit.

Crown
Rnd 1: *k6, k2tog; rep from * to end. (77 (84, 91) sts)
Rnd 2: knit.
Rnd 3: *k5, k2tog; rep from * to end.
Rnd 4: knit.
Rnd 5: *k4, k2tog; rep from * to end.
Rnd 6: k.
Rnd 7: *k3, k2tog; rep from * to end.
Rnd 8: *k2, k2tog; rep from * to end.
Rnd 9: *k1, k2tog; rep from * to end.
Rnd 10: *k2tog; rep from * to end.
Cut yarn.
Draw tail through remaining sts. Weave in ends.
"""

[swatch]
stitches = 20
rounds = 28
'''

CAP = '''\
name = "doll's cap"
multiple = 8
pattern = """
CO 16 sts. Join in the round.
Brim
Rnds 1-2: *k1, p1; rep from * to end.
Body
Rnd 1: [k2, m1l, k2] 4 times. (20 sts)
Rnd 2: k1 tbl, sl1 wyif, k to last 3 sts, yo, ssk, p1.
Crown
Rnd 1: k2tog 10 times.
Cut. Gather. Weave in.
"""
[swatch]
stitches = 20
rounds = 28
'''
"""Small, so that it can be damaged at every place."""

MITTENS = '''\
name = "invented mittens"
pieces = ["left mitten", "right mitten"]
multiple = 4
pattern = """
CO 24. Join in the round.
Cuff
Rnds 1-4: *k2, p2; rep from * to end.
Hand
Rnd 1: k11, pm, k2, pm, k to end.
Rnd 2: k to m, sm, m1r, k to m, m1l, sm, k to end. (26 sts)
Rnd 3: k.
Rep rnds 2 and 3 twice more. (30 sts)
Next rnd: k to m, rm, ssk, k to 2 sts before m, k2tog, rm, k to end. (28 sts)
Rnds 9-10: k.
Top
Rnd 1: Each half: k1, ssk, k to last 3 sts, k2tog, k1.
Rnd 2: knit.
Rep rnds 1-2 once more.
Rnd 5: Front: k1, ssk, k to last 3 sts, k2tog, k1. Back: k1, ssk, k to last 3 sts, k2tog, k1.
BO all sts.
Cut yarn. Weave in ends.
"""
[swatch]
stitches = 22
rounds = 30
'''

COWL = """\
name = "invented cowl"
multiple = 4
pattern = '''
CO 24. Join in the round.
Body
Rnds 1-2: k.
Rnds 3-8: chart peak to end.
Rnds 9-12: k2, [chart lace] 5 times, k2.
BO all.
'''
[yarns]
main = "cream"
contrast = "blue"
[charts]
peak = '''
MMMC
MMCC
MCCC
'''
lace = '''
||||
/O|-
'''
[swatch]
stitches = 20
rounds = 28
"""

SOCK = """
foot_length = "24.5cm"
ball = "23cm"
[swatch]
stitches = 30
rounds = 42
"""

PIECES = {"hat": HAT, "cap": CAP, "mittens": MITTENS, "cowl": COWL}


@cache
def made(text: str) -> Plan:
    """The proven plan of a file."""
    found = made_of(text)
    assert isinstance(found, Made), found
    return found.plan


def refused(text: str) -> list[tuple[str, str, dict[str, object]]]:
    """Key, place and values of all that is wrong with a file."""
    found = made_of(text)
    assert isinstance(found, tuple), "nothing is wrong with it"
    return [(problem.key, problem.where, dict(problem.values)) for problem in found]


def charted_sock(on: str, parts: str, *rows: str, more: str = "") -> str:
    """An invented sock with a chart, its rows as drawn."""
    drawn = "\n".join(rows)
    return f"{SOCK}\n[chart]\non = '{on}'\nparts = {parts}\nrows = '''\n{drawn}\n'''\n{more}"
