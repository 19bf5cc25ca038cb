"""Several producers on threads of their own, one consumer: in order, to the end, and no error is swallowed."""

import threading
import time
from collections.abc import Iterator

import pytest

from assistant.failing import as_problem
from assistant.inputs import Ended, Failed, Input, Inputs, OutputWanted, Pressed, Tick
from models.errors import ModelMissing
from models.recognising import Heard
from plans.conversation import Next, Problem, Undo
from tests.assistant.sitting import said


def test_one_producers_inputs_come_in_order_and_end_with_it() -> None:
    inputs = Inputs()
    things = [said("next"), Pressed(Next()), said("undo")]
    inputs.feed(things, name="script", to_problem=as_problem)

    assert things == list(inputs)


def test_it_ends_when_the_last_producer_has_ended() -> None:
    inputs = Inputs()
    gate = threading.Event()

    def late() -> Iterator[Input]:
        gate.wait(10)
        yield Pressed(Undo())

    inputs.feed([said("next")], name="soon", to_problem=as_problem)
    inputs.feed(late(), name="late", to_problem=as_problem)
    taken: list[Input] = []
    for thing in inputs:
        taken.append(thing)
        gate.set()

    assert [said("next"), Pressed(Undo())] == taken


def test_without_producers_there_is_nothing_to_wait_for() -> None:
    assert [] == list(Inputs())


def test_an_error_that_can_be_explained_becomes_an_input() -> None:
    inputs = Inputs()

    def failing() -> Iterator[Input]:
        yield said("next")
        raise ModelMissing(name="x", cure="fetch it")

    inputs.feed(failing(), name="ears", to_problem=as_problem)
    heard, failed = list(inputs)

    assert isinstance(heard, Heard)
    assert isinstance(failed, Failed)
    assert "model-missing" == failed.problem.key


def test_any_other_error_is_raised_where_the_inputs_are_taken(capfd: pytest.CaptureFixture[str]) -> None:
    inputs = Inputs()

    def crashing() -> Iterator[Input]:
        yield said("next")
        raise ZeroDivisionError("a mistake of ours")

    inputs.feed(crashing(), name="ears", to_problem=as_problem)
    taken: list[Input] = []
    with pytest.raises(ZeroDivisionError, match="a mistake of ours"):
        taken.extend(inputs)

    assert [said("next")] == taken
    assert "" == capfd.readouterr().err


def test_a_quiet_spell_is_told() -> None:
    inputs = Inputs(tick_s=0.01)
    gate = threading.Event()

    def quiet() -> Iterator[Input]:
        gate.wait(10)
        yield said("next")

    inputs.feed(quiet(), name="ears", to_problem=as_problem)
    taken = iter(inputs)

    assert [Tick(), Tick()] == [next(taken), next(taken)]
    gate.set()
    assert said("next") in list(taken)


def test_what_is_put_from_another_thread_comes_too() -> None:
    inputs = Inputs()
    gate = threading.Event()

    def open_until_told() -> Iterator[Input]:
        gate.wait(10)
        yield from ()

    inputs.feed(open_until_told(), name="keys", to_problem=as_problem)
    threading.Thread(target=inputs.put, args=(Pressed(Next()),)).start()
    taken = iter(inputs)

    assert Pressed(Next()) == next(taken)
    gate.set()
    assert [] == list(taken)


def test_every_thread_ends_with_its_producer() -> None:
    inputs = Inputs()
    for number in range(5):
        inputs.feed([said("next")] * 50, name=f"producer {number}", to_problem=as_problem)

    assert 250 == len(list(inputs))
    until = time.monotonic() + 5
    while any(thread.name.startswith("producer") for thread in threading.enumerate()):
        assert time.monotonic() < until
        time.sleep(0.01)


def test_the_end_of_one_producer_is_no_input() -> None:
    inputs = Inputs()
    for _ in range(3):
        inputs.feed([], name="empty", to_problem=as_problem)

    assert [] == [thing for thing in inputs if isinstance(thing, Ended)]


def test_what_was_heard_and_pressed_is_forgotten_and_nothing_else() -> None:
    inputs = Inputs()
    failed = Failed(Problem.of("speaker-lost", name="headset"))
    for thing in (said("next"), Pressed(Next()), OutputWanted(), failed):
        inputs.put(thing)
    assert inputs.forget()
    assert not inputs.forget()
    inputs.feed([said("undo")], name="script", to_problem=as_problem)

    assert [OutputWanted(), failed, said("undo")] == list(inputs)
