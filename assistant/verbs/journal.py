"""`roundcaller journal`: look at a journal, check it, hand it on."""

import json
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import NamedTuple

import click

from assistant.cue_sheet import Cue, Take, chapters, cues, takes, webvtt
from assistant.failing import Surroundings, refuse
from assistant.journal import Entry, Journal
from assistant.journal_checking import check as check_journal
from assistant.journal_errors import JournalDamaged
from assistant.journal_export import described, json_lines
from assistant.journal_plans import kept
from assistant.journal_rescue import readable
from assistant.journal_rescue import rescue as rescue_journal
from assistant.speaking.wording import word
from assistant.verbs.shared import language_option, load_language
from plans.conversation import PlanId, Reply
from plans.pattern import Plan

_file = click.argument("file", type=click.Path(path_type=Path))
_json = click.option("--json", "as_json", is_flag=True, help="As JSON lines, for other programs.")


@click.group()
def journal() -> None:
    """Look at a journal, check it, or hand it on."""


@journal.command()
@_file
@_json
def show(file: Path, as_json: bool) -> None:
    """Show what happened, in order: one event a line.

    Example: roundcaller journal show socks.sqlite
    """
    held = _held(file)
    for line in json_lines(held.entries, held.plans) if as_json else map(_line, described(held.entries, held.plans)):
        click.echo(line)
    held.complain()


def _line(event: dict[str, object]) -> str:
    place = f"{event['stage']} {event['round']}, sock {event['sock']} {event['half']}" if event["stage"] else ""
    parts = (f"{event['seq']}", str(event["kind"]), place, f"heard “{event['heard']}”" if event["heard"] else "",
             f"said “{event['said']}”" if event["said"] else "")  # fmt: skip
    return "; ".join(part for part in parts if part)


@journal.command()
@_file
@_json
@language_option
def check(file: Path, as_json: bool, language: str | None) -> None:
    """Check that a journal is whole: the file, the numbering, the plans, and that it comes to a place.

    Example: roundcaller journal check socks.sqlite
    """
    problems = check_journal(file)
    count = len(readable(file))
    if as_json:
        report = {"events": count, "problems": [{"key": found.key, "where": found.where} for found in problems]}
        click.echo(json.dumps(report))
    elif not problems:
        click.echo(word(Reply.of("journal-fine", path=str(file), events=count), load_language(language)))
    if problems:
        raise Surroundings(*problems)


@journal.command()
@_file
@click.option("--as", "form", type=click.Choice(["json", "vtt", "chapters"]), default="json", show_default=True,
              help="JSON lines; a WebVTT cue sheet; WebVTT chapters by stage.")  # fmt: skip
@click.option("--json", "as_json", is_flag=True, help="The same as --as json.")
@click.option("--take", type=click.IntRange(min=1), help="Which sitting the cues are of; the last where left out.")
def export(file: Path, form: str, as_json: bool, take: int | None) -> None:
    """Hand a journal on: as JSON lines, or as a time-coded cue sheet for the video of one sitting.

    Example: roundcaller journal export socks.sqlite --as vtt
    """
    held = _held(file)
    if as_json or form == "json":
        for line in json_lines(held.entries, held.plans):
            click.echo(line)
    else:
        click.echo(_sheet(held.entries, held.plans, take, cues if form == "vtt" else chapters), nl=False)
    held.complain()


def _sheet(
    entries: tuple[Entry, ...],
    plans: Mapping[PlanId, Plan],
    take: int | None,
    sheet: Callable[[Take, Mapping[PlanId, Plan]], tuple[Cue, ...]],
) -> str:
    sittings = takes(entries)
    if take is not None and take > len(sittings):
        raise refuse("no-such-take", take=take, takes=len(sittings))
    chosen = sittings[(take or len(sittings)) - 1] if sittings else Take(())
    return webvtt(sheet(chosen, plans))


class _Held(NamedTuple):
    """All entries and plans; of a damaged journal what can still be read, and what is wrong with it."""

    entries: tuple[Entry, ...]
    plans: dict[PlanId, Plan]
    damage: JournalDamaged | None = None

    def complain(self) -> None:
        """Where it is damaged, say so after all that could be read."""
        if self.damage is not None:
            raise self.damage


def _held(file: Path) -> _Held:
    try:
        with Journal.read(file) as opened:
            return _Held(opened.entries(), kept(opened))
    except JournalDamaged as damage:
        return _Held(readable(file), {}, damage)


@journal.command()
@_file
@click.argument("into", type=click.Path(path_type=Path))
@language_option
def rescue(file: Path, into: Path, language: str | None) -> None:
    """Write what can be read of a damaged journal into a new one; the damaged file is left as it is.

    Example: roundcaller journal rescue socks.sqlite rescued.sqlite
    """
    if into.exists():
        raise refuse("path-taken", file=str(into))
    saved = rescue_journal(file, into)
    click.echo(word(Reply.of("journal-salvaged", path=str(into), events=saved.events), load_language(language)))
