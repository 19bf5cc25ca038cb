"""What is wrong with the command line itself, as something that can be said in any language."""

import re

import click

from plans.conversation import Problem

USAGE_PROBLEMS: dict[str, frozenset[str]] = {
    "option-unknown": frozenset({"option", "command"}),
    "option-missing": frozenset({"option", "command"}),
    "option-empty": frozenset({"option", "command"}),            # it takes a value, and none follows
    "option-choice": frozenset({"option", "choices"}),
    "option-range": frozenset({"option", "least", "most"}),
    "option-number": frozenset({"option"}),
    "option-unreadable": frozenset({"option", "command"}),
    "argument-missing": frozenset({"argument", "command"}),
    "argument-too-many": frozenset({"text", "command"}),
    "verb-unknown": frozenset({"text", "command", "verbs"}),
    "verb-missing": frozenset({"command", "verbs"}),
    "usage-unclear": frozenset({"command"}),
}  # fmt: skip
"""Every key, with the names of its values; all are text but `least` and `most`."""

_QUOTED = re.compile(r"['\"]([^'\"]+)['\"]")
_IN_BRACKETS = re.compile(r"\((.*)\)")


def usage_problem(wrong: click.ClickException) -> Problem:
    """The same in our own keys and values; whatever is not known more closely is told with how to get help."""
    context = wrong.ctx if isinstance(wrong, click.UsageError) else None
    command = context.command_path if context is not None else "roundcaller"
    match wrong:
        case click.NoSuchOption():
            return Problem.of("option-unknown", option=wrong.option_name, command=command)
        case click.BadOptionUsage():
            return Problem.of("option-empty", option=wrong.option_name, command=command)
        case click.MissingParameter(param=click.Argument() as argument):
            return Problem.of("argument-missing", argument=argument.make_metavar(_context(wrong)), command=command)
        case click.MissingParameter(param=click.Option() as option):
            return Problem.of("option-missing", option=option.opts[0], command=command)
        case click.BadParameter(param=click.Parameter() as parameter):
            return _unfit(parameter, command)
        case click.UsageError():
            return _of_the_verbs(wrong, context, command)
        case _:
            return Problem.of("usage-unclear", command=command)


def _context(wrong: click.UsageError) -> click.Context:
    return wrong.ctx or click.Context(click.Command("roundcaller"))


def _unfit(parameter: click.Parameter, command: str) -> Problem:
    option, kind = parameter.opts[0], parameter.type
    if isinstance(kind, click.Choice):
        return Problem.of("option-choice", option=option, choices=", ".join(map(str, kind.choices)))
    if isinstance(kind, click.IntRange) and kind.min is not None and kind.max is not None:
        return Problem.of("option-range", option=option, least=int(kind.min), most=int(kind.max))
    if isinstance(kind, click.types.IntParamType):
        return Problem.of("option-number", option=option)
    return Problem.of("option-unreadable", option=option, command=command)


def _of_the_verbs(wrong: click.UsageError, context: click.Context | None, command: str) -> Problem:
    group = context.command if context is not None else None
    if isinstance(group, click.Group):
        verbs = ", ".join(group.commands)
        if isinstance(wrong, click.exceptions.NoArgsIsHelpError):
            return Problem.of("verb-missing", command=command, verbs=verbs)
        if (name := _QUOTED.search(wrong.message)) is not None:
            return Problem.of("verb-unknown", text=name[1], command=command, verbs=verbs)
    if (extra := _IN_BRACKETS.search(wrong.message)) is not None:
        return Problem.of("argument-too-many", text=extra[1], command=command)
    return Problem.of("usage-unclear", command=command)
