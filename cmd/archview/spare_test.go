package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"archload/cmd/internal/shell"
)

// TestSnapshotSparesInput: a picture does not take the place of the case, were
// it by a second name of the file.
func TestSnapshotSparesInput(t *testing.T) {
	dir := t.TempDir()
	file, second := filepath.Join(dir, "mine.toml"), filepath.Join(dir, "mine.png")
	text := []byte("format = 1\nbase = \"first\"\n")
	if err := os.WriteFile(file, text, 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Link(file, second); err != nil {
		t.Fatal(err)
	}
	var stdout, stderr bytes.Buffer
	code := run(t.Context(), []string{file, "--snapshot", second}, &stdout, &stderr)
	if code != shell.ExitFaulty || !strings.Contains(stderr.String(), "is one of the files that were read") || stdout.Len() > 0 {
		t.Errorf("exit status %d, %q, %q; want %d and a refusal", code, stdout.String(), stderr.String(), shell.ExitFaulty)
	}
	if now, err := os.ReadFile(file); err != nil || !bytes.Equal(now, text) {
		t.Errorf("the case is now %q, %v; want %q", now, err, text)
	}
}
