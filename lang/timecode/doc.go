// Package timecode turns frames into the labels and lengths crews use: SMPTE
// timecode, film footage and running times, musical counts and bars, and the
// length of spoken words.
//
// It knows nothing of plans; it imports units only.
package timecode
