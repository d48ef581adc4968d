"""The manual as plain data, and its pages converted once."""
