// Package cellar has files that use one another in a circle.
package cellar

// Wine is used by both others.
type Wine struct{ Year int }

// Age uses shelf.go, above.
func (w Wine) Age() int { return thisYear - w.Year }
