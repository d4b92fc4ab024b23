"""Leaders, counts and spools in; what to cut from which spool, and what is to buy, out.

A piece is cut whole from one spool, so that length alone does not decide: two spools of 5 ft make
no piece of 6 ft. For each kind of line the pieces of all leaders are packed onto its spools (bin
packing with bins of many lengths and pieces of few). Every search counts its steps: most end with
the best answer, and what has used up its steps gives the best found with a bound that is true.
Steps are not time, so that the same input gives the same answer on every machine.
"""

COUNT_MOST = 10_000  # leaders of a recipe; the season of a large shop
