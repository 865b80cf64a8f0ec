"""Texts that stand in place of the English ones, by key. None here: a build in another language writes this module anew from
its file of texts."""

TEXTS: dict[str, str] = {}
