// Package tree reads what people type: TOML files, tables as CSV, quantities
// with their units. It knows nothing of wood or strings; the structs that it
// fills, and the words of their keys, belong to its callers.
//
// # From bytes to a filled struct
//
//	Source ─Parse→ Node ─Overlay→ Node ─Decoder.Table→ a struct with tags
//	                                  └ FaultLog: every fault, and where each key stood
//
// Read the files in this order: faults.go and parse.go (what a place, a source
// and a node are), bounds.go and encoding.go (what is refused or turned before
// it is parsed), locate.go (the line of each key), overlay.go (a file laid over
// its base), units.go, decode.go, csv.go.
//
// Every value remembers its file and line, so that a fault found in any later
// stage can be told there: [FileError] names file, line and key, [Faults] holds
// all of them in the order of the files and lines. At most a hundred are told.
//
// # Tags of the structs
//
//	toml     the key
//	default  the value when the key is absent, as it would be written
//	want     admissible range: ">0", ">=0" or "lo..hi"
//	one      the admissible words
//	most     how many entries a list or a table of tables may have
//	need     the key must be there; says what belongs there
//
// A type that admits more than one kind of value reads itself: its DecodeNode is called (decode.go).
//
// # Units
//
// Bare numbers are mm, N, MPa, kg/m³, kg/m, N/mm, Hz and degrees; a string may
// carry its own unit ("0.5 in", "25 1/2 in", "11 lb"). The factors are exact by
// definition: international yard and pound agreement of 1959, standard gravity
// of the 3rd CGPM, 1901. A column of a table has its unit behind the last
// underscore of its head (x_mm, height_in). Tables may be parted by commas, or
// by semicolons or tabs with decimal commas; UTF-16 is known by its mark.
//
// Sources of the formats: TOML 1.0.0 (toml.io); RFC 4180 for CSV as far as
// spreadsheets keep to it.
package tree
