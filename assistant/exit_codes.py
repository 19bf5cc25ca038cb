"""What the program hands back to whoever called it."""

DONE = 0
SURROUNDINGS_FAILED = 1
BAD_INPUT = 2
INTERRUPTED = 130
