"""Units as they are said, in the words of the language that is spoken."""

from __future__ import annotations

from collections.abc import Mapping

from entremetry.publish.speech import UnitWord
from entremetry.words import say, say_count


def minute(number: float) -> str:
    """'minute' or 'minutes'."""
    return say_count("minute", "minutes", number)


def hour(number: float) -> str:
    """'hour' or 'hours'."""
    return say_count("hour", "hours", number)


def second(number: float) -> str:
    """'second' or 'seconds'."""
    return say_count("second", "seconds", number)


def day(number: float) -> str:
    """'day' or 'days'."""
    return say_count("day", "days", number)


def tablespoon(number: float) -> str:
    """'tablespoon' or 'tablespoons'."""
    return say_count("tablespoon", "tablespoons", number)


def teaspoon(number: float) -> str:
    """'teaspoon' or 'teaspoons'."""
    return say_count("teaspoon", "teaspoons", number)


def cup(number: float) -> str:
    """'cup' or 'cups'."""
    return say_count("cup", "cups", number)


SIGNS: Mapping[str, UnitWord] = {
    "g/ml": lambda n: say_count("gram per millilitre", "grams per millilitre", n),
    "kg": lambda n: say_count("kilogram", "kilograms", n),
    "mg": lambda n: say_count("milligram", "milligrams", n),
    "g": lambda n: say_count("gram", "grams", n),
    "ml": lambda n: say_count("millilitre", "millilitres", n),
    "l": lambda n: say_count("litre", "litres", n),
    "mm": lambda n: say_count("millimetre", "millimetres", n),
    "cm": lambda n: say_count("centimetre", "centimetres", n),
    "min": minute,
    "h": hour,
    "s": second,
    "oz": lambda n: say_count("ounce", "ounces", n),
    "lb": lambda n: say_count("pound", "pounds", n),
    "°C": lambda n: say_count("degree Celsius", "degrees Celsius", n),
    "°F": lambda n: say_count("degree Fahrenheit", "degrees Fahrenheit", n),
    "°Bx": lambda n: say_count("degree Brix", "degrees Brix", n),
    "%": lambda n: say("per cent"),
}
"""Signs that all languages share."""
