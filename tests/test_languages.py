"""Every language folder, the test language too, holds all the program needs, and nothing that clashes."""

import re
import string
import typing
from pathlib import Path

import pytest

from assistant.languages import FOLDER, Language, checking, trying
from assistant.languages.phrases import slots_in
from assistant.sayings import every_saying
from assistant.session_commands import ANSWERS, SESSION_COMMANDS
from plans import conversation
from plans.commands import MOVING
from plans.conversation import Reply
from tests import sounding_alike
from tests.languages_under_test import ALL, ENGLISH, TEST_LANGUAGES, name_of

ROOT = FOLDER.parent.parent
PACKAGES = ("assistant", "plans", "models")
GOLDEN = Path(__file__).parent / "golden" / "sounding_alike_en.txt"
ENGINE_COMMANDS = frozenset(
    kind.model_fields["kind"].default for kind in typing.get_args(typing.get_args(conversation.Command)[0])
)
COMMANDS = ENGINE_COMMANDS | SESSION_COMMANDS

each_language = pytest.mark.parametrize("language", ALL, ids=name_of)


def test_there_are_two_languages_and_the_second_is_only_data():
    """English, and one with another word order and three plural forms, without a line of Python."""
    assert [language.name for language in ALL] == ["en", "pl"]
    assert {file.suffix for file in (TEST_LANGUAGES / "pl").iterdir()} == {".toml", ".ftl"}
    assert {file.suffix for file in (FOLDER / "en").iterdir()} == {".toml", ".ftl"}


@each_language
def test_every_command_and_answer_has_a_phrase_and_every_phrase_a_command(language: Language):
    assert checking.unphrased(language, COMMANDS, ANSWERS) == []


@each_language
def test_every_command_can_say_what_it_can_in_english(language: Language):
    assert checking.misses_slots(language, ENGLISH) == []


def test_every_key_in_the_code_is_a_saying():
    """What is said anywhere by a key written out is among the sayings that every language has."""
    written = re.compile(r"(?:Reply\.of|Problem\.of|refuse)\(\s*\"([a-z-]+)\"")
    code = (file.read_text(encoding="utf-8") for name in PACKAGES for file in (ROOT / name).rglob("*.py"))
    keys = {key for text in code for key in written.findall(text)}

    assert len(keys) > 100
    assert keys - every_saying().keys() == set()


@each_language
def test_every_saying_has_a_sentence_and_every_sentence_is_said(language: Language):
    assert trying.unsaid(language, every_saying()) == []


@each_language
def test_sentences_use_the_values_given_and_the_same_as_english(language: Language):
    assert trying.misvalued(language, ENGLISH, every_saying()) == []


@each_language
def test_every_sentence_comes_out_tidy_at_every_verbosity_with_values_of_its_kinds(language: Language):
    assert trying.unsayable(language, ENGLISH, every_saying()) == []


@each_language
def test_no_words_belong_to_two_commands(language: Language):
    assert checking.overmatched(language) == []


@each_language
def test_what_is_said_is_understood_and_talk_means_nothing(language: Language):
    assert checking.heard_otherwise(language) == []


@each_language
def test_every_command_is_among_the_test_lines(language: Language):
    assert checking.untried(language) == []


@each_language
def test_every_number_to_999_is_understood_as_it_is_said(language: Language):
    assert checking.misunderstood_numbers(language) == []


@each_language
def test_halves_and_quarters_are_understood(language: Language):
    """Each fraction of the language, after a number, is a length and a count with that fraction."""
    for key, ways in language.phrases.slots["fraction"].items():
        for words in ways:
            said = f"{language.numbers.ways(24)[0]} {words}"
            for name in ("length_given", "count_given"):
                found = language.phrases.match(said, [name])
                assert found is not None, said
                assert found.slots == {"number": 24, "fraction": key}


@each_language
def test_there_are_not_too_many_phrases(language: Language):
    assert checking.too_many(language) == []


@each_language
def test_every_word_of_the_vocabulary_is_lower_case_without_punctuation(language: Language):
    vocabulary = language.vocabulary()
    texts = [*vocabulary.phrases, *(text for texts in vocabulary.slots.values() for text in texts)]

    punctuation = set(string.punctuation) - set("'{}_")
    assert [text for text in texts if text != text.casefold() or set(text) & punctuation] == []


def test_every_english_word_is_in_the_recognisers_dictionary_or_pronounced():
    """PocketSphinx can hear all commands, answers and numbers; what it lacks is pronounced in phrases.toml."""
    everything = ENGLISH.vocabulary([*COMMANDS, *ANSWERS], attention=True)
    texts = [*everything.phrases, *(text for texts in everything.slots.values() for text in texts)]
    texts += ENGLISH.numbers.spelled
    words = {word for text in texts for word in text.split() if "{" not in word}

    assert words - sounding_alike.dictionary().keys() - everything.pronounced.keys() == set()


def test_no_word_is_pronounced_in_vain():
    """A pronunciation is given only for words that the dictionary lacks, in its own phones."""
    known = sounding_alike.dictionary()
    phones = {phone for pronunciation in known.values() for phone in pronunciation}
    own = ENGLISH.phrases.pronounced

    assert [word for word in own if word in known] == []
    assert {phone for phones_given in own.values() for phone in phones_given.split()} <= phones


def test_the_words_that_sound_the_same_are_those_of_the_dictionary():
    """All that commands, answers and numbers hold, by the first pronunciation of each."""
    known = sounding_alike.dictionary()
    everything = ENGLISH.vocabulary([*COMMANDS, *ANSWERS])
    texts = [*everything.phrases, *(text for texts in everything.slots.values() for text in texts)]
    by_sound: dict[tuple[str, ...], set[str]] = {}
    for word in {word for text in texts for word in text.split()} & known.keys():
        by_sound.setdefault(known[word], set()).add(word)

    expected = {frozenset(words) for words in by_sound.values() if len(words) > 1}
    assert expected == set(map(frozenset, ENGLISH.phrases.homophones))


@each_language
def test_what_begins_talk_is_a_command_that_moves(language: Language):
    """More silence is asked for only where a mistake would move the place."""
    moving = {phrase for name in MOVING for phrase in language.phrases.commands[name]}

    assert language.phrases.begins_talk <= moving


def test_phrases_of_different_commands_that_sound_alike_are_known():
    """The list was read and found harmless; a new line is to be read too (see tests/sounding_alike.py)."""
    found = sounding_alike.sounding_alike(ENGLISH)
    print("\n".join(found))

    assert found == GOLDEN.read_text(encoding="utf-8").splitlines()


@pytest.mark.parametrize("pair", [("mark", "marks"), ("next", "next")])
def test_sound_distance_counts_phones(pair: tuple[str, str]):
    one, other = (sounding_alike.phones_of(ENGLISH, text) for text in pair)

    assert sounding_alike.distance(one, other) == (0 if pair[0] == pair[1] else 1)


def test_slots_are_read_out_of_a_phrase():
    assert slots_in("i have {number} on the {half}") == ("number", "half")


class TestFindings:
    """The checks find what they are for: a damaged language is complained about."""

    @pytest.fixture
    def damaged(self, tmp_path: Path) -> typing.Callable[[str, str, str], Language]:
        def damage(file: str, old: str, new: str) -> Language:
            import shutil

            from assistant.languages import load

            shutil.copytree(FOLDER / "en", tmp_path / "en", dirs_exist_ok=True)
            text = (tmp_path / "en" / file).read_text(encoding="utf-8")
            assert old in text
            (tmp_path / "en" / file).write_text(text.replace(old, new, 1), encoding="utf-8")
            return load("en", tmp_path)

        return damage

    def test_a_missing_sentence(self, damaged):
        language = damaged("sentences.ftl", "nothing-to-undo =", "nothing-to-unpick =")
        findings = set(trying.unsaid(language, every_saying())) - set(trying.unsaid(ENGLISH, every_saying()))
        assert findings == {"no sentence for nothing-to-undo", "nothing says nothing-to-unpick"}

    def test_a_value_that_is_not_given(self, damaged):
        language = damaged("sentences.ftl", "makes = makes { $count }", "makes = makes { $cuont }")
        assert trying.misvalued(language, ENGLISH, every_saying()) == [
            "makes: no value is called ['cuont']",
            "makes: says ['cuont'], and English says ['count']",
        ]

    def test_a_stop_too_many(self, damaged):
        language = damaged("sentences.ftl", "undone = Undone. { $call }", "undone = Undone.. { $call }")
        assert len(trying.unsayable(language, ENGLISH, {"undone": frozenset({"call"})})) > 0

    def test_a_command_without_phrase(self, damaged):
        phrases = 'rest = ["take a (rest|break)", "i need a (rest|break)"]'
        language = damaged("phrases.toml", phrases, "rest = []")
        assert checking.unphrased(language, COMMANDS, ANSWERS) == ["no phrase for the command rest"]

    def test_two_commands_with_one_phrase(self, damaged):
        language = damaged("phrases.toml", 'undo = ["undo [that]"', 'undo = ["go on", "undo [that]"')
        assert checking.overmatched(language) == ["“go on” is next and undo", "“go on” is undo and next"]

    def test_a_line_understood_otherwise(self, damaged):
        language = damaged("heard.toml", '"potato"', '"next please"')
        assert checking.heard_otherwise(language) == ["“next please” should mean nothing, and is next"]


@each_language
def test_three_plural_forms_or_two(language: Language):
    """One, few, many where the language has them."""
    call = Reply.of("finished")
    said = (language.sentences.say(Reply.of("went-back", rounds=n, call=call)) for n in (1, 2, 5, 22))
    words = [text.split(".")[0] for text in said]

    assert words == {
        "en": ["Back one round", "Back two rounds", "Back five rounds", "Back twenty-two rounds"],
        "pl": [
            "Jedno okrążenie wstecz",
            "Dwa okrążenia wstecz",
            "Pięć okrążeń wstecz",
            "Dwadzieścia dwa okrążenia wstecz",
        ],
    }[language.name]
