"""What every calculator is made of: fields that ask, an answer, a drawing. No trade figure lives here."""
