"""Settings are remembered, written whole or not at all, and never lost when damaged."""

import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.languages.verbosity import Verbosity
from assistant.ports import VoiceSettings
from assistant.settings import SETTINGS_PROBLEMS, Settings, SettingsUnwritable, load_settings, save_settings
from assistant.voice import Output

names = st.none() | st.text()
voices = st.builds(VoiceSettings, rate_wpm=st.integers(80, 450), volume=st.floats(0, 1), voice=names)
all_settings = st.builds(
    Settings, microphone=names, speaker=names, voice=voices, verbosity=st.sampled_from(Verbosity),
    attention=st.booleans(), output=st.sampled_from(Output), rests=st.booleans(), language=st.text(),
)  # fmt: skip


@settings(max_examples=30, deadline=None)
@given(all_settings, all_settings)
def test_the_settings_written_last_are_read(first: Settings, last: Settings) -> None:
    with tempfile.TemporaryDirectory() as folder:
        for each in (first, last):
            save_settings(Path(folder), each)

        assert load_settings(Path(folder)) == (last, None)
        assert [path.name for path in Path(folder).iterdir()] == ["settings.json"]


def test_without_a_file_the_usual_ones_hold(tmp_path: Path) -> None:
    assert load_settings(tmp_path / "nowhere") == (Settings(), None)


def test_the_folder_is_made_when_first_written(tmp_path: Path) -> None:
    folder = tmp_path / "a" / "b"
    save_settings(folder, Settings(microphone="USB"))

    assert load_settings(folder).settings.microphone == "USB"


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"{",
        b"\xff\xfe",
        b"[]",
        b'{"microphone": 3}',
        b'{"mikrofon": "USB"}',
        b'{"voice": {"rate_wpm": 5}}',
    ],
)
def test_a_damaged_file_is_reported_and_set_aside(tmp_path: Path, content: bytes) -> None:
    file = tmp_path / "settings.json"
    for number in (1, 2):
        file.write_bytes(content)
        loaded = load_settings(tmp_path)
        aside = tmp_path / f"settings.json.damaged-{number}"

        assert loaded.settings == Settings()
        assert loaded.problem.key == "settings-damaged"
        assert dict(loaded.problem.values) == {"file": str(file), "aside": str(aside)}
        assert set(dict(loaded.problem.values)) == SETTINGS_PROBLEMS["settings-damaged"]
        assert aside.read_bytes() == content
        assert not file.exists()


def test_a_folder_in_the_way_is_reported(tmp_path: Path) -> None:
    (tmp_path / "settings.json").mkdir()
    loaded = load_settings(tmp_path)

    assert loaded.settings == Settings()
    assert loaded.problem.key == "settings-unreadable"
    with pytest.raises(SettingsUnwritable) as refused:
        save_settings(tmp_path, Settings())
    assert set(refused.value.values) == SETTINGS_PROBLEMS[refused.value.key]
    assert [path.name for path in tmp_path.iterdir()] == ["settings.json"]


def test_what_cannot_be_written_leaves_the_old_ones(tmp_path: Path) -> None:
    (tmp_path / "in the way").write_text("")
    with pytest.raises(SettingsUnwritable):
        save_settings(tmp_path / "in the way", Settings())


def test_a_person_can_read_and_edit_the_file(tmp_path: Path) -> None:
    save_settings(tmp_path, Settings(microphone="Röhre"))
    file = tmp_path / "settings.json"
    text = file.read_text(encoding="utf-8")
    assert '\n  "microphone": "Röhre",\n' in text

    file.write_text(text.replace("plain", "terse"), encoding="utf-8")
    assert load_settings(tmp_path).settings.verbosity is Verbosity.TERSE
