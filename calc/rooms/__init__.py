"""Rooms as people write them, and the geometry of their ceilings. No trade figure lives here."""
