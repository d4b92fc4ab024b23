"""What every room uses: quantities of the trade, TOML checked at the door, named tables."""
