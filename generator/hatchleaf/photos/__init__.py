"""Photos of a unit: from what a camera wrote to pixels that may be published."""
