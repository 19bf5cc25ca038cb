"""`roundcaller show`: a plan for people, or for programs."""

import json
from collections.abc import Iterator
from pathlib import Path

import click

from assistant.failing import refuse
from assistant.languages import Language
from assistant.languages.verbosity import Verbosity
from assistant.speaking.wording import word
from assistant.summing_up import summary
from assistant.verbs.shared import language_option, load_language, made_from
from plans.conversation import Reply
from plans.engine.calling import call
from plans.engine.courses import course
from plans.engine.naming import stage_name
from plans.engine.places import after, is_finished, standing_at
from plans.json_form import as_json, plan_id, schema
from plans.making import Made
from plans.pattern import Plan
from plans.written.printing import print_pattern


@click.command()
@click.argument("file", required=False, type=click.Path(path_type=Path))
@click.option("--as", "form", type=click.Choice(["text", "json", "pattern"]), default="text",
              help="Lines to read, JSON, or a pattern in the usual abbreviations.")  # fmt: skip
@click.option("--schema", "wants_schema", is_flag=True, help="The JSON Schema of the JSON form, and nothing else.")
@language_option
def show(file: Path | None, form: str, wants_schema: bool, language: str | None) -> None:
    """Show a plan: its measures, its stages, and every step of both socks as it will be called.

    Example: roundcaller show socks.toml --as json
    """
    if wants_schema:
        click.echo(json.dumps(schema(), indent=2))
        return
    if file is None:
        raise refuse("show-what")
    made = made_from(file)
    if form == "json":
        click.echo(json.dumps(as_json(made.plan), indent=2))
        return
    if form == "pattern":
        click.echo(print_pattern(made.plan), nl=False)
        return
    for line in lines(made, load_language(language).with_socks(made.plan.socks)):
        click.echo(line)


def lines(made: Made, language: Language) -> Iterator[str]:
    """The plan as lines: measures, doubts, stages, then every step of every half."""
    for saying in (summary(made.plan), *made.notes, *_stages(made.plan)):
        yield word(saying, language, Verbosity.PLAIN)
    yield from steps_of(made.plan, language)
    rows = len(made.plan.rows)
    yield word(Reply.of("plan-fine", name=made.plan.name, rows=rows), language)


def _stages(plan: Plan) -> Iterator[Reply]:
    for stage in plan.stages:
        rows = plan.rows[stage.first_row : stage.last_row + 1]
        rounds = len({row.round for row in rows})
        yield Reply.of("stage-lines", stage=stage_name(stage.name), rounds=rounds, rows=len(rows))


def steps_of(plan: Plan, language: Language) -> Iterator[str]:
    """Every step, half by half, as it is called."""
    standing = standing_at(course(plan), plan_id(plan), 0)
    while not is_finished(plan, standing):
        yield word(call(plan, standing, "half"), language, Verbosity.PLAIN)
        standing = after(plan, standing, "half")
