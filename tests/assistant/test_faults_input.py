"""Bad input, typed as a user types it: one clear sentence each, exit code 2, and nothing written."""

from pathlib import Path

import pytest

from assistant.command_line import run
from plans.pattern import Heel
from tests.assistant.running import HERS, PRACTICE_OPTIONS

SWATCH = ("--stitches", "30", "--rounds", "42")


def complaints(capsys: pytest.CaptureFixture[str], *arguments: object) -> list[str]:
    """The lines on standard error of a command that is refused as bad input, and says nothing else."""
    code = run([str(argument) for argument in arguments])
    caught = capsys.readouterr()
    assert (2, "") == (code, caught.out), caught.err
    assert "Traceback" not in caught.err
    return caught.err.splitlines()


MEASUREMENTS = {
    "a bare number": (
        ("--foot-length", "24.5", *SWATCH),
        "--foot-length: The foot length, “24.5”, has no unit: write 24.5cm, 24.5mm or 24.5in.",
    ),
    "an unknown unit": (
        ("--foot-length", "24.5m", *SWATCH),
        "--foot-length: The foot length, “24.5m”: “m” is no unit here, use cm, mm or in.",
    ),
    "less than nothing": (
        ("--foot-length", "-24.5cm", *SWATCH),
        "--foot-length: The foot length, “-24.5cm”, is not a length: write a number and its unit, such as 24.5cm.",
    ),
    "a giant": (
        ("--foot-length", "90cm", "--ball", "23cm", *SWATCH),
        "The foot length, ninety centimetres, is not between five centimetres and forty centimetres: measure it again.",
    ),
    "no foot at all": (SWATCH, "The foot length is missing: give it, or a shoe size."),
    "a gauge of zero": (
        ("--foot-length", "24.5cm", "--stitches", "0", "--rounds", "42"),
        "The swatch's stitches cannot be zero: count the swatch.",
    ),
    "rounds of zero": (
        ("--foot-length", "24.5cm", "--stitches", "30", "--rounds", "0"),
        "The swatch's rounds cannot be zero: count the swatch.",
    ),
    "a swatch of no width": (
        (*HERS, "--over", "0cm"),
        "The width of the swatch, zero centimetres, is not between one centimetre and one hundred centimetres",
    ),
    "a foot shorter than its toe and heel": (
        ("--foot-length", "10cm", "--around", "96", *SWATCH),
        "Toe, gusset and heel turn need",
    ),
    "an odd half": (
        (*HERS, "--around", "62"), "Sixty-two stitches around is no multiple of four: take sixty or sixty-four.",
    ),
    "an odd number around": (
        (*HERS, "--around", "63"), "Sixty-three stitches around is no multiple of four: take sixty or sixty-four.",
    ),
    "another odd half": (
        (*HERS, "--around", "66"),
        "Sixty-six stitches around is no multiple of four: take sixty-four or sixty-eight.",
    ),
    "no number around": (
        (*HERS, "--around", "many"),
        "--around: The stitches around, “many”, is not a whole number: write one such as 64.",
    ),
    "an odd cast-on": (
        (*HERS, "--cast-on", "23"),
        "A cast-on of twenty-three loops does not grow into sixty-four stitches: take twenty or twenty-four.",
    ),
    "a cast-on wider than the sock": (
        (*HERS, "--cast-on", "80"),
        "A cast-on of eighty loops is too many for sixty-four stitches: take at most sixty-four.",
    ),
    "an ease that is no number": (
        (*HERS, "--ease", "some"), "--ease: The ease, “some”, is not a number: write one such as 30 or 30.5.",
    ),
    "an ease of half": (
        (*HERS, "--ease", "50%"),
        "An ease of 50 percent is not between zero and forty: choose one that is.",
    ),
    "a heel that there is none": (
        (*HERS, "--heel", "round"), f"--heel takes one of {', '.join(Heel)}.",
    ),
    "a shoe of two lengths": (
        ("--shoe", "US 8", *SWATCH),
        "“US 8” is twenty-five point four centimetres for men and twenty-four point six centimetres for women",
    ),
    "a shoe of no system": (
        ("--shoe", "39", *SWATCH), "“39” does not say whose shoe size it is: write EU, UK or US before it.",
    ),
    "a shoe that is none": (
        ("--shoe", "boots", *SWATCH), "“boots” is not a shoe size: write it such as EU 39.",
    ),
    "a shoe for nobody": (("--shoe", "EU 99", *SWATCH), "“EU 99” is not between"),
    "socks of one name": (
        (*PRACTICE_OPTIONS, "--socks", "mine,mine"), "Both socks are called mine: give them two names.",
    ),
    "one name for two socks": (
        (*PRACTICE_OPTIONS, "--socks", "mine"),
        "--socks: The names of the two socks, “mine”, is not two names: give two, such as first and second.",
    ),
    "three names for two socks": (
        (*PRACTICE_OPTIONS, "--socks", "a,b,c"),
        "--socks: The names of the two socks, “a,b,c”, is not two names: give two, such as first and second.",
    ),
    "names that are empty": (
        (*PRACTICE_OPTIONS, "--socks", ","),
        "The names of the two socks must not be empty: write something, or leave it out.",
    ),
    "no gauge for the practice pair": (
        ("--practice", "--stitches", "22"), "--rounds: The swatch's rounds must be given: add what is missing.",
    ),
}  # fmt: skip


@pytest.mark.parametrize(("options", "sentence"), MEASUREMENTS.values(), ids=MEASUREMENTS)
def test_what_cannot_be_knitted_is_refused_in_one_sentence(
    options: tuple[str, ...], sentence: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (line,) = complaints(capsys, "plan", *options, "--out", tmp_path / "socks.toml")

    assert line.startswith(sentence), line
    assert [] == list(tmp_path.iterdir())


def test_every_problem_is_told_at_once_a_line_each(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    options = ("--foot-length", "24.5", "--ball", "x", "--stitches", "many")
    lines = complaints(capsys, "plan", *options, "--out", tmp_path / "socks.toml")

    assert ["--foot-length", "--ball", "--stitches", "--rounds"] == [line.partition(":")[0] for line in lines]


@pytest.mark.parametrize(("options", "sentence"), [
    (("plan", *HERS), "--out must be given: see “roundcaller plan --help”."),
    (("plan", *HERS, "--out"), "--out needs a value after it: see “roundcaller --help”."),
    (("plan", *HERS, "--wool", "red", "--out", "x.toml"), "There is no option --wool: see “roundcaller plan --help”."),
    (("knot",), "“roundcaller” has no “knot”: choose from plan, show, knit, "),
    (("journal", "burn"), "“roundcaller journal” has no “burn”: choose from show, check, "),
    (("journal", "show"), "FILE is missing: see “roundcaller journal show --help”."),
    (("show",), "FILE is missing: name a plan file, or give --schema."),
    (("show", "--as", "xml"), "--as takes one of text, json"),
    (("knit", "--grain", "inch"), "--grain takes one of follow, group, half, side, round."),
    (("knit", "--recogniser", "typed", "--from", "words.txt"),
     "With --recogniser typed words come from standard input: leave --from out."),
    (("knit", "--recogniser", "typed", "--from", "mic"),
     "With --recogniser typed words come from standard input: leave --from out."),
    (("knit", "--model", "vosk-small-en-us"), "--model is for --recogniser vosk: give both, or neither."),
    (("knit", "--to", "speakers"), "--to takes speaker, none or a file such as answers.wav, not “speakers”."),
    (("listen", "--recogniser", "typed", "x.wav"), "--recogniser takes one of pocketsphinx, vosk."),
    (("listen",), "Say what to listen to: one or more sound files, or --mic."),
    (("listen", "--mic", "x.wav"), "Say what to listen to: one or more sound files, or --mic."),
    (("listen", "x.wav"), "There is no sound file x.wav: check the name."),
    (("models", "fetch"), "NAME is missing: see “roundcaller models fetch --help”."),
    (("models", "fetch", "ears"), "There is no model “ears”: choose from"),
    (("models", "verify", "ears"), "There is no model “ears”: choose from"),
])  # fmt: skip
def test_wrong_use_is_refused_in_one_sentence(
    options: tuple[str, ...], sentence: str, capsys: pytest.CaptureFixture[str]
) -> None:
    (line,) = complaints(capsys, *options)

    assert line.startswith(sentence), line


@pytest.mark.parametrize("verb", [
    ("plan", *PRACTICE_OPTIONS, "--out", "never.toml"), ("show", "{plan}"), ("knit", "{plan}", "--to", "none"),
    ("listen", "x.wav"), ("phrases",), ("demo",), ("models", "verify"), ("models", "fetch", "x"),
])  # fmt: skip
@pytest.mark.parametrize("code", ["xx", "../en", ""])
def test_a_language_that_there_is_none_is_told_with_those_there_are(
    verb: tuple[str, ...], code: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:  # fmt: skip
    monkeypatch.chdir(tmp_path)
    plan = tmp_path / "socks.toml"
    assert 0 == run(["plan", *PRACTICE_OPTIONS, "--out", str(plan)])
    capsys.readouterr()
    options = (option.format(plan=plan) for option in verb)

    assert [f"There is no language “{code}”: choose from en."] == complaints(capsys, *options, "--language", code)
    assert [plan] == list(tmp_path.iterdir())


UNREADABLE = {
    "no TOML": ("name = \n", "The plan file cannot be read at line 1, column 8: name =. Mend that line."),
    "an unknown field": ('colour = "red"\n[swatch]\nstitches = 30\nrounds = 42\n',
                         "Line 1, column 1: There is nothing called “colour” in a plan file: take it out."),
    "a bare length": ('foot_length = "24.5"\n[swatch]\nstitches = 30\nrounds = 42\n',
                      "Line 1, column 15: The foot length, “24.5”, has no unit: write 24.5cm, 24.5mm or 24.5in."),
    "a later version": ("schema_version = 9\n",
                        "The plan file has version 9, and this program knows 1: use a newer program."),
    "a gauge of zero": ("practice = true\n[swatch]\nstitches = 0\nrounds = 42\n",
                        "The swatch's stitches cannot be zero: count the swatch."),
    "nothing for the feet": ("[swatch]\nstitches = 30\nrounds = 42\n",
                             "The foot length is missing: give it, or a shoe size."),
}  # fmt: skip


@pytest.mark.parametrize("verb", ["show", "knit"])
@pytest.mark.parametrize(("text", "sentence"), UNREADABLE.values(), ids=UNREADABLE)
def test_a_plan_file_that_cannot_be_used_is_told_with_its_place(
    text: str, sentence: str, verb: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "socks.toml"
    file.write_text(text, encoding="utf-8")

    assert [sentence] == complaints(capsys, verb, file)
    assert [file] == list(tmp_path.iterdir())


def test_what_is_no_plan_file_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    sound = tmp_path / "take.wav"
    sound.write_bytes(b"RIFF\xff\xfe\x00\x01")

    assert [f"There is no file {tmp_path}/none.toml: check the name."] == complaints(
        capsys, "show", tmp_path / "none.toml"
    )
    assert [f"{sound} is not a text file: give a plan file."] == complaints(capsys, "show", sound)
    (folder,) = complaints(capsys, "show", tmp_path)
    assert folder.startswith(f"{tmp_path} cannot be read (Is a directory)")


def test_a_file_without_end_is_not_read_to_its_end(capsys: pytest.CaptureFixture[str]) -> None:
    (line,) = complaints(capsys, "show", "/dev/zero")

    assert line.startswith("The plan file has more than")


@pytest.mark.parametrize(("options", "said"), [
    (("--foot-length", "9 5/8in", "--ball", "9 1/16in", "--stitches", "30", "--rounds", "42"), "62.15"),
    (("--foot-length", "24,5cm", "--ball", "23 cm", "--stitches", "30,5", "--rounds", "42"), "63.14"),
    (("--foot-length", "24½cm", "--ball", "230mm", "--stitches", "30", "--rounds", "42"), "62.1 stitches"),
    ((*HERS, "--over", "4in"), "61.12"),
    (("--shoe", "EU 39", *SWATCH), "Shoe size EU 39 means a foot of twenty-four point seven centimetres"),
    (("--shoe", "UK 6", *SWATCH), "Shoe size UK 6 means a foot of twenty-four point six centimetres"),
    (("--shoe", "US 8 women", *SWATCH), "Shoe size US women 8 means a foot of twenty-four point six centimetres"),
    ((*HERS, "--ease", "10"), "62.1 stitches"),
    ((*HERS, "--ease", "10%"), "62.1 stitches"),
])  # fmt: skip
def test_lengths_and_sizes_are_taken_as_people_write_them(
    options: tuple[str, ...], said: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "socks.toml"

    assert 0 == run(["plan", *options, "--out", str(out)])
    told = capsys.readouterr()
    assert said in told.err
    assert "" == told.out
    assert 0 == run(["show", str(out)])
