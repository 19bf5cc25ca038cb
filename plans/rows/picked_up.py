"""Heels from the cuff down: a flap, turned by decreases, and the gusset picked up along its edges."""

from collections.abc import Iterator

from plans.pattern import Facing, Half, StageName
from plans.rows.openings import NARROWED_LOOK
from plans.rows.parts import DOWN, At, HeelPart, Numbers, PickedUp
from plans.rows.rounds import Ops, Pass, Round, even_round, groups, narrowed, plain
from plans.stitches import Op

_PAST_THE_MIDDLE = 2
"""Knitted past the middle of the heel before the first decrease."""


def flap_first() -> HeelPart:
    """A flap of slipped stitches, the turn, and h/4 + 2 gusset stitches a side (for h of 32: ten).

    The flap has as many rows as stitches, its slipped edges half as many; one more is picked up at each corner
    (common practice). Turned: half of the stitches and two more, a decrease, one more, turn; five in the middle, a
    decrease, one more, turn; then always one more before the decrease, which closes the gap ("New Red Cross
    directions for socks", 1918, with one and four in place of two and five; Knitty, Winter 2007). Half of the turn's
    rows lie under the foot (derived), and the round that picks up.
    """
    return HeelPart(
        stages=(StageName.HEEL_FLAP, StageName.HEEL_TURN),
        gusset=lambda half: (_left_after_turn(half)) // 2 + 1,
        turned=lambda half, _: _turn_rows(half) // 2,
        depth=lambda numbers: numbers.turned + 1,
        rounds=lambda numbers: iter((_round(numbers),)),
        look=_look,
        waits=_waits,
        fewest=10,
        directions=frozenset({DOWN}),
        picked_up=PickedUp(_gusset, _gusset_look),
    )


def picked_up(numbers: Numbers) -> int:
    """Stitches picked up along each edge of the flap: those of the gusset, and those that the turn took."""
    return numbers.gusset + (numbers.half - _left_after_turn(numbers.half)) // 2


def flap_rows(numbers: Numbers) -> int:
    """Two for each slipped edge stitch, and one is picked up in the corner."""
    return 2 * (picked_up(numbers) - 1)


def _beside(half: int) -> int:
    """Stitches on either side that wait beyond the first two rows of the turn."""
    return half // 2 - _PAST_THE_MIDDLE - 3


def _turn_rows(half: int) -> int:
    return 2 + 2 * -(-_beside(half) // 2)


def _left_after_turn(half: int) -> int:
    """Each row of the turn takes one."""
    return half - _turn_rows(half)


def _round(numbers: Numbers) -> Round:
    """The front plain, then on the back flap and turn, and a row across that picks up along the flap's left edge."""
    front = Pass(StageName.HEEL_FLAP, 1, plain(numbers.half), numbers.half)
    return Round(front, (*_flap(numbers), *_turn(numbers)))


def _flap(numbers: Numbers) -> Iterator[Pass]:
    half = numbers.half
    rows = (groups(*((Op.SL_WYIB, 1), (Op.K, 1)) * (half // 2)), groups((Op.SL_WYIF, 1), (Op.P, half - 1)))
    for number in range(1, flap_rows(numbers) + 1):
        facing = Facing.RS if number % 2 else Facing.WS
        yield Pass(StageName.HEEL_FLAP, number, rows[1 - number % 2], half, facing, turns=True)


def _turn(numbers: Numbers) -> Iterator[Pass]:
    half, rows = numbers.half, _turn_rows(numbers.half)
    for number in range(1, rows + 1):
        facing = Facing.RS if number % 2 else Facing.WS
        yield Pass(StageName.HEEL_TURN, number, _turn_row(half, number), half - number, facing, turns=True)
    left, along = half - rows, picked_up(numbers)
    yield Pass(StageName.HEEL_TURN, rows + 1, (*plain(left), *groups((Op.PICK_UP_K, along))), left + along)


def _turn_row(half: int, number: int) -> Ops:
    knit, decrease = (Op.K, Op.SSK) if number % 2 else (Op.P, Op.P2TOG)
    ends = int(_waits_in_turn(half, number) > 0 or _beside(half) % 2 == 0 or number <= 2)
    if number == 1:
        return groups((knit, half // 2 + _PAST_THE_MIDDLE), (decrease, 1), (knit, 1))
    slip, lacks = (Op.SL_WYIB, 0) if number % 2 else (Op.SL_WYIF, 1 - ends)
    return groups((slip, 1), (knit, 2 * _PAST_THE_MIDDLE + number - 1 - lacks), (decrease, 1), (knit, ends))


def _waits_in_turn(half: int, number: int) -> int:
    return max(0, _beside(half) - 2 * ((number - 1) // 2))


def _waits(stage: StageName, numbers: Numbers) -> tuple[int, ...]:
    if stage is StageName.HEEL_FLAP:
        return (0,) * flap_rows(numbers)
    rows = _turn_rows(numbers.half)
    return (*(_waits_in_turn(numbers.half, number) for number in range(1, rows + 1)), 0)


def _look(at: At) -> str | None:
    if at.stage not in (StageName.HEEL_FLAP, StageName.HEEL_TURN):
        return None
    if at.half is Half.FRONT:
        return r"k \d+"
    wrong = at.facing is Facing.WS
    if at.stage is StageName.HEEL_FLAP:
        return r"sl_wyif 1, p \d+" if wrong else r"(sl_wyib 1, k 1, )*sl_wyib 1, k 1"
    if at.number > _turn_rows(at.numbers.half):
        return r"k \d+, pick_up_k \d+"
    if at.number == 1:
        return r"k \d+, ssk 1, k 1"
    return r"sl_wyif 1, p \d+, p2tog 1(, p 1)?" if wrong else r"sl_wyib 1, k \d+, ssk 1(, k 1)?"


def _gusset(numbers: Numbers) -> Iterator[Round]:
    """Picked up along the right edge too, then a decrease at each side of the sole in every second round."""
    half, gusset, along = numbers.half, numbers.gusset, picked_up(numbers)
    wide = half + 2 * gusset
    back = groups((Op.PICK_UP_K, along), (Op.K, wide - along))
    yield even_round(StageName.GUSSET, 1, plain(half), back, (half, wide))
    for number in range(2, 2 * gusset + 2):
        decreases = number % 2 == 0
        ops = narrowed(wide) if decreases else plain(wide)
        wide -= 2 * decreases
        yield even_round(StageName.GUSSET, number, plain(half), ops, (half, wide))


def _gusset_look(number: int) -> str:
    if number == 1:
        return r"pick_up_k \d+, k \d+"
    return r"k \d+" if number % 2 else NARROWED_LOOK
