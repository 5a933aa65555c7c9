package syntax

// restKinds are the statements of lights, doors and the rest.
var restKinds = []*Kind{
	define[Handoff](Kind{
		Words:   []string{"handoff"},
		Section: "beat",
		Usage:   "handoff CAMERA from RIG to RIG [with CREW] [at PLACE] [when EVENT] [weight CREW]",
		Means:   "A camera goes from one rig to another while it rolls.",
		Example: "handoff A from cart to vest at C1 weight nils",
		Doc:     "`with` names who takes the camera, if another than had it; `weight` names who takes the operator's place, so that the rig stays in balance; who may step off, and when, is for the rig's own grip to say.",
	}),
	define[Cut](Kind{
		Words:   []string{"cut"},
		Section: "beat",
		Usage:   "cut to CAMERA [TIMING]",
		Means:   "Which camera the edit uses from here.",
		Example: "cut to B when mina reaches M2",
		Doc:     "Used for the cut list of a take shot with more than one camera. The check says what the cut would show.",
	}),
	define[Cue](Kind{
		Words:   []string{"cue"},
		Section: "beat",
		Usage:   "cue NAME WASH NUMBER %[, WASH NUMBER %...] [over DURATION] [TIMING]",
		Means:   "Brings washes to a level.",
		Example: "cue dusk amber 20 %, blue 80 % over 12 s when mina reaches M1",
		Doc:     "Without `over` it happens at once. The cue's name is an event others can wait for: `when cue dusk`.",
	}),
	define[DoorMoves](Kind{
		Words:   []string{"door"},
		Section: "beat",
		Usage:   "door NAME opens|shuts [TIMING]",
		Means:   "A door opens or shuts by itself.",
		Example: "door dock opens when van leaves D0",
		Doc:     "For a door that a performer moves, write `otto opens dock`.",
	}),
	define[DeptNote](Kind{
		Words:   []string{"note"},
		Section: "beat",
		Usage:   "note DEPARTMENT STRING",
		Means:   "A note for a department's sheet.",
		Example: `note grip "Lay ply from the dock to C1."`,
		Doc:     "DEPARTMENT is the sheet it goes to: `camera`, `grip`, `electric`, `art`, `sound`, `effects`, `directors`, `movement`, `vehicles` or `script`.",
	}),
	define[PaintOut](Kind{
		Words:   []string{"paint"},
		Section: "beat",
		Usage:   "paint out NAME from CAMERA [during STRING[, STRING...]] because STRING",
		Means:   "Accepts that a thing is in frame, and sends it to the list for visual effects.",
		Example: `paint out A from B because "rig edge behind otto, night background"`,
		Doc:     "`during` names the beats it holds for; the whole take if not given. One that no longer matches anything is reported.",
	}),
	define[Allow](Kind{
		Words:   []string{"allow"},
		Section: "beat",
		Usage:   "allow CODE [NAME] [in CAMERA] [during STRING[, STRING...]] because STRING",
		Means:   "Accepts a finding, by its code.",
		Example: `allow two-moves A because "agreed with the operator"`,
		Doc:     "The code is the one a finding prints; a name narrows it to one thing, `in` to one camera, `during` to some beats. One that no longer matches anything is reported.",
	}),
}
