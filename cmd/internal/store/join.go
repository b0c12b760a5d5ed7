package store

import (
	"fmt"
	"io/fs"
	"path/filepath"
	"strings"

	"archload/cases/study"
	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"
)

// Join puts the parts of a series that lie in some folders together in dir.
// What lies there of another series is left alone, and refused.
func Join(d *disk.Disk, dir string, dirs []string) (*Store, error) {
	var names []string
	for _, from := range dirs {
		found, err := filepath.Glob(filepath.Join(from, "part-*-of-*.jsonl"))
		if err != nil || len(found) == 0 {
			return nil, shell.Usagef("--join: want a folder with parts of a series (part-1-of-2.jsonl ...), found none in %s", from)
		}
		names = append(names, found...)
	}
	j := joint{disk: d, parts: map[int]part{}}
	for _, name := range names {
		if err := j.add(name); err != nil {
			return nil, err
		}
	}
	st, err := j.whole()
	if err != nil {
		return nil, err
	}
	if err := disk.Make(dir); err != nil {
		return nil, err
	}
	st.Stem = filepath.Join(dir, storeName(st.Head))
	if _, _, err := st.earlier(); err != nil {
		return nil, err
	}
	return st, st.Finish()
}

// joint is what is known of a series while its parts are read.
type joint struct {
	disk  *disk.Disk
	first string // name of the first part
	head  study.SeriesHead
	parts map[int]part // by number
}

// part is one part as it was read.
type part struct {
	name string
	rows []study.SeriesRow
}

// add reads a part, which must be of the series of those before it.
func (j *joint) add(name string) error {
	data, err := fs.ReadFile(j.disk, filepath.ToSlash(name))
	if err != nil {
		return fmt.Errorf("cannot read %s: %w", name, disk.Cause(err))
	}
	head, rows, _, err := study.ReadSeries(name, data)
	switch {
	case err != nil:
		return err
	case head == nil:
		return shell.Usagef("%s: want a part of a series, found no head", name)
	case j.first == "":
		j.first, j.head = name, *head
	case !head.Same(j.head):
		return shell.Usagef("%s is of another series than %s (%s)", name, j.first, head.Unlike(j.head))
	case head.Part[1] != j.head.Part[1]:
		return shell.Usagef("%s is one of %d parts, %s one of %d", name, head.Part[1], j.first, j.head.Part[1])
	}
	n := head.Part[0]
	if other, twice := j.parts[n]; twice {
		return shell.Usagef("part %d/%d is given twice, in %s and in %s; want each part once", n, head.Part[1], other.name, name)
	}
	j.parts[n] = part{name, rows}
	return nil
}

// whole is the series, which must have every point once.
func (j *joint) whole() (*Store, error) {
	st := &Store{disk: j.disk, Head: j.head}
	from := map[int]string{}
	for n := range j.head.Part[1] {
		p := j.parts[n+1]
		for _, r := range p.rows {
			if other, twice := from[r.Point]; twice {
				return nil, shell.Usagef("point %d is in %s and in %s; want each point once", r.Point, other, p.name)
			}
			from[r.Point] = p.name
		}
		st.Rows = append(st.Rows, p.rows...)
	}
	if n := st.Head.Points - len(st.Rows); n > 0 {
		return nil, shell.Usagef("%d of %d points are missing: %s", n, st.Head.Points, j.lacking())
	}
	st.Head.Part, st.Head.Mine = [2]int{1, 1}, st.Head.Points
	return st, nil
}

// mostNamed is how many parts a message names.
const mostNamed = 8

// lacking names the first parts that hold no or too few points.
func (j *joint) lacking() string {
	var out []string
	short := 0
	n, points := j.head.Part[1], j.head.Points
	for i := 1; i <= n; i++ {
		want := i*points/n - (i-1)*points/n
		if have := len(j.parts[i].rows); have < want {
			if short++; short <= mostNamed {
				out = append(out, fmt.Sprintf("part %d/%d has %d of %d", i, n, have, want))
			}
		}
	}
	if short > mostNamed {
		out = append(out, fmt.Sprintf("and %d parts more", short-mostNamed))
	}
	return strings.Join(out, ", ")
}
