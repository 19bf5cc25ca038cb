"""Every language there is, and the test language."""

from pathlib import Path

from assistant.languages import FOLDER, Language, known_languages, load

TEST_LANGUAGES = Path(__file__).parent / "languages"

ENGLISH = load("en")
ALL = tuple(load(name, folder) for folder in (FOLDER, TEST_LANGUAGES) for name in known_languages(folder))


def name_of(language: Language) -> str:
    """For the test's own name."""
    return language.name
