package syntax

// lookKinds are the statements of the look section.
var lookKinds = []*Kind{
	define[LookHead](Kind{
		Words:   []string{"look"},
		Section: "look",
		Head:    true,
		Usage:   "look",
		Means:   "Starts the section of what this production does and never does.",
		Example: "look",
	}),
	define[Never](Kind{
		Words:   []string{"never"},
		Section: "look",
		Usage:   "never zoom | never modern in frame | never tighter than SIZE",
		Means:   "Something that must not happen in this production.",
		Example: "never tighter than waist",
		Doc:     "SIZE, loosest to tightest: `wide`, `full`, `knee`, `thigh`, `waist`, `chest`, `shoulders`, `face`, `eyes`. `never modern in frame` holds for whatever is called `modern`.",
	}),
	define[Only](Kind{
		Words:   []string{"only"},
		Section: "look",
		Usage:   "only lens NAME+",
		Means:   "The lenses that may be used.",
		Example: "only lens w24 w32",
		Doc:     "Commas between the names may be written or left out.",
	}),
	define[BlurLimit](Kind{
		Words:   []string{"blur"},
		Section: "look",
		Usage:   "blur behind at most NUMBER %",
		Means:   "The most the background may be blurred, of the frame's width.",
		Example: "blur behind at most 1.5 %",
		Doc:     "Beyond it the set behind a face is no longer told apart.",
	}),
	define[PanLimit](Kind{
		Words:   []string{"pan"},
		Section: "look",
		Usage:   "pan at least DURATION a frame",
		Means:   "The least time a thing takes to cross the frame in a pan: the strobing limit.",
		Example: "pan at least 7 s a frame",
		Doc:     "A pan that is faster is seen as a flutter of edges.",
	}),
	define[ExposureLimit](Kind{
		Words:   []string{"exposure"},
		Section: "look",
		Usage:   "exposure within NUMBER stops",
		Means:   "How far the exposure may be off.",
		Example: "exposure within 0.5 stops",
	}),
	define[UnderLimit](Kind{
		Words:   []string{"faces"},
		Section: "look",
		Usage:   "faces at most NUMBER stops under",
		Means:   "How far under the stop of the lens a face may be lit that a camera `sees`.",
		Example: "faces at most 2 stops under",
		Doc:     "Counted is the light of the lamps whose candela the kit gives. Without this line it is 3 stops, and a warning.",
	}),
	define[SpeedLimit](Kind{
		Words:   []string{"speed"},
		Section: "look",
		Usage:   "speed CLASS at most SPEED [back SPEED]",
		Means:   "How fast a class of rig may move here, forward and backing up.",
		Example: "speed body-rig at most 1.8 m/s back 1 m/s",
	}),
}
