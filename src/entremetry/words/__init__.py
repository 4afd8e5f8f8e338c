"""Words in the language of whoever asks: messages of ours, numbers, and where lines may break.

A message is written in English where it is said: `say("cool{what} to {temperature}", ...)`. The
catalogue of a language, `catalogues/fr.po`, has the same message in that language; a language is
added by adding its file. Which language is spoken is a matter of the surroundings, like the time
zone: `with speaking("fr"):`. What an author wrote is never looked up here.
"""

from entremetry.words.dates import full_date, short_weekday, weekday, weekday_and_date
from entremetry.words.language import ENGLISH, Language, current, language, languages, speaking
from entremetry.words.numbers import decimal
from entremetry.words.say import (
    either,
    is_said_as,
    one_of,
    quoted,
    say,
    say_as,
    say_as_later,
    say_count,
    say_count_later,
    say_later,
)

__all__ = [
    "ENGLISH",
    "Language",
    "current",
    "decimal",
    "either",
    "full_date",
    "is_said_as",
    "language",
    "languages",
    "one_of",
    "quoted",
    "say",
    "say_as",
    "say_as_later",
    "say_count",
    "say_count_later",
    "say_later",
    "short_weekday",
    "speaking",
    "weekday",
    "weekday_and_date",
]
