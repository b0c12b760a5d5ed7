package stability

// Stands is how a design stands on its moved shape, for a report.
type Stands struct {
	Moved  *Report       // nil: its answer is that on the shape as carved
	Giving *GivingReport // its lowest factor
	Shape  *Giving       // behind that
}
