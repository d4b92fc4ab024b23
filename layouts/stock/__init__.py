"""A name or a person's own tables in; the paper, card size or label sheet meant, out."""
