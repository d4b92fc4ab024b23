"""The bytes of a picture's file in; a logo ready to be placed out."""
