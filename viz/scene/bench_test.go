package scene

import (
	"image"
	"testing"
)

func BenchmarkBuild(b *testing.B) {
	s := solved(b, "course-guitar", 1)
	k := NewSkeleton(s)
	for b.Loop() {
		k.Build(Show{Solution: s, Field: Sink, Strings: true, Load: 1, Enlarge: 20})
	}
}

func BenchmarkSkeleton(b *testing.B) {
	s := solved(b, "course-guitar", 1)
	for b.Loop() {
		NewSkeleton(s)
	}
}

func BenchmarkPaint(b *testing.B) {
	s := solved(b, "course-guitar", 1)
	sc := NewSkeleton(s).Build(Show{Solution: s, Field: Sink, Strings: true, Load: 1})
	c := sc.Seen("at an angle", 1280, 800)
	img := image.NewNRGBA(image.Rect(0, 0, 1280, 800))
	for b.Loop() {
		Paint(img, img.Rect, sc, c, PaintOptions{Contours: true})
	}
}

func BenchmarkPick(b *testing.B) {
	s := solved(b, "course-guitar", 1)
	sc := NewSkeleton(s).Build(Show{Solution: s, Field: Sink, Strings: true, Load: 1})
	c := sc.Seen("at an angle", 1280, 800)
	for b.Loop() {
		sc.Pick(c, 500, 400, 1280, 800)
	}
}
