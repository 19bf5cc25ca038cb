"""What several verbs need: the language, and plans read from files."""

from pathlib import Path

import click

from assistant.failing import Refused, Surroundings, refuse
from assistant.languages import Language, load
from assistant.settings import Settings, load_settings
from assistant.speaking.wording import word
from assistant.wiring import config_dir
from assistant.writing import write_whole
from plans.conversation import Problem
from plans.files import LONGEST_FILE
from plans.making import Made
from plans.opening import made_of

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
    """The file's text; of a file longer than any plan only the beginning.

    Raises:
        Refused: missing, unreadable, or not text.
    """
    most = LONGEST_FILE * 4
    try:
        with path.open("rb") as file:
            content = file.read(most + 1)
        return content.decode("utf-8", "strict" if len(content) <= most else "replace")
    except UnicodeDecodeError as error:
        raise refuse("path-not-text", file=str(path)) from error
    except FileNotFoundError as error:
        raise refuse("path-missing", file=str(path)) from error
    except OSError as error:
        raise refuse("path-unreadable", file=str(path), reason=error.strerror or "") from error


_NAMED_WRONGLY = (FileNotFoundError, NotADirectoryError, IsADirectoryError)


def write_text(path: Path, text: str) -> None:
    """Write a file, whole or not at all.

    Raises:
        Refused: the folder is missing, or the file is a folder.
        Surroundings: the disk is full, or may not be written.
    """
    try:
        write_whole(path, text)
    except OSError as error:
        problem = Problem.of("path-unwritable", file=str(path), reason=error.strerror or "")
        raise (Refused if isinstance(error, _NAMED_WRONGLY) else Surroundings)(problem) from error


def made_from(path: Path) -> Made:
    """The proven plan of a plan file.

    Raises:
        Refused: with every problem of the file, or of the plan.
    """
    made = made_of(read_text(path))
    if isinstance(made, tuple):
        raise Refused(*made)
    return made
