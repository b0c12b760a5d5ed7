package cases

import "sync"

// circles are the triangles under the circle about each triangle's centre, over
// which the strength used is averaged; nil where it would cross an edge. They
// are laid when first asked for and stay while the mesh does.
type circles struct {
	once sync.Once
	tris [][]int32
}

// of lays the circles of a top.
func (c *circles) of(p *Top) [][]int32 {
	c.once.Do(func() {
		shape := circle()
		c.tris = make([][]int32, len(p.Built.Mesh.Tris))
		p.each(len(c.tris), func(i int) { c.tris[i], _ = p.Built.circleAt(i, shape) })
	})
	return c.tris
}

// each calls do(0) to do(n-1), shared between the workers. The calls must not
// depend on each other.
func (p *Top) each(n int, do func(i int)) {
	parts := max(1, p.workers)
	var wg sync.WaitGroup
	for w := range parts {
		wg.Go(func() {
			for i := w * n / parts; i < (w+1)*n/parts; i++ {
				do(i)
			}
		})
	}
	wg.Wait()
}
