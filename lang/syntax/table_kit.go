package syntax

// kitKinds are the statements of the kit section.
var kitKinds = []*Kind{
	define[KitHead](Kind{
		Words:   []string{"kit"},
		Section: "kit",
		Head:    true,
		Usage:   "kit",
		Means:   "Starts the section of what shoots and lights.",
		Example: "kit",
	}),
	define[Camera](Kind{
		Words:   []string{"camera"},
		Section: "kit",
		Usage:   "camera NAME sensor LENGTH x LENGTH [squeeze NUMBER] [weighs MASS]",
		Means:   "A camera: the width and height of its sensor, the squeeze of its lenses, its weight ready to shoot.",
		Example: "camera A sensor 24.9 mm x 14 mm weighs 2.6 kg",
		Doc:     "The squeeze is 1 if not given. The weight counts towards what a rig can carry, with the lens.",
	}),
	define[Lens](Kind{
		Words:   []string{"lens"},
		Section: "kit",
		Usage:   "lens NAME LENGTH [to LENGTH] [stops T to T] [weighs MASS] [close LENGTH]",
		Means:   "A lens; with two focal lengths, a zoom.",
		Example: "lens w24 24 mm stops T2 to T22 weighs 1.2 kg close 0.35 m",
		Doc:     "`close` is the nearest it focuses. A stop that a camera `takes` must lie within its stops.",
	}),
	define[Rig](Kind{
		Words:   []string{"rig"},
		Section: "kit",
		Usage:   "rig NAME CLASS [carries MASS [to MASS]] [size LENGTH x LENGTH] [high LENGTH] [reach LENGTH] [seats INT] [speed SPEED] [back SPEED] [pan ANGLE/s]",
		Means:   "What carries a camera, and what it can do.",
		Example: "rig cart cart size 2.4 m x 1.2 m high 0.5 m seats 3",
		Doc:     "CLASS is one of `body-rig`, `gimbal`, `handheld`, `sticks`, `dolly`, `slider`, `jib`, `crane`, `cart`, `cable`, `hide`. What is not given is taken from the class; `longhand kit` lists it.",
	}),
	define[Vehicle](Kind{
		Words:   []string{"vehicle"},
		Section: "kit",
		Usage:   "vehicle NAME LENGTH x LENGTH HIGH [gear]",
		Means:   "Something that drives, by its length, width and height.",
		Example: "vehicle van 4.6 m x 1.9 m high 2.3 m",
		Doc:     "Driving among people and cameras is for the safety officer and the drivers to allow; the plan says where and how fast.",
	}),
	define[Lamp](Kind{
		Words:   []string{"lamp"},
		Section: "kit",
		Usage:   "lamp NAME POWER [colour NAME|KELVIN] [changes] [modern] [NUMBER cd] [seen]",
		Means:   "A kind of lamp.",
		Example: "lamp par 650 W colour 3200 K 12000 cd",
		Doc:     "A lamp that `changes` can take any colour; one that does not has one colour for good. `modern` must not be seen in a period; `seen` may be in frame.",
	}),
	define[Wash](Kind{
		Words:   []string{"wash"},
		Section: "kit",
		Usage:   "wash NAME LAMP [x INT] on GRID",
		Means:   "A group of lamps on a grid, brought up and down together.",
		Example: "wash amber par x 12 on hall",
		Doc:     "Without a number it is one lamp.",
	}),
	define[Card](Kind{
		Words:   []string{"card"},
		Section: "kit",
		Usage:   "card NAME LENGTH x LENGTH [colour NAME]",
		Means:   "A cover round a lens or a rig, to hide it.",
		Example: "card grey 0.4 m x 0.3 m colour grey",
		Doc:     "Used with `hides behind HOLE card NAME`.",
	}),
}
