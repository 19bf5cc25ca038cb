"""A full disk, a journal that is not to be had, an interrupt, a reader that goes away: told once, and nothing lost."""

import os
import resource
import signal
import sqlite3
import subprocess
from collections.abc import Callable, Iterator
from contextlib import closing
from pathlib import Path

import pytest

from assistant.journal import Journal
from assistant.journal_events import SessionEnded
from tests.assistant.disks import fill, mounted
from tests.assistant.running import PRACTICE_OPTIONS, Machine, no_traceback

TYPED = ("--recogniser", "typed", "--to", "none")


@pytest.fixture
def machine(tmp_path: Path) -> Machine:
    return Machine(tmp_path / "home")


@pytest.fixture
def small_disk(tmp_path: Path) -> Iterator[Path]:
    """A disk of 512 KiB in memory."""
    with mounted(tmp_path / "disk", 512) as folder:
        yield folder


def no_file_longer_than(size: int) -> Callable[[], None]:
    """As a disk that takes no more: for the process that is started next."""

    def limit() -> None:
        resource.setrlimit(resource.RLIMIT_FSIZE, (size, size))

    return limit


def said_in(journal: Path) -> list[str]:
    with Journal.read(journal) as opened:
        return [entry.said for entry in opened.entries() if entry.said is not None]


def type_and_read(process: subprocess.Popen[str], words: str) -> str:
    """Type a line; the line that is answered, empty where the program has ended."""
    assert process.stdin and process.stdout
    try:
        process.stdin.write(f"{words}\n")
        process.stdin.flush()
    except BrokenPipeError:
        return ""
    return process.stdout.readline().rstrip("\n")


# --- a full disk ---------------------------------------------------------------------------------------------------


def test_a_disk_that_fills_while_she_knits_ends_it_in_one_sentence_and_takes_nothing(
    machine: Machine, small_disk: Path
) -> None:
    journal = small_disk / "pair.sqlite"
    with machine.start("knit", machine.plan(), "--journal", journal, *TYPED) as process:
        answers = [type_and_read(process, "next")]
        filler = fill(small_disk)
        while (answer := type_and_read(process, "next")) and len(answers) < 400:
            answers.append(answer)
        rest, err = process.communicate()
    filler.unlink()

    assert (1, "") == (process.returncode, rest)
    full = f"The disk is full: nothing was written to {journal} and you are where you were, make room and say it again."
    assert [full] == err.splitlines()
    assert answers == said_in(journal)[: len(answers)]
    where = machine.run("knit", "--journal", journal, *TYPED, typed="again\n").lines[-1]
    assert where.endswith(said_in(journal)[len(answers) - 1]) or "In hand" in where
    assert 0 == machine.run("journal", "check", journal).code


def test_a_journal_that_cannot_grow_ends_it_in_one_sentence(machine: Machine) -> None:
    plan, journal = machine.plan(), machine.home / "pair.sqlite"
    assert 0 == machine.run("knit", plan, "--journal", journal, *TYPED, typed="next\n").code
    kept = said_in(journal)
    limit = no_file_longer_than(journal.stat().st_size + 4096)
    ran = machine.run("knit", "--journal", journal, *TYPED, typed="next\n" * 400, before=limit)

    assert 1 == ran.code
    assert "nothing was written to" in ran.complaint
    assert kept + ran.lines == said_in(journal)
    assert 0 == machine.run("knit", "--journal", journal, *TYPED, typed="next\n").code


def test_a_disk_full_from_the_start_begins_nothing(machine: Machine, small_disk: Path) -> None:
    filler = fill(small_disk)
    ran = machine.run("knit", machine.plan(), "--journal", small_disk / "pair.sqlite", *TYPED, typed="next\n")
    filler.unlink()

    assert (1, "") == (ran.code, ran.out)
    assert ran.complaint.startswith("The disk is full: nothing was written to")


def test_a_plan_is_written_whole_or_not_at_all(machine: Machine, small_disk: Path) -> None:
    out = small_disk / "socks.toml"
    assert 0 == machine.run("plan", *PRACTICE_OPTIONS, "--out", out).code
    before = out.read_bytes()
    fill(small_disk)
    ran = machine.run("plan", *PRACTICE_OPTIONS, "--name", "other", "--out", out)

    assert (1, "") == (ran.code, ran.out)
    full = f"{out} cannot be written (No space left on device): choose another place, or make room."
    assert full == ran.complaint
    assert before == out.read_bytes()
    assert {"socks.toml", "filler"} == {file.name for file in small_disk.iterdir()}


def test_a_plan_that_is_cut_off_leaves_the_old_one(machine: Machine) -> None:
    out = machine.plan("out.toml")
    before = out.read_bytes()
    ran = machine.run("plan", *PRACTICE_OPTIONS, "--name", "x", "--out", out, before=no_file_longer_than(100))

    assert 1 == ran.code
    assert f"{out} cannot be written (File too large): choose another place, or make room." == ran.complaint
    assert before == out.read_bytes()
    assert [out] == [file for file in machine.home.iterdir() if file.is_file()]


@pytest.mark.parametrize(("out", "code", "why"), [
    ("/dev/full", 1, "No space left on device"),
    ("nowhere/socks.toml", 2, "No such file or directory"),
    ("home", 2, "Is a directory"),
])  # fmt: skip
def test_a_place_where_no_plan_can_be_is_told(
    out: str, code: int, why: str, machine: Machine, tmp_path: Path
) -> None:
    ran = machine.run("plan", *PRACTICE_OPTIONS, "--out", out, where=tmp_path)

    assert (code, "") == (ran.code, ran.out)
    assert f"{out} cannot be written ({why}): choose another place, or make room." == ran.complaint


def test_a_voice_that_fills_the_disk_ends_it_in_one_sentence_with_the_journal_whole(machine: Machine) -> None:
    journal = machine.home / "pair.sqlite"
    options = ("--journal", journal, "--recogniser", "typed", "--to", "/dev/full")
    ran = machine.run("knit", machine.plan(), *options, typed="next\n" * 5)

    assert 1 == ran.code
    assert "/dev/full cannot be written: choose another place, or make room on the disk." == ran.complaint
    assert ran.lines == said_in(journal)
    with Journal.read(journal) as opened:
        assert SessionEnded(why="failed") == opened.entries()[-1].event


@pytest.mark.parametrize("verb", [("show", "{plan}"), ("phrases", "--json"), ("knit", "{plan}", *TYPED)])
def test_an_output_that_takes_nothing_is_told(verb: tuple[str, ...], machine: Machine) -> None:
    plan = machine.plan()
    with Path("/dev/full").open("w", encoding="utf-8") as full:
        options = (option.format(plan=plan) for option in verb)
        ran = machine.run(*options, typed="next\n", stdout=full.fileno())

    assert 1 == ran.code
    assert ran.complaint.startswith("The system refused (No space left on device): see to that and start again, ")


# --- a journal that is not to be had -------------------------------------------------------------------------------


def test_a_second_program_is_refused_and_the_first_goes_on(machine: Machine) -> None:
    plan, journal = machine.plan(), machine.home / "pair.sqlite"
    with machine.start("knit", plan, "--journal", journal, *TYPED) as first:
        answers = [first.stdout.readline().rstrip("\n") if first.stdout else ""]
        for verb in (("knit", plan), ("knit",)):
            second = machine.run(*verb, "--journal", journal, *TYPED, typed="next\n")
            assert (1, "") == (second.code, second.out)
            assert f"The journal {journal} is in use by another program: close that one first." == second.complaint
        looked = machine.run("journal", "show", journal)
        checked = machine.run("journal", "check", journal)
        rest, err = first.communicate("next\nnext\n")

    assert (0, 0, 0, "") == (first.returncode, looked.code, checked.code, err)
    assert answers + rest.splitlines() == said_in(journal)


JOURNALS: dict[str, tuple[Callable[[Path], object], int, str]] = {
    "in a folder that is a file": (
        lambda file: file.parent.write_text("in the way"),
        1,
        "The journal {file} cannot be written: change its rights, or choose another place.",
    ),
    "a folder": (
        lambda file: file.mkdir(parents=True),
        1,
        "The journal {file} cannot be written: change its rights, or choose another place.",
    ),
    "a text": (
        lambda file: (file.parent.mkdir(), file.write_text("cast on\n" * 900)),
        2,
        "{file} is not a journal: choose another file; it was not touched.",
    ),
    "a database of another kind": (
        lambda file: (file.parent.mkdir(), recipes(file)),
        2,
        "{file} is not a journal: choose another file; it was not touched.",
    ),
}


def recipes(file: Path) -> None:
    with closing(sqlite3.connect(file)) as other, other:
        other.execute("CREATE TABLE recipe (name)")


@pytest.mark.parametrize(("make", "code", "sentence"), JOURNALS.values(), ids=JOURNALS)
def test_what_cannot_be_the_journal_is_told(
    make: Callable[[Path], object], code: int, sentence: str, machine: Machine
) -> None:
    file = machine.home / "kept" / "pair.sqlite"
    make(file)
    ran = machine.run("knit", machine.plan(), "--journal", file, *TYPED, typed="next\n")

    assert (code, "", sentence.format(file=file)) == (ran.code, ran.out, ran.complaint)


def test_a_journal_of_a_newer_program_is_told(machine: Machine) -> None:
    journal = machine.home / "pair.sqlite"
    assert 0 == machine.run("knit", machine.plan(), "--journal", journal, *TYPED, typed="next\n").code
    with closing(sqlite3.connect(journal)) as other:
        other.execute("PRAGMA user_version = 7")
    for verb in (("knit", "--journal", journal, *TYPED), ("journal", "show", journal)):
        ran = machine.run(*verb)

        assert (1, "") == (ran.code, ran.out)
        assert ran.complaint.startswith(f"The journal {journal} was written by a newer program (version seven")


@pytest.mark.parametrize("verb", ["show", "check", "export"])
def test_a_journal_that_is_not_there_is_told_and_not_made(verb: str, machine: Machine) -> None:
    ran = machine.run("journal", verb, "none.sqlite")

    assert (2, "") == (ran.code, ran.out)
    assert ran.complaint.startswith("There is no journal ")
    assert ran.complaint.endswith("none.sqlite: check the name.")
    assert [] == list(machine.home.iterdir())


def test_nothing_to_resume_and_no_such_pair_are_told(machine: Machine) -> None:
    journal = machine.home / "pair.sqlite"
    nothing = machine.run("knit", "--journal", journal, *TYPED)
    begun = machine.run("knit", machine.plan(), "--journal", journal, *TYPED)
    nobody = machine.run("knit", "--journal", journal, "--pair", "gift", *TYPED)

    assert (2, "There is no pair to go on with: give a plan file.") == (nothing.code, nothing.complaint)
    assert 0 == begun.code
    assert (2, "There is no pair called “gift”: there is practice.") == (nobody.code, nobody.complaint)


# --- interrupts, and readers that go away --------------------------------------------------------------------------


@pytest.mark.parametrize("options", [TYPED, ("--from", "keys", "--to", "none"), ("--from", "keys", "--to", "out.wav")])
def test_an_interrupt_ends_it_with_130_and_the_journal_whole(options: tuple[str, ...], machine: Machine) -> None:
    journal = machine.home / "pair.sqlite"
    with machine.start("knit", machine.plan(), "--journal", journal, *options) as process:
        assert process.stdout
        answers = [process.stdout.readline().rstrip("\n") for _ in range(2)]
        process.send_signal(signal.SIGINT)
        rest, err = process.communicate(timeout=60)

    assert (130, "Interrupted. Everything is written down.\n") == (process.returncode, err)
    assert answers + rest.splitlines() == said_in(journal)[: len(answers) + len(rest.splitlines())]
    with Journal.read(journal) as opened:
        assert SessionEnded(why="interrupted") == opened.entries()[-1].event
    again = machine.run("knit", "--journal", journal, *TYPED)
    assert (0, "") == (again.code, again.err)


def test_interrupts_at_any_moment_leave_no_traceback(machine: Machine) -> None:
    journal = machine.home / "pair.sqlite"
    plan = machine.plan()
    for number in range(6):
        with machine.start("knit", plan, "--journal", journal, *TYPED) as process:
            assert process.stdin and process.stdout
            process.stdin.write("next\n" * 300)
            process.stdin.flush()
            for _ in range(1 + 3 * number):
                process.stdout.readline()
            process.send_signal(signal.SIGINT)
            rest, err = process.communicate(timeout=60)

        assert 130 == process.returncode, (err, rest)
        assert no_traceback(err)
        assert 0 == machine.run("journal", "check", journal).code


def test_a_recording_that_is_listened_to_can_be_interrupted(machine: Machine) -> None:
    pipe = machine.home / "endless.wav"
    os.mkfifo(pipe)
    with machine.start("listen", pipe) as process, pipe.open("wb") as sound:
        sound.write(b"RIFF\xff\xff\xff\xffWAVEfmt \x10\x00\x00\x00\x01\x00\x01\x00\x80\x3e\x00\x00\x00\x7d\x00\x00"
                    b"\x02\x00\x10\x00data\xff\xff\xff\xff" + bytes(32_000))  # fmt: skip
        sound.flush()
        process.send_signal(signal.SIGINT)
        out, err = process.communicate(timeout=60)

    assert (130, "", "") == (process.returncode, out, err)


@pytest.mark.parametrize("verb", [("phrases",), ("show", "{plan}"), ("journal", "show", "{journal}")])
def test_a_reader_that_goes_away_ends_it_quietly(verb: tuple[str, ...], machine: Machine) -> None:
    plan, journal = machine.plan(), machine.home / "pair.sqlite"
    assert 0 == machine.run("knit", plan, "--journal", journal, *TYPED, typed="next\n" * 60).code
    with machine.start(*(option.format(plan=plan, journal=journal) for option in verb)) as process:
        assert process.stdout and process.stderr
        process.stdout.close()
        err = process.stderr.read()

    assert (0, "") == (process.returncode, err)


def test_a_reader_that_goes_away_while_she_knits_takes_nothing(machine: Machine) -> None:
    journal = machine.home / "pair.sqlite"
    with machine.start("knit", machine.plan(), "--journal", journal, *TYPED) as process:
        assert process.stdout and process.stderr and process.stdin
        answers = [type_and_read(process, "next") for _ in range(3)]
        process.stdout.close()
        process.stdin.write("next\n" * 5)
        process.stdin.close()
        err = process.stderr.read()

    assert (0, "") == (process.returncode, err)
    assert answers == said_in(journal)[:3]
    assert 0 == machine.run("journal", "check", journal).code
