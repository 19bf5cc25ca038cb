"""Sounds kept, and rendered ahead of time: never two at once, and what is needed now goes first."""

import threading
from collections import OrderedDict, deque
from collections.abc import Iterable
from concurrent.futures import Future
from typing import Protocol

from assistant.ports import Sound, SpeechFailed, VoiceSettings

KEPT_BYTES = 8_000_000

Order = tuple[str, VoiceSettings]


class SoundCache:
    """The sounds used last, up to a size; not safe for several threads at once.

    Args:
        kept_bytes: how much sound is kept; the one used longest ago goes first.
    """

    def __init__(self, kept_bytes: int = KEPT_BYTES) -> None:
        self._kept_bytes = kept_bytes
        self._bytes = 0
        self._sounds: OrderedDict[Order, Sound] = OrderedDict()

    def get(self, order: Order) -> Sound | None:
        """The sound, which from now on is the one used last."""
        if order in self._sounds:
            self._sounds.move_to_end(order)
        return self._sounds.get(order)

    def put(self, order: Order, sound: Sound) -> None:
        """Keep a sound, and forget others where there is no room."""
        old = self._sounds.pop(order, None)
        self._bytes += sound.samples.nbytes - (old.samples.nbytes if old else 0)
        self._sounds[order] = sound
        while self._bytes > self._kept_bytes:
            _, forgotten = self._sounds.popitem(last=False)
            self._bytes -= forgotten.samples.nbytes

    def __contains__(self, order: Order) -> bool:
        return order in self._sounds

    def __len__(self) -> int:
        return len(self._sounds)


class Renderer(Protocol):
    """What renders one text at given settings, as `synthesis.Synthesis` does."""

    def render(self, text: str, settings: VoiceSettings) -> Sound:
        """The spoken text; raises SpeechFailed."""
        ...

    def close(self) -> None:
        """Let go of whatever renders."""
        ...


class RenderAhead:
    """A synthesiser with one thread of its own, which fills the gaps with what will probably be said next.

    Args:
        synthesis: renders one text.
        settings: how to speak from now on; may be set anew at any time.
        kept_bytes: size of the cache.
    """

    def __init__(
        self, synthesis: Renderer, settings: VoiceSettings | None = None, *, kept_bytes: int = KEPT_BYTES
    ) -> None:
        self._synthesis = synthesis
        self.settings = settings or VoiceSettings()
        self._sounds = SoundCache(kept_bytes)
        self._urgent: deque[tuple[Order, Future[Sound]]] = deque()
        self._ahead: deque[Order] = deque()
        self._changed = threading.Condition()
        self._closing = False
        self._thread = threading.Thread(target=self._work, name="renderer", daemon=True)
        self._thread.start()

    def get(self, text: str) -> Sound:
        """The spoken text, from the cache or rendered now; raises as the synthesis does."""
        order = (text, self.settings)
        with self._changed:
            kept = self._sounds.get(order)
            if kept is not None:
                return kept
            if self._closing:
                raise SpeechFailed(text)
            rendered: Future[Sound] = Future()
            self._urgent.append((order, rendered))
            self._changed.notify()
        return rendered.result()

    def render(self, text: str) -> Sound:
        """As `get`, so that this is a synthesiser too."""
        return self.get(text)

    def want(self, texts: Iterable[str]) -> None:
        """What will probably be said next, likeliest first; replaces what was wanted before."""
        with self._changed:
            self._ahead = deque((text, self.settings) for text in dict.fromkeys(texts))
            self._changed.notify()

    def close(self) -> None:
        """End the thread and what renders; whoever still waits gets SpeechFailed."""
        with self._changed:
            self._closing = True
            self._ahead.clear()
            self._changed.notify()
        self._thread.join()
        self._synthesis.close()

    def _work(self) -> None:
        while (job := self._next()) is not None:
            order, rendered = job
            try:
                sound = self._make(order)
            except Exception as failed:  # noqa: BLE001  (handed to whoever asked)
                if rendered is not None:
                    rendered.set_exception(failed)
            else:
                if rendered is not None:
                    rendered.set_result(sound)

    def _next(self) -> tuple[Order, Future[Sound] | None] | None:
        with self._changed:
            self._changed.wait_for(lambda: self._closing or self._urgent or self._ahead)
            if self._closing:
                for order, rendered in self._urgent:
                    rendered.set_exception(SpeechFailed(order[0]))
                return None
            if self._urgent:
                return self._urgent.popleft()
            return self._ahead.popleft(), None

    def _make(self, order: Order) -> Sound:
        with self._changed:
            kept = self._sounds.get(order)
        if kept is not None:
            return kept
        sound = self._synthesis.render(*order)
        with self._changed:
            self._sounds.put(order, sound)
        return sound
