// Package canvas is the page on which pictures are drawn, and how it becomes a
// file. It knows lengths in points (1/72 inch, x to the right, y up), pens,
// letters, axes, captions and keys; of plates, loads and mechanics it knows
// nothing.
//
// A Page remembers where its text stands, so that later text finds a free place
// beside a mark (Beside) or along a line (PlaceAlong). Text is never smaller than
// 8 points when the page is printed at its own size.
//
// A Picture is a page of a fixed size with what draws it; it is written as PNG
// or SVG with the same bytes each time. SVG and PDFPage are canvases of gonum's
// plot/vg; text is drawn as outlines, because a viewer without the font would
// set it wider.
//
// The files from below: palette, page (places, text), pen, polyline, block,
// frame, tag, beside, key, axis, caption; glyphs, svg, svgcompact, pdf; picture.
package canvas
