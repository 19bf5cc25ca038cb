"""What several verbs need: the language, and plans read from files."""

from pathlib import Path
from typing import NamedTuple

import click

from assistant.failing import Refused, Surroundings, refuse
from assistant.languages import Language, known_languages, load
from assistant.settings import Memory, load_settings
from assistant.speaking.wording import word
from assistant.wiring import config_dir, data_dir
from assistant.writing import write_whole
from plans.conversation import Problem
from plans.files import LONGEST_FILE
from plans.making import Made
from plans.opening import made_of

language_option = click.option("--language", default=None, metavar="CODE", help="Language of voice and commands; the "
                               "one remembered where left out, else English.")  # fmt: skip


class Remembered(NamedTuple):
    """What is remembered, and the language of this run."""

    memory: Memory
    language: Language


def remembered(code: str | None) -> Remembered:
    """The settings, and the language named here or in them; a damaged file is set aside and told on standard error.

    Raises:
        LanguageProblem: there is none of that name, or it cannot be read.
    """
    loaded = load_settings(config_dir())
    language = language_called(loaded.settings.language if code is None else code)
    if loaded.problem is not None:
        click.echo(word(loaded.problem, language), err=True)
    return Remembered(Memory(config_dir(), loaded.settings), language)


def load_language(code: str | None) -> Language:
    """The language's phrases and sentences; of the one remembered where none is named."""
    return remembered(None).language if code is None else language_called(code)


def language_called(code: str) -> Language:
    """One of ours, or one that lies in the user's own folder.

    Raises:
        LanguageProblem: there is none of that name, or it cannot be read.
    """
    own = data_dir() / "languages"
    return load(code, own) if code in known_languages(own) and code not in known_languages() else load(code)


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
