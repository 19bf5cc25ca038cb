"""Keys, pedals and page-turners: what they send, what it asks for, and what a held key comes to."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.key_names import NAMES, Decoder, of_windows
from assistant.keys import NUMBER_LASTS_S, Keys, KeyTable, Surface, presses
from assistant.languages import load
from assistant.listening.commands import number_of
from assistant.session_commands import ANSWERS, CountGiven
from plans.conversation import AtRound, Back, Forward, IHave, NewBall, Next, RippedBack, TapeSays, Undo, YarnLeft
from plans.quantities import Length

TABLE = KeyTable.usual()
SENT = {
    b" ": "space",
    b"\r": "enter",
    b"\n": "enter",
    b"\t": "tab",
    b"\x7f": "backspace",
    b"\b": "backspace",
    b"\x1b[A": "up",
    b"\x1b[B": "down",
    b"\x1b[C": "right",
    b"\x1b[D": "left",
    b"\x1bOA": "up",
    b"\x1bOC": "right",
    b"\x1b[5~": "page_up",
    b"\x1b[6~": "page_down",
    b"\x1b[6;2~": "page_down",
    b"\x1b[H": "home",
    b"\x1b[1~": "home",
    b"\x1b[F": "end",
    b"\x1bOP": "f1",
    b"\x1b[15~": "f5",
    b"\x1b[[E": "f5",
    b"\x1b[24~": "f12",
    b"\x1b[1;5C": "right",
    b"n": "n",
    b"N": "n",
    b".": ".",
    b"?": "?",
    b"7": "7",
    "ä".encode(): "ä",
    "Я".encode(): "я",
}


def decoded(*pieces: bytes) -> list[str]:
    decoder = Decoder()
    names = [name for piece in pieces for name in decoder.feed(piece)]
    return [*names, *decoder.flush()]


def pressed(*strokes: tuple[str, float]) -> list[object]:
    keys = Keys(TABLE)
    return [keys.press(key, at_s) for key, at_s in strokes]


def typed(*keys: str) -> object:
    """What the last of several keys, a second apart, asks for."""
    return pressed(*((key, float(at)) for at, key in enumerate(keys)))[-1]


@pytest.mark.parametrize(("sent", "name"), SENT.items())
def test_each_key_is_known_by_what_it_sends(sent: bytes, name: str) -> None:
    assert decoded(sent) == [name]


@given(st.lists(st.sampled_from(list(SENT)), max_size=8), st.data())
def test_keys_are_known_however_their_bytes_are_cut(sent: list[bytes], data: st.DataObject) -> None:
    whole = b"".join(sent)
    cuts = sorted(data.draw(st.lists(st.integers(0, len(whole)), max_size=6)))
    pieces = [whole[a:b] for a, b in zip([0, *cuts], [*cuts, len(whole)], strict=True)]

    assert decoded(*pieces) == [SENT[each] for each in sent]


@given(st.lists(st.binary(max_size=9), max_size=4))
def test_no_bytes_whatever_break_the_decoder(pieces: list[bytes]) -> None:
    for name in decoded(*pieces):
        assert name in NAMES or len(name) <= 3


def test_an_escape_alone_is_a_key_once_nothing_follows() -> None:
    decoder = Decoder()

    assert decoder.feed(b"\x1b") == ()
    assert decoder.is_pending
    assert decoder.flush() == ("escape",)
    assert not decoder.is_pending
    assert decoder.flush() == ()


@pytest.mark.parametrize(
    "sent", [b"\x1b[99~", b"\x1b[2J", b"\x00", b"\x01", b"\xff", b"\x1b[?1;2c", b"\x1bOz"]
)
def test_what_is_no_key_is_passed_over(sent: bytes) -> None:
    assert decoded(sent) == []


@pytest.mark.parametrize(
    ("first", "second", "name"),
    [
        (" ", "", "space"),
        ("\r", "", "enter"),
        ("\xe0", "Q", "page_down"),
        ("\0", ";", "f1"),
        ("\xe0", "K", "left"),
        ("\x1b", "", "escape"),
        ("N", "", "n"),
        ("à", "", "à"),
        ("\xe0", "~", None),
        ("\x01", "", None),
    ],
)
def test_the_windows_console_gives_the_same_names(first: str, second: str, name: str | None) -> None:
    assert of_windows(first, second) == name


@pytest.mark.parametrize("key", ["space", "enter", "right", "page_down", "n"])
def test_what_a_pedal_or_page_turner_sends_forward_is_next(key: str) -> None:
    assert typed(key) == Next()


@pytest.mark.parametrize("key", ["left", "backspace", "page_up", "u"])
def test_what_a_page_turner_sends_backward_is_undo(key: str) -> None:
    assert typed(key) == Undo()


@pytest.mark.parametrize(
    ("key", "kind"),
    [
        ("up", "again"),
        (".", "again"),
        ("b", "again"),
        ("down", "where_am_i"),
        ("h", "how_many"),
        ("f", "how_far"),
        ("m", "mark"),
        ("r", "redo"),
        ("?", "help"),
        ("q", "stop"),
        ("y", "yes"),
        ("x", "no"),
    ],
)
def test_each_letter_asks_for_its_command(key: str, kind: str) -> None:
    assert typed(key).kind == kind


def test_every_command_that_can_be_said_without_a_choice_has_a_key() -> None:
    """EN 301 549 V3.2.1, 4.2.6: usable without a voice."""
    wishes = {*TABLE.alone.values(), *TABLE.after_digits.values(), *(["tape_says"] if TABLE.after_millimetres else [])}
    any_key_does = {"fall_silent"}
    spoken = {*load("en").phrases.names(), *ANSWERS} - {"length_given"} - any_key_does

    assert spoken - wishes == set()
    assert wishes - spoken == {"digit", "output", "silence"}


def test_every_key_in_the_table_can_be_sent_and_stands_for_something() -> None:
    for key in (*TABLE.alone, *TABLE.after_digits, *TABLE.after_millimetres, *TABLE.brief):
        assert key in NAMES or (len(key) == 1 and key == key.lower())
    for key in TABLE.alone:
        assert isinstance(typed(key), Surface) or typed(key).kind == TABLE.alone[key]


@pytest.mark.parametrize(
    ("keys", "command"),
    [
        (("3", "3", "i"), IHave(stitches=33)),
        (("3", "3", "enter"), IHave(stitches=33)),
        (("0", "i"), IHave(stitches=0)),
        (("1", "8", "0", "&"), TapeSays(part="foot", length=Length(Fraction(180)))),
        (("9", "5", "%"), TapeSays(part="leg", length=Length(Fraction(95)))),
        (("3", "0", "$"), YarnLeft(grams=30)),
        (("*",), NewBall()),
        (("2", "j"), Back(rounds=2)),
        (("1", "4", "right"), Forward(rounds=14)),
        (("5", "g"), AtRound(round=5)),
        (("7", "/"), RippedBack(round=7)),
        (("3", "2", "#"), CountGiven(number=Fraction(32))),
        (("3", "3", "backspace", "enter"), Next()),
        (("3", "n"), Next()),
        (("1", "2", "3", "4", "i"), IHave(stitches=234)),
    ],
)
def test_digits_make_the_number_of_the_key_after_them(keys: tuple[str, ...], command: object) -> None:
    assert typed(*keys) == command


@given(st.integers(0, 999))
def test_any_count_up_to_999_can_be_typed(count: int) -> None:
    assert number_of(typed(*str(count), "i")) == count


def test_digits_that_nobody_took_are_forgotten() -> None:
    assert pressed(("3", 0.0), ("enter", NUMBER_LASTS_S))[-1] == IHave(stitches=3)
    assert pressed(("3", 0.0), ("enter", NUMBER_LASTS_S + 0.1))[-1] == Next()


@given(st.floats(0.0, 0.49), st.integers(1, 50))
def test_a_held_key_is_one_press(interval_s: float, repeats: int) -> None:
    """EN 301 549 V3.2.1, 5.8: a guard of up to half a second against double strikes."""
    commands = pressed(*(("space", at * interval_s) for at in range(repeats + 1)))

    assert commands == [Next()] + [Surface.NOTHING] * repeats


def test_a_second_press_after_the_guard_counts() -> None:
    assert pressed(("space", 0.0), ("space", 0.5)) == [Next(), Next()]


def test_another_key_in_between_counts_at_once() -> None:
    assert pressed(("space", 0.0), ("left", 0.1), ("space", 0.2)) == [Next(), Undo(), Next()]


def test_keys_pressed_twice_on_purpose_have_a_brief_guard() -> None:
    assert pressed(("3", 0.0), ("3", 0.15), ("i", 0.3))[-1] == IHave(stitches=33)
    assert pressed(("3", 0.0), ("3", 0.05), ("i", 0.3))[-1] == IHave(stitches=3)


def test_a_key_that_stands_for_two_things_is_refused() -> None:
    with pytest.raises(ValueError, match="stands for next and for undo"):
        KeyTable.read(
            "[guard]\nseconds=0.5\nbrief_seconds=0.1\nbrief=[]\n"
            '[keys]\nnext=["n"]\nundo=["n"]\n[after_digits]\n'
        )


def test_every_stroke_gives_something_so_that_the_voice_can_be_cut_short() -> None:
    times = iter([0.0, 0.1, 1.0, 2.0, 3.0])
    strokes = ["space", "space", "ß", "v", "escape"]

    assert list(presses(strokes, lambda: next(times), Keys(TABLE))) == [
        Next(),
        Surface.NOTHING,
        Surface.NOTHING,
        Surface.OUTPUT,
        Surface.SILENCE,
    ]
