package main

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"
)

// Bounds of a package, tests aside.
const (
	mostLines = 4000
	mostFiles = 30
	mostTypes = 40 // exported
	backShare = 10 // of so many uses between files, less than one runs back
)

// count is one number of a room, marked if it passes its bound.
func count(n int, passed bool) string {
	if passed {
		return fmt.Sprintf("%d!", n)
	}
	return fmt.Sprintf("%d ", n)
}

// table prints a line for every room and tells whether any passes a bound.
func table(w io.Writer, rooms []room) (crowded bool) {
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(t, "lines \tfiles \texported types \tuses \tback \t package")
	for _, r := range rooms {
		back := len(r.uses.back(order(r.uses.users())))
		passed := []bool{r.lines > mostLines, r.files > mostFiles, r.types > mostTypes, back > 0 && back*backShare >= len(r.uses.of)}
		fmt.Fprintf(t, "%s\t%s\t%s\t%d \t%s\t %s\n", count(r.lines, passed[0]), count(r.files, passed[1]),
			count(r.types, passed[2]), len(r.uses.of), count(back, passed[3]), r.path)
		for _, p := range passed {
			crowded = crowded || p
		}
	}
	t.Flush() // to a terminal or a buffer
	fmt.Fprintf(w, "Bounds (passed where marked !): %d lines, %d files, %d exported types; fewer than one in %d of the uses\n"+
		"between the files of a package run back up.\n", mostLines, mostFiles, mostTypes, backShare)
	return crowded
}

// explain prints the files of a room in the order found, lowest first, and every use
// that runs back up with the names that cause it.
func (r room) explain(w io.Writer) {
	line := order(r.uses.users())
	back := r.uses.back(line)
	fmt.Fprintf(w, "%s: %d uses between files, %d run back up. The files, lowest first:\n", r.path, len(r.uses.of), len(back))
	for _, file := range line {
		fmt.Fprintf(w, "\t%s\n", r.uses.files[file])
	}
	for _, pair := range back {
		fmt.Fprintf(w, "%s uses %s above it: %s\n", r.uses.files[pair[0]], r.uses.files[pair[1]], strings.Join(r.uses.of[pair], " "))
	}
}
