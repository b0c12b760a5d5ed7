package element

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestStiffnessKernels: the portable kernels, and those in assembly where the processor has
// them, give the forces C·B and the stiffness Bᵀ·C·B as three plain loops over the whole matrix C do,
// within the rounding of a sum of twelve products.
func TestStiffnessKernels(t *testing.T) {
	type kernels struct {
		name    string
		forces  func(t, rows *[numRows][18]float64, c *laws)
		product func(k *[324]float64, rows, t *[numRows][18]float64)
	}
	both := []kernels{{"portable", forcesGo, productGo}}
	if fast {
		both = append(both, kernels{"AVX2", forcesAVX2, productAVX2})
	}
	dice := rand.New(rand.NewPCG(1, 2))
	var rows [numRows][18]float64
	var c laws
	for i := range rows {
		for j := range rows[i] {
			rows[i][j] = dice.NormFloat64()
		}
	}
	for i := range c {
		c[i] = dice.NormFloat64()
	}
	forces := plainProduct(wholeLaw(&c), &rows)
	for _, with := range both {
		var got [numRows][18]float64
		with.forces(&got, &rows, &c)
		for i := range forces {
			for j, w := range forces[i] {
				if math.Abs(got[i][j]-w) > 1e-14 {
					t.Errorf("%s: force %d of freedom %d: got %.17g, want %.17g", with.name, i, j, got[i][j], w)
				}
			}
		}
		var k [324]float64
		with.product(&k, &rows, &forces)
		for i := range 18 {
			for j := i - i%6; j < 18; j++ { // the blocks of nodes from the diagonal on
				w := 0.0
				for r := range rows {
					w += rows[r][i] * forces[r][j]
				}
				if math.Abs(k[18*i+j]-w) > 1e-13 {
					t.Errorf("%s: stiffness of freedoms %d and %d: got %.17g, want %.17g", with.name, i, j, k[18*i+j], w)
				}
			}
		}
	}
}

// wholeLaw is the law as one matrix: its blocks stand on the diagonal, row by row in c, five by
// five, three by three twice, and one number.
func wholeLaw(c *laws) (out [numRows][numRows]float64) {
	from, next := 0, 0
	for _, size := range []int{5, 3, 3, 1} {
		for i := range size {
			copy(out[from+i][from:], c[next:next+size])
			next += size
		}
		from += size
	}
	return out
}

// plainProduct is the matrix times the rows.
func plainProduct(m [numRows][numRows]float64, rows *[numRows][18]float64) (out [numRows][18]float64) {
	for i := range out {
		for j := range out[i] {
			for r := range rows {
				out[i][j] += m[i][r] * rows[r][j]
			}
		}
	}
	return out
}
