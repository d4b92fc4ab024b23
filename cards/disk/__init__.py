"""Files on the disk: names in, what they hold out; bytes in, files written whole and locked."""
