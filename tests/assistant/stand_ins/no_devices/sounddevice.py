"""The sound library on a machine that has neither a microphone nor a speaker."""


class PortAudioError(Exception):
    """As the library's own."""


class _Default:
    device = (-1, -1)


default = _Default()


def query_devices() -> tuple[dict[str, object], ...]:
    """None at all."""
    return ()
