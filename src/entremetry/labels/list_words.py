"""What a list of ingredients has to know of a language, apart from the words in its catalogue."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from entremetry.larder.spelling import plain


def as_written(word: str) -> str:
    """The word itself: what is done to a word where nothing is known of its language."""
    return word


@dataclass(frozen=True, slots=True, kw_only=True)
class ListWords:
    """Rules by which the words of a list are matched in one language.

    `allergens` has, by code, patterns of the words that have named an allergen once they stand in
    a list; a code that is not there is named by nothing but its word in the catalogue. `remarks`
    are patterns of what a list leaves out of a larder's name, `after_percent` of what goes with a
    percentage. `not_by_name` are words of a dessert's name, plain and in the singular, that name
    no ingredient. `shown` is the form in which a word of the name is quoted.
    """

    allergens: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    remarks: tuple[str, ...] = ()
    after_percent: tuple[str, ...] = ()
    not_by_name: frozenset[str] = frozenset()
    singular: Callable[[str], str] = as_written
    shown: Callable[[str], str] = as_written
    names_begin_small: bool = False

    def short(self, name: str) -> str:
        """A larder's name without percentages and remarks."""
        share = rf"\s*\d[\d.,]*(-\d+)?\s*%(\s+({'|'.join(self.after_percent)}))?"
        rest = re.sub(share if self.after_percent else r"\s*\d[\d.,]*(-\d+)?\s*%", "", name)
        if self.remarks:
            rest = re.sub(rf"\s*\b({'|'.join(self.remarks)})\b", "", rest)
        rest = re.sub(r"\s+", " ", rest).strip() or name
        return rest[:1].lower() + rest[1:] if self.names_begin_small else rest

    def is_no_ingredient(self, word: str) -> bool:
        """Whether a word of a dessert's name names no ingredient."""
        return bool(self.stems(word) & self.not_by_name)

    def stems(self, word: str) -> frozenset[str]:
        """Forms by which a word is compared: plain, in the singular of this language."""
        return frozenset({self.singular(plain(word))})
