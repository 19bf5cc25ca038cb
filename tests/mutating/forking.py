"""A test, or a whole run of pytest, in a process of its own, so that nothing it leaves behind is seen by the next."""

import os
import resource
import signal
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from _pytest.runner import runtestprotocol

MOST_MEMORY = 6 << 30
"""Bytes of address space: a fault that never stops collecting ends as a MemoryError."""

QUIETLY = ("-q", "-p", "no:cacheprovider", "-p", "no:xdist", "-p", "no:faulthandler",
           "-W", "ignore::pytest.PytestAssertRewriteWarning")


def forked(work: Callable[[], int]) -> int:
    """Do the work in a process of its own; its exit code, negative where a signal ended it."""
    sys.stdout.flush()
    sys.stderr.flush()
    child = os.fork()
    if child == 0:
        code = 70
        try:
            os.setpgid(0, 0)
            code = work()
        finally:
            os._exit(code)
    _, status = os.waitpid(child, 0)
    return os.waitstatus_to_exitcode(status)


def most_seconds(seconds: float) -> None:
    """From now on so many seconds of the processor, then SIGPROF; 0 for as many as it takes."""
    signal.setitimer(signal.ITIMER_PROF, seconds)


def silently(root: Path, files: list[str], plugin: object, scratch: Path) -> int:
    """Run pytest on these files, printing nothing; the plugin decides what is done with the tests in them."""
    os.chdir(root)
    null = os.open(os.devnull, os.O_RDWR)
    for each in (0, 1, 2):
        os.dup2(null, each)
    resource.setrlimit(resource.RLIMIT_AS, (MOST_MEMORY, MOST_MEMORY))
    return int(pytest.main([*QUIETLY, f"--basetemp={scratch}", *files], plugins=[plugin]))


def passes(item: pytest.Item) -> bool:
    """Run one test with its fixtures."""
    return not any(report.failed for report in runtestprotocol(item, log=False, nextitem=None))


def temporary_folders_made(session: pytest.Session) -> None:
    """Have the folder for temporary folders before there are several processes."""
    session.config._tmp_path_factory.getbasetemp()  # type: ignore[attr-defined]
