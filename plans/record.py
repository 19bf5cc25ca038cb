"""The one base of all records that cross a boundary."""

from pydantic import BaseModel, ConfigDict


class Record(BaseModel):
    """Frozen, closed, strict; hold tuples only, never lists or dicts."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True, allow_inf_nan=False)
