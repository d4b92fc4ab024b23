"""The bytes of a stranger's file and its reader in; what the reader gives, or why not, out."""
