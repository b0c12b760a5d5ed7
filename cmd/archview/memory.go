package main

import (
	"io"
	"os"
	"path/filepath"
	"sync"

	"archload/cmd/internal/disk"
	"archload/viz/desk/looks"
)

// memory writes down how the window looks, for the next time, beside the window: a disk may take seconds, and the window
// is not to wait for it. The looks noted last are the ones that are written in the end.
type memory struct {
	disk *disk.Disk

	mu      sync.Mutex
	next    *looks.Looks // not yet written
	writing bool
	written sync.WaitGroup
}

// note has looks written down. That they cannot be is no reason to stop.
func (m *memory) note(l looks.Looks) {
	m.mu.Lock()
	defer m.mu.Unlock()
	m.next = &l
	if !m.writing {
		m.writing = true
		m.written.Go(m.write)
	}
}

// write writes down looks until there are no newer ones.
func (m *memory) write() {
	for {
		m.mu.Lock()
		l := m.next
		m.next = nil
		if l == nil {
			m.writing = false
			m.mu.Unlock()
			return
		}
		m.mu.Unlock()
		if file := looksFile(); file != "" && disk.Make(filepath.Dir(file)) == nil {
			_ = m.disk.Write(file, func(w io.Writer) error { _, err := io.WriteString(w, l.Text()); return err })
		}
	}
}

// looksFile is where the looks are remembered; "" if there is no such place.
func looksFile() string {
	dir, err := os.UserConfigDir()
	if err != nil {
		return ""
	}
	return filepath.Join(dir, "archload", "archview.txt")
}

// remembered are the looks of the last time; "" without.
func remembered() string {
	data, err := os.ReadFile(looksFile())
	if err != nil {
		return ""
	}
	return string(data)
}
