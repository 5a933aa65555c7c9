package syntax

// LookHead starts the section of what this production does and never does.
type LookHead struct {
	Node
	Word string `parser:"@'look'"`
}

// Never is something that must not happen. One field is set.
type Never struct {
	Node
	Zoom    bool  `parser:"'never' ( @'zoom'"`
	Modern  bool  `parser:"| @'modern' 'in' 'frame'"`
	Tighter *Word `parser:"| 'tighter' 'than' @@ )"`
}

// Only names the lenses that may be used.
type Only struct {
	Node
	Lenses []*Name `parser:"'only' ('lens' | 'lenses') @@ ( ','? @@ )*"`
}

// BlurLimit bounds the background's blur, of frame width.
type BlurLimit struct {
	Node
	Most *Quantity `parser:"'blur' 'behind' 'at' 'most' @@"`
}

// PanLimit bounds panning: seconds a frame width.
type PanLimit struct {
	Node
	Least *Quantity `parser:"'pan' 'at' 'least' @@ 'a' 'frame'"`
}

// ExposureLimit bounds the exposure's error.
type ExposureLimit struct {
	Node
	Stops *Number `parser:"'exposure' 'within' @@ ('stops' | 'stop')"`
}

// UnderLimit bounds how dark a face may be for the stop.
type UnderLimit struct {
	Node
	Stops *Number `parser:"'faces' 'at' 'most' @@ ('stops' | 'stop') 'under'"`
}

// SpeedLimit bounds the speed of a class of rigs.
type SpeedLimit struct {
	Node
	Class *Word     `parser:"'speed' @@"`
	Most  *Quantity `parser:"'at' 'most' @@"`
	Back  *Quantity `parser:"( 'back' @@ )?"`
}
