package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"image"
	"io"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"strings"
	"sync/atomic"
	"time"

	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"
	"archload/viz/desk"
	"archload/viz/desk/looks"
	"archload/viz/panel"
	"archload/viz/window"

	"github.com/spf13/cobra"
)

// run opens the window, or writes the snapshot.
func (o *options) run(cmd *cobra.Command, args []string) error {
	w, h, err := o.pixels()
	if err != nil {
		return err
	}
	if o.snapshot != "" {
		return o.writeSnapshot(cmd, args, w, h)
	}
	d, err := o.setUp(args, looks.Parse(remembered()))
	if err != nil {
		return err
	}
	d.Keep = o.keep
	m := &memory{disk: o.disk}
	defer m.written.Wait() // once the window is gone
	d.Remember = m.note
	d.Picture = func(f *desk.Frame) (image.Image, error) { return desk.Software(f), nil }
	one, err := desk.New(d)
	if err != nil {
		return err
	}
	defer one.Close()
	a := &app{Desk: one}
	if o.tell {
		a.out = cmd.OutOrStdout()
		one.Watch()
	}
	stop := context.AfterFunc(cmd.Context(), a.interrupt)
	defer stop()
	if err := window.Run(program, [2]int{w, h}, a); err != nil {
		return err
	}
	return cmd.Context().Err()
}

// writeSnapshot writes the drawing as a PNG.
func (o *options) writeSnapshot(cmd *cobra.Command, args []string, w, h int) error {
	say, done := shell.Progress(cmd.ErrOrStderr())
	defer done()
	say("archview: reading")
	d, err := o.setUp(args, looks.Usual())
	if err != nil {
		return err
	}
	if err := o.disk.Spared(o.snapshot); err != nil {
		return err
	}
	if _, err := os.Stat(filepath.Dir(o.snapshot)); err != nil {
		return fmt.Errorf("cannot write %s: %w", o.snapshot, disk.Cause(err))
	}
	how := ""
	var why error
	d.Picture = func(f *desk.Frame) (image.Image, error) {
		img, h, err := window.Picture(f)
		how, why = h, err
		return img, nil
	}
	one, err := desk.New(d)
	if err != nil {
		return err
	}
	say("archview: solving and painting " + o.snapshot)
	if err := one.Settle(cmd.Context(), o.controls || o.lesson == ""); err != nil {
		return err
	}
	paint := one.PNG
	if o.controls {
		paint = one.WindowPNG
	}
	data, err := paint(w, h, o.density)
	if err != nil {
		return err
	}
	if err := o.disk.Write(o.snapshot, func(out io.Writer) error { _, err := out.Write(data); return err }); err != nil {
		return err
	}
	done()
	if why != nil {
		fmt.Fprintf(cmd.ErrOrStderr(), "archview: painted %s: %v\n", how, why)
	}
	_, err = fmt.Fprintf(cmd.OutOrStdout(), "wrote %s, %d x %d pixels, %s\n", o.snapshot, w, h, how)
	return err
}

// app is the desk as the window sees it.
type app struct {
	*desk.Desk
	out   io.Writer // told about each frame; nil: nobody
	wake  func()
	timer *time.Timer
	ended atomic.Bool
	lines bytes.Buffer
}

// Waker takes the function that asks for a frame.
func (a *app) Waker(wake func()) {
	a.wake = wake
	a.timer = time.AfterFunc(time.Hour, wake)
	a.Start(wake)
}

// interrupt closes the window.
func (a *app) interrupt() {
	if a.wake != nil {
		a.ended.Store(true)
		a.wake()
	}
}

// program is what the window's program is called.
const program = "archview"

// Title is what stands over the window: the program and what it shows.
func (a *app) Title() string {
	if what := a.Desk.Title(); what != "" {
		return program + ": " + what
	}
	return program
}

// Done tells whether the window shall close.
func (a *app) Done() bool { return a.ended.Load() || a.Desk.Done() }

// Frame is one pass of the window.
func (a *app) Frame(width, height int, density float64, in panel.Input) *desk.Frame {
	f := a.Desk.Frame(width, height, density, in)
	if s := a.Wake(); s > 0 && !math.IsInf(s, 1) {
		a.timer.Reset(time.Duration(s * float64(time.Second)))
	}
	return f
}

// Drawn tells about a frame that is on the screen.
func (a *app) Drawn(cpu, wall float64) {
	if a.out == nil {
		return
	}
	for _, line := range a.Places() {
		fmt.Fprintln(&a.lines, line)
	}
	fmt.Fprintf(&a.lines, "%s cpu=%.4f wall=%.4f\n", a.Line(), cpu, wall)
	// Somebody who no longer listens is no reason to stop.
	_, _ = a.out.Write(a.lines.Bytes())
	a.lines.Reset()
}

// keep writes a file beside the user, under a name that is still free.
func (o *options) keep(name string, data []byte) (string, error) {
	ext := filepath.Ext(name)
	free := name
	for n := 2; ; n++ {
		if _, err := os.Lstat(free); errors.Is(err, fs.ErrNotExist) {
			break
		}
		free = fmt.Sprintf("%s-%d%s", strings.TrimSuffix(name, ext), n, ext)
	}
	return free, o.disk.Write(free, func(w io.Writer) error { _, err := w.Write(data); return err })
}
