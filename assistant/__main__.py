"""`python -m assistant` is `roundcaller`."""

from assistant.command_line import main

main()
