"""What the YAML parser says of a text, in the language that is spoken."""

from __future__ import annotations

from entremetry.words import say, say_later

KNOWN = frozenset(
    (
        say_later("while parsing a block collection"),
        say_later("while parsing a block mapping"),
        say_later("while parsing a flow mapping"),
        say_later("while parsing a flow sequence"),
        say_later("while parsing a block node"),
        say_later("while parsing a flow node"),
        say_later("while parsing a quoted scalar"),
        say_later("while scanning a block scalar"),
        say_later("while scanning a plain scalar"),
        say_later("while scanning a quoted scalar"),
        say_later("while scanning a simple key"),
        say_later("while scanning an alias"),
        say_later("while scanning an anchor"),
        say_later("while scanning for the next token"),
        say_later("block sequence entries are not allowed in this context"),
        say_later("could not find expected ':'"),
        say_later("did not find expected '-' indicator"),
        say_later("did not find expected ',' or ']'"),
        say_later("did not find expected <document start>"),
        say_later("did not find expected alphabetic or numeric character"),
        say_later("did not find expected comment or line break"),
        say_later("did not find expected hexdecimal number"),
        say_later("did not find expected key"),
        say_later("did not find expected node content"),
        say_later("did not find expected whitespace or line break"),
        say_later("found a tab character that violates indentation"),
        say_later("found a tab character where an indentation space is expected"),
        say_later("found character that cannot start any token"),
        say_later("found unexpected document indicator"),
        say_later("found unexpected end of stream"),
        say_later("found unknown escape character"),
        say_later("mapping keys are not allowed in this context"),
        say_later("mapping values are not allowed in this context"),
    )
)
"""Its sentences, as libyaml writes them; what it says beside them stays as it is."""


def parser_words(text: str) -> str:
    """A sentence of the parser."""
    return say(text) if text in KNOWN else text
