"""Kaldi's MFCC in torch, for whole batches on the GPU, as the Vosk run time computes it from conf/mfcc.conf.

Frames of 25 ms every 10 ms, pre-emphasis 0.97, Povey window, 40 mel bins from 20 to 7600 Hz, 40 cepstra, lifter 22,
no energy (Kaldi's defaults but for the numbers of bins and cepstra). `python -m models.training.features` compares
them with kaldi-native-fbank's.
"""

import math

import torch
from torch import Tensor

RATE_HZ = 16_000
FRAME, SHIFT, FFT = 400, 160, 512
BINS = 40
LOW_HZ, HIGH_HZ = 20.0, 7600.0
_LIFTER = 22.0
_FLOOR = 1.1920929e-07
CONF = f"""--use-energy=false
--num-mel-bins={BINS}
--num-ceps={BINS}
--low-freq={LOW_HZ:.0f}
--high-freq={HIGH_HZ:.0f}
--allow-upsample=true
--allow-downsample=true
"""


def _mel(hertz: Tensor) -> Tensor:
    return 1127.0 * torch.log(1.0 + hertz / 700.0)


def mel_bank(warp: float = 1.0) -> Tensor:
    """Triangles over the bins of the spectrum, shape (BINS, FFT / 2); frequencies stretched by `warp`."""
    edges = torch.linspace(_mel(torch.tensor(LOW_HZ)).item(), _mel(torch.tensor(HIGH_HZ)).item(), BINS + 2)
    at = _mel(torch.arange(FFT // 2) * RATE_HZ / FFT * warp)[None]
    low, middle, high = edges[:-2, None], edges[1:-1, None], edges[2:, None]
    rising, falling = (at - low) / (middle - low), (high - at) / (high - middle)
    return torch.minimum(rising, falling).clamp(min=0.0)


def _cosines() -> Tensor:
    bins, order = torch.arange(BINS), torch.arange(BINS)[:, None]
    table = torch.cos(math.pi / BINS * (bins + 0.5) * order) * math.sqrt(2.0 / BINS)
    table[0] = math.sqrt(1.0 / BINS)
    lifter = 1.0 + 0.5 * _LIFTER * torch.sin(math.pi * torch.arange(BINS) / _LIFTER)
    return table * lifter[:, None]


class Cepstra(torch.nn.Module):
    """Sound (batch, samples; int16's scale) to cepstra (batch, frames, BINS).

    Args:
        warps: stretchings of the frequency axis, one of which is drawn for each sound while training (vocal tract
            length perturbation; Jaitly and Hinton, 2013).
    """

    def __init__(self, warps: tuple[float, ...] = (1.0,)) -> None:
        super().__init__()
        hann = 0.5 - 0.5 * torch.cos(2 * math.pi * torch.arange(FRAME, dtype=torch.float64) / (FRAME - 1))
        self.register_buffer("window", hann.pow(0.85).float())
        self.register_buffer("banks", torch.stack([mel_bank(warp) for warp in warps]))
        self.register_buffer("cosines", _cosines())

    def forward(self, sound: Tensor, dither: float = 0.0, drop: Tensor | None = None) -> Tensor:
        """`drop`: shape (batch, BINS), bins to silence while training."""
        frames = sound.unfold(1, FRAME, SHIFT)
        frames = frames + dither * torch.randn_like(frames) if dither else frames
        frames = frames - frames.mean(dim=2, keepdim=True)
        before = torch.cat([frames[..., :1], frames[..., :-1]], dim=2)
        spectrum = torch.fft.rfft((frames - 0.97 * before) * self.window, FFT)[..., : FFT // 2]
        power = spectrum.real.square() + spectrum.imag.square()
        drawn = torch.randint(len(self.banks), (len(sound),), device=sound.device)
        energies = torch.bmm(power, self.banks[drawn].transpose(1, 2)).clamp(min=_FLOOR).log()
        if drop is not None:
            energies = torch.where(drop[:, None], energies.mean(dim=(1, 2), keepdim=True), energies)
        return energies @ self.cosines.T


def _compare() -> None:
    import kaldi_native_fbank  # noqa: PLC0415 - the reference, for this check alone

    options = kaldi_native_fbank.MfccOptions()
    options.frame_opts.dither = 0.0
    options.mel_opts.num_bins = options.num_ceps = BINS
    options.mel_opts.low_freq, options.mel_opts.high_freq, options.use_energy = LOW_HZ, HIGH_HZ, False
    torch.manual_seed(1)
    sound = (torch.randn(RATE_HZ) * 1000 + 8000 * torch.sin(torch.arange(RATE_HZ) * 0.2)).round()
    theirs = kaldi_native_fbank.OnlineMfcc(options)
    theirs.accept_waveform(RATE_HZ, sound.tolist())
    theirs.input_finished()
    expected = torch.stack([torch.tensor(theirs.get_frame(at)) for at in range(theirs.num_frames_ready)])
    ours = Cepstra()(sound[None])[0]
    print(f"frames {len(ours)} and {len(expected)}, largest difference {(ours - expected).abs().max():.4f}")


if __name__ == "__main__":
    _compare()
