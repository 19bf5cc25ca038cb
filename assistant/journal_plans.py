"""Plans in the journal: their canonical JSON under its own SHA-256."""

from assistant.journal import Journal
from assistant.journal_errors import JournalDamaged
from plans.conversation import PlanId
from plans.json_form import canonical, from_json, text_id
from plans.pattern import Plan


def keep(journal: Journal, plan: Plan) -> PlanId:
    """Keep a plan before the first event that stands in it; returns its hash.

    Raises:
        JournalError: it could not be written.
    """
    text = canonical(plan)
    name = text_id(text)
    journal.keep_plan(name, text)
    return name


def kept(journal: Journal) -> dict[PlanId, Plan]:
    """Every plan in the journal by its hash.

    Raises:
        JournalDamaged: a text is not what its hash says.
    """
    return {name: _read(journal, name, text) for name, text in journal.plans().items()}


def kept_plan(journal: Journal, name: PlanId) -> Plan | None:
    """One plan; None where it was not kept.

    Raises:
        JournalDamaged: its text is not what its hash says.
    """
    text = journal.plan_text(name)
    return None if text is None else _read(journal, name, text)


def _read(journal: Journal, name: PlanId, text: str) -> Plan:
    try:
        if text_id(text) == name:
            return from_json(text)
    except ValueError:
        pass
    raise JournalDamaged(journal.file, readable=journal.last_seq)
