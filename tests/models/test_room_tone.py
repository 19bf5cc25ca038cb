import numpy as np

from models.room_tone import BELOW_DB, with_room_tone
from tests.models import rooms


def _level_db(samples):
    return 10 * np.log10(np.mean(np.square(samples.astype(float))))


def test_the_tone_lies_a_fixed_distance_below_the_sound():
    for level in (-20, -50):
        sound = rooms.as_int16(rooms.at_level(rooms.spoken("where am i"), level))
        tone = with_room_tone(sound).astype(int) - sound

        assert abs(_level_db(sound) - _level_db(tone) - BELOW_DB) < 1.5


def test_the_same_sound_gets_the_same_tone_whatever_came_before():
    sound = rooms.as_int16(rooms.white(1.0, -30))
    first = with_room_tone(sound)
    with_room_tone(rooms.as_int16(rooms.white(3.0, -10)))

    assert np.array_equal(with_room_tone(sound), first)


def test_digital_silence_and_nothing_stay():
    assert not with_room_tone(np.zeros(16_000, np.int16)).any()
    assert len(with_room_tone(np.zeros(0, np.int16))) == 0


def test_full_scale_is_not_passed():
    loud = np.full(32_000, 32_767, np.int16)

    assert with_room_tone(loud).min() > 0
