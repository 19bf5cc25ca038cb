"""The entry point: runs a verb, says in one sentence what went wrong, and gives the exit code.

Results go to standard output, everything else to standard error. Whatever is ours, and every library, is imported
late: so packages that are not ours are noticed first, and an interrupt in the first instants ends it without a word.
"""

import os
import sys
from typing import TYPE_CHECKING

from assistant.exit_codes import DONE, INTERRUPTED, SURROUNDINGS_FAILED

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from assistant.failing import Refused
    from assistant.languages import Language

_DEBUG = "--debug"
_LANGUAGE = "--language"


def main() -> None:
    """Run what the command line asks for, and exit."""
    interrupts = _Interrupts()
    arguments = sys.argv[1:]
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(errors="replace")
    wanted = [argument for argument in arguments if argument != _DEBUG]
    code = run(wanted, debug=_DEBUG in arguments, loaded=interrupts.are_raised)
    interrupts.end_with(code)
    _let_go_of_output()
    sys.exit(code)


class _Interrupts:
    """Control-C: while the program loads, and when it is done, it ends there; between it is an exception.

    An interrupt inside a library that is just being loaded could come out as any error.
    """

    def __init__(self) -> None:
        import signal  # noqa: PLC0415 (as late as everything)

        self._signal = signal
        self._is_ours = signal.getsignal(signal.SIGINT) is signal.default_int_handler
        self.end_with(INTERRUPTED)

    def end_with(self, code: int) -> None:
        """From now on an interrupt ends the process at once."""
        if self._is_ours:
            self._signal.signal(self._signal.SIGINT, lambda *_: os._exit(code))

    def are_raised(self) -> None:
        """From now on an interrupt is an exception."""
        if self._is_ours:
            self._signal.signal(self._signal.SIGINT, self._signal.default_int_handler)


def _nothing() -> None:
    """Nobody waits for it."""


def run(arguments: "Sequence[str]", *, debug: bool = False, loaded: "Callable[[], None]" = _nothing) -> int:
    """Run one verb.

    Args:
        arguments: of the command line.
        debug: show where in the program it failed.
        loaded: called when everything is loaded that the verb needs to begin.

    Returns:
        The exit code: 0 done, 1 the surroundings failed, 2 bad input, 130 interrupted. With 1 and 2 a sentence for
        each problem stands on standard error.
    """
    try:
        from assistant.packages import sentence, stranger  # noqa: PLC0415

        found = stranger()
        if found is not None:
            sys.stderr.write(f"{sentence(found)}\n")
            return SURROUNDINGS_FAILED
        return _run(arguments, loaded)
    except KeyboardInterrupt:
        return INTERRUPTED
    except BrokenPipeError:
        return DONE
    except Exception as error:  # noqa: BLE001 (never a traceback without --debug)
        if debug:
            import traceback  # noqa: PLC0415

            traceback.print_exc()
        from assistant.failing import explained  # noqa: PLC0415

        return tell(explained(error), _language(arguments))


def _run(arguments: "Sequence[str]", loaded: "Callable[[], None]") -> int:
    import click  # noqa: PLC0415

    from assistant.failing import Refused  # noqa: PLC0415
    from assistant.program import roundcaller  # noqa: PLC0415
    from assistant.usage import usage_problem  # noqa: PLC0415

    loaded()
    try:
        with roundcaller.make_context("roundcaller", list(arguments)) as context:
            roundcaller.invoke(context)
    except click.exceptions.Exit as done:
        return done.exit_code
    except click.Abort:
        return INTERRUPTED
    except click.ClickException as wrong:
        raise Refused(usage_problem(wrong)) from wrong
    finally:
        if sys.stdout is not None:
            sys.stdout.flush()
    return DONE


def _language(arguments: "Sequence[str]") -> "Language":
    """The language named on the command line, else the one remembered, else English; whatever of it can be read."""
    from assistant.languages import load  # noqa: PLC0415

    try:
        from assistant.settings import remembered_language  # noqa: PLC0415
        from assistant.verbs.shared import language_called  # noqa: PLC0415
        from assistant.wiring import config_dir  # noqa: PLC0415

        return language_called(_named(arguments) or remembered_language(config_dir()) or "en")
    except Exception:  # noqa: BLE001 (that it cannot be read is perhaps what is to be told)
        return load("en")


def _named(arguments: "Sequence[str]") -> str | None:
    found = None
    for argument, following in zip(arguments, [*arguments[1:], ""], strict=True):
        if argument == _LANGUAGE:
            found = following
        elif argument.startswith(f"{_LANGUAGE}="):
            found = argument.partition("=")[2]
    return found


def tell(refusal: "Refused", language: "Language | None" = None) -> int:
    """Print a sentence for each problem; returns the exit code."""
    try:
        from assistant.languages import load  # noqa: PLC0415
        from assistant.speaking.wording import word  # noqa: PLC0415

        spoken = language or load("en")
        lines = [word(problem, spoken) for problem in refusal.problems]
    except Exception:  # noqa: BLE001 (the sentences themselves may be what is broken)
        lines = [f"{problem.key} {problem.where} {dict(problem.values)}" for problem in refusal.problems]
    if sys.stderr is not None:
        for line in dict.fromkeys(lines):
            sys.stderr.write(f"{line}\n")
    return refusal.exit_code


def _let_go_of_output() -> None:
    """Where nobody reads it, or the disk is full, what is still to be written would fail again at the very end."""
    try:
        if sys.stdout is not None:
            sys.stdout.flush()
    except OSError:
        try:
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.__stdout__.fileno() if sys.__stdout__ else 1)
        except (OSError, ValueError, AttributeError):
            return
