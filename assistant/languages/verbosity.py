"""How much is said."""

from enum import StrEnum


class Verbosity(StrEnum):
    """A sentence without a form of its own for a verbosity says the plain one."""

    TERSE = "terse"
    PLAIN = "plain"
    LEARNER = "learner"
