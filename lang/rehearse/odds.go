package rehearse

import "math"

// Odds is a chance seen in a number of tries, with the interval that holds the
// true chance 95 times in 100.
type Odds struct {
	Held, Of  int
	Chance    float64 // 0 to 1
	Low, High float64
}

// z95 is the point of the normal distribution that leaves 2.5 % above it.
const z95 = 1.959963984540054

// NewOdds is the chance of what held in so many of so many runs, with the score
// interval of E. B. Wilson, "Probable inference, the law of succession, and
// statistical inference", J. Am. Stat. Assoc. 22 (1927). Of no runs at all it
// says nothing: 0 to 1.
func NewOdds(held, of int) Odds {
	if of <= 0 {
		return Odds{Low: 0, High: 1}
	}
	n := float64(of)
	p := float64(held) / n
	z2 := z95 * z95
	middle := (p + z2/(2*n)) / (1 + z2/n)
	half := z95 / (1 + z2/n) * math.Sqrt(p*(1-p)/n+z2/(4*n*n))
	o := Odds{Held: held, Of: of, Chance: p, Low: max(middle-half, 0), High: min(middle+half, 1)}
	if held == 0 { // exactly so, which rounding does not know
		o.Low = 0
	}
	if held == of {
		o.High = 1
	}
	return o
}

// Once is the odds that at least one of n tries works, if each is as good as
// the others and knows nothing of them.
func (o Odds) Once(n int) Odds {
	if n < 0 {
		n = 0
	}
	once := func(p float64) float64 { return 1 - math.Pow(1-p, float64(n)) }
	o.Chance, o.Low, o.High = once(o.Chance), once(o.Low), once(o.High)
	return o
}

// TriesFor is how many tries make it as likely as wanted that one works; false
// if no number does.
func (o Odds) TriesFor(wanted float64) (int, bool) {
	switch {
	case wanted <= 0:
		return 0, true
	case o.Chance >= 1:
		return 1, true
	case o.Chance <= 0 || wanted >= 1:
		return 0, false
	}
	n := math.Log1p(-wanted) / math.Log1p(-o.Chance)
	return int(math.Ceil(n - 1e-9)), true
}
