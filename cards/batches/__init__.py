"""Leaders, counts and spools in; what to cut from which spool, and what is to buy, out.

A piece is cut whole from one spool, so that length alone does not decide: two spools of 5 ft make
no piece of 6 ft. For each kind of line the pieces of all leaders are packed onto its spools (bin
packing with bins of many lengths and pieces of few), and the answer is exact. A search goes spool
by spool through the ways to fill it, and gives up as soon as the pieces left are longer than what
the later spools can take. No spool takes more than the longest sum of whole pieces that fits on
it: that is the bound. It settles one spool at once, and two by one look at the sums that the
pieces make. Mixes are searched from the most leaders that the lengths allow downwards.
"""
