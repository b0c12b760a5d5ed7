package sparse

import "fmt"

const (
	stepRows   = 24 // rows solved before their panels are applied: 3 panels, 4 nodes
	stepPanels = stepRows / panelRows
	stepNodes  = stepRows / Block
)

// roundUp returns n rounded up to whole steps.
func roundUp(n int) int { return (n + stepRows - 1) / stepRows * stepRows }

// Solve replaces x, 6 values for each node, by K⁻¹ x. It panics if the length is
// wrong.
func (f *Factor) Solve(x []float64) {
	if len(x) != Block*f.a.n {
		panic(fmt.Sprintf("sparse: Solve: want %d values, found %d", Block*f.a.n, len(x)))
	}
	y := make([]float64, len(x)) // x in the order of elimination
	for p, v := range f.a.order {
		copy(y[Block*p:][:Block], x[Block*v:])
	}
	piv := make([]float64, roundUp(Block*f.a.sizes.pivots))
	row := make([]float64, roundUp(Block*f.a.sizes.rows))
	for k := range f.a.fronts {
		f.forward(f.data(int32(k)), y, piv, row)
	}
	f.turn(y, 1)
	for k := len(f.a.fronts) - 1; k >= 0; k-- {
		f.backward(f.data(int32(k)), y, piv, row)
	}
	for p, v := range f.a.order {
		copy(x[Block*v:][:Block], y[Block*p:])
	}
}

// forward solves with the front's part of L.
func (f *Factor) forward(fd frontData, y, piv, row []float64) {
	k := fd.k()
	own := y[Block*int(fd.first):][:k]
	piv, row = piv[:roundUp(k)], row[:roundUp(fd.r())]
	clear(piv[copy(piv, own):])
	f.forwardTri(fd, piv)
	copy(own, piv)
	clear(row)
	for p := range panels(fd.r()) {
		f.kern.Gemv(row[panelRows*p:], fd.s[panelRows*k*p:], piv[:k])
	}
	for i, p := range fd.rows {
		dst, src := y[Block*p:][:Block], row[Block*i:][:Block]
		for d, v := range src {
			dst[d] += v
		}
	}
}

// forwardTri solves L z = z in steps of four nodes. After each node its columns
// are applied to the whole step, itself included (above the diagonal they hold
// zeros), and its own values put back.
func (f *Factor) forwardTri(fd frontData, z []float64) {
	tri := f.tri[blockLen*int(fd.first):]
	for i0 := 0; i0 < len(z); i0 += stepRows {
		p0, p1 := i0/panelRows, min(i0/panelRows+stepPanels, panels(fd.k()))
		for p := p0; p < p1; p++ {
			f.kern.Gemv(z[panelRows*p:], fd.d[triOff(p):], z[:i0])
		}
		for j := i0 / Block; j < min(i0/Block+stepNodes, int(fd.pivots)); j++ {
			own := z[Block*j:][:Block]
			forward6(own, tri[blockLen*j:])
			solved := [Block]float64(own)
			for p := Block * (j + 1) / panelRows; p < p1; p++ {
				f.kern.Gemv(z[panelRows*p:], fd.d[triOff(p)+tileLen*j:], solved[:])
			}
			copy(own, solved[:])
		}
	}
}

// forward6 solves with the 6 x 6 factor of a node.
func forward6(z, tri []float64) {
	z = z[:Block]
	for i := range z {
		t := tri[Block*i:][:Block]
		for c := range i {
			z[i] -= t[c] * z[c]
		}
		z[i] *= t[i]
	}
}

// fetchAhead is how many values of the front met next are asked for while one is worked on.
const fetchAhead = 1 << 13

// ahead is what is asked for while a front is worked on, and how much of it with each panel: the end of the front
// before it. Fronts are met from the last to the first, which no processor foresees, and all at once would be more than
// can be on its way.
func (f *Factor) ahead(fd frontData) (next []float64, step int) {
	if fd.number > 0 {
		next = f.parts[fd.number-1]
	}
	next = next[max(len(next)-fetchAhead, 0):]
	return next, panelRows * (len(next)/panelRows/(panels(fd.r())+1) + 1)
}

// backward solves with the transpose of the front's part of L.
func (f *Factor) backward(fd frontData, y, piv, row []float64) {
	k := fd.k()
	own := y[Block*int(fd.first):][:k]
	piv, row = piv[:roundUp(k)], row[:roundUp(fd.r())]
	clear(piv[copy(piv, own):])
	for i, p := range fd.rows {
		copy(row[Block*i:][:Block], y[Block*p:])
	}
	clear(row[fd.r():])
	next, step := f.ahead(fd)
	for p := range panels(fd.r()) {
		some := min(step, len(next))
		f.kern.Prefetch(next[:some])
		next = next[some:]
		f.kern.GemvT(piv[:k], fd.s[panelRows*k*p:], row[panelRows*p:])
	}
	f.kern.Prefetch(next)
	f.backwardTri(fd, piv)
	copy(own, piv)
}

// backwardTri solves Lᵀ z = z in steps of four nodes. Inside a step the rows not
// yet solved count as zero.
func (f *Factor) backwardTri(fd frontData, z []float64) {
	tri := f.tri[blockLen*int(fd.first):]
	for i0 := len(z) - stepRows; i0 >= 0; i0 -= stepRows {
		p0, p1 := i0/panelRows, min(i0/panelRows+stepPanels, panels(fd.k()))
		var solved [stepRows]float64
		for j := min(i0/Block+stepNodes, int(fd.pivots)) - 1; j >= i0/Block; j-- {
			own := z[Block*j:][:Block]
			for p := Block * (j + 1) / panelRows; p < p1; p++ {
				f.kern.GemvT(own, fd.d[triOff(p)+tileLen*j:], solved[panelRows*(p-p0):])
			}
			backward6(own, tri[blockLen*j:])
			copy(solved[Block*j-i0:], own)
		}
		for p := p0; p < p1; p++ {
			f.kern.GemvT(z[:i0], fd.d[triOff(p):], solved[panelRows*(p-p0):])
		}
	}
}

// backward6 solves with the transposed 6 x 6 factor of a node.
func backward6(z, tri []float64) {
	z = z[:Block]
	for i := Block - 1; i >= 0; i-- {
		for r := i + 1; r < Block; r++ {
			z[i] -= tri[Block*r+i] * z[r]
		}
		z[i] *= tri[Block*i+i]
	}
}
