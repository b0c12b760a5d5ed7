package team

import "sync"

// Pool keeps buffers for reuse, by size class. Its zero value is empty.
type Pool struct {
	mu   sync.Mutex
	free map[int][][]float64
}

// class rounds n up to 2^a or 3 2^a.
func class(n int) int {
	c := 64
	for c < n {
		if c+c/2 >= n {
			return c + c/2
		}
		c *= 2
	}
	return c
}

// Get returns a buffer of n values, which may hold anything.
func (p *Pool) Get(n int) []float64 {
	c := class(n)
	p.mu.Lock()
	list := p.free[c]
	if len(list) == 0 {
		p.mu.Unlock()
		return make([]float64, n, c)
	}
	b := list[len(list)-1][:n]
	p.free[c] = list[:len(list)-1]
	p.mu.Unlock()
	return b
}

// Put gives a buffer back.
func (p *Pool) Put(b []float64) {
	p.mu.Lock()
	if p.free == nil {
		p.free = map[int][][]float64{}
	}
	p.free[cap(b)] = append(p.free[cap(b)], b)
	p.mu.Unlock()
}
