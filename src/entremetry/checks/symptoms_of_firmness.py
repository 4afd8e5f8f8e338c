"""What may go wrong with how it stands: common practice, no source."""

from __future__ import annotations

from entremetry.checks.symptom import Cause, Symptom, Toward
from entremetry.words import say_later

LOW, HIGH = Toward.LOW, Toward.HIGH

WEEPING = Symptom(
    id="weeping",
    name=say_later("It weeps: a puddle after thawing"),
    causes=(
        Cause(
            name=say_later("the gel that sets it loses water after freezing"),
            rule="weeping",
            toward=HIGH,
            weight=0.8,
            measure=say_later("Thaw 100 g on a sieve overnight at 4 °C and weigh what drips."),
            advice=say_later("Set it with gelatine or pectin NH instead."),
        ),
        Cause(
            name=say_later("too little sets it"),
            rule="sets",
            toward=LOW,
            weight=0.7,
            measure=say_later("Set 50 g in a cup at 4 °C for 12 h and turn it out: does it stand?"),
            advice=say_later("More gelatine, or less water in the component."),
        ),
        Cause(
            name=say_later("it is watery and froze to coarse ice"),
            rule="icy",
            toward=HIGH,
            weight=0.6,
            measure=say_later("Read the °Brix of the component; below 15 it freezes coarse."),
            advice=say_later("Boil it down, or add sugar, glucose syrup or pectin."),
        ),
        Cause(
            name=say_later("gelatine was boiled"),
            rule="gelatine-boiled",
            toward=HIGH,
            weight=0.4,
            measure=say_later("Write down the temperature of the bowl when the gelatine goes in."),
            advice=say_later("Stir it in off the heat, at 50 to 60 °C."),
        ),
        Cause(
            name=say_later("it froze slowly"),
            rule="freezing-time",
            toward=LOW,
            weight=0.4,
            measure=say_later("Put a probe in the heart of one piece: when is it at -5 °C?"),
            advice=say_later("Freeze fewer pieces at a time, on a metal shelf."),
        ),
        Cause(
            name=say_later("water from the air settled on it"),
            weight=0.35,
            measure=say_later(
                "Is the water on the outside only, an hour after it left the fridge?"
            ),
            advice=say_later("Thaw it in a closed box in the fridge."),
        ),
    ),
)
COLLAPSED = Symptom(
    id="collapsed",
    name=say_later("It is runny, flat or slumps"),
    causes=(
        Cause(
            name=say_later("too little sets it"),
            rule="sets",
            toward=LOW,
            weight=0.8,
            measure=say_later("Set 50 g in a cup at 4 °C for 12 h and turn it out."),
            advice=say_later("More gelatine or couverture."),
        ),
        Cause(
            name=say_later("raw fruit digested the gelatine"),
            rule="raw-fruit-and-gelatine",
            toward=LOW,
            weight=0.9,
            measure=say_later("Was a proteolytic fruit below 85 °C? Set a spoonful without it."),
            advice=say_later("Heat the fruit to 85 °C, or use agar."),
        ),
        Cause(
            name=say_later("the foam melted in the fold"),
            rule="fold-temperature",
            toward=HIGH,
            weight=0.7,
            measure=say_later("Measure the mix, and weigh a known cup of it."),
            advice=say_later("Cool the base further, fold in three goes."),
        ),
        Cause(
            name=say_later("the cream does not hold air"),
            rule="cream-fat",
            toward=LOW,
            weight=0.6,
            measure=say_later("Read the fat on the carton; below 30 % it does not whip."),
            advice=say_later("Cream of 35 %, cold, in a cold bowl."),
        ),
        Cause(
            name=say_later("it is too soft for its height"),
            rule="slump",
            toward=HIGH,
            weight=0.6,
            measure=say_later("Measure the height when it is turned out and two hours later."),
            advice=say_later("More gelatine, or a lower mould."),
        ),
        Cause(
            name=say_later("gelatine was boiled"),
            rule="gelatine-boiled",
            toward=HIGH,
            weight=0.4,
            measure=say_later("Write down the temperature of the bowl when it goes in."),
            advice=say_later("Off the heat, 50 to 60 °C."),
        ),
        Cause(
            name=say_later("acid weakens the gel"),
            rule="acid-and-gelatine",
            toward=HIGH,
            weight=0.4,
            measure=say_later("Test the base with a pH strip: below 3 it weakens gelatine."),
            advice=say_later("10 to 15 % more gelatine, juice last."),
        ),
        Cause(
            name=say_later("alcohol weakens the gel"),
            rule="alcohol",
            toward=HIGH,
            weight=0.4,
            measure=say_later("Set a spoonful without the spirit."),
            advice=say_later("Half the spirit."),
        ),
        Cause(
            name=say_later("it stood in the warm"),
            rule="hours-in-the-warm",
            toward=HIGH,
            weight=0.4,
            measure=say_later("Read the surface: gelatine gives way above 20 to 22 °C."),
            advice=say_later("Serve in waves, straight from the fridge."),
        ),
    ),
)
CRACKED = Symptom(
    id="cracked",
    name=say_later("It cracked"),
    causes=(
        Cause(
            name=say_later("a coat with much gelatine or little water tears as the piece thaws"),
            rule="glaze-gelatine",
            toward=HIGH,
            weight=0.6,
            measure=say_later("Bend a strip of the cold coat: does it break or give?"),
            advice=say_later("Less gelatine, some glucose syrup more."),
        ),
        Cause(
            name=say_later("the glaze holds too little water"),
            rule="glaze-water",
            toward=LOW,
            weight=0.5,
            measure=say_later("Weigh the glaze before and after it was cooked and reheated."),
            advice=say_later("Put the water back that has gone."),
        ),
        Cause(
            name=say_later("the base is so thin that it breaks"),
            rule="dough-thickness",
            toward=LOW,
            weight=0.5,
            measure=say_later("Measure a baked base with a calliper."),
            advice=say_later("2.5 to 3 mm, and cool it on the mat."),
        ),
        Cause(
            name=say_later("a watery part swelled as it froze"),
            rule="icy",
            toward=HIGH,
            weight=0.6,
            measure=say_later("Do the cracks run over an insert? Read its °Brix."),
            advice=say_later("More solids in it, and room above it."),
        ),
        Cause(
            name=say_later("a thin wall over the insert gave way"),
            rule="mousse-wall",
            toward=LOW,
            weight=0.5,
            measure=say_later("Cut one through and measure the thinnest place."),
            advice=say_later("A smaller insert."),
        ),
    ),
)
FIRMNESS_SYMPTOMS: tuple[Symptom, ...] = (WEEPING, COLLAPSED, CRACKED)
