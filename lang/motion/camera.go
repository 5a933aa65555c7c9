package motion

import (
	"longhand/lang/geom"
	"longhand/lang/plan"
)

// CameraTrack placeholder
type CameraTrack struct{ Camera *plan.Camera }

func (c *CameraTrack) pupil(t float64) geom.Vec3      { return geom.Vec3{} }
func (c *CameraTrack) pan(t float64) float64          { return 0 }
func (b *builder) camera(c *plan.Camera) *CameraTrack { return nil }
