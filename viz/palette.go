package viz

import "image/color"

// The colours of the drawing board. Functions, so that no package variable
// can be changed.

func paperColor() color.NRGBA   { return color.NRGBA{251, 248, 240, 255} } // the page, warm white
func whiteColor() color.NRGBA   { return color.NRGBA{255, 255, 255, 255} } // openings
func inkColor() color.NRGBA     { return color.NRGBA{58, 42, 30, 255} }    // dark brown lines and text
func softInkColor() color.NRGBA { return color.NRGBA{112, 96, 82, 255} }   // secondary text, 5.4:1 on paper
func hairColor() color.NRGBA    { return color.NRGBA{200, 190, 174, 255} } // grid lines
func woodColor() color.NRGBA    { return color.NRGBA{238, 222, 192, 255} } // cut spruce
func bridgeColor() color.NRGBA  { return color.NRGBA{196, 170, 140, 255} } // the bridge's wood
func rustColor() color.NRGBA    { return color.NRGBA{160, 74, 28, 255} }   // bass, loaded shape
func blueColor() color.NRGBA    { return color.NRGBA{36, 84, 140, 255} }   // treble
func noValueColor() color.NRGBA { return color.NRGBA{214, 210, 204, 255} } // grey of "no value"

// faded returns c with opacity a, 0 to 1.
func faded(c color.NRGBA, a float64) color.NRGBA {
	c.A = uint8(255*a + 0.5)
	return c
}
