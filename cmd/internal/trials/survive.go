package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"regexp"
	"runtime/debug"
	"strings"
	"testing/fstest"
	"time"
	"unicode"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/tree"
)

// What a mutant may cost: a look at it, a solve after its context has ended, and
// memory above which it is not solved.
const (
	lookTime   = 10 * time.Second
	solveTime  = 60 * time.Second
	mostMemory = 600 // MB
)

// fate is what became of a mutant.
type fate struct {
	refused, solved, unanswered bool
	broken                      string // which law, and how; "": none
}

// face reads a mutant, looks it over, and solves it if asked and if it is sound:
// whatever its author typed, the program may not panic or hang, tells every fault
// at a line that is there, in clean text, each time alike, and gives no answer
// that is not a number or fails a built-in check.
func face(ctx context.Context, m mutant, solved bool) fate {
	var f fate
	var c *cases.Case
	ended := within(lookTime, func() {
		c, f = look(m)
	}, &f)
	if !ended || f.refused || f.broken != "" || !solved {
		return f
	}
	limited, cancel := context.WithTimeout(ctx, solveTime)
	defer cancel()
	within(solveTime+lookTime, func() { f = answered(limited, c) }, &f)
	return f
}

// within does something and says whether it ended in time and without a panic;
// what hangs is left to itself.
func within(most time.Duration, do func(), f *fate) bool {
	done := make(chan string, 1)
	go func() {
		defer func() {
			if p := recover(); p != nil {
				done <- fmt.Sprintf("panic: %v\n%s", p, debug.Stack())
			}
			close(done)
		}()
		do()
	}()
	select {
	case broken := <-done:
		if broken != "" {
			*f = fate{broken: broken}
		}
		return broken == ""
	case <-time.After(most):
		*f = fate{broken: fmt.Sprintf("not done after %v", most)}
		return false
	}
}

// look reads a mutant and looks it over without solving it.
func look(m mutant) (*cases.Case, fate) {
	c, err := cases.Load(m.files, m.name)
	if _, again := cases.Load(m.files, m.name); text(again) != text(err) {
		return nil, fate{broken: fmt.Sprintf("read twice, told differently: %v; %v", err, again)}
	}
	var o *answer.Overview
	if err == nil {
		o, err = answer.Look(c)
	}
	if err != nil {
		return nil, fate{refused: true, broken: unclear(err, m.files)}
	}
	if _, err := json.Marshal(o); err != nil {
		return nil, fate{broken: fmt.Sprintf("its overview has no JSON: %v", err)}
	}
	if o.Memory > mostMemory {
		return nil, fate{refused: true}
	}
	return c, fate{}
}

func text(err error) string {
	if err == nil {
		return ""
	}
	return err.Error()
}

// slips are signs that a message was not written for people.
var slips = regexp.MustCompile(`%!|NaN|\+Inf|-Inf|0x[0-9a-f]{4}|runtime error|reflect\.|<nil>|strconv`)

// typed are odd numbers that the author wrote and the message repeats.
var typed = regexp.MustCompile(`found (NaN|[+-]Inf)`)

// unclear says what is wrong with the words of a refusal: they are faults, each at
// a line of a file that was read, on one line, without control characters.
func unclear(err error, files fstest.MapFS) string {
	var faults tree.Faults
	var one *tree.FileError
	switch {
	case errors.As(err, &faults):
	case errors.As(err, &one):
		faults = tree.Faults{one}
	default:
		return fmt.Sprintf("refused without a place: %v", err)
	}
	for _, e := range faults {
		msg := e.Error()
		f, known := files[e.File]
		switch {
		case !known:
			return "a fault in a file that is not there: " + msg
		case e.Line < 1 || e.Line > bytes.Count(f.Data, []byte("\n"))+1:
			return "a fault at a line that is not there: " + msg
		case strings.ContainsFunc(msg, unicode.IsControl):
			return fmt.Sprintf("control characters in a fault: %q", msg)
		case slips.MatchString(typed.ReplaceAllString(msg, "")):
			return "a fault not told for people: " + msg
		case len(msg) > 1500:
			return fmt.Sprintf("a fault of %d letters: %.200s ...", len(msg), msg)
		}
	}
	return ""
}

// answered solves a sound mutant.
func answered(ctx context.Context, c *cases.Case) fate {
	s, err := design.Solve(ctx, c, design.Options{Workers: 1, Refine: 0.25, NoError: true})
	if err != nil {
		if slips.MatchString(err.Error()) {
			return fate{unanswered: true, broken: "no answer, not told for people: " + err.Error()}
		}
		return fate{unanswered: true}
	}
	r := answer.Summarize(s)
	if bad := r.Error.Failed(); len(bad) > 0 {
		return fate{solved: true, broken: fmt.Sprintf("built-in checks failed: %v", bad)}
	}
	if _, err := json.Marshal(r); err != nil {
		return fate{solved: true, broken: fmt.Sprintf("its answer has no JSON: %v", err)}
	}
	return fate{solved: true}
}
