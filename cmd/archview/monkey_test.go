package main

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
)

var (
	monkeyFor  = flag.Duration("monkey.for", 0, "how long hands that know nothing play with the window (0: a little)")
	monkeySeed = flag.Uint64("monkey.seed", 1, "what they begin with")
	monkeyCase = flag.String("monkey.case", "", "what they play with: arguments of archview (empty: a coarse case)")
)

// Bounds of a window that is played with.
const (
	mostPatience = 5 * time.Second // until the next frame
	mostMemory   = 3500            // MB: two whole bodies beside each other, and one to go back to
)

// monkey is hands that know nothing of the window.
type monkey struct {
	*person
	r    *rand.Rand
	did  []string // lately
	slow time.Duration
	most int // MB
}

// resident is the memory of the window, MB.
func (m *monkey) resident() int {
	data, _ := os.ReadFile(fmt.Sprintf("/proc/%d/status", m.cmd.Process.Pid))
	_, rest, _ := strings.Cut(string(data), "VmRSS:")
	kb, _ := strconv.Atoi(strings.Fields(rest + " 0")[0])
	return kb >> 10
}

// place is a place on the page: of a control, mostly.
func (m *monkey) place() (x, y string) {
	var ids []string
	for id, at := range m.last.places {
		if at[2] > 0 && at[3] > 0 {
			ids = append(ids, id)
		}
	}
	slices.Sort(ids)
	at := [4]float64{0, 0, 1300, 900}
	if len(ids) > 0 && m.r.IntN(4) > 0 {
		at = m.last.places[ids[m.r.IntN(len(ids))]]
	}
	return fmt.Sprintf("%.0f", at[0]+m.r.Float64()*at[2]), fmt.Sprintf("%.0f", at[1]+m.r.Float64()*at[3])
}

// act is one thing that the hands do, as xdotool takes it.
func (m *monkey) act() []string {
	keys := strings.Fields("0 1 2 3 4 5 6 7 8 9 a b c d e f g h i j k l m n o p r s t u v w x z comma period plus minus bracketleft bracketright " +
		"Tab Tab shift+Tab Return space Escape Escape Left Right Up Down Home End Prior Next BackSpace Delete F1 " +
		"ctrl+z ctrl+y ctrl+n ctrl+o ctrl+plus ctrl+minus shift+Up ctrl+a ctrl+v")
	texts := []string{"0.3", "-1e9", "1e400", "abc", "../", "~/", "co", "12 mm", "1/2 in", "//", "é", "0,5"}
	x, y := m.place()
	to := []string{"mousemove", "--window", m.id, x, y}
	switch m.r.IntN(12) {
	case 0, 1, 2:
		return []string{"key", keys[m.r.IntN(len(keys))]}
	case 3, 4, 5, 6:
		return append(to, "click", "1")
	case 7:
		return append(to, "click", "--repeat", "2", "--delay", "60", "1")
	case 8:
		button := []string{"1", "1", "1", "3", "2"}[m.r.IntN(5)]
		x2, y2 := m.place()
		return append(to, "mousedown", button, "mousemove", "--window", m.id, x2, y2, "mouseup", button)
	case 9:
		return append(to, "click", "--repeat", strconv.Itoa(1+m.r.IntN(6)), "--delay", "5", strconv.Itoa(4+m.r.IntN(2)))
	case 10:
		return []string{"type", "--delay", "5", "--", texts[m.r.IntN(len(texts))]}
	}
	if m.r.IntN(4) > 0 {
		return append(to, "keydown", "shift", "mousedown", "1", "mousemove_relative", "--", "90", "-60", "mouseup", "1", "keyup", "shift")
	}
	return []string{"windowsize", m.id, strconv.Itoa(800 + m.r.IntN(900)), strconv.Itoa(560 + m.r.IntN(700))}
}

// play does a few things and looks how soon the window answers, and what it takes.
func (m *monkey) play(n int) {
	m.t.Helper()
	for range n {
		do := m.act()
		m.did = append(m.did, strings.Join(do, " "))
		m.Do("xdotool", do...)
	}
	m.answers()
	now := m.resident()
	if m.most = max(m.most, now); len(m.did)%200 == 0 {
		m.t.Logf("%d things done: %d MB", len(m.did), now)
	}
	if m.most > mostMemory {
		m.t.Fatalf("it takes %d MB, after %s", m.most, m.lately())
	}
}

func (m *monkey) lately() string { return strings.Join(m.did[max(0, len(m.did)-30):], "\n") }

// crowd is how many programs wait for each processor, at least 1: they make everything so many times as slow.
func crowd() float64 {
	data, _ := os.ReadFile("/proc/loadavg")
	load, _, _ := strings.Cut(string(data), " ")
	v, _ := strconv.ParseFloat(load, 64)
	return max(1, v/float64(runtime.NumCPU()))
}

// answers moves the pointer and waits for the frame that comes of it.
func (m *monkey) answers() {
	m.t.Helper()
	m.drain()
	n, began := m.last.number("frame"), time.Now()
	m.Do("xdotool", "mousemove", "--window", m.id, strconv.Itoa(200+m.r.IntN(300)), strconv.Itoa(200+m.r.IntN(200)))
	for m.last.number("frame") <= n {
		select {
		case f, ok := <-m.frames:
			if !ok {
				m.t.Fatalf("it has closed, after %s", m.lately())
			}
			m.last = f
		case <-time.After(20 * mostPatience):
			m.t.Fatalf("it hangs, after %s", m.lately())
		}
	}
	took := time.Since(began)
	if most := time.Duration(crowd() * float64(mostPatience)); took > most {
		m.t.Errorf("the pointer is answered after %v, want %v; lately: %s", took, most, m.lately())
	}
	m.slow = max(m.slow, took)
}

// drain takes the frames that have come.
func (m *monkey) drain() {
	for {
		select {
		case f, ok := <-m.frames:
			if !ok {
				m.t.Fatalf("it has closed, after %s", m.lately())
			}
			m.last = f
			continue
		default:
		}
		return
	}
}

// Hands that know nothing press, drag, type and resize: the window stays, answers, takes bounded memory, writes nothing
// but what it is asked to, and leaves when told.
func TestMonkey(t *testing.T) {
	m := &monkey{r: rand.New(rand.NewPCG(*monkeySeed, 1))}
	if *monkeyCase == "" {
		m.person = coarse(t, nil, "first")
	} else {
		m.person = sit(t, strings.Fields(*monkeyCase)...)
	}
	began := time.Now()
	for k := 0; k < 8 || time.Since(began) < *monkeyFor; k++ {
		m.play(4)
	}
	m.key("Escape", "Escape", "Escape", "Escape")
	m.answers()
	t.Logf("%d things done, slowest answer %v, at most %d MB, %d MB at the end", len(m.did), m.slow, m.most, m.resident())
	m.leave()
	files, err := filepath.Glob(filepath.Join(m.dir, "*"))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		name := filepath.Base(f)
		if name != "settings" && name != "first.toml" && !strings.HasSuffix(name, ".png") && !strings.Contains(name, "-changed") {
			t.Errorf("it has written %s", name)
		}
	}
}
