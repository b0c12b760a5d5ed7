package contact

// Event is a pad that closes or opens while the load rises.
type Event struct {
	Load   float64 // fraction of full load
	Pad    int32
	Closes bool
}

// Trace is the normal force of every pad at one load.
type Trace struct {
	Load  float64   // fraction of full load
	Force []float64 // N, one for each pad
}
