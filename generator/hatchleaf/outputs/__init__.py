"""What a manual becomes: website, phone copy, stickers."""
