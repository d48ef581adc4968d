"""What an engineer would stop a delivery for."""
