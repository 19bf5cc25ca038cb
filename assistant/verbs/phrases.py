"""`roundcaller phrases`: everything that can be said to it."""

import json

import click

from assistant.languages import phrases_as_json
from assistant.verbs.shared import language_option, load_language


@click.command()
@language_option
@click.option("--json", "as_json", is_flag=True, help="As JSON, for other programs.")
def phrases(language: str | None, as_json: bool) -> None:
    """List every command with every way to say it.

    Example: roundcaller phrases --json
    """
    form = phrases_as_json(load_language(language))
    if as_json:
        click.echo(json.dumps(form, indent=2, ensure_ascii=False))
        return
    for command in form["commands"]:
        click.echo(f"{command['name']}: {'; '.join(command['phrases'])}")
