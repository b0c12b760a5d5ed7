// Command trials draws designs at random and wants what must hold of every one of
// them, for as long as it is left to run:
//
//	go run ./cmd/internal/trials -for 1h -seed 1
//
// A mirrored design gives mirrored answers, one written in inches the same; twice
// the force moves twice as far where the foot fits tight, and forces and moduli
// that grow together move nothing; stiffer wood or a thicker plate under a tight foot stores less
// work. Beside each design some cases are tried whose text was changed at random
// (mutants): they must be refused in clear words at a line that is there, or
// answered. It prints the worst deviation of each law and where it was; a law that
// is broken is named with the seed that draws the design or the mutant, and the
// exit status is 1. Several processors are used with -workers; -tell prints every
// seed before it is tried, for the one that ends the program.
package main

import (
	"context"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"
	"sync"
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
	mutants := flag.Int("mutants", 20, "changed texts beside each design; every fifth sound one is solved")
	workers := flag.Int("workers", 1, "designs tried at a time")
	told := flag.Bool("tell", false, "print each seed before it is tried")
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	ctx, cancel := context.WithTimeout(ctx, *long)
	defer cancel()
	b, err := newBreeder()
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return false
	}
	all := newTally()
	var lock sync.Mutex
	var team sync.WaitGroup
	for w := range *workers {
		team.Go(func() {
			t := newTally()
			for s := *seed + uint64(w); ctx.Err() == nil; s += uint64(*workers) {
				if *told {
					fmt.Println("seed", s)
				}
				t.try(ctx, s, *refine)
				for k := range *mutants {
					t.breed(ctx, b, uint64(*mutants)*s+uint64(k))
				}
			}
			lock.Lock()
			defer lock.Unlock()
			all.add(t)
		})
	}
	team.Wait()
	all.report(os.Stdout)
	return all.broken == 0
}

// tally counts designs and keeps the worst of each law.
type tally struct {
	designs, refused, unanswered int
	mutants                      mutants
	tried                        map[string]int
	worst                        map[string]float64
	where                        map[string]string
	told                         []string
	broken                       int
}

// mutants counts changed texts and what became of them; the rest was sound and
// not solved.
type mutants struct{ all, refused, solved, unanswered, broken int }

func newTally() *tally {
	return &tally{tried: map[string]int{}, worst: map[string]float64{}, where: map[string]string{}}
}

// add takes in what another found.
func (t *tally) add(o *tally) {
	t.designs += o.designs
	t.refused += o.refused
	t.unanswered += o.unanswered
	t.mutants.all += o.mutants.all
	t.mutants.refused += o.mutants.refused
	t.mutants.solved += o.mutants.solved
	t.mutants.unanswered += o.mutants.unanswered
	t.mutants.broken += o.mutants.broken
	t.told = append(t.told, o.told...)
	t.broken += o.broken
	for name, n := range o.tried {
		t.tried[name] += n
		if o.worst[name] > t.worst[name] {
			t.worst[name], t.where[name] = o.worst[name], o.where[name]
		}
	}
}

// breed tries the mutant of a seed.
func (t *tally) breed(ctx context.Context, b *breeder, seed uint64) {
	if ctx.Err() != nil {
		return
	}
	m := b.breed(seed)
	f := face(ctx, m, seed%5 == 0)
	if ctx.Err() != nil {
		return
	}
	n := &t.mutants
	n.all++
	for count, yes := range map[*int]bool{&n.refused: f.refused, &n.solved: f.solved, &n.unanswered: f.unanswered, &n.broken: f.broken != ""} {
		if yes {
			*count++
		}
	}
	if f.broken != "" {
		t.broken++
		t.told = append(t.told, fmt.Sprintf("mutant, seed %d (%s): %s", seed, strings.Join(m.did, "; "), f.broken))
	}
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
	n := t.mutants
	fmt.Fprintf(w, "%d mutants: %d refused, %d solved, %d without an answer, %d broken\n", n.all, n.refused, n.solved, n.unanswered, n.broken)
	for _, l := range laws() {
		fmt.Fprintf(w, "%-24s %6d times, worst %8.2g of %g allowed; %s\n", l.name, t.tried[l.name], t.worst[l.name], l.most, t.where[l.name])
	}
	for _, s := range t.told {
		fmt.Fprintln(w, "BROKEN:", s)
	}
}
