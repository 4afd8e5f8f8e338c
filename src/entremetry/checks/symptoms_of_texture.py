"""What may go wrong with how it feels: common practice, no source."""

from __future__ import annotations

from entremetry.checks.symptom import Cause, Symptom, Toward

LOW, HIGH = Toward.LOW, Toward.HIGH

GRAINY = Symptom(
    id="grainy",
    name="It is grainy, lumpy or sandy",
    causes=(
        Cause(
            name="gelatine set in threads on the cold cream",
            rule="fold-temperature",
            toward=LOW,
            weight=0.8,
            measure="Put a thermometer into the mix right after the fold.",
            advice="Use the base some degrees warmer; stir a third of the cream in first.",
        ),
        Cause(
            name="cocoa butter set in grains",
            rule="chocolate-base-temperature",
            toward=LOW,
            weight=0.8,
            measure="Measure the chocolate base before the cream goes in.",
            advice="Use it at 40 to 45 °C, with cream that is only softly whipped.",
        ),
        Cause(
            name="gelatine did not dissolve",
            rule="gelatine-dissolved",
            toward=LOW,
            weight=0.6,
            measure="Rub a drop of the warm base between two fingers: is it smooth?",
            advice="Melt it into a part of the liquid at 50 to 60 °C.",
        ),
        Cause(
            name="gelatine was not soaked through",
            rule="soaking-water",
            toward=LOW,
            weight=0.4,
            measure="Weigh gelatine before and after soaking: it should be five times as heavy.",
            advice="Soak it 10 min in 5 to 6 times its mass of cold water.",
        ),
        Cause(
            name="the egg scrambled",
            rule="custard",
            toward=HIGH,
            weight=0.6,
            measure="Calibrate the probe in boiling water, then read it while you stir.",
            advice="Stop at 84 °C, strain at once.",
        ),
        Cause(
            name="the cream was whipped too far",
            weight=0.5,
            measure="Weigh a known cup of the cream: past its largest volume it gains weight.",
            advice="Stop at soft ribbons.",
        ),
        Cause(
            name="sugar crystallised",
            rule="sucrose-crystals",
            toward=HIGH,
            weight=0.5,
            measure="Look at a smear with a lens: sharp little bricks are sugar.",
            advice="Swap a third of the sugar for glucose syrup.",
        ),
        Cause(
            name="milk sugar crystallised",
            rule="lactose-crystals",
            toward=HIGH,
            weight=0.4,
            measure="Sandy only after days in the cold, and it does not melt on the tongue.",
            advice="Less milk powder or condensed milk.",
        ),
        Cause(
            name="the emulsion split",
            rule="fat-and-water",
            toward=HIGH,
            weight=0.5,
            measure="Does it shine with oil, and come back with a spoon of warm milk?",
            advice="Warm milk by the spoonful, blended under the surface.",
        ),
        Cause(
            name="the starch was not cooked",
            rule="starch-cooked",
            toward=LOW,
            weight=0.4,
            measure="Measure it when it bubbles in the middle.",
            advice="Cook it until it bubbles, whisking.",
        ),
    ),
)
RUBBERY = Symptom(
    id="rubbery",
    name="It is rubbery",
    causes=(
        Cause(
            name="too much gelatine, or a stronger grade than meant",
            rule="rubbery",
            toward=HIGH,
            weight=0.9,
            measure="Read the Bloom on the packet and weigh ten sheets.",
            advice="Convert it, and take a quarter less.",
        ),
        Cause(
            name="too much gelatine in the glaze",
            rule="glaze-gelatine",
            toward=HIGH,
            weight=0.7,
            measure="Peel a piece of the coat off: does it stretch before it tears?",
            advice="1.3 to 1.7 % of 200 Bloom.",
        ),
        Cause(
            name="it lost its air",
            rule="mousse-density",
            toward=HIGH,
            weight=0.5,
            measure="Weigh a known cup of the mousse as it goes into the mould.",
            advice="Fold in three goes, whip the cream a little further.",
        ),
        Cause(
            name="it stood for a day or more, and gelatine goes on stiffening",
            rule="chilled-life",
            toward=HIGH,
            weight=0.5,
            measure="Cut a piece after 6 h and one after 24 h at 4 °C.",
            advice="Take a sixth to a third less when it is made a day ahead.",
        ),
    ),
)
TOO_HARD = Symptom(
    id="too-hard",
    name="It is too hard when it is served",
    causes=(
        Cause(
            name="it had too little time to thaw",
            rule="thawing-time",
            toward=LOW,
            weight=0.9,
            measure="Push a thin probe into the heart an hour before service.",
            advice="Out earlier, and on a shelf that conducts.",
        ),
        Cause(
            name="thawing ends while there is ice left",
            rule="ice-at-service",
            toward=HIGH,
            weight=0.7,
            measure="Read the heart: below -2 °C there is ice.",
            advice="Thaw it to -1 or 0 °C.",
        ),
        Cause(
            name="too much gelatine",
            rule="rubbery",
            toward=HIGH,
            weight=0.5,
            measure="Read the Bloom on the packet.",
            advice="Convert it, take less.",
        ),
        Cause(
            name="the dough is too thick",
            rule="dough-thickness",
            toward=HIGH,
            weight=0.4,
            measure="Measure a baked base with a calliper.",
            advice="2.5 to 3 mm.",
        ),
        Cause(
            name="it stands on board or in a box, which keep the cold",
            weight=0.5,
            measure="What stands under it in the fridge? Card and foam double the time.",
            advice="Glass or metal under it.",
        ),
    ),
)
ICY = Symptom(
    id="icy",
    name="It is icy or tastes of the freezer",
    causes=(
        Cause(
            name="it is watery",
            rule="icy",
            toward=HIGH,
            weight=0.8,
            measure="Read its °Brix; below 15 it freezes coarse.",
            advice="More solids.",
        ),
        Cause(
            name="it froze slowly",
            rule="freezing-time",
            toward=LOW,
            weight=0.5,
            measure="A probe in the heart: hours from 0 to -5 °C.",
            advice="Colder, moving air, fewer at a time.",
        ),
        Cause(
            name="the freezer is warm or swings",
            rule="freezer-temperature",
            toward=HIGH,
            weight=0.5,
            measure="A thermometer in a glass of spirit, read morning and evening.",
            advice="Colder, door shut, frost out.",
        ),
        Cause(
            name="it was not wrapped, or kept for months",
            weight=0.6,
            measure="Weigh a piece when it goes in and when it comes out.",
            advice="Wrap it once it is hard; eat it within 4 to 8 weeks.",
        ),
    ),
)
TEXTURE_SYMPTOMS: tuple[Symptom, ...] = (GRAINY, RUBBERY, TOO_HARD, ICY)
