"""Times and temperatures of a step as a cook reads them."""

from __future__ import annotations

from entremetry.publish.typography import MINUS, NO_BREAK
from entremetry.timings.step_temperatures import Fact, StepTemperatures
from entremetry.words import decimal, say, say_count, say_later

FREEZING_POINT = 273.15  # K, of pure water: where the Celsius scale starts
NEVER = say_later("It never gets there")
UNTIL = {"glaze-at": say_later("until the film is set, {range}")}  # the target does not tell
PIECES = "pieces"
WHOLE = frozenset({PIECES, "°C"})
# From how many seconds on a time is said to how many seconds.
GRAINS = ((43200.0, 1800.0), (7200.0, 600.0), (1800.0, 300.0), (300.0, 60.0), (60.0, 10.0))


def celsius(temperature: float) -> str:
    """Temperature in K, said in whole degrees Celsius."""
    return f"{_signed(temperature - FREEZING_POINT)}{NO_BREAK}°C"


def fahrenheit(temperature: float) -> str:
    """Temperature in K, said in whole degrees Fahrenheit."""
    return f"{_signed((temperature - FREEZING_POINT) * 1.8 + 32.0)}{NO_BREAK}°F"


def roughly(time: float) -> str:
    """Seconds as a time with the precision it deserves: 5 h 10 min, 25 min, 40 s."""
    grain = next((step for least, step in GRAINS if time >= least), 1.0)
    return spoken(round(time / grain) * grain)


def spoken(time: float) -> str:
    """Seconds in hours, minutes and seconds; seconds only below ten minutes."""
    seconds = round(time if time < 600.0 else 60.0 * round(time / 60.0))
    minutes, rest = divmod(seconds, 60)
    hours, minutes = divmod(minutes, 60)
    amounts = ((hours, "h"), (minutes, "min"), (rest, "s"))
    parts = [f"{amount}{NO_BREAK}{unit}" for amount, unit in amounts if amount]
    return " ".join(parts) or f"0{NO_BREAK}min"


def headline(result: StepTemperatures) -> str:
    """The answer in a few words: the time, the number the step is about, or that it never ends."""
    if result.time is not None:
        return say("About {time}", time=roughly(result.time).replace(" ", NO_BREAK))
    return fact_value(result.facts[0]) if has_no_time(result) else say(NEVER)


def interval(result: StepTemperatures) -> str:
    """What the answer lies between, and what sets the ends apart; of a number, what it is."""
    if has_no_time(result):
        return result.facts[0].name
    if result.low is None:
        return ""
    low = roughly(result.low)
    if result.high is None:
        words = say("at least {low}, and at worst it never gets there", low=low)
    else:
        words = say("between {low} and {high}", low=low, high=roughly(result.high))
    if result.kind in UNTIL:
        words = say(UNTIL[result.kind], range=words)
    return (
        say("{range}, mostly {cause}", range=words, cause=result.mostly) if result.mostly else words
    )


def has_no_time(result: StepTemperatures) -> bool:
    """Whether a step is not about a time but about some other number."""
    return result.time is None and result.target is None and bool(result.facts)


def fact_value(fact: Fact) -> str:
    """A number with its unit, to a tenth where it is small."""
    if fact.unit == PIECES:
        number = round(fact.value)
        return say_count("{number} piece", "{number} pieces", number).replace(" ", NO_BREAK)
    places = 1 if abs(fact.value) < 9.95 and fact.unit not in WHOLE else 0
    text = decimal(f"{fact.value:.{places}f}".removesuffix(".0")).replace("-", MINUS)
    return f"{'0' if text == f'{MINUS}0' else text}{NO_BREAK}{fact.unit}"


def point_name(name: str) -> str:
    """Name of a watched point as it is written in a drawing."""
    return name.replace("-", " ")


def summary(result: StepTemperatures) -> str:
    """What the curves show, for whoever does not see them."""
    sentences = [answer(result), *(_course(result, k) for k in range(len(result.curves)))]
    marks = sorted(result.marks, key=lambda mark: mark.time)
    sentences += [
        say("After {time}: {event}.", time=roughly(mark.time), event=mark.text) for mark in marks
    ]
    return " ".join(sentences)


def answer(result: StepTemperatures) -> str:
    """The answer in one sentence."""
    if result.time is None:
        what = f"{headline(result)}, {interval(result)}" if has_no_time(result) else say(NEVER)
        return say("{what}: {reason}.", what=what, reason=result.reason.rstrip("."))
    said = headline(result)
    if result.target is not None:
        said = say("{time} to {target}", time=said, target=celsius(result.target))
    return f"{', '.join(filter(None, (said, interval(result))))}."


def _course(result: StepTemperatures, index: int) -> str:
    """From where to where one point goes, and how it stands half-way."""
    curve = result.curves[index]
    half = len(curve.times) // 2
    said = [celsius(float(curve.temperatures[k])) for k in dict.fromkeys((0, half, -1))]
    times = [roughly(float(curve.times[k])) for k in dict.fromkeys((0, half, -1))]
    words = [say("{temperature} at first", temperature=said[0])]
    words += [
        say("{temperature} after {time}", temperature=degrees, time=time)
        for degrees, time in zip(said[1:], times[1:], strict=True)
    ]
    point = point_name(curve.name).capitalize()
    return say("{point}: {temperatures}.", point=point, temperatures=", ".join(words))


def _signed(value: float) -> str:
    whole = round(value)
    return f"{MINUS if whole < 0 else ''}{abs(whole)}"
