"""What a page may load: our own files and nothing else."""

from __future__ import annotations

import base64
import hashlib
import re

RULES = {
    "default-src": "'self'",
    "script-src": "'self'",
    "style-src": "'self'",
    "img-src": "'self' data:",
    "worker-src": "'self'",
    "manifest-src": "'self'",
    "object-src": "'none'",
    "base-uri": "'none'",
    "form-action": "'self'",
    "frame-ancestors": "'none'",
}
STYLE = re.compile(r"<style[^>]*>(.*?)</style>", re.DOTALL | re.IGNORECASE)
SCRIPT = re.compile(r"<script>(.*?)</script>", re.DOTALL | re.IGNORECASE)


def policy(**changes: str) -> str:
    """Content security policy, with rules changed by name (underscore for hyphen)."""
    rules = RULES | {name.replace("_", "-"): rule for name, rule in changes.items()}
    return "; ".join(f"{name} {rule}" for name, rule in rules.items())


def policy_of_document(html: str) -> str:
    """Policy for a self-contained page: exactly its own styles and its own script, by digest."""
    return policy(
        default_src="'none'",
        script_src=_digests(SCRIPT.findall(html)),
        style_src=_digests(STYLE.findall(html)),
    )


def _digests(texts: list[str]) -> str:
    """Digests of texts as a policy takes them; none is allowed if there is none."""
    found = (hashlib.sha256(text.encode()).digest() for text in texts)
    named = (f"'sha256-{base64.b64encode(digest).decode()}'" for digest in found)
    return " ".join(named) or "'none'"


PAGE_POLICY = policy()
