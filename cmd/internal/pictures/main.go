// Command pictures makes the README's pictures from those of the demo: the
// same pixels in at most 256 colours, so that they are small. Run it again when
// results or drawings change:
//
//	go run ./cmd/archload demo
//	go run ./cmd/archview course-guitar-relief --controls --load 40 --section cross --snapshot archload-demo/window.png
//	go run ./cmd/archview course-guitar course-guitar-treble --controls --section cross --view "from outside" \
//	    --snapshot archload-demo/window-two.png
//	go run ./cmd/archview --lesson 4-bowed --step 3 --controls --snapshot archload-demo/window-lesson.png
//	go run ./cmd/internal/pictures archload-demo docs
package main

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"maps"
	"os"
	"path/filepath"
	"slices"
)

// pictures are those that the README shows.
func pictures() []string {
	return []string{"demo-cross-arches.png", "course-guitar-treble-sink.png", "course-guitar-relief-cross-arch.png",
		"window.png", "window-two.png", "window-lesson.png"}
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
	if err := enc.Encode(&out, fewColours(full)); err != nil {
		return fmt.Errorf("%s: %w", to, err)
	}
	return os.WriteFile(to, out.Bytes(), 0o644)
}

// fewColours draws a picture with its 256 most frequent colours, each other
// one by the nearest of them.
func fewColours(full image.Image) *image.Paletted {
	count := map[color.NRGBA]int{}
	box := full.Bounds()
	each := func(do func(x, y int)) {
		for y := box.Min.Y; y < box.Max.Y; y++ {
			for x := box.Min.X; x < box.Max.X; x++ {
				do(x, y)
			}
		}
	}
	at := func(x, y int) color.NRGBA { return color.NRGBAModel.Convert(full.At(x, y)).(color.NRGBA) }
	each(func(x, y int) { count[at(x, y)]++ })
	all := slices.SortedFunc(maps.Keys(count), func(a, b color.NRGBA) int {
		if count[a] != count[b] {
			return count[b] - count[a]
		}
		return number(a) - number(b)
	})
	var palette color.Palette
	for _, c := range all[:min(len(all), 256)] {
		palette = append(palette, c)
	}
	out := image.NewPaletted(box, palette)
	nearest := map[color.NRGBA]uint8{}
	for _, c := range all {
		nearest[c] = uint8(palette.Index(c))
	}
	each(func(x, y int) { out.SetColorIndex(x, y, nearest[at(x, y)]) })
	return out
}

// number orders colours.
func number(c color.NRGBA) int { return int(c.R)<<24 | int(c.G)<<16 | int(c.B)<<8 | int(c.A) }
