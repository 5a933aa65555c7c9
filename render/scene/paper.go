package scene

// Paper is a size of paper in millimetres, upright.
type Paper struct {
	Name          string
	Width, Height float64
}

// The papers drawings are made for. A sizes after ISO 216, the others after
// ANSI/ASME Y14.1 (sizes A and B: 8.5 x 11 and 11 x 17 inches).
var (
	A6      = Paper{"A6", 105, 148}
	A4      = Paper{"A4", 210, 297}
	A3      = Paper{"A3", 297, 420}
	Letter  = Paper{"Letter", 215.9, 279.4}
	Tabloid = Paper{"Tabloid", 279.4, 431.8}
)

// Landscape is the paper on its side.
func (p Paper) Landscape() Paper { return Paper{p.Name, p.Height, p.Width} }
