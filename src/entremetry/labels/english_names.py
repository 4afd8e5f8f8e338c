"""What a list of ingredients calls things, European and American, and how English words match.

The European names are messages: the catalogues have them in other languages, in context 'list'.
An ingredient that is not here keeps the name it has in the larder, without percentages and remarks.
A cook's own `label_name` goes before both. Names are suggestions: what the packet says is right.
"""

from __future__ import annotations

from collections.abc import Iterator

from entremetry.labels.list_words import ListWords
from entremetry.larder.allergens import EU_CODES, US_CODES
from entremetry.larder.spelling import singular

_SUGAR = ("sugar", "sugar")
_GELATINE = ("gelatine", "gelatin")
_CREAM = ("cream", "cream")
_FLOUR = ("wheat flour", "wheat flour")

NAMES: dict[str, tuple[str, str]] = {
    "granulated-sugar": _SUGAR,
    "caster-sugar": _SUGAR,
    "nib-sugar": _SUGAR,
    "demerara-sugar": ("cane sugar", "cane sugar"),
    "brown-sugar": ("brown sugar", "brown sugar"),
    "muscovado-dark": ("cane sugar", "cane sugar"),
    "icing-sugar": ("icing sugar", "powdered sugar"),
    "glucose-syrup-30de": ("glucose syrup", "glucose syrup"),
    "glucose-syrup-42de": ("glucose syrup", "glucose syrup"),
    "glucose-syrup-60de": ("glucose syrup", "glucose syrup"),
    "glucose-powder-33de": ("dried glucose syrup", "corn syrup solids"),
    "corn-syrup-light": ("glucose syrup", "corn syrup"),
    "corn-syrup-dark": ("glucose syrup", "corn syrup"),
    "high-fructose-corn-syrup": ("glucose-fructose syrup", "high fructose corn syrup"),
    "maltodextrin-18de": ("maltodextrin", "maltodextrin"),
    "dextrose-monohydrate": ("dextrose", "dextrose"),
    "dextrose-anhydrous": ("dextrose", "dextrose"),
    "trehalose": ("trehalose", "trehalose"),
    "lactose-monohydrate": ("lactose", "lactose"),
    "invert-sugar": ("invert sugar syrup", "invert sugar"),
    "simple-syrup-50": ("sugar syrup", "sugar syrup"),
    "syrup-30-baume": ("sugar syrup", "sugar syrup"),
    "isomalt": ("sweetener: isomalt", "isomalt"),
    "sorbitol-powder": ("sweetener: sorbitols", "sorbitol"),
    "sorbitol-syrup-70": ("sweetener: sorbitols", "sorbitol"),
    "maltitol": ("sweetener: maltitols", "maltitol"),
    "erythritol": ("sweetener: erythritol", "erythritol"),
    "xylitol": ("sweetener: xylitol", "xylitol"),
    "glycerol": ("humectant: glycerol", "glycerin"),
    "fondant-white": ("fondant", "fondant"),
    "soya-lecithin": ("emulsifier: lecithins (soya)", "soy lecithin"),
    "gelatine-powder": _GELATINE,
    "gelatine-powder-140": _GELATINE,
    "gelatine-powder-180": _GELATINE,
    "gelatine-powder-200": _GELATINE,
    "gelatine-powder-220": _GELATINE,
    "gelatine-powder-250": _GELATINE,
    "gelatine-sheet-bronze": _GELATINE,
    "gelatine-sheet-silver": _GELATINE,
    "gelatine-sheet-gold": _GELATINE,
    "gelatine-sheet-platinum": _GELATINE,
    "gelatine-sheet-beef": ("beef gelatine", "beef gelatin"),
    "fish-gelatine-200": ("fish gelatine", "fish gelatin"),
    "gelatine-mass-200": ("soaked gelatine", "soaked gelatin"),
    "pectin-hm": ("gelling agent: pectins", "pectin"),
    "pectin-lm": ("gelling agent: pectins", "pectin"),
    "pectin-nh": ("gelling agent: pectins", "pectin"),
    "pectin-liquid": ("gelling agent: pectins", "pectin"),
    "agar-dried": ("gelling agent: agar", "agar"),
    "agar-powder": ("gelling agent: agar", "agar"),
    "carrageenan-kappa": ("gelling agent: carrageenan", "carrageenan"),
    "carrageenan-iota": ("gelling agent: carrageenan", "carrageenan"),
    "xanthan-gum": ("thickener: xanthan gum", "xanthan gum"),
    "locust-bean-gum": ("thickener: locust bean gum", "locust bean gum"),
    "guar-gum": ("thickener: guar gum", "guar gum"),
    "gellan-low-acyl": ("gelling agent: gellan gum", "gellan gum"),
    "sodium-alginate": ("thickener: sodium alginate", "sodium alginate"),
    "konjac-powder": ("thickener: konjac", "konjac flour"),
    "calcium-lactate": ("acidity regulator: calcium lactate", "calcium lactate"),
    "citric-acid": ("acid: citric acid", "citric acid"),
    "citric-acid-solution-50": ("citric acid solution", "citric acid solution"),
    "tartaric-acid": ("acid: tartaric acid", "tartaric acid"),
    "malic-acid": ("acid: malic acid", "malic acid"),
    "ascorbic-acid": ("antioxidant: ascorbic acid", "ascorbic acid"),
    "sodium-citrate": ("acidity regulator: sodium citrates", "sodium citrate"),
    "cream-of-tartar": ("acidity regulator: potassium tartrates", "cream of tartar"),
    "sea-salt-flakes": ("salt", "salt"),
    "baking-powder": ("raising agent: baking powder", "baking powder"),
    "baking-soda": ("raising agent: sodium carbonates", "baking soda"),
    "yeast-fresh": ("yeast", "yeast"),
    "yeast-dried": ("yeast", "yeast"),
    "plain-flour": _FLOUR,
    "plain-flour-enriched": ("wheat flour", "enriched wheat flour"),
    "bread-flour": _FLOUR,
    "cake-flour": _FLOUR,
    "self-raising-flour": ("self-raising wheat flour", "self-rising wheat flour"),
    "wholemeal-flour": ("wholemeal wheat flour", "whole wheat flour"),
    "semolina": ("durum wheat semolina", "durum wheat semolina"),
    "spelt": ("spelt (wheat)", "spelt wheat"),
    "corn-starch": ("maize starch", "corn starch"),
    "cold-swelling-starch": ("modified starch", "modified food starch"),
    "maize-flour": ("maize flour", "corn flour"),
    "polenta": ("maize meal", "corn meal"),
    "whole-milk": ("whole milk", "milk"),
    "skimmed-milk": ("skimmed milk", "skim milk"),
    "skimmed-milk-powder": ("skimmed milk powder", "nonfat dry milk"),
    "skimmed-milk-powder-instant": ("skimmed milk powder", "nonfat dry milk"),
    "whole-milk-powder": ("whole milk powder", "dry whole milk"),
    "cream-19": _CREAM,
    "cream-30": _CREAM,
    "cream-33": _CREAM,
    "cream-35": _CREAM,
    "cream-36": _CREAM,
    "cream-40": _CREAM,
    "cream-48": _CREAM,
    "whipping-cream-light-31": _CREAM,
    "cream-35-lactose-free": ("lactose-free cream", "lactose-free cream"),
    "butter-unsalted": ("butter", "butter"),
    "butter-84-dry": ("butter", "butter"),
    "butter-salted": ("salted butter", "butter (cream, salt)"),
    "butter-oil": ("butter oil", "butter oil"),
    "brown-butter": ("butter", "butter"),
    "egg-whole": ("egg", "egg"),
    "egg-whole-pasteurised": ("pasteurised egg", "pasteurized egg"),
    "egg-white-pasteurised": ("pasteurised egg white", "pasteurized egg white"),
    "egg-yolk-pasteurised": ("pasteurised egg yolk", "pasteurized egg yolk"),
    "egg-yolk-sugared-pasteurised": (
        "pasteurised egg yolk with sugar",
        "pasteurized sugared egg yolk",
    ),
    "egg-white-dried": ("dried egg white", "dried egg white"),
    "cocoa-mass": ("cocoa mass", "unsweetened chocolate"),
    "cocoa-powder-natural": ("cocoa powder", "cocoa"),
    "cocoa-powder-alkalised": ("cocoa powder", "cocoa (processed with alkali)"),
    "cocoa-powder-22": ("cocoa powder", "cocoa"),
    "cocoa-powder-high-fat": ("cocoa powder", "cocoa"),
    "cocoa-powder-high-fat-alkalised": ("cocoa powder", "cocoa (processed with alkali)"),
    "almond-ground": ("ground almonds", "ground almonds"),
    "almond-whole": ("almonds", "almonds"),
    "almond-blanched": ("almonds", "almonds"),
    "hazelnut-blanched": ("hazelnuts", "hazelnuts"),
    "almond-sugar-tpt": ("ground almonds with sugar", "ground almonds with sugar"),
    "hazelnut-sugar-tpt": ("ground hazelnuts with sugar", "ground hazelnuts with sugar"),
    "soya-milk": ("soya drink", "soy beverage"),
    "soya-milk-unsweetened": ("soya drink", "soy beverage"),
    "soya-protein-isolate": ("soya protein", "soy protein isolate"),
    "coconut-desiccated": ("desiccated coconut", "desiccated coconut"),
    "coconut-desiccated-toasted": ("toasted desiccated coconut", "toasted desiccated coconut"),
    "passion-fruit": ("passion fruit", "passion fruit"),
    "passion-fruit-juice": ("passion fruit juice", "passion fruit juice"),
    "passion-fruit-juice-purple": ("passion fruit juice", "passion fruit juice"),
    "vanilla-bean": ("vanilla pod", "vanilla bean"),
    "vanilla-extract": ("vanilla extract", "vanilla extract"),
    "vanilla-extract-imitation": ("flavouring", "artificial flavor"),
    "vanilla-extract-no-alcohol": ("flavouring", "artificial flavor"),
    "coffee-ground": ("coffee", "coffee"),
    "coffee-instant": ("instant coffee", "instant coffee"),
    "feuilletine": ("wafer flakes", "wafer flakes"),
    "neutral-glaze": ("neutral glaze", "neutral glaze"),
    "food-colour-powder-water": ("colour", "color"),
    "food-colour-powder-fat": ("colour", "color"),
    "food-colour-liquid": ("colour", "color"),
    "alcohol-96": ("alcohol", "alcohol"),
}
"""Ingredient -> its European name (with the class of an additive) and its American name."""

CONTAINED: dict[str, tuple[str, str]] = {
    "condensed-milk-sweetened": ("milk, sugar", "milk, sugar"),
    "icing-sugar": ("sugar, maize starch", "sugar, corn starch"),
}
"""What a well-defined compound is made of, that the larder takes from a table as one food."""

BY_START: tuple[tuple[str, tuple[str, str]], ...] = (
    ("couverture-dark", ("dark chocolate", "dark chocolate")),
    ("chocolate-dark", ("dark chocolate", "dark chocolate")),
    ("couverture-milk", ("milk chocolate", "milk chocolate")),
    ("chocolate-milk", ("milk chocolate", "milk chocolate")),
    ("couverture-white", ("white chocolate", "white chocolate")),
    ("chocolate-white", ("white chocolate", "white chocolate")),
    ("couverture-blond", ("white chocolate", "white chocolate")),
    ("praline-hazelnut", ("hazelnut praline paste", "hazelnut praline paste")),
    ("praline-almond-hazelnut", ("almond and hazelnut praline paste",) * 2),
)
"""Beginning of an id -> names, for families of ingredients; the first that fits is taken."""

REMARKS = (
    "unsweetened",
    "pasteurised",
    "pure",
    "bought",
    "peeled",
    "raw",
    "cold",
    "tinned",
    "unsalted",
    "with skin",
    "low-fat",
    "freshly",
    "of unstated strength",
)
"""Words of the larder that a list of ingredients leaves out."""

# fmt: off
NOT_BY_NAME = frozenset(
    (
        "and", "the", "with", "a", "an", "of", "in", "on", "for", "no", "glass", "dome",
        "ring", "log", "bar", "tart", "cake", "dessert", "piece", "cup", "jar", "freezing",
        "layer", "mirror", "cream", "mousse", "winter", "summer", "spring", "autumn",
        "light", "soft", "dark", "white",
    )
)
# fmt: on
"""Words of a dessert's name that name no ingredient whose quantity would be due."""

ALLERGEN_WORDS: dict[str, tuple[str, tuple[str, ...]]] = {
    "milk": ("milk", ("milk", "whey", "casein")),
    "eggs": ("egg", ("egg", "eggs")),
    "egg": ("egg", ("egg", "eggs")),
    "fish": ("fish", ("fish",)),
    "crustaceans": ("crustaceans", ("crustaceans",)),
    "crustacean-shellfish": ("crustacean shellfish", ("shellfish",)),
    "molluscs": ("molluscs", ("molluscs",)),
    "gluten:wheat": ("wheat", ("wheat", "spelt")),
    "gluten:rye": ("rye", ("rye",)),
    "gluten:barley": ("barley", ("barley",)),
    "gluten:oats": ("oats", ("oat", "oats")),
    "wheat": ("wheat", ("wheat", "spelt")),
    "soybeans": ("soya", ("soya", "soy", "soybean", "soybeans")),
    "peanuts": ("peanuts", ("peanut", "peanuts")),
    "sesame": ("sesame", ("sesame",)),
    "celery": ("celery", ("celery",)),
    "mustard": ("mustard", ("mustard",)),
    "lupin": ("lupin", ("lupin",)),
    "sulphites": ("sulphites", ("sulphites", "sulphur")),
}
"""Code of an allergen -> the word that names it, and the words by which a list has named it."""


AMERICAN_WORDS = {"soybeans": "soy"}
"""Words that differ from the European ones."""
GROUPS = {"tree-nuts": "tree nuts", "nuts": "nuts", "gluten": "cereals containing gluten"}
"""Beginning of a code -> the group that is named with the nut or the cereal."""
EMULSIFIER = {"eu": "emulsifier: lecithins (soya)", "us": "soy lecithin"}
"""What soya is in chocolate, where the larder knows no other reason for it."""


def allergen_word(code: str, *, american: bool = False) -> str:
    """The word that names an allergen: of a nut or a cereal its own name, not the group's."""
    if american and code in AMERICAN_WORDS:
        return AMERICAN_WORDS[code]
    if code in ALLERGEN_WORDS:
        return ALLERGEN_WORDS[code][0]
    return code.partition(":")[2].replace("-", " ")


def _naming(code: str) -> tuple[str, ...]:
    if code in ALLERGEN_WORDS:
        return ALLERGEN_WORDS[code][1]
    nut = allergen_word(code)
    return (nut, f"{nut}s")


def _singular(word: str) -> str:
    """The word without its plural ending: raspberries, mangoes, almonds."""
    if word.endswith("ies") and len(word) > 4:
        return f"{word[:-3]}y"
    if word.endswith("oes"):
        return word[:-2]
    return singular(word)


WORDS = ListWords(
    allergens={code: _naming(code) for code in EU_CODES | US_CODES},
    remarks=REMARKS,
    after_percent=("sugar", "alcohol", "fat", "in dry matter"),
    not_by_name=NOT_BY_NAME,
    singular=_singular,
    shown=_singular,
    names_begin_small=True,
)


def european_names() -> Iterator[str]:
    """Every name of the European data, for the catalogues."""
    for names in (*NAMES.values(), *CONTAINED.values(), *(names for _, names in BY_START)):
        yield names[0]
    yield EMULSIFIER["eu"]


def allergen_names() -> Iterator[str]:
    """Every word for an allergen or its group, and every part of a code, for the catalogues."""
    for code in EU_CODES | US_CODES:
        yield from code.split(":")
        yield allergen_word(code)
    yield from GROUPS.values()
