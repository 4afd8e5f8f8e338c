"""What may go wrong with a glaze: common practice, no source."""

from __future__ import annotations

from entremetry.checks.symptom import Cause, Symptom, Toward
from entremetry.words import say_later

LOW, HIGH = Toward.LOW, Toward.HIGH

RAN_OFF = Symptom(
    id="ran-off",
    name=say_later("The glaze ran or slid off"),
    causes=(
        Cause(
            name=say_later("where it touches the piece it is too warm to set"),
            rule="glaze-contact",
            toward=HIGH,
            weight=0.9,
            measure=say_later(
                "Measure the glaze in the jug, and the skin of the piece with a flat probe."
            ),
            advice=say_later("Colder piece, cooler glaze."),
        ),
        Cause(
            name=say_later("it was poured too warm"),
            rule="glaze-temperature",
            toward=HIGH,
            weight=0.8,
            measure=say_later("Stir the jug and measure in its middle right before the pour."),
            advice=say_later("30 to 35 °C."),
        ),
        Cause(
            name=say_later("the piece was not cold enough"),
            rule="glazed-frozen",
            toward=HIGH,
            weight=0.7,
            measure=say_later("A thin probe in the heart of one piece before it is glazed."),
            advice=say_later("-15 °C or colder."),
        ),
        Cause(
            name=say_later("frost or melt water lay on it"),
            rule="glaze-at-once",
            toward=HIGH,
            weight=0.7,
            measure=say_later("Time it from the freezer to the pour; wipe a finger over the skin."),
            advice=say_later("Within 3 min; wipe the frost off."),
        ),
        Cause(
            name=say_later("too little gelatine in the glaze"),
            rule="glaze-gelatine",
            toward=LOW,
            weight=0.6,
            measure=say_later("A spoonful on a cold plate: does it hold after a minute?"),
            advice=say_later("1.3 to 1.7 % of 200 Bloom."),
        ),
        Cause(
            name=say_later("it holds too much water"),
            rule="glaze-water",
            toward=HIGH,
            weight=0.5,
            measure=say_later("Read its °Brix: 60 to 68 is usual."),
            advice=say_later("Boil the syrup further."),
        ),
    ),
)
DULL = Symptom(
    id="dull",
    name=say_later("The glaze is dull, spotted or wet"),
    causes=(
        Cause(
            name=say_later("its syrup is too dilute to shine"),
            rule="glaze-syrup",
            toward=LOW,
            weight=0.7,
            measure=say_later("Read its °Brix: 60 to 68 is usual."),
            advice=say_later("Boil the syrup further, more glucose syrup."),
        ),
        Cause(
            name=say_later("its sugar crystallised"),
            rule="sucrose-crystals",
            toward=HIGH,
            weight=0.5,
            measure=say_later("Look at the surface with a lens."),
            advice=say_later("A third of the sugar as glucose syrup."),
        ),
        Cause(
            name=say_later("dew settled on it"),
            weight=0.7,
            measure=say_later(
                "Room temperature and humidity: is the dew point above 4 °C? It mostly is."
            ),
            advice=say_later("Thaw it in a closed box in the fridge, bring it out late."),
        ),
        Cause(
            name=say_later("it was poured where it was setting already"),
            rule="glaze-temperature",
            toward=LOW,
            weight=0.6,
            measure=say_later("Measure it in the jug."),
            advice=say_later("2 or 3 °C warmer."),
        ),
        Cause(
            name=say_later("air was blended in"),
            weight=0.5,
            measure=say_later("Look through a spoonful against the light."),
            advice=say_later("Blade under the surface, rest it overnight, strain it."),
        ),
        Cause(
            name=say_later("frost lay under it"),
            rule="glaze-at-once",
            toward=HIGH,
            weight=0.5,
            measure=say_later("Time it from the freezer to the pour."),
            advice=say_later("Within 3 min; wipe the frost off."),
        ),
    ),
)
SEE_THROUGH = Symptom(
    id="see-through",
    name=say_later("The coat is thin, with a puddle at the foot"),
    causes=(
        Cause(
            name=say_later("it was poured too warm"),
            rule="glaze-temperature",
            toward=HIGH,
            weight=0.8,
            measure=say_later("Measure it in the jug right before the pour."),
            advice=say_later("2 or 3 °C cooler, or a second coat."),
        ),
        Cause(
            name=say_later("it holds too much water"),
            rule="glaze-water",
            toward=HIGH,
            weight=0.7,
            measure=say_later("Read its °Brix."),
            advice=say_later("Boil the syrup further."),
        ),
        Cause(
            name=say_later("too little was poured"),
            rule="glaze-poured",
            toward=LOW,
            weight=0.6,
            measure=say_later("Weigh the jug before and after."),
            advice=say_later("Two to four times what stays."),
        ),
        Cause(
            name=say_later("the film is planned thin"),
            rule="glaze-film",
            toward=LOW,
            weight=0.5,
            measure=say_later("Weigh a piece before and after it is glazed."),
            advice=say_later("1.5 to 2 mm."),
        ),
        Cause(
            name=say_later("too little gelatine in the glaze"),
            rule="glaze-gelatine",
            toward=LOW,
            weight=0.5,
            measure=say_later("A spoonful on a cold plate."),
            advice=say_later("1.3 to 1.7 % of 200 Bloom."),
        ),
    ),
)
RIDGES = Symptom(
    id="ridges",
    name=say_later("The coat is thick or has ridges"),
    causes=(
        Cause(
            name=say_later("it was setting before it had run level"),
            rule="glaze-temperature",
            toward=LOW,
            weight=0.8,
            measure=say_later("Measure it in the jug right before the pour."),
            advice=say_later("2 or 3 °C warmer."),
        ),
        Cause(
            name=say_later("it lost water when it was reheated"),
            rule="glaze-water",
            toward=LOW,
            weight=0.7,
            measure=say_later("Weigh it before and after; the difference is water."),
            advice=say_later("Put the water back."),
        ),
        Cause(
            name=say_later("too much gelatine in the glaze"),
            rule="glaze-gelatine",
            toward=HIGH,
            weight=0.6,
            measure=say_later("Read the Bloom on the packet."),
            advice=say_later("1.3 to 1.7 % of 200 Bloom."),
        ),
        Cause(
            name=say_later("the film is planned thick"),
            rule="glaze-film",
            toward=HIGH,
            weight=0.5,
            measure=say_later("Weigh a piece before and after it is glazed."),
            advice=say_later("1.5 to 2 mm."),
        ),
    ),
)
GLAZE_SYMPTOMS: tuple[Symptom, ...] = (RAN_OFF, DULL, SEE_THROUGH, RIDGES)
