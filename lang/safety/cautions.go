package safety

// Topic is what can hurt someone.
type Topic int

const (
	Vehicles Topic = iota
	Height
	Cranes
	Weights
	Worn
	Heat
	Electricity
	Darkness
	Flashing
	Machines // automated and remote moves
	Glass
	Hiding
	Holes
	Wind
	PowerLines
	Stunts
	Crowds
	Daylight
	Water
)

// Defer is the clause every caution ends with.
const Defer = "follow the local code and the licensed person in charge of it on the day"

// General is the line for the foot of every page.
const General = "A plan is arithmetic on paper: it does not replace a risk assessment, the law, the makers' plates, " +
	"or licensed and competent people. Anyone can call stop."

type caution struct{ name, text string }

var cautions = [...]caution{
	Vehicles: {"vehicles", "nobody is ahead of a moving vehicle inside its stopping distance, nobody rides outside one but on an engineered mount with a restraint, " +
		"and the driver sees and hears; mounts have safety lines; roads are closed and a professional drives"},
	Height: {"height", "edges, roofs, stairs, pits and traps are guarded, or people are secured by a competent person"},
	Cranes: {"cranes", "people ride only what is made for carrying people, belted, inside the maker's load and wind limits; " +
		"nobody steps off a balanced arm before the crew has secured it and said so; nothing swings over people without a fixed stop"},
	Weights:     {"weights", "balance is reckoned without play or wind: try the build at floor level, on levelled and chocked ground"},
	Worn:        {"worn rigs", "a worn rig hides the feet: no walking backwards near edges, stairs, water, glass or vehicles, a spotter with a hand on the operator, rest and relief"},
	Heat:        {"heat", "lamps burn skin and set cloth alight: keep their marked distance, bond them and guard their glass"},
	Electricity: {"electricity", "loads and voltage drop here are planning figures; circuits, generators, earthing, protection and anything near water are for a licensed electrician"},
	Darkness:    {"darkness", "people walk blind in a blackout or a dazzle: rehearse at full light, keep a safety light, make the first dark run slow"},
	Flashing:    {"flashing", "flashing light can bring on seizures: warn cast, crew and audience"},
	Machines:    {"machines", "remote and automated moves need an emergency stop, a watcher who sees all of it, and distances set by a competent person; lighting control lines never move anything"},
	Glass:       {"glass", "mirrors and two-way glass are laminated or filmed, framed, and fixed against falling"},
	Hiding:      {"hiding places", "every hiding place has a way out, air, and a way to call stop; nobody is locked in"},
	Holes:       {"holes", "before a wall is cut, someone who may has looked for structure, wiring, pipes and asbestos"},
	Wind:        {"wind", "arms, frames and towers come down at the maker's limit; the load grows with the square of the wind"},
	PowerLines:  {"power lines", "keep 3 m or more from overhead lines, with a spotter who does nothing else"},
	Stunts:      {"stunts and effects", "wires, fire, smoke, weapons, animals, children and water have laws and licensed people of their own"},
	Crowds:      {"crowds", "people are counted, have lanes of their own, and exits stay clear"},
	Daylight:    {"daylight", "times of the sun are for a level horizon and clear air; people hurry as the light goes: set a last start and keep it"},
	Water:       {"water", "no mains near water, rain or wet floors without protected circuits and someone in charge"},
}

// Topics lists the topics in order.
func Topics() []Topic {
	out := make([]Topic, len(cautions))
	for i := range out {
		out[i] = Topic(i)
	}
	return out
}

// String is the topic's word: "power lines".
func (t Topic) String() string {
	if t < 0 || int(t) >= len(cautions) {
		return ""
	}
	return cautions[t].name
}

// Caution is the sentence for a topic, as a note: lower case, no full stop, and
// ending in [Defer]. It is empty for a topic there is not.
func (t Topic) Caution() string {
	if t.String() == "" {
		return ""
	}
	return cautions[t].text + "; " + Defer
}
