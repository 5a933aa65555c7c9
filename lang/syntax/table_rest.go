package syntax

// restKinds are the statements of lights, doors and the rest.
var restKinds = []*Kind{
	define[Handoff](Kind{
		Words:   []string{"handoff"},
		Section: "beat",
		Usage:   "handoff CAMERA from RIG to RIG [with CREW] [at PLACE] [when EVENT] [weight CREW]",
		Means:   "A camera goes from one rig to another while it rolls.",
		Example: "handoff A from cart to vest at C1 weight nils",
		Doc:     "`with` names who works the camera from here on, the same as before if nobody is named; `weight` names who takes the operator's place, so that the rig stays in balance.",
	}),
	define[Cut](Kind{
		Words:   []string{"cut"},
		Section: "beat",
		Usage:   "cut to CAMERA [TIMING]",
		Means:   "Which camera the edit uses from here.",
		Example: "cut to B when mina reaches M2",
	}),
	define[Cue](Kind{
		Words:   []string{"cue"},
		Section: "beat",
		Usage:   "cue NAME WASH NUMBER %[, WASH NUMBER %...] [over DURATION] [TIMING]",
		Means:   "Brings washes to a level.",
		Example: "cue dusk amber 20 %, blue 80 % over 12 s when mina reaches M1",
	}),
	define[DoorMoves](Kind{
		Words:   []string{"door"},
		Section: "beat",
		Usage:   "door NAME opens|shuts [TIMING]",
		Means:   "A door opens or shuts by itself.",
		Example: "door dock opens when van leaves D0",
	}),
	define[DeptNote](Kind{
		Words:   []string{"note"},
		Section: "beat",
		Usage:   "note DEPARTMENT STRING",
		Means:   "A note for a department's sheet.",
		Example: `note grip "Lay ply from the dock to C1."`,
	}),
	define[PaintOut](Kind{
		Words:   []string{"paint"},
		Section: "beat",
		Usage:   "paint out NAME from CAMERA [during STRING[, STRING...]] because STRING",
		Means:   "Accepts that a thing is in frame, and sends it to the list for visual effects.",
		Example: `paint out A from B because "rig edge behind otto, night background"`,
		Doc:     "One that no longer matches anything is reported.",
	}),
	define[Allow](Kind{
		Words:   []string{"allow"},
		Section: "beat",
		Usage:   "allow CODE [NAME] [in CAMERA] [during STRING[, STRING...]] because STRING",
		Means:   "Accepts a finding, by its code.",
		Example: `allow two-moves A because "agreed with the operator"`,
		Doc:     "One that no longer matches anything is reported.",
	}),
}
