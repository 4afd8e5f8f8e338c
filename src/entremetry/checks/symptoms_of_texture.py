"""What may go wrong with how it feels: common practice, no source."""

from __future__ import annotations

from entremetry.checks.symptom import Cause, Symptom, Toward
from entremetry.words import say_later

LOW, HIGH = Toward.LOW, Toward.HIGH

GRAINY = Symptom(
    id="grainy",
    name=say_later("It is grainy, lumpy or sandy"),
    causes=(
        Cause(
            name=say_later("gelatine set in threads on the cold cream"),
            rule="fold-temperature",
            toward=LOW,
            weight=0.8,
            measure=say_later("Put a thermometer into the mix right after the fold."),
            advice=say_later(
                "Use the base some degrees warmer; stir a third of the cream in first."
            ),
        ),
        Cause(
            name=say_later("cocoa butter set in grains"),
            rule="chocolate-base-temperature",
            toward=LOW,
            weight=0.8,
            measure=say_later("Measure the chocolate base before the cream goes in."),
            advice=say_later("Use it at 40 to 45 °C, with cream that is only softly whipped."),
        ),
        Cause(
            name=say_later("gelatine did not dissolve"),
            rule="gelatine-dissolved",
            toward=LOW,
            weight=0.6,
            measure=say_later("Rub a drop of the warm base between two fingers: is it smooth?"),
            advice=say_later("Melt it into a part of the liquid at 50 to 60 °C."),
        ),
        Cause(
            name=say_later("gelatine was not soaked through"),
            rule="soaking-water",
            toward=LOW,
            weight=0.4,
            measure=say_later(
                "Weigh gelatine before and after soaking: it should be five times as heavy."
            ),
            advice=say_later("Soak it 10 min in 5 to 6 times its mass of cold water."),
        ),
        Cause(
            name=say_later("the egg scrambled"),
            rule="custard",
            toward=HIGH,
            weight=0.6,
            measure=say_later("Calibrate the probe in boiling water, then read it while you stir."),
            advice=say_later("Stop at 84 °C, strain at once."),
        ),
        Cause(
            name=say_later("the cream was whipped too far"),
            weight=0.5,
            measure=say_later(
                "Weigh a known cup of the cream: past its largest volume it gains weight."
            ),
            advice=say_later("Stop at soft ribbons."),
        ),
        Cause(
            name=say_later("sugar crystallised"),
            rule="sucrose-crystals",
            toward=HIGH,
            weight=0.5,
            measure=say_later("Look at a smear with a lens: sharp little bricks are sugar."),
            advice=say_later("Swap a third of the sugar for glucose syrup."),
        ),
        Cause(
            name=say_later("milk sugar crystallised"),
            rule="lactose-crystals",
            toward=HIGH,
            weight=0.4,
            measure=say_later(
                "Sandy only after days in the cold, and it does not melt on the tongue."
            ),
            advice=say_later("Less milk powder or condensed milk."),
        ),
        Cause(
            name=say_later("the emulsion split"),
            rule="fat-and-water",
            toward=HIGH,
            weight=0.5,
            measure=say_later("Does it shine with oil, and come back with a spoon of warm milk?"),
            advice=say_later("Warm milk by the spoonful, blended under the surface."),
        ),
        Cause(
            name=say_later("the starch was not cooked"),
            rule="starch-cooked",
            toward=LOW,
            weight=0.4,
            measure=say_later("Measure it when it bubbles in the middle."),
            advice=say_later("Cook it until it bubbles, whisking."),
        ),
    ),
)
RUBBERY = Symptom(
    id="rubbery",
    name=say_later("It is rubbery"),
    causes=(
        Cause(
            name=say_later("too much gelatine, or a stronger grade than meant"),
            rule="rubbery",
            toward=HIGH,
            weight=0.9,
            measure=say_later("Read the Bloom on the packet and weigh ten sheets."),
            advice=say_later("Convert it, and take a quarter less."),
        ),
        Cause(
            name=say_later("too much gelatine in the glaze"),
            rule="glaze-gelatine",
            toward=HIGH,
            weight=0.7,
            measure=say_later("Peel a piece of the coat off: does it stretch before it tears?"),
            advice=say_later("1.3 to 1.7 % of 200 Bloom."),
        ),
        Cause(
            name=say_later("it lost its air"),
            rule="mousse-density",
            toward=HIGH,
            weight=0.5,
            measure=say_later("Weigh a known cup of the mousse as it goes into the mould."),
            advice=say_later("Fold in three goes, whip the cream a little further."),
        ),
        Cause(
            name=say_later("it stood for a day or more, and gelatine goes on stiffening"),
            rule="chilled-life",
            toward=HIGH,
            weight=0.5,
            measure=say_later("Cut a piece after 6 h and one after 24 h at 4 °C."),
            advice=say_later("Take a sixth to a third less when it is made a day ahead."),
        ),
    ),
)
TOO_HARD = Symptom(
    id="too-hard",
    name=say_later("It is too hard when it is served"),
    causes=(
        Cause(
            name=say_later("it had too little time to thaw"),
            rule="thawing-time",
            toward=LOW,
            weight=0.9,
            measure=say_later("Push a thin probe into the heart an hour before service."),
            advice=say_later("Out earlier, and on a shelf that conducts."),
        ),
        Cause(
            name=say_later("thawing ends while there is ice left"),
            rule="ice-at-service",
            toward=HIGH,
            weight=0.7,
            measure=say_later("Read the heart: below -2 °C there is ice."),
            advice=say_later("Thaw it to -1 or 0 °C."),
        ),
        Cause(
            name=say_later("too much gelatine"),
            rule="rubbery",
            toward=HIGH,
            weight=0.5,
            measure=say_later("Read the Bloom on the packet."),
            advice=say_later("Convert it, take less."),
        ),
        Cause(
            name=say_later("the dough is too thick"),
            rule="dough-thickness",
            toward=HIGH,
            weight=0.4,
            measure=say_later("Measure a baked base with a calliper."),
            advice=say_later("2.5 to 3 mm."),
        ),
        Cause(
            name=say_later("it stands on board or in a box, which keep the cold"),
            weight=0.5,
            measure=say_later("What stands under it in the fridge? Card and foam double the time."),
            advice=say_later("Glass or metal under it."),
        ),
    ),
)
ICY = Symptom(
    id="icy",
    name=say_later("It is icy or tastes of the freezer"),
    causes=(
        Cause(
            name=say_later("it is watery"),
            rule="icy",
            toward=HIGH,
            weight=0.8,
            measure=say_later("Read its °Brix; below 15 it freezes coarse."),
            advice=say_later("More solids."),
        ),
        Cause(
            name=say_later("it froze slowly"),
            rule="freezing-time",
            toward=LOW,
            weight=0.5,
            measure=say_later("A probe in the heart: hours from 0 to -5 °C."),
            advice=say_later("Colder, moving air, fewer at a time."),
        ),
        Cause(
            name=say_later("the freezer is warm or swings"),
            rule="freezer-temperature",
            toward=HIGH,
            weight=0.5,
            measure=say_later("A thermometer in a glass of spirit, read morning and evening."),
            advice=say_later("Colder, door shut, frost out."),
        ),
        Cause(
            name=say_later("it was not wrapped, or kept for months"),
            weight=0.6,
            measure=say_later("Weigh a piece when it goes in and when it comes out."),
            advice=say_later("Wrap it once it is hard; eat it within 4 to 8 weeks."),
        ),
    ),
)
TEXTURE_SYMPTOMS: tuple[Symptom, ...] = (GRAINY, RUBBERY, TOO_HARD, ICY)
