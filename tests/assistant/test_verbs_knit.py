"""A pair called by `knit`: typed words and keys, what is printed where, what is kept, how it goes on."""

import json
import wave
from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import pytest

from assistant.command_line import run
from assistant.journal import Entry, Journal
from assistant.journal_events import SessionBegan, SessionEnded
from plans.conversation import Standing
from plans.files import write_wishes
from plans.pattern import BindOff, Heel
from plans.quantities import Length
from plans.wishes import Swatch, Wishes
from tests.assistant.running import Machine, Ran
from tests.assistant.sitting import PRACTICE

ADULT = Wishes(
    name="hers",
    swatch=Swatch(stitches=Fraction(30), rounds=Fraction(42)),
    foot_length=Length.parse("24.5cm"),
    ball=Length.parse("23.7cm"),
)
TYPED = ("--recogniser", "typed", "--from", "-", "--to", "none")


@pytest.fixture
def machine(tmp_path: Path) -> Machine:
    return Machine(tmp_path)


def entries(machine: Machine) -> tuple[Entry, ...]:
    with Journal.read(machine.journal) as journal:
        return journal.entries()


def kinds(machine: Machine) -> list[str]:
    return [entry.event.kind for entry in entries(machine)]


def test_typed_words_go_through_the_same_understanding_and_end_at_the_end_of_input(machine: Machine) -> None:
    typed = "next\nNext, please!\n\nwhere am i\nI think we should go on next week\npotato\nundo\n"
    ran = machine.run("knit", machine.plan(), *TYPED, typed=typed)

    heard = [entry.heard for entry in entries(machine) if entry.heard is not None]
    assert (0, "") == (ran.code, ran.err)
    assert ["next", "where am i", "undo"] == [words for words in heard if "please" not in words]
    assert 2 == kinds(machine).count("advanced")
    assert SessionEnded(why="end_of_input") == entries(machine)[-1].event


def test_a_script_that_ends_without_stop_ends_silently(machine: Machine) -> None:
    ran = machine.run("knit", machine.plan(), *TYPED, typed="next")

    assert ran.lines[-1].startswith("Second sock") or "sock" in ran.lines[-1]
    assert "oodbye" not in ran.out


def test_standard_output_holds_the_spoken_lines_and_nothing_else(machine: Machine) -> None:
    typed = "next\nhow many\nhow far\nhow long\nhelp\nlouder\nmark\nmarks\nfiner\ncoarser\nback two rounds\nundo\n"
    ran = machine.run("knit", machine.plan(), *TYPED, typed=typed)

    assert ran.lines == [entry.said for entry in entries(machine) if entry.said is not None]
    assert "" == ran.err


def test_typed_words_name_no_keys_and_keys_do(machine: Machine) -> None:
    typed = machine.run("knit", machine.plan(), *TYPED, typed="help\n")
    pressed = machine.run("knit", "--from", "keys", "--to", "none", typed="?")

    assert "Keys: space is next" not in typed.lines[-1]
    assert "Keys: space is next" in pressed.lines[-1]


def test_keys_drive_it_to_the_end_of_their_input(machine: Machine) -> None:
    ran = machine.run("knit", machine.plan(), "--from", "keys", "--to", "none", typed="  uwh4i")

    assert (0, "") == (ran.code, ran.err)
    assert ["advanced", "advanced", "undone", "told", "told", "counted"] == [
        kind for kind in kinds(machine) if kind in {"advanced", "undone", "counted"}
    ][:2] + kinds(machine)[-5:-1]


def test_without_a_file_the_last_pair_is_resumed_where_it_was(machine: Machine) -> None:
    machine.run("knit", machine.plan(), *TYPED, typed="next\n" * 9)
    place = _place(machine)
    ran = machine.run("knit", *TYPED, typed="where am i\n")

    assert (0, "") == (ran.code, ran.err)
    assert ran.lines[0].startswith("Practice.")
    assert place == _place(machine)


def _place(machine: Machine) -> Standing:
    with Journal.read(machine.journal) as journal:
        return next(now for event in reversed(journal.events()) if (now := getattr(event, "now", None)))


def test_pairs_are_told_apart_by_name(machine: Machine) -> None:
    machine.run("knit", machine.plan("practice.toml"), *TYPED, typed="next\n")
    gift = _written(machine, "gift.toml", name="gift")
    machine.run("knit", gift, *TYPED, typed="next\n" * 4)
    again = machine.run("knit", "--pair", "practice", *TYPED)

    assert again.lines[0].startswith("Practice.")
    assert {"practice", "gift"} == {entry.pair for entry in entries(machine)}


def _written(machine: Machine, to: str, **changes: object) -> Path:
    file = machine.home / to
    wishes = Wishes.model_validate({**dict(PRACTICE), **changes})
    file.write_text(write_wishes(wishes), encoding="utf-8")
    return file


@pytest.mark.parametrize(("odd", "first_words"), [
    ("a pair\nof mine", "A pair of mine begins."), ("\x1b[31mred", "[31mred begins."), ("größe", "Größe begins."),
    ("x" * 300, "X" + "x" * 299 + " begins."),
])  # fmt: skip
def test_an_odd_name_is_one_line_that_moves_no_cursor(odd: str, first_words: str, machine: Machine) -> None:
    ran = machine.run("knit", _written(machine, "odd.toml", name=odd), *TYPED)

    assert (0, first_words) == (ran.code, ran.lines[0])
    assert all(line.isprintable() for line in ran.lines)
    assert {odd} == {entry.pair for entry in entries(machine)}
    assert 0 == machine.run("knit", "--pair", odd, *TYPED).code


def test_an_edited_plan_is_noticed_and_the_old_one_goes_on(machine: Machine) -> None:
    machine.run("knit", machine.plan(), *TYPED, typed="next\n" * 5)
    ran = machine.run("knit", _written(machine, "socks.toml", heel=Heel.GERMAN), *TYPED)

    edited = "The plan file of practice was edited since the pair was begun, and nothing knitted so far differs."
    assert (0, f"{edited} Go on with the plan as it was?") == (ran.code, ran.lines[0])
    assert "replanned" not in kinds(machine)


def test_an_edited_plan_that_differs_in_what_is_knitted_is_not_even_offered(machine: Machine) -> None:
    machine.run("knit", machine.plan(), *TYPED, typed="next\n" * 90)
    ran = machine.run("knit", _written(machine, "socks.toml", heel=Heel.GERMAN), *TYPED, typed="no\nnext\n")

    edited = "The plan file of practice was edited since the pair was begun: I go on with the plan as it was."
    assert (0, edited) == (ran.code, ran.lines[0])
    assert "replanned" not in kinds(machine)


def test_an_edited_plan_is_taken_where_she_says_so(machine: Machine) -> None:
    machine.run("knit", machine.plan(), *TYPED, typed="next\n" * 5)
    ran = machine.run("knit", _written(machine, "socks.toml", bind_off=BindOff.SEWN), *TYPED, typed="no\n")

    assert 0 == ran.code
    assert "nothing knitted so far differs: I go on with the new one. Practice." in ran.lines[1]
    assert 1 == kinds(machine).count("replanned")


def test_an_edited_plan_is_taken_with_yes_where_no_knitted_row_differs(machine: Machine) -> None:
    machine.run("knit", machine.plan(), *TYPED, typed="next\n" * 5)
    ran = machine.run("knit", _written(machine, "socks.toml", bind_off=BindOff.SEWN), *TYPED, "--yes")

    assert 0 == ran.code
    assert ran.lines[0].endswith("nothing knitted so far differs: I go on with the new one.")
    assert 1 == kinds(machine).count("replanned")


def test_a_plan_made_anew_by_the_tape_is_not_taken_for_an_edited_file_and_stays_in_one(machine: Machine) -> None:
    hers = machine.home / "hers.toml"
    hers.write_text(write_wishes(ADULT), encoding="utf-8")
    machine.run("knit", hers, *TYPED, "--yes", typed="next\n" * 60 + "the foot is eight and a half centimetres\n")
    planned = _place(machine)
    ran = machine.run("knit", hers, *TYPED, "--yes", typed="next\n")
    measured = (kinds(machine).count("replanned"), _place(machine).plan)
    hers.write_text(write_wishes(ADULT.model_copy(update={"bind_off": BindOff.SEWN})), encoding="utf-8")
    asked = machine.run("knit", hers, *TYPED, typed="no\n")
    again = machine.run("knit", hers, *TYPED)
    hers.write_text(write_wishes(ADULT.model_copy(update={"swatch": Swatch(stitches=30, rounds=40)})), "utf-8")
    lost = machine.run("knit", hers, *TYPED)

    assert measured == (1, planned.plan)
    assert not any("edited" in line for line in (*ran.lines, *again.lines))
    assert "the rounds that you measured stay in it. Go on with the plan as it was?" in asked.lines[0]
    assert any("I go on with the new one, in the rounds that you measured." in line for line in asked.lines)
    assert "but what you measured is lost in it. Go on" in lost.lines[0]
    assert [ran.code, asked.code, again.code, lost.code] == [0] * 4
    assert 2 == kinds(machine).count("replanned")


def test_yes_answers_every_question(machine: Machine) -> None:
    words = "next\n" * 30 + "i am at round two\nripped back to the toe\nstop for today\nnext\n"
    asked = machine.run("knit", machine.plan(), *TYPED, "--pair", "asked", typed=words)
    answered = machine.run("knit", machine.plan(), *TYPED, "--pair", "answered", "--yes", typed=words)

    def of(pair: str) -> list[str]:
        return [entry.event.kind for entry in entries(machine) if entry.pair == pair]

    assert (0, 0) == (asked.code, answered.code)
    assert "place_set" not in of("asked")
    assert 2 == of("answered").count("place_set")
    assert ["stopped", "session_ended"] == of("answered")[-2:]


@pytest.mark.parametrize("grain", ["follow", "group", "half", "side", "round"])
def test_the_grain_is_set_from_the_start(grain: str, machine: Machine) -> None:
    ran = machine.run("knit", machine.plan(), *TYPED, "--grain", grain, typed="next\n" * 25)
    set_to = [getattr(entry.event, "grain", None) for entry in entries(machine) if entry.event.kind == "grain_set"]

    assert (0, [grain]) == (ran.code, set_to)
    assert 25 == kinds(machine).count("advanced")


def test_finer_grains_take_more_steps(machine: Machine) -> None:
    reached = {}
    for grain in ("group", "half", "side", "round"):
        machine.run("knit", machine.plan(), *TYPED, "--grain", grain, "--pair", grain, typed="next\n" * 40)
        with Journal.read(machine.journal) as journal:
            reached[grain] = max(
                event.now.first.row_index for event in journal.events(grain) if event.kind == "advanced"
            )

    assert sorted(reached.values()) == list(reached.values())
    assert reached["group"] < reached["side"] < reached["round"]


def test_what_ran_is_in_the_journal(machine: Machine) -> None:
    machine.run("knit", machine.plan(), *TYPED)

    assert SessionBegan(recogniser="typed", language="en") == entries(machine)[0].event


def test_answers_go_into_a_wav_at_their_times(machine: Machine) -> None:
    answers = machine.home / "answers.wav"
    options = ("--recogniser", "typed", "--to", answers)
    ran = machine.run("knit", machine.plan(), *options, typed="next\nhow many\n")

    assert (0, "") == (ran.code, ran.err)
    with wave.open(str(answers)) as file:
        assert file.getnframes() / file.getframerate() > 5


def test_a_named_journal_is_used_and_its_folder_made(machine: Machine) -> None:
    journal = machine.home / "new" / "folder" / "pair.sqlite"
    ran = machine.run("knit", machine.plan(), "--journal", journal, *TYPED, typed="next\n")

    assert 0 == ran.code
    assert journal.exists()
    assert not machine.journal.exists()


@pytest.mark.parametrize("wrong", [
    lambda file: file.write_text("[", encoding="utf-8"),
    lambda file: file.write_text("words_a_minute = 5", encoding="utf-8"),
    lambda file: file.write_bytes(b"\xff\xfe"),
])  # fmt: skip
def test_damaged_settings_are_set_aside_and_told_about_once(
    wrong: Callable[[Path], object], machine: Machine
) -> None:
    file = machine.home / "config" / "roundcaller" / "settings.toml"
    file.parent.mkdir(parents=True)
    wrong(file)
    first = machine.run("knit", machine.plan(), *TYPED, typed="next\n")
    second = machine.run("knit", *TYPED, typed="next\n")

    assert (0, 0) == (first.code, second.code)
    assert first.complaint.startswith(f"The settings in {file} are damaged and were put aside as {file}.damaged-1")
    assert "" == second.err


def test_the_journal_of_typed_words_is_the_same_every_time(machine: Machine) -> None:
    words = "next\nnext\nhow many\nundo\nmark\nnext\n"
    told = []
    for name in ("one", "two"):
        journal = machine.home / f"{name}.sqlite"
        machine.run("knit", machine.plan(), "--journal", journal, *TYPED, typed=words)
        exported = machine.run("journal", "export", journal, "--json")
        told.append([_timeless(json.loads(line)) for line in exported.lines])

    assert told[0] == told[1]


def _timeless(line: dict[str, object]) -> dict[str, object]:
    return {name: value for name, value in line.items() if name != "at_ms"}


def test_a_whole_pair_is_typed_through(machine: Machine) -> None:
    ran = machine.run("knit", machine.plan(), *TYPED, typed="next\n" * 220)
    at = next(number for number, line in enumerate(ran.lines) if line.startswith("That was the last of it"))

    assert (0, "") == (ran.code, ran.err)
    assert {"Both socks are done; there is nothing after this."} == set(ran.lines[at + 1 :])
    assert 0 == machine.run("journal", "check", machine.journal).code
    done = machine.run("knit", *TYPED)
    assert ["Practice: both socks are done."] == done.lines


def test_in_process_it_does_the_same(machine: Machine, capsys: pytest.CaptureFixture[str]) -> None:
    plan = machine.plan()
    journal = machine.home / "here.sqlite"
    code = run(["knit", str(plan), "--journal", str(journal), "--from", "keys", "--to", "/dev/null/x.wav"])

    assert 1 == code
    assert Ran(1, "", capsys.readouterr().err).err.startswith("/dev/null/x.wav cannot be written")
