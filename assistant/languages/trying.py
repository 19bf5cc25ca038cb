"""What is wrong with a language's sentences: each is looked through, and said with values of its kinds."""

import itertools
import re
from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, field

from fluent.syntax import ast
from fluent.syntax.visitor import Visitor

from assistant.languages import Language
from assistant.languages.sentences import SentenceFailed, Sentences
from assistant.languages.verbosity import Verbosity
from plans.conversation import Problem, Reply, Value

COUNTS = (0, 1, 2, 5, 12, 22, 108)
AS_WRITTEN = frozenset({"argument", "file", "name", "option", "path", "said", "url"})
_PLURALS = frozenset({"zero", "one", "two", "few", "many", "other"})
_NUMBER_FUNCTIONS = frozenset({"DIGITS", "SPELLED"})
_FORM_FUNCTIONS = frozenset({"AS", "CAPITAL"})


@dataclass
class Used:
    """What a message uses.

    Attributes:
        values: name → keys that it is selected on.
        numbers: values that must be numbers.
        forms: value → forms it is said in.
        messages: other messages it holds.
    """

    values: dict[str, set[str]] = field(default_factory=dict)
    numbers: set[str] = field(default_factory=set)
    forms: dict[str, set[str]] = field(default_factory=dict)
    messages: set[str] = field(default_factory=set)

    def add(self, other: "Used") -> None:
        """All of another's uses too."""
        for name, keys in other.values.items():
            self.values.setdefault(name, set()).update(keys)
        for name, forms in other.forms.items():
            self.forms.setdefault(name, set()).update(forms)
        self.numbers |= other.numbers
        self.messages |= other.messages


class _Looking(Visitor):
    def __init__(self) -> None:
        self.used = Used()

    def visit_VariableReference(self, node: ast.VariableReference) -> None:  # noqa: N802 (the library's name)
        self.used.values.setdefault(node.id.name, set())

    def visit_MessageReference(self, node: ast.MessageReference) -> None:  # noqa: N802
        self.used.messages.add(node.id.name)

    def visit_SelectExpression(self, node: ast.SelectExpression) -> None:  # noqa: N802
        if isinstance(node.selector, ast.VariableReference):
            keys = self.used.values.setdefault(node.selector.id.name, set())
            chosen = (variant.key for variant in node.variants)
            keys |= {str(key.name if isinstance(key, ast.Identifier) else key.value) for key in chosen}
        self.generic_visit(node)

    def visit_FunctionReference(self, node: ast.FunctionReference) -> None:  # noqa: N802
        for argument in node.arguments.positional:
            if isinstance(argument, ast.VariableReference):
                if node.id.name in _NUMBER_FUNCTIONS:
                    self.used.numbers.add(argument.id.name)
                forms = (str(named.value.value) for named in node.arguments.named)
                self.used.forms.setdefault(argument.id.name, set()).update(forms)
        self.generic_visit(node)


def uses(sentences: Sentences) -> Mapping[str, Mapping[str, Used]]:
    """Message → attribute ("" is the plain sentence) → what it uses, other messages' uses included."""
    direct: dict[str, dict[str, Used]] = {}
    for entry in sentences.resource.body:
        if isinstance(entry, ast.Message):
            patterns = {"": entry.value, **{named.id.name: named.value for named in entry.attributes}}
            direct[entry.id.name] = {name: _looked(pattern) for name, pattern in patterns.items() if pattern}
    return {
        key: {name: _whole(used, direct, frozenset({key})) for name, used in patterns.items()}
        for key, patterns in direct.items()
    }


def _looked(pattern: ast.Pattern) -> Used:
    looking = _Looking()
    looking.visit(pattern)
    return looking.used


def _whole(used: Used, direct: Mapping[str, Mapping[str, Used]], seen: frozenset[str]) -> Used:
    whole = Used()
    whole.add(used)
    for key in used.messages - seen:
        if "" in direct.get(key, {}):
            whole.add(_whole(direct[key][""], direct, seen | {key}))
    return whole


def unsaid(language: Language, sayings: Collection[str]) -> list[str]:
    """Sayings without a sentence, and sentences that nothing says."""
    found = uses(language.sentences)
    held = {key for patterns in found.values() for used in patterns.values() for key in used.messages}
    built_in = {"join", "length-cm", "length-in"}
    extra = {key for key in found if not key.startswith("join-")} - set(sayings) - held - built_in
    said = {key for key, patterns in found.items() if "" in patterns}
    return [
        *(f"no sentence for {key}" for key in sorted(set(sayings) - said)),
        *(f"nothing says {key}" for key in sorted(extra)),
        *(f"no sentence for {key}, which is built in" for key in sorted(built_in - found.keys())),
    ]


def misvalued(language: Language, english: Language, sayings: Mapping[str, frozenset[str]]) -> list[str]:
    """Sentences that use a value which is not given, or other values than the English sentence."""
    ours, theirs = uses(language.sentences), uses(english.sentences)
    found = []
    for key, names in sayings.items():
        for attribute, used in ours.get(key, {}).items():
            given = names if not attribute.startswith("join-") else {"before", "after"}
            if unknown := used.values.keys() - given - {"where"}:
                found.append(f"{key}: no value is called {sorted(unknown)}")
        plain, wanted = (_values(each.get(key, {})) for each in (ours, theirs))
        if plain is not None and wanted is not None and plain != wanted:
            found.append(f"{key}: says {sorted(plain)}, and English says {sorted(wanted)}")
    return found


def _values(patterns: Mapping[str, Used]) -> set[str] | None:
    return set(patterns[""].values) - {"where"} if "" in patterns else None


def unsayable(language: Language, english: Language, sayings: Mapping[str, frozenset[str]]) -> list[str]:
    """Sentences that fail, or come out untidy, with some value of the kinds they take."""
    kinds = {key: Used() for key in sayings}
    for each in (language, english):
        for key, patterns in uses(each.sentences).items():
            for used in patterns.values():
                if key in kinds:
                    kinds[key].add(used)
    found: set[str] = set()
    for key, names in sayings.items():
        kind = Reply if "where" in names else Problem
        for values in _tries(language, sorted(names), kinds[key]):
            for verbosity in Verbosity:
                found.update(_said_badly(language, kind(key=key, values=values), verbosity))
    return sorted(found)


def _said_badly(language: Language, saying: Reply | Problem, verbosity: Verbosity) -> Iterable[str]:
    try:
        text = language.sentences.say(saying, verbosity)
    except (SentenceFailed, KeyError, IndexError) as error:
        return [f"{saying.key}, {verbosity}: {error}"]
    return [f"{saying.key}, {verbosity}, comes out as “{text}”"] if is_untidy(text) else []


def is_untidy(text: str) -> bool:
    """Empty, stray braces or stops, or a whole sentence that does not begin with a capital."""
    whole = text.endswith((".", "?"))
    small = text[:1].isalpha() and text[:1].islower() and not text.startswith("x")
    return not text or (whole and small) or re.search(r"[{}]|\s[.,:;?]|[.,:;]{2}", text) is not None


def _tries(language: Language, names: list[str], used: Used) -> Iterator[tuple[tuple[str, Value], ...]]:
    """Each value in turn with all it may be, the others as first; lists filled in every combination."""
    choices = {name: _samples(language, name, used) for name in names}
    lists = [name for name in names if "none" in used.values.get(name, set())]
    usual = {name: samples[0] for name, samples in choices.items()}
    for name, samples in choices.items():
        for sample in samples:
            yield tuple({**usual, name: sample}.items())
    for filled in itertools.product(*(choices[name] for name in lists)):
        if len(lists) == len(names) and not any(filled):
            continue    # a call that calls nothing
        yield tuple({**usual, **dict(zip(lists, filled, strict=True))}.items())


def _samples(language: Language, name: str, used: Used) -> tuple[Value, ...]:
    keys, forms = used.values.get(name, set()), used.forms.get(name, set())
    if name in AS_WRITTEN:
        return ("x",)
    if "none" in keys:
        part = Reply.of("half-front")
        return (part,), (part, part), ()
    if parts := keys & language.sentences.keys():
        return tuple(Reply.of(part) for part in sorted(parts))
    if keys & _PLURALS or any(key.isdecimal() for key in keys) or name in used.numbers:
        return COUNTS
    if forms and not forms & set(language.numbers.forms):
        return (Reply.of("half-front"),)
    return COUNTS if forms else ("x", 7, Reply.of("half-back"))
