package desk

import (
	"image"
	"image/draw"

	"archload/viz/scene"
)

// Software paints a frame without a graphics driver: the scenes and over them
// the panels. A page without an area gives an empty picture.
func Software(f *Frame) *image.NRGBA {
	img := image.NewNRGBA(image.Rect(0, 0, max(f.Width, 0), max(f.Height, 0)))
	draw.Draw(img, img.Rect, image.NewUniform(f.Paper), image.Point{}, draw.Src)
	for _, v := range f.Views {
		if v.Scene != nil {
			scene.Paint(img, v.Where, v.Scene, v.Camera, scene.PaintOptions{
				Contours: v.Contours, Phase: v.Phase, Density: f.Density, Quick: v.Light,
			})
		}
	}
	if f.Panels != nil && f.Panels.Atlas != nil {
		f.Panels.Paint(img)
	}
	return img
}
