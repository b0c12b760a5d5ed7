package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strconv"
	"strings"

	"archload/fem/sparse"
)

// problem is a matrix to be factorised, with what our analysis may know of it.
type problem struct {
	k    *sparse.Matrix
	mass *sparse.Matrix // or nil
	xy   [][2]float64   // plan coordinates of the nodes, mm
	last []int32        // nodes eliminated last
}

// save writes the matrix and the coordinates: NAME.mtx and NAME.xy.mtx.
func (p *problem) save(name string) error {
	if p.mass != nil {
		if err := write(name+".mass.mtx", p.mass.WriteMatrixMarket); err != nil {
			return err
		}
	}
	return errors.Join(
		write(name+".mtx", p.k.WriteMatrixMarket),
		write(name+".xy.mtx", func(w io.Writer) error {
			out := bufio.NewWriter(w)
			fmt.Fprintf(out, "%%%%MatrixMarket matrix array real general\n%d 2\n", len(p.xy))
			for c := range 2 {
				for _, q := range p.xy {
					fmt.Fprintf(out, "%v\n", q[c])
				}
			}
			return out.Flush()
		}))
}

func write(name string, content func(io.Writer) error) (err error) {
	f, err := os.Create(name)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, f.Close()) }()
	return content(f)
}

// load reads what save wrote, or a file of the same kind from elsewhere. Without
// coordinates the graph alone is used.
func load(name string) (*problem, error) {
	f, err := os.Open(name + ".mtx")
	if err != nil {
		return nil, err
	}
	defer f.Close()
	p := &problem{}
	if p.k, err = readBlocks(f); err != nil {
		return nil, fmt.Errorf("%s.mtx: %w", name, err)
	}
	g, err := os.Open(name + ".xy.mtx")
	if err != nil {
		return p, nil
	}
	defer g.Close()
	if p.xy, err = readPlan(g, p.k.Nodes()); err != nil {
		return nil, fmt.Errorf("%s.xy.mtx: %w", name, err)
	}
	return p, nil
}

// text reads the lines of a Matrix Market file after its head.
type text struct {
	*bufio.Scanner
	err error
}

func newText(r io.Reader, head string) *text {
	t := &text{Scanner: bufio.NewScanner(r)}
	if !t.Scan() || t.Text() != head {
		t.err = fmt.Errorf("want a file that begins with %q, found %q", head, t.Text())
	}
	return t
}

// fields splits the next line that is no comment.
func (t *text) fields() []string {
	for t.err == nil && t.Scan() {
		if line := t.Text(); !strings.HasPrefix(line, "%") {
			return strings.Fields(line)
		}
	}
	if t.err == nil {
		t.err = errors.Join(t.Err(), errors.New("the file ends too early"))
	}
	return []string{"", "", ""}
}

func (t *text) number(s string) int {
	n, err := strconv.Atoi(s)
	if t.err == nil && err != nil {
		t.err = err
	}
	return n
}

func (t *text) value(s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	if t.err == nil && err != nil {
		t.err = err
	}
	return v
}

const block = sparse.Block

// readBlocks reads a real symmetric matrix of whole nodes, rows ascending.
func readBlocks(r io.Reader) (*sparse.Matrix, error) {
	t := newText(r, "%%MatrixMarket matrix coordinate real symmetric")
	size := t.fields()
	if len(size) != 3 {
		return nil, fmt.Errorf("want rows, columns and entries, found %q", size)
	}
	n, entries := t.number(size[0]), t.number(size[2])
	if t.err == nil && n%block != 0 {
		t.err = fmt.Errorf("want whole nodes of %d rows, found %d rows", block, n)
	}
	var pairs [][]int32
	var values [][block * block]float64
	row, at := -1, map[int32]int{} // the present row of blocks, its blocks by column
	for range entries {
		f := t.fields()
		if len(f) != 3 {
			return nil, fmt.Errorf("want row, column and value, found %q", f)
		}
		i, j, v := t.number(f[0])-1, t.number(f[1])-1, t.value(f[2])
		if t.err != nil || j < 0 || j > i || i >= n || i/block < row {
			return nil, errors.Join(t.err, fmt.Errorf("want the lower triangle, rows ascending, found row %s, column %s", f[0], f[1]))
		}
		if i/block > row {
			row = i / block
			clear(at)
		}
		k, seen := at[int32(j/block)]
		if !seen {
			k = len(pairs)
			at[int32(j/block)] = k
			pairs = append(pairs, []int32{int32(row), int32(j / block)})
			values = append(values, [block * block]float64{})
		}
		values[k][i%block*block+j%block] = v
	}
	if t.err != nil {
		return nil, t.err
	}
	return blocksOf(n/block, pairs, values), nil
}

// blocksOf assembles a matrix from its blocks of the lower triangle.
func blocksOf(n int, pairs [][]int32, values [][block * block]float64) *sparse.Matrix {
	m := sparse.NewMatrix(n, pairs)
	for k, p := range pairs {
		b := values[k]
		if p[0] == p[1] {
			for i := range block {
				for j := range i {
					b[j*block+i] = b[i*block+j]
				}
			}
			m.Add(p[:1], b[:])
			continue
		}
		var pair [4 * block * block]float64 // rows of the first node, then of the second
		for i := range block {
			copy(pair[2*block*i+block:], b[block*i:][:block])
		}
		m.Add(p, pair[:])
	}
	return m
}

// readPlan reads the coordinates of n nodes.
func readPlan(r io.Reader, n int) ([][2]float64, error) {
	t := newText(r, "%%MatrixMarket matrix array real general")
	if size := t.fields(); !slices.Equal(size, []string{strconv.Itoa(n), "2"}) {
		return nil, errors.Join(t.err, fmt.Errorf("want %d rows and 2 columns, found %q", n, size))
	}
	xy := make([][2]float64, n)
	for c := range 2 {
		for i := range xy {
			xy[i][c] = t.value(t.fields()[0])
		}
	}
	return xy, t.err
}
