"""Parts of the recipe on paper in words: components, cut-outs, and how the numbers were found."""

from __future__ import annotations

from typing import Any

from entremetry.dessert.batch_sheet import BatchSheet, ComponentBatch, CutOuts, IngredientAmount
from entremetry.publish.typesetting import printed
from entremetry.publish.typography import grams, millilitres, per_cent
from entremetry.words import say, say_count, say_later

NO_VOLUME = frozenset({"soak", "garnish", "base", "crumble"})
WORTH_SAYING = 0.03
LEAST_LEFT_OVER = 0.001  # kg
GRAMS_LEAD = say_later(
    "Grams are the measure; cups, spoons and pieces are rounded to what a hand can measure, and "
    "± says by how much where that is 3 % or more."
)


def component_words(component: ComponentBatch) -> dict[str, Any]:
    """One component: what it weighs, what goes in, what is done."""
    amounts = [
        say("{mass} to make", mass=grams(component.mass.value)),
        say("{mass} for use", mass=grams(component.ready_mass)),
        say("{mass} a piece", mass=grams(component.per_piece.value)),
    ]
    if component.kind not in NO_VOLUME and component.volume.value > 0:
        amounts.append(millilitres(component.volume.value))
    return {
        "name": printed(component.name),
        "amount": " · ".join(amounts),
        "lines": [
            {
                "mass": grams(each.mass),
                "name": printed(
                    say("{name} (own figures)", name=each.name) if each.own else each.name
                ),
                "note": printed(each.note),
                "measure": measure(each),
            }
            for each in component.lines
        ],
        "steps": [printed(sentence) for sentence in component.method],
    }


def own_name(each: IngredientAmount) -> str:
    """Name of an ingredient, with a word where its figures are the author's."""
    return say("{name} (own figures)", name=each.name) if each.own else each.name


def left_over(mass: float) -> str:
    """What remains of what was bought, where a scale shows it; mass in kg."""
    return say("{mass} left over", mass=grams(mass)) if mass >= LEAST_LEFT_OVER else ""


def measure(each: IngredientAmount) -> str:
    """Household measure, with its error where that is worth saying and not said already."""
    error = each.household_error
    told = not each.household or error is None or "%" in each.household
    if told or abs(error or 0.0) < WORTH_SAYING:
        return printed(each.household)
    return f"{printed(each.household)} ±{per_cent(abs(error or 0.0))}"


def cavities(sheet: BatchSheet) -> str:
    """How many are filled, where it is more than one."""
    mould = sheet.mould
    if mould.cavities <= 1:
        return ""
    masses = (
        say("{number} glasses", number=mould.cavities)
        if mould.is_vessel
        else say("{number} cavities", number=mould.cavities)
    )
    if mould.fillings <= 1:
        return printed(say("{cavities}; the masses are for one.", cavities=masses))
    return printed(
        say(
            "{cavities}, in {number} fillings of the mould; the masses are for one.",
            cavities=masses,
            number=mould.fillings,
        )
    )


OFFCUTS = (say_later("re-rolled"), say_later("kept"))


def cut_out(cut: CutOuts) -> str:
    """How one base comes out of its sheets."""
    sheets = say_count("{number} sheet", "{number} sheets", cut.sheets)
    found = say(
        "{count} of {size}, {per_sheet} from a sheet of {sheet}: {sheets}.",
        count=cut.count,
        size=cut.size,
        per_sheet=cut.per_sheet,
        sheet=cut.sheet,
        sheets=", ".join(part for part in (sheets, cut.pattern) if part),
    )
    masses = say(
        "{rolled} to spread or roll, {offcuts} of offcuts",
        rolled=grams(cut.rolled_mass),
        offcuts=grams(cut.offcut_mass),
    )
    kept = f" ({say(cut.offcuts)})" if cut.offcuts else ""
    return printed(f"{found} {masses}{kept}.")


def numbers(sheet: BatchSheet) -> list[str]:
    """Assumptions, losses and whose figures were taken."""
    losses = [
        say("{component}: {changes}.", component=component.name, changes=changes(component))
        for component in sheet.components
        if component.changes
    ]
    own = [
        say(
            "{name} has the author’s own figures for {fields}.",
            name=each.name,
            fields=", ".join(sorted(each.overridden)),
        )
        if each.overridden
        else say("{name} has the author’s own figures.", name=each.name)
        for each in sheet.own_ingredients
    ]
    return [printed(words) for words in (*sheet.assumptions, say(GRAMS_LEAD), *losses, *own)]


def changes(component: ComponentBatch) -> str:
    """What a component lost and took up while it was made."""
    return "; ".join(
        f"{change.reason} {'+' if change.mass > 0 else ''}{grams(change.mass)}"
        for change in component.changes
    )
