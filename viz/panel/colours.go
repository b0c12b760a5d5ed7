package panel

import "image/color"

// The colours of the sheet: warm paper, dark-brown ink, rust for what is
// chosen, a soft red for what is at fault. Functions, so that nothing can
// change them.

// Paper is the sheet that controls stand on.
func Paper() color.NRGBA { return color.NRGBA{247, 241, 228, 255} }

// Slip is a lighter paper: entries, tooltips, charts.
func Slip() color.NRGBA { return color.NRGBA{253, 250, 243, 255} }

// Ink is for text and firm lines.
func Ink() color.NRGBA { return color.NRGBA{58, 42, 30, 255} }

// SoftInk is for secondary text, 5 to 1 on paper.
func SoftInk() color.NRGBA { return color.NRGBA{108, 92, 78, 255} }

// Pencil is for the outlines of controls.
func Pencil() color.NRGBA { return color.NRGBA{158, 142, 124, 255} }

// Hair is for rules and grid lines.
func Hair() color.NRGBA { return color.NRGBA{214, 203, 184, 255} }

// Rust is for what is chosen.
func Rust() color.NRGBA { return color.NRGBA{160, 74, 28, 255} }

// Blue is the second colour of charts.
func Blue() color.NRGBA { return color.NRGBA{36, 84, 140, 255} }

// Fault is for what was refused.
func Fault() color.NRGBA { return color.NRGBA{158, 30, 24, 255} }

// hover is laid over a control under the pointer, pressed over a held one.
func hover() color.NRGBA   { return color.NRGBA{58, 42, 30, 14} }
func pressed() color.NRGBA { return color.NRGBA{58, 42, 30, 34} }

// asleep is the ink of what cannot be used now.
func asleep() color.NRGBA { return color.NRGBA{176, 164, 148, 255} }
