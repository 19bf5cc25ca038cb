"""While she knits: a disk that fills, a speaker or microphone that goes, a plan taken back; she goes on knitting."""

import io
from collections.abc import Iterator
from contextlib import contextmanager
from fractions import Fraction
from pathlib import Path

import pytest

from assistant.device_errors import DeviceLost as Gone
from assistant.inputs import Failed, Pressed
from assistant.journal import Journal
from assistant.journal_errors import DiskFull
from assistant.journal_events import Told
from assistant.languages import load
from assistant.manners import Manners
from assistant.ports import Played, Sound
from assistant.session import Habits, Session
from assistant.sittings import open_pair
from assistant.voice import Output, Voice
from plans.conversation import Next, Problem
from plans.engine import replay
from plans.json_form import plan_id
from plans.pattern import BindOff
from plans.wishes import Swatch
from tests.assistant.sitting import Table, practice, said, sitting_down
from tests.assistant.test_voice import Renders
from tests.fakes import RememberingSink, StillClock

LIVE = Habits(real_time=True)


@contextmanager
def no_room(journal: Journal) -> Iterator[None]:
    """The journal's database may not grow: what SQLite reports is what it reports on a full disk."""
    connection = journal._connection
    pages = connection.execute("PRAGMA page_count").fetchone()[0]
    connection.execute(f"PRAGMA max_page_count = {pages}")
    try:
        yield
    finally:
        connection.execute("PRAGMA max_page_count = 1000000")


def fill(table: Table) -> None:
    """Use up what room the last pages have."""
    with pytest.raises(DiskFull):
        for _ in range(2000):
            table.session.obey(Next(), heard="next")


def test_on_a_full_disk_nothing_moves_and_she_is_told_and_says_it_again_when_there_is_room(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite", habits=LIVE) as table:
        table.clock.passes(60_000)
        with no_room(table.journal):
            fill(table)
            place, last = table.session.sitting.progress, table.journal.last_seq
            table.clock.passes(60_000)
            (told,) = table.hear("next")
            assert (place, last) == (table.session.sitting.progress, table.journal.last_seq)
        table.clock.passes(60_000)
        (again,) = table.hear("next")

        assert told.startswith("The disk is full: nothing was written to ")
        assert told.endswith("and you are where you were, make room and say it again.")
        assert place != table.session.sitting.progress
        assert again == table.journal.entries()[-1].said


def test_what_she_set_is_as_it_was_where_it_could_not_be_written(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite", habits=LIVE) as table, no_room(table.journal):
        fill_quietly(table)
        before = table.session.manners
        table.hear("faster", "use the attention word")

        assert before == table.session.manners


def test_a_question_stays_open_where_its_answer_could_not_be_written(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite", habits=LIVE) as table:
        table.session.take(said("where am i", 0.4))
        asked = table.spoken[-1]
        with no_room(table.journal):
            fill_quietly(table)
            table.hear("yes")
        table.hear("yes")

        assert asked.startswith("Did you mean")
        assert "where_am_i" == getattr(table.journal.entries()[-1].event, "command", None)


def fill_quietly(table: Table) -> None:
    """Without a word of hers, so that an open question stays open."""
    with pytest.raises(DiskFull):
        for _ in range(2000):
            table.session.greet(events=(Told(command="greeting"),))


def test_a_script_does_not_wait_for_room(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table, no_room(table.journal), pytest.raises(DiskFull):
        for _ in range(2000):
            table.session.take(said("next"))


class SpeakerThatGoes(RememberingSink):
    """Plays some sounds; then it is unplugged."""

    def __init__(self, after: int) -> None:
        super().__init__()
        self._to_go = after

    def play(self, sound: Sound) -> Played:
        """Play, or be gone."""
        if not self._to_go:
            raise Gone(name="Headset")
        self._to_go -= 1
        return super().play(sound)


def test_a_speaker_that_goes_is_told_in_lines_and_she_knits_on(tmp_path: Path) -> None:
    lines = io.StringIO()
    with Journal.open(tmp_path / "j.sqlite") as journal:
        opening = open_pair(journal, practice())
        voice = Voice(Renders(), SpeakerThatGoes(after=2), lines=lines, output=Output.VOICE)
        session = Session(opening.sitting, load(), voice, StillClock(), manners=Manners())
        session.greet(*opening.sayings, events=opening.events)
        for _ in range(4):
            session.take(said("next"))
        session.take(said("again"))
        entries = journal.entries()

    spoken = [entry.said for entry in entries if entry.said]
    printed = lines.getvalue().splitlines()
    gone = "The speaker Headset is gone: read the lines, or plug it in again. Your place is written down."
    assert spoken[2:] == printed
    assert [gone] == [line for line in printed if "Headset" in line]
    assert 1 == [entry.event.kind for entry in entries].count("device_lost")
    assert printed[-1] == printed[-2]


def test_a_microphone_that_goes_is_told_and_keys_go_on(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        problem = Problem.of("microphone-lost", name="Headset")
        table.session.run([said("next"), Failed(problem), Pressed(Next())])

        gone = "The microphone Headset is gone: plug it in again, or use the keys. Your place is written down."
        assert gone == table.spoken[-2]
        assert problem == table.session.failed
        assert "advanced" == table.journal.entries()[-1].event.kind


def test_again_says_the_last_call_and_not_what_went_wrong(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        (call,) = table.hear("next")
        table.session.take(Failed(Problem.of("microphone-lost", name="Headset")))

        assert [call] == table.hear("again")


def test_a_plan_taken_over_and_undone_is_called_as_it_was(tmp_path: Path) -> None:
    """After the undo it is the old plan that is called, to its own end."""
    file = tmp_path / "j.sqlite"
    with sitting_down(file) as table:
        table.hear(*["next"] * 12)
        old = plan_id(table.session.sitting.plan)
    with sitting_down(file, made=practice(bind_off=BindOff.SEWN), habits=Habits(answers_yes=True)) as table:
        new = plan_id(table.session.sitting.plan)
        assert replay(table.journal.events("practice")) == table.session.sitting.progress
        (undone,) = table.hear("undo")
        back_in = plan_id(table.session.sitting.plan)
        (redone,) = table.hear("redo")
        on_in = plan_id(table.session.sitting.plan)
        table.hear("undo", *["next"] * 200)

        assert (old, new) == (back_in, on_in)
        assert old != new
        assert ("Undone: back to the plan used before.", "Redone: on to the plan used after.") == (undone, redone)
        assert {old} == {table.session.sitting.progress.now.plan}
        assert not any("sew" in line.lower() for line in table.spoken)


def test_a_pair_of_which_the_plan_is_lost_is_told(tmp_path: Path) -> None:
    gauge = Swatch(stitches=Fraction(20), rounds=Fraction(28))
    with sitting_down(tmp_path / "j.sqlite", made=practice(swatch=gauge)) as table:
        table.hear("next")
        journal = table.journal
        journal._connection.execute("DROP TRIGGER plan_no_delete")
        journal._connection.execute("PRAGMA foreign_keys = OFF")
        journal._connection.execute("DELETE FROM plan")
        with pytest.raises(Exception, match="plan-lost"):
            open_pair(journal, None)
