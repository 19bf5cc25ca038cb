"""Pieces written by hand, shown, printed and called aloud like any other."""

from pathlib import Path

import pytest

from assistant.languages import load
from assistant.languages.verbosity import Verbosity
from assistant.speaking.wording import word
from plans.conversation import Grain, HowFar, HowMany, IHave, Mark, Marks, Next, Reply, Stop, Undo, WhereAmI
from plans.engine.resuming import resume
from plans.json_form import plan_id
from plans.pattern import Half, StageName
from tests.assistant.running import Machine
from tests.languages_under_test import ALL, name_of
from tests.plans.knitter import Knitter
from tests.plans.written.pieces import CAP, COWL, HAT, MITTENS, charted_sock, made

TYPED = ("--recogniser", "typed", "--from", "-", "--to", "none")
ENGLISH = load("en")


def said(reply: Reply) -> str:
    return word(reply, ENGLISH)


def called(text: str, grain: Grain = "follow") -> list[str]:
    """All that is called from the first step to the last."""
    knitter = Knitter(made(text), grain)
    lines = [said(knitter.call)]
    while not knitter.finished:
        lines.append(said(knitter.say(Next())))
    return lines


def test_a_hat_is_called_round_by_round_and_read_out_only_where_it_changes():
    lines = called(HAT)

    assert lines[:6] == [
        "Cast-on, one round. Cast on ninety-six, makes ninety-six.",
        "Hang the marker.",
        "Join in the round, not twisted.",
        "Brim, ten rounds. Twenty-four times knit two purl two, makes ninety-six.",
        "Two of ten.",
        "Three of ten.",
    ]
    assert "Crown, ten rounds. Twelve times knit six knit two together, makes eighty-four." in lines
    assert lines[-13:] == [
        "Round two of ten, knit eighty-four, makes eighty-four.",
        "Round three of ten, twelve times knit five knit two together, makes seventy-two.",
        "Round four of ten, knit seventy-two, makes seventy-two.",
        "Round five of ten, twelve times knit four knit two together, makes sixty.",
        "Round six of ten, knit sixty, makes sixty.",
        "Round seven of ten, twelve times knit three knit two together, makes forty-eight.",
        "Round eight of ten, twelve times knit two knit two together, makes thirty-six.",
        "Round nine of ten, twelve times knit one knit two together, makes twenty-four.",
        "Round ten of ten, knit two together twelve times, makes twelve.",
        "Cut the yarn.",
        "Bind-off, one round. Draw the tail through twelve, makes zero.",
        "Weave in the ends.",
        "That was the last of it: it is done.",
    ]


def test_mittens_are_called_as_a_pair_half_by_half_by_their_own_names():
    lines = called(MITTENS)

    assert lines[4:9] == [
        "Join in the round, not twisted.",
        "Cuff, four rounds. Left mitten, front: snug; three times knit two purl two, makes twelve.",
        "Right mitten, front: change yarn; snug; three times knit two purl two, turn, makes twelve.",
        "Right mitten, back: snug; three times knit two purl two, makes twelve.",
        "Left mitten, back: change yarn; snug; three times knit two purl two, turn back, makes twelve.",
    ]
    assert "Left mitten, front: snug; knit eleven, slip the marker, make one right, knit one. Makes thirteen." in lines
    assert "Round three of ten, plain, makes thirteen on each half." in lines
    assert lines[-1] == "That was the last of it: it is done."


def test_the_rows_of_a_chart_are_counted_and_colours_are_named():
    lines = called(COWL)

    assert "Round three of twelve, chart row one of three, six times three blue one cream. Makes twenty-four." in lines
    assert any("chart row one of two, knit two, five times purl one knit one yarn over knit two together" in line
               for line in lines)  # fmt: skip
    plain = called(COWL.replace('[yarns]\nmain = "cream"\ncontrast = "blue"\n', ""))
    assert "Round four of twelve, chart row two of three, six times two contrast two main. Makes twenty-four." in plain


def test_a_charted_sock_reads_its_fronts_and_goes_by_rounds_where_it_is_plain():
    lines = called("practice = true\n" + charted_sock("front", '["leg"]', "||||", "/O|-"))

    fronts = [line for line in lines if "chart row" in line]
    assert len(fronts) == 2 * 3
    assert fronts[0].startswith("First sock, front: snug; chart row one of two, ")
    assert "Two of four." in lines


@pytest.mark.parametrize("grain", ["group", "half", "side", "round"])
@pytest.mark.parametrize("text", [CAP, MITTENS, COWL], ids=["cap", "mittens", "cowl"])
def test_every_grain_comes_to_the_end_with_the_counts_of_the_plan(text, grain):
    knitter = Knitter(made(text), grain)
    while not knitter.finished:
        said(knitter.call)
        knitter.say(Next())

    assert said(knitter.say(Next())) == "It is done; there is nothing after this."
    assert said(knitter.say(Stop())) == "Stopped. It is done."
    assert said(resume(knitter.plan, knitter.progress)).endswith("it is done.")


def test_answers_speak_of_the_piece_and_of_its_round():
    knitter = Knitter(made(HAT)).knits_to(StageName.CROWN, 3)

    assert said(knitter.say(WhereAmI())).startswith("Invented hat. Crown, round three of ten. Invented hat: ")
    assert said(knitter.say(HowMany())).endswith("eighty-four to go in this round.")
    assert said(knitter.say(HowFar())) == "Eight rounds to go in the crown, nine in all."
    assert said(knitter.say(IHave(stitches=84, half=Half.BACK, sock=2))) == "Eighty-four is right for invented hat."
    assert "one too few" in said(knitter.say(IHave(stitches=71)))
    knitter.say(Mark())
    assert said(knitter.say(Marks())) == "Mark one: crown, round three of ten, invented hat."
    assert "the marker hangs where the round begins" in said(resume(knitter.plan, knitter.progress)).lower()
    assert said(knitter.say(Undo())).startswith("Undone.")


@pytest.mark.parametrize("language", ALL, ids=name_of)
@pytest.mark.parametrize("verbosity", list(Verbosity))
def test_pieces_are_called_without_a_digit_in_every_language(language, verbosity):
    for text in (CAP, MITTENS, COWL):
        knitter = Knitter(made(text))
        while not knitter.finished:
            line = word(knitter.call, language, verbosity)
            assert not any(sign.isdigit() or sign in "{}_" for sign in line), line
            knitter.say(Next())


def test_a_hat_is_knitted_from_cast_on_to_bind_off_and_resumed(tmp_path: Path):
    machine = Machine(tmp_path)
    file = tmp_path / "hat.toml"
    file.write_text(HAT, encoding="utf-8")
    typed = "next\n" * 10 + "i have ninety five\nripped back to the brim\nyes\n"
    first = machine.run("knit", str(file), *TYPED, typed=typed)
    second = machine.run("knit", *TYPED, typed="next\n" * 50)

    assert (0, "", 0, "") == (first.code, first.err, second.code, second.err)
    assert "should be ninety-six: one too few" in first.out
    assert "Ripped back to brim, round one of ten?" in first.lines
    assert second.lines[0] == (
        "Invented hat. Brim, round one of ten. The marker hangs where the round begins. To check: invented hat has "
        "ninety-six. In hand: Join in the round, not twisted."
    )
    assert "That was the last of it: it is done." in second.lines


def test_an_edited_hat_is_gone_on_with_where_nothing_knitted_differs(tmp_path: Path):
    machine = Machine(tmp_path)
    file = tmp_path / "hat.toml"
    file.write_text(HAT, encoding="utf-8")
    machine.run("knit", str(file), *TYPED, typed="next\n" * 6)
    file.write_text(HAT.replace("Rnd 4: knit.", "Rnd 4: purl."), encoding="utf-8")
    later = machine.run("knit", str(file), "--yes", *TYPED, typed="where am i\n")
    file.write_text(HAT.replace("*k2, p2; rep", "*k1, p1; rep"), encoding="utf-8")
    before = machine.run("knit", str(file), "--yes", *TYPED, typed="where am i\n")

    assert "nothing knitted so far differs: I go on with the new one." in later.lines[0]
    assert "I go on with the plan as it was." in before.lines[0]


def test_a_hat_may_lie_in_two_halves():
    lines = called(HAT.replace("multiple = 8", 'needles = "one-long-circular"'))

    assert "Brim, ten rounds. Front: snug; twelve times knit two purl two, turn, makes forty-eight." in lines
    assert "Back: snug; six times knit six knit two together, turn back, makes forty-two." in lines
    assert "Round two of ten, plain, makes forty-two on each half." in lines


def test_a_printed_pattern_shows_the_same_plan(tmp_path: Path):
    machine = Machine(tmp_path)
    printed = tmp_path / "printed.toml"
    printed.write_text(machine.run("show", machine.plan(), "--as", "pattern").out, encoding="utf-8")

    assert "Repeat rows 3-4 4 times more." in printed.read_text(encoding="utf-8")
    shown = [machine.run("show", file, "--as", "json").out for file in (machine.plan(), str(printed))]
    assert shown[0] == shown[1]


def test_a_mistake_is_one_clear_sentence_with_its_place(tmp_path: Path):
    machine = Machine(tmp_path)
    file = tmp_path / "hat.toml"
    file.write_text(HAT.replace("*k3, k2tog; rep from * to end", "k10, k2tog, k46"), encoding="utf-8")
    ran = machine.run("knit", str(file), *TYPED)

    assert (2, "") == (ran.code, ran.out)
    assert ran.complaint == "Line 22, column 1: Round seven uses fifty-eight of sixty stitches: work them all."


def test_a_plan_carries_its_pattern_into_the_journal():
    plan = made(HAT)

    assert plan_id(plan) != plan_id(made(HAT.replace("Rnd 4: knit.", "Rnd 4: purl.")))
