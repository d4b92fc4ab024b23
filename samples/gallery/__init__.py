"""Pictures of what the program prints, and the script that makes them."""
