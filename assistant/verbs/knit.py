"""`roundcaller knit`: the pair, called aloud."""

from pathlib import Path
from typing import TYPE_CHECKING, Any, cast

import click

from assistant.equipment import present
from assistant.failing import refuse
from assistant.journal import Journal
from assistant.knitting import Wanted, knit_pair
from assistant.session import Habits
from assistant.sittings import open_pair
from assistant.verbs.choices import remember, voice_options
from assistant.verbs.shared import language_option, made_from, remembered
from assistant.wiring import Routes, data_dir, default_journal, make_scorer
from models.shipped import default_recogniser

if TYPE_CHECKING:
    from plans.conversation import Grain

from_option = click.option("--from", "hear_from", default=None, metavar="mic|FILE.wav|-|keys", help="Where words come "
                           "from: the microphone, a recording, standard input, or the keys alone.")  # fmt: skip
to_option = click.option("--to", "speak_to", default="speaker", show_default=True, metavar="speaker|FILE.wav|none",
                         help="Where the voice goes; with none it only prints.")  # fmt: skip
recogniser_option = click.option("--recogniser", type=click.Choice(["pocketsphinx", "vosk", "typed"]), default=None,
                                 help="What makes words of sound; typed reads a line an utterance.")  # fmt: skip
sound_recogniser_option = click.option("--recogniser", type=click.Choice(["pocketsphinx", "vosk"]), default=None,
                                       help="What makes words of sound.")  # fmt: skip
model_option = click.option("--model", default=None, metavar="NAME", help="Which vosk model (see models list).")


@click.command()
@click.argument("file", required=False, type=click.Path(path_type=Path))
@click.option("--journal", "journal_file", type=click.Path(path_type=Path), help="Where the place is kept.")
@click.option("--pair", default=None, metavar="NAME", help="Which pair of the journal; the last one where left out.")
@from_option
@to_option
@recogniser_option
@model_option
@click.option("--grain", type=click.Choice(["follow", "group", "half", "side", "round"]), default=None,
              help="How much one call covers; follow goes with the work.")  # fmt: skip
@click.option("--yes", "answers_yes", is_flag=True, help="Take every question as answered with yes.")
@voice_options
@language_option
def knit(  # noqa: PLR0913, PLR0917 (one parameter an option)
    file: Path | None, journal_file: Path | None, pair: str | None, hear_from: str | None, speak_to: str,
    recogniser: str | None, model: str | None, grain: str | None, answers_yes: bool, language: str | None,
    **given: Any,  # noqa: ANN401 (what is remembered)
) -> None:  # fmt: skip
    """Call a pair aloud and keep its place; without FILE the last pair is resumed.

    Example: roundcaller knit socks.toml
    """
    made = made_from(file) if file else None
    memory, spoken = remembered(language)
    routes = routes_of(hear_from, speak_to, recogniser, model, language=spoken.name)
    wanted = Wanted(routes, Habits(answers_yes=answers_yes, real_time=routes.is_timed), cast("Grain | None", grain))
    unwritten = remember(memory, given, spoken.name)
    here = present(memory.settings.but(language=spoken.name), routes.pieces).and_note(unwritten)
    if routes.recogniser != "typed":
        here = here.with_taught(data_dir())
    if routes.has_ears:
        here = here.with_second_opinion(make_scorer, live=routes.is_live)
    with Journal.open(journal_file or default_journal()) as journal:
        opening = open_pair(journal, made, pair=pair, takes_edited=answers_yes)
        knit_pair(opening, spoken, wanted, here, memory.forgetful() if routes.is_recording else memory)


def routes_of(
    hear_from: str | None, speak_to: str, recogniser: str | None, model: str | None, *, language: str
) -> Routes:
    """The routes that the options name, with what goes without saying filled in.

    Raises:
        Refused: the options contradict each other.
    """
    typed = recogniser == "typed"
    if typed and hear_from not in (None, "-"):
        raise refuse("typed-from-elsewhere")
    if model is not None and recogniser != "vosk":
        raise refuse("model-without-vosk")
    if speak_to not in ("speaker", "none"):
        _check_sound_file(Path(speak_to), hear_from)
    hearing = recogniser or default_recogniser(language=language)
    return Routes(hear_from or ("-" if typed else "mic"), speak_to, hearing, model)


def _check_sound_file(speak_to: Path, hear_from: str | None) -> None:
    if not speak_to.suffix and not speak_to.exists():
        raise refuse("speak-to-what", text=str(speak_to))
    if hear_from is not None and speak_to.exists() and speak_to.resolve() == Path(hear_from).resolve():
        raise refuse("speak-to-itself")
