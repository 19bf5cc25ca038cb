"""Heels from the cuff down: a flap, turned by decreases, and the gusset picked up along its edges."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from plans.pattern import Facing, Half, StageName
from plans.rows.openings import NARROWED_LOOK
from plans.rows.parts import DOWN, At, HeelPart, Numbers, PickedUp
from plans.rows.rounds import Ops, Pass, Round, even_round, groups, narrowed, plain
from plans.stitches import Op


@dataclass(frozen=True, slots=True)
class Turning:
    """How such a heel is turned: row by row to and fro at its middle, each row taking one stitch.

    Attributes:
        rows: how many, an even number, on a half of h stitches.
        row: the stitches of a row, by h and the row's number, from 1.
        waits: the same, stitches that wait beyond its end.
        look: the same, how it looks.
        depth: of w pairs of rows, the rounds of the foot's length that they make.
        fewest: the fewest stitches of a half it can be knitted on.
    """

    rows: Callable[[int], int]
    row: Callable[[int, int], Ops]
    waits: Callable[[int, int], int]
    look: Callable[[int, int], str]
    depth: Callable[[int], int]
    fewest: int

    def left(self, half: int) -> int:
        """Stitches when it is turned."""
        return half - self.rows(half)


def flap_first(turning: Turning) -> HeelPart:
    """A flap of slipped stitches, the turn, and the gusset: on either side half of what is left, and one more.

    The flap has as many rows as stitches, its slipped edges half as many; one more is picked up at each corner
    (common practice). The round that picks up lies under the foot too.
    """
    return HeelPart(
        stages=(StageName.HEEL_FLAP, StageName.HEEL_TURN),
        gusset=lambda half: turning.left(half) // 2 + 1,
        turned=lambda half, _: turning.rows(half) // 2,
        depth=lambda numbers: turning.depth(numbers.turned) + 1,
        rounds=lambda numbers: iter((_round(turning, numbers),)),
        look=lambda at: _look(turning, at),
        waits=lambda stage, numbers: _waits(turning, stage, numbers),
        fewest=turning.fewest,
        directions=frozenset({DOWN}),
        picked_up=PickedUp(_gusset, _gusset_look),
    )


def picked_up(numbers: Numbers) -> int:
    """Stitches picked up along each edge of the flap: those of the gusset, and those that the turn took."""
    return numbers.gusset + numbers.turned


def flap_rows(numbers: Numbers) -> int:
    """Two for each slipped edge stitch, and one is picked up in the corner."""
    return 2 * (picked_up(numbers) - 1)


def _round(turning: Turning, numbers: Numbers) -> Round:
    """The front plain, then on the back flap and turn, and a row across that picks up along the flap's left edge."""
    front = Pass(StageName.HEEL_FLAP, 1, plain(numbers.half), numbers.half)
    return Round(front, (*_flap(numbers), *_turn(turning, numbers)))


def _flap(numbers: Numbers) -> Iterator[Pass]:
    half = numbers.half
    rows = (groups(*((Op.SL_WYIB, 1), (Op.K, 1)) * (half // 2)), groups((Op.SL_WYIF, 1), (Op.P, half - 1)))
    for number in range(1, flap_rows(numbers) + 1):
        facing = Facing.RS if number % 2 else Facing.WS
        yield Pass(StageName.HEEL_FLAP, number, rows[1 - number % 2], half, facing, turns=True)


def _turn(turning: Turning, numbers: Numbers) -> Iterator[Pass]:
    half, rows = numbers.half, turning.rows(numbers.half)
    for number in range(1, rows + 1):
        facing = Facing.RS if number % 2 else Facing.WS
        yield Pass(StageName.HEEL_TURN, number, turning.row(half, number), half - number, facing, turns=True)
    left, along = half - rows, picked_up(numbers)
    yield Pass(StageName.HEEL_TURN, rows + 1, (*plain(left), *groups((Op.PICK_UP_K, along))), left + along)


def _waits(turning: Turning, stage: StageName, numbers: Numbers) -> tuple[int, ...]:
    if stage is StageName.HEEL_FLAP:
        return (0,) * flap_rows(numbers)
    rows = turning.rows(numbers.half)
    return (*(turning.waits(numbers.half, number) for number in range(1, rows + 1)), 0)


def _look(turning: Turning, at: At) -> str | None:
    if at.stage not in (StageName.HEEL_FLAP, StageName.HEEL_TURN):
        return None
    if at.half is Half.FRONT:
        return r"k \d+"
    if at.stage is StageName.HEEL_FLAP:
        return r"sl_wyif 1, p \d+" if at.facing is Facing.WS else r"(sl_wyib 1, k 1, )*sl_wyib 1, k 1"
    if at.number > turning.rows(at.numbers.half):
        return r"k \d+, pick_up_k \d+"
    return turning.look(at.numbers.half, at.number)


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
