"""A filmed session as WebVTT: what was called when, chapters by stage, and the moments marked for a retake.

Times are those of the ears' stream, which begins with the session. After the W3C's "WebVTT: The Web Video
Text Tracks Format": minutes and seconds of two digits, three decimals after a dot, hours where there are any;
a cue ends after it starts, starts do not fall, and "-->" stands in no text.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from assistant.journal import Entry, standing_of
from assistant.journal_events import SessionBegan, Told
from assistant.journal_export import Where, where
from plans.conversation import Marked, PlanId, Standing
from plans.pattern import Plan

LAST_CUE_MS = 5_000
"""How long the last cue stands where nothing comes after it."""
_GREETING = Told(command="greeting")


@dataclass(frozen=True, slots=True)
class Cue:
    """A stretch of the stream and its lines of text."""

    name: str
    began_ms: int
    ended_ms: int
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Call:
    """A place arrived at, the sentence spoken there, and the loops its row will make; until the next one."""

    seq: int
    began_ms: int
    ended_ms: int
    said: str | None
    here: Where
    makes: int


@dataclass(frozen=True, slots=True)
class Take:
    """One sitting: its entries, and the place in hand when it began; None where the pair was begun in it."""

    entries: tuple[Entry, ...]
    opens_at: Standing | None = None


def takes(entries: Iterable[Entry]) -> tuple[Take, ...]:
    """The entries with a stream time, one take a session; a stream that starts anew is a new session."""
    found: list[tuple[list[Entry], Standing | None]] = []
    places: dict[str, Standing] = {}
    for entry in entries:
        if entry.stream_ms is not None:
            last = found[-1][0][-1].stream_ms if found else None
            if last is None or entry.stream_ms < last or isinstance(entry.event, SessionBegan):
                found.append(([], places.get(entry.pair)))
            found[-1][0].append(entry)
        if _is_placed(entry):
            places[entry.pair] = standing_of(entry.event) or places[entry.pair]
    return tuple(Take(tuple(entries), opens_at) for entries, opens_at in found)


def cues(take: Take, plans: Mapping[PlanId, Plan]) -> tuple[Cue, ...]:
    """All cues of one session: chapters, steps and retakes, by their starts, the longer first."""
    calls = tuple(_calls(take, plans))
    every = (*_chapters(calls), *map(_step, calls), *_retakes(take.entries, calls))
    return tuple(sorted(every, key=lambda cue: (cue.began_ms, -cue.ended_ms)))


def chapters(take: Take, plans: Mapping[PlanId, Plan]) -> tuple[Cue, ...]:
    """The stages alone, for a track of the kind "chapters"."""
    return tuple(_chapters(tuple(_calls(take, plans))))


def _is_placed(entry: Entry) -> bool:
    return standing_of(entry.event) is not None and not isinstance(entry.event, Marked)


def _calls(take: Take, plans: Mapping[PlanId, Plan]) -> Iterator[Call]:
    """The place of each entry that has one; before them the one in hand when the take began, told by its greeting."""
    placed = [(entry, standing_of(entry.event)) for entry in take.entries if _is_placed(entry)]
    if take.entries and take.opens_at is not None:
        placed.insert(0, (take.entries[0], take.opens_at))
    ends = [entry.stream_ms or 0 for entry, _ in placed[1:]]
    said = [entry.said for entry, _ in placed]
    said[:1] = [_greeting(take.entries, text) for text in said[:1]]
    for (entry, standing), text, end in zip(placed, said, [*ends, _end(take.entries)], strict=False):
        here = where(standing, plans)
        if standing is not None and isinstance(here["row"], int):
            began = entry.stream_ms or 0
            makes = plans[standing.plan].rows[here["row"]].stitches_after
            yield Call(entry.seq, began, max(end, began + 1), text, here, makes)


def _greeting(entries: Sequence[Entry], otherwise: str | None) -> str | None:
    """What is told last when a pair is taken up: the step in hand."""
    told = (entry.said for entry in entries if entry.event == _GREETING)
    return next(reversed(tuple(told)), None) or otherwise


def _end(take: Sequence[Entry]) -> int:
    last = take[-1].stream_ms or 0 if take else 0
    return last + LAST_CUE_MS if take and standing_of(take[-1].event) else last


def _step(call: Call) -> Cue:
    """The sentence, then the place in the plan's own names, which are the same in every language."""
    here = call.here
    place = (
        f"{here['stage']} {here['round']}",
        f"sock {here['sock']} {here['half']}, row {here['row']}, group {here['group']}, makes {call.makes}",
    )
    return Cue(f"step {call.seq}", call.began_ms, call.ended_ms, (call.said or "", *place))


def _chapters(calls: Sequence[Call]) -> Iterator[Cue]:
    for stage, run in groupby(calls, key=lambda call: call.here["stage"]):
        together = tuple(run)
        yield Cue(f"chapter {together[0].seq}", together[0].began_ms, together[-1].ended_ms, (str(stage),))


def _retakes(take: Sequence[Entry], calls: Sequence[Call]) -> Iterator[Cue]:
    """For each mark: from the call of the step in hand, where a new take begins, to the mark."""
    for entry in take:
        if isinstance(entry.event, Marked):
            at = entry.stream_ms or 0
            began = max((call.began_ms for call in calls if call.began_ms <= at), default=at)
            yield Cue(f"retake {entry.seq}", began, max(at, began + 1), ("retake", entry.heard or ""))


def webvtt(sheet: Iterable[Cue]) -> str:
    """The cues as a WebVTT file."""
    blocks = (
        f"{cue.name}\n{_time(cue.began_ms)} --> {_time(cue.ended_ms)}\n{_text(cue.lines)}" for cue in sheet
    )
    return "\n\n".join(("WEBVTT", *blocks)) + "\n"


def _time(ms: int) -> str:
    minutes, rest = divmod(ms, 60_000)
    hours, minutes = divmod(minutes, 60)
    ahead = f"{hours:02}:" if hours else ""
    return f"{ahead}{minutes:02}:{rest // 1000:02}.{rest % 1000:03}"


def _text(lines: Sequence[str]) -> str:
    """A blank line would end the cue, and a NUL may not stand in a file."""
    cleaned = (" ".join(line.replace("\0", "").split()) for line in lines)
    escaped = (line.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;") for line in cleaned)
    return "\n".join(line for line in escaped if line)
