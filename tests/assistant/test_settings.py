"""Settings are remembered, written whole or not at all, and never lost when damaged."""

import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.languages.verbosity import Verbosity
from assistant.settings import SETTINGS_PROBLEMS, Memory, Settings, SettingsUnwritable, load_settings, save_settings
from assistant.voice import Output

names = st.none() | st.text()
all_settings = st.builds(
    Settings, microphone=names, speaker=names, voice=names, words_a_minute=st.integers(80, 450),
    loudness_percent=st.integers(10, 100), output=st.sampled_from(Output), wording=st.sampled_from(Verbosity),
    attention_word=st.booleans(), careful=st.booleans(),
    rests=st.booleans(), rest_after_minutes=st.integers(20, 240), language=st.text(),
)  # fmt: skip


@settings(max_examples=30, deadline=None)
@given(all_settings, all_settings)
def test_the_settings_written_last_are_read(first: Settings, last: Settings) -> None:
    with tempfile.TemporaryDirectory() as folder:
        for each in (first, last):
            save_settings(Path(folder), each)

        assert load_settings(Path(folder)) == (last, None)
        assert [path.name for path in Path(folder).iterdir()] == ["settings.toml"]


def test_without_a_file_the_usual_ones_hold(tmp_path: Path) -> None:
    assert load_settings(tmp_path / "nowhere") == (Settings(), None)


def test_the_folder_is_made_when_first_written(tmp_path: Path) -> None:
    folder = tmp_path / "a" / "b"
    save_settings(folder, Settings(microphone="USB"))

    assert load_settings(folder).settings.microphone == "USB"


@pytest.mark.parametrize(
    "content",
    [
        b"microphone = ",
        b"\xff\xfe",
        b"[[microphone]]",
        b"microphone = 3",
        b"microphone = 2026-01-01",
        b'mikrofon = "USB"',
        b"words_a_minute = 5",
        b"loudness_percent = 101",
        b'output = "loud"',
    ],
)
def test_a_damaged_file_is_reported_and_set_aside(tmp_path: Path, content: bytes) -> None:
    file = tmp_path / "settings.toml"
    for number in (1, 2):
        file.write_bytes(content)
        loaded = load_settings(tmp_path)
        aside = tmp_path / f"settings.toml.damaged-{number}"

        assert loaded.settings == Settings()
        assert loaded.problem.key == "settings-damaged"
        assert dict(loaded.problem.values) == {"file": str(file), "aside": str(aside)}
        assert set(dict(loaded.problem.values)) == SETTINGS_PROBLEMS["settings-damaged"]
        assert aside.read_bytes() == content
        assert not file.exists()


def test_a_folder_in_the_way_is_reported(tmp_path: Path) -> None:
    (tmp_path / "settings.toml").mkdir()
    loaded = load_settings(tmp_path)

    assert loaded.settings == Settings()
    assert loaded.problem.key == "settings-unreadable"
    with pytest.raises(SettingsUnwritable) as refused:
        save_settings(tmp_path, Settings())
    assert set(refused.value.values) == SETTINGS_PROBLEMS[refused.value.key]
    assert [path.name for path in tmp_path.iterdir()] == ["settings.toml"]


def test_what_cannot_be_written_leaves_the_old_ones(tmp_path: Path) -> None:
    (tmp_path / "in the way").write_text("")
    with pytest.raises(SettingsUnwritable):
        save_settings(tmp_path / "in the way", Settings())


def test_a_person_can_read_and_edit_the_file(tmp_path: Path) -> None:
    save_settings(tmp_path, Settings(microphone="Röhre"))
    file = tmp_path / "settings.toml"
    text = file.read_text(encoding="utf-8")
    assert 'microphone = "Röhre"\n' in text

    file.write_text(text.replace("plain", "terse"), encoding="utf-8")
    assert load_settings(tmp_path).settings.wording is Verbosity.TERSE


def test_an_empty_file_and_lines_left_out_mean_the_usual(tmp_path: Path) -> None:
    (tmp_path / "settings.toml").write_text("")
    assert load_settings(tmp_path) == (Settings(), None)

    (tmp_path / "settings.toml").write_text("rests = false\n")
    assert load_settings(tmp_path) == (Settings(rests=False), None)


def test_a_change_is_on_the_disk_at_once_and_what_stays_the_same_writes_nothing(tmp_path: Path) -> None:
    memory = Memory(tmp_path, Settings())
    assert memory.change(words_a_minute=170) is None
    assert not (tmp_path / "settings.toml").exists()

    assert memory.change(words_a_minute=200, microphone="USB") is None
    assert load_settings(tmp_path).settings == memory.settings == Settings(words_a_minute=200, microphone="USB")


def test_what_is_not_to_be_remembered_is_not_written(tmp_path: Path) -> None:
    memory = Memory(None, Settings())
    assert memory.change(words_a_minute=200) is None
    assert memory.settings == Settings(words_a_minute=200)
    assert list(tmp_path.iterdir()) == []


def test_a_change_that_cannot_be_written_is_told_and_holds_until_the_end(tmp_path: Path) -> None:
    (tmp_path / "in the way").write_text("")
    memory = Memory(tmp_path / "in the way", Settings())
    problem = memory.change(words_a_minute=200)

    assert problem is not None
    assert set(dict(problem.values)) == SETTINGS_PROBLEMS[problem.key]
    assert memory.settings == Settings(words_a_minute=200)


@pytest.mark.parametrize("changes", [{"words_a_minute": 5}, {"loudness_percent": 0}, {"colour": "red"}])
def test_values_outside_their_limits_are_not_taken(changes: dict[str, object], tmp_path: Path) -> None:
    with pytest.raises(ValueError, match="validation error"):
        Memory(tmp_path, Settings()).change(**changes)
