"""From key and values to the sentence that is printed and spoken."""

from assistant.languages import Language
from assistant.languages.verbosity import Verbosity
from plans.conversation import Problem, Reply

__all__ = ["Verbosity", "word"]


def word(
    saying: Reply | Problem, language: Language, verbosity: Verbosity = Verbosity.PLAIN, *, unit: str = "cm"
) -> str:
    """One line of text, in words as a person says them; nothing in it moves a terminal's cursor.

    Args:
        saying: key and values; parts inside it are worded with the same verbosity.
        language: whose sentences.
        verbosity: how much is said.
        unit: "cm" or "in": how lengths are said.

    Raises:
        SentenceFailed: the language has no such sentence, or the saying lacks a value that it needs.
    """
    text = language.sentences.say(saying, verbosity, unit=unit)
    return text if text.isprintable() else "".join(sign for sign in text if not _is_control(sign))


def _is_control(sign: str) -> bool:
    return sign < " " or "\x7f" <= sign <= "\x9f"
