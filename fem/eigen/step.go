package eigen

// fresh appends a block of new start vectors, smoothed once by the operator and
// orthogonal to the basis.
func (l *lanczos) fresh() {
	w, z := l.octet(l.size), l.mv
	l.start(w, z)
	l.from = l.size
	l.orthogonalise(w, z)
	l.normalise(w, z, l.largest())
	l.size++
}

// step takes the last block of the basis through the operator and appends what is new
// in the result.
func (l *lanczos) step() {
	j := l.size - 1
	w := l.octet(l.size)
	copy(w, l.mv)
	l.solve.Solve(w)
	a := l.alg.Dots(l.mv, w)
	l.alg.Subtract(w, l.octet(j), a)
	if l.from < j {
		l.alg.Subtract(w, l.octets(l.from, j), l.coupling(l.from, j))
	}
	l.addDiagonal(j, a)
	l.addDiagonal(j, l.orthogonalise(w, l.mv))
	b := l.normalise(w, l.mv, l.largest())
	if l.size < l.most {
		l.setBelow(j, b)
	}
	l.ritz.below = b
	l.from = j
	l.size++
	l.steps++
}
