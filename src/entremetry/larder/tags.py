"""Short marks on an ingredient that the bench checks read."""

from __future__ import annotations

TAGS: dict[str, str] = {
    "acidic": "sour enough to weaken gelatine or curdle milk: pH below 4.6",
    "alcoholic": "holds ethanol",
    "animal": "of animal origin beside milk and egg: gelatine, honey, lard",
    "chocolate": "sets by the crystals of cocoa butter",
    "dairy": "made from milk",
    "emulsifier": "holds fat and water together",
    "fat": "mostly fat",
    "fruit": "fruit or stalk, whole or cut",
    "gelling": "sets a liquid into a gel",
    "leavening": "gives off gas in the oven",
    "liquid": "pours, so that spoons and cups measure it well",
    "paste": "ground to a paste",
    "powder": "fine and loose, so that a cup of it differs from hand to hand",
    "proteolytic": "raw, it digests gelatine; heated to 85 °C or tinned it does not",
    "puree": "fruit made smooth, heat-treated in the trade",
    "raw-egg": "raw egg, not pasteurised",
    "raw-flour": "raw flour, to be baked or cooked before it is eaten",
    "sets-with-calcium": "sets only with calcium",
    "sets-with-sugar-and-acid": "sets only in a sweet and sour liquid",
    "sweetener": "chosen to sweeten",
    "thickening": "thickens a liquid when heated in it",
    "vegan": "nothing of animal origin",
    "weigh-only": "too little or too uneven to be measured by spoon",
    "whippable": "holds air when whipped",
}
"""Tag -> what it says."""
