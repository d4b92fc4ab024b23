"""What every room uses: faults, exact quantities, TOML checked at the door, named tables."""
