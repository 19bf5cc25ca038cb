"""`roundcaller` alone."""

import click


@click.command()
def start() -> None:
    """Check the sound, then ask for a new pair or resume the last one."""
