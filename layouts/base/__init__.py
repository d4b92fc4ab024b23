"""What anything needs that reads a person's writing: faults, exact quantities, near names."""
