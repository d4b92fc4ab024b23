"""Sheets and files in, the bytes of one PDF out; and the files that a PDF carries."""
