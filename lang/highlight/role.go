package highlight

// Role is what a piece of a plan's text is to its reader.
type Role int

// The roles that grammars tell apart.
const (
	Plain     Role = iota // blanks, and what fits nothing
	Comment               // from # to the end of the line
	Text                  // "..."
	Escape                // \" and \\ in a text
	Number                // a number, a quantity, a clock, a date, a film gauge
	Stop                  // T2.8
	Section               // take, set, beat: the word that starts a section
	Statement             // wall, lens, handoff: the word that starts a line
	Verb                  // walks, sees: the word after the name that starts a line
	Join                  // to, at, when
	Option                // the other words of the language: wild, fifty-fifty, waist
	Class                 // body-rig, crane, where a class must stand
	Declared              // a name where it is given
	Name                  // a name where it is used
	Mark                  // ( ) , +
	Wrong                 // a quote or a sign the language does not know
)

// String is the role in a word, as in the names of groups and faces.
func (r Role) String() string {
	return [...]string{"Plain", "Comment", "Text", "Escape", "Number", "Stop", "Section", "Statement", "Verb",
		"Join", "Option", "Class", "Declared", "Name", "Mark", "Wrong"}[r]
}

// roles are all but Plain, in order.
func roles() []Role {
	var all []Role
	for r := Comment; r <= Wrong; r++ {
		all = append(all, r)
	}
	return all
}
