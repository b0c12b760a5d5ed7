package study

import (
	"context"
	"sync"
)

// Run answers points (1-based, as Mine lists them) on so many workers, each
// with one solve at a time, and hands every row to emit as it is done, one at a
// time. It ends early if the context does or if emit fails.
func (s *Series) Run(ctx context.Context, points []int, workers int, emit func(SeriesRow) error) error {
	ctx, stop := context.WithCancelCause(ctx)
	defer stop(nil)
	r := &seriesRun{emit: emit, stop: stop}
	jobs := make(chan []int)
	var wg sync.WaitGroup
	for range max(1, workers) {
		wg.Go(func() {
			w := &seriesSolver{s: s}
			for job := range jobs {
				r.do(ctx, w, job)
			}
		})
	}
	for _, job := range s.jobs(points, workers) {
		select {
		case jobs <- job:
		case <-ctx.Done():
		}
	}
	close(jobs)
	wg.Wait()
	return context.Cause(ctx)
}

// seriesRun is what the workers of one run share.
type seriesRun struct {
	mu   sync.Mutex
	emit func(SeriesRow) error // under mu
	stop context.CancelCauseFunc
}

// do answers the points of one job until the run is stopped.
func (r *seriesRun) do(ctx context.Context, w *seriesSolver, job []int) {
	for _, p := range job {
		row, err := w.row(ctx, p-1)
		if err == nil {
			err = r.hand(ctx, row)
		}
		if err != nil {
			r.stop(err)
			return
		}
	}
}

// hand gives a row away, unless the run has been stopped meanwhile.
func (r *seriesRun) hand(ctx context.Context, row SeriesRow) error {
	r.mu.Lock()
	defer r.mu.Unlock()
	if err := context.Cause(ctx); err != nil {
		return err
	}
	return r.emit(row)
}

// jobs divides points so that one top's stay with one worker, unless there are
// fewer tops than would keep all workers busy to the end.
func (s *Series) jobs(points []int, workers int) [][]int {
	var groups [][]int
	for k, p := range points {
		if k == 0 || s.group[p-1] != s.group[points[k-1]-1] {
			groups = append(groups, nil)
		}
		groups[len(groups)-1] = append(groups[len(groups)-1], p)
	}
	if workers < 2 || len(groups) >= 4*workers {
		return groups
	}
	var out [][]int
	for _, g := range groups {
		n := min(workers, len(g))
		for i := range n {
			out = append(out, g[i*len(g)/n:(i+1)*len(g)/n])
		}
	}
	return out
}
