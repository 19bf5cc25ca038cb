"""The second opinion's library, which is not installed."""

raise ImportError("cannot load the library")
