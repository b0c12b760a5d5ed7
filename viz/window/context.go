//go:build cgo

package window

// Context is an OpenGL context that is current on the calling thread.
type Context struct {
	how   string // it was opened, for messages
	close func()
}

// Close gives the context back. Close its Painter first.
func (c *Context) Close() {
	if c.close != nil {
		c.close()
		c.close = nil
	}
}
