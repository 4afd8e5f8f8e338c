"""Whether two mentions of a quantity agree within the rounding their digits imply."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from entremetry.quantities.mentions import Mention
from entremetry.quantities.oven import is_conventional
from entremetry.quantities.restating import CLOSE, exact, wordings
from entremetry.quantities.unit import Kind, Measures, Unit
from entremetry.words import decimal

WIDEST = {Kind.MASS: 0.06, Kind.VOLUME: 0.06, Kind.LENGTH: 0.10}
"""Widest relative difference that rounding excuses: a cup of 237, 240 or 250 ml is one cup,
an ounce is 28 or 30 g; common practice, no source."""
SHORT, SHORT_WIDEST = 0.015, 0.30
"""Lengths below 15 mm are written in whole mm and quarter inches: 5 mm (¼ in)."""
PACKING = 0.10
"""A mass and a volume may differ so much by packing alone; common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Disagreement:
    """The right second value, what the second would be as the first, and whose cup is taken."""

    right: str
    other: str
    taking: str = ""


def disagreement(
    first: Mention,
    second: Mention,
    *,
    density: float | None = None,
    measures: Measures | str | None = None,
) -> Disagreement | None:
    """Return how a pair disagrees; None if it agrees or cannot be judged."""
    if first.kind is not second.kind and density is None:
        return None
    choices = list(_choices(first, second, measures))
    if not choices or any(_agree(first, a, second, b, density) for a, b in choices):
        return None
    a, b = choices[0]
    open_to_doubt = [u.name for m, u in ((first, a), (second, b)) if len(m.units) > 1]
    return Disagreement(
        right=_restated(first, a, second, b, density),
        other=_restated(second, b, first, a, density),
        taking=f" (taking a {open_to_doubt[0]})" if open_to_doubt else "",
    )


def _choices(
    first: Mention, second: Mention, measures: Measures | str | None
) -> Iterator[tuple[Unit, Unit]]:
    """Yield the units that both words may mean together: of one country, if of any."""
    for a in first.units:
        for b in second.units:
            countries = {
                unit.name.split()[0]
                for mention, unit in ((first, a), (second, b))
                if len(mention.units) > 1
            }
            if len(countries) < 2 and (not measures or countries <= {str(measures)}):
                yield a, b


def _values(mention: Mention, unit: Unit, kind: Kind, density: float | None) -> list[float]:
    """SI values of a mention as a quantity of `kind`, through the density if need be."""
    values = [unit.to_si(number) for number in mention.numbers]
    if mention.kind is kind or density is None:
        return values
    return [v * density if kind is Kind.MASS else v / density for v in values]


def _agree(first: Mention, a: Unit, second: Mention, b: Unit, density: float | None) -> bool:
    """Tell whether all numbers of two mentions agree."""
    if first.kind is Kind.TEMPERATURE and _conventional(first, a, second, b):
        return True
    ones = _values(first, a, second.kind, density)
    others = _values(second, b, second.kind, density)
    if first.kind is not second.kind:
        return all(_relative(x, y) <= PACKING for x, y in zip(ones, others, strict=True))
    rounding = [
        _half_step(w) * a.factor + _half_step(v) * b.factor
        for w, v in zip(first.written, second.written, strict=True)
    ]
    return all(
        abs(x - y) <= allowed * (1 + 1e-9) and _near(first.kind, x, y)
        for x, y, allowed in zip(ones, others, rounding, strict=True)
    )


def _near(kind: Kind, one: float, other: float) -> bool:
    """Tell whether two values differ by no more than rounding excuses at their size."""
    if kind is Kind.TEMPERATURE:
        return True
    short = kind is Kind.LENGTH and min(one, other) < SHORT
    return _relative(one, other) <= (SHORT_WIDEST if short else WIDEST[kind])


def _relative(one: float, other: float) -> float:
    """Relative difference, against the smaller."""
    low, high = sorted((abs(one), abs(other)))
    return (high - low) / low if low else float(high > 0)


def _conventional(first: Mention, a: Unit, second: Mention, b: Unit) -> bool:
    """Tell whether every °C and °F of two mentions is a conventional oven pair."""
    by_unit = {a.name: first.numbers, b.name: second.numbers}
    if set(by_unit) != {"°C", "°F"}:
        return False
    return all(is_conventional(c, f) for c, f in zip(by_unit["°C"], by_unit["°F"], strict=True))


def _half_step(written: str) -> float:
    """Half of the last digit's worth: 0.05 of '1.5', 0.5 of '60', 5 of '450', 1/8 of '1¼'."""
    digits = written.replace(",", ".").lstrip("-−")
    if "." in digits:
        return float(0.5 * 10.0 ** -len(digits.rsplit(".", 1)[1]))
    if not digits.isdecimal():
        return 0.125
    return 5.0 if len(digits) > 2 and digits.endswith("0") else 0.5


def _restated(
    source: Mention, unit: Unit, target: Mention, its_unit: Unit, density: float | None
) -> str:
    """Say the source in the unit of the target, as roughly as agreement allows."""
    values = _values(source, unit, target.kind, density)
    numbers = [its_unit.from_si(value) for value in values]
    choices = list(zip(*(wordings(number, its_unit) for number in numbers), strict=True))
    said = [exact(number) for number in numbers]
    for choice in sorted(choices, key=lambda each: _roughness(numbers, each)):
        written = tuple(text for _, text in choice)
        claim = replace(target, numbers=tuple(value for value, _ in choice), written=written)
        if _agree(source, unit, claim, its_unit, density):
            said = list(written)
            break
    return f"{decimal('–'.join(said))} {_word(target, its_unit, numbers)}"


def _roughness(numbers: list[float], choice: tuple[tuple[float, str], ...]) -> float:
    """Nought for a choice that is close enough; its distance for another."""
    apart = max(
        _relative(value, number) for (value, _), number in zip(choice, numbers, strict=True)
    )
    return 0.0 if apart <= CLOSE else apart


def _word(target: Mention, unit: Unit, numbers: list[float]) -> str:
    """Use the author's own word, in the number that fits."""
    if unit.kind is Kind.TEMPERATURE:
        return unit.name
    word, many = target.word, max(numbers) > 1
    if word.casefold().endswith("cup") and many:
        return f"{word}s"
    return word[:-1] if len(word) > 3 and word.endswith("s") and not many else word
