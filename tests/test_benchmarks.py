"""The figures can be taken: every one of them, with counts too small to mean anything."""

import json
import shutil
import subprocess
import sys

import pytest

from tests.benchmarks import hearing
from tests.benchmarks.computing import WIDTHS

NUMBERS = {
    "cores", "load_at_start", "load_at_end", "plan_and_proof_first_ms", "plan_and_proof_ms", "plan_and_proof_ms_aim",
    "plan_and_proof_ratio_128_to_64_stitches", "plan_loops_ratio_128_to_64_stitches",
    *(f"plan_and_proof_ms_{width}_stitches" for width in WIDTHS), "plan_and_proof_growth_power_of_stitches",
    "batch_pairs", "batch_s", "batch_core_s", "batch_pairs_a_minute", "batch_mean_stitches", "reply_steps",
    "reply_next_p50_ms",
    "reply_next_p95_ms", "reply_where_am_i_p50_ms", "reply_where_am_i_p95_ms", "answer_commands_each", "answer_ms_aim",
    "answer_cold_p50_ms", "answer_cold_p95_ms", "answer_cold_without_answer", "answer_warm_p50_ms",
    "answer_warm_p95_ms", "answer_warm_without_answer", "room_noise_s", "room_noise_core_share",
    "room_noise_core_share_aim", "room_noise_utterances", "recognition_real_time_factor", "peak_memory_mb",
    "peak_memory_mb_aim", "spoken_next_replies", "spoken_next_p50_s", "spoken_next_p95_s", "spoken_next_p50_s_aim",
    "spoken_next_share_under_aim",
}  # fmt: skip
pytestmark = pytest.mark.skipif(shutil.which("espeak-ng") is None, reason="needs espeak-ng")


def test_every_figure_is_printed_as_one_json_object() -> None:
    run = subprocess.run(
        (sys.executable, "-m", "tests.benchmarks", "--quick"), check=True, capture_output=True, text=True
    )
    figures = json.loads(run.stdout)

    assert NUMBERS == figures.keys()
    assert [] == [name for name, value in figures.items() if value is not None and not isinstance(value, int | float)]
    assert all(figures[name] > 0 for name in ("plan_and_proof_ms", "peak_memory_mb", "recognition_real_time_factor"))


def test_an_answer_is_timed_from_the_end_of_the_command_before_it() -> None:
    from tests.benchmarks.answering import _matched

    assert ([500.0, 250.0], 1) == _matched([11.5, 14.25], 10.0, [16_000, 64_000, 160_000])


def test_no_sentence_said_as_talk_is_a_command() -> None:
    from assistant.languages import load

    phrases = load().phrases

    assert len(hearing.sentences()) >= 200
    assert [] == [words for words in hearing.sentences() if phrases.match(words)]
    assert [] == [words for words in hearing.COMMANDS if not phrases.match(words)]


def test_ears_are_measured_voice_by_voice() -> None:
    figures = hearing.ears(1)

    assert {"voices", "commands_each_voice", "commands_right_share", "sentences", "sentences_acted_on_share",
            "sentences_asked_back_share", "by_voice", "failures"} == figures.keys()  # fmt: skip
    assert 0 <= figures["commands_right_share"] <= 1
    assert list(figures["by_voice"]) == hearing.voices()


def test_a_missed_command_is_not_given_the_answer_to_the_next() -> None:
    from tests.benchmarks.answering import _matched

    assert ([500.0], 1) == _matched([13.5], 10.0, [16_000, 48_000])
