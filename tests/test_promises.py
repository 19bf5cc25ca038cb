"""What README and DEVELOPERS promise is so: nothing goes online, nothing heard is kept, what they name exists."""

import re
import shlex
import subprocess
import sys
import tomllib
import wave
from collections.abc import Iterator
from pathlib import Path

import click
import numpy as np
import pytest

from assistant.journal import Journal
from assistant.keys import KeyTable
from assistant.languages import load
from tests.assistant.help_texts import commands
from tests.assistant.running import ROOT, Machine
from tests.source import MODULES, read

README = (ROOT / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
VERBS = dict(commands())
ONLINE = {"models/downloading.py", "models/fetching.py"}
"""The only modules that may know how to open a connection."""
HINDERING = {"models/vosk_recogniser.py"}
"""Knows of sockets only to keep a library from opening one: `test_listening_opens_no_connection` shows that it does."""


# --- nothing is sent anywhere --------------------------------------------------------------------------------------

_NETWORK = re.compile(
    r"^\s*(?:import|from)\s+(socket|ssl|http|urllib|ftplib|smtplib|asyncio|xmlrpc|requests|httpx|aiohttp|urllib3)\b",
    re.MULTILINE,
)


def test_only_what_fetches_models_knows_the_network() -> None:
    knowing = {str(path) for path in MODULES if _NETWORK.search(read(path))}

    assert "models/downloading.py" in knowing
    assert set() == knowing - ONLINE - HINDERING


@pytest.fixture
def offline(tmp_path: Path) -> Machine:
    """A machine on which opening any socket fails, and says so."""
    return Machine(tmp_path, "no_network")


def test_the_refusal_of_sockets_is_real(offline: Machine) -> None:
    code = "import socket\nsocket.socket()"
    tried = subprocess.run(
        [sys.executable, "-c", code], env=offline.environment, capture_output=True, text=True, check=False
    )

    assert 1 == tried.returncode
    assert "a socket was opened" in tried.stderr


def test_a_whole_session_opens_no_connection(offline: Machine) -> None:
    """Plan, show, knit with its own voice, look at the journal: with every socket refused."""
    plan = offline.home / "socks.toml"
    for verb in (
        ("plan", "--practice", "--stitches", "22", "--rounds", "30", "--out", plan), ("show", plan),
        ("phrases",), ("models", "list"), ("models", "verify"),
    ):  # fmt: skip
        assert 0 == offline.run(*verb).code
    words = "next\n" * 12 + "where am i\nhelp\nhow long\nstop for today\nyes\n"
    ran = offline.run("knit", plan, "--recogniser", "typed", "--to", "answers.wav", typed=words)

    assert (0, "") == (ran.code, ran.err)
    assert 0 == offline.run("journal", "check", offline.journal).code


def test_listening_opens_no_connection(offline: Machine) -> None:
    take = offline.home / "next.wav"
    subprocess.run(["espeak-ng", "-v", "en-us", "-s", "150", "-w", str(take), "next"], check=True)
    listened = offline.run("listen", take, "--json")
    knitted = offline.run("knit", offline.plan(), "--from", take, "--to", "none")

    assert (0, "") == (listened.code, listened.err)
    assert 1 == len(listened.lines)
    assert (0, "") == (knitted.code, knitted.err)


def test_a_vosk_model_that_is_missing_is_not_looked_for_online(offline: Machine) -> None:
    take = offline.home / "take.wav"
    with wave.open(str(take), "wb") as file:
        file.setparams((1, 2, 16_000, 0, "NONE", ""))
        file.writeframes(np.zeros(16_000, np.int16).tobytes())
    ran = offline.run("listen", take, "--recogniser", "vosk", "--model", "vosk-small-en-us")

    assert 1 == ran.code
    assert ran.complaint.startswith("The model vosk-small-en-us is not on this machine")


def test_fetching_is_what_the_refusal_catches(offline: Machine) -> None:
    """The guard itself works: the one verb that goes online is stopped by it."""
    ran = offline.run("models", "fetch", "vosk-small-en-us", "--accept-unknown")

    assert 1 == ran.code
    assert ran.complaint.startswith("The model vosk-small-en-us cannot be fetched")


def test_no_sound_and_no_talk_is_kept(offline: Machine) -> None:
    """A session at a recording leaves its plan, its journal and the recording, and of talk not a word."""
    offline.run(
        "knit", offline.plan(), "--recogniser", "typed", "--to", "none", typed="next\nmy aunt has a secret\nnext\n"
    )

    assert [] == [file for file in offline.home.rglob("*") if file.suffix in {".wav", ".raw", ".flac"}]
    with Journal.read(offline.journal) as journal:
        assert ["next", "next"] == [entry.heard for entry in journal.entries() if entry.heard]
    assert all(b"secret" not in file.read_bytes() for file in offline.home.rglob("*") if file.is_file())


# --- README and DEVELOPERS -----------------------------------------------------------------------------------------


def sh_blocks() -> list[str]:
    return re.findall(r"^```sh\n(.*?)^```", README, re.MULTILINE | re.DOTALL)


def called(text: str) -> list[str]:
    """Every `roundcaller …` line of a text, in a block or between backquotes."""
    blocks = re.findall(r"^(?:    |\t)(?:\.venv/bin/)?(roundcaller\b.*)$", text, re.MULTILINE)
    quoted = re.findall(r"`(?:\.venv/bin/)?(roundcaller\b[^`]*)`", text)
    chained = [part.split("&&")[0] for block in sh_blocks() for part in re.findall(r"(roundcaller [^\n]*)", block)]
    return [line.strip() for line in (*blocks, *quoted, *(chained if text is README else ()))]


def test_readme_says_the_job_first_and_gives_two_lines_to_run() -> None:
    first = README.split("\n\n")[1]
    blocks = sh_blocks()

    assert len(first) > 200 and "\n#" not in first
    assert 2 == len(blocks)
    assert [1, 1] == [len(block.splitlines()) for block in blocks]
    assert blocks[0].rstrip().endswith("roundcaller demo")
    assert "pytest" in blocks[1]
    assert README.index(first) < README.index(blocks[0])


def test_readmes_lines_are_shell() -> None:
    for block in sh_blocks():
        assert 0 == subprocess.run(["bash", "-n", "-c", block], check=False).returncode


def test_readmes_lines_install_what_there_is() -> None:
    project = tomllib.loads(read(Path("pyproject.toml")))["project"]
    extras = set(re.findall(r"'\.\[(\w+)\]'", README + DEVELOPERS))

    assert extras <= project["optional-dependencies"].keys()
    assert "tests" in extras
    assert {"roundcaller": "assistant.command_line:main"} == project["scripts"]


def test_every_dependency_has_a_lower_bound_and_a_reason() -> None:
    project = tomllib.loads(read(Path("pyproject.toml")))["project"]

    for needed in project["dependencies"]:
        name, _, bound = needed.partition(">=")
        assert bound, needed
        assert name in DEVELOPERS


CALLS = sorted({*called(README), *called(DEVELOPERS)})


def test_there_are_commands_in_the_documents() -> None:
    assert len(CALLS) > 6


@pytest.mark.parametrize("line", CALLS)
def test_every_command_in_the_documents_parses(line: str) -> None:
    """Each form that `a|b` stands for, and each option."""
    for words in _forms(shlex.split(line)):
        name = "roundcaller"
        while f"{name} {words[0]}" in VERBS if words else False:
            name = f"{name} {words.pop(0)}"
        try:
            VERBS[name].make_context(name, [*words], resilient_parsing=_only_named(words)).close()
        except click.exceptions.Exit as done:
            assert 0 == done.exit_code


def _only_named(words: list[str]) -> bool:
    """Whether the line names a verb or an option without saying on what; then what is missing is not asked for."""
    return len(words) < 2 or "NAME" in words


def _forms(words: list[str]) -> Iterator[list[str]]:
    wide = next((at for at, word in enumerate(words) if "|" in word), None)
    if wide is None:
        yield words[1:]
        return
    for word in words[wide].split("|"):
        yield from _forms([*words[:wide], word, *words[wide + 1 :]])


def test_every_option_in_the_documents_exists() -> None:
    known = {opt for verb in VERBS.values() for param in verb.params for opt in (*param.opts, *param.secondary_opts)}
    benchmarks = {"--ears"}
    tools = {"--set", "--phrases", "--json", "--vocabulary", "--most"}
    shell = " ".join(sh_blocks())
    named = {option for option in re.findall(r"(?<![\w-])--[a-z][a-z-]*", README + DEVELOPERS) if option not in shell}

    assert set() == named - known - benchmarks - tools


def test_every_file_in_the_documents_exists() -> None:
    quoted = re.findall(r"`([\w./*-]+\.(?:py|toml|ftl|sqlite|md)|[\w-]+/[\w./-]+|\.ci/\w+)`", README + DEVELOPERS)
    homes = ("", "assistant/", "plans/", "models/", "assistant/languages/en/", "tests/")
    missing = [name for name in quoted if not any([*ROOT.glob(home + name.rstrip("/"))] for home in homes)]

    assert len(quoted) > 20
    assert [] == missing


@pytest.mark.parametrize("module", re.findall(r"python -m ((?:tests|models)(?:\.\w+)+)", README + DEVELOPERS))
def test_every_module_to_run_exists(module: str) -> None:
    place = ROOT / module.replace(".", "/")

    assert place.with_suffix(".py").is_file() or (place / "__main__.py").is_file()


def test_what_readme_says_one_can_say_is_understood() -> None:
    table = README.split("| Say | It |")[1].split("\n\n")[0]
    language = load("en")
    phrases = [
        phrase.split("(")[0].strip().lower()
        for row in table.splitlines()[2:] for phrase in row.split("|")[1].split("·")
    ]  # fmt: skip

    assert len(phrases) > 20
    assert [] == [phrase for phrase in phrases if language.phrases.match(phrase) is None]


def keys_told(text: str) -> dict[str, str]:
    """Key → what is said of it, out of "space is next, U undo, the question mark help"."""
    found = re.findall(r"(space|the question mark|\b[A-Z]\b) (?:is )?([a-z ]+?)(?=[,.])", text)
    names = {"space": "space", "the question mark": "?"}
    return {names.get(key, key.lower()): wish for key, wish in found}


def test_the_keys_that_help_tells_do_what_it_says() -> None:
    from assistant.speaking.wording import word
    from plans.conversation import Reply

    language = load("en")
    told = keys_told(word(Reply.of("help-keys"), language))
    table = KeyTable.usual()
    meant = {key: match.name for key, wish in told.items() if (match := language.phrases.match(wish)) is not None}

    assert len(told) > 8
    assert meant.keys() == told.keys()
    assert {key: table.alone[key] for key in told} == meant
