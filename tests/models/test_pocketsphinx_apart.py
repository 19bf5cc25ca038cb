"""The phone decoder in a process of its own says what it would say here, and does no harm when it is gone."""

import gc
import os
import signal
from contextlib import suppress

import pytest

from models.pocketsphinx_apart import PhonesApart
from models.pocketsphinx_decoding import PhoneDecoder
from tests.models import hearing

SOUND = hearing.take(0.3, "en-us+m5: undo that", 0.2)
OTHER = hearing.take(0.3, "en-us+m5: how many", 0.2)


@pytest.fixture(scope="module")
def here():
    return PhoneDecoder(lw=2.0, beam=1e-20, pbeam=1e-20)


@pytest.fixture
def apart():
    return PhonesApart()


def test_it_says_what_the_same_decoder_says_here(apart, here):
    apart.begin(SOUND)

    assert apart.result() == here.decode(SOUND)


def test_what_was_begun_last_is_answered_however_much_was_begun_before(apart, here):
    for _ in range(8):
        apart.begin(OTHER)
    apart.begin(SOUND)

    assert apart.result() == here.decode(SOUND)


def test_where_nothing_was_begun_there_is_nothing(apart):
    assert apart.result() is None


def test_when_its_process_is_ended_the_work_is_done_here(apart, here):
    apart.begin(OTHER)
    os.kill(apart.process_id, signal.SIGTERM)
    for sound in (SOUND, OTHER):
        apart.begin(sound)
        assert apart.result() == here.decode(sound)
    assert apart.process_id is None


def test_its_process_ends_with_it():
    apart = PhonesApart()
    number = apart.process_id
    del apart
    gc.collect()

    with pytest.raises(ProcessLookupError):
        os.kill(number, 0)


def test_an_interrupt_from_the_keyboard_is_not_meant_for_it(apart, here):
    apart.begin(OTHER)
    apart.result()
    with suppress(ProcessLookupError):
        os.kill(apart.process_id, signal.SIGINT)
    apart.begin(SOUND)

    assert apart.result() == here.decode(SOUND)
    assert apart.process_id is not None
