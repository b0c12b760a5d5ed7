package opening

import (
	"context"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"
)

// What is no case, or cannot be read, is neither listed nor waited for, and a path to it is refused in one line.
func TestWhatIsNoFile(t *testing.T) {
	dir := t.TempDir()
	here := os.DirFS(dir)
	at := func(name string) string { return filepath.Join(dir, name) }
	for _, err := range []error{
		os.WriteFile(at("mine.toml"), []byte(aCase), 0o600),
		os.WriteFile(at("broken.toml"), []byte("format = 1\nbase = \"first\"\n[bridge.relief]\ndepth = -1\n"), 0o600),
		os.WriteFile(at("other.toml"), []byte("[project]\n"), 0o600),
		os.Mkdir(at("folder"), 0o700), os.Mkdir(at("shut"), 0),
		os.Symlink("mine.toml", at("link.toml")), os.Symlink("folder", at("to-folder")),
		os.Symlink("nowhere.toml", at("dead.toml")), os.Symlink("round.toml", at("round.toml")),
		os.Symlink("/dev/zero", at("endless.toml")),
		syscall.Mkfifo(at("pipe.toml"), 0o600),
	} {
		if err != nil {
			t.Fatal(err)
		}
	}
	t.Cleanup(func() { _ = os.Chmod(at("shut"), 0o700) })
	ended := make(chan struct{})
	go func() {
		defer close(ended)
		want := []Row{{"folder", Folder}, {"shut", Folder}, {"broken.toml", Case}, {"link.toml", Case}, {"mine.toml", Case}, {"to-folder", Folder}}
		got := List(context.Background(), here, ".", "").Rows
		slices.SortFunc(got, func(a, b Row) int { return strings.Compare(a.Name, b.Name) })
		slices.SortFunc(want, func(a, b Row) int { return strings.Compare(a.Name, b.Name) })
		if !slices.Equal(got, want) {
			t.Errorf("listed are %v, want %v", got, want)
		}
		for name, part := range map[string]string{
			"pipe.toml": "found a device or a pipe", "endless.toml": "found a device or a pipe", "dead.toml": "no such file",
			"nobody.toml": "no such file", "other.toml": "neither a case file nor a lesson", "round.toml": "",
			"broken.toml": "broken.toml:4: bridge.relief.depth: ",
		} {
			f := Find(here, name)
			if f.Err == nil || !strings.Contains(words(f.Err), part) || strings.Contains(words(f.Err), "\n") {
				t.Errorf("%s: %v, want %q", name, f.Err, part)
			}
		}
		if f := Find(here, "mine.toml"); f.Err != nil || f.Kind != Case {
			t.Errorf("the case: %+v", f)
		}
		for _, no := range []string{"pipe.toml", "nobody", "mine.toml"} {
			if l := List(context.Background(), here, no, ""); l.Err == nil {
				t.Errorf("%s can be listed: %v", no, l.Rows)
			}
		}
	}()
	select {
	case <-ended:
	case <-time.After(time.Minute):
		t.Fatal("it waits for a pipe")
	}
}
