"""Faces in; sheets of real paper with every face at its place, marks and helps, out."""
