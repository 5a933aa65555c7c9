// Package sky works out the sun over a place on a day: where it stands, when it
// rises, sets and passes the limits of twilight, the windows of light a take can
// be rolled in, how bright a clear sky is, and how many tries fit.
//
// The sun's position is by the method of the NOAA solar calculator (J. Meeus,
// Astronomical Algorithms, low precision), good to about 0.01° and, for times,
// to a few seconds between 72° north and south, 1800 to 2400. Horizons are level,
// skies are clear, and the moon does not shine.
//
// What does not happen on a day is a value, not an error: a window has a
// [State], and a midsummer night in the north is [Never].
//
// The package knows nothing of plans; it imports units only.
package sky
