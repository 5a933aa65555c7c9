package syntax

// Statements is every kind of statement there is, by section, in the order of
// the reference.
var Statements = concat(takeKinds, setKinds, kitKinds, peopleKinds, lookKinds, beatKinds, moveKinds, cameraKinds, restKinds, pickupKinds)

func concat(lists ...[]*Kind) []*Kind {
	var all []*Kind
	for _, l := range lists {
		all = append(all, l...)
	}
	return all
}
