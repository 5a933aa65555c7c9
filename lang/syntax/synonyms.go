package syntax

// synonyms are words people may try first, and the language's word for what
// they most likely mean. Suggestions only: none of them is part of a plan.
var synonyms = map[string]string{
	// lines of a section
	"actor": "performer", "actress": "performer", "cast": "performer", "person": "performer", "extra": "performer",
	"operator": "crew", "grip": "crew", "technician": "crew",
	"light": "lamp", "fixture": "lamp", "lights": "wash", "group": "wash",
	"car": "vehicle", "truck": "vehicle", "bike": "vehicle",
	"box": "block", "table": "block", "furniture": "block", "prop": "block", "obstacle": "block",
	"column": "pillar", "post": "pillar", "floor": "platform", "balcony": "platform", "riser": "platform",
	"steps": "stairs", "point": "mark", "position": "mark", "spot": "mark", "power": "supply",
	"fps": "rate", "iso": "sensitivity", "ei": "sensitivity", "bpm": "tempo", "location": "place",
	"ratio": "aspect", "body": "camera", "glass": "lens", "flag": "card", "truss": "grid",
	"include": "use", "import": "use", "shot": "beat", "part": "beat", "cast-list": "people", "comment": "note",
	"ignore": "allow", "transfer": "handoff", "switch": "cut",
	// what somebody does
	"goes": "walks", "enters": "walks", "exits": "walks", "crosses": "walks", "travels": "moves",
	"rolls-to": "moves", "holds": "stands", "stays": "stands", "pauses": "waits", "speaks": "says",
	"looks": "turns", "faces": "turns", "rotates": "spins", "pirouettes": "spins", "jogs": "runs",
	"stoops": "crouches", "closes": "shuts", "mounts": "boards", "enters-on": "boards", "dismounts": "leaves",
	"tracks": "follows", "trails": "follows", "dollies": "pushes", "orbits": "circles", "arcs": "circles",
	"booms": "rises", "cranes": "rises", "jibs": "rises", "drops": "lowers", "focuses": "racks", "pulls-focus": "racks",
	"zooms": "takes", "frames": "sees", "shows": "sees", "records": "rolls", "starts": "rolls", "stops": "rests",
	"uses": "takes", "rides-on": "rides",
}

// meantBy is the word of a list that another most likely means: a near miss,
// or a synonym; "" if there is none.
func meantBy(word string, words []string) string {
	if near := Nearest(word, words); near != "" {
		return near
	}
	for _, w := range words {
		if synonyms[word] == w {
			return w
		}
	}
	return ""
}
