"""All verbs of the command line as one group."""

from importlib.metadata import PackageNotFoundError, version
from typing import Any

import click

from assistant.failing import refuse
from assistant.verbs.choices import voice_options
from assistant.verbs.demo import demo
from assistant.verbs.journal import journal
from assistant.verbs.knit import knit
from assistant.verbs.listen import listen
from assistant.verbs.models import models
from assistant.verbs.phrases import phrases
from assistant.verbs.plan import plan
from assistant.verbs.settings import settings
from assistant.verbs.shared import language_option
from assistant.verbs.show import show
from assistant.verbs.start import start


def _tell_version(context: click.Context, _: click.Parameter, is_wanted: bool) -> None:
    if is_wanted:
        try:
            click.echo(f"roundcaller {version('roundcaller')}")
        except PackageNotFoundError:
            click.echo("roundcaller, not installed")
        context.exit()


@click.group(invoke_without_command=True, context_settings={"help_option_names": ["-h", "--help"]})
@click.option("--version", is_flag=True, is_eager=True, expose_value=False, callback=_tell_version,
              help="Show the version and exit.")  # fmt: skip
@click.option("--debug", is_flag=True, expose_value=False, help="With any verb: show where in the program it failed.")
@voice_options
@language_option
@click.pass_context
def roundcaller(context: click.Context, /, **given: Any) -> None:  # noqa: ANN401 (what `start` takes)
    """Work out a pair of toe-up socks and have it called aloud, driven by voice.

    Without a verb it speaks: a sound check, then a new pair asked question by question, or the last one resumed.
    """
    if context.invoked_subcommand is None:
        context.invoke(start, **given)
        return
    misplaced = next((name for name, value in given.items() if value is not None), None)
    if misplaced is not None:
        raise refuse("option-before-verb", option=f"--{misplaced}", verb=context.invoked_subcommand)


for _verb in (plan, show, knit, listen, journal, models, phrases, settings, demo):
    roundcaller.add_command(_verb)
    for _command in (_verb, *getattr(_verb, "commands", {}).values()):
        _command.context_settings.setdefault("help_option_names", ["-h", "--help"])
