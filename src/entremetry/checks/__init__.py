"""Bench checks: will each component set, hold, release, shine, stay crisp; how sure are we."""
