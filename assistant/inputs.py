"""The one queue of inputs of a session: what was heard, typed, pressed, and what went wrong."""

import queue
import threading
from collections.abc import Callable, Iterable, Iterator
from contextlib import suppress
from dataclasses import dataclass

from assistant.session_commands import AnyCommand
from models.recognising import Heard
from plans.conversation import Problem


@dataclass(frozen=True, slots=True)
class Pressed:
    """A key or pedal, and what it asks for."""

    command: AnyCommand


@dataclass(frozen=True, slots=True)
class OutputWanted:
    """The next of voice, lines, or both is wanted."""


@dataclass(frozen=True, slots=True)
class Failed:
    """An adapter gave up; what it can say about it."""

    problem: Problem


@dataclass(frozen=True, slots=True)
class Tick:
    """Nothing happened for a while."""


@dataclass(frozen=True, slots=True)
class Ended:
    """No more will come from where this came from."""


@dataclass(frozen=True, slots=True)
class _Crashed:
    """What ran on a thread of its own failed in a way that it cannot explain."""

    error: Exception


Input = Heard | Pressed | OutputWanted | Failed | Tick | Ended


class Inputs:
    """Several producers on threads of their own, one consumer."""

    def __init__(self, tick_s: float = 5.0) -> None:
        self._queue: queue.Queue[Input | _Crashed] = queue.Queue()
        self._tick_s = tick_s
        self._open = 0

    def put(self, thing: Input) -> None:
        """From any thread."""
        self._queue.put(thing)

    def feed(self, things: Iterable[Input], *, name: str, to_problem: Callable[[Exception], Problem | None]) -> None:
        """Run an iterator on a thread of its own; an error it can explain becomes an input.

        Any other error is raised where the inputs are taken.
        """
        self._open += 1

        def run() -> None:
            try:
                for thing in things:
                    self.put(thing)
            except Exception as error:  # noqa: BLE001 (handed to whoever takes the inputs)
                problem = to_problem(error)
                self._queue.put(_Crashed(error) if problem is None else Failed(problem))
            finally:
                self.put(Ended())

        threading.Thread(target=run, name=name, daemon=True).start()

    def forget(self) -> bool:
        """Drop what was heard and pressed so far, and nothing else; whether there was any."""
        arrived: list[Input | _Crashed] = []
        with suppress(queue.Empty):
            while True:
                arrived.append(self._queue.get_nowait())
        kept = [thing for thing in arrived if not isinstance(thing, Heard | Pressed)]
        for thing in kept:
            self._queue.put(thing)
        return len(kept) < len(arrived)

    def __iter__(self) -> Iterator[Input]:
        """In order of arrival; ends when every producer has ended."""
        while self._open:
            thing: Input | _Crashed
            try:
                thing = self._queue.get(timeout=self._tick_s)
            except queue.Empty:
                thing = Tick()
            if isinstance(thing, Ended):
                self._open -= 1
            elif isinstance(thing, _Crashed):
                raise thing.error
            else:
                yield thing
