"""The table of units: exact factors, each row with its source.

The factors are written as the exact definitions read (25.4 mm, 231 cubic inches),
so that they can be compared with the source by eye.
"""

from __future__ import annotations

from collections.abc import Iterator

from entremetry.quantities.unit import Kind, Measures, Unit

SI = "bipm_si_2019"
NIST = "nist_hb44_appendix_c"
FDA = "cfr_21_101_9"
IMPERIAL = "uk_weights_and_measures_1985"
MEMORY = "from_memory"

INCH = 0.0254
POUND = 0.45359237
US_GALLON = 231 * INCH**3
US_CUP = US_GALLON / 16
IMPERIAL_GALLON = 4.54609e-3


def _units(kind: Kind, source: str, rows: dict[str, tuple[float, str]]) -> Iterator[Unit]:
    """Make units of one kind and source from `name: (factor, spellings)`."""
    for name, (factor, spellings) in rows.items():
        others = tuple(spellings.split(", ")) if spellings else ()
        yield Unit(name=name, kind=kind, factor=factor, source=source, spellings=others)


_METRIC_MASS = {
    "kg": (1.0, "kilo, kilos, kilogram, kilograms"),
    "g": (1e-3, "gram, grams, gramme, grammes"),
    "mg": (1e-6, "milligram, milligrams"),
}
_POUNDS = {
    "lb": (POUND, "lbs, pound, pounds"),
    "oz": (POUND / 16, "ounce, ounces"),
}
_METRIC_VOLUME = {
    "l": (1e-3, "litre, litres, liter, liters"),
    "dl": (1e-4, "decilitre, decilitres, deciliter, deciliters"),
    "cl": (1e-5, "centilitre, centilitres, centiliter, centiliters"),
    "ml": (1e-6, "millilitre, millilitres, milliliter, milliliters, cc, cm³"),
    "m³": (1.0, ""),
    "mm³": (1e-9, ""),
}
_METRIC_LENGTH = {
    "m": (1.0, "metre, metres, meter, meters"),
    "cm": (1e-2, "centimetre, centimetres, centimeter, centimeters"),
    "mm": (1e-3, "millimetre, millimetres, millimeter, millimeters"),
}
_INCHES = {"in": (INCH, 'inch, inches, ", ″'), "ft": (12 * INCH, "foot, feet")}
_AREA = {"m²": (1.0, ""), "cm²": (1e-4, ""), "mm²": (1e-6, "")}
_DURATION = {
    "s": (1.0, "sec, secs, second, seconds"),
    "min": (60.0, "mins, minute, minutes"),
    "h": (3600.0, "hr, hrs, hour, hours"),
    "day": (86400.0, "d, days, jour, jours"),
    "week": (604800.0, "weeks"),
}
_FRACTION = {"%": (0.01, "percent, per cent")}
_DENSITY = {
    "kg/m³": (1.0, ""),
    "g/ml": (1e3, "g/cm³, kg/l, g/cc"),
    "g/l": (1.0, ""),
}
_MASS_PER_AREA = {
    "g/cm²": (10.0, ""),
    "kg/m²": (1.0, ""),
    "g/m²": (1e-3, ""),
    "mg/cm²": (1e-2, ""),
}
_TEMPERATURE = (
    Unit(
        name="°C",
        kind=Kind.TEMPERATURE,
        factor=1.0,
        offset=273.15,
        source=SI,
        spellings=("deg c", "degree c", "degrees c", "celsius", "degrees celsius", "º c", "ºc"),
    ),
    Unit(
        name="°F",
        kind=Kind.TEMPERATURE,
        factor=5 / 9,
        offset=459.67 * 5 / 9,
        source="nist_sp811",
        spellings=("deg f", "degree f", "degrees f", "fahrenheit", "degrees fahrenheit", "ºf"),
    ),
    Unit(name="K", kind=Kind.TEMPERATURE, factor=1.0, source=SI, spellings=("kelvin", "kelvins")),
)

UNITS: tuple[Unit, ...] = (
    *_units(Kind.MASS, SI, _METRIC_MASS),
    *_units(Kind.MASS, NIST, _POUNDS),
    *_units(Kind.VOLUME, SI, _METRIC_VOLUME),
    *_units(Kind.LENGTH, SI, _METRIC_LENGTH),
    *_units(Kind.LENGTH, NIST, _INCHES),
    *_units(Kind.AREA, SI, _AREA),
    *_units(Kind.DURATION, SI, _DURATION),
    *_units(Kind.FRACTION, SI, _FRACTION),
    *_units(Kind.DENSITY, SI, _DENSITY),
    *_units(Kind.MASS_PER_AREA, SI, _MASS_PER_AREA),
    *_TEMPERATURE,
    *_units(
        Kind.VOLUME,
        NIST,
        {
            "us cup": (US_CUP, ""),
            "us tbsp": (US_CUP / 16, ""),
            "us tsp": (US_CUP / 48, ""),
            "us fl oz": (US_CUP / 8, ""),
            "us pint": (US_CUP * 2, ""),
            "us quart": (US_CUP * 4, ""),
            "us gallon": (US_GALLON, ""),
        },
    ),
    *_units(
        Kind.VOLUME,
        FDA,
        {
            "label cup": (240e-6, "labelling cup, us label cup, us labelling cup"),
            "label tbsp": (15e-6, "labelling tbsp, us label tbsp, us labelling tbsp"),
            "label tsp": (5e-6, "labelling tsp, us label tsp, us labelling tsp"),
            "label fl oz": (30e-6, "labelling fl oz, us label fl oz, us labelling fl oz"),
        },
    ),
    *_units(
        Kind.VOLUME,
        IMPERIAL,
        {
            "uk fl oz": (IMPERIAL_GALLON / 160, ""),
            "uk pint": (IMPERIAL_GALLON / 8, ""),
            "uk quart": (IMPERIAL_GALLON / 4, ""),
            "uk gallon": (IMPERIAL_GALLON, ""),
            "imperial cup": (IMPERIAL_GALLON / 16, ""),
        },
    ),
    *_units(
        Kind.VOLUME,
        MEMORY,
        {
            "metric cup": (250e-6, ""),
            "metric tbsp": (15e-6, ""),
            "metric tsp": (5e-6, ""),
            "au cup": (250e-6, ""),
            "au tbsp": (20e-6, ""),
            "au tsp": (5e-6, ""),
            "uk cup": (250e-6, ""),
            "uk tbsp": (15e-6, ""),
            "uk tsp": (5e-6, ""),
        },
    ),
)

COUNTRY_WORDS: dict[str, str] = {
    "cup": "cup",
    "cups": "cup",
    "tbsp": "tbsp",
    "tbsps": "tbsp",
    "tablespoon": "tbsp",
    "tablespoons": "tbsp",
    "tsp": "tsp",
    "tsps": "tsp",
    "teaspoon": "tsp",
    "teaspoons": "tsp",
    "fl oz": "fl oz",
    "floz": "fl oz",
    "fluid oz": "fl oz",
    "fluid ounce": "fl oz",
    "fluid ounces": "fl oz",
    "pint": "pint",
    "pints": "pint",
    "pt": "pint",
    "quart": "quart",
    "quarts": "quart",
    "qt": "quart",
    "gallon": "gallon",
    "gallons": "gallon",
}
"""Measures that mean different volumes in different countries, by their spellings."""

COUNTRY_SPELLINGS: dict[str, Measures | str] = {
    "us": Measures.US,
    "u.s.": Measures.US,
    "american": Measures.US,
    "metric": Measures.METRIC,
    "au": Measures.AU,
    "aus": Measures.AU,
    "australian": Measures.AU,
    "uk": Measures.UK,
    "british": Measures.UK,
    "imperial": "imperial",
    "imp": "imperial",
    "label": "label",
    "labelling": "label",
}
"""Words in front of such a measure which say whose it is."""
