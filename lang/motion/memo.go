package motion

import (
	"sync"

	"longhand/lang/pace"
	"longhand/lang/units"
)

// memo keeps the paces last worked out for a route: rounds, and playings of one
// take after another, ask for the same ones over and over. It changes no
// answer.
type memo struct {
	mu       sync.Mutex
	natural0 *pace.Profile
	naturalM mover
	timed    *pace.Profile
	timedM   mover
	once     sync.Once
	turn     sway
}

// turning is the heading along the route, made when first asked for.
func (k *memo) turning(make func() sway) *sway {
	k.once.Do(func() { k.turn = make() })
	return &k.turn
}

func (k *memo) natural(m mover) *pace.Profile {
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.natural0 != nil && k.naturalM == m {
		return k.natural0
	}
	return nil
}

func (k *memo) keepNatural(m mover, p *pace.Profile) {
	k.mu.Lock()
	defer k.mu.Unlock()
	k.natural0, k.naturalM = p, m
}

func (k *memo) in(m mover, took units.Seconds) *pace.Profile {
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.timed != nil && k.timedM == m && k.timed.Duration() == took {
		return k.timed
	}
	return nil
}

func (k *memo) keepIn(m mover, p *pace.Profile) {
	k.mu.Lock()
	defer k.mu.Unlock()
	k.timed, k.timedM = p, m
}
