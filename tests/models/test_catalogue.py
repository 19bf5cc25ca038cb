"""The catalogue says where each model is from, and what is here can be checked against it."""

import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from models.catalogue import Model, catalogue, find, read_catalogue
from models.errors import ERRORS, ChecksumUnknown, ModelBroken, ModelMissing, ModelProblem, ModelUnknown
from models.keeping import (
    Against,
    Receipt,
    hash_files,
    list_models,
    model_path,
    read_receipt,
    receipt_path,
    verify,
    write_receipt,
)

NOWHERE = Path("/nowhere")
PACKAGED = "pocketsphinx-en-us"


def changed(name, **changes):
    """The catalogue with one model changed."""
    return {**catalogue(), name: replace(find(name), **changes)}


@pytest.fixture
def kept(tmp_path):
    """A fetched model of two files, with its receipt; gives its data folder and catalogue."""
    folder = tmp_path / "models" / "small" / "am"
    folder.mkdir(parents=True)
    (folder / "final.mdl").write_bytes(b"model")
    (folder.parent / "words").write_bytes(b"words")
    write_receipt("small", tmp_path, Receipt("00", Against.CATALOGUE, hash_files(folder.parent)))
    return tmp_path, {"small": Model("small", "en", "vosk", "MIT", "invented", url="http://127.0.0.1/")}


@pytest.mark.parametrize("model", catalogue().values(), ids=list(catalogue()))
def test_every_model_says_what_it_is_and_where_it_is_from(model):
    assert model.purpose in {"pocketsphinx", "vosk", "voice activity", "second opinion"}
    assert model.licence in {"Apache-2.0", "BSD-2-Clause", "MIT"}
    assert (model.url is None) != (model.package is None)
    assert model.url is None or (model.url.startswith("https://") and model.url.endswith(".zip"))
    assert model.note
    for checksum in [*model.files.values(), *([model.sha256] if model.sha256 else [])]:
        assert len(bytes.fromhex(checksum)) == 32


def test_a_model_with_a_checksum_has_a_size_and_every_packaged_file_a_checksum():
    for model in catalogue().values():
        assert bool(model.files) == (model.package is not None)
        assert model.size_bytes is not None or model.sha256 is None


def test_a_misspelt_field_in_the_catalogue_is_refused():
    with pytest.raises(TypeError, match="licens"):
        read_catalogue('[[model]]\nname = "a"\nlicens = "MIT"\n')


def test_an_unknown_name_is_told_with_all_known_ones():
    with pytest.raises(ModelUnknown) as unknown:
        model_path("nothing", NOWHERE)

    assert {"name": "nothing", "names": ", ".join(catalogue())} == unknown.value.values


def test_packaged_models_are_here_and_fetched_ones_are_not_at_first():
    here = {state.model.name for state in list_models(NOWHERE) if state.path is not None}

    assert {model.name for model in catalogue().values() if model.package is not None} == here


def test_the_recorded_size_of_packaged_models_is_their_files():
    for state in list_models(NOWHERE):
        if state.path is not None:
            actual = sum((state.path / file).stat().st_size for file in state.model.files)
            assert state.model.size_bytes == actual


@pytest.mark.parametrize("name", ["pocketsphinx-en-us", "commands-en", "voice-activity", "whisper-tiny-en"])
def test_packaged_models_are_what_was_recorded(name):
    assert verify(name, NOWHERE) in {Against.CATALOGUE, Against.PACKAGE}


def test_another_version_of_the_package_is_compared_with_the_packages_own_list():
    other = changed(PACKAGED, package_version="0.0.1", files={"en-us/mdef": "00"})

    assert Against.PACKAGE is verify(PACKAGED, NOWHERE, other)


def test_a_packaged_file_that_differs_is_named_with_the_cure():
    damaged = changed(PACKAGED, package_version=None, files={**find(PACKAGED).files, "en-us/mdef": "00" * 32})

    with pytest.raises(ModelBroken) as broken:
        verify(PACKAGED, NOWHERE, damaged)

    cure = "pip install --force-reinstall pocketsphinx"
    assert {"name": PACKAGED, "what": "en-us/mdef", "cure": cure} == broken.value.values


def test_a_package_without_a_list_of_its_own_cannot_be_checked():
    unlisted = changed("voice-activity", package_version="0.0.1")

    with pytest.raises(ChecksumUnknown):
        verify("voice-activity", NOWHERE, unlisted)


def test_a_package_that_is_not_installed_is_a_missing_model_with_its_cure():
    uninstalled = changed(PACKAGED, package="no_such_package")

    with pytest.raises(ModelMissing) as missing:
        model_path(PACKAGED, NOWHERE, uninstalled)

    assert missing.value.values["cure"] == "pip install --force-reinstall no_such_package"


def test_a_model_not_yet_fetched_is_missing_with_the_command_that_fetches_it():
    with pytest.raises(ModelMissing) as missing:
        model_path("vosk-small-en-us", NOWHERE)

    expected = {"name": "vosk-small-en-us", "cure": "roundcaller models fetch vosk-small-en-us"}
    assert expected == missing.value.values


def test_a_fetched_model_is_found_and_sound(kept):
    data_dir, known = kept

    assert data_dir / "models" / "small" == model_path("small", data_dir, known)
    assert Against.CATALOGUE is verify("small", data_dir, known)


@pytest.mark.parametrize(
    ("damage", "file"),
    [
        (lambda folder: (folder / "words").write_bytes(b"wordz"), "words"),
        (lambda folder: (folder / "am" / "final.mdl").unlink(), "am/final.mdl"),
        (lambda folder: (folder / "am" / "more").write_bytes(b""), "am/more"),
        (lambda folder: shutil.move(folder / "words", folder / "am"), "am/words"),
    ],
    ids=["changed", "missing", "additional", "moved"],
)
def test_any_damage_to_a_fetched_model_is_found_and_the_file_named(kept, damage, file):
    data_dir, known = kept
    damage(data_dir / "models" / "small")

    with pytest.raises(ModelBroken) as broken:
        verify("small", data_dir, known)

    assert {"name": "small", "what": file, "cure": "roundcaller models fetch small"} == broken.value.values


@pytest.mark.parametrize("text", ["", "{", "[]", '{"archive_sha256": "00"}', '{"against": "hope"}'])
def test_a_receipt_that_cannot_be_read_is_none(kept, text):
    data_dir, known = kept
    receipt_path("small", data_dir).write_text(text)

    assert read_receipt("small", data_dir) is None
    with pytest.raises(ChecksumUnknown):
        verify("small", data_dir, known)


def test_a_receipt_reads_back_as_written(tmp_path):
    (tmp_path / "models").mkdir()
    expected = Receipt("ab" * 32, Against.FIRST_USE, {"am/final.mdl": "cd" * 32})

    write_receipt("small", tmp_path, expected)

    assert expected == read_receipt("small", tmp_path)


def kinds_below(kind):
    return [kind, *(leaf for below in kind.__subclasses__() for leaf in kinds_below(below))]


def test_every_problem_has_a_key_of_its_own_and_takes_exactly_its_values():
    kinds = [kind for kind in kinds_below(ModelProblem) if kind.key]

    assert {kind.key: kind.names for kind in kinds} == ERRORS
    assert len(kinds) == len(ERRORS)
    for kind in kinds:
        values = dict.fromkeys(kind.names, "something")
        assert values == kind(**values).values
        with pytest.raises(TypeError):
            kind(**values, surplus="value")
