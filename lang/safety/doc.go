// Package safety holds the arithmetic that keeps people apart from what can hurt
// them, and the cautions that go with it: stopping distances, separation from
// machines, moments and counterweights, lifting, wind, and the sentences every
// output about vehicles, height, weights, heat and electricity must end with.
//
// It is arithmetic on paper. It does not replace a risk assessment, the law, the
// makers' plates and manuals, or licensed and competent people.
//
// The package knows nothing of plans; it imports units only.
package safety
