"""No test is judged by the clock, and each tries the same examples every time; the nightly counts draw new ones."""

import os

from hypothesis import HealthCheck, settings

_SLOW = {"deadline": None, "suppress_health_check": [HealthCheck.too_slow]}
settings.register_profile("usual", derandomize=True, **_SLOW)
settings.register_profile("nightly", **_SLOW)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "usual"))
