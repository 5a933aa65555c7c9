package check

import (
	"longhand/lang/diag"
	"longhand/lang/motion"
)

// zoom is a change of focal length on one lens.
type zoom struct {
	fit  *motion.Fit
	from float64 // millimetres
	diag.Frames
}

// zooms is every change of focal length of a camera's lens, rolling or not.
func (p *Pass) zooms(track *motion.CameraTrack) []zoom {
	var out []zoom
	for k := 1; k < len(track.Fits); k++ {
		was, now := &track.Fits[k-1], &track.Fits[k]
		if was.Lens != now.Lens || was.Focal == now.Focal || was.Focal <= 0 {
			continue
		}
		z := zoom{fit: now, from: float64(was.Focal)}
		z.From = p.Tracks.Rate.From(now.At)
		z.To = z.From
		for int(z.To) < p.Tracks.Frames-1 && track.Zooming(p.Tracks.Rate.Time(z.To+1)) {
			z.To++
		}
		out = append(out, z)
	}
	return out
}
