package main

import (
	"os"
	"path/filepath"
	"testing"

	"archload/cmd/internal/disk"
	"archload/viz/desk/looks"
)

// Of looks that are noted while others are being written the last ones stay.
func TestTheLastLooksStay(t *testing.T) {
	dir := t.TempDir()
	t.Setenv("XDG_CONFIG_HOME", dir)
	t.Setenv("HOME", dir)
	m := &memory{disk: &disk.Disk{}}
	l := looks.Usual()
	for k := range 40 {
		l.Letters = k % (looks.MostLetters + 1)
		m.note(l)
	}
	m.written.Wait()
	if got := remembered(); got != l.Text() {
		t.Errorf("remembered is %q, want %q", got, l.Text())
	}
	var left []string
	_ = filepath.WalkDir(dir, func(name string, e os.DirEntry, _ error) error {
		if !e.IsDir() {
			left = append(left, name)
		}
		return nil
	})
	if len(left) != 1 {
		t.Errorf("written are %v, want one file", left)
	}
}
