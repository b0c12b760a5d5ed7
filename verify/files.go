package verify

import (
	"io/fs"
	"strings"
	"time"
)

// files is a folder in memory: the case and its tables by name.
type files map[string]string

// Open opens a file of the folder.
func (f files) Open(name string) (fs.File, error) {
	text, ok := f[name]
	if !ok {
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
	}
	return &openFile{Reader: strings.NewReader(text), name: name}, nil
}

// openFile is a file of the folder while it is read.
type openFile struct {
	*strings.Reader
	name string
}

func (o *openFile) Stat() (fs.FileInfo, error) { return o, nil }
func (o *openFile) Close() error               { return nil }
func (o *openFile) Name() string               { return o.name }
func (o *openFile) Mode() fs.FileMode          { return 0o444 }
func (o *openFile) ModTime() (t time.Time)     { return t }
func (o *openFile) IsDir() bool                { return false }
func (o *openFile) Sys() any                   { return nil }
