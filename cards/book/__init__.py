"""What was tied: leaders and their day in, a register that only grows out, and back."""
