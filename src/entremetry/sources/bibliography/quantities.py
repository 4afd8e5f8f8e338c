"""Sources of the room `quantities`."""

from __future__ import annotations

from entremetry.sources.source import Source

ENTRIES: tuple[Source, ...] = (
    Source(
        key="bipm_si_2019",
        text=(
            "Bureau International des Poids et Mesures (2019). The International System of "
            "Units (SI), 9th edition. Sevres. Prefixes; units in use with the SI (litre, "
            "minute, hour, day, degree Celsius)."
        ),
    ),
    Source(
        key="nist_hb44_appendix_c",
        text=(
            "National Institute of Standards and Technology (2026). Handbook 44, "
            "Specifications, Tolerances, and Other Technical Requirements for Weighing and "
            "Measuring Devices. Appendix C, General Tables of Units of Measurement: inch of "
            "2.54 cm, avoirdupois pound of 0.45359237 kg, gallon of 231 cubic inches, measuring "
            "cup of 8 fluid ounces, tablespoon of 1/2 and teaspoon of 1/6 fluid ounce."
        ),
    ),
    Source(
        key="nist_sp811",
        text=(
            "Thompson, A. and Taylor, B. N. (2008). Guide for the Use of the International "
            "System of Units (SI). NIST Special Publication 811, appendix B: conversion factors, "
            "degree Fahrenheit."
        ),
    ),
    Source(
        key="cfr_21_101_9",
        text=(
            "United States Code of Federal Regulations, title 21, section 101.9, paragraph "
            "(b)(5)(viii): on labels a teaspoon is 5 ml, a tablespoon 15 ml, a cup 240 ml and a "
            "fluid ounce 30 ml; paragraph (c): what a declaration holds, calories by 4, 4 and 9."
        ),
    ),
    Source(
        key="uk_weights_and_measures_1985",
        text=(
            "United Kingdom. Weights and Measures Act 1985, schedule 1: gallon of 4.54609 cubic "
            "decimetres; quart, pint and fluid ounce as 1/4, 1/8 and 1/160 of it."
        ),
    ),
    Source(
        key="sizes_gas_mark",
        text=(
            "Sizes, Inc. Gas mark. Article in an online dictionary of units, with a table of the "
            "marks 1/4 to 10 in degrees Fahrenheit and Celsius. No standard defines the marks."
        ),
    ),
)
