"""Our own model is the default where this copy of the program has it whole."""

import json
from pathlib import Path

from assistant.languages import load
from models import shipped
from models.catalogue import catalogue
from models.evaluating import main
from models.shipped import default_recogniser, shipped_model
from models.vosk_recogniser import VoskRecogniser
from tests.models.test_vosk_recogniser import _korean_model


def test_without_a_whole_model_pocketsphinx_is_the_default(tmp_path):
    (tmp_path / "conf").mkdir()
    (tmp_path / "conf" / "model.conf").touch()

    assert shipped_model(tmp_path) is None
    assert default_recogniser(tmp_path) == "pocketsphinx"


def test_with_one_vosk_is_and_loads_it():
    folder = _korean_model()

    assert shipped_model(folder) == folder
    assert default_recogniser(folder) == "vosk"


def test_another_language_than_the_models_is_heard_by_pocketsphinx():
    assert default_recogniser(_korean_model(), language="pl") == "pocketsphinx"


def test_it_knows_every_word_of_the_commands():
    ours = VoskRecogniser(shipped.FOLDER)
    ours.expect(load("en").vocabulary())

    assert ours.lacking == ()


def test_it_is_small_enough_to_come_along():
    assert sum(file.stat().st_size for file in shipped.FOLDER.rglob("*") if file.is_file()) <= 16_000_000


def test_what_is_shipped_is_in_the_catalogue():
    assert (shipped_model() is not None) == any(model.folder == "en" for model in catalogue().values())


def test_the_folder_lies_beside_the_module():
    assert Path(shipped.__file__).with_name("en") == shipped.FOLDER


def test_every_recogniser_is_measured_the_default_first(tmp_path, capfd):
    (tmp_path / "set.csv").write_text("path,transcript,speaker,kind\n")
    (tmp_path / "phrases.json").write_text(json.dumps({"commands": [{"name": "yes", "phrases": ["yes"]}]}))
    korean = _korean_model()
    arguments = ("--set", tmp_path / "set.csv", "--phrases", tmp_path / "phrases.json", "--vosk", korean, "--json")

    assert main(list(map(str, arguments))) == 0
    found = [each["recogniser"] for each in json.loads(capfd.readouterr().out)]
    assert found[0] == default_recogniser()
    assert found[-2:] == ["pocketsphinx", f"vosk {korean.name}"]
