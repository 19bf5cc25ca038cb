"""What can go wrong with a model, as keys and values: the sentences are each language's own.

ModelProblem
├── ModelUnknown            model-unknown            name, names
├── ModelMissing            model-missing            name, cure
├── ModelBroken             model-broken             name, what, cure
├── ChecksumWrong           checksum-wrong           name, expected, actual, cure
├── ChecksumUnknown         checksum-unknown         name, cure
├── FetchFailed
│   ├── Offline             models-offline           name, host
│   ├── ServerRefused       models-server-refused    name, url, status
│   ├── BrokenOff           fetch-broken-off         name, received, expected, cure
│   ├── SizeWrong           fetch-size-wrong         name, expected, actual
│   ├── ArchiveUnsafe       archive-unsafe           name, entry
│   ├── NoRoom              models-no-room           name, folder, needed_mb
│   └── FolderClosed        models-folder-closed     folder, reason
├── RecogniserUnavailable   recogniser-unavailable   recogniser, cure
├── SecondOpinionMissing    second-opinion-missing   what, cure
├── WordsUnknown            words-unknown            recogniser, words
└── RateUnusable            rate-unusable            rate_hz, lowest_hz, highest_hz

`cure` is a command to type, `what` a file's name; sizes are whole bytes where not named otherwise.
"""

from models.sayable import Sayable, sayings


class ModelProblem(Sayable):
    """The base of all that models raise on purpose."""


class ModelUnknown(ModelProblem):
    """No model of this name is in the catalogue, which has `names`."""

    key = "model-unknown"
    names = frozenset({"name", "names"})


class ModelMissing(ModelProblem):
    """The model is not on this machine."""

    key = "model-missing"
    names = frozenset({"name", "cure"})


class ModelBroken(ModelProblem):
    """A file of the model is not as it was recorded, or cannot be loaded."""

    key = "model-broken"
    names = frozenset({"name", "what", "cure"})


class ChecksumWrong(ModelProblem):
    """What came has another SHA-256 than what was recorded; it was removed."""

    key = "checksum-wrong"
    names = frozenset({"name", "expected", "actual", "cure"})


class ChecksumUnknown(ModelProblem):
    """No SHA-256 is recorded for the model, and nobody has accepted to trust what the server sends."""

    key = "checksum-unknown"
    names = frozenset({"name", "cure"})


class FetchFailed(ModelProblem):
    """The base of what stops a download."""


class Offline(FetchFailed):
    """The server cannot be reached."""

    key = "models-offline"
    names = frozenset({"name", "host"})


class ServerRefused(FetchFailed):
    """The server answered with a status other than success."""

    key = "models-server-refused"
    names = frozenset({"name", "url", "status"})


class BrokenOff(FetchFailed):
    """The connection ended early; what came is kept, and the next fetch goes on from there."""

    key = "fetch-broken-off"
    names = frozenset({"name", "received", "expected", "cure"})


class SizeWrong(FetchFailed):
    """More came, or less was offered, than the catalogue says."""

    key = "fetch-size-wrong"
    names = frozenset({"name", "expected", "actual"})


class ArchiveUnsafe(FetchFailed):
    """The archive would write outside its folder, is far too large, or is no archive."""

    key = "archive-unsafe"
    names = frozenset({"name", "entry"})


class NoRoom(FetchFailed):
    """The disk is full, or has less free than is needed."""

    key = "models-no-room"
    names = frozenset({"name", "folder", "needed_mb"})


class FolderClosed(FetchFailed):
    """The models' folder cannot be written."""

    key = "models-folder-closed"
    names = frozenset({"folder", "reason"})


class RecogniserUnavailable(ModelProblem):
    """The recogniser's library is not installed or does not load."""

    key = "recogniser-unavailable"
    names = frozenset({"recogniser", "cure"})


class SecondOpinionMissing(ModelProblem):
    """What a second opinion needs, a library or a model, is not on this machine."""

    key = "second-opinion-missing"
    names = frozenset({"what", "cure"})


class WordsUnknown(ModelProblem):
    """Words of the vocabulary stand in no dictionary of the recogniser, so it can never hear them."""

    key = "words-unknown"
    names = frozenset({"recogniser", "words"})


class RateUnusable(ModelProblem):
    """Sound of this sample rate cannot be turned into speech recognition's 16 kHz."""

    key = "rate-unusable"
    names = frozenset({"rate_hz", "lowest_hz", "highest_hz"})


ERRORS: dict[str, frozenset[str]] = sayings(ModelProblem)
"""Every key a language must have a sentence for, with the names of its values."""
