"""What may go wrong with a glaze: common practice, no source."""

from __future__ import annotations

from entremetry.checks.symptom import Cause, Symptom, Toward

LOW, HIGH = Toward.LOW, Toward.HIGH

RAN_OFF = Symptom(
    id="ran-off",
    name="The glaze ran or slid off",
    causes=(
        Cause(
            name="where it touches the piece it is too warm to set",
            rule="glaze-contact",
            toward=HIGH,
            weight=0.9,
            measure="Measure the glaze in the jug, and the skin of the piece with a flat probe.",
            advice="Colder piece, cooler glaze.",
        ),
        Cause(
            name="it was poured too warm",
            rule="glaze-temperature",
            toward=HIGH,
            weight=0.8,
            measure="Stir the jug and measure in its middle right before the pour.",
            advice="30 to 35 °C.",
        ),
        Cause(
            name="the piece was not cold enough",
            rule="glazed-frozen",
            toward=HIGH,
            weight=0.7,
            measure="A thin probe in the heart of one piece before it is glazed.",
            advice="-15 °C or colder.",
        ),
        Cause(
            name="frost or melt water lay on it",
            rule="glaze-at-once",
            toward=HIGH,
            weight=0.7,
            measure="Time it from the freezer to the pour; wipe a finger over the skin.",
            advice="Within 3 min; wipe the frost off.",
        ),
        Cause(
            name="too little gelatine in the glaze",
            rule="glaze-gelatine",
            toward=LOW,
            weight=0.6,
            measure="A spoonful on a cold plate: does it hold after a minute?",
            advice="1.3 to 1.7 % of 200 Bloom.",
        ),
        Cause(
            name="it holds too much water",
            rule="glaze-water",
            toward=HIGH,
            weight=0.5,
            measure="Read its °Brix: 60 to 68 is usual.",
            advice="Boil the syrup further.",
        ),
    ),
)
DULL = Symptom(
    id="dull",
    name="The glaze is dull, spotted or wet",
    causes=(
        Cause(
            name="its syrup is too dilute to shine",
            rule="glaze-syrup",
            toward=LOW,
            weight=0.7,
            measure="Read its °Brix: 60 to 68 is usual.",
            advice="Boil the syrup further, more glucose syrup.",
        ),
        Cause(
            name="its sugar crystallised",
            rule="sucrose-crystals",
            toward=HIGH,
            weight=0.5,
            measure="Look at the surface with a lens.",
            advice="A third of the sugar as glucose syrup.",
        ),
        Cause(
            name="dew settled on it",
            weight=0.7,
            measure="Room temperature and humidity: is the dew point above 4 °C? It mostly is.",
            advice="Thaw it in a closed box in the fridge, bring it out late.",
        ),
        Cause(
            name="it was poured where it was setting already",
            rule="glaze-temperature",
            toward=LOW,
            weight=0.6,
            measure="Measure it in the jug.",
            advice="2 or 3 °C warmer.",
        ),
        Cause(
            name="air was blended in",
            weight=0.5,
            measure="Look through a spoonful against the light.",
            advice="Blade under the surface, rest it overnight, strain it.",
        ),
        Cause(
            name="frost lay under it",
            rule="glaze-at-once",
            toward=HIGH,
            weight=0.5,
            measure="Time it from the freezer to the pour.",
            advice="Within 3 min; wipe the frost off.",
        ),
    ),
)
SEE_THROUGH = Symptom(
    id="see-through",
    name="The coat is thin, with a puddle at the foot",
    causes=(
        Cause(
            name="it was poured too warm",
            rule="glaze-temperature",
            toward=HIGH,
            weight=0.8,
            measure="Measure it in the jug right before the pour.",
            advice="2 or 3 °C cooler, or a second coat.",
        ),
        Cause(
            name="it holds too much water",
            rule="glaze-water",
            toward=HIGH,
            weight=0.7,
            measure="Read its °Brix.",
            advice="Boil the syrup further.",
        ),
        Cause(
            name="too little was poured",
            rule="glaze-poured",
            toward=LOW,
            weight=0.6,
            measure="Weigh the jug before and after.",
            advice="Two to four times what stays.",
        ),
        Cause(
            name="the film is planned thin",
            rule="glaze-film",
            toward=LOW,
            weight=0.5,
            measure="Weigh a piece before and after it is glazed.",
            advice="1.5 to 2 mm.",
        ),
        Cause(
            name="too little gelatine in the glaze",
            rule="glaze-gelatine",
            toward=LOW,
            weight=0.5,
            measure="A spoonful on a cold plate.",
            advice="1.3 to 1.7 % of 200 Bloom.",
        ),
    ),
)
RIDGES = Symptom(
    id="ridges",
    name="The coat is thick or has ridges",
    causes=(
        Cause(
            name="it was setting before it had run level",
            rule="glaze-temperature",
            toward=LOW,
            weight=0.8,
            measure="Measure it in the jug right before the pour.",
            advice="2 or 3 °C warmer.",
        ),
        Cause(
            name="it lost water when it was reheated",
            rule="glaze-water",
            toward=LOW,
            weight=0.7,
            measure="Weigh it before and after; the difference is water.",
            advice="Put the water back.",
        ),
        Cause(
            name="too much gelatine in the glaze",
            rule="glaze-gelatine",
            toward=HIGH,
            weight=0.6,
            measure="Read the Bloom on the packet.",
            advice="1.3 to 1.7 % of 200 Bloom.",
        ),
        Cause(
            name="the film is planned thick",
            rule="glaze-film",
            toward=HIGH,
            weight=0.5,
            measure="Weigh a piece before and after it is glazed.",
            advice="1.5 to 2 mm.",
        ),
    ),
)
GLAZE_SYMPTOMS: tuple[Symptom, ...] = (RAN_OFF, DULL, SEE_THROUGH, RIDGES)
