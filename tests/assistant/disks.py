"""Disks that are small enough to fill."""

import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest


@contextmanager
def mounted(folder: Path, size_kib: int) -> Iterator[Path]:
    """A disk in memory; only root can mount one, others skip the test."""
    folder.mkdir()
    if sys.platform != "linux":
        pytest.skip("needs a Linux tmpfs")
    mounting = ("mount", "-t", "tmpfs", "-o", f"size={size_kib}k", "tmpfs", str(folder))
    if subprocess.run(mounting, capture_output=True, check=False).returncode != 0:
        pytest.skip("needs root to mount a small disk")
    yield folder
    subprocess.run(["umount", folder], check=True)


def fill(folder: Path) -> Path:
    """Take all the room that there is; returns the file that took it."""
    filler = folder / "filler"
    with filler.open("wb", buffering=0) as file:
        try:
            while True:
                file.write(bytes(512))
        except OSError:
            return filler
