"""A taper worked out from the line there is: a wish and strands in, the best tapers out.

What the best taper is. Spools are chosen first. A step is even when its ratio of diameters is: a
strand's stiffness goes with the fourth power of its diameter, so that equal ratios bend alike,
where equal thousandths get steeper the finer the strand. The even step is the whole drop shared
among the fewest knots of 1.35 times or of the step asked for, and the best spools are those whose
steps depart least from it, by the sum of squares; so a knot too many costs about as much as a step
left out. A change of material into the tippet costs as much as a knot, and one above it as much as
ten, so that it changes once, and there. Then the lengths, on marks that hands use and that add up
to the total: as near as can be, by squares, to the shares of butt, taper and tippet asked for; the
butt is the thicker half of the strands above the tippet and its lengths fall by a third each, those
of the taper are alike. No piece is shorter than 6 in or 15 cm, and none more than a tenth short of
its plan because its spool runs out. Spools and lengths are exact optima: nothing is tried at random
or cut short. Up to three tapers come out of the twelve best, those first that the audit finds less
in; none of them has more than twice the fewest knots and one, or is worse than the best by more
than five knots.
"""
