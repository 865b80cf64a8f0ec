"""Printed figures against our own, and the rules of the choice of way against themselves. No page is read here."""
