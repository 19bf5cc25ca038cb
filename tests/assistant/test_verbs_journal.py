"""A journal looked at, checked, handed on and rescued, from the command line."""

import json
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from assistant.command_line import run
from assistant.journal import Journal
from plans.json_form import as_json
from plans.making import Made, make_plan
from tests.assistant.running import Ran
from tests.assistant.sitting import PRACTICE, practice, sitting_down

FIELDS = {"seq", "at_ms", "stream_ms", "kind", "sock", "row", "group", "heard", "said"}
WORDS = ("next", "next", "where am i", "undo", "i have four", "mark", "faster", *("next",) * 30)


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """A journal in which a practice pair was begun."""
    path = tmp_path / "pair.sqlite"
    with sitting_down(path) as table:
        table.hear(*WORDS)
    return path


def journal(capsys: pytest.CaptureFixture[str], *arguments: object) -> Ran:
    capsys.readouterr()
    code = run(["journal", *map(str, arguments)])
    caught = capsys.readouterr()
    return Ran(code, caught.out, caught.err)


@pytest.mark.parametrize("verb", [("export", "--json"), ("export",), ("export", "--as", "json"), ("show", "--json")])
def test_json_lines_hold_every_event_in_order_with_the_fields_agreed(
    verb: tuple[str, ...], file: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    ran = journal(capsys, *verb, file)
    lines = [json.loads(line) for line in ran.lines]

    with Journal.read(file) as opened:
        held = [(entry.seq, entry.event.kind, entry.heard, entry.said) for entry in opened.entries()]
    assert (0, "") == (ran.code, ran.err)
    assert held == [(line["seq"], line["kind"], line["heard"], line["said"]) for line in lines]
    assert all(FIELDS <= line.keys() for line in lines)
    assert list(range(1, len(lines) + 1)) == [line["seq"] for line in lines]


def test_json_lines_tell_a_place_that_the_plan_has(file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    made = make_plan(PRACTICE)
    assert isinstance(made, Made)
    rows = as_json(made.plan)["rows"]
    advanced = [line for line in map(json.loads, journal(capsys, "export", file).lines) if line["kind"] == "advanced"]

    assert len(advanced) == WORDS.count("next")
    for line in advanced:
        row = rows[line["row"]]
        assert (line["sock"], line["half"]) == (row["sock"], row["half"])
        assert isinstance(line["group"], int)


def test_kinds_name_what_happened_in_the_past_tense(file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    kinds = {json.loads(line)["kind"] for line in journal(capsys, "export", file).lines}

    assert {"begun", "advanced", "undone", "counted", "marked", "told", "rate_set"} == kinds


def test_shown_it_is_one_event_a_line(file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    ran = journal(capsys, "show", file)

    assert (0, "") == (ran.code, ran.err)
    assert [line.split(";")[0] for line in ran.lines] == [str(number) for number in range(1, len(ran.lines) + 1)]
    assert any("advanced; cast-on 1, sock 2 front; heard “next”; said “" in line for line in ran.lines)


def test_a_sound_journal_is_said_to_be(file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    with Journal.read(file) as opened:
        count = opened.last_seq
    ran = journal(capsys, "check", file)
    as_json_ = journal(capsys, "check", file, "--json")

    assert (0, f"{file}: {count} events, all of them readable.\n", "") == (ran.code, ran.out, ran.err)
    assert {"events": count, "problems": []} == json.loads(as_json_.out)


@pytest.mark.parametrize(("form", "begins"), [("vtt", "WEBVTT"), ("chapters", "WEBVTT")])
def test_a_cue_sheet_is_written(form: str, begins: str, file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    ran = journal(capsys, "export", file, "--as", form)

    assert (0, "") == (ran.code, ran.err)
    assert ran.out.startswith(begins)
    assert "-->" in ran.out


def test_a_take_that_there_is_none_is_told(file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    ran = journal(capsys, "export", file, "--as", "vtt", "--take", 9)

    assert (2, "") == (ran.code, ran.out)
    assert ran.complaint.startswith("There is no take 9: choose from 1 to ")


def test_an_empty_journal_can_be_shown_and_exported(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "empty.sqlite"
    Journal.open(path).close()
    for verb in (("show",), ("export",), ("export", "--as", "vtt"), ("check",)):
        assert 0 == journal(capsys, *verb, path).code


def torn(file: Path) -> Path:
    """The journal with a page of it lost."""
    with sitting_down(file, made=practice()) as table:
        table.hear(*("where am i",) * 200)
    with closing(sqlite3.connect(file)) as connection:
        connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    content = bytearray(file.read_bytes())
    middle = len(content) // 4096 * 3 // 4 * 4096
    content[middle : middle + 4096] = b"\xff" * 4096
    file.write_bytes(content)
    return file


def test_a_damaged_journal_gives_what_can_be_read_then_says_so(
    file: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    torn(file)
    for verb in ("show", "export"):
        ran = journal(capsys, verb, file)

        assert 1 == ran.code
        assert len(ran.lines) > 20
        assert ran.complaint.startswith(f"The journal {file} is damaged; ")


def test_a_damaged_journal_fails_its_check(file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    ran = journal(capsys, "check", torn(file))
    as_json_ = journal(capsys, "check", file, "--json")

    assert (1, "") == (ran.code, ran.out)
    assert ran.err.startswith("The database is damaged")
    assert 1 == as_json_.code
    assert "check-file" in {problem["key"] for problem in json.loads(as_json_.out)["problems"]}


def test_what_can_be_read_is_rescued_into_a_new_journal(
    file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = torn(file).read_bytes()
    rescued = tmp_path / "rescued.sqlite"
    ran = journal(capsys, "rescue", file, rescued)
    again = journal(capsys, "rescue", file, rescued)

    assert (0, "") == (ran.code, ran.err)
    assert 0 == journal(capsys, "show", rescued).code
    assert before == file.read_bytes()
    assert (2, "") == (again.code, again.out)
    assert str(rescued) in again.complaint
