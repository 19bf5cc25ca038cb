"""Keys and values into sentences, by Project Fluent. Imported late: the library is slow to load.

Beside Fluent's own language a sentence may use
    { $count }                          a number, in words; a list or a part, worded
    { AS($count, form: "ordinal") }     another form of a number; a part by its attribute
                                        `.ordinal` or, worded tersely, `.ordinal-terse`
    { CAPITAL($count) }                 with a capital
    { DIGITS($line) }                   a number in digits
    { SPELLED($count) }                 digit by digit
    { $half -> [half-front] … }         a part is selected on by its key, a list by none, one or many
A list's parts are joined, two and two, by the sentence's own attribute `join-NAME`, NAME being the value's,
else by the message `join-NAME`, else by `join`.
"""

from collections.abc import Callable, Iterable, Mapping
from typing import Any

from fluent.runtime import FluentBundle, FluentResource
from fluent.runtime.types import FluentType
from fluent.syntax import ast
from fluent.syntax.visitor import Transformer

from assistant.languages.numbers import Numbers
from assistant.languages.verbosity import Verbosity
from plans.conversation import Measure, Problem, Reply, Value

TENTHS_PER_INCH = 254


class SentenceFailed(Exception):
    """A saying has no sentence, or its sentence needs a value that was not given."""


class Sentences:
    """The sentences of one language."""

    def __init__(self, language: str, text: str, numbers: Numbers) -> None:
        """Take the content of a sentences.ftl.

        Raises:
            ValueError: a part of it is no Fluent; says which.
        """
        self.numbers = numbers
        self.resource = FluentResource(text)
        for junk in (entry for entry in self.resource.body if isinstance(entry, ast.Junk)):
            raise ValueError(f"not understood: {str(junk.content).strip()[:80]}")
        self._bundle = FluentBundle([language], use_isolating=False, functions=self._functions())
        self._bundle.add_resource(_SayVariables().visit(FluentResource(text)))

    def keys(self) -> frozenset[str]:
        """Of all messages."""
        return frozenset(entry.id.name for entry in self.resource.body if isinstance(entry, ast.Message))

    def say(
        self, saying: Reply | Problem, verbosity: Verbosity = Verbosity.PLAIN, *, unit: str = "cm"
    ) -> str:
        """The sentence.

        Args:
            saying: key and values; parts are worded with the same verbosity.
            verbosity: how much.
            unit: "cm" or "in", for lengths.

        Raises:
            SentenceFailed: no sentence, or a value is missing.
        """
        return _Wording(self, verbosity, unit).say(saying)

    def format(self, key: str, attributes: Iterable[str], values: Mapping[str, object]) -> str:
        """A message: the first of the attributes that it has, else its plain value.

        Raises:
            SentenceFailed: no sentence, or a value is missing.
        """
        if not self._bundle.has_message(key):
            raise SentenceFailed(f"no sentence for “{key}”")
        message = self._bundle.get_message(key)
        found = (message.attributes[name] for name in attributes if name in message.attributes)
        pattern = next(found, message.value)
        if pattern is None:
            raise SentenceFailed(f"“{key}” has no plain sentence")
        text, errors = self._bundle.format_pattern(pattern, dict(values))
        if errors:
            raise SentenceFailed(f"“{key}”: {'; '.join(map(str, errors))}")
        return str(text)

    def join(self, key: str, joiner: str, values: Mapping[str, object]) -> str:
        """Two parts of a list, by the joiner of its own message, of its name, or the usual one."""
        if self._bundle.has_message(key) and joiner in self._bundle.get_message(key).attributes:
            return self.format(key, (joiner,), values)
        return self.format(joiner if self._bundle.has_message(joiner) else "join", (), values)

    def _functions(self) -> dict[str, Callable[..., Any]]:
        return {
            "SAID": self._said,
            "AS": self._said,
            "CAPITAL": lambda value, form="": _capital(self._said(value, form)),
            "DIGITS": lambda value: str(int(value)),
            "SPELLED": lambda value: self.numbers.spell(int(value)),
        }

    def _said(self, value: object, form: object = "") -> Any:  # noqa: ANN401 (a missing value is handed on)
        if isinstance(value, _Part):
            return value.say(str(form))
        if isinstance(value, int):
            return self.numbers.say(int(value), str(form))
        return value


class _Part(FluentType):
    """A value that is worded where it stands, and selected on by `key`."""

    def __init__(self, key: str, say: Callable[[str], str]) -> None:
        self.key = key
        self.say = say

    def format(self, locale: object) -> str:
        """As usual."""
        del locale
        return self.say("")

    def __eq__(self, other: object) -> bool:
        return self.key == other

    def __hash__(self) -> int:
        return hash(self.key)


class _Wording:
    """One saying on its way into words."""

    def __init__(self, sentences: Sentences, verbosity: Verbosity, unit: str) -> None:
        self.sentences = sentences
        self.verbosity = verbosity
        self.unit = unit

    def say(self, saying: Reply | Problem, form: str = "") -> str:
        given = dict(saying.values)
        if isinstance(saying, Problem):
            given.setdefault("where", saying.where)
        values = {name: self._value(saying.key, name, value) for name, value in given.items()}
        text = self.sentences.format(saying.key, self._attributes(form), values)
        return " ".join(text.split())

    def _attributes(self, form: str) -> tuple[str, ...]:
        """A form at this verbosity, the form, or the verbosity alone."""
        return (f"{form}-{self.verbosity}", form, str(self.verbosity))

    def _value(self, key: str, name: str, value: Value) -> object:
        match value:
            case Reply():
                return _Part(value.key, lambda form: self.say(value, form))
            case Measure():
                return _Part("length", lambda form: self._length(value, form))
            case tuple():
                amount = ("none", "one")[len(value)] if len(value) < 2 else "many"
                return _Part(amount, lambda form: self._joined(key, name, value, form))
            case "":
                return _Part("none", lambda _form: "")
            case _:
                return value

    def _joined(self, key: str, name: str, parts: tuple[Reply, ...], form: str) -> str:
        joiner = f"join-{name.replace('_', '-')}"
        said = [self.say(part, form) for part in parts]
        text = said[0] if said else ""
        for after in said[1:]:
            text = self.sentences.join(key, joiner, {"before": text, "after": after})
        return text

    def _length(self, length: Measure, form: str) -> str:
        if self.unit == "in":
            whole, quarters = divmod(round(length.tenths_mm * 4 / TENTHS_PER_INCH), 4)
            return self.sentences.format("length-in", (form,), {"whole": whole, "quarters": quarters})
        whole, tenths = divmod(round(length.tenths_mm / 10), 10)
        return self.sentences.format("length-cm", (form,), {"whole": whole, "tenths": tenths})


class _SayVariables(Transformer):
    """Every `{ $value }` that is said becomes `{ SAID($value) }`; what is selected on stays as it is."""

    def visit_Placeable(self, node: ast.Placeable) -> ast.Placeable:  # noqa: N802 (the library's name)
        if isinstance(node.expression, ast.VariableReference):
            arguments = ast.CallArguments(positional=[node.expression], named=[])
            node.expression = ast.FunctionReference(ast.Identifier("SAID"), arguments)
            return node
        self.generic_visit(node)
        return node


def _capital(words: object) -> object:
    return words[:1].upper() + words[1:] if isinstance(words, str) else words
