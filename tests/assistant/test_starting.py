"""The first minutes, with answers given by a script: the sound check, which pair, a new one asked for and kept."""

import io
import os
from collections.abc import Iterable, Sequence
from pathlib import Path

import numpy as np
import pytest

from assistant.dialogue import Dialogue, Lines
from assistant.inputs import Failed, Input, OutputWanted, Tick
from assistant.journal import Journal
from assistant.languages import load
from assistant.listening.ears import Ears
from assistant.starting import PATIENCE_TICKS, TRIES, check_sound, new_pair, wanted_pair
from assistant.voice import Voice
from models.recognising import Block, Heard
from plans.conversation import Problem, Reply
from plans.files import read_wishes
from plans.making import Made
from plans.wishes import Wishes
from tests.assistant.sitting import practice, said, sitting_down
from tests.assistant.test_ears import SteppedRecogniser
from tests.fakes import ListedSource, RememberingSink

FOOT = ("no", "24.5cm", "23cm", "skip", "skip", "skip", "30", "42", "skip", "skip")


class Scripted(Dialogue):
    """A dialogue whose answers are given beforehand; what it says is in `lines`."""

    def __init__(self, answers: Iterable[Input | str], ears: Ears | None = None) -> None:
        self.shown = io.StringIO()
        inputs = (said(each) if isinstance(each, str) else each for each in answers)
        super().__init__(inputs, Voice(None, RememberingSink(), lines=self.shown), load(), ears)

    @property
    def lines(self) -> list[str]:
        """All that was said."""
        return self.shown.getvalue().splitlines()


def spoken(words: str, confidence: float = 0.9) -> Heard:
    """What was heard, not typed: it has a time."""
    return Heard(words=words, confidence=confidence, began=0, ended=16_000)


# --- questions -----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("answers", "yes"), [
    (["yes"], True), (["no"], False), (["perhaps", "yes"], True), ([spoken("yes")], True), ([], False),
    ([Tick(), Tick(), OutputWanted(), "no"], False), ([spoken("potato", 0.2), "yes"], True),
])  # fmt: skip
def test_a_question_waits_for_yes_or_no(answers: Sequence[Input | str], yes: bool) -> None:
    dialogue = Scripted(answers)

    assert yes == dialogue.yes(Reply.of("keep-this"))
    assert "Shall I keep this?" == dialogue.lines[0]


def test_what_is_neither_is_told_and_asked_again() -> None:
    dialogue = Scripted(["perhaps", "yes"])
    dialogue.yes(Reply.of("keep-this"))

    assert ["Shall I keep this?", "Please say yes or no.", "Shall I keep this?"] == dialogue.lines


def test_talk_is_no_answer_and_is_met_with_silence() -> None:
    dialogue = Scripted([spoken("[unk]", 0.3), spoken("yes")])

    assert dialogue.yes(Reply.of("keep-this"))
    assert ["Shall I keep this?"] == dialogue.lines


def test_a_device_that_fails_is_told_and_the_question_stays() -> None:
    dialogue = Scripted([Failed(Problem.of("device-lost", name="Headset")), "yes"])

    assert dialogue.yes(Reply.of("keep-this"))
    assert dialogue.lines[1].startswith("The sound device Headset is gone")


def test_patience_ends_after_so_many_quiet_spells() -> None:
    dialogue = Scripted([Tick(), Tick(), "next"])

    assert dialogue.ask(Reply.of("say-next"), ("next",), ticks=2) is None
    assert dialogue.ask(Reply.of("say-next"), ("next",), ticks=2) is not None


# --- the sound check -----------------------------------------------------------------------------------------------


def tone_blocks(amplitude: float, noise: float = 1.0) -> list[Block]:
    """A second of a room, then a second of speech of that amplitude, as marked blocks."""
    chance = np.random.default_rng(3)
    room = chance.normal(0, noise, 16_000)
    speech = np.sin(np.arange(16_000) * 2 * np.pi * 300 / 16_000) * amplitude + room
    return [
        Block(0, np.clip(room, -32_768, 32_767).astype(np.int16), speech=False),
        Block(16_000, np.clip(speech, -32_768, 32_767).astype(np.int16), speech=True),
    ]


class Watched(Scripted):
    """A sound check at ears that hear these blocks before each answer."""

    def __init__(self, answers: Iterable[Input | str], blocks: Sequence[Block]) -> None:
        self.ears = Ears(ListedSource([]), lambda block: (block,), SteppedRecogniser())

        def listening() -> Iterable[Input | str]:
            for answer in answers:
                for block in blocks:
                    self.ears.watch(block)
                yield answer

        super().__init__(listening(), self.ears)


def test_next_at_a_good_level_is_fine() -> None:
    dialogue = Watched([spoken("next")], tone_blocks(6_000))

    assert check_sound(dialogue, dialogue.ears)
    assert ["Please say: next.", "I hear you well."] == dialogue.lines


@pytest.mark.parametrize(("blocks", "told"), [
    (tone_blocks(40), "I can hardly hear you"), (tone_blocks(60_000), "That is too loud for the microphone"),
    (tone_blocks(3_000, noise=1_500), "It is too noisy here"), ([], "I heard nothing"),
])  # fmt: skip
def test_a_bad_level_is_told_with_its_cure_and_asked_again(blocks: list[Block], told: str) -> None:
    dialogue = Watched([spoken("next")] * TRIES, blocks)

    assert not check_sound(dialogue, dialogue.ears)
    assert TRIES == dialogue.lines.count("Please say: next.")
    assert TRIES == sum(line.startswith(told) for line in dialogue.lines)


def test_hearing_nothing_at_all_is_told_after_a_while() -> None:
    dialogue = Watched([Tick()] * (PATIENCE_TICKS * TRIES), [])

    assert not check_sound(dialogue, dialogue.ears)
    assert TRIES == dialogue.lines.count("I heard nothing: is the microphone on?")


def test_the_check_can_be_skipped_and_typed() -> None:
    skipped = Watched([spoken("skip")], tone_blocks(6_000))
    typed = Watched(["next"], [])

    assert check_sound(skipped, skipped.ears)
    assert "The sound check is left out." == skipped.lines[-1]
    assert check_sound(typed, typed.ears)


def test_a_microphone_that_hears_nothing_is_given_up_for_the_next_one() -> None:
    others = ["Desk", "Collar"]
    dialogue = Watched([Tick()] * PATIENCE_TICKS * 2 + ["next"], [])
    tried: list[Ears] = []

    def another(ears: Ears) -> tuple[str, Ears] | None:
        tried.append(ears)
        return (others.pop(0), Ears(ListedSource([]), lambda block: (block,), SteppedRecogniser())) if others else None

    assert check_sound(dialogue, dialogue.ears, another)
    assert ["I try another microphone: Desk.", "I try another microphone: Collar.", "I hear you well."] == [
        line for line in dialogue.lines if "say: next" not in line and "heard nothing" not in line
    ]
    assert 2 == len({*map(id, tried)})


def test_when_all_microphones_hear_nothing_it_ends() -> None:
    others = ["Desk"]
    dialogue = Watched([Tick()] * PATIENCE_TICKS * (2 * TRIES), [])

    def another(ears: Ears) -> tuple[str, Ears] | None:
        return (others.pop(), ears) if others else None

    assert not check_sound(dialogue, dialogue.ears, another)
    assert TRIES + 1 == dialogue.lines.count("I heard nothing: is the microphone on?")


# --- which pair ----------------------------------------------------------------------------------------------------


def test_with_no_pair_nothing_is_asked(tmp_path: Path) -> None:
    dialogue = Scripted(["yes"])
    with Journal.open(tmp_path / "j.sqlite") as journal:
        assert wanted_pair(dialogue, journal) is None
    assert [] == dialogue.lines


@pytest.mark.parametrize(("answer", "wanted"), [("yes", "practice"), ("no", None)])
def test_the_last_pair_is_offered_by_name(answer: str, wanted: str | None, tmp_path: Path) -> None:
    dialogue = Scripted([answer])
    with sitting_down(tmp_path / "j.sqlite") as table:
        assert wanted == wanted_pair(dialogue, table.journal)
    assert ["Go on with practice? Say no for a new pair."] == dialogue.lines


@pytest.mark.parametrize(("answers", "wanted"), [
    (["yes"], "gift"), (["no", spoken("two")], "winter socks"), (["no", "one"], "practice"), (["no", "skip"], None),
    (["no", "Winter"], "winter socks"), (["no", "seven", "1"], "practice"), (["no", "aunt", "i don't know"], None),
    (["no"], None), ([], None), (["no", spoken("winter"), spoken("one")], "practice"),
])  # fmt: skip
def test_of_several_pairs_any_is_taken_by_its_number_or_name(
    answers: Sequence[Input | str], wanted: str | None, tmp_path: Path
) -> None:
    dialogue = Scripted(answers)
    for name in ("winter socks", "practice", "gift"):
        with sitting_down(tmp_path / "j.sqlite", made=practice(name=name)) as table:
            table.hear("next")
    with Journal.open(tmp_path / "j.sqlite") as journal:
        assert wanted == wanted_pair(dialogue, journal)

    assert "Go on with gift? Say no for another pair, or a new one." == dialogue.lines[0]
    if len(answers) > 1:
        question = "Which pair: one, practice; two, winter socks? Say its number, or “skip” for a new pair."
        assert question == dialogue.lines[1]


# --- a new pair ----------------------------------------------------------------------------------------------------


def wishes_in(folder: Path, name: str = "socks") -> Wishes:
    wishes = read_wishes((folder / f"{name}.toml").read_text(encoding="utf-8"))
    assert isinstance(wishes, Wishes)
    return wishes


def test_a_pair_is_asked_for_proven_and_its_plan_kept(tmp_path: Path) -> None:
    folder = tmp_path / "plans"
    dialogue = Scripted([*FOOT, "yes"])
    made = new_pair(dialogue, folder, ())

    assert isinstance(made, Made)
    assert "socks" == made.plan.name
    assert ("24.5cm", "23cm", None) == tuple(
        None if value is None else str(value)
        for value in (wishes_in(folder).foot_length, wishes_in(folder).ball, wishes_in(folder).leg)
    )
    assert f"The plan is written to {folder}/socks.toml." == dialogue.lines[-1]
    assert dialogue.lines[0].startswith("A new pair. I ask, you answer; say “skip” for what you do not know")


def test_all_of_it_can_be_spoken(tmp_path: Path) -> None:
    answers = ("no", "twenty four and a half centimetres", "twenty three centimetres", "skip", "i don't know", "skip",
               "thirty", "forty two rounds", "skip", "fifty grams", "two hundred and ten metres", "two",
               "yes")  # fmt: skip
    made = new_pair(Scripted([spoken(words) for words in answers]), tmp_path, ())

    assert isinstance(made, Made)
    assert "24.5cm" == str(wishes_in(tmp_path).foot_length)
    assert ("50g", "210m", 2) == (str(wishes_in(tmp_path).skein), str(wishes_in(tmp_path).skein_length),
                                  wishes_in(tmp_path).skeins)  # fmt: skip


def test_what_is_estimated_is_said_before_it_is_kept(tmp_path: Path) -> None:
    dialogue = Scripted([*FOOT, "yes"])
    new_pair(dialogue, tmp_path, ())

    kept = dialogue.lines.index("Shall I keep this?")
    assert any("ankle was estimated" in line for line in dialogue.lines[:kept])


def test_a_practice_pair_needs_two_numbers(tmp_path: Path) -> None:
    made = new_pair(Scripted(["yes", "22", "30", "yes"]), tmp_path, ())

    assert isinstance(made, Made)
    assert 24 == made.plan.around


def test_what_cannot_be_knitted_is_told_and_asked_again(tmp_path: Path) -> None:
    dialogue = Scripted(["no", "90cm", "23cm", "skip", "skip", "skip", "30", "42", "skip", "skip", *FOOT[1:], "yes"])
    made = new_pair(dialogue, tmp_path, ())

    assert isinstance(made, Made)
    assert any("ninety centimetres, is not between" in line for line in dialogue.lines)
    assert 1 == dialogue.lines.count("Do you want a small practice pair, for any yarn?")


def test_a_gauge_of_zero_is_told_and_asked_again(tmp_path: Path) -> None:
    dialogue = Scripted(["yes", "0", "30", "22", "30", "yes"])

    assert isinstance(new_pair(dialogue, tmp_path, ()), Made)
    assert "The swatch's stitches cannot be zero: count the swatch." in dialogue.lines


def test_what_is_not_to_be_kept_is_asked_anew(tmp_path: Path) -> None:
    made = new_pair(Scripted(["yes", "22", "30", "no", *FOOT, "yes"]), tmp_path, ())

    assert isinstance(made, Made)
    assert not wishes_in(tmp_path).practice
    assert ["socks.toml"] == [file.name for file in tmp_path.iterdir()]


def test_a_number_heard_wrong_is_taken_back_by_voice(tmp_path: Path) -> None:
    by_voice = ("no", "twenty four centimetres", "undo", "help", "again", "twenty five centimetres")
    dialogue = Scripted([*(spoken(words) for words in by_voice), *FOOT[2:], "yes"])

    assert isinstance(new_pair(dialogue, tmp_path, ()), Made)
    assert "25cm" == str(wishes_in(tmp_path).foot_length)
    asked = "What is the foot length, from heel to longest toe? It was twenty-four centimetres"
    assert 3 == sum(line.startswith(asked) for line in dialogue.lines)


def test_what_is_not_kept_is_asked_again_and_can_be_left_as_it_was(tmp_path: Path) -> None:
    dialogue = Scripted([*FOOT, "no", "no", "next", "22cm", *["next"] * 7, "yes"])

    assert isinstance(new_pair(dialogue, tmp_path, ()), Made)
    wishes = wishes_in(tmp_path)
    assert ("24.5cm", "22cm", "30", "42") == (
        str(wishes.foot_length), str(wishes.ball), str(wishes.swatch.stitches), str(wishes.swatch.rounds),
    )  # fmt: skip
    assert "How high shall the leg be, cuff included? It was left out; say “next” to leave it so." in dialogue.lines


@pytest.mark.parametrize("answers", [(), FOOT[:1], FOOT[:6], FOOT])
def test_answers_that_end_early_keep_nothing(answers: tuple[str, ...], tmp_path: Path) -> None:
    made = new_pair(Scripted(answers), tmp_path / "plans", ())

    assert made is None or "keep" in str(made)
    assert not (tmp_path / "plans").exists()


def test_no_plan_file_and_no_pair_is_written_over(tmp_path: Path) -> None:
    mine = tmp_path / "socks 2.toml"
    mine.write_text("mine")
    names = []
    for _ in range(2):
        made = new_pair(Scripted(["yes", "22", "30", "yes"]), tmp_path, ("socks",))
        assert isinstance(made, Made)
        names.append(made.plan.name)

    assert ["socks 3", "socks 4"] == names
    assert "mine" == mine.read_text()


def test_a_plan_that_cannot_be_written_is_told_and_the_pair_goes_on(tmp_path: Path) -> None:
    (tmp_path / "plans").write_text("in the way")
    dialogue = Scripted(["yes", "22", "30", "yes"])

    assert isinstance(new_pair(dialogue, tmp_path / "plans", ()), Made)
    assert dialogue.lines[-1].startswith(f"{tmp_path}/plans/socks.toml cannot be written (")


# --- typed lines ---------------------------------------------------------------------------------------------------


def test_lines_are_taken_as_they_are_typed_and_blank_ones_left_out() -> None:
    out, typed = os.pipe()
    os.write(typed, b"yes\n\n  24.5cm \nwithout end")
    os.close(typed)

    assert ["yes", "24.5cm", "without end"] == [line.words for line in Lines(out)]
    os.close(out)


def test_lines_go_on_where_they_were_left_until_they_are_closed() -> None:
    out, typed = os.pipe()
    lines = Lines(out)
    os.write(typed, b"one\ntwo\nthree\n")
    first = next(iter(lines)).words
    second = next(iter(lines)).words
    lines.close()

    assert ("one", "two", []) == (first, second, list(lines))
    os.close(typed)
    os.close(out)


def test_a_line_that_is_no_text_is_taken_as_far_as_it_is() -> None:
    out, typed = os.pipe()
    os.write(typed, b"caf\xe9\n")
    os.close(typed)

    assert ["caf\N{REPLACEMENT CHARACTER}"] == [line.words for line in Lines(out)]
    os.close(out)
