// Package cases is the case file: what a maker may write, with the defaults
// filled in, checked as far as no geometry is needed.
//
// A case is TOML with its tables beside it as CSV or drawings. It may start
// from another one (base) and say only what differs; bundled cases can be named
// instead of a path.
//
//	Open ─ merge.go: the file laid over its bases
//	     ─ package tree fills [Case] by the tags of its fields
//	     ─ drawn.go, tables.go, wood.go, profile.go, notes.go: keys that read themselves
//	     ─ validate*.go: what no single key can know (contradictions)
//
// case.go and bridgecase.go are the schema: read them first. path.go and
// strings.go turn the way of the strings into forces; relief.go is the shape of a
// relieved foot. change.go sets keys by their path, as archload series and the
// window do; resolved.go lists every key with its value; copy.go gives a bundled
// case with all its files.
//
// Besides the tags of package tree, fields have
//
//	along    what the first number of a station is: "fraction" or "mm"
//	table    what a CSV file holds: "contours", "templates" or "points"
//	column   another name of its column height
//	eg       an example, as it would be written, with ' for "
//
// Package keylist lists every key with what the comment above its field says of
// it (unit, meaning, what it is measured from, default): makers read it.
//
// Load makes a [Case]; later stages never change it. The stages above:
//
//	cases/design   geometry, model, prepared top, solution
//	cases/answer   report, table of quantities
//	cases/study    compare, ranges, relief trial, series
//	cases/live     a design under the hand
//	cases/keylist  every key explained
//	cases/say      sentences
//	cases/lesson   lessons and their check
//	cases/verify   the published checks
package cases
