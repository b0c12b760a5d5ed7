package surface

import (
	"fmt"
	"math"

	"archload/mesh/plane"
)

// Data is what is known of a surface: any mixture of contour lines,
// spot heights, templates and measured points. The zero values of the options
// are usable.
type Data struct {
	Outline   plane.Region
	Lines     []ContourLine // closed lines of equal height; a line of one point is a spot height
	Templates []Template    // cross arches and long arches
	Points    []Sample      // measured anywhere, smoothed to Noise

	Rim       *float64 // height along the outline, mm; nil: nothing is known there (a graduation)
	RimStated bool     // the user wrote the rim height; otherwise data on the outline win over it

	Noise     float64 // standard deviation of measured points, mm; 0: what they show, at most 0.1
	Rounding  float64 // step to which x and y are rounded, mm; 0: found from the data
	RecurveAt float64 // distance of the recurve's floor from the outline, mm; 0 means 22
	Cell      float64 // edge of the spline cells, mm; 0 means 6
}

// ContourLine is a line of equal height. With three points or more it is
// closed, unless its ends lie apart by more than three times its spacing.
type ContourLine struct {
	ID     string
	Height float64 // mm
	Points []plane.Point
	Rows   []int32 // number of each point in the user's table, for messages; nil: counted through
}

// Template is a chain of heights along a line in plan.
type Template struct {
	ID      string
	Points  []plane.Point
	Heights []float64 // mm
	Rows    []int32   // as in ContourLine
}

// Sample is a measured height.
type Sample struct {
	At plane.Point
	Z  float64 // mm
}

// DataError is a fault of the data from which a surface was to be fitted.
type DataError struct {
	Set  string      // "outline", "contours", "templates" or "points"
	Line int32       // row of the datum at fault in its set, from 0; -1: the set as a whole
	At   plane.Point // mm
	Msg  string
}

// Error says what is wrong and where.
func (e *DataError) Error() string {
	if e.Line < 0 {
		return fmt.Sprintf("%s: %s", e.Set, e.Msg)
	}
	return fmt.Sprintf("%s, row %d at (%.1f, %.1f): %s", e.Set, e.Line, e.At[0], e.At[1], e.Msg)
}

// Warning is a doubt about the data that does not stop the work.
type Warning struct {
	Set string      // as in DataError; "" if it is of no single datum
	Row int32       // as in DataError
	At  plane.Point // mm
	Msg string
}

// Misfit is the distance between the surface and one datum.
type Misfit struct {
	Set   string      // as in DataError
	Row   int32       // as in DataError
	At    plane.Point // mm
	Error float64     // surface minus datum, mm
	Sigma float64     // standard deviation expected of the datum, mm
}

// ClassFit sums up the misfit of one class of data.
type ClassFit struct {
	Class string  // "outline and contours", "spots and templates" or "measured points"
	Count int     // data in the class
	RMS   float64 // root of the mean squared misfit, mm
	Worst Misfit  // of the greatest absolute misfit
	Ratio float64 // rms of misfit over sigma, 1
}

// Report says how well a fitted surface follows its data.
type Report struct {
	Classes        []ClassFit // classes that hold data
	Beyond         []Misfit   // data further than four sigma off, worst first
	Warnings       []Warning
	Smoothing      float64 // weight lambda of the roughness integral, mm⁴ per unit of squared sigma ratio
	Trough         bool    // the data show a trough along the outline
	Factorizations int     // of the full system
}

// finite tells whether all values are numbers of a sane size.
func finite(values ...float64) bool {
	for _, v := range values {
		if !(math.Abs(v) < 1e5) { // 100 m
			return false
		}
	}
	return true
}
