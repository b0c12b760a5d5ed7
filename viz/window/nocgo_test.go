//go:build !cgo

package window

import (
	"image/color"
	"strings"
	"testing"

	"archload/viz/desk"
)

func TestWithoutC(t *testing.T) {
	if err := Run("none", [2]int{800, 600}, nil); err == nil || !strings.Contains(err.Error(), "built without C") {
		t.Errorf("Run: got %v, want an error that says that the program was built without C", err)
	}
	paper := color.NRGBA{10, 20, 30, 255}
	img, how, err := Picture(&desk.Frame{Width: 4, Height: 3, Paper: paper})
	if err != nil || how != "software" || img.NRGBAAt(3, 2) != paper {
		t.Errorf("Picture: got %v by %q and %v, want the page in software", img, how, err)
	}
}
