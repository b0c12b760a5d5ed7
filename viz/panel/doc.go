// Package panel lays out the flat part of the window: text, buttons, sliders,
// number fields, tooltips and small charts. It knows no display: it takes an
// Input, keeps which control is held, and gives a List of triangles that any
// painter can draw.
package panel
