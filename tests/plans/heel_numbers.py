"""What each heel needs, by plain counting: the numbers of a half, apart from how the program comes to them."""

from plans.pattern import Heel, Toe
from tests.strategies import DOWN_HEELS, FLAP_HEELS, UP_HEELS

MADE_LAST = {Heel("forethought"), Heel("forethought-round"), Heel("afterthought")}
DOUBLES = {Heel("short-row-german"), Heel("mini-gusset")}
"""Short rows with double stitches: an edge stitch a side and two in the middle are never marked."""
DOWN_ONLY = set(DOWN_HEELS) - set(UP_HEELS)
"""From the cuff alone, turned by decreases: usually five stitches between the first two and one beside each."""
SQUARE = Heel("dutch")
"""Of these the one that is turned on the even number of stitches nearest to a third, which stays as it is."""


SHORT_ROW_TOES = {Toe("short-row-wrapped"), Toe("short-row-german"), Toe("short-row-shadow")}


def fewest_around(heel, toe):
    """Four a half; where an edge stitch, a double stitch and one of the middle are needed a side, six."""
    if heel in DOWN_ONLY:
        return 8 if heel is SQUARE else 20
    return 12 if heel in DOUBLES or toe is Toe("short-row-german") else 8


def short_rows(toe, half):
    """Rounds of the foot's length that a toe of short rows makes, as the heel of that name does."""
    return depth(Heel(toe.value), half, half)


def gusset(heel, half, wished=None):
    """Half of a half a side, where a flap eats it; else none, or the few of a mini gusset."""
    if heel in DOWN_ONLY:
        return (half - 2 * turned(heel, half, 0)) // 2 + 1 if wished is None else wished
    if heel in FLAP_HEELS:
        return half // 2 if wished is None else wished
    return min(4, max(2, half // 10)) if heel is Heel("mini-gusset") else 0


def turned(heel, half, tip):
    """Thirds; of what is narrowed at both edges, half of what goes."""
    if heel is SQUARE:
        return (half - min(range(2, half, 2), key=lambda middle: abs(3 * middle - half))) // 2
    if heel in DOWN_ONLY:
        return 1 + len(range(0, half // 2 - 5, 2))
    if heel in MADE_LAST:
        return len(range(tip, half, 2))
    thirds = max(1, half // 3)
    return min(thirds, half // 2 - 2) if heel in DOUBLES else thirds


def depth(heel, half, tip):
    """Rounds of the foot's length besides those of the gusset."""
    marks = turned(heel, half, tip)
    if heel is SQUARE:
        return 2 * marks + 1
    if heel in FLAP_HEELS or heel in DOWN_ONLY:
        return marks + (heel in DOWN_ONLY)
    if heel not in MADE_LAST:
        return 2 * marks + 2 * (heel in DOUBLES)
    plain = sum(1 for decrease in range(marks) if heel is not Heel("forethought-round") or decrease < marks / 2)
    return 1 + marks + plain
