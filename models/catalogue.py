"""Which models there are, where they come from, and by what each can be checked."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

from models.errors import ModelUnknown

FETCH = "roundcaller models fetch"
"""The command that cures a missing or broken model, before its name."""
ACCEPT_UNKNOWN = "--accept-unknown"
"""The option by which a model without recorded checksum is trusted on first use."""


@dataclass(frozen=True, slots=True)
class Model:
    """One model.

    Attributes:
        name: what the user calls it.
        language: ISO 639-1 code, or "any".
        purpose: "pocketsphinx", "vosk" (the recogniser it is for), "voice activity" or "second opinion".
        licence: SPDX identifier.
        note: one line for people.
        size_bytes: of the archive, or of all files of a model inside a package; None where not known.
        sha256: of the archive, in hex; None where not known.
        url: of the archive, a zip; None for a model inside a package.
        package: the Python package that brings the model; None for one that is fetched.
        package_version: the version of that distribution `files` was recorded from; None for our own.
        folder: where the model lies inside the package.
        files: SHA-256 in hex by file inside `folder`.
    """

    name: str
    language: str
    purpose: str
    licence: str
    note: str
    size_bytes: int | None = None
    sha256: str | None = None
    url: str | None = None
    package: str | None = None
    package_version: str | None = None
    folder: str = ""
    files: Mapping[str, str] = field(default_factory=dict)

    @property
    def cure(self) -> str:
        """The command that puts the model in place."""
        if self.package is None:
            return f"{FETCH} {self.name}"
        return f"pip install --force-reinstall {'.' if self.package == 'models' else self.package}"


Catalogue = Mapping[str, Model]


def read_catalogue(text: str) -> Catalogue:
    """The models of a catalogue file's text, by name, in its order."""
    return {entry["name"]: Model(**entry) for entry in tomllib.loads(text)["model"]}


@cache
def catalogue() -> Catalogue:
    """The models this program knows; our own first, where this copy has it: its entry lies in its folder."""
    here = Path(__file__).parent
    files = (here / "en" / "catalogue.toml", here / "catalogue.toml")
    return {
        name: model
        for file in files
        if file.is_file()
        for name, model in read_catalogue(file.read_text("utf-8")).items()
    }


def find(name: str, among: Catalogue | None = None) -> Model:
    """The model of that name.

    Raises:
        ModelUnknown: when there is none.
    """
    known = catalogue() if among is None else among
    if name not in known:
        raise ModelUnknown(name=name, names=", ".join(known))
    return known[name]
