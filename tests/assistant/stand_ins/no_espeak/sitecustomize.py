"""A machine without espeak and espeak-ng: their shared libraries do not load."""

import ctypes


class _Loading(ctypes.CDLL):
    def __init__(self, name: str | None = None, *more: object, **others: object) -> None:
        if name is not None and "espeak" in name:
            raise OSError(f"{name}: cannot open shared object file: No such file or directory")
        super().__init__(name, *more, **others)  # type: ignore[arg-type]


ctypes.CDLL = _Loading  # type: ignore[misc]
ctypes.cdll = ctypes.LibraryLoader(_Loading)
