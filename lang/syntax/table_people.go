package syntax

// peopleKinds are the statements of the people section.
var peopleKinds = []*Kind{
	define[PeopleHead](Kind{
		Words:   []string{"people"},
		Section: "people",
		Head:    true,
		Usage:   "people",
		Means:   "Starts the section of who is there.",
		Example: "people",
	}),
	define[Performer](Kind{
		Words:   []string{"performer"},
		Section: "people",
		Usage:   "performer NAME [STRING] [height LENGTH] [spread NUMBER %]",
		Means:   "Somebody the cameras may see.",
		Example: `performer mina "Telegraphist" height 1.66 m spread 4 %`,
		Doc:     "The text is the part they play. 1.7 m tall if not given.",
	}),
	define[Crew](Kind{
		Words:   []string{"crew"},
		Section: "people",
		Usage:   "crew NAME [STRING] [height LENGTH] [weighs MASS] [spread NUMBER %]",
		Means:   "Somebody the cameras must not see.",
		Example: `crew ida "A operator" height 1.78 m weighs 70 kg`,
		Doc:     "A weight is needed where the person's weight is used against another's.",
	}),
}
