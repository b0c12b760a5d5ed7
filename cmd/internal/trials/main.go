// Command trials draws designs at random and wants what must hold of every one of
// them, for as long as it is left to run:
//
//	go run ./cmd/internal/trials -for 1h -seed 1
//
// A mirrored design gives mirrored answers, one written in inches the same; twice
// the force moves twice as far where the foot fits tight, and forces and moduli
// that grow together move nothing; stiffer wood or a thicker plate stores less
// work. It prints the worst deviation of each law and where it was; a law that is
// broken is named with the seed that draws the design, and the exit status is 1.
package main

import (
	"context"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
	"time"
)

func main() {
	if !run() {
		os.Exit(1)
	}
}

// run tries designs for as long as the flags say, and tells whether every law
// held.
func run() bool {
	long := flag.Duration("for", time.Minute, "run this long")
	seed := flag.Uint64("seed", 1, "of the first design; each further one is the next")
	refine := flag.Float64("refine", 0.4, "divide the triangles' size by this")
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	ctx, cancel := context.WithTimeout(ctx, *long)
	defer cancel()
	t := newTally()
	for s := *seed; ctx.Err() == nil; s++ {
		t.try(ctx, s, *refine)
	}
	t.report(os.Stdout)
	return t.broken == 0
}

// tally counts designs and keeps the worst of each law.
type tally struct {
	designs, refused, unanswered int
	tried                        map[string]int
	worst                        map[string]float64
	where                        map[string]string
	told                         []string
	broken                       int
}

func newTally() *tally {
	return &tally{tried: map[string]int{}, worst: map[string]float64{}, where: map[string]string{}}
}

// try holds every law to the design that a seed draws.
func (t *tally) try(ctx context.Context, seed uint64, refine float64) {
	t.designs++
	c, err := drawn(seed, inMM)
	if err != nil {
		t.refused++
		return
	}
	a, err := solve(ctx, c, refine)
	if err != nil {
		t.unanswered++
	}
	for _, l := range laws() {
		if !l.of(c) || ctx.Err() != nil {
			continue
		}
		off, words, otherErr := l.off(ctx, seed, a, refine)
		switch {
		case ctx.Err() != nil:
			return
		case (err == nil) != (otherErr == nil):
			t.count(l, seed, 2*l.most, fmt.Sprintf("one has no answer: %v, %v", err, otherErr))
		case err == nil:
			t.count(l, seed, off, words)
		}
	}
}

func (t *tally) count(l law, seed uint64, off float64, words string) {
	t.tried[l.name]++
	if off > t.worst[l.name] {
		t.worst[l.name], t.where[l.name] = off, fmt.Sprintf("seed %d: %s", seed, words)
	}
	if !(off <= l.most) {
		t.broken++
		t.told = append(t.told, fmt.Sprintf("%s, seed %d: off by %.2g, allowed %.2g: %s", l.name, seed, off, l.most, words))
	}
}

// report prints what was found.
func (t *tally) report(w io.Writer) {
	fmt.Fprintf(w, "%d designs: %d refused by the reader, %d without an answer\n", t.designs, t.refused, t.unanswered)
	for _, l := range laws() {
		fmt.Fprintf(w, "%-24s %6d times, worst %8.2g of %g allowed; %s\n", l.name, t.tried[l.name], t.worst[l.name], l.most, t.where[l.name])
	}
	for _, s := range t.told {
		fmt.Fprintln(w, "BROKEN:", s)
	}
}
