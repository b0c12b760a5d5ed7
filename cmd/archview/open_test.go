package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// typed types letters.
func (p *person) typed(text string) {
	p.t.Helper()
	p.Do("xdotool", "type", "--delay", "20", text)
}

// shows waits for a settled frame of so many designs.
func (p *person) shows(n float64) told {
	p.t.Helper()
	return p.until("designs", func(f told) bool {
		return f.number("scenes") == n && f.values["settled"] == "true" && f.values["busy"] == "false"
	})
}

// Started with nothing, a case in another folder is found by its path, its entries listed as one types; what is no case
// is not listed, a faulty one refused in a line. Another stands beside it, and goes again. A lesson of one's own is
// begun, and nothing is written anywhere but what is remembered.
func TestOpenByHand(t *testing.T) {
	dir := t.TempDir()
	const coarse = "format = 1\nbase = \"first\"\n[mesh]\nrefine = 0.25\n"
	for name, text := range map[string]string{
		"bench/top one.toml": coarse,
		"bench/top two.toml": "title = \"Second top\"\n" + coarse + "[plate.arch]\napex_shift = [10, 0]\n",
		"bench/torn.toml":    coarse + "[bridge.relief]\ndepth = -3\n",
		"bench/topics.toml":  "[project]\n",
		"bench/notes.txt":    "top",
		"teach/mine.toml":    "format = 1\ntitle = \"Mine\"\nabout = \"A try.\"\n[[step]]\ncaption = \"Look at it.\"\ncase = \"../bench/top one.toml\"\nfield = \"sink\"\n",
	} {
		file := filepath.Join(dir, name)
		if err := os.MkdirAll(filepath.Dir(file), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	p := begin(t, dir, "--linear", "--size", "800x560")
	p.until("the start page", func(f told) bool { return f.places["start_file"][2] > 0 })
	p.key("o")
	p.until("the folder", func(f told) bool { return f.has("bench/") && f.has("teach/") && f.has("..") })
	p.typed("ben")
	p.until("the one folder", func(f told) bool { return f.has("bench/") && !f.has("teach/") })
	p.key("Return")
	f := p.until("the cases in it", func(f told) bool { return f.has("top one.toml") && f.has("top two.toml") && f.has("torn.toml") })
	if f.has("topics.toml") || f.has("notes.txt") {
		t.Errorf("listed is what is no case: %v", f.words)
	}
	p.typed("torn.toml")
	p.key("Return")
	p.until("the fault", func(f told) bool { w := f.line("torn.toml:6: bridge.relief.depth: "); return w.how == "whole" })
	p.key("Home", "End", "BackSpace", "BackSpace", "BackSpace", "BackSpace", "BackSpace", "BackSpace", "BackSpace", "BackSpace")
	p.until("what begins so", func(f told) bool { return f.has("top one.toml") && !f.has("torn.toml:") })
	p.key("Down", "Down", "Return") // past the way up
	p.shows(1)
	p.click("put_beside")
	p.until("the page to choose from", func(f told) bool { return f.places["start_file"][2] > 0 })
	p.click("start_file")
	p.until("the way there", func(f told) bool { return f.has("top two.toml") || f.has("bench/") })
	p.click("beside/1")
	p.typed("top t")
	p.until("the other", func(f told) bool { return f.has("top two.toml") && !f.has("top one.toml") })
	p.click("row_top_two.toml")
	p.shows(2)
	if got := p.Do("xdotool", "getwindowname", p.id); got != "archview: bench/top one.toml, bench/top two.toml" {
		t.Errorf("over the window stands %q", got)
	}
	// A file that is changed by another program is told, and read again when the hand asks.
	sink := p.last.number("B.sink")
	if err := os.WriteFile(filepath.Join(dir, "bench/top two.toml"), []byte("title = \"Second top\"\n"+coarse+"[plate]\nthickness_scale = 0.8\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for !p.last.has("bench/top two.toml has changed or gone") {
		time.Sleep(200 * time.Millisecond)
		p.Do("xdotool", "mousemove_relative", "1", "1", "mousemove_relative", "--", "-1", "-1")
		p.still()
	}
	p.click("read_again")
	f = p.until("what it says now", func(f told) bool { return f.number("B.sink") > 1.02*sink && f.values["settled"] == "true" })
	if f.has("bench/top two.toml has changed") {
		p.until("nothing to be told", func(f told) bool { return !f.has("bench/top two.toml has changed") })
	}
	p.click("alone_1")
	if f := p.shows(1); f.line("Second top").text == "" {
		t.Error("the design that was left is not named")
	}
	p.key("ctrl+o")
	p.until("the folder again", func(f told) bool { return f.places["up"][2] > 0 })
	p.click("up")
	p.until("the folder above", func(f told) bool { return f.has("teach/") })
	p.typed("teach/mine.toml")
	p.key("Return")
	p.until("the lesson", func(f told) bool { return f.values["step"] == "1/1" && f.values["settled"] == "true" })
	p.leave()
	var left []string
	_ = filepath.WalkDir(dir, func(name string, e os.DirEntry, err error) error {
		if err == nil && !e.IsDir() && !strings.Contains(name, "bench") && !strings.Contains(name, "teach") {
			left = append(left, name)
		}
		return nil
	})
	if len(left) != 1 || filepath.Base(left[0]) != "archview.txt" {
		t.Errorf("written are %v, want what is remembered alone", left)
	}
}
