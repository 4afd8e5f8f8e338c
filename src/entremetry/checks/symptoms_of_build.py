"""What may go wrong with how it is put together: common practice, no source."""

from __future__ import annotations

from entremetry.checks.symptom import Cause, Symptom, Toward
from entremetry.words import say_later

LOW, HIGH = Toward.LOW, Toward.HIGH

SANK = Symptom(
    id="sank",
    name=say_later("The insert sank, tilted or moved"),
    causes=(
        Cause(
            name=say_later("it is too heavy for how stiff the mousse is"),
            rule="insert-sinks",
            toward=HIGH,
            weight=0.9,
            measure=say_later("Spoon a bump of 5 mm onto the mousse: does it stay for a minute?"),
            advice=say_later("Wait until a bump stays; lay the insert in level, do not drop it."),
        ),
        Cause(
            name=say_later("the mousse was too warm and fluid"),
            rule="fold-temperature",
            toward=HIGH,
            weight=0.7,
            measure=say_later("Measure the mousse before the insert goes in."),
            advice=say_later("Fold at 24 to 26 °C, chill the filled mould for 5 min."),
        ),
        Cause(
            name=say_later("the insert was not hard when it was laid in"),
            rule="insert-frozen",
            toward=HIGH,
            weight=0.5,
            measure=say_later("Press it with a fingernail when it leaves its mould."),
            advice=say_later("Freeze it hard and take it out at the last moment."),
        ),
        Cause(
            name=say_later("the base floated and pushed it"),
            rule="base-floats",
            toward=HIGH,
            weight=0.4,
            measure=say_later("Weigh base and mousse for their volume."),
            advice=say_later("Soak it, press it in, keep it down with a tray."),
        ),
        Cause(
            name=say_later("the freezer shelf is not level"),
            weight=0.4,
            measure=say_later("Lay a spirit level, or a ring with a little water, on the shelf."),
            advice=say_later("Level the shelf with card under a tray."),
        ),
    ),
)
STUCK = Symptom(
    id="stuck",
    name=say_later("It stuck in the mould"),
    causes=(
        Cause(
            name=say_later("it was not frozen through"),
            rule="unmould-temperature",
            toward=HIGH,
            weight=0.8,
            measure=say_later(
                "Push a thin probe into the heart of the next one before you unmould it."
            ),
            advice=say_later("Freeze it on; the heart should be at -15 °C."),
        ),
        Cause(
            name=say_later("it had too little time in the freezer"),
            rule="freezing-time",
            toward=LOW,
            weight=0.7,
            measure=say_later("A probe in the heart of one piece, read every half hour."),
            advice=say_later("Longer, on metal, with air around it."),
        ),
        Cause(
            name=say_later("its skin stays soft: much sugar or alcohol"),
            rule="releases",
            toward=LOW,
            weight=0.6,
            measure=say_later("Read the °Brix of the outer layer."),
            advice=say_later("Less of both, or a colder freezer."),
        ),
        Cause(
            name=say_later("too little sets it"),
            rule="sets",
            toward=LOW,
            weight=0.5,
            measure=say_later("Turn out a cupful set at 4 °C."),
            advice=say_later("More gelatine."),
        ),
        Cause(
            name=say_later("the freezer is too warm"),
            rule="freezer-temperature",
            toward=HIGH,
            weight=0.5,
            measure=say_later("Leave a thermometer in a glass of spirit on the shelf overnight."),
            advice=say_later("Set it colder, take frost out."),
        ),
    ),
)
SOGGY = Symptom(
    id="soggy",
    name=say_later("The base is soggy"),
    causes=(
        Cause(
            name=say_later("water moved into it from the mousse"),
            rule="stays-crisp",
            toward=LOW,
            weight=0.9,
            measure=say_later("Weigh a base before it is put on and after it is lifted off."),
            advice=say_later("A film of cocoa butter or chocolate; put the piece on it later."),
        ),
        Cause(
            name=say_later("it was not baked dry"),
            rule="baked-dry",
            toward=HIGH,
            weight=0.7,
            measure=say_later("Weigh the bases before and after the oven."),
            advice=say_later("Bake it longer, to an even gold."),
        ),
        Cause(
            name=say_later("too much syrup"),
            rule="soak-share",
            toward=HIGH,
            weight=0.7,
            measure=say_later("Weigh the sponge before and after brushing."),
            advice=say_later("A quarter to a half of its mass."),
        ),
        Cause(
            name=say_later("it stood too long before it was eaten"),
            rule="chilled-life",
            toward=HIGH,
            weight=0.4,
            measure=say_later("Bite one after 2, 6 and 24 h."),
            advice=say_later("Assemble later."),
        ),
        Cause(
            name=say_later("the piece wept onto it"),
            rule="weeping",
            toward=HIGH,
            weight=0.4,
            measure=say_later("Is the base wet from above, with a puddle round it?"),
            advice=say_later("See 'weeping'."),
        ),
    ),
)
BLED = Symptom(
    id="bled",
    name=say_later("Layers or colours ran into each other"),
    causes=(
        Cause(
            name=say_later("the upper layer melted the lower"),
            rule="layer-on-layer",
            toward=HIGH,
            weight=0.8,
            measure=say_later("Measure the upper layer as it is poured."),
            advice=say_later("Freeze the lower layer, pour at 25 to 30 °C."),
        ),
        Cause(
            name=say_later("nothing held the lower layer"),
            rule="layer-sinks",
            toward=HIGH,
            weight=0.6,
            measure=say_later("Lay a spoon on the lower layer: does it stay?"),
            advice=say_later("Chill it, or set it."),
        ),
        Cause(
            name=say_later("the wall over the insert is thin"),
            rule="mousse-wall",
            toward=LOW,
            weight=0.5,
            measure=say_later("Cut one through and measure."),
            advice=say_later("A smaller insert."),
        ),
        Cause(
            name=say_later("the insert stays liquid in the freezer"),
            rule="insert-freezes-hard",
            toward=LOW,
            weight=0.6,
            measure=say_later("Press an insert that has been in the freezer overnight."),
            advice=say_later("Less sugar or spirit, some gelatine."),
        ),
    ),
)
BUILD_SYMPTOMS: tuple[Symptom, ...] = (SANK, STUCK, SOGGY, BLED)
