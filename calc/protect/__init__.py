"""Keeping the house and its air clean: film, machines, water on the texture, and what comes down."""
