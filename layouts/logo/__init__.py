"""The bytes of a picture's file in; a raster to be printed as a logo out."""
