"""Rests by voice: taken, over, put off, none today, offered again; and what a rest does to her pace."""

from pathlib import Path

import pytest

from assistant.journal_events import RestEnded, RestSnoozed, RestsSet, RestSuggested
from assistant.manners import Manners
from tests.assistant.running import Machine
from tests.assistant.sitting import Table, sitting_down

MINUTE = 60_000


def knit(table: Table, minutes: int) -> int:
    """Knit so long, a step a minute; how many rests were offered."""
    before = offers(table)
    for _ in range(minutes):
        table.clock.passes(MINUTE)
        table.hear("next")
        if table.session.sitting.progress.now == table.session.sitting.progress.past[-1]:
            break
    return offers(table) - before


def offers(table: Table) -> int:
    return sum(isinstance(entry.event, RestSuggested) for entry in table.journal.entries())


def test_the_end_of_a_rest_tells_how_long_it_was_and_what_is_in_hand(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        (called,) = table.hear("next")
        table.hear("take a break")
        place = table.session.sitting.progress.now
        table.clock.passes(10 * MINUTE)
        (over,) = table.hear("my rest is over")

        assert f"Ten minutes of rest. {called}" == over
        assert RestEnded(minutes=10) == table.journal.entries()[-1].event
        assert place == table.session.sitting.progress.now
        assert ["You were not resting."] == table.hear("my rest is over")


def test_going_on_ends_a_rest_too_and_asking_does_not(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        table.hear("next", "take a rest")
        table.clock.passes(7 * MINUTE)
        (where,) = table.hear("where am i")
        (following,) = table.hear("next")
        (then,) = table.hear("next")

        assert "of rest" not in where + then
        assert following.startswith("Seven minutes of rest. Second sock, ")
        assert ["rest_ended", "advanced", "advanced"] == [e.event.kind for e in table.journal.entries()][-3:]


def test_a_rest_goes_on_over_the_end_of_the_program(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        table.hear("next", "take a rest")
        began_ms = table.clock.wall_ms
    with sitting_down(tmp_path / "j.sqlite") as table:
        table.clock.wall_ms = began_ms + 3 * MINUTE
        (over,) = table.hear("my rest is over")

        assert over.startswith("Three minutes of rest. ")


def test_time_to_go_does_not_count_a_rest_as_knitting(tmp_path: Path) -> None:
    answers = []
    for rests in (False, True):
        with sitting_down(tmp_path / f"{rests}.sqlite") as table:
            for step in range(60):
                table.clock.passes(20_000)
                if rests and step % 2:
                    table.hear("take a rest")
                    table.clock.passes(8 * MINUTE)
                    table.hear("my rest is over")
                table.hear("next")
            answers.append(table.session._book.outlook.pace().usual)

    assert answers[0] == answers[1]


def test_a_rest_starts_the_time_anew_from_its_end(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        assert 0 == knit(table, 40)
        table.hear("take a rest")
        table.clock.passes(6 * MINUTE)
        table.hear("my rest is over")

        assert 0 == knit(table, 45)


def test_an_offer_that_is_put_off_comes_again_when_said(tmp_path: Path) -> None:
    quiet = {}
    for words in ("next", "remind me in forty minutes", "remind me later", "no more rests today"):
        with sitting_down(tmp_path / f"{words}.sqlite") as table:
            assert minutes_until_offered(table) is not None
            table.hear("ripped back to the toe", "yes", words)
            quiet[words] = minutes_until_offered(table)

    assert 20 <= quiet["remind me later"] <= 30
    assert 40 <= quiet["remind me in forty minutes"] <= 50
    assert quiet["no more rests today"] is None
    assert quiet["next"] < 40


def minutes_until_offered(table: Table) -> int | None:
    """Back and forth over the same rounds, so that the pair is not finished before."""
    before = offers(table)
    for minute in range(1, 120):
        table.clock.passes(MINUTE)
        table.hear("next")
        if offers(table) > before:
            return minute
        if minute % 6 == 0:
            table.hear("back two rounds")
    return None


def test_put_off_and_on_again_are_written_down_and_answered(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        answers = table.hear("remind me later", "no more breaks today", "offer me rests")
        events = [entry.event for entry in table.journal.entries()][-3:]

        assert [RestSnoozed(minutes=20), RestSnoozed(minutes=720), RestsSet(on=True)] == events
        assert "I remind you in twenty minutes, at the end of a round." == answers[0]
        assert "No more rests today. Stop when your hands hurt." == answers[1]
        assert "A rest is offered after fifty minutes again." == answers[2]


@pytest.mark.parametrize(("manners", "least"), [(Manners(rests=False), None), (Manners(rest_after_minutes=20), 20)])
def test_whether_and_when_a_rest_is_offered_can_be_set(tmp_path: Path, manners: Manners, least: int | None) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        table.session.manners = manners
        found = minutes_until_offered(table)

        assert found is None if least is None else found is not None and least <= found <= 35


def test_offers_switched_off_are_on_again_when_she_says_so_and_stay(tmp_path: Path) -> None:
    with sitting_down(tmp_path / "j.sqlite") as table:
        table.session.manners = Manners(rests=False)
        table.hear("remind me to rest")

        assert minutes_until_offered(table) is not None


def test_the_interval_is_a_setting_of_the_program(tmp_path: Path) -> None:
    machine = Machine(tmp_path)
    changed = machine.run("settings", "--rest-after", "25", "--rests")
    off = machine.run("settings", "--no-rests")
    refused = machine.run("settings", "--rest-after", "3")
    again = machine.run("knit", machine.plan(), "--recogniser", "typed", "--to", "none", typed="remind me to rest\n")

    assert "A rest is offered after 25 minutes." in changed.lines
    assert "No rests are offered." in off.lines
    assert 2 == refused.code
    assert "A rest is offered after twenty-five minutes again." == again.lines[-1]
    assert "A rest is offered after 25 minutes." in machine.run("settings").lines
