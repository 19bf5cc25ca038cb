"""Voice and ears are set by commands: state and command in, event and reply out, ends not passed over."""

import typing

import pytest

from assistant.journal_events import AttentionSet, Paused, RateSet, Rested, Resumed, Told, VolumeSet
from assistant.languages import load
from assistant.manners import Managed, Manners, manage
from assistant.ports import FASTEST_WPM, SLOWEST_WPM, SOFTEST, VoiceSettings
from assistant.session_commands import (
    Attend,
    AttentionOff,
    AttentionOn,
    Faster,
    Help,
    HowLong,
    ListenAgain,
    Louder,
    PauseListening,
    Rest,
    SessionCommand,
    Slower,
    Softer,
)
from assistant.speaking.wording import word
from plans.conversation import Reply

LONG = Reply.of("time-about", duration=Reply.of("duration-half-hour"))
QUIET = Manners(voice=VoiceSettings(volume=0.5))


def managed(command: SessionCommand, manners: Manners = Manners()) -> Managed:  # noqa: B008
    return manage(manners, command, word="hello socks", how_long=lambda: LONG)


@pytest.mark.parametrize(("command", "percent", "key"), [(Louder(), 70, "louder"), (Softer(), 30, "softer")])
def test_louder_and_softer_are_steps_that_are_written_down(command: SessionCommand, percent: int, key: str) -> None:
    done = managed(command, QUIET)

    assert VolumeSet(percent=percent) == done.event
    assert Reply.of(key) == done.reply
    assert percent == round(100 * done.manners.voice.volume)


@pytest.mark.parametrize(("command", "change", "key"), [(Faster(), 20, "faster"), (Slower(), -20, "slower")])
def test_faster_and_slower_are_steps_that_are_written_down(command: SessionCommand, change: int, key: str) -> None:
    before = Manners()
    done = managed(command, before)

    assert before.voice.rate_wpm + change == done.manners.voice.rate_wpm
    assert RateSet(words_per_minute=done.manners.voice.rate_wpm) == done.event
    assert Reply.of(key) == done.reply


@pytest.mark.parametrize(("command", "key", "setting", "end"), [
    (Louder(), "loudest", "volume", 1.0), (Softer(), "softest", "volume", SOFTEST),
    (Faster(), "fastest", "rate_wpm", FASTEST_WPM), (Slower(), "slowest", "rate_wpm", SLOWEST_WPM),
])  # fmt: skip
def test_at_its_end_a_setting_says_so_and_stays(
    command: SessionCommand, key: str, setting: str, end: float
) -> None:
    manners = Manners()
    for _ in range(40):
        manners = managed(command, manners).manners
    done = managed(command, manners)

    assert end == getattr(done.manners.voice, setting)
    assert manners == done.manners
    assert Reply.of(key) == done.reply


def test_pausing_and_listening_again() -> None:
    paused = managed(PauseListening())
    again = managed(ListenAgain(), paused.manners)
    needless = managed(ListenAgain())

    assert (False, Paused(), Reply.of("listening-paused")) == (paused.manners.listening, paused.event, paused.reply)
    assert (True, Resumed(), Reply.of("listening-again")) == (again.manners.listening, again.event, again.reply)
    assert Reply.of("listening") == needless.reply


def test_the_attention_word_is_switched_on_and_off_by_voice() -> None:
    on = managed(AttentionOn())
    attending = managed(Attend(), on.manners)
    off = managed(AttentionOff(), attending.manners)

    assert (AttentionSet(on=True), Reply.of("attention-on", word="hello socks")) == (on.event, on.reply)
    assert (True, False) == (on.manners.attention, on.manners.attending)
    assert (True, Told(command="attend"), Reply.of("attending")) == (
        attending.manners.attending, attending.event, attending.reply,
    )  # fmt: skip
    assert (AttentionSet(on=False), Manners()) == (off.event, off.manners)


@pytest.mark.parametrize(("command", "event", "reply"), [
    (Help(), Told(command="help"), Reply.of("help")), (HowLong(), Told(command="how_long"), LONG),
    (Rest(), Rested(), Reply.of("resting")),
])  # fmt: skip
def test_questions_and_rests_change_no_manners(command: SessionCommand, event: object, reply: Reply) -> None:
    done = managed(command)

    assert (Manners(), event, reply) == (done.manners, done.event, done.reply)


@pytest.mark.parametrize("kind", typing.get_args(SessionCommand))
def test_every_command_to_the_surroundings_is_answered_with_a_sentence(kind: type) -> None:
    done = managed(kind())

    assert word(done.reply, load()).strip()


def test_changes_are_checked() -> None:
    with pytest.raises(ValueError, match="listening"):
        Manners().but(listening="perhaps")
