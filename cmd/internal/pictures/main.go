// Command pictures makes the README's pictures from those of the demo: the
// same pixels in all their colours, packed as small as they go. Run it again when
// results or drawings change:
//
//	go run ./cmd/archload demo
//	go run ./cmd/archview course-guitar-relief --controls --load 40 --section cross --snapshot archload-demo/window.png
//	go run ./cmd/archview course-guitar course-guitar-treble --controls --section cross --view "from outside" \
//	    --size 1200x760 --snapshot archload-demo/window-two.png
//	go run ./cmd/archview course-guitar course-guitar-treble --controls --field tone --view "from outside" \
//	    --size 1040x680 --snapshot archload-demo/window-tones.png
//	go run ./cmd/archview --lesson 1-arch --step 4 --controls --snapshot archload-demo/window-lesson.png
//	go run ./cmd/internal/pictures archload-demo docs
package main

import (
	"bytes"
	"fmt"
	"image/png"
	"os"
	"path/filepath"
)

// pictures are those that the README shows.
func pictures() []string {
	return []string{"demo-cross-arches.png", "course-guitar-treble-sink.png", "course-guitar-relief-cross-arch.png",
		"window.png", "window-two.png", "window-lesson.png", "window-tones.png"}
}

func main() {
	if len(os.Args) != 3 {
		fmt.Fprintln(os.Stderr, "usage: pictures DEMO-FOLDER FOLDER")
		os.Exit(2)
	}
	for _, name := range pictures() {
		if err := shrink(filepath.Join(os.Args[1], name), filepath.Join(os.Args[2], name)); err != nil {
			fmt.Fprintln(os.Stderr, "pictures:", err)
			os.Exit(1)
		}
	}
}

func shrink(from, to string) error {
	data, err := os.ReadFile(from)
	if err != nil {
		return err
	}
	full, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		return fmt.Errorf("%s: %w", from, err)
	}
	var out bytes.Buffer
	enc := png.Encoder{CompressionLevel: png.BestCompression}
	if err := enc.Encode(&out, full); err != nil {
		return fmt.Errorf("%s: %w", to, err)
	}
	return os.WriteFile(to, out.Bytes(), 0o644)
}
