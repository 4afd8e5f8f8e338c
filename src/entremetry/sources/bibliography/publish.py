"""Sources of the room `publish`."""

from __future__ import annotations

from entremetry.sources.source import Source

ENTRIES: tuple[Source, ...] = (
    Source(
        key="schema_org_30",
        text=(
            "W3C Schema.org Community Group (2026). Schema.org vocabulary, release 30.0: types "
            "Recipe, HowTo, HowToSection, HowToStep."
        ),
    ),
    Source(
        key="iso_8601",
        text=(
            "ISO 8601-1:2019. Date and time: Representations for information interchange, "
            "part 1: Basic rules, durations."
        ),
    ),
    Source(
        key="rfc_5545",
        text=(
            "Desruisseaux, B. (ed.) (2009). Internet Calendaring and Scheduling Core Object "
            "Specification (iCalendar), RFC 5545."
        ),
    ),
    Source(
        key="opendocument_13",
        text=(
            "OASIS (2021). Open Document Format for Office Applications (OpenDocument), "
            "version 1.3, parts 2 (packages) and 3 (schema); earlier editions are ISO/IEC 26300."
        ),
    ),
    Source(
        key="wcag_22",
        text=(
            "W3C (2023). Web Content Accessibility Guidelines (WCAG) 2.2, definitions of "
            "relative luminance and contrast ratio; success criteria 1.4.1, 1.4.3, 1.4.10."
        ),
    ),
)
