"""What ends a command: bad input (exit code 2) or surroundings that failed (exit code 1), each as sayable problems.

Refused        the input is wrong: options, plan file, measurements, a sound file
Surroundings   a device, disk, model or journal failed
"""

from collections.abc import Iterable, Mapping

from assistant.exit_codes import BAD_INPUT, SURROUNDINGS_FAILED
from plans.conversation import Problem, Value

_BAD_INPUT_KEYS = frozenset({
    "wav-missing", "wav-unreadable", "wav-empty", "wav-unsupported", "rate-unusable", "model-unknown",
    "language-unknown", "journal-missing", "journal-foreign", "pair-unknown", "wav-in-the-way",
    "second-opinion-missing", "no-such-microphone", "no-such-speaker", "no-such-voice", "several-microphones",
    "several-speakers", "several-voices",
})  # fmt: skip


class Refused(Exception):
    """Bad input: one or more problems, each one sentence."""

    exit_code = BAD_INPUT

    def __init__(self, *problems: Problem) -> None:
        super().__init__(", ".join(problem.key for problem in problems))
        self.problems = problems


class Surroundings(Refused):
    """Something outside failed; nothing the user typed was wrong."""

    exit_code = SURROUNDINGS_FAILED


def refuse(key: str, where: str = "", **values: Value) -> Refused:
    """Short form for one problem."""
    return Refused(Problem.of(key, where, **values))


def as_refusal(error: BaseException) -> Refused | None:
    """An adapter's error, which carries `key` and `values`, as a refusal; None for any other error."""
    if isinstance(error, Refused):
        return error
    key = getattr(error, "key", None)
    values = getattr(error, "values", None)
    if not isinstance(key, str):
        return None
    kind = Refused if key in _BAD_INPUT_KEYS else Surroundings
    return kind(Problem(key=key, values=tuple(_pairs(values))))


def explained(error: Exception) -> Refused:
    """Any error: what an adapter says, what the system refused, or that it should not have happened."""
    refusal = as_refusal(error)
    if refusal is not None:
        return refusal
    if isinstance(error, OSError):
        where = f", {error.filename}" if error.filename else ""
        return Surroundings(Problem.of("system-refused", reason=f"{error.strerror or error}{where}"))
    return Surroundings(Problem.of("unexpected", reason=f"{type(error).__name__}: {error}"))


def as_problem(error: BaseException) -> Problem | None:
    """What an adapter's error says; None for any other error."""
    refusal = as_refusal(error)
    return refusal.problems[0] if refusal else None


def _pairs(values: object) -> Iterable[tuple[str, Value]]:
    items = values.items() if isinstance(values, Mapping) else values or ()
    for name, value in items:  # type: ignore[attr-defined]
        yield str(name), value if isinstance(value, int) else str(value)
