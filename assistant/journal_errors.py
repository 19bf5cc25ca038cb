"""What can go wrong with a journal: keys and values; the sentences are each language's own.

JournalError
├── JournalMissing      no file where one was to be read
├── JournalInUse        another program has it
├── JournalMoved        another program wrote in between; nothing was written
├── JournalNewer        written by a later version
├── JournalForeign      a file, but not a journal
├── JournalDamaged      a journal, but not whole
├── JournalUnwritable   the file or its folder may not be written
├── PairUnknown         no pair of that name
├── DiskFull            no room; nothing was written
└── DiskFailed          the disk reported an error; nothing was written
"""

from pathlib import Path
from typing import ClassVar

from plans.conversation import Problem

JOURNAL_ERRORS: dict[str, frozenset[str]] = {
    "journal-missing": frozenset({"file"}),
    "journal-in-use": frozenset({"file"}),
    "journal-moved": frozenset({"file", "expected", "found"}),
    "journal-newer": frozenset({"file", "version", "known"}),
    "journal-foreign": frozenset({"file"}),
    "journal-damaged": frozenset({"file", "readable"}),
    "journal-unwritable": frozenset({"file"}),
    "pair-unknown": frozenset({"file", "name"}),
    "disk-full": frozenset({"file"}),
    "disk-failed": frozenset({"file"}),
}
"""Every key an error of the journal carries, and the names of its values: `file` is a path, `name` a
pair's name, all others are numbers."""


class JournalError(Exception):
    """Base of all.

    Attributes:
        key: of the sentence that explains it.
        values: what stands in that sentence, by name.
    """

    key: ClassVar[str]

    def __init__(self, file: Path, **values: int | str) -> None:
        """Take the file and the other values that the key's sentence needs."""
        self.values: dict[str, int | str] = {"file": str(file), **values}
        super().__init__(f"{self.key}: {self.values}")

    @property
    def problem(self) -> Problem:
        """The same as something that can be said; `where` is the file."""
        return Problem.of(self.key, where=str(self.values["file"]), **self.values)


class JournalMissing(JournalError):
    """No file where one was to be read."""

    key = "journal-missing"


class JournalInUse(JournalError):
    """Another program has it open for writing."""

    key = "journal-in-use"


class JournalMoved(JournalError):
    """Someone else wrote in between: the last event is not the expected one. Nothing was written."""

    key = "journal-moved"


class JournalNewer(JournalError):
    """Written by a later version of this program."""

    key = "journal-newer"


class JournalForeign(JournalError):
    """A file of another kind; it was not touched."""

    key = "journal-foreign"


class JournalDamaged(JournalError):
    """A journal that is not whole; `readable` events can still be read (see assistant.journal_rescue)."""

    key = "journal-damaged"


class JournalUnwritable(JournalError):
    """The file or its folder may not be written."""

    key = "journal-unwritable"


class PairUnknown(JournalError):
    """No pair of that name in this journal."""

    key = "pair-unknown"


class DiskFull(JournalError):
    """No room on the disk. Nothing was written; the same append may be tried again."""

    key = "disk-full"


class DiskFailed(JournalError):
    """The disk reported an error. Nothing was written."""

    key = "disk-failed"
