package main

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// randomUsers returns a graph of n nodes in which a node uses another with
// probability p.
func randomUsers(chance *rand.Rand, n int, p float64) [][]int {
	users := make([][]int, n)
	for b := range n {
		for a := range n {
			if a != b && chance.Float64() < p {
				users[b] = append(users[b], a)
			}
		}
	}
	return users
}

// backOf counts the uses that run back up, from their definition.
func backOf(users [][]int, line []int) int {
	n := 0
	for b, by := range users {
		for _, a := range by {
			if slices.Index(line, a) < slices.Index(line, b) {
				n++
			}
		}
	}
	return n
}

// fewestBack tries every order of the nodes.
func fewestBack(users [][]int, line []int, from int) int {
	if from == len(line) {
		return backOf(users, line)
	}
	least := 1 << 30
	for i := from; i < len(line); i++ {
		line[from], line[i] = line[i], line[from]
		least = min(least, fewestBack(users, line, from+1))
		line[from], line[i] = line[i], line[from]
	}
	return least
}

func upTo(n int) []int {
	line := make([]int, n)
	for i := range line {
		line[i] = i
	}
	return line
}

// TestOrderIsTheBest compares with all 720 orders of six nodes.
func TestOrderIsTheBest(t *testing.T) {
	chance := rand.New(rand.NewPCG(7, 7))
	for trial := range 60 {
		users := randomUsers(chance, 6, 0.1+0.01*float64(trial))
		line := order(users)
		if sorted := slices.Sorted(slices.Values(line)); !slices.Equal(sorted, upTo(6)) {
			t.Fatalf("%v is no order of six nodes", line)
		}
		if got, want := backOf(users, line), fewestBack(users, upTo(6), 0); got != want {
			t.Errorf("users %v: %d uses run back in %v, %d in the best order", users, got, line, want)
		}
	}
}

// TestSearchFindsTheBest: on knots that can be solved exactly, the search for large
// ones does as well.
func TestSearchFindsTheBest(t *testing.T) {
	chance := rand.New(rand.NewPCG(3, 14))
	for range 8 {
		users := randomUsers(chance, 14, 0.2)
		all := upTo(14)
		if got, want := backOf(users, search(all, users)), backOf(users, exact(all, users)); got != want {
			t.Errorf("users %v: %d uses run back, %d in the best order", users, got, want)
		}
	}
}

// TestOrderOfALargeKnot: a ring of many nodes, each used by the next, has one use back.
func TestOrderOfALargeKnot(t *testing.T) {
	users := make([][]int, 3*exactFiles)
	for i := range users {
		users[i] = []int{(i + 7) % len(users)} // 7 and 60 have no common factor
	}
	if got := backOf(users, order(users)); got != 1 {
		t.Errorf("%d uses run back in a ring, want 1", got)
	}
	if a, b := order(users), order(users); !slices.Equal(a, b) {
		t.Error("two orders of the same graph differ")
	}
}
