"""Every verb explains itself, with every option of the command line that was promised, and one example."""

import re
import shlex
from enum import StrEnum

import click
import pytest

from assistant.command_line import run
from plans.pattern import BindOff, Cuff, Heel, Increase, Leg, Sole, Toe
from tests.assistant.help_texts import FILE, commands, help_texts

VERBS = dict(commands())
PROMISED = {
    "roundcaller plan": {
        "--foot-length", "--ball", "--ankle", "--leg", "--cuff", "--stitches", "--rounds", "--over", "--ease",
        "--around", "--cast-on", "--toe", "--heel", "--bind-off", "--practice", "--shoe", "--out",
    },
    "roundcaller show": {"--as", "--schema"},
    "roundcaller knit": {"--journal", "--from", "--to", "--recogniser", "--grain", "--yes"},
    "roundcaller listen": {"--mic", "--json"},
    "roundcaller journal show": {"--json"},
    "roundcaller journal check": {"--json"},
    "roundcaller journal export": {"--json"},
    "roundcaller models list": set(),
    "roundcaller models fetch": set(),
    "roundcaller models verify": set(),
    "roundcaller phrases": {"--language", "--json"},
    "roundcaller demo": {"--to"},
}  # fmt: skip
RUN = {name: verb for name, verb in VERBS.items() if not isinstance(verb, click.Group)}


def test_help_texts_are_as_read() -> None:
    """After a change: `python -m tests.assistant.help_texts`, and read the difference."""
    assert FILE.read_text(encoding="utf-8") == help_texts()


def test_every_promised_verb_has_every_promised_option() -> None:
    given = {name: {opt for param in verb.params for opt in param.opts} for name, verb in VERBS.items()}
    lacking = {name: wanted - given.get(name, set()) for name, wanted in PROMISED.items()}

    assert {} == {name: options for name, options in lacking.items() if options}
    assert PROMISED.keys() <= given.keys()


@pytest.mark.parametrize(
    ("option", "kinds"),
    [
        ("--toe", Toe), ("--increase", Increase), ("--sole", Sole), ("--heel", Heel), ("--leg-style", Leg),
        ("--cuff-style", Cuff), ("--bind-off", BindOff),
    ],
)  # fmt: skip
def test_help_of_plan_lists_the_names_that_an_option_takes(
    option: str, kinds: type[StrEnum], capsys: pytest.CaptureFixture[str]
) -> None:
    assert 0 == run(["plan", "--help"])
    listed = re.search(rf"{option} \[([a-z0-9|-]+)\]", capsys.readouterr().out)

    assert listed is not None
    assert [kind.value for kind in kinds] == listed[1].split("|")


@pytest.mark.parametrize("name", VERBS)
@pytest.mark.parametrize("asked", ["-h", "--help"])
def test_help_goes_to_standard_output(name: str, asked: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert 0 == run([*name.split()[1:], asked])
    caught = capsys.readouterr()

    assert caught.out.startswith(f"Usage: {name}")
    assert "" == caught.err


@pytest.mark.parametrize("name", RUN)
def test_help_gives_an_example_that_parses(name: str) -> None:
    example = re.search(r"Example: (roundcaller [^\n]+)", RUN[name].help or "")
    assert example is not None, name
    words = shlex.split(example[1])

    assert example[1].startswith(name)
    RUN[name].make_context(name, words[len(name.split()) :]).close()


@pytest.mark.parametrize("name", VERBS)
def test_every_option_is_spelled_out_and_explained(name: str) -> None:
    for param in VERBS[name].params:
        if isinstance(param, click.Option):
            assert all(opt.startswith("--") or opt == "-h" for opt in param.opts)
            assert param.help and param.help.endswith((".", "-")), param.opts
