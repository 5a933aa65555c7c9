package sight

// Body is the index of a body by its name, and whether there is one.
func (s *Scene) Body(name string) (int, bool) {
	for i := range s.Bodies {
		if s.Bodies[i].Name == name {
			return i, true
		}
	}
	return 0, false
}

// Camera is the index of a camera by its name, and whether there is one.
func (s *Scene) Camera(name string) (int, bool) {
	for i := range s.Cameras {
		if s.Cameras[i].Name == name {
			return i, true
		}
	}
	return 0, false
}
