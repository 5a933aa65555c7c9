package lsp

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"time"
)

// disk reads files that are not open in the editor, and keeps what it read until
// the file is another.
type disk struct {
	mu   sync.Mutex
	kept map[string]kept
}

type kept struct {
	text string
	size int64
	at   time.Time
}

func newDisk() *disk { return &disk{kept: map[string]kept{}} }

// read is the text of a file.
func (d *disk) read(name string) (string, error) {
	path := filepath.FromSlash(name)
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "", fmt.Errorf("there is no file %s", name)
	case err != nil:
		return "", err
	case info.IsDir():
		return "", fmt.Errorf("%s is a folder", name)
	}
	d.mu.Lock()
	k, ok := d.kept[name]
	d.mu.Unlock()
	if ok && k.size == info.Size() && k.at.Equal(info.ModTime()) {
		return k.text, nil
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return "", err
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	d.kept[name] = kept{string(data), info.Size(), info.ModTime()}
	return string(data), nil
}

// forget makes the next read look again, whatever the file's date.
func (d *disk) forget(name string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	delete(d.kept, name)
}

// mostPlans is how many plans of a folder are looked at.
const mostPlans = 2000

// plansIn lists the .take files of folders, sorted.
func plansIn(folders []string) []string {
	var out []string
	for _, dir := range folders {
		// What can't be read is not there.
		_ = filepath.WalkDir(filepath.FromSlash(dir), func(path string, e fs.DirEntry, err error) error {
			switch {
			case err != nil:
				return fs.SkipDir
			case len(out) >= mostPlans:
				return fs.SkipAll
			case e.IsDir() && filepath.ToSlash(path) != dir && (strings.HasPrefix(e.Name(), ".") || e.Name() == "node_modules"):
				return fs.SkipDir
			case !e.IsDir() && filepath.Ext(path) == ".take":
				out = append(out, filepath.ToSlash(path))
			}
			return nil
		})
	}
	slices.Sort(out)
	return slices.Compact(out)
}
