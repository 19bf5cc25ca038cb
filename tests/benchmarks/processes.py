"""What a process and its helpers use, as Linux tells (proc(5)); the voice's own process is no helper."""

import os
from pathlib import Path

_PROC = Path("/proc")
_TICKS_A_SECOND = os.sysconf("SC_CLK_TCK")
_HELPER = "pocketsphinx_apart"


def helpers(number):
    """Numbers of the processes that a process started to help it listen."""
    found = []
    for folder in _PROC.iterdir():
        try:
            parent = int((folder / "stat").read_text().rpartition(")")[2].split()[1])
            is_helper = parent == number and _HELPER in (folder / "cmdline").read_text()
        except (OSError, ValueError, IndexError):
            continue
        if is_helper:
            found.append(int(folder.name))
    return found


def core_seconds(number):
    """Processor seconds so far, of a process and its helpers that still run."""
    return sum(map(_core_seconds, (number, *helpers(number))))


def resident_mb(number):
    """Memory in use by a process and its helpers; a page that two of them share counts twice."""
    return sum(map(_resident_mb, (number, *helpers(number))))


def _core_seconds(number):
    fields = (_PROC / str(number) / "stat").read_text().rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12])) / _TICKS_A_SECOND


def _resident_mb(number):
    try:
        status = (_PROC / str(number) / "status").read_text()
    except OSError:
        return 0.0
    return sum(int(line.split()[1]) / 1024 for line in status.splitlines() if line.startswith("VmRSS:"))
