"""How French words match in a list of ingredients: what names an allergen, what is left out.

The names themselves stand in the catalogue. The allergens are named as annex II of eu_1169_2011
names them in French.
"""

from __future__ import annotations

from entremetry.labels import english_names
from entremetry.labels.list_words import ListWords

_OF_PLANTS = r"(?! (?:d’|d'|de |du |des ))"
"""Not 'lait de coco' nor 'noix de cajou': a milk of plants, or another nut."""

ALLERGENS: dict[str, tuple[str, ...]] = {
    "milk": (rf"laits?{_OF_PLANTS}", "lait de (?:vache|chèvre|brebis)"),
    "eggs": ("œufs?", "oeufs?"),
    "fish": ("poissons?",),
    "crustaceans": ("crustacés?",),
    "molluscs": ("mollusques?",),
    "gluten:wheat": ("blés?", "épeautre"),
    "gluten:rye": ("seigle",),
    "gluten:barley": ("orge",),
    "gluten:oats": ("avoine",),
    "soybeans": ("soja",),
    "peanuts": ("arachides?",),
    "sesame": ("sésame",),
    "celery": ("céleri",),
    "mustard": ("moutarde",),
    "lupin": ("lupin",),
    "sulphites": ("sulfites?", "anhydride sulfureux"),
    "nuts:almond": ("amandes?",),
    "nuts:hazelnut": ("(?<!beurre )noisettes?",),
    "nuts:walnut": (rf"noix{_OF_PLANTS}",),
    "nuts:cashew": ("noix de cajou",),
    "nuts:pecan": ("noix de pécan",),
    "nuts:brazil": ("noix du Brésil",),
    "nuts:pistachio": ("pistaches?",),
    "nuts:macadamia": ("noix de macadamia",),
}
"""Code of an allergen -> patterns of the words by which a French list has named it."""

REMARKS = (
    "non sucrée?s?",
    "sans sucre",
    "pasteurisée?s?",
    "pure?s?",
    "du commerce",
    "pelée?s?",
    "crue?s?",
    "à froid",
    "en boîte",
    "non salée?s?",
    "avec la peau",
    "allégée?s?",
)
"""What a list leaves out of a larder's name."""

# fmt: off
NOT_BY_NAME = frozenset(
    (
        "et", "le", "la", "les", "un", "une", "de", "du", "des", "au", "aux", "en", "dans", "sur",
        "pour", "avec", "sans", "verre", "dome", "cercle", "anneau", "couronne", "buche", "barre",
        "tarte", "gateau", "entremet", "dessert", "piece", "coupe", "pot", "couche", "miroir",
        "glacage", "glace", "creme", "mousse", "hiver", "ete", "printemp", "automne", "leger",
        "legere", "doux", "douce", "noir", "noire", "blanc", "blanche", "fondant", "verrine",
    )
)
# fmt: on
"""Words of a dessert's name, plain and without plural, that name no ingredient."""

_KEPT = frozenset(
    ("ananas", "anis", "cassis", "frais", "jus", "mais", "noix", "pois", "riz", "doux", "coulis")
)


def _singular(word: str) -> str:
    """The word without its plural ending: framboises, gâteaux."""
    if word in _KEPT or len(word) < 4:
        return word
    return word[:-1] if word.endswith(("s", "eaux")) else word


WORDS = ListWords(
    allergens=ALLERGENS,
    remarks=REMARKS,
    after_percent=("de sucre", "d’alcool", "de matière grasse", "sur extrait sec"),
    not_by_name=NOT_BY_NAME | english_names.NOT_BY_NAME,
    singular=_singular,
    names_begin_small=True,
)
