"""Inputs and rules that several topics share. What one topic alone needs lives with that topic."""
