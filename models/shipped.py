"""The program's own model, in a folder beside this module; where there is none, PocketSphinx's is the default."""

from importlib.util import find_spec
from pathlib import Path
from typing import Literal

FOLDER = Path(__file__).with_name("en")
LANGUAGE = "en"
"""That the model understands; ISO 639-1."""
NEEDED = ("am/final.mdl", "conf/model.conf")
"""What a folder must hold for Vosk to load it."""


def shipped_model(folder: Path = FOLDER) -> Path | None:
    """The folder of our own model for Vosk; None where this copy of the program has none, or Vosk is not installed."""
    is_whole = all((folder / needed).is_file() for needed in NEEDED)
    return folder if is_whole and find_spec("vosk") is not None else None


def default_recogniser(folder: Path = FOLDER, language: str = LANGUAGE) -> Literal["vosk", "pocketsphinx"]:
    """What listens where nobody says otherwise; PocketSphinx hears other languages by the phones of their words."""
    return "pocketsphinx" if language != LANGUAGE or shipped_model(folder) is None else "vosk"
