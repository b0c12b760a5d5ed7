package disk

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
)

// Write makes a file whole or not at all: it writes beside it and renames. A
// file that was read is refused. One that is there keeps its mode, and is left
// alone if its mode says that nobody may write to it. What cannot be replaced
// without loss is written as it stands: a pipe or a device, and a file with a
// second name or of another owner, whose other name or owner would be lost. A
// symbolic link stays one, and the file that it points to is written, whether
// it is there or not.
func (d *Disk) Write(name string, write func(io.Writer) error) error {
	if err := d.Spared(name); err != nil {
		return err
	}
	var buf bytes.Buffer
	if err := write(&buf); err != nil {
		return err
	}
	if err := put(name, buf.Bytes()); err != nil {
		return fmt.Errorf("cannot write %s: %w", name, Cause(err))
	}
	return nil
}

// linked follows symbolic links to the file that they mean, which is not there.
func linked(name string) (string, error) {
	for {
		info, err := os.Lstat(name)
		if err != nil || info.Mode()&fs.ModeSymlink == 0 {
			return name, nil // what is not there is no link
		}
		to, err := os.Readlink(name) // no circle: the system would have said so
		if err != nil {
			return "", err
		}
		if !filepath.IsAbs(to) {
			to = filepath.Join(filepath.Dir(name), to)
		}
		name = to
	}
}

// put writes to a file, or to the one that it is a link to.
func put(name string, data []byte) error {
	info, err := os.Stat(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		if name, err = linked(name); err != nil {
			return err
		}
		return replace(name, data, nil)
	case err != nil:
		return err
	case !info.Mode().IsRegular():
		return overwrite(name, data, 0)
	case info.Mode()&0o222 == 0:
		return errors.New("it is read-only")
	case shared(info):
		return overwrite(name, data, os.O_TRUNC)
	}
	f, err := os.OpenFile(name, os.O_WRONLY, 0) // may we?
	if err != nil {
		return err
	}
	if err := f.Close(); err != nil {
		return err
	}
	if whole, err := filepath.EvalSymlinks(name); err == nil {
		name = whole
	}
	return replace(name, data, info)
}

// replace writes beside a file and renames; old is what is there, nil without.
func replace(name string, data []byte, old fs.FileInfo) error {
	f, err := beside(name)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	if err == nil && old != nil {
		if err = f.Chmod(old.Mode().Perm()); err == nil {
			err = f.Sync() // the old one goes when the new one is safe
		}
	}
	if cerr := f.Close(); err == nil {
		err = cerr
	}
	if err == nil {
		err = os.Rename(f.Name(), name)
	}
	if err != nil {
		_ = os.Remove(f.Name()) // the first error is the one to tell
	}
	return err
}

// beside makes a new file in the folder of another, with the mode that the
// user's mask gives to files.
func beside(name string) (*os.File, error) {
	for {
		free := filepath.Join(filepath.Dir(name), fmt.Sprintf(".archload-%08x", rand.Uint32()))
		f, err := os.OpenFile(free, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
		if !errors.Is(err, fs.ErrExist) {
			return f, err
		}
	}
}

func overwrite(name string, data []byte, flag int) error {
	f, err := os.OpenFile(name, os.O_WRONLY|flag, 0)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	if cerr := f.Close(); err == nil {
		err = cerr
	}
	return err
}
