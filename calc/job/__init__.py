"""A job as a whole: its calendar and its plan of days. What a single topic can tell by itself may not live here."""
