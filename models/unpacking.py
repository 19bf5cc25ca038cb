"""Zip archives from elsewhere, unpacked so that nothing outside the folder is touched and no disk filled."""

import shutil
import stat
import zipfile
from pathlib import Path, PurePosixPath, PureWindowsPath
from typing import IO

from models.errors import ArchiveUnsafe

MOST_ENTRIES = 10_000
MOST_GROWTH = 20
"""A model's files may take so many times the archive's size."""
SMALLEST_LIMIT_BYTES = 1_000_000

_CHUNK_BYTES = 1 << 20


def unpack_zip(name: str, archive: Path, folder: Path) -> None:
    """Unpack the archive into the folder, which is made anew; a single folder around everything is taken off.

    Args:
        name: the model's, for the problems.
        archive: a zip file.
        folder: what is there is removed first, and again when the archive is refused.

    Raises:
        ArchiveUnsafe: naming the entry that is a link, leads out of the folder, is encrypted or damaged, or
            with which the files grow beyond `MOST_GROWTH` times the archive; or an archive that is no zip.
        OSError: when the disk refuses.
    """
    shutil.rmtree(folder, ignore_errors=True)
    limit = max(SMALLEST_LIMIT_BYTES, MOST_GROWTH * archive.stat().st_size)
    try:
        with zipfile.ZipFile(archive) as packed:
            _unpack_all(name, packed, folder, limit)
    except zipfile.BadZipFile:
        shutil.rmtree(folder, ignore_errors=True)
        raise ArchiveUnsafe(name=name, entry=archive.name) from None
    except BaseException:
        shutil.rmtree(folder, ignore_errors=True)
        raise


def _unpack_all(name: str, packed: zipfile.ZipFile, folder: Path, limit: int) -> None:
    entries = [entry for entry in packed.infolist() if not entry.is_dir()]
    if not entries or len(entries) > MOST_ENTRIES:
        raise ArchiveUnsafe(name=name, entry=f"{len(entries)}")
    for entry in entries:
        _refuse_unsafe(name, entry)
    wrapping = _wrapping(entries)
    room = limit
    for entry in entries:
        target = folder.joinpath(*PurePosixPath(entry.filename).parts[wrapping:])
        target.parent.mkdir(parents=True, exist_ok=True)
        try:
            with packed.open(entry) as source, target.open("xb") as sink:
                room -= _copy(source, sink, room)
        except (zipfile.BadZipFile, RuntimeError, NotImplementedError, EOFError, FileExistsError):
            raise ArchiveUnsafe(name=name, entry=entry.filename) from None
        if room < 0:
            raise ArchiveUnsafe(name=name, entry=entry.filename)


def _refuse_unsafe(name: str, entry: zipfile.ZipInfo) -> None:
    path = PurePosixPath(entry.filename)
    kind = stat.S_IFMT(entry.external_attr >> 16)
    if (
        path.is_absolute()
        or ".." in path.parts
        or "\\" in entry.orig_filename
        or PureWindowsPath(entry.filename).drive
        or kind not in {0, stat.S_IFREG}
    ):
        raise ArchiveUnsafe(name=name, entry=entry.filename)


def _wrapping(entries: list[zipfile.ZipInfo]) -> int:
    """How many outer folders to take off: 1 where all entries lie in the same one, else 0."""
    paths = [PurePosixPath(entry.filename) for entry in entries]
    same = len({path.parts[0] for path in paths}) == 1
    return int(same and all(len(path.parts) > 1 for path in paths))


def _copy(source: IO[bytes], sink: IO[bytes], room: int) -> int:
    """Copy until the end or just past the room; the sizes in the archive's headers are not believed."""
    copied = 0
    while copied <= room and (chunk := source.read(_CHUNK_BYTES)):
        sink.write(chunk)
        copied += len(chunk)
    return copied
