"""The proof: the whole pair knitted loop by loop from the operations alone, and everything stated checked."""

from collections.abc import Callable, Iterator

from plans.conversation import Problem
from plans.pattern import Plan
from plans.proof.acts import check_acts
from plans.proof.charting import check_charts
from plans.proof.dividing import check_dividing
from plans.proof.findings import Case, Finding, Told, case_of
from plans.proof.heels import check_heels
from plans.proof.labels import check_labels
from plans.proof.pairs import check_pair
from plans.proof.shape import check_shape
from plans.proof.sizes import check_sizes
from plans.proof.story import Story
from plans.proof.writing import check_written

__all__ = ["prove"]

_CHECKS: tuple[Callable[[Case], Iterator[Finding]], ...] = (
    check_labels,
    check_heels,
    check_shape,
    check_charts,
    check_acts,
    check_dividing,
    check_pair,
    check_sizes,
)


def prove(plan: Plan) -> tuple[Problem, ...]:
    """Everything that is wrong with a plan, in the order of its rows; empty when it is proven.

    Loops are followed up to the first row that cannot be knitted; labels, acts and sizes are checked to the
    end.
    """
    story = Story(plan)
    story.tell()
    knitted = tuple(story.knitted)
    found = check_written(Told(plan, knitted)) if plan.written is not None else _checked(case_of(plan, knitted))
    findings = [*story.findings, *found]
    last = len(plan.rows)
    findings.sort(key=lambda finding: last if finding.row is None else finding.row)
    return tuple(finding.problem() for finding in findings)


def _checked(case: Case) -> Iterator[Finding]:
    return (finding for check in _CHECKS for finding in check(case))
