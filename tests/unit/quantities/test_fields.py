"""Quantities as fields of a model."""

from __future__ import annotations

import pytest
from pydantic import BaseModel, ValidationError

from entremetry.quantities.fields import (
    AmountText,
    Density,
    Duration,
    Fraction,
    Length,
    LengthFromZero,
    Mass,
    MassFromZero,
    MassPerArea,
    Temperature,
    Volume,
)


class Model(BaseModel):
    """One field of each sort."""

    mass: Mass = 0.0
    mass_from_zero: MassFromZero = 0.0
    volume: Volume = 0.0
    length: Length = 0.0
    length_from_zero: LengthFromZero = 0.0
    temperature: Temperature = 0.0
    duration: Duration = 0.0
    fraction: Fraction = 0.0
    density: Density = 0.0
    mass_per_area: MassPerArea = 0.0
    amount: AmountText = ""


@pytest.mark.parametrize(
    ("field", "text", "value"),
    [
        ("mass", "240 g", 0.24),
        ("mass_from_zero", "0 g", 0.0),
        ("volume", "75 ml", 75e-6),
        ("length", "40 mm", 0.04),
        ("length_from_zero", "0 mm", 0.0),
        ("temperature", "82 °C", 355.15),
        ("duration", "6 h", 21600.0),
        ("fraction", "90 %", 0.9),
        ("density", "1.05 g/ml", 1050.0),
        ("mass_per_area", "0.1 g/cm2", 1.0),
    ],
)
def test_a_field_holds_si(field: str, text: str, value: float) -> None:
    assert getattr(Model.model_validate({field: text}), field) == pytest.approx(value)


def test_an_amount_is_kept_as_text_until_the_measures_are_known() -> None:
    assert Model.model_validate({"amount": "1  cup"}).amount == "1 cup"


@pytest.mark.parametrize("field", sorted(set(Model.model_fields)))
def test_a_bare_number_is_refused(field: str) -> None:
    with pytest.raises(ValidationError, match="say the unit"):
        Model.model_validate({field: 240})


def test_zero_is_refused_where_it_is_senseless() -> None:
    with pytest.raises(ValidationError, match="out of bounds"):
        Model.model_validate({"mass": "0 g"})


def test_the_schema_says_text_with_examples_that_are_accepted() -> None:
    import re

    for name, schema in Model.model_json_schema()["properties"].items():
        assert schema["type"] == "string" and schema["description"]
        for example in schema["examples"]:
            Model.model_validate({name: example})
            assert re.search(schema["pattern"], example), (name, example)
