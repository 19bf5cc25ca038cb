"""A microphone and a speaker chosen by name are the ones used, and are remembered; one that is gone is told."""

import threading
import time

import numpy as np
import pytest

from assistant.clocks import StreamClock
from assistant.devices import find_device, nameable
from assistant.equipment import present
from assistant.listening.sources import Microphone
from assistant.settings import Settings, load_settings
from assistant.speaking.earcons import Earcon, earcon
from assistant.speaking.speaker import Speaker
from tests.assistant.running import Machine
from tests.end_to_end.driving import speak
from tests.end_to_end.virtual_sound import VirtualSound, is_possible

pytestmark = [
    pytest.mark.sound,
    pytest.mark.skipif(not is_possible(), reason="needs pulseaudio, pulseaudio-utils and libasound2-plugins"),
]


@pytest.fixture
def card():
    """Beside the default devices a speaker and two microphones that people call by names of their own."""
    with VirtualSound() as sound:
        sound.add_speaker("parlour", "Parlour Loudspeaker")
        sound.add_microphone("desk", "Desk Microphone")
        sound.add_microphone("collar", "Collar Microphone")
        with sound.here():
            yield sound


def loudest(samples):
    return int(np.abs(samples.astype(int)).max(initial=0))


@pytest.mark.usefixtures("card")
def test_devices_are_listed_by_the_names_that_people_see():
    assert [device.name for device in nameable("microphone")] == ["Desk Microphone", "Collar Microphone"]
    assert "Parlour Loudspeaker" in [device.name for device in nameable("speaker")]
    assert find_device("speaker", "parlour").address == "parlour"


def test_a_speaker_of_a_name_plays_there_and_nowhere_else(card):
    here, elsewhere = card.record_speaker("parlour"), card.record_speaker()
    speaker = Speaker(StreamClock(live=True), "loudspeaker parlour")
    speaker.play(earcon(Earcon.ATTENTION))
    time.sleep(0.3)
    speaker.close()

    assert speaker.name == "Parlour Loudspeaker"
    assert loudest(here.stop()) > 1_000
    assert loudest(elsewhere.stop()) == 0


@pytest.mark.parametrize(("side", "is_heard"), [("desk_side", True), ("collar_side", False), ("mic", False)])
def test_a_microphone_of_a_name_hears_what_is_said_there_and_nothing_else(card, side, is_heard, tmp_path):
    microphone = Microphone(StreamClock(live=True), "DESK")
    blocks = microphone.blocks()
    first = next(blocks)
    card.say_into_microphone(speak("next", tmp_path), side)
    heard = [first]
    while heard[-1].end_sample < 8_000:
        heard.append(next(blocks))
    microphone.close()
    heard.extend(blocks)

    assert (loudest(np.concatenate([block.samples for block in heard])) > 1_000) is is_heard


@pytest.mark.usefixtures("card")
def test_a_remembered_device_that_is_gone_is_told_and_the_systems_own_is_used():
    remembered = Settings(microphone="Desk Microphone", speaker="Kitchen Radio")
    here = present(remembered, {"microphone", "speaker"})

    assert [(note.key, dict(note.values)) for note in here.notes] == [("speaker-gone", {"name": "Kitchen Radio"})]
    assert (here.settings.microphone, here.settings.speaker) == ("Desk Microphone", None)


def test_the_program_takes_names_once_and_remembers_them(card, tmp_path):
    """Keys drive it, so that only what it plays is looked at: into the parlour, both times."""
    machine = Machine(tmp_path)
    for options in (("--speaker", "parlour", "--rate", "300"), ()):
        here, elsewhere = card.record_speaker("parlour"), card.record_speaker()
        ran = machine.run("knit", machine.plan(), "--from", "keys", *options, typed=" ", also=card.own)

        assert (0, "") == (ran.code, ran.err)
        assert loudest(here.stop()) > 1_000
        assert loudest(elsewhere.stop()) == 0
    kept = load_settings(tmp_path / "config" / "roundcaller").settings
    assert (kept.speaker, kept.words_a_minute) == ("Parlour Loudspeaker", 300)


def test_a_name_that_fits_none_or_several_is_told_with_what_there_is(card, tmp_path):
    machine = Machine(tmp_path)
    plan = machine.plan()
    unknown = machine.run("knit", plan, "--microphone", "piano", "--to", "none", also=card.own)
    several = machine.run("listen", "--mic", "--microphone", "microphone", also=card.own)

    assert (2, "", "There is no microphone named “piano”: there is Desk Microphone, Collar Microphone.") == (
        unknown.code, unknown.out, unknown.complaint
    )  # fmt: skip
    assert (2, "") == (several.code, several.out)
    assert several.complaint.startswith("Several microphones are meant by “microphone”, Desk Microphone, Collar")
    assert not machine.journal.exists()
    assert load_settings(tmp_path / "config" / "roundcaller").settings == Settings()


def test_settings_list_what_there_is_and_change_what_is_remembered(card, tmp_path):
    machine = Machine(tmp_path)
    ran = machine.run("settings", "--microphone", "collar", "--output", "lines", "--no-rests", also=card.own)

    assert (0, "") == (ran.code, ran.err)
    assert "Microphone: Collar Microphone." in ran.lines
    assert "Lines only." in ran.lines
    assert "No rests are offered." in ran.lines
    assert {"A microphone here: Desk Microphone.", "A speaker here: Parlour Loudspeaker."} <= set(ran.lines)
    again = machine.run("settings", "--microphone", "", also=card.own)
    assert "Microphone: the system's own." in again.lines
    assert "Lines only." in again.lines


def test_one_that_is_gone_is_said_first_and_stays_remembered(card, tmp_path):
    machine = Machine(tmp_path)
    machine.run("settings", "--speaker", "parlour", also=card.own)
    card.die()
    with VirtualSound() as other:
        ran = machine.run("knit", machine.plan(), "--from", "keys", "--rate", "400", typed="", also=other.own)

    assert (0, "The speaker Parlour Loudspeaker is not here now: I use the system's own.") == (ran.code, ran.lines[0])
    assert load_settings(tmp_path / "config" / "roundcaller").settings.speaker == "Parlour Loudspeaker"


def test_at_the_first_start_the_microphone_that_hears_her_is_found_and_remembered(card, tmp_path):
    """The default hears nothing; she says "next" at her desk, again and again."""
    machine = Machine(tmp_path)
    spoken, told = speak("next", tmp_path), []
    with machine.start(also=card.own) as process:
        reader = threading.Thread(target=lambda: told.extend(iter(process.stdout.readline, "")))
        reader.start()
        until = time.monotonic() + 90
        while not any(line.startswith("A new pair.") for line in told) and time.monotonic() < until:
            card.say_into_microphone(spoken, "desk_side")
            time.sleep(1.5)
        process.kill()
        reader.join()

    assert "I try another microphone: Desk Microphone.\n" in told
    assert "I hear you well.\n" in told
    assert load_settings(tmp_path / "config" / "roundcaller").settings.microphone == "Desk Microphone"
