// Package store keeps the rows of a series on the disk, so that an interrupted
// one goes on and parts from several machines become one.
package store

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"archload/cases/study"

	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"
	"archload/cmd/internal/spreadsheet"
)

// Store keeps a series' rows in two files: lines of JSON, from which an
// interrupted series goes on, and a table that follows them.
type Store struct {
	disk *disk.Disk
	Stem string // of the files, without their endings
	Head study.SeriesHead
	Rows []study.SeriesRow // those that are done

	lines *os.File
	table *os.File
}

// storeName names the files of a series or of one of its parts.
func storeName(h study.SeriesHead) string {
	if h.Part[1] == 1 {
		return "series"
	}
	return fmt.Sprintf("part-%d-of-%d", h.Part[0], h.Part[1])
}

// Open opens or begins the files of a series. What an interruption left
// half-written is put right; the rows of another series are refused.
func Open(d *disk.Disk, dir string, h study.SeriesHead) (*Store, error) {
	st := &Store{disk: d, Stem: filepath.Join(dir, storeName(h)), Head: h}
	rows, whole, err := st.earlier()
	if err != nil {
		return nil, err
	}
	st.Rows = rows
	name := st.Stem + ".jsonl"
	if err := st.write(!whole); err != nil {
		return nil, err
	}
	if st.lines, err = os.OpenFile(name, os.O_WRONLY|os.O_APPEND, 0); err == nil {
		st.table, err = os.OpenFile(st.Stem+".csv", os.O_WRONLY|os.O_APPEND, 0)
	}
	if err != nil {
		return nil, fmt.Errorf("cannot write %s: %w", st.Stem, errors.Join(disk.Cause(err), st.Close()))
	}
	return st, nil
}

// earlier reads the rows that are there already; those of another series are
// refused, since what is written takes their place.
func (st *Store) earlier() (rows []study.SeriesRow, whole bool, err error) {
	name := st.Stem + ".jsonl"
	data, err := os.ReadFile(name)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return nil, false, fmt.Errorf("cannot read %s: %w", name, disk.Cause(err))
	}
	head, rows, whole, err := study.ReadSeries(name, data)
	if err != nil {
		return nil, false, err
	}
	if head != nil && (!head.Same(st.Head) || head.Part != st.Head.Part) {
		return nil, false, shell.Usagef("%s holds the rows of another series (%s); want another folder with -o, or remove it", name, head.Unlike(st.Head))
	}
	return rows, whole, nil
}

// write makes the table anew, and the lines if they need it.
func (st *Store) write(lines bool) error {
	if lines {
		if err := st.disk.Write(st.Stem+".jsonl", st.writeLines); err != nil {
			return err
		}
	}
	return st.disk.Write(st.Stem+".csv", st.writeTable)
}

func (st *Store) writeLines(w io.Writer) error {
	line, err := st.Head.HeadLine()
	if err != nil {
		return err
	}
	if _, err := w.Write(line); err != nil {
		return err
	}
	for _, r := range st.Rows {
		if line, err = st.Head.Line(r); err != nil {
			return err
		}
		if _, err := w.Write(line); err != nil {
			return err
		}
	}
	return nil
}

func (st *Store) writeTable(w io.Writer) error {
	rows := [][]string{st.Head.Columns()}
	for _, r := range st.Rows {
		rows = append(rows, st.Head.Cells(r))
	}
	return spreadsheet.Write(w, rows...)
}

// Missing lists the points that have no row yet.
func (st *Store) Missing(points []int) []int {
	have := map[int]bool{}
	for _, r := range st.Rows {
		have[r.Point] = true
	}
	return slices.DeleteFunc(slices.Clone(points), func(p int) bool { return have[p] })
}

// Add puts a row to both files, down to the disk.
func (st *Store) Add(r study.SeriesRow) error {
	line, err := st.Head.Line(r)
	if err != nil {
		return err
	}
	var cells bytes.Buffer
	if err := spreadsheet.Write(&cells, st.Head.Cells(r)); err != nil {
		return err
	}
	if err := put(st.lines, line); err != nil {
		return err
	}
	st.Rows = append(st.Rows, r)
	return put(st.table, cells.Bytes())
}

func put(f *os.File, data []byte) error {
	if _, err := f.Write(data); err != nil {
		return fmt.Errorf("cannot write %s: %w", f.Name(), disk.Cause(err))
	}
	if err := f.Sync(); err != nil {
		return fmt.Errorf("cannot write %s: %w", f.Name(), disk.Cause(err))
	}
	return nil
}

// Finish puts the rows in the order of the points, so that a series is the same
// to the byte however it came about.
func (st *Store) Finish() error {
	slices.SortFunc(st.Rows, func(a, b study.SeriesRow) int { return cmp.Compare(a.Point, b.Point) })
	return st.write(true)
}

// Close closes the files.
func (st *Store) Close() error {
	var err error
	for _, f := range []*os.File{st.lines, st.table} {
		if f != nil {
			err = errors.Join(err, f.Close())
		}
	}
	return err
}
