"""How long coats take to dry: the law, the room's air, its water over time. No coat's amount is worked out here."""
