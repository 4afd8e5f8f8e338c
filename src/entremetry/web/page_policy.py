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
    "object-src": "'none'",
    "base-uri": "'none'",
    "form-action": "'self'",
    "frame-ancestors": "'none'",
}
STYLE = re.compile(r"<style[^>]*>(.*?)</style>", re.DOTALL | re.IGNORECASE)


def policy(**changes: str) -> str:
    """Content security policy, with rules changed by name (underscore for hyphen)."""
    rules = RULES | {name.replace("_", "-"): rule for name, rule in changes.items()}
    return "; ".join(f"{name} {rule}" for name, rule in rules.items())


def policy_of_document(html: str) -> str:
    """Policy for a self-contained page: exactly its own styles by their digest, and no script."""
    digests = (hashlib.sha256(style.encode()).digest() for style in STYLE.findall(html))
    styles = " ".join(f"'sha256-{base64.b64encode(digest).decode()}'" for digest in digests)
    return policy(default_src="'none'", script_src="'none'", style_src=styles or "'none'")


PAGE_POLICY = policy()
