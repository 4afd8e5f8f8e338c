"""Messages and numbers in the language that is spoken."""

from __future__ import annotations

import threading
from contextvars import copy_context

import pytest
from babel.numbers import format_decimal

from entremetry.words import (
    current,
    decimal,
    is_said_as,
    languages,
    say,
    say_as,
    say_count,
    speaking,
)


def test_english_is_spoken_without_a_catalogue() -> None:
    assert current().code == "en"
    assert say("cool {what}", what="it") == "cool it"
    assert say_as("verb", "glaze") == "glaze"
    assert say_count("{number} piece", "{number} pieces", 2) == "2 pieces"
    assert say_count("{number} piece", "{number} pieces", 1) == "1 piece"


def test_an_unknown_message_stays_english() -> None:
    with speaking("fr"):
        assert say("nobody has {thing} here", thing="this") == "nobody has this here"


def test_what_a_language_has_no_words_for_is_known() -> None:
    assert is_said_as("ingredient", "any name at all")
    with speaking("fr"):
        assert is_said_as("ingredient", "Croissant")
        assert not is_said_as("ingredient", "any name at all")
        assert not is_said_as("no such context", "Croissant")


def test_a_language_is_spoken_only_inside_its_block() -> None:
    with speaking("fr") as french:
        assert current() is french
        with speaking("en"):
            assert current().code == "en"
        assert current() is french
    assert current().code == "en"


def test_another_thread_speaks_its_own_language() -> None:
    heard = []
    with speaking("fr"):
        plain = threading.Thread(target=lambda: heard.append(current().code))
        plain.start()
        plain.join()
        heard.append(copy_context().run(lambda: current().code))
    assert heard == ["en", "fr"]


def test_a_language_that_is_not_there_is_refused_by_name() -> None:
    with pytest.raises(LookupError, match="'tlh'; there are: en, fr"), speaking("tlh"):
        pass


def test_braces_of_an_author_are_no_fields() -> None:
    assert say("add {what}", what="{salt}") == "add {salt}"


@pytest.mark.parametrize("value", [0.5, 3.14, 1234.5, 1234567.25, -2.5, 10.0])
@pytest.mark.parametrize("code", [code for code in languages() if code != "en"])
def test_numbers_have_the_signs_of_the_unicode_locale_data(code: str, value: float) -> None:
    with speaking(code):
        assert decimal(f"{value:,.2f}") == format_decimal(value, "#,##0.00;-#,##0.00", locale=code)
