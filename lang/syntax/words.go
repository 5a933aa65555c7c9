package syntax

// SectionWords start a section, in the order a plan usually has them.
var SectionWords = []string{"take", "set", "kit", "people", "look", "beat", "pickup"}

// Keywords join the parts of a line and are never names.
var Keywords = []string{
	"after", "at", "backwards", "because", "before", "behind", "by", "curved", "down",
	"during", "eight", "facing", "for", "from", "high", "in", "left", "minus", "of", "on",
	"over", "plus", "right", "round", "starting", "straight", "to", "until", "up", "via",
	"when", "with",
}

// Sizes are how much of a person a frame holds, loosest to tightest.
var Sizes = []string{"wide", "full", "knee", "thigh", "waist", "chest", "shoulders", "face", "eyes"}

// Classes are the kinds of rig.
var Classes = []string{
	"body-rig", "gimbal", "handheld", "sticks", "dolly", "slider", "jib", "crane", "cart", "cable", "hide",
}

// Windows are the parts of the day a take may be rolled in.
var Windows = []string{
	"civil-dusk", "nautical-dusk", "civil-dawn", "nautical-dawn", "golden-evening", "golden-morning", "day", "night",
}

var keywordSet, sectionSet = setOf(Keywords), setOf(SectionWords)

// IsKeyword reports whether a word joins the parts of a line.
func IsKeyword(word string) bool { return keywordSet[word] }

// IsSectionWord reports whether a word starts a section.
func IsSectionWord(word string) bool { return sectionSet[word] }

func setOf(words []string) map[string]bool {
	set := make(map[string]bool, len(words))
	for _, w := range words {
		set[w] = true
	}
	return set
}
