// Package cases speaks lutherie: it reads a case file, checks it and turns it
// into the plan, the surfaces and the forces of the mechanical model.
//
// A case file is TOML with its tables beside it as CSV. Bare numbers are mm,
// N, MPa, kg/m³, Hz and degrees; a string may carry its own unit. A case may
// start from another one (`base`) and say only what differs.
//
// # From file to case
//
//   - parse.go reads one TOML file into a tree whose every value remembers its
//     file and line (locate.go finds them);
//   - merge.go lays a case over its base, table by table;
//   - decode.go fills [Case] from the tree; the tags of the struct fields hold
//     the key, the default, the admissible range and the choices;
//   - validate.go checks what no single key can know (contradictions);
//   - geometry.go fits the plan and the surfaces, once, and checks what needs
//     them: that feet, loads and gauges stand on wood, and that strings fall from
//     the saddle if their angles follow from a path over the arch.
//
// Every fault is a [*FileError] naming file, line and key; [Faults] holds all
// of them in the order of the files and lines.
//
// # Tags of the case structs
//
//	toml     the key
//	default  the value when the key is absent, as it would be written
//	want     admissible range: ">0", ">=0" or "lo..hi"
//	one      the admissible words
//	need     the key must be there; says what belongs there
//	along    what the first number of a station is: "fraction" or "mm"
//	table    what a CSV file holds: "contours" or "points"
package cases
