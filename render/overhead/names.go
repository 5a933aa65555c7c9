package overhead

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"longhand/lang/plan"
)

// signs gives each person and camera the one or two letters that stand in its
// sign: cameras their names, people the first letter of theirs, and a second
// where two would be the same.
func signs(p *plan.Plan) map[plan.Thing]string {
	out, taken := map[plan.Thing]string{}, map[string]bool{}
	give := func(t plan.Thing, tries ...string) {
		for _, s := range tries {
			if s != "" && !taken[s] {
				out[t], taken[s] = s, true
				return
			}
		}
		for n := 2; ; n++ {
			s := firstRunes(tries[0], 1) + strconv.Itoa(n)
			if !taken[s] {
				out[t], taken[s] = s, true
				return
			}
		}
	}
	for _, c := range p.Kit.Cameras {
		give(c, firstRunes(c.Name, 2), firstRunes(c.Name, 1))
	}
	for _, who := range p.People {
		n := who.Name
		first := upper(firstRunes(n, 1))
		tries := []string{first}
		for i := 1; i < utf8.RuneCountInString(n); i++ {
			r := []rune(n)[i]
			if unicode.IsLetter(r) || unicode.IsDigit(r) {
				tries = append(tries, first+strings.ToLower(string(r)))
			}
		}
		give(who, tries...)
	}
	return out
}

func firstRunes(s string, n int) string {
	r := []rune(s)
	return string(r[:min(n, len(r))])
}

func upper(s string) string { return strings.ToUpper(s) }
