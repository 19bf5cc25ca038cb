"""Every key that the session and the command line can say, with the names of its values.

Numbers are plain ints, lengths are measures; `said`, `name`, `path`, `reason` and `names` are text to
be said as it is; `choices` is a list of parts.
"""

_SOUND_CHECK: dict[str, set[str]] = {
    "welcome": set(),
    "say-next": set(),                         # please say "next"
    "sound-fine": set(),
    "too-quiet": set(),
    "too-loud": set(),                         # clipped
    "too-noisy": set(),
    "heard-nothing": set(),
    "heard-otherwise": {"said"},               # something was heard, but not "next"
    "sound-check-skipped": set(),
    "microphone-tried": {"name"},              # in place of one that hears nothing
    "no-ears": set(),                          # no microphone: keys only
    "no-mouth": set(),                         # no speaker: lines only
}  # fmt: skip

_LISTENING: dict[str, set[str]] = {
    "did-you-mean": {"said"},                  # the command, in the words of its own phrase
    "which-number": {"first", "second"},       # one three or three nought
    "listening": set(),
    "listening-again": set(),
    "listening-paused": set(),
    "attention-on": {"word"},
    "attention-off": set(),
    "attending": set(),                        # the attention word was heard alone
    "louder": set(), "loudest": set(), "softer": set(), "softest": set(),
    "faster": set(), "fastest": set(), "slower": set(), "slowest": set(),
    "voice-only": set(), "lines-only": set(), "voice-and-lines": set(),
    "help": set(),
    "help-keys": set(),
    "nothing-said-yet": set(),
}  # fmt: skip

_TIME: dict[str, set[str]] = {
    "rest-due": {"minutes"},                   # so long without a rest
    "resting": set(),
    "rest-over": {"minutes"},                  # whole ones; none where it was shorter
    "no-rest-to-end": set(),
    "rest-snoozed": {"minutes"},
    "no-rests-today": set(),
    "rests-again": {"minutes"},                # offered after so long
    "hand-care": set(),                        # hurting hands are for a doctor or physiotherapist
}  # fmt: skip

_COMING_AND_GOING: dict[str, set[str]] = {
    "resume-or-new": {"name"},
    "resume-or-another": {"name"},
    "which-pair": {"pairs"}, "pair-choice": {"number", "name"},        # `pairs` is a list of choices
    "pair-begins": {"name"},
    "goodbye": set(),
    "interrupted": set(),
    "plan-edited": {"name"},                   # the file was edited since; the pair goes on as it was begun
    # the same where the tape measure had made it anew: with what it said, or without
    "plan-edited-ask": {"name"}, "plan-edited-ask-measured": {"name"}, "plan-edited-ask-unmeasured": {"name"},
    "plan-stays": set(),
    "plan-lost": {"name"},                     # the journal does not hold the plan that the pair was begun from
    # the edited plan takes over; every row so far is the same
    "plan-taken": {"name"}, "plan-taken-measured": {"name"}, "plan-taken-unmeasured": {"name"},
    "plan-written": {"path"},
    "pair-summary": {
        "around", "circumference", "circumference_off", "foot", "foot_off", "leg", "leg_off",
    },
    "piece-summary": {"around", "circumference", "height"},            # of what is no sock
    "keep-this": set(),                        # yes or no
}  # fmt: skip

_NEW_PAIR: dict[str, set[str]] = {
    "new-pair": set(),
    "ask-practice": set(),
    "ask-foot-length": set(),
    "ask-ball": set(),
    "ask-ankle": set(),
    "ask-heel-diagonal": set(),
    "ask-calf": set(),
    "ask-leg": set(),
    "ask-cuff": set(),
    "ask-stitches": set(),                     # of the swatch, over ten centimetres
    "ask-rounds": set(),
    "ask-skein": set(),                        # grams
    "ask-skein-length": set(),                 # metres
    "ask-skeins": set(),
    "ask-unit": {"number"},                    # centimetres or inches; `number` as it was heard, text
    "answer-length": {"length"},
    "answer-count": {"number"},                # text
    "answer-skipped": set(),
    "answer-needed": set(),                    # this one cannot be skipped
    "not-yes-or-no": set(),
    "ask-earlier": {"question", "answer"},     # a question asked again, with what was answered before
    "told-length": {"length"}, "told-count": {"number"}, "told-skipped": set(),
    "ask-all-again": set(),
    "interview-help": {"answer"},              # how to come to an answer, a part
    "help-practice": set(), "help-foot-length": set(), "help-ball": set(), "help-ankle": set(),
    "help-heel-diagonal": set(), "help-calf": set(), "help-leg": set(), "help-cuff": set(), "help-stitches": set(),
    "help-rounds": set(), "help-skein": set(), "help-skein-length": set(), "help-skeins": set(),
}  # fmt: skip

_LINES: dict[str, set[str]] = {
    "stage-lines": {"stage", "rounds", "rows"},
    "plan-fine": {"name", "rows"},
    "journal-fine": {"path", "events"},
    "journal-salvaged": {"path", "events"},
    "model-listed": {"name", "language", "purpose", "licence", "size", "here"},
    "model-size": {"megabytes"}, "model-size-unknown": set(),
    "model-here": {"path"}, "model-not-here": {"name"},
    "model-fetching": {"name", "percent"},
    "model-fetched": {"name"},
    "model-fine": {"name"},
    "demo-same": {"commands"},
    "demo-differs": {"said", "heard"},
}  # fmt: skip

_SETTINGS: dict[str, set[str]] = {
    "settings-are-in": {"path"},
    "microphone-is": {"name"}, "microphone-usual": set(),      # the one chosen, or the system's own
    "speaker-is": {"name"}, "speaker-usual": set(),
    "voice-is": {"name"}, "voice-usual": set(),
    "rate-is": {"words"},                      # a minute
    "loudness-is": {"percent"},
    "wording-terse": set(), "wording-plain": set(), "wording-learner": set(),
    "while-speaking-wait": set(), "while-speaking-headphones": set(), "while-speaking-loudspeaker": set(),
    "rests-are-on": {"minutes"}, "rests-are-off": set(),
    "careful-on": set(), "careful-off": set(),
    "language-is": {"name"},
    "microphone-here": {"name"}, "speaker-here": {"name"}, "voice-here": {"name"},
    "voices-besides": {"count"},               # of other languages
}  # fmt: skip

_PROBLEMS: dict[str, set[str]] = {
    "path-missing": {"file"},
    "path-not-text": {"file"},
    "path-taken": {"file"},
    "path-unreadable": {"file", "reason"},
    "path-unwritable": {"file", "reason"},
    "language-unknown": {"language", "known"},
    "language-broken": {"language", "file", "what"},
    "typed-from-elsewhere": set(), "model-without-vosk": set(),
    "speak-to-what": {"text"}, "speak-to-itself": set(),
    "show-what": set(),
    "no-such-take": {"take", "takes"},
    "listen-to-what": set(),                   # neither files nor the microphone, or both
    "option-before-verb": {"option", "verb"},
    "nothing-to-resume": set(),
    "no-pair-named": {"name", "names"},
    "packages-mixed-up": {"package", "path"},  # another distribution's `plans` or `models` is in the way
    "microphone-lost": {"name"},
    "speaker-lost": {"name"},
    "system-refused": {"reason"},              # what the operating system would not do, in its words
    "unexpected": {"reason"},
}  # fmt: skip

SESSION_SAYINGS: dict[str, frozenset[str]] = {
    key: frozenset(names)
    for group in (_SOUND_CHECK, _LISTENING, _TIME, _COMING_AND_GOING, _NEW_PAIR, _LINES, _SETTINGS, _PROBLEMS)
    for key, names in group.items()
}
"""Key → the names of its values."""
