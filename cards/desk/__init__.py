"""The desk: one page on one's own machine, over the folder that the commands work in as well."""
