"""What a plan file tells the person who opens it."""

from collections.abc import Iterable
from textwrap import fill

from plans.files.fields import DIRECTIONS, PAIR_NEEDLES
from plans.pattern import BindOff, Cuff, Heel, Increase, Leg, Sole, Toe
from plans.wishes import Height


def _named(what: str, kinds: Iterable[str]) -> str:
    """The names there are, as they are written in the file, in lines of a page's width."""
    *names, last = (f'"{kind}"' for kind in kinds)
    listed = f"{', '.join(names)} or {last}" if names else last
    return fill(f"{what}: {listed}.", _WIDTH, break_on_hyphens=False)


_WIDTH = 96


COMMENTS = {
    "": "Wishes for a pair of socks. Change what you like: every round is computed and proven anew.\n"
    'A length carries its unit: "24.5cm", "245mm" or "9 1/2 in".\n'
    "Take the # away from the start of a line to wish for it; what is not wished for is estimated.",
    "schema_version": "The form of this file; leave it as it is.",
    "name": "What the pair is called.",
    "socks": "What each sock is called; the names must differ.",
    "swatch": "Stitches and rounds counted over this width and height of your washed swatch.\n"
    'Where it was knitted back and forth, or not washed: add worked = "flat", washed = false.',
    "counts": "More counts, here or on other swatches: their mean is taken, and their spread is told.",
    "foot_length": "Heel to longest toe, standing.",
    "shoe": 'A shoe size, used where no foot length is given: "EU 39", "UK 6", "US women 8".',
    "ball": "Around the ball of the foot, where it is widest.",
    "ankle": "Around the narrowest place above the ankle bones.",
    "heel_diagonal": "From the front of the ankle round the back of the heel.",
    "calf": "Around the calf, where it is widest.",
    "leg": "From the top of the heel to the top edge, cuff included.",
    "leg_height": _named("The same by name, where no length is given", Height),
    "cuff": "Depth of the ribbing at the top.",
    "ease_percent": "How much smaller than the foot the sock is around, in per cent.",
    "around": "Stitches around one sock, a multiple of 4, where you want a number of your own.",
    "cast_on": "Loops cast on for one sock, on both needle tips together, a multiple of 4.",
    "gusset": "Stitches added on each side of the sole; more of them for a high instep.",
    "foot_rounds": "Plain rounds of the foot, between toe and gusset, where you want a number of your own.",
    "leg_rounds": "Rounds of the leg below its cuff, where you want a number of your own.",
    "cuff_rounds": "Rounds of ribbing, where you want a number of your own.",
    "calf_shape": "Where the increases of a calf-shaped leg stand, where you want numbers of your own.",
    "needle": "How thick your needle is.",
    "skein": "What one ball weighs.",
    "skein_length": "How long the yarn of one ball is, as its band says.",
    "skeins": "How many balls you have of the main colour, for both socks together.",
    "direction": _named("Where it begins; heels and ends belong to one of these, or both", DIRECTIONS),
    "toe": _named("The toe", Toe),
    "increase": _named("How toe and gusset become wider", Increase),
    "sole": _named("The back of the foot", Sole),
    "heel": _named("The heel", Heel),
    "leg_style": _named("The leg below its cuff", Leg),
    "cuff_style": _named("The cuff", Cuff),
    "bind_off": _named("The end of the cuff, or of a toe from the cuff down", BindOff),
    "needles": _named("What it is knitted on", PAIR_NEEDLES),
    "one_at_a_time": "true to begin the second sock when the first is done.",
    "through_back_loop": "true where your cast-on leaves the loops on the second needle tip twisted.",
    "chart": "A chart for foot or leg, its bottom row last, each row read from the right: | knit, - purl,\n"
    "O yarn over, / knit two together, \\\\ slip slip knit; M and C main and contrasting colour.\n"
    'It lies on the "front" or "around", on the parts "foot" and "leg".',
    "practice": "true for a small pair of 24 stitches around, whatever the measurements.",
}
"""A comment for each field of `Wishes`, and for the head of the file."""

EXAMPLES = {
    "foot_length": '"24.5cm"',
    "shoe": '"EU 39"',
    "ball": '"23cm"',
    "ankle": '"21cm"',
    "heel_diagonal": '"32cm"',
    "calf": '"36cm"',
    "leg": '"15cm"',
    "leg_height": '"crew"',
    "cuff": '"4cm"',
    "ease_percent": "10",
    "around": "64",
    "cast_on": "24",
    "gusset": "16",
    "foot_rounds": "37",
    "leg_rounds": "46",
    "cuff_rounds": "17",
    "calf_shape": "{ pairs = 10, first_round = 50, every = 4 }",
    "needle": '"2.5mm"',
    "skein": '"50g"',
    "skein_length": '"210m"',
    "skeins": "2",
    "chart": '{ on = "front", parts = ["leg"], rows = ["-|-|", "|-|-"] }',
    "counts": '[{ stitches = 31 }, { rounds = 21, over = "5cm", worked = "flat", washed = false }]',
}
"""What stands, as a comment, where a wish is not made."""
