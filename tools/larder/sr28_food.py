"""Step 2 of the build, first half: a row of SR28 becomes an ingredient that adds up to one."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from household import household
from marks import densities, packs, tags
from nutrients import printed, ruled
from tables import Row, listed

from entremetry.larder import NAMES, SUGARS, Constituents, Ingredient, declared

KCAL = 4184.0
REPORTED_SUGARS = ("sucrose", "glucose", "fructose", "lactose", "maltose", "galactose")
SHELLED = ("nut and seed", "egg")
MILK_LACTOSE_PER_PROTEIN = 4.78 / 3.15  # usda_sr28, food 01211
FAT_KINDS = {
    "milk": {"milk_fat": 1.0},
    "cocoa": {"cocoa_butter": 1.0},
    "cocoa_milk": {"cocoa_butter": 0.82, "milk_fat": 0.18},  # from_memory
}
TOLERANCE = 0.005
CLOSED_BY_RULE = {"ash", "organic_acids", "other_fat", "other_carbohydrate"}


class Food:
    """One food on its way from grams in 100 g to fractions; keeps what had to be said."""

    def __init__(self, chosen: Row, row: Row, additions: list[Row]) -> None:
        self.chosen = chosen
        self.row = row
        self.notes: list[str] = []
        self.added = {
            a["field"]: float(a["value"]) / 100.0 for a in additions if a["field"] != "density"
        }
        for addition in additions:
            self.say(f"{addition['field']}: {addition['note']} ({addition['source']})")

    def say(self, note: str) -> None:
        """Keep a note, once."""
        if note not in self.notes:
            self.notes.append(note)

    def value(self, word: str) -> float | None:
        """Fraction that the table reports, or that was added by hand; None if blank."""
        if word in self.added:
            return self.added[word]
        cell = self.row[word]
        return float(cell) / 100.0 if cell else None

    def fraction(self, word: str) -> float:
        """Fraction, with blank as zero."""
        return self.value(word) or 0.0

    def sugars(self) -> dict[str, float]:
        """The sugars by name as far as they are known."""
        named = {word: self.fraction(word) for word in REPORTED_SUGARS}
        total = self.value("sugars")
        known = sum(named.values())
        rest = max(0.0, (known if total is None else total) - known)
        return {word: part for word, part in (named | self.unsplit(rest)).items() if part}

    def unsplit(self, rest: float) -> dict[str, float]:
        """Sugars the table does not split: by the rule of the selection, or left unsplit."""
        rule = self.chosen["sugars"]
        if rule == "condensed":
            lactose = min(rest, self.fraction("protein") * MILK_LACTOSE_PER_PROTEIN)
            self.say("lactose as much as goes with this protein in milk, the rest sucrose")
            return {"lactose": lactose, "sucrose": rest - lactose}
        if rule and rest:
            if rest > 0.001:
                self.say(f"sugars the table does not split are taken as {rule}")
            return {rule: self.fraction(rule) + rest}
        return {"unsplit_sugars": rest}

    def acid(self) -> tuple[float, bool] | None:
        """Acid by titration, and whether it is from memory."""
        cell = self.chosen["acid"]
        return (float(cell.rstrip("m")) / 100.0, cell.endswith("m")) if cell else None

    def carbohydrate(self) -> dict[str, float]:
        """Carbohydrate by difference, divided into its parts."""
        room = self.fraction("carbohydrate")
        fibre = min(self.fraction("fibre"), room)
        room -= fibre
        sugars = self.sugars()
        total = sum(sugars.values())
        if total > room:
            self.say(
                f"sugars of {100 * total:.2f} g leave no room in the carbohydrate by difference "
                f"and are counted as {100 * room:.2f} g"
            )
            sugars = {word: part * room / total for word, part in sugars.items()}
            total = room
        room -= total
        starch = min(self.fraction("starch"), room)
        written = self.acid()
        acids = min(written[0] if written else 0.0, room - starch)
        if written and acids < written[0] - 0.0005 and self.chosen["close"] != "organic_acids":
            self.say(f"of the acid, {100 * acids:.2f} g find room in the carbohydrate")
        rest = room - starch - acids
        parts = sugars | {"fibre": fibre, "starch": starch, "organic_acids": acids}
        place = {"": "other_carbohydrate", "acid": "organic_acids"}.get(
            self.chosen["rest"], self.chosen["rest"]
        )
        return parts | {place: parts.get(place, 0.0) + rest}

    def fat(self) -> dict[str, float]:
        """Fat by kind."""
        kinds = FAT_KINDS.get(self.chosen["fat"], {"other_fat": 1.0})
        if self.chosen["fat"] == "mixed":
            self.say("fat of several kinds, not divided")
        return {kind: share * self.fraction("fat") for kind, share in kinds.items()}

    def composition(self) -> Constituents:
        """All parts, closed to one."""
        plain = {word: self.fraction(word) for word in ("water", "protein", "alcohol", "ash")}
        parts = dict.fromkeys(NAMES, 0.0) | plain | self.fat() | self.carbohydrate()
        return Constituents(**self.close(parts))

    def close(self, parts: dict[str, float]) -> dict[str, float]:
        """Give or take what is missing to one, and say so if it is more than rounding."""
        whole = sum(parts.values())
        gap = 1.0 - whole
        rule = self.chosen["close"] or "other_carbohydrate"
        if abs(gap) > TOLERANCE and not self.chosen["close"]:
            raise SystemExit(f"{self.chosen['id']}: parts add up to {100 * whole:.2f} g")
        if abs(gap) > 0.0015:
            self.say(f"the table adds up to {100 * whole:.2f} g; the rest is put to {rule}")
        can_give = gap >= 0.0 or parts[rule] > -gap
        closed = parts | {rule: parts[rule] + gap} if can_give else parts
        total = sum(closed.values())
        return {word: part / total for word, part in closed.items()}

    def not_reported(self) -> frozenset[str]:
        """What is blank in the table and was not added; water is always there."""
        blank = {
            word
            for word in ("fibre", "sugars", "ash", "energy_kcal", "sodium_mg")
            if self.value(word) is None and not (word == "sugars" and self.sugars())
        }
        if "unsplit_sugars" in self.sugars():
            blank |= {word for word in REPORTED_SUGARS if self.value(word) is None}
        return frozenset(word.removesuffix("_kcal").removesuffix("_mg") for word in blank)


def sr28_ingredient(
    chosen: Row, row: Row, weights: list[Row], extra: list[Row], additions: list[Row]
) -> Ingredient:
    """Make the ingredient of one selected food."""
    food = Food(chosen, row, additions)
    composition = food.composition()
    measures = household(chosen, weights, extra)
    eu, us = declared(listed(chosen["allergens"]))
    density, density_source = written_density(additions) or densities(
        measures, composition, listed(chosen["tags"])
    )
    acid = food.acid()
    refuse = float(row["refuse_percent"] or 0) / 100.0
    plain = Ingredient(
        id=chosen["id"],
        name=chosen["name"],
        group=chosen["group"],
        composition=composition,
        density=density,
        density_source=density_source,
        source="usda_sr28",
        aliases=listed(chosen["aliases"]),
        household=measures,
        packs=packs(chosen["packs"]),
        allergens_eu=eu,
        allergens_us=us,
        tags=tags(listed(chosen["tags"]), eu, composition),
        not_reported=food.not_reported(),
        sodium=float(row["sodium_mg"] or 0) / 1e5,
        energy=float(row["energy_kcal"]) * 10.0 * KCAL if row["energy_kcal"] else None,
        refuse=0.0 if chosen["group"] in SHELLED else refuse,
        acidity=acid[0] if acid else None,
        ph=float(chosen["ph"].rstrip("m")) if chosen["ph"] else None,
        nutrients=printed(row),
    )
    nutrients = ruled(plain, say=food.say)
    notes = (f"SR28 {row['ndb']}: {row['name']}", *said_of_acid(chosen), *food.notes)
    return replace(plain, nutrients=nutrients, notes=notes)


def written_density(additions: list[Row]) -> tuple[float, str] | None:
    """Density that was added by hand, with its source."""
    for addition in additions:
        if addition["field"] == "density":
            return float(addition["value"]), addition["source"]
    return None


def said_of_acid(chosen: Mapping[str, str]) -> tuple[str, ...]:
    """Where acid and pH come from."""
    said = []
    for word, label in (("acid", "acid"), ("ph", "pH")):
        if chosen[word]:
            source = "from_memory" if chosen[word].endswith("m") else "belitz_2009"
            said.append(f"{label}: {source}")
    return tuple(said)


assert set(REPORTED_SUGARS) < set(SUGARS)
