"""A taper worked out from the line there is: a wish and strands in, the best tapers out.

What the best taper is. Spools are chosen first, by their joints, computed as on an ideal string.
All tapers count alike whose worst joint is within the limit of the rule "step"; of others the one
whose worst joint is least beyond it comes first. Then the fewest changes of material above the
tippet, since practice in print stays in one kind until there; then the fewest knots; then the
fewest joints that get neither a knot of the person's habit nor the first choice for how the strands
meet; then the evenest steps. Then the lengths, on marks that hands use and that add up
to the total: as near as can be, by squares, to the shares of butt, taper and tippet asked for; the
butt is the thicker half of the strands above the tippet and its lengths fall by a third each, those
of the taper are alike. No piece is shorter than 6 in or 15 cm, and none more than a tenth short of
its plan because its spool runs out. Spools and lengths are exact optima, the sighter's spool among
them; what may be the sighter gives no other piece. The bite guard comes from the spool nearest to
the tippet that has enough and leaves enough of the tippet. The search may end after so many steps:
what it found by then is the best there is, and where that is nothing, it says so. Up to three
tapers come out of the twelve best, those first that the audit finds less in; none has more than
twice the fewest knots and one, or changes its material more often than the best above the tippet.
"""
