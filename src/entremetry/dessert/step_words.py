"""Which words of a sentence name which kind of step, in English and in French."""

from __future__ import annotations

import re
from collections.abc import Iterator

_AIR = (
    r"until (?:\w+ ){0,3}(?:stiff|peaks?|fluffy|tripled|doubled|pale|thick|ribbons?|airy)"
    r"|(?:soft|firm|stiff|medium) peaks?|en neige|jusqu'à ce que le mélange blanchisse"
)
_WORDS: tuple[tuple[str, str], ...] = (
    ("prepare", r"preheat|line|grease|prepare|préchauffer|préchauffez|graisser"),
    ("weigh", r"weigh|measure|peser|pesez"),
    ("soak", r"soak|bloom|hydrate|tremper|trempez|réhydrater|réhydratez|ramollir"),
    ("fold", r"fold|incorpor(?:er|ez) délicatement"),
    ("whip", r"whip|montez|monter|foisonner"),
    ("melt", r"melt|fondre"),
    ("simmer", r"simmer|frémir|mijoter"),
    (
        "cook-to",
        r"heat|warm|reheat|cook|boil|bring to (?:the|a) boil|chauffer|chauffez|cuire|cuisez"
        r"|porter|portez",
    ),
    (
        "cool-to",
        r"cool|let (?:it |them )?cool|leave (?:it |them )?to cool|refroidir|tiédir",
    ),
    ("strain", r"strain|sieve|filtrer|filtrez|chinoiser|chinoisez"),
    ("roll", r"roll|étaler|étalez|abaisser"),
    ("cut", r"cut|trim|couper|coupez|découper|découpez|détailler|détaillez"),
    ("bake", r"bake|enfourner|enfournez"),
    ("freeze-until", r"freeze|congeler|congelez|surgeler|surgelez"),
    ("unmould", r"unmould|unmold|demould|turn out|démouler|démoulez"),
    ("glaze-at", r"glaze|glacer|glacez|napper|nappez"),
    ("thaw-until", r"thaw|defrost|décongeler|décongelez"),
    ("hold", r"keep|store|conserver|conservez"),
    ("serve", r"serve|servir|servez"),
    ("pour", r"pour|pipe|spread|couler|coulez|verser|versez|pocher|pochez"),
    ("fill", r"fill|garnir|garnissez"),
    ("place", r"place|arrange|insert|press|lay|poser|posez|disposer|disposez|placer|placez"),
    (
        "rest",
        r"rest|chill|refrigerate|leave to (?:set|stand|infuse|rest)|let (?:it )?(?:set|stand|rest)"
        r"|infuse|reposer|infuser|réserver|réservez",
    ),
    (
        "mix",
        r"mix|stir|combine|add|blend|dissolve|sift|rub|knead|emulsify|pulse|process|toss|whisk|beat"
        r"|mélanger|mélangez|ajouter|ajoutez|incorporer|incorporez|fouetter|fouettez|mixer|mixez",
    ),
)
_ANY = "|".join(f"(?:{words})" for _, words in _WORDS)
_EACH = tuple((k, re.compile(rf"\b(?:{w})\b(?!['’-])", re.IGNORECASE)) for k, w in _WORDS)
_AIRED = re.compile(_AIR, re.IGNORECASE)
_BEATEN = re.compile(r"\b(?:whisk|beat|fouettez|fouetter)\b", re.IGNORECASE)
_ADVERB = r"(?:(?:gently|slowly|gradually|quickly|carefully|immediately|finally|now|then|next|"
_ADVERB += r"puis|ensuite|enfin|faire|faites|laisser|laissez)[ ,]+)*"
_FIRST = re.compile(rf"\W*{_ADVERB}(?:{_ANY})\b(?!['’-])", re.IGNORECASE)
_JOINT = re.compile(
    rf"(?:,? and then|, then|;|,? and|, puis|,? et)\s+(?={_ADVERB}(?:{_ANY})\b(?!['’-]))",
    re.IGNORECASE,
)
_SENTENCE = re.compile(r"(?<=[.!?])\s+(?=[^\W\d_a-zà-ÿ])")
ADDING = re.compile(
    r"\b(?:add|stir in|into|in with|incorporate|over|onto|tip in|mix in|whisk in|fold|ajoute[rz]|"
    r"incorpore[rz]|sur|dans)\b",
    re.IGNORECASE,
)


def kinds_said(clause: str) -> tuple[str, ...]:
    """Kinds of step that the words of a clause name: the leading one alone, if one leads."""
    led = _FIRST.match(clause)
    if led is not None:
        lead = led.group()
        found = [kind for kind, words in _EACH if words.search(lead)]
        return tuple(_aired(found[:1], clause))
    found = [kind for kind, words in _EACH if words.search(clause)]
    return tuple(_aired(found, clause))


def begins_with_work(text: str) -> bool:
    """Tell whether a line begins as an instruction does, with a word for work."""
    return _FIRST.match(text) is not None


def clauses(text: str) -> Iterator[str]:
    """Sentences of a step, each cut where a second piece of work begins; no word is lost."""
    for sentence in _SENTENCE.split(text.strip()):
        start = 0
        for joint in _JOINT.finditer(sentence):
            if begins_with_work(sentence[start : joint.start()]):
                yield sentence[start : joint.start()]
                start = joint.start()
        yield sentence[start:]


def _aired(kinds: list[str], clause: str) -> list[str]:
    """Whisking until stiff takes air in; whisking smooth does not."""
    if _BEATEN.search(clause) and _AIRED.search(clause):
        return list(dict.fromkeys("whip" if kind == "mix" else kind for kind in kinds))
    return kinds
