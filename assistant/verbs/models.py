"""`roundcaller models`: which speech models there are, and which are here."""

import click

from assistant.speaking.wording import word
from assistant.verbs.shared import language_option, load_language
from assistant.wiring import data_dir
from models.downloading import Received
from models.fetching import fetch as fetch_model
from models.keeping import ModelState, list_models
from models.keeping import verify as verify_model
from plans.conversation import Reply


@click.group()
def models() -> None:
    """List, fetch and verify models for speech recognition."""


@models.command("list")
@language_option
def list_all(language: str | None) -> None:
    """List the models there are: name, language, licence, size, and whether each is on this machine.

    Example: roundcaller models list
    """
    spoken = load_language(language)
    for state in list_models(data_dir()):
        click.echo(word(_listed(state), spoken))


def _listed(state: ModelState) -> Reply:
    model = state.model
    megabytes = round((model.size_bytes or 0) / 1e6)
    here = Reply.of("model-here", path=str(state.path)) if state.path else Reply.of("model-not-here", name=model.name)
    return Reply.of(
        "model-listed",
        name=model.name,
        language=model.language,
        purpose=model.purpose,
        licence=model.licence,
        size=Reply.of("model-size", megabytes=megabytes) if model.size_bytes else Reply.of("model-size-unknown"),
        here=here,
    )


@models.command()
@click.argument("name")
@click.option("--accept-unknown", is_flag=True, help="Accept what the server sends where no checksum is recorded.")
@language_option
def fetch(name: str, accept_unknown: bool, language: str | None) -> None:
    """Fetch a model; goes on where an earlier download broke off.

    Example: roundcaller models fetch vosk-small-en-us
    """
    spoken = load_language(language)

    def tell(received: Received) -> None:
        click.echo(word(Reply.of("model-fetching", name=name, percent=received.percent or 0), spoken), err=True)

    fetch_model(name, data_dir(), tell, accept_unknown=accept_unknown)
    click.echo(word(Reply.of("model-fetched", name=name), spoken))


@models.command()
@click.argument("name", required=False)
@language_option
def verify(name: str | None, language: str | None) -> None:
    """Check a model, or every model that is here, against its checksums.

    Example: roundcaller models verify
    """
    spoken = load_language(language)
    names = [name] if name else [state.model.name for state in list_models(data_dir()) if state.path]
    for each in names:
        verify_model(each, data_dir())
        click.echo(word(Reply.of("model-fine", name=each), spoken))
