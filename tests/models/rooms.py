"""Rooms, needles and voices made on the spot; everything at 16 kHz, as floats with full scale at 1."""

import subprocess
from functools import cache

import numpy as np

from models.resampling import Resampler, unpack

WORDS = ("next", "stop", "eight", "undo", "where am I", "back two rounds", "I have thirty three")
VOICES = ("en-gb", "en-us", "en-us+f2", "en-gb+m3", "en-gb-scotland")


def silence(seconds):
    return np.zeros(round(16_000 * seconds))


def white(seconds, level_dbfs, seed=1):
    """Noise of equal power at all frequencies."""
    return np.random.default_rng(seed).normal(0, 10 ** (level_dbfs / 20), round(16_000 * seconds))


def pink(seconds, level_dbfs, seed=1):
    """Noise that falls by 3 dB an octave, as rooms have it."""
    spectrum = np.fft.rfft(white(seconds, 0, seed))
    noise = np.fft.irfft(spectrum / np.sqrt(np.arange(1, len(spectrum) + 1)), round(16_000 * seconds))
    return noise / noise.std() * 10 ** (level_dbfs / 20)


def needle_clicks(seconds, level_dbfs, clicks_a_second=3, seed=1):
    """Two resonances that die away within milliseconds, at chance times, over a quiet room."""
    chance = np.random.default_rng(seed)
    sound, time = pink(seconds, -55, seed), np.arange(800) / 16_000
    for start in chance.integers(0, len(sound) - 800, round(seconds * clicks_a_second)):
        for amplitude in (1.0, 0.6):
            decay = np.exp(-time / chance.uniform(0.002, 0.008))
            ringing = np.sin(2 * np.pi * chance.uniform(1_800, 6_500) * time)
            sound[start : start + 800] += amplitude * 10 ** (level_dbfs / 20) * decay * ringing
    return sound


@cache
def spoken(words, voice="en-gb"):
    """A synthetic voice, silent edges cut off; its first and last samples are speech."""
    command = ["espeak-ng", "-v", voice, "--stdout", words]
    wav = subprocess.run(command, capture_output=True, check=True).stdout
    samples = Resampler(22_050)
    speech = np.concatenate((samples.accept(unpack(wav[44:], 2)), samples.finish())) / 32_768
    loud = np.flatnonzero(np.abs(speech) > 0.01 * np.abs(speech).max())
    return speech[loud[0] : loud[-1] + 1]


def at_level(speech, level_dbfs):
    """The same speech with that mean level."""
    return speech * 10 ** (level_dbfs / 20) / np.sqrt((speech**2).mean())


def as_int16(sound):
    return np.clip(np.rint(sound * 32_768), -32_768, 32_767).astype(np.int16)
