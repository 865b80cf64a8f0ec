"""What a host hands out beside the pages: compressed files, headers, the list of what is kept offline. No content lives here."""
