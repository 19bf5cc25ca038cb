"""A session hears, understands, decides, writes down and speaks, in this order."""

import io
import sqlite3
from pathlib import Path

import pytest

from assistant.inputs import Failed, OutputWanted, Pressed
from assistant.journal import Journal
from assistant.journal_errors import JournalMoved
from assistant.journal_events import Told
from assistant.session import Habits
from assistant.sittings import open_pair
from assistant.voice import Output
from plans.conversation import Advanced, Next, Problem
from plans.json_form import plan_id
from plans.pattern import BindOff, Heel
from tests.assistant.sitting import PRACTICE, practice, said, sitting_down


def test_next_calls_the_following_step_and_the_count_it_makes(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        secure, cast_on = table.hear("next", "next")

        assert secure == "Second sock, front: trap the tail under the yarn."
        assert cast_on == "Second sock, front: cast on four, makes four."


class Spy(io.StringIO):
    """Lines that look into the journal, through a connection of their own, at the moment they are spoken."""

    def __init__(self, file: Path) -> None:
        super().__init__()
        self.file = file
        self.missing: list[str] = []

    def write(self, text: str) -> int:
        if text.strip():
            connection = sqlite3.connect(f"file:{self.file}?mode=ro", uri=True)
            kept = connection.execute("SELECT said FROM event ORDER BY seq DESC LIMIT 1").fetchone()
            connection.close()
            if kept is None or kept[0] != text.strip():
                self.missing.append(text)
        return super().write(text)


def test_everything_is_in_the_file_before_it_is_spoken(tmp_path: Path) -> None:
    spy = Spy(tmp_path / "j.sqlite")
    with sitting_down(spy.file, lines=spy) as table:
        table.hear("next", "where am i", "undo", "again", "i have five", "back three rounds", "louder", "help")

        assert len(table.spoken) == 9
        assert [] == spy.missing


def test_what_cannot_be_written_down_is_not_spoken_and_moves_nothing(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        before = table.session.sitting.progress
        table.session.sitting.seq -= 1

        with pytest.raises(JournalMoved):
            table.hear("next")

        assert len(table.spoken) == 1
        assert before == table.session.sitting.progress


@pytest.mark.parametrize("words", ["what a lovely day", "the next one please dear", "[unk] next", "yes", "no"])
def test_talk_is_met_with_silence(tmp_path: Path, words: str) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        seq = table.journal.last_seq

        assert [] == table.hear(words)
        assert seq == table.journal.last_seq


def test_a_near_miss_is_asked_back_once_and_changes_nothing(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        before = table.session.sitting.progress.now
        table.session.take(said("next", confidence=0.5))
        table.session.take(said("next", confidence=0.5))

        assert ["Did you mean: next?"] == table.spoken[1:]
        assert before == table.session.sitting.progress.now
        assert ["Second sock, front: trap the tail under the yarn."] == table.hear("yes")


def test_no_to_a_near_miss_drops_it(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        before = table.session.sitting.progress.now
        table.session.take(said("next", confidence=0.5))
        table.hear("no", "yes")

        assert before == table.session.sitting.progress.now


def test_a_command_drops_an_open_near_miss(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        table.session.take(said("undo", confidence=0.5))
        table.hear("next", "yes")

        assert "advanced" == _kinds(table.journal)[-1]


def test_again_says_the_last_sentence_again(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        (first,) = table.hear("next")

        assert [first, first] == table.hear("again", "again")


def test_yes_to_everything_carries_questions_out_at_once(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite", habits=Habits(answers_yes=True)) as table:
        table.hear(*["next"] * 14)
        (answer,) = table.hear("ripped back to the toe")

        assert answer.startswith("Toe, round one of eight.")
        assert ["asked", "answered", "place_set"] == _kinds(table.journal)[-3:]


def test_a_question_is_asked_first_and_dropped_by_no(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        table.hear(*["next"] * 14)
        before = table.session.sitting.progress.now
        answers = table.hear("ripped back to the toe", "no")

        assert "Ripped back to toe, round one of eight?" == answers[0]
        assert before == table.session.sitting.progress.now


def test_a_second_next_sooner_than_the_stitches_is_asked_back(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite", habits=Habits(real_time=True)) as table:
        table.hear("next", "next")
        table.clock.passes(400)
        (answer,) = table.hear("next")
        asked = table.session.sitting.progress.question
        table.hear("no")
        table.clock.passes(60_000)
        table.hear("next")

        assert answer.startswith("Is this done already?")
        assert isinstance(asked, Next)
        assert isinstance(table.journal.events("practice")[-1], Advanced)


def test_without_real_time_no_next_is_too_soon(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        table.hear(*["next"] * 50)

        assert 50 == _kinds(table.journal).count("advanced")


def test_paused_listening_heeds_only_listen_again(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        table.hear("pause listening")
        deaf = table.hear("next", "undo", "stop for today")
        heard = table.hear("listen again", "next")

        assert [] == deaf
        assert ["Listening again.", "Second sock, front: trap the tail under the yarn."] == heard


def test_keys_work_while_listening_is_paused(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        table.hear("pause listening")
        table.session.take(Pressed(Next()))

        assert "advanced" == _kinds(table.journal)[-1]


def test_with_the_attention_word_on_commands_need_it(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        table.hear("use the attention word")
        bare = table.hear("next")
        together = table.hear("hello socks next")
        apart = table.hear("hello socks", "next", "next")
        table.hear("hello socks no attention word")

        assert [] == bare
        assert 1 == len(together)
        assert 2 == len(apart)
        assert 1 == len(table.hear("next"))


def test_the_ears_are_told_when_other_words_count(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        table.hear("next", "next", "use the attention word", "hello socks next")

        assert 2 == len(table.expected)
        assert "next" in table.expected[0].phrases
        assert "hello socks next" in table.expected[1].phrases


def test_louder_and_faster_are_remembered_in_the_manners(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        slow = table.session.manners.voice.rate_wpm
        table.hear("faster", "softer")

        assert table.session.manners.voice.rate_wpm > slow
        assert table.session.manners.voice.volume < 1.0


def test_how_long_answers_with_a_time(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        (answer,) = table.hear("how long")

        assert "hour" in answer


def test_a_rest_is_offered_after_an_hour_at_the_end_of_a_round(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        offers = 0
        for _ in range(75):
            table.clock.passes(60_000)
            (answer,) = table.hear("next")
            offers += "rest" in answer

        assert 1 <= offers <= 3
        assert offers == _kinds(table.journal).count("rest_suggested")


def test_a_lost_device_is_said_and_written_down(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        table.session.take(Failed(Problem.of("device-lost", name="the microphone")))

        assert "the microphone" in table.spoken[-1].lower()
        assert "device_lost" == _kinds(table.journal)[-1]


def test_a_key_goes_round_voice_lines_and_both(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        for _ in Output:
            table.session.take(OutputWanted())

        assert ["voice_mode_set"] * 3 == _kinds(table.journal)[-3:]


def test_stop_ends_the_session_and_the_place_is_found_again(tmp_path: Path) -> None:
    file = tmp_path / "j.sqlite"
    with sitting_down(file) as table:
        table.hear(*["next"] * 12)
        table.session.run([said("stop for today"), said("yes"), said("next")])
        place = table.session.sitting.progress.now

    with sitting_down(file) as table:
        assert place == table.session.sitting.progress.now
        assert table.spoken[0].startswith("Practice.")


def test_a_plan_edited_since_is_noticed_and_not_used(tmp_path: Path) -> None:
    file = tmp_path / "j.sqlite"
    with sitting_down(file) as table:
        table.hear(*["next"] * 12)
        plan = plan_id(table.session.sitting.plan)

    with sitting_down(file, made=practice(heel=Heel.GERMAN)) as table:
        assert plan == plan_id(table.session.sitting.plan)
        assert "edited" in table.spoken[0]


def test_an_edited_plan_is_taken_on_yes_where_the_rows_so_far_are_the_same(tmp_path: Path) -> None:
    file = tmp_path / "j.sqlite"
    with sitting_down(file) as table:
        table.hear(*["next"] * 12)
        place = table.session.sitting.progress.now.first
    longer = practice(bind_off=BindOff.SEWN)

    with sitting_down(file, made=longer, habits=Habits(answers_yes=True)) as table:
        now = table.session.sitting.progress.now

        assert (plan_id(longer.plan), place) == (now.plan, now.first)
        assert "replanned" == _kinds(table.journal)[-1]
        assert "edited" in table.spoken[0]


@pytest.mark.parametrize(("words", "is_taken"), [("yes", False), ("no", True), ("where am i", False)])
def test_where_an_edited_plan_fits_it_is_asked_which_to_go_on_with(tmp_path: Path, words: str, is_taken: bool) -> None:
    file, longer = tmp_path / "j.sqlite", practice(bind_off=BindOff.SEWN)
    with sitting_down(file) as table:
        table.hear(*["next"] * 12)
        old, called = plan_id(table.session.sitting.plan), table.spoken[-1]
    with sitting_down(file, made=longer) as table:
        (answer,) = table.hear(words)
        later = table.hear("yes", "no", "next")

        assert ["Go on with the plan as it was?"] == [line[-30:] for line in table.spoken[:1]]
        assert called in answer
        assert is_taken == (plan_id(longer.plan) == table.session.sitting.progress.now.plan)
        assert (old != table.session.sitting.progress.now.plan) == is_taken
        assert 1 == len(later)


def test_several_pairs_live_in_one_journal(tmp_path: Path) -> None:
    file = tmp_path / "j.sqlite"
    with sitting_down(file) as table:
        table.hear("next")
    with sitting_down(file, made=practice(name="other")) as table:
        table.hear("next", "next")
    with Journal.open(file) as journal:
        assert ("other", "practice") == journal.pairs()
        assert "other" == open_pair(journal, None).sitting.pair
        assert "practice" == open_pair(journal, None, pair="practice").sitting.pair


def test_a_query_is_written_down_as_told(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        (answer,) = table.hear("where am i")
        entry = table.journal.entries()[-1]

        assert (Told(command="where_am_i"), "where am i", answer) == (entry.event, entry.heard, entry.said)


def test_a_whole_practice_pair_is_called_to_its_end(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        while not table.spoken[-1].startswith("That was the last") and len(table.spoken) < 400:
            table.hear("next")
        (after,) = table.hear("next")

        assert len(table.spoken) < 400
        assert PRACTICE.name == table.session.sitting.pair
        assert after.startswith("Both socks are done")


def _kinds(journal: Journal) -> list[str]:
    return [entry.event.kind for entry in journal.entries()]
