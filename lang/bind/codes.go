package bind

import (
	"longhand/lang/diag"
	"longhand/lang/syntax"
)

// Codes explains every finding about a plan's text: those of package syntax, of
// Load and of Bind. The plan of use-loop has to be read from a file plan.take.
var Codes = []diag.Entry{
	{
		Code: syntax.CodeSyntax, Severity: diag.Error,
		Title: "a line that cannot be read",
		Explain: `The words of the line do not fit together: one is missing, misspelt, or where it cannot stand. The line is left out, and all others are still read.

The finding underlines the first word that does not fit and shows how a line of its kind is written. Every line is one statement; a statement goes on on the next line only after a comma or inside brackets.`,
		Bad: `people
  performer mina

beat "One"
  mina waits 3 s
`,
		Good: `people
  performer mina

beat "One"
  mina waits for 3 s
`,
	},
	{
		Code: CodeUnknownWord, Severity: diag.Error,
		Title:   "a word that the language does not have",
		Explain: `A statement, a class of rig, a shot size, a part of the day, a department, a film gauge or the code of a finding is named that does not exist. Where the word is nearly one that does, that one is suggested; otherwise the finding lists those there are.`,
		Bad: `kit
  rig vest bodyrig
`,
		Good: `kit
  rig vest body-rig
`,
	},
	{
		Code: syntax.CodeSection, Severity: diag.Error,
		Title:   "a line in a section it does not belong to",
		Explain: `Walls stand in the set, lenses in the kit, people in people, and what they do in a beat. A section begins with its word (take, set, kit, people, look, beat, pickup) and runs to the next one. Move the line, or begin its section above it.`,
		Bad: `kit
  wall street (0, 0) (24, 0) high 5 m
`,
		Good: `set "Hall"
  wall street (0, 0) (24, 0) high 5 m
`,
	},
	{
		Code: syntax.CodeReserved, Severity: diag.Error,
		Title:   "a name that is a word of the language",
		Explain: `The words of the language, those that begin a section or a line and those that join its parts, cannot be names: no line with them could be read for sure. Take another name, or add to it: set-door. A name may have hyphens between its letters and digits, and no blanks.`,
		Bad: `set "Hall"
  mark set (3, 3)
`,
		Good: `set "Hall"
  mark set-door (3, 3)
`,
	},
	{
		Code: CodeUnknownName, Severity: diag.Error,
		Title: "a name that nothing has",
		Explain: `The line names a person, a mark, a rig, a beat or the like that no line of the plan, or of the files it uses, declares. Names differ by case: m1 is not M1. A name near to it is suggested where there is one.

A name is reported once, with all places where it is used, so that one slip in a declaration is one finding.`,
		Bad: `people
  performer mina

beat "One"
  minna waits for 3 s
`,
		Good: `people
  performer mina

beat "One"
  mina waits for 3 s
`,
	},
	{
		Code: CodeNameTwice, Severity: diag.Error,
		At:      []string{"set", "kit", "people", "beat header", "beat cue", "pickup header"},
		Title:   "two things with one name",
		Explain: `Everything in set, kit and people shares one list of names, so that a name means one thing wherever it stands. Beats have their own titles, and cues their own names; those may not repeat either, since other lines wait for them.`,
		Bad: `set "Hall"
  mark M1 (3, 3)
  mark M1 (4, 4)
`,
		Good: `set "Hall"
  mark M1 (3, 3)
  mark M2 (4, 4)
`,
	},
	{
		Code: CodeWrongKind, Severity: diag.Error,
		Title:   "the right name in the wrong place",
		Explain: `The name exists and stands for something that cannot do this, or to which it cannot be done: a vehicle says nothing, nobody walks to a lens, a camera follows no wall. The finding says what the name stands for and what may stand here.`,
		Bad: `kit
  vehicle van 4.6 m x 1.9 m high 2.3 m

beat "One"
  van says "Last collection."
`,
		Good: `people
  performer mina

beat "One"
  mina says "Last collection."
`,
	},
	{
		Code: CodeWrongUnit, Severity: diag.Error,
		Title:   "a weight where a length belongs, and the like",
		Explain: `A quantity carries its unit, and the unit says what it measures. Lengths are in m, cm, mm, ft, in or feet and inches such as 8'6"; times in s, min, f (frames), counts, bars or on a clock such as 1:04.5; speeds in m/s, km/h, ft/s or mph; angles in deg; weights in kg, g or lb.`,
		Bad: `set "Hall"
  wall street (0, 0) (24, 0) high 5 kg
`,
		Good: `set "Hall"
  wall street (0, 0) (24, 0) high 5 m
`,
	},
	{
		Code: CodeOutOfRange, Severity: diag.Error,
		Title:   "a number that cannot be meant",
		Explain: `The number is outside of what makes sense: a door beyond the end of its wall, a rate of 0, a stop the lens does not have, a 30th of February, a range whose second end comes first. The finding says the number, the limits and where they come from.`,
		Bad: `set "Hall"
  wall street (0, 0) (24, 0) high 5 m
  door dock on street 20 m to 25 m
`,
		Good: `set "Hall"
  wall street (0, 0) (24, 0) high 5 m
  door dock on street 20 m to 23 m
`,
	},
	{
		Code: CodeNoDefault, Severity: diag.Error,
		Title:   "something needed that is not said",
		Explain: `Much has a default (longhand kit lists them all), but not this: any value would be a guess. A camera needs its sensor, a rig and a lens; a zoom needs its focal length; counts need a tempo; dusk needs a place and a date.`,
		Bad: `kit
  vehicle van 4.6 m x 1.9 m
`,
		Good: `kit
  vehicle van 4.6 m x 1.9 m high 2.3 m
`,
	},
	{
		Code: CodeSaidTwice, Severity: diag.Error,
		At:      []string{"take", "look", "beat"},
		Title:   "something given a second time",
		Explain: `One take has one rate, one aspect, one roll; a roll is as long as record says or as the film is; a frame names each target once. Where two lines say the same thing, one of them is out of date, and only you know which.`,
		Bad: `take "Last Collection"
  rate 24 fps
  rate 25 fps
`,
		Good: `take "Last Collection"
  rate 25 fps
`,
	},
	{
		Code: CodeTwoTimings, Severity: diag.Error,
		At:    []string{"beat"},
		Title: "two times for one thing",
		Explain: `A line has one start (starting, when, or with) and one length (in, for, until, or, along a way whose length is known, a speed). Two of them would contradict each other sooner or later. To be told whether a time is met without setting it, write by.

A time is +9 s since the beat began, or 0:09 on the take's clock; a bare 9 s could be either.`,
		Bad: `set "Hall"
  mark M1 (3, 3)
  mark M2 (9, 3)

people
  performer mina

beat "One"
  mina walks from M1 to M2 in 6 s at 1.2 m/s
`,
		Good: `set "Hall"
  mark M1 (3, 3)
  mark M2 (9, 3)

people
  performer mina

beat "One"
  mina walks from M1 to M2 at 1.2 m/s by +6 s
`,
	},
	{
		Code: CodeWrongPhrase, Severity: diag.Error,
		At:      []string{"beat", "set"},
		Title:   "a part of a line that means nothing here",
		Explain: `The line could be read, and a part of it has no meaning for what it does: a speed for a spoken line, a length of time for what happens at once, a radius for a way that goes round nothing. Leave it away, or say it as the finding proposes.`,
		Bad: `people
  performer mina

beat "One"
  mina says "Last collection." at 2 m/s
`,
		Good: `people
  performer mina

beat "One"
  mina says "Last collection." in 2 s
`,
	},
	{
		Code: CodeMarkLoop, Severity: diag.Error,
		At:      []string{"set mark"},
		Title:   "marks told from each other in a circle",
		Explain: `A mark may be told from another, 2 m left of M1, and that one from a third, in any order; at the end of the chain one of them must be a point. Here the chain comes back to where it began, so that none of them lies anywhere. Give one of them a point.`,
		Bad: `set "Hall"
  mark M1 2 m left of M2
  mark M2 2 m right of M1
`,
		Good: `set "Hall"
  mark M1 (4, 2)
  mark M2 2 m right of M1
`,
	},
	{
		Code: CodeNoSuchLine, Severity: diag.Error,
		At:      []string{"beat"},
		Title:   "leaning on a line that is not there",
		Explain: `A line needs another one that the plan does not have: with starts it together with its subject's line before it in the beat, counters goes against a spin in the same beat, handoff takes a camera from a rig that it has been put on, and only who rides or boards something can leave it.`,
		Bad: `set "Hall"
  mark M1 (3, 3)
  mark M2 (9, 3)

people
  performer mina

beat "One"
  mina walks from M1 to M2 with
`,
		Good: `set "Hall"
  mark M1 (3, 3)
  mark M2 (9, 3)

people
  performer mina

beat "One"
  mina walks from M1 to M2
  mina says "Last collection." with
`,
	},
	{
		Code: CodeNoFile, Severity: diag.Error,
		At:      []string{"take use", "set plan"},
		Title:   "a file that cannot be read",
		Explain: `A use line names a file, or a plan line a drawing, that is not there or may not be read. Its path is seen from the folder of the file the line stands in, with forward slashes. Names that the missing file may declare are not reported.`,
		Bad: `use "no-such-hall.take"
`,
		Good: `set "Hall"
`,
	},
	{
		Code: CodeUseLoop, Severity: diag.Error,
		At:      []string{"take use"},
		Title:   "files that use each other in a circle",
		Explain: `A file is used that, itself or through others, uses the one the line stands in. Nothing is lost by it, since each file is read once; but nobody can tell any more which of them stands on the other. Put what both need in a file of its own, and use that from both.`,
		Bad: `use "plan.take"
`,
		Good: `set "Hall"
`,
	},
	{
		Code: CodeBadDrawing, Severity: diag.Error,
		At:    []string{"set plan"},
		Title: "a drawing that cannot be read",
		Explain: `A plan line names a floor plan that is there and yields nothing: it is neither SVG nor DXF by its name, its text breaks off or is in a form that is not read, it is measured past all bounds, or nothing on it lies on a layer or in a group whose name says wall, block, platform or pillar. Names that the drawing may hold are not reported meanwhile.

Layers are named by what lies on them: wall, or with a name and heights: wall street 3 m, platform stage 0 m to 0.6 m. A DXF drawing has to be saved as text.`,
		Bad: `set "Hall"
  plan "hall.pdf" scale 1:50
`,
		Good: `set "Hall"
  wall street (0, 0) (24, 0) high 5 m
`,
	},
	{
		Code: CodeDrawingNote, Severity: diag.Note,
		At:    []string{"set plan"},
		Title: "parts of a drawing that were left out or guessed",
		Explain: `A floor plan was read, and not all of it: shapes whose layer or group says none of wall, block, platform and pillar in its name, outlines that are not closed or whose sides cross, pictures. Or a DXF drawing does not say what it is measured in ($INSUNITS), and millimetres were taken.

Nothing is wrong if what is left out stands in nobody's way: lettering, furniture that goes, dimensions. Otherwise rename its layer in the drawing. The plan of this finding needs a drawing hall.svg with such shapes in it.`,
		Bad: `set "Hall"
  plan "hall.svg" scale 1:50
`,
		Good: `set "Hall"
  wall street (0, 0) (24, 0) high 5 m
`,
	},
}
