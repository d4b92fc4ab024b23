"""A text in, a QR symbol that reads back as it out; a picture in, the texts of its codes out."""
