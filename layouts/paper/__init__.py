"""A face and what is on it: lengths, text and shapes in; items at places, in points, out."""
