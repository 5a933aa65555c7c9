// Package pace is how a move of a known length spends its time: trapezoids of
// speed with any entry and exit speed, caps where the way bends, the cruise
// speed that fills a given time, and the eases of pans and tilts.
//
// It knows lengths and speeds, not paths or plans, and imports only units.
package pace
