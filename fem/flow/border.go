package flow

// border is a piece of a patch's edge, the patch on its left.
type border struct {
	tri  int32
	k    int
	kind borderKind
}

type borderKind uint8

const (
	aboutCorner borderKind = iota // from the middle of edge k to that of edge k+2: the patch has corner k alone
	besideOther                   // the other way: the patch has the other corners
	rimEarly                      // at the plate's edge, from corner k to the middle of edge k
	rimLate                       // and from there to corner k+1
)

// loop is a closed edge of a patch. Chi rises along it by what flows out.
type loop struct {
	borders []border
	chi     []float64 // at the start of each and the end of the last, N
}

// gate is a place on a loop: a border and how far along it, 0 to 1.
type gate struct {
	loop  *loop
	index int
	along float64
}

// noPatch marks nodes and pieces outside all patches.
const noPatch = -1
