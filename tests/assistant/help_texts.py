"""Every help text, as a terminal of 80 columns shows it; constructions, found by their files, are not listed.

`python -m tests.assistant.help_texts` writes them anew; read the difference before it is committed.
"""

from collections.abc import Iterator
from pathlib import Path

import click

from assistant.program import roundcaller
from plans.pattern import BindOff, Cuff, Heel, Increase, Leg, Sole, Toe

FILE = Path(__file__).parents[1] / "golden" / "help.txt"


def commands(command: click.Command = roundcaller, name: str = "roundcaller") -> Iterator[tuple[str, click.Command]]:
    """All verbs by their whole names, the program itself first."""
    yield name, command
    if isinstance(command, click.Group):
        for verb, inner in sorted(command.commands.items()):
            yield from commands(inner, f"{name} {verb}")


def help_texts() -> str:
    """One after the other."""
    shown = (
        command.get_help(click.Context(command, info_name=name, terminal_width=80, help_option_names=["-h", "--help"]))
        for name, command in commands()
    )
    text = "\n\n----\n\n".join(shown) + "\n"
    for kinds in (Toe, Heel, Increase, Sole, Leg, Cuff, BindOff):
        text = text.replace(f"[{'|'.join(kinds)}]", "[NAME|NAME]")
    return text


if __name__ == "__main__":
    FILE.write_text(help_texts(), encoding="utf-8")
