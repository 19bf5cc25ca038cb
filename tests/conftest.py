"""No test is judged by the clock or by what is at home; examples are the same every time, new ones in the night."""

import os

import pytest
from hypothesis import HealthCheck, settings

_SLOW = {"deadline": None, "suppress_health_check": [HealthCheck.too_slow]}
settings.register_profile("usual", derandomize=True, **_SLOW)
settings.register_profile("nightly", **_SLOW)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "usual"))


@pytest.fixture(scope="session", autouse=True)
def _at_home_nowhere(tmp_path_factory: pytest.TempPathFactory):
    """Nobody's settings and journals are read or changed, by the tests and by the programs that they start."""
    kept = dict(os.environ)
    for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME"):
        os.environ[name] = str(tmp_path_factory.mktemp(name.lower()))
    yield
    os.environ.clear()
    os.environ.update(kept)
