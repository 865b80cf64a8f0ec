"""Printed figures against our own, the book's worked example, and the rules of the choice of way against themselves. No page is read here."""
