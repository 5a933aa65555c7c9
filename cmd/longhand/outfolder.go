package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"sort"
	"strings"
)

// artifact is a file to be made, its name relative to the output folder, with
// forward slashes.
type artifact struct {
	name string
	data []byte
}

// made says what became of an artifact.
type made struct {
	path      string
	unchanged bool
}

// manifest lists the files that a command gave a folder, so that its next run can
// take away those it no longer makes, and none of anybody else's, another
// command's included.
const manifest = ".longhand-made"

func manifestFor(command string) string { return manifest + "-" + command }

// writeFolder puts artifacts into a folder. Everything is computed before
// anything is written; each file is written beside its place and renamed, and
// one that would not change is left alone. A folder that did not exist comes
// into being whole or not at all.
func writeFolder(dir, command string, files []artifact) ([]made, error) {
	if dir == stdinName {
		return nil, fmt.Errorf("longhand %s makes %d files here, and standard output takes one; name a folder", command, len(files))
	}
	sort.Slice(files, func(i, j int) bool { return files[i].name < files[j].name })
	if info, err := os.Stat(dir); err == nil && !info.IsDir() {
		return nil, fmt.Errorf("%s is a file; name a folder to write into", dir)
	} else if errors.Is(err, os.ErrNotExist) {
		return newFolder(dir, command, files)
	} else if err != nil {
		return nil, err
	}
	stale := readManifest(dir, command)
	var out []made
	for _, f := range files {
		path := filepath.Join(dir, filepath.FromSlash(f.name))
		same, err := writeFile(path, f.data)
		if err != nil {
			return out, err
		}
		delete(stale, f.name)
		out = append(out, made{path, same})
	}
	if _, err := writeFile(filepath.Join(dir, manifestFor(command)), manifestOf(files)); err != nil {
		return out, err
	}
	for name := range stale {
		if err := os.Remove(filepath.Join(dir, filepath.FromSlash(name))); err != nil && !errors.Is(err, os.ErrNotExist) {
			return out, err
		}
	}
	return out, nil
}

func newFolder(dir, command string, files []artifact) ([]made, error) {
	parent := filepath.Dir(filepath.Clean(dir))
	if err := os.MkdirAll(parent, 0o755); err != nil {
		return nil, err
	}
	temp, err := os.MkdirTemp(parent, ".longhand-*")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(temp)
	if err := os.Chmod(temp, 0o755); err != nil {
		return nil, err
	}
	var out []made
	list := artifact{manifestFor(command), manifestOf(files)}
	for _, f := range append(files[:len(files):len(files)], list) {
		path := filepath.Join(temp, filepath.FromSlash(f.name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			return nil, err
		}
		if err := os.WriteFile(path, f.data, 0o644); err != nil {
			return nil, err
		}
		if f.name != list.name {
			out = append(out, made{filepath.Join(dir, filepath.FromSlash(f.name)), false})
		}
	}
	if err := os.Rename(temp, dir); err != nil {
		return nil, err
	}
	return out, nil
}

// writeFile replaces a file in one step, or leaves it alone where it already
// says the same.
func writeFile(path string, data []byte) (unchanged bool, err error) {
	if old, err := os.ReadFile(path); err == nil && bytes.Equal(old, data) {
		return true, nil
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return false, err
	}
	mode := os.FileMode(0o644)
	if info, err := os.Stat(path); err == nil {
		mode = info.Mode().Perm()
	}
	// A link is followed, so that what it points to is what changes.
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real
	}
	temp, err := os.CreateTemp(filepath.Dir(path), ".longhand-*")
	if err != nil {
		return false, err
	}
	defer os.Remove(temp.Name())
	if _, err := temp.Write(data); err != nil {
		temp.Close()
		return false, err
	}
	if err := temp.Chmod(mode); err != nil {
		temp.Close()
		return false, err
	}
	if err := temp.Close(); err != nil {
		return false, err
	}
	return false, os.Rename(temp.Name(), path)
}

func manifestOf(files []artifact) []byte {
	var b strings.Builder
	for _, f := range files {
		b.WriteString(f.name + "\n")
	}
	return []byte(b.String())
}

func readManifest(dir, command string) map[string]bool {
	out := map[string]bool{}
	data, err := os.ReadFile(filepath.Join(dir, manifestFor(command)))
	if err != nil {
		return out
	}
	for _, line := range strings.Split(string(data), "\n") {
		// Never reach outside the folder, whatever the list says.
		if line != "" && filepath.IsLocal(filepath.FromSlash(line)) {
			out[line] = true
		}
	}
	return out
}
