"""Getting a model: downloaded, checked, unpacked, put in place whole or not at all."""

import errno
import shutil
from collections.abc import Callable
from pathlib import Path

from models.catalogue import ACCEPT_UNKNOWN, Catalogue, Model, find
from models.downloading import Download, Progress, download, forget_part
from models.errors import ArchiveUnsafe, ChecksumUnknown, ChecksumWrong, FolderClosed, ModelBroken, NoRoom
from models.keeping import (
    Against,
    Receipt,
    folder_path,
    hash_files,
    model_path,
    part_path,
    read_receipt,
    verify,
    write_receipt,
)
from models.unpacking import unpack_zip

UNPACKED_GROWTH = 3
"""So many times its archive's size is asked of the disk: for the archive and the files out of it."""

_FULL = {errno.ENOSPC, errno.EDQUOT, errno.EFBIG}


def _free_bytes(folder: Path) -> int:
    return shutil.disk_usage(folder).free


def fetch(  # noqa: PLR0913 - what only some need is named at the call
    name: str,
    data_dir: Path,
    progress: Progress,
    *,
    accept_unknown: bool = False,
    among: Catalogue | None = None,
    free_bytes: Callable[[Path], int] = _free_bytes,
) -> Path:
    """Put the model in place and return its folder; one that is here and sound is not fetched again.

    Args:
        name: as in the catalogue.
        data_dir: the program's own data folder; made where it does not exist.
        progress: called at each 10 %.
        accept_unknown: trust what the server sends where no checksum is recorded; its receipt is what every
            later fetch and `verify` compare with.
        among: another catalogue than the program's.
        free_bytes: how much room a folder's disk has.

    Raises:
        ModelUnknown: for a name that is not in the catalogue.
        ModelMissing: for a model that comes with a package which is not installed.
        ModelBroken: for one that comes with a package and is damaged.
        ChecksumUnknown: where no checksum is recorded and `accept_unknown` is not set.
        ChecksumWrong: when something else came; it is removed.
        FetchFailed: Offline, ServerRefused, BrokenOff, SizeWrong, ArchiveUnsafe, NoRoom or FolderClosed.
    """
    model = find(name, among)
    if model.url is None:
        verify(name, data_dir, among)
        return model_path(name, data_dir, among)
    if _is_sound(name, data_dir, among):
        return model_path(name, data_dir, among)
    expected, against = _expected(model, data_dir, accept_unknown=accept_unknown)
    folder = folder_path(name, data_dir)
    needed = UNPACKED_GROWTH * (model.size_bytes or 0)
    try:
        folder.parent.mkdir(parents=True, exist_ok=True)
        if free_bytes(folder.parent) < needed:
            raise _no_room(model, folder, needed)
        actual = _download(model, model.url, data_dir, progress, expected)
        _put_in_place(model, data_dir, Receipt(actual, against, {}))
    except OSError as failure:
        if failure.errno in _FULL:
            raise _no_room(model, folder, needed) from failure
        raise FolderClosed(folder=str(folder.parent), reason=failure.strerror or str(failure)) from failure
    return folder


def _is_sound(name: str, data_dir: Path, among: Catalogue | None) -> bool:
    if not folder_path(name, data_dir).is_dir():
        return False
    try:
        verify(name, data_dir, among)
    except (ModelBroken, ChecksumUnknown):
        return False
    return True


def _expected(model: Model, data_dir: Path, *, accept_unknown: bool) -> tuple[str | None, Against]:
    """The checksum the archive must have, None for any, and where it is from."""
    if model.sha256 is not None:
        return model.sha256, Against.CATALOGUE
    receipt = read_receipt(model.name, data_dir)
    if receipt is not None:
        return receipt.archive_sha256, receipt.against
    if not accept_unknown:
        raise ChecksumUnknown(name=model.name, cure=f"{model.cure} {ACCEPT_UNKNOWN}")
    return None, Against.FIRST_USE


def _download(model: Model, url: str, data_dir: Path, progress: Progress, expected: str | None) -> str:
    part = part_path(model.name, data_dir)
    actual = download(Download(model.name, url, part, model.size_bytes, model.cure), progress)
    if expected is not None and actual != expected:
        forget_part(part)
        raise ChecksumWrong(name=model.name, expected=expected, actual=actual, cure=model.cure)
    return actual


def _put_in_place(model: Model, data_dir: Path, receipt: Receipt) -> None:
    """Unpack beside the final place, note what came, and swap; the archive is let go only then."""
    part, folder = part_path(model.name, data_dir), folder_path(model.name, data_dir)
    unpacked = folder.with_name(f"{model.name}.unpacking")
    try:
        try:
            unpack_zip(model.name, part, unpacked)
        except ArchiveUnsafe:
            forget_part(part)
            raise
        write_receipt(
            model.name, data_dir, Receipt(receipt.archive_sha256, receipt.against, hash_files(unpacked))
        )
        if folder.exists():
            shutil.rmtree(folder)
        unpacked.replace(folder)
    finally:
        shutil.rmtree(unpacked, ignore_errors=True)
    forget_part(part)


def _no_room(model: Model, folder: Path, needed: int) -> NoRoom:
    return NoRoom(name=model.name, folder=str(folder.parent), needed_mb=str(-(-needed // 1_000_000)))
