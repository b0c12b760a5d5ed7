package desk

import (
	"image"
	"image/draw"
	"math"

	"archload/viz/scene"
)

// Software paints a frame without a graphics driver: the scenes and over them
// the panels. A page without an area gives an empty picture.
func Software(f *Frame) *image.NRGBA {
	img := image.NewNRGBA(image.Rect(0, 0, max(f.Width, 0), max(f.Height, 0)))
	draw.Draw(img, img.Rect, image.NewUniform(f.Paper), image.Point{}, draw.Src)
	f.paint(img, f.Views)
	if len(f.Was) > 0 {
		under := image.NewNRGBA(img.Rect)
		draw.Draw(under, img.Rect, image.NewUniform(f.Paper), image.Point{}, draw.Src)
		f.paint(under, f.Was)
		for i, v := range under.Pix {
			img.Pix[i] = uint8(math.Round(float64(v) + f.Share*(float64(img.Pix[i])-float64(v))))
		}
	}
	if f.Panels != nil && f.Panels.Atlas != nil {
		f.Panels.Paint(img)
	}
	return img
}

// paint paints scenes.
func (f *Frame) paint(img *image.NRGBA, views []View) {
	for _, v := range views {
		if v.Scene != nil {
			scene.Paint(img, v.Where, v.Scene, v.Camera, scene.PaintOptions{
				Contours: v.Contours, Phase: v.Phase, Density: f.LineDensity(&v), Quick: v.Light,
			})
		}
	}
}
