"""A recogniser's library that does not load, as one built for another processor."""

raise ImportError("cannot load the library")
