package problem

import "testing/fstest"

// folder holds a case and its tables by name.
func folder(texts map[string]string) fstest.MapFS {
	f := fstest.MapFS{}
	for name, text := range texts {
		f[name] = &fstest.MapFile{Data: []byte(text)}
	}
	return f
}
