package main

import (
	"context"
	"crypto/sha256"
	"os"
	"path/filepath"
	"time"
)

// How often the files of a plan are looked at, and how long a save has to have
// been over before it counts. Looking costs one question a file; every so many
// looks, what the files say is compared as well, for saves that change neither
// their time nor their size.
const (
	lookEvery   = 40 * time.Millisecond
	settled     = 20 * time.Millisecond
	readEvery   = 25 // looks
	goneMeans   = 10 // looks in a row: editors take a file away as they replace it
	mostSettles = 25 // a file that never rests is read as it is
)

// fileState is what a file is like from outside, and what it said.
type fileState struct {
	at   time.Time
	size int64
	gone bool
	sum  [sha256.Size]byte
}

// watched is the files that a plan was read from, or tried to be.
type watched struct {
	files map[string]fileState
	gone  map[string]int
}

func newWatched() *watched { return &watched{files: map[string]fileState{}, gone: map[string]int{}} }

// reading starts over: it returns a way to read files that notes each.
func (w *watched) reading() func(name string) (string, error) {
	w.files, w.gone = map[string]fileState{}, map[string]int{}
	return func(name string) (string, error) {
		state := look(name)
		data, err := os.ReadFile(filepath.FromSlash(name))
		if err != nil {
			w.files[name] = fileState{gone: true}
			return "", plainFileError(name, err)
		}
		state.sum = sha256.Sum256(data)
		w.files[name] = state
		return string(data), nil
	}
}

// look is a file from outside.
func look(name string) fileState {
	info, err := os.Stat(filepath.FromSlash(name))
	if err != nil {
		return fileState{gone: true}
	}
	return fileState{at: info.ModTime(), size: info.Size()}
}

// changed says whether some file no longer says what it said; deep reads all of
// them to tell, else only those that look different from outside.
func (w *watched) changed(deep bool) bool {
	for name, was := range w.files {
		now := look(name)
		if now.gone {
			if was.gone {
				continue
			}
			if w.gone[name]++; w.gone[name] >= goneMeans {
				return true
			}
			continue
		}
		delete(w.gone, name)
		if was.gone {
			return true
		}
		if !deep && now.at.Equal(was.at) && now.size == was.size {
			continue
		}
		data, err := os.ReadFile(filepath.FromSlash(name))
		if err != nil {
			continue // on its way; the next look will tell
		}
		if sha256.Sum256(data) != was.sum {
			return true
		}
		now.sum = was.sum
		w.files[name] = now
	}
	return false
}

// resting waits until no file has been written to for a moment.
func (w *watched) resting(ctx context.Context) {
	before := w.outside()
	for range mostSettles {
		select {
		case <-ctx.Done():
			return
		case <-time.After(settled):
		}
		now := w.outside()
		same := true
		for name, s := range now {
			same = same && before[name].at.Equal(s.at) && before[name].size == s.size && before[name].gone == s.gone
		}
		if same {
			return
		}
		before = now
	}
}

func (w *watched) outside() map[string]fileState {
	out := make(map[string]fileState, len(w.files))
	for name := range w.files {
		out[name] = look(name)
	}
	return out
}

// watcher builds when something changes.
type watcher struct {
	files *watched
	build func(ctx context.Context, files *watched) error
}

// run builds once and then at every change, until the context ends or a failure
// of the server comes in.
func (w *watcher) run(ctx context.Context, failed <-chan error) error {
	if err := w.build(ctx, w.files); err != nil {
		return err
	}
	tick := time.NewTicker(lookEvery)
	defer tick.Stop()
	for n := 1; ; n++ {
		select {
		case <-ctx.Done():
			return ctx.Err()
		case err := <-failed:
			return err
		case <-tick.C:
		}
		if !w.files.changed(n%readEvery == 0) {
			continue
		}
		w.files.resting(ctx)
		if err := w.build(ctx, w.files); err != nil {
			return err
		}
	}
}
