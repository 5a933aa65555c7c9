package syntax

// pickupKinds are the statements of the header of a pickup.
var pickupKinds = []*Kind{
	define[PickupHead](Kind{
		Words:   []string{"pickup"},
		Section: "pickup",
		Head:    true,
		Usage:   "pickup STRING after|into STRING [roll in WINDOW]",
		Means:   "Starts a shot made after the take.",
		Example: `pickup "Hands and letters" into "The racks"`,
		Doc:     "It follows the beat (`after`) or leads into it (`into`). Nothing of it is part of the take.",
	}),
}
