"""The models on this machine: where they are, and whether they are still what they were."""

import hashlib
import json
import os
from base64 import urlsafe_b64decode
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from importlib import metadata
from importlib.util import find_spec
from pathlib import Path

from models.catalogue import Catalogue, Model, catalogue, find
from models.errors import ChecksumUnknown, ModelBroken, ModelMissing


class Against(StrEnum):
    """What a model was compared with."""

    CATALOGUE = "catalogue"
    """Checksums recorded in this program."""
    FIRST_USE = "first use"
    """What came on the first fetch, trusted then because no checksum was recorded."""
    PACKAGE = "package"
    """The list inside the package that brings it, as it is another version than the recorded one."""


@dataclass(frozen=True, slots=True)
class Receipt:
    """What was fetched, kept beside the model's folder and after it is gone.

    Attributes:
        archive_sha256: of the archive, in hex.
        against: what the archive was compared with.
        files: SHA-256 in hex by path inside the model's folder.
    """

    archive_sha256: str
    against: Against
    files: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class ModelState:
    """One line of `models list`.

    Attributes:
        model: the catalogue's entry.
        path: the model's folder, None while it is not there.
        received_bytes: how much of a download has come that is not finished; 0 where none has begun.
        against: what it was compared with when it was fetched; None where it is not there or has no receipt.
    """

    model: Model
    path: Path | None
    received_bytes: int
    against: Against | None


def list_models(data_dir: Path, among: Catalogue | None = None) -> tuple[ModelState, ...]:
    """Every model of the catalogue, and whether it is here. Hashes nothing.

    Args:
        data_dir: the program's own data folder; it need not exist.
        among: another catalogue than the program's.
    """
    return tuple(_state(model, data_dir) for model in (catalogue() if among is None else among).values())


def model_path(name: str, data_dir: Path, among: Catalogue | None = None) -> Path:
    """The folder to load the model from.

    Raises:
        ModelUnknown: for a name that is not in the catalogue.
        ModelMissing: when the model is not here.
    """
    model = find(name, among)
    path = _place(model, data_dir)
    if path is None or not path.is_dir():
        raise ModelMissing(name=name, cure=model.cure)
    return path


def verify(name: str, data_dir: Path, among: Catalogue | None = None) -> Against:
    """Hash every file of the model again; returns what they were compared with.

    Raises:
        ModelUnknown: for a name that is not in the catalogue.
        ModelMissing: when the model is not here.
        ModelBroken: naming the first file that is missing, additional or different.
        ChecksumUnknown: when there is nothing to compare with.
    """
    model = find(name, among)
    path = model_path(name, data_dir, among)
    against, expected = _expected(model, data_dir)
    actual = hash_files(path)
    if model.package is not None:
        actual = {file: digest for file, digest in actual.items() if file in expected}
    for file in sorted(expected.keys() | actual.keys()):
        if expected.get(file) != actual.get(file):
            raise ModelBroken(name=name, what=file, cure=model.cure)
    return against


def hash_files(folder: Path) -> dict[str, str]:
    """SHA-256 in hex of every file below the folder, by its path in it with forward slashes."""
    files = sorted(path for path in folder.rglob("*") if path.is_file())
    return {path.relative_to(folder).as_posix(): _sha256(path) for path in files}


def receipt_path(name: str, data_dir: Path) -> Path:
    """Where a fetched model's receipt lies."""
    return data_dir / "models" / f"{name}.receipt.json"


def part_path(name: str, data_dir: Path) -> Path:
    """Where a download grows."""
    return data_dir / "models" / f"{name}.zip.part"


def folder_path(name: str, data_dir: Path) -> Path:
    """Where a fetched model's folder lies."""
    return data_dir / "models" / name


def read_receipt(name: str, data_dir: Path) -> Receipt | None:
    """The receipt of a model that was once fetched; None where there is none that can be read."""
    try:
        content = json.loads(receipt_path(name, data_dir).read_text("utf-8"))
        return Receipt(str(content["archive_sha256"]), Against(content["against"]), dict(content["files"]))
    except (OSError, ValueError, KeyError, TypeError):
        return None


def write_receipt(name: str, data_dir: Path, receipt: Receipt) -> None:
    """Keep the receipt, whole or not at all."""
    content = {
        "archive_sha256": receipt.archive_sha256,
        "against": receipt.against.value,
        "files": dict(receipt.files),
    }
    final = receipt_path(name, data_dir)
    unfinished = final.with_suffix(".new")
    with unfinished.open("w", encoding="utf-8") as stream:
        json.dump(content, stream, indent=1)
        stream.flush()
        os.fsync(stream.fileno())
    unfinished.replace(final)


def _sha256(path: Path) -> str:
    with path.open("rb") as stream:
        return hashlib.file_digest(stream, "sha256").hexdigest()


def _place(model: Model, data_dir: Path) -> Path | None:
    if model.package is None:
        return folder_path(model.name, data_dir)
    spec = find_spec(model.package)
    if spec is None or not spec.submodule_search_locations:
        return None
    return Path(spec.submodule_search_locations[0]) / model.folder


def _state(model: Model, data_dir: Path) -> ModelState:
    path = _place(model, data_dir)
    here = path if path is not None and path.is_dir() else None
    part = part_path(model.name, data_dir)
    receipt = read_receipt(model.name, data_dir) if here is not None else None
    return ModelState(
        model=model,
        path=here,
        received_bytes=part.stat().st_size if part.is_file() else 0,
        against=receipt.against if receipt is not None else None,
    )


def _expected(model: Model, data_dir: Path) -> tuple[Against, Mapping[str, str]]:
    if model.package is None:
        receipt = read_receipt(model.name, data_dir)
        if receipt is not None:
            return receipt.against, receipt.files
    elif model.package_version in {None, _installed_version(model.package)}:
        return Against.CATALOGUE, model.files
    elif files := _packaged_files(model.package, model.folder):
        return Against.PACKAGE, files
    raise ChecksumUnknown(name=model.name, cure=model.cure)


def _installed_version(package: str) -> str | None:
    try:
        return metadata.version(package)
    except metadata.PackageNotFoundError:
        return None


def _packaged_files(package: str, folder: str) -> dict[str, str]:
    """What the package's own list (RECORD of the wheel specification, PEP 427) says of the model's files."""
    try:
        listed = metadata.files(package) or []
    except metadata.PackageNotFoundError:
        listed = []
    inside = f"{package}/{folder}/"
    return {
        file.as_posix().removeprefix(inside): urlsafe_b64decode(file.hash.value + "=").hex()
        for file in listed
        if file.as_posix().startswith(inside) and file.hash is not None and file.hash.mode == "sha256"
    }
