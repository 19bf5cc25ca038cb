"""Every key that anything here can say: what each language must have a sentence for."""

from assistant.devices import DEVICE_ERRORS
from assistant.journal_errors import JOURNAL_ERRORS
from assistant.languages.session_sayings import SESSION_SAYINGS
from models.errors import ERRORS
from plans.proof_sayings import PROOF_SAYINGS
from plans.sayings import SAYINGS
from plans.sizing_sayings import SIZING_SAYINGS

_SETS = (SAYINGS, SIZING_SAYINGS, PROOF_SAYINGS, SESSION_SAYINGS, DEVICE_ERRORS, ERRORS, JOURNAL_ERRORS)


def every_saying() -> dict[str, frozenset[str]]:
    """Key → names of its values.

    Raises:
        ValueError: two parts of the program use one key for different things.
    """
    together: dict[str, frozenset[str]] = {}
    for sayings in _SETS:
        for key, names in sayings.items():
            if together.setdefault(key, names) != names:
                raise ValueError(f"“{key}” is said with {sorted(names)} and with {sorted(together[key])}")
    return together
