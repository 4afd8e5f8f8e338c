"""What stands in one bowl while a method is followed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from entremetry.formula.mix import EMPTY, Mix


@dataclass(frozen=True, slots=True, kw_only=True)
class Bowl:
    """A mix, and how much of each line is still in it (1.0 for all)."""

    mix: Mix = EMPTY
    still_there: Mapping[str, float] = field(default_factory=dict)

    def with_mix(self, mix: Mix) -> Bowl:
        """Bowl after something happened to all of it alike."""
        return Bowl(mix=mix, still_there=self.still_there)

    def thinned_to(self, mix: Mix) -> Bowl:
        """Bowl after a part of everything has gone."""
        left = mix.mass / self.mix.mass if self.mix.mass > 0.0 else 1.0
        return Bowl(
            mix=mix, still_there={name: part * left for name, part in self.still_there.items()}
        )
