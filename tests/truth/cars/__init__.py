"""The true cars, of our own invention."""
