package sparse

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
)

// WriteMatrixMarket writes m as text that other programs read: the coordinate
// format of the Matrix Market, real and symmetric, which keeps the lower triangle
// and counts from 1. Rows ascend, and columns ascend in a row. Every value of the
// pattern is written, zeros too, with as many digits as it takes to read the same
// number back. Source: R. F. Boisvert, R. Pozo, K. A. Remington, The Matrix Market
// Exchange Formats: Initial Design, NISTIR 5935 (1996), from memory.
func (m *Matrix) WriteMatrixMarket(w io.Writer) error {
	out := bufio.NewWriterSize(w, 1<<16)
	diagonals := m.n * Block * (Block + 1) / 2
	entries := (len(m.col)-m.n)*blockLen + diagonals
	_, err := fmt.Fprintf(out, "%%%%MatrixMarket matrix coordinate real symmetric\n%% blocks of %d x %d\n%d %d %d\n",
		Block, Block, Block*m.n, Block*m.n, entries)
	var line []byte
	for row := 0; row < Block*m.n && err == nil; row++ {
		for b := m.ptr[row/Block]; b < m.ptr[row/Block+1] && err == nil; b++ {
			for c, v := range m.val[int(b)*blockLen+row%Block*Block:][:Block] {
				col := Block*int(m.col[b]) + c
				if col > row {
					break
				}
				line = strconv.AppendInt(line[:0], int64(row+1), 10)
				line = strconv.AppendInt(append(line, ' '), int64(col+1), 10)
				line = strconv.AppendFloat(append(line, ' '), v, 'g', -1, 64)
				_, err = out.Write(append(line, '\n'))
			}
		}
	}
	if err != nil {
		return err
	}
	return out.Flush()
}
