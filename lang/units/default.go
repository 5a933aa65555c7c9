package units

// Default is one value that is taken for granted where a plan gives none, as
// text for people, and where it comes from.
type Default struct {
	Name   string // "person, walking pace"
	Value  string // "1.3 m/s, limit 2 m/s"
	Source string
}

// Practice is the source of a habit of the trade that no published source was
// at hand for.
const Practice = "common practice, no source, from memory"
