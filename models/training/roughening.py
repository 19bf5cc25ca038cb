"""Makes clean speech sound like speech in rooms: speed, echo, noise, distance, microphones; in batches on the GPU."""

import math

import torch
from torch import Tensor

RATE_HZ = 16_000
_STEP = 4_000


def _uniform(low: float, high: float, like: Tensor) -> Tensor:
    return torch.rand(len(like), 1, device=like.device) * (high - low) + low


def _sometimes(share: float, changed: Tensor, plain: Tensor) -> Tensor:
    return torch.where(torch.rand(len(plain), 1, device=plain.device) < share, changed, plain)


def _even(samples: float) -> int:
    """At least so many, of a size that a Fourier transform likes."""
    return math.ceil(samples / _STEP) * _STEP


def _power(sound: Tensor) -> Tensor:
    return sound.square().sum(1, keepdim=True) / (sound.abs() > 0).sum(1, keepdim=True).clamp(min=1)


def sped(sound: Tensor, lengths: Tensor, most: float) -> tuple[Tensor, Tensor]:
    """Played faster or slower by up to so much; shape kept long enough for the slowest."""
    factor = _uniform(1 - most, 1 + most, sound)
    out = torch.arange(_even(sound.shape[1] / (1 - most)), device=sound.device)[None] * factor
    left = out.floor().long().clamp(max=sound.shape[1] - 2)
    share = (out - left).clamp(max=1.0)
    played = sound.gather(1, left) * (1 - share) + sound.gather(1, left + 1) * share
    ends = (lengths / factor[:, 0]).long()
    return torch.where(torch.arange(played.shape[1], device=sound.device)[None] < ends[:, None], played, 0.0), ends


def padded(sound: Tensor, lengths: Tensor) -> tuple[Tensor, Tensor]:
    """With silence before (up to 0.6 s) and after (0.1 to 0.6 s)."""
    before = (torch.rand(len(sound), device=sound.device) * 0.6 * RATE_HZ).long()
    after = ((torch.rand(len(sound), device=sound.device) * 0.5 + 0.1) * RATE_HZ).long()
    total = lengths + before + after
    at = torch.arange(_even(sound.shape[1] + 1.2 * RATE_HZ), device=sound.device)[None] - before[:, None]
    inside = (at >= 0) & (at < lengths[:, None])
    return torch.where(inside, sound.gather(1, at.clamp(0, sound.shape[1] - 1)), 0.0), total


def echoed(sound: Tensor) -> Tensor:
    """In a room: noise that dies away exponentially after the direct sound (reverberation 0.1 to 0.7 s)."""
    length = int(0.5 * RATE_HZ)
    decay = _uniform(0.1, 0.7, sound) * RATE_HZ
    times = torch.arange(length, device=sound.device)[None]
    tail = torch.randn(len(sound), length, device=sound.device) * torch.exp(-6.9 * times / decay)
    tail = tail / tail.square().sum(1, keepdim=True).sqrt() * 10 ** (_uniform(-15, 1, sound) / 20)
    tail[:, : int(0.002 * RATE_HZ)] = 0.0
    tail[:, 0] = 1.0
    size = sound.shape[1] + length
    return torch.fft.irfft(torch.fft.rfft(sound, size) * torch.fft.rfft(tail, size), size)[:, : sound.shape[1]]


def coloured(sound: Tensor, least: float = 0.0, most: float = 1.2) -> Tensor:
    """Noise between white and brown, one for each sound; its level falls with the frequency to such a power."""
    spectrum = torch.fft.rfft(torch.randn_like(sound))
    hertz = torch.linspace(0, RATE_HZ / 2, spectrum.shape[1], device=sound.device)[None]
    return torch.fft.irfft(spectrum / (hertz + 50) ** _uniform(least, most, sound), sound.shape[1])


def clicks(sound: Tensor) -> Tensor:
    """Needles: short ringing ticks, a few a second."""
    ticks = (torch.rand_like(sound) < 3.0 / RATE_HZ).float() * torch.randn_like(sound)
    times = torch.arange(400, device=sound.device)
    ring = torch.exp(-times / 60.0) * torch.sin(
        times * 2 * math.pi * (2000 + 3000 * torch.rand(1, device=sound.device)) / RATE_HZ
    )
    size = sound.shape[1] + _STEP
    return torch.fft.irfft(torch.fft.rfft(ticks, size) * torch.fft.rfft(ring, size), size)[:, : sound.shape[1]]


def tones(sound: Tensor) -> Tensor:
    """Music of a kind: chords of decaying harmonic notes that change twice a second."""
    times = torch.arange(sound.shape[1], device=sound.device)[None] / RATE_HZ
    beat = (times * 2).long()
    beats = sound.shape[1] * 2 // RATE_HZ + 1
    music = torch.zeros_like(sound)
    for _ in range(3):
        notes = 110 * 2 ** (torch.randint(0, 37, (len(sound), beats), device=sound.device) / 12)
        pitch = notes.gather(1, beat.expand(len(sound), -1))
        phase = torch.cumsum(pitch, 1) * 2 * math.pi / RATE_HZ
        fading = torch.exp(-3 * (times * 2 - beat))
        music = music + fading * (phase.sin() + 0.5 * (2 * phase).sin() + 0.3 * (3 * phase).sin())
    return music


def kettle(sound: Tensor) -> Tensor:
    """Boiling water, and for some a whistle that wavers."""
    spectrum = torch.fft.rfft(torch.randn_like(sound))
    hertz = torch.linspace(0, RATE_HZ / 2, spectrum.shape[1], device=sound.device)[None]
    lowest = _uniform(300, 3000, sound)
    hiss = torch.fft.irfft(spectrum * hertz / (hertz + lowest), sound.shape[1])
    times = torch.arange(sound.shape[1], device=sound.device)[None] / RATE_HZ
    waver = 1 + 0.02 * torch.sin(2 * math.pi * _uniform(3, 8, sound) * times)
    whistle = torch.sin(2 * math.pi * torch.cumsum(_uniform(1500, 3500, sound) * waver, 1) / RATE_HZ)
    return hiss / hiss.square().mean(1, keepdim=True).sqrt() + _sometimes(0.4, whistle, torch.zeros_like(whistle))


def street(sound: Tensor) -> Tensor:
    """Low noise that swells and ebbs, as of cars that pass."""
    times = torch.arange(sound.shape[1], device=sound.device)[None] / RATE_HZ
    turn = 2 * math.pi * (_uniform(0.05, 0.6, sound) * times + _uniform(0, 1, sound))
    return coloured(sound, 0.7, 1.5) * 10 ** (_uniform(0, 9, sound) / 20 * turn.sin())


def _pieces(recorded: Tensor, like: Tensor) -> Tensor:
    """For each sound another piece of a long recording (int16's scale), all equally loud."""
    begins = torch.randint(max(1, len(recorded) - like.shape[1]), (len(like), 1), device=like.device)
    piece = recorded[(begins + torch.arange(like.shape[1], device=like.device)[None]) % len(recorded)].float()
    return piece / piece.square().mean(1, keepdim=True).sqrt().clamp(min=1.0)


def babble(sound: Tensor, talk: Tensor) -> Tensor:
    """One to eight other people, some nearer than others. `talk`: many people one after the other."""
    people = torch.randint(1, 9, (len(sound), 1), device=sound.device)
    heard = torch.zeros_like(sound)
    for person in range(8):
        heard = heard + _pieces(talk, sound) * 10 ** (_uniform(-5, 5, sound) / 20) * (person < people)
    return heard


def equalised(sound: Tensor) -> Tensor:
    """Microphones: six bands up and down by some dB, and for some a telephone's narrow band."""
    spectrum = torch.fft.rfft(sound)
    hertz = torch.linspace(0, RATE_HZ / 2, spectrum.shape[1], device=sound.device)
    knots = torch.log(torch.tensor([100.0, 400, 900, 2100, 4100, 8100], device=sound.device))
    at = torch.log(hertz + 100)
    left = (torch.bucketize(at, knots) - 1).clamp(0, 4)
    share = ((at - knots[left]) / (knots[left + 1] - knots[left])).clamp(0, 1)
    gains = torch.randn(len(sound), 6, device=sound.device) * 4
    decibels = gains[:, left] * (1 - share) + gains[:, left + 1] * share
    top = torch.where(
        torch.rand(len(sound), 1, device=sound.device) < 0.3, _uniform(3300, 4200, sound), _uniform(6500, 9000, sound)
    )
    bottom = torch.where(
        torch.rand(len(sound), 1, device=sound.device) < 0.3, _uniform(80, 300, sound), _uniform(0, 60, sound)
    )
    passed = ((hertz < top) & (hertz >= bottom)).float()
    return torch.fft.irfft(spectrum * 10 ** (decibels / 20) * passed, sound.shape[1])


_KINDS = {"steady": 3.0, "clicks": 1.0, "tones": 1.0, "babble": 4.0, "kettle": 0.7, "street": 0.8, "recorded": 2.0}
"""How often each noise is drawn."""


def _below(sound: Tensor) -> Tensor:
    """By how many dB the noise is softer than the speech: for most little, for some much."""
    return _sometimes(0.7, _uniform(0, 18, sound), _uniform(18, 40, sound))


def noisy(sound: Tensor, recorded: Tensor, talk: Tensor) -> Tensor:
    """With a noise at 0 to 40 dB below the speech, a softer one of another kind, and hiss.

    Args:
        sound: the batch.
        recorded: one long real noise, shape (samples,), int16's scale.
        talk: many people one after the other, likewise.
    """
    steady = coloured(sound)
    made = (steady, clicks(sound), tones(sound), babble(sound, talk), kettle(sound), street(sound))
    kinds = torch.stack([*made, _pieces(recorded, sound)])
    kinds = kinds / kinds.square().mean(2, keepdim=True).sqrt().clamp(min=1e-6)
    weights = torch.tensor([*_KINDS.values()], device=sound.device).expand(len(sound), -1)
    drawn = torch.multinomial(weights, 2)
    rows = torch.arange(len(sound), device=sound.device)
    loud = _power(sound).sqrt().clamp(min=1e-4)
    below = _below(sound)
    first = kinds[drawn[:, 0], rows] * 10 ** (-below / 20)
    second = kinds[drawn[:, 1], rows] * 10 ** (-(below + _uniform(3, 25, sound)) / 20)
    return sound + loud * (first + second + kinds[0] * 10 ** (-_uniform(20, 50, sound) / 20))


def roughened(sound: Tensor, lengths: Tensor, recorded: Tensor, talk: Tensor) -> tuple[Tensor, Tensor]:
    """A batch (batch, samples; -1..1) as microphones in rooms would hear it, in int16's scale; and its new lengths."""
    sound, lengths = sped(sound, lengths, 0.15)
    sound, lengths = padded(sound, lengths)
    sound = _sometimes(0.5, echoed(sound), sound)
    sound = _sometimes(0.85, noisy(sound, recorded, talk), sound + 1e-4 * torch.randn_like(sound))
    sound = _sometimes(0.8, equalised(sound), sound)
    peak = sound.abs().amax(1, keepdim=True).clamp(min=1e-6)
    return sound / peak * 10 ** _uniform(2.3, 4.5, sound), lengths


def quiet(sound: Tensor, lengths: Tensor) -> tuple[Tensor, Tensor]:
    """The same batch in a quiet room close to the microphone: what a network that knows nothing begins with."""
    sound, lengths = padded(sound, lengths)
    sound = sound + 3e-4 * torch.randn_like(sound)
    peak = sound.abs().amax(1, keepdim=True).clamp(min=1e-6)
    return sound / peak * 10 ** _uniform(3.5, 4.3, sound), lengths
