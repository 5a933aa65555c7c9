package syntax

// pickupKinds are the statements of the header of a pickup.
var pickupKinds = []*Kind{
	define[PickupHead](Kind{
		Words:   []string{"pickup"},
		Section: "pickup",
		Head:    true,
		Usage:   "pickup STRING after|into STRING [roll in WINDOW]",
		Means:   "Starts a shot made after the take, to follow a beat or to be cut into it; its lines are those of a beat.",
		Example: `pickup "Hands and letters" into "The racks"`,
	}),
}
