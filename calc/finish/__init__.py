"""What is put on a ceiling wet: compound, tape, paint."""
