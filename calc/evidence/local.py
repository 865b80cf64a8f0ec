"""What an edition adds to the registers for its own place and people: rows of sources, cautions, places, limits and rules.

The book's own edition adds nothing. Another one is written by its build (`handbook.firm.local`), which adds and never takes away.
"""

from fractions import Fraction

SOURCES: tuple[tuple[str, str, str, str, str, str, str, str], ...] = ()
"""Rows of `calc.evidence.sources.Source`."""

CAUTIONS: tuple[tuple[str, str, str, str, str, str], ...] = ()
"""Rows of `calc.evidence.cautions.Caution`."""

PLACES: tuple[tuple[str, tuple[str, ...]], ...] = ()
"""Places as in `calc.evidence.limits.PLACES`."""

LIMITS: tuple[tuple[str, str, str, str, Fraction, str, bool, str, str, str, str, str], ...] = ()
"""Rows of `calc.evidence.limits.Limit`."""

RULES: tuple[tuple[str, str, str, str, str, str, str], ...] = ()
"""(id, topic, place, what is told, source, reviewed on, review by) of what a place asks for once asbestos, or lead paint, was found."""

LEFT_OUT: tuple[str, ...] = ()
"""Pages that the edition does without: an answer still tells of the way or the work, and leads to no page of it."""
