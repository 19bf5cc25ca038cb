"""Every key that anything here can say: what each language must have a sentence for."""

from assistant.device_errors import DEVICE_ERRORS
from assistant.equipment import EQUIPMENT_PROBLEMS
from assistant.journal_checking import CHECK_PROBLEMS
from assistant.journal_errors import JOURNAL_ERRORS
from assistant.languages.session_sayings import SESSION_SAYINGS
from assistant.pace import PACE_SAYINGS
from assistant.second_look import SECOND_LOOK_PROBLEMS
from assistant.settings import SETTINGS_PROBLEMS
from assistant.teaching import TEACHING_SAYINGS
from assistant.usage import USAGE_PROBLEMS
from models.errors import ERRORS
from plans.sayings import SAYINGS

_SETS = (
    SAYINGS, SESSION_SAYINGS, PACE_SAYINGS, SETTINGS_PROBLEMS, EQUIPMENT_PROBLEMS, USAGE_PROBLEMS, DEVICE_ERRORS,
    ERRORS, TEACHING_SAYINGS, SECOND_LOOK_PROBLEMS,
    JOURNAL_ERRORS, CHECK_PROBLEMS,
)  # fmt: skip


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
