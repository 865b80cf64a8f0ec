"""The door for text: each text that people see has a key, and another language can stand in its place. No text lives here."""
