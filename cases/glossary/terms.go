package glossary

// Term is a word or a phrase of an answer.
type Term struct {
	Name  string   // "rolling shear"
	Also  []string // other words for it, or forms of it
	Unit  string   // of its number; "": none
	Means string   // one sentence or two
	Plain bool     // too common a word to be marked in running text
}

// ofWood are the words about wood and its values.
func ofWood() []Term {
	return []Term{
		{Name: "from memory", Means: "The value is in the source named, but was written down without the book at hand: look it up before you rely on it."},
		{Name: "borrowed", Means: "Nobody published the value for this wood; that of a related one stands in."},
		{Name: "common practice", Also: []string{"no published source"}, Means: "What makers do or take for granted; no published source was found for the number."},
		{Name: "rolling shear", Means: "Shear that makes the fibres roll over each other like a bundle of rods; wood is weakest and softest against it."},
		{Name: "crushing", Means: "Pressing wood across the grain until it stays dented."},
		{Name: "along the grain", Also: []string{"EL"}, Means: "In the direction of the fibres, L; EL is the stiffness in it."},
		{Name: "across the grain", Also: []string{"ER", "ET"}, Means: "Square to the fibres: R toward the bark, ER its stiffness, T along the rings, ET its stiffness."},
		{Name: "made", Plain: true, Means: "Carved from thick wood, or pressed: bent into its shape."},
		{Name: "carved", Means: "Cut from thick wood: the grain stays straight in the billet while the surface slopes. Bent or pressed plates carry it along the surface."},
		{Name: "strength", Plain: true, Means: "The stress at which clear, straight-grained wood breaks in a test of some minutes."},
		{Name: "clear", Plain: true, Also: []string{"straight-grained"}, Means: "Without knots, runout or pitch pockets; wood with any of them is weaker."},
		{Name: "from plank to plank", Also: []string{"± wood", "wood's range"}, Means: "What another board of the same wood may change: one standard deviation, about two boards in three lie within it."},
		{Name: "one standard deviation", Also: []string{"standard deviation"}, Means: "A measure of scatter: about two values in three lie within it, one in six above and one in six below."},
		{Name: "creep", Also: []string{"creeps"}, Means: "The slow going on of wood that bears a load for years."},
		{Name: "over decades", Means: "An indication of what years of load do: strength falls to six tenths, and the sink grows as the woods creep in fifty years, half of what their cards tell to a third more."},
	}
}

// ofTop are the words about the plate and where the load goes.
func ofTop() []Term {
	return []Term{
		{Name: "apex", Means: "The highest place of the arch."},
		{Name: "recurve", Means: "The trough along the edge, where the arch turns up to the rim."},
		{Name: "steepest slope", Means: "Where the outer surface rises most steeply, in degrees."},
		{Name: "thickness", Plain: true, Means: "Of the plate, square to its outer surface."},
		{Name: "stretching", Means: "The plate pulled or squeezed in its own plane, as an arch carries."},
		{Name: "bending", Means: "The plate curved more or less than it was carved, as a flat board carries."},
		{Name: "energy", Also: []string{"N mm"}, Means: "The work of the strings stored in the wood, like that of a wound spring; where most is stored, a change of thickness changes most. 1000 N mm lift a kilogram by ten centimetres."},
		{Name: "bedding", Means: "The wood right under the foot and over it, which is pressed together a little before the plate as a whole gives way."},
		{Name: "rim and supports", Means: "Sides, lining, blocks and whatever else holds the plate."},
		{Name: "edge holds up", Means: "What neck, tail and the two sides press up against the edge of the top."},
		{Name: "takes over", Means: "Of a brace: how much of the load passes from the plate into it on the way to the edge."},
		{Name: "axial force", Means: "Pull (+) or push (-) along a brace."},
		{Name: "bending moment", Means: "How hard a brace is bent: force times arm; plus pulls its bottom."},
		{Name: "glue line", Also: []string{"its glue line"}, Means: "The joint between a brace and the top."},
		{Name: "peel", Means: "Pull that opens a glue line, square to it; joints bear far less of it than of shear."},
		{Name: "shear", Means: "Layers pushed past each other: in a glue line along it, in a plate through its thickness."},
		{Name: "fitted", Plain: true, Means: "Of a brace: glued in. One that is not fitted is left out of the computation."},
		{Name: "gauge", Also: []string{"gauges", "dial gauge"}, Means: "A place where a dial gauge could stand; the number is what it would show from slack strings to pitch, down positive."},
		{Name: "tension", Plain: true, Means: "The pull of a string, or a stress that pulls wood apart."},
		{Name: "outer face", Means: "The outside of the top, seen with the instrument on its back."},
		{Name: "inner face", Means: "The inside of the top, seen through the sound hole."},
		{Name: "means over one thickness", Means: "Stress is read as the mean over a small round as wide as the plate is thick there: at a sharper point theory has no value, and wood does not feel it."},
	}
}

// ofBridge are the words about bridge and foot.
func ofBridge() []Term {
	return []Term{
		{Name: "bridge sinks", Also: []string{"sink", "sinks"}, Means: "How far a place comes down from slack strings to pitch, in mm, down positive."},
		{Name: "foot carries", Plain: true, Also: []string{"bass end", "treble end", "middle"}, Means: "How the force between foot and top is shared: thirds of a continuous foot's length."},
		{Name: "feet carry", Means: "How the force is shared between the bass foot and the treble foot."},
		{Name: "inner heels", Also: []string{"inner heel", "their inner heels carry", "outer heel"}, Means: "The halves of two feet toward the bridge's middle; the outer heels are the halves away from it."},
		{Name: "middle of the foot", Also: []string{"touches", "closed", "closes"}, Means: "With a relief the middle is open at first. It touches when the first place of it bears, and has closed when all of it does; both in percent of full string load."},
		{Name: "relief", Means: "Wood taken from under the fitted foot, deepest in the middle, so that its ends bear first."},
		{Name: "gap", Also: []string{"gap left"}, Means: "Air between foot and top that is left at full load."},
		{Name: "friction needed", Also: []string{"N per N"}, Means: "How many newtons the foot must hold along the top for each newton it presses with; wood on wood gives 0.3 to 0.5, more must slide."},
		{Name: "hold", Plain: true, Means: "What holds the foot in place on the top: grip or slip."},
		{Name: "grip", Also: []string{"slip"}, Means: "Whether the foot stays where it is on the top (grip) or glides without friction (slip); the truth lies between."},
		{Name: "single spots", Means: "The greatest pressure at one point of the grid under the foot; it grows as the triangles shrink, so the mean over 8 mm counts."},
		{Name: "mass of the bridge", Means: "Base, and on posts the saddle beam, by their drawing and wood."},
	}
}

// ofStrings are the words about the strings.
func ofStrings() []Term {
	return []Term{
		{Name: "presses N", Also: []string{"press down", "downforce"}, Means: "What a string presses the bridge down with: its tension times the sines of both break angles."},
		{Name: "push along with", Also: []string{"pushes N", "push"}, Means: "What the strings push the bridge with along the centre line, plus toward the neck."},
		{Name: "front°", Also: []string{"back°", "break angle"}, Means: "How steeply a string falls from the saddle, toward the neck in front and toward the tail behind."},
		{Name: "grip N", Means: "What friction in the saddle's slots may add to a string's push or take from it; - where no friction of the saddle is given."},
		{Name: "rise", Means: "What plucking adds to a string's tension, in its speaking length alone."},
		{Name: "rocking", Also: []string{"tipping"}, Means: "The push works at the height of the strings and so tries to tip the bridge: it shifts the downforce toward neck or tail, out of the middle third an edge lifts, beyond the foot the bridge tips."},
		{Name: "wound", Means: "A string with wire wound round a core; its weight is known from its gauge within 5 %."},
	}
}

// ofComparison are the words of comparisons and series.
func ofComparison() []Term {
	return []Term{
		{Name: "less A", Means: "The number of this design less that of design A."},
		{Name: "in %", Means: "The difference from A, of A's number."},
		{Name: "± edge", Means: "What the making of sides, lining and back leaves open of a number: each measure made smaller by what it usually scatters, one at a time, on triangles twice as large (common practice, no published source)."},
		{Name: "± mesh", Also: []string{"± behind a number", "mesh"}, Means: "What the triangles may cost a number, estimated from the same case on triangles twice as large."},
		{Name: "same planks", Means: "For a difference both designs are cut from one and the same board, so what the board does to both cancels."},
	}
}

// ofTrust are the words about the computation itself.
func ofTrust() []Term {
	return []Term{
		{Name: "nodes", Also: []string{"triangles"}, Means: "The plate is cut into small triangles; nodes are their corners, each of which may move three ways and turn three ways."},
		{Name: "million operations", Also: []string{"factorise", "thousand million operations"}, Means: "How much arithmetic a solve takes: a thousand million are done in about a second."},
		{Name: "built-in checks", Plain: true, Also: []string{"built-in checks FAILED", "equilibrium", "contact"}, Means: "Tests of every run: forces and moments add up to zero, the work of the strings is the energy stored, no foot pulls or sinks in. If one fails, do not use the numbers."},
		{Name: "against the bench", Means: "What one factor on all stiffnesses would make computed and measured sinks agree best."},
		{Name: "datum", Plain: true, Also: []string{"data"}, Means: "One height or thickness that was measured or drawn: a row of a table."},
		{Name: "warning", Plain: true, Means: "Something that was computed as it stands in the case but is doubtful: read it before the numbers."},
		{Name: "wood", Plain: true, Means: "How far boards of one species differ: one standard deviation of stiffness is 22 % of the handbook's value."},
	}
}
