"""What several verbs need: the language, and plans read from files."""

from pathlib import Path

import click

from assistant.failing import Refused, refuse
from assistant.languages import Language, load
from assistant.settings import Settings, load_settings
from assistant.speaking.wording import word
from assistant.wiring import config_dir
from plans.files import read_wishes
from plans.making import Made, make_plan

language_option = click.option("--language", default="en", metavar="CODE", help="Language of voice and commands.")


def load_language(code: str) -> Language:
    """The language's phrases and sentences; refused where there is none of that name."""
    return load(code)


def settings_or_usual() -> Settings:
    """What is remembered; a damaged file is set aside and told about on standard error."""
    loaded = load_settings(config_dir())
    if loaded.problem is not None:
        click.echo(word(loaded.problem, load("en")), err=True)
    return loaded.settings


def read_text(path: Path) -> str:
    """The file's text.

    Raises:
        Refused: missing, unreadable, or not text.
    """
    try:
        return path.read_text(encoding="utf-8")
    except UnicodeDecodeError as error:
        raise refuse("path-not-text", file=str(path)) from error
    except OSError as error:
        raise refuse("path-unreadable", file=str(path), reason=error.strerror or "") from error


def made_from(path: Path) -> Made:
    """The proven plan of a plan file.

    Raises:
        Refused: with every problem of the file, or of the plan.
    """
    wishes = read_wishes(read_text(path))
    if isinstance(wishes, tuple):
        raise Refused(*wishes)
    made = make_plan(wishes)
    if isinstance(made, tuple):
        raise Refused(*made)
    return made
