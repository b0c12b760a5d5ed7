package element

// shearRows sets rows to the mean transverse shear strain xz, yz as linear
// forms in the facet's degrees of freedom.
//
// Along an edge the gap g_ij = w_j - w_i + (b_i + b_j).(x_j - x_i)/2 is the
// shear strain times the length, exactly, for linear rotations b_x = theta_y,
// b_y = -theta_x. The constant part of the MITC3+ shear strain (Lee, Lee, Bathe
// 2014) is, in the directions r of edge 1-2 and s of edge 1-3,
// e_r = (2 g12 + g13 - g23)/3, e_s = (2 g13 + g12 + g23)/3; it equals the mean
// of the three discrete shear gap triangles (Bletzinger, Bischoff, Ramm 2000).
func (f *facet) shearRows(rows [][18]float64) {
	g12, g13, g23 := f.gapRow(0, 1), f.gapRow(0, 2), f.gapRow(1, 2)
	var er, es [9]float64
	for k := range er {
		er[k] = (2*g12[k] + g13[k] - g23[k]) / 3
		es[k] = (2*g13[k] + g12[k] + g23[k]) / 3
	}
	a, b := f.xy[1], f.xy[2] // relative to corner 1, which is the origin
	det := 2 * f.area
	xr, xs, yr, ys := b[1]/det, -a[1]/det, -b[0]/det, a[0]/det
	for k := range er {
		at := k/3*6 + 2 + k%3
		rows[0][at] += xr*er[k] + xs*es[k]
		rows[1][at] += yr*er[k] + ys*es[k]
	}
}

// gapRow returns w_j - w_i + (b_i + b_j).(x_j - x_i)/2, mm, over w and the rotations about x and y
// of each corner.
func (f *facet) gapRow(i, j int) (row [9]float64) {
	dx, dy := f.xy[j][0]-f.xy[i][0], f.xy[j][1]-f.xy[i][1]
	row[3*i], row[3*j] = -1, 1
	for _, n := range [2]int{i, j} {
		row[3*n+2] = dx / 2
		row[3*n+1] = -dy / 2
	}
	return row
}

// curvatureRows sets curv to the curvatures b_x,x, b_y,y and b_x,y + b_y,x and
// twist to b_x,y - b_y,x, all 1/mm and constant over the triangle.
func (f *facet) curvatureRows(curv [][18]float64, twist *[18]float64) {
	for i, g := range f.grad {
		rx, ry := 6*i+3, 6*i+4
		curv[0][ry] = g[0]
		curv[1][rx] = -g[1]
		curv[2][ry] = g[1]
		curv[2][rx] = -g[0]
		twist[ry] = g[1]
		twist[rx] = g[0]
	}
}
