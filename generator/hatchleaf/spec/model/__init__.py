"""What a unit's file may say: one module for each group of fitted parts."""
