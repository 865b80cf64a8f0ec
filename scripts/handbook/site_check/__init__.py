"""Looks at a published site, at its address or in its folder, as a visitor's browser would: nothing is built or changed here."""
