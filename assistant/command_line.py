"""The entry point: runs a verb, says in one sentence what went wrong, and gives the exit code.

Results go to standard output, everything else to standard error. Whatever is ours is imported late, so that packages
that are not ours are noticed first, and an interrupt at the start leaves no traceback.
"""

import os
import sys
import traceback
from contextlib import suppress
from typing import TYPE_CHECKING

import click

from assistant.exit_codes import BAD_INPUT, DONE, INTERRUPTED, SURROUNDINGS_FAILED
from assistant.packages import sentence, stranger

if TYPE_CHECKING:
    from assistant.failing import Refused

_DEBUG = "--debug"


def main() -> None:
    """Run what the command line asks for, and exit."""
    arguments = sys.argv[1:]
    for stream in (sys.stdout, sys.stderr):
        with suppress(AttributeError):
            stream.reconfigure(errors="replace")  # type: ignore[union-attr]
    code = run([argument for argument in arguments if argument != _DEBUG], debug=_DEBUG in arguments)
    _let_go_of_output()
    sys.exit(code)


def run(arguments: list[str], *, debug: bool = False) -> int:
    """Run one verb.

    Returns:
        The exit code: 0 done, 1 the surroundings failed, 2 bad input, 130 interrupted. With the last three a
        sentence for each problem stands on standard error.
    """
    try:
        found = stranger()
        if found is not None:
            click.echo(sentence(found), err=True)
            return SURROUNDINGS_FAILED
        return _run(arguments)
    except click.ClickException as wrong:
        click.echo(wrong.format_message(), err=True)
        return BAD_INPUT
    except (click.Abort, KeyboardInterrupt):
        return INTERRUPTED
    except BrokenPipeError:
        return DONE
    except Exception as error:  # noqa: BLE001 (never a traceback without --debug)
        if debug:
            traceback.print_exc()
        from assistant.failing import explained  # noqa: PLC0415

        return tell(explained(error))


def _run(arguments: list[str]) -> int:
    from assistant.program import roundcaller  # noqa: PLC0415

    try:
        with roundcaller.make_context("roundcaller", arguments) as context:
            roundcaller.invoke(context)
    except click.exceptions.Exit as done:
        return done.exit_code
    finally:
        if sys.stdout is not None:
            sys.stdout.flush()
    return DONE


def tell(refusal: "Refused") -> int:
    """Print a sentence for each problem; returns the exit code."""
    from assistant.languages import load  # noqa: PLC0415
    from assistant.speaking.wording import word  # noqa: PLC0415

    try:
        language = load("en")
        lines = [word(problem, language) for problem in refusal.problems]
    except Exception:  # noqa: BLE001 (the sentences themselves may be what is broken)
        lines = [f"{problem.key} {problem.where} {dict(problem.values)}" for problem in refusal.problems]
    for line in dict.fromkeys(lines):
        click.echo(line, err=True)
    return refusal.exit_code


def _let_go_of_output() -> None:
    """Where nobody reads it, or the disk is full, what is still to be written would fail again at the very end."""
    try:
        if sys.stdout is not None:
            sys.stdout.flush()
    except OSError:
        with suppress(OSError, ValueError, AttributeError):
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.__stdout__.fileno() if sys.__stdout__ else 1)
