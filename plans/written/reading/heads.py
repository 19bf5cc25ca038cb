"""What a pattern file written by hand says of the piece, beside its rounds."""

from difflib import get_close_matches
from typing import Any

from plans.charts import fault, rows_of
from plans.files.fields import quoted, read_field
from plans.files.lines import Position, Spot
from plans.pattern import Chart, Needles
from plans.replies import Problem, Value
from plans.written.reading.assembling import Head

_KNOWN = (
    "schema_version", "name", "pieces", "needles", "swatch", "sizes", "size", "multiple", "pattern", "yarns", "charts",
)  # fmt: skip
_OWN_NEEDLES = (Needles.ONE_CIRCULAR, Needles.ONE_LONG_CIRCULAR)
_PAIR = ("first", "second")


class Heads:
    """One file's fields being read; gathers its problems."""

    def __init__(self, holds: dict[str, Any], places: dict[str, Spot], end: Position) -> None:
        self._holds = holds
        self._places = places
        self._end = Spot(end, end)
        self._problems: list[tuple[Position, Problem]] = []

    def read(self) -> Head | tuple[Problem, ...]:
        """The head, or all that is wrong in it, in the order of its lines."""
        for name in self._holds:
            if name not in _KNOWN:
                self._unknown(name)
        names = self._names()
        sizes = self._list("sizes")
        head = Head(
            pieces=max(1, len(names)),
            needles=self._needles(len(names)),
            name=self._text("name") or "piece",
            names=names,
            sizes=sizes,
            size=self._size(sizes),
            multiple=self._multiple(),
            swatch=self._swatch(),
            yarns=self._yarns(),
            charts=self._charts(),
        )
        wrong = sorted(self._problems, key=lambda found: found[0])
        return tuple(problem for _, problem in wrong) or head

    def _place(self, name: str) -> Spot:
        return self._places.get(name, self._end)

    def _add(self, field: str, key: str, **values: Value) -> None:
        place = self._place(field).value
        self._problems.append((place, Problem.of(key, str(place), **values)))

    def _unknown(self, name: str) -> None:
        place = self._place(name).key
        meant = get_close_matches(name.replace("-", "_").casefold(), _KNOWN, cutoff=0.75)
        values = {"name": quoted(name)} | ({"meant": meant[0]} if meant else {})
        key = "field-misspelt" if meant else "field-unknown"
        self._problems.append((place, Problem(key=key, where=str(place), values=tuple(values.items()))))

    def _wrong(self, name: str) -> None:
        self._add(name, "written-field-wrong", name=name, text=quoted(self._holds[name]))

    def _text(self, name: str) -> str:
        value = self._holds.get(name, "")
        if not isinstance(value, str) or not value.isprintable():
            self._wrong(name)
            return ""
        return value.strip()

    def _list(self, name: str) -> tuple[str, ...]:
        value = self._holds.get(name, [])
        fine = isinstance(value, list) and all(isinstance(each, str) and each.strip() for each in value)
        if not fine or len({each.casefold() for each in value}) != len(value):
            self._wrong(name)
            return ()
        return tuple(value)

    def _names(self) -> tuple[str, ...]:
        """What each piece is called; 2 stands for a pair without names of its own."""
        value = self._holds.get("pieces", 1)
        if value in (1, 2) and not isinstance(value, bool):
            return _PAIR if value == 2 else (self._text("name") or "piece",)
        names = self._list("pieces") if isinstance(value, list) else ()
        if len(names) not in (1, 2):
            self._wrong("pieces")
        return names

    def _needles(self, pieces: int) -> Needles:
        usual = Needles.ONE_LONG_CIRCULAR if pieces == 2 else Needles.ONE_CIRCULAR
        value = self._holds.get("needles", usual.value)
        if value not in [needles.value for needles in _OWN_NEEDLES]:
            self._add("needles", "written-needles", text=quoted(value), choices=", ".join(_OWN_NEEDLES))
            return usual
        if pieces == 2 and value == Needles.ONE_CIRCULAR:
            self._add("needles", "written-pair-needs-halves", choices=Needles.ONE_LONG_CIRCULAR.value)
        return Needles(value)

    def _size(self, sizes: tuple[str, ...]) -> int:
        if "size" not in self._holds:
            if len(sizes) > 1:
                self._add("sizes", "written-size-needed", choices=", ".join(sizes))
            return 0
        value = self._holds["size"]
        if value not in sizes:
            self._add("size", "written-size-unknown", text=quoted(value), choices=", ".join(sizes))
            return 0
        return sizes.index(value)

    def _multiple(self) -> int:
        value = self._holds.get("multiple", 1)
        if isinstance(value, bool) or not isinstance(value, int) or value < 1:
            self._wrong("multiple")
            return 1
        return value

    def _swatch(self) -> dict[str, Any]:
        table = self._holds.get("swatch", {})
        if not isinstance(table, dict):
            self._wrong("swatch")
            return {}
        found: dict[str, Any] = {}
        for name in ("stitches", "rounds", "over"):
            if name in table:
                place = self._places.get(f"swatch.{name}", self._place("swatch")).value
                read = read_field(f"swatch.{name}", table[name], str(place))
                if isinstance(read, Problem):
                    self._problems.append((place, read))
                found[name] = read
            elif name != "over":
                self._add("swatch", "written-swatch-needed", name=f"swatch.{name}")
        for name in table.keys() - {"stitches", "rounds", "over"}:
            self._add(f"swatch.{name}", "field-unknown", name=quoted(f"swatch.{name}"))
        return found

    def _yarns(self) -> tuple[str, str] | None:
        table = self._holds.get("yarns")
        match table:
            case None:
                return None
            case {"main": str() as main, "contrast": str() as contrast, **more} if not more and main != contrast:
                return main, contrast
            case _:
                self._wrong("yarns")
                return None

    def _charts(self) -> dict[str, Chart]:
        table = self._holds.get("charts", {})
        if not isinstance(table, dict):
            self._wrong("charts")
            return {}
        found = {name: self._chart(name, drawn) for name, drawn in table.items()}
        return {name.casefold(): chart for name, chart in found.items() if chart is not None}

    def _chart(self, name: str, drawn: object) -> Chart | None:
        where = f"charts.{name}"
        rows = rows_of(drawn)
        wrong = fault(name, rows)
        if wrong is not None:
            self._add(where, wrong[0], **wrong[1])
            return None
        return Chart(name=name.casefold(), rows=rows, on="around", stages=())
