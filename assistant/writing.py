"""Files written whole or not at all: whatever stood there before is never lost half-way."""

import os
import tempfile
from pathlib import Path


def write_whole(path: Path, text: str) -> None:
    """Write a text file; what is no ordinary file, such as a pipe, is simply written to.

    Raises:
        OSError: no such folder, no room, or no right; a file that was there is as it was.
    """
    write_bytes_whole(path, text.encode())


def write_bytes_whole(path: Path, content: bytes) -> None:
    """The same for any content.

    Raises:
        OSError: no such folder, no room, or no right; a file that was there is as it was.
    """
    if path.exists() and not path.is_file():
        path.write_bytes(content)
        return
    _replace(path.resolve(), content)


def _replace(path: Path, content: bytes) -> None:
    number, name = tempfile.mkstemp(dir=path.parent, prefix=".roundcaller-")
    try:
        with os.fdopen(number, "wb") as new:
            new.write(content)
            new.flush()
            os.fsync(new.fileno())
        Path(name).chmod(path.stat().st_mode if path.exists() else 0o666 & ~_mask())
        Path(name).replace(path)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise


def _mask() -> int:
    """The permissions that new files are not to have."""
    mask = os.umask(0)
    os.umask(mask)
    return mask
