"""The command line: a verb each. Results on standard output, everything else on standard error."""

import sys
import traceback

import click

from assistant.failing import BAD_INPUT, INTERRUPTED, Refused, as_refusal, refuse
from assistant.languages import load
from assistant.speaking.wording import word
from assistant.verbs.demo import demo
from assistant.verbs.journal import journal
from assistant.verbs.knit import knit
from assistant.verbs.listen import listen
from assistant.verbs.models import models
from assistant.verbs.phrases import phrases
from assistant.verbs.plan import plan
from assistant.verbs.show import show
from assistant.verbs.start import start

_DEBUG = "--debug"


@click.group(invoke_without_command=True, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="roundcaller")
@click.pass_context
def roundcaller(context: click.Context) -> None:
    """Work out a pair of toe-up socks and have it called aloud, driven by voice.

    Without a verb it speaks: a sound check, then a new pair asked question by question, or the last one resumed.
    """
    if context.invoked_subcommand is None:
        context.invoke(start)


for _verb in (plan, show, knit, listen, journal, models, phrases, demo):
    roundcaller.add_command(_verb)


def main() -> None:
    """The entry point: exit codes 0 done, 1 surroundings failed, 2 bad input, 130 interrupted."""
    arguments = sys.argv[1:]
    debug = _DEBUG in arguments
    sys.exit(run([argument for argument in arguments if argument != _DEBUG], debug=debug))


def run(arguments: list[str], *, debug: bool = False) -> int:
    """Run one verb; returns the exit code, with one clear sentence for each problem on standard error."""
    try:
        roundcaller.main(arguments, prog_name="roundcaller", standalone_mode=False)
    except click.exceptions.Exit as done:
        return done.exit_code
    except click.Abort:
        return INTERRUPTED
    except KeyboardInterrupt:
        return INTERRUPTED
    except click.ClickException as wrong:
        click.echo(f"{wrong.format_message()}", err=True)
        return BAD_INPUT
    except BrokenPipeError:
        return 0
    except Exception as error:  # noqa: BLE001 (never a traceback without --debug)
        if debug:
            traceback.print_exc()
        return tell(as_refusal(error) or _unexpected(error))
    return 0


def tell(refusal: Refused) -> int:
    """Print a sentence for each problem; returns the exit code."""
    language = load("en")
    for problem in refusal.problems:
        click.echo(word(problem, language), err=True)
    return refusal.exit_code


def _unexpected(error: Exception) -> Refused:
    failed = refuse("unexpected", reason=f"{type(error).__name__}: {error}")
    failed.exit_code = 1
    return failed
