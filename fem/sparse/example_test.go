package sparse_test

import (
	"fmt"

	"archload/fem/sparse"
)

// Two nodes joined by springs of 3 N/mm, the first also held by springs of 6 N/mm;
// 1 N pulls the second along y: 1/6 mm and 1/6 + 1/3 mm.
func Example() {
	m := sparse.NewMatrix(2, [][]int32{{0, 1}})
	joint, held := make([]float64, 144), make([]float64, 36)
	for d := range sparse.Block {
		held[7*d] = 6
		joint[12*d+d], joint[12*(d+6)+d+6] = 3, 3
		joint[12*d+d+6], joint[12*(d+6)+d] = -3, -3
	}
	m.Add([]int32{0, 1}, joint)
	m.Add([]int32{0}, held)
	a, err := sparse.Analyse(m, nil, []int32{1})
	if err != nil {
		fmt.Println(err)
		return
	}
	f, err := sparse.Factorize(m, a, 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	x := make([]float64, 12)
	x[7] = 1
	f.Solve(x)
	c := f.Compliance([]sparse.Column{{Dofs: []int32{7}, Vals: []float64{1}}})
	fmt.Printf("%.6f mm, %.6f mm; compliance %.6f mm/N\n", x[1], x[7], c[0])
	// Output: 0.166667 mm, 0.500000 mm; compliance 0.500000 mm/N
}
