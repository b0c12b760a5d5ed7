package canvas

import "image/color"

// Paper is the page, a warm white.
func Paper() color.NRGBA { return color.NRGBA{251, 248, 240, 255} }

// White is the colour of openings.
func White() color.NRGBA { return color.NRGBA{255, 255, 255, 255} }

// Ink is the dark brown of lines and text.
func Ink() color.NRGBA { return color.NRGBA{58, 42, 30, 255} }

// SoftInk is the colour of secondary text, 5.4:1 on paper.
func SoftInk() color.NRGBA { return color.NRGBA{112, 96, 82, 255} }

// HairGrey is the colour of grid lines.
func HairGrey() color.NRGBA { return color.NRGBA{200, 190, 174, 255} }

// Wood is the colour of cut spruce.
func Wood() color.NRGBA { return color.NRGBA{238, 222, 192, 255} }

// BridgeWood is the colour of the bridge's wood.
func BridgeWood() color.NRGBA { return color.NRGBA{196, 170, 140, 255} }

// Rust is the colour of the bass side and of the loaded shape.
func Rust() color.NRGBA { return color.NRGBA{160, 74, 28, 255} }

// Fault is the colour of warnings.
func Fault() color.NRGBA { return color.NRGBA{158, 30, 24, 255} }

// Blue is the colour of the treble side.
func Blue() color.NRGBA { return color.NRGBA{36, 84, 140, 255} }

// Faded returns c with opacity a, 0 to 1.
func Faded(c color.NRGBA, a float64) color.NRGBA {
	c.A = uint8(255*a + 0.5)
	return c
}
