package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"sort"
	"strings"

	"github.com/bmatcuk/doublestar/v4"
)

// stdinName stands for standard input where a file is named.
const stdinName = "-"

// takeFiles finds the files that arguments name: files as they are, folders as
// all the .take files in them, patterns as what they match, "-" as standard
// input. Names have forward slashes, are in the order given, folders sorted, and
// none comes twice.
func takeFiles(args []string) ([]string, error) {
	var out []string
	seen := map[string]bool{}
	add := func(name string) {
		name = filepath.ToSlash(name)
		if !seen[name] {
			seen[name] = true
			out = append(out, name)
		}
	}
	for _, arg := range args {
		if arg == stdinName {
			add(arg)
			continue
		}
		info, err := os.Stat(arg)
		switch {
		case err == nil && info.IsDir():
			found, err := inFolder(arg)
			if err != nil {
				return nil, err
			}
			if len(found) == 0 {
				return nil, fmt.Errorf("there is no .take file in %s", arg)
			}
			for _, name := range found {
				add(name)
			}
		case err == nil:
			add(arg)
		case errors.Is(err, fs.ErrNotExist) && strings.ContainsAny(arg, "*?[{"):
			found, err := doublestar.FilepathGlob(arg)
			if err != nil {
				return nil, fmt.Errorf("%s is not a pattern: %w", arg, err)
			}
			sort.Strings(found)
			if len(found) == 0 {
				return nil, fmt.Errorf("no file matches %s", arg)
			}
			for _, name := range found {
				add(name)
			}
		default:
			return nil, plainFileError(arg, err)
		}
	}
	return out, nil
}

func inFolder(dir string) ([]string, error) {
	var out []string
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && path != dir && strings.HasPrefix(d.Name(), ".") {
			return filepath.SkipDir
		}
		if !d.IsDir() && filepath.Ext(path) == ".take" {
			out = append(out, path)
		}
		return nil
	})
	sort.Strings(out)
	return out, err
}

// reader reads files, and standard input once under the name it was given.
func (a *app) reader(stdinAs string) func(name string) (string, error) {
	var stdin *string
	return func(name string) (string, error) {
		if name == stdinName || stdinAs != "" && name == stdinAs {
			if stdin == nil {
				data, err := io.ReadAll(a.in)
				if err != nil {
					return "", fmt.Errorf("standard input: %w", err)
				}
				text := string(data)
				stdin = &text
			}
			return *stdin, nil
		}
		data, err := os.ReadFile(filepath.FromSlash(name))
		if err != nil {
			return "", plainFileError(name, err)
		}
		return string(data), nil
	}
}

// plainFileError says what is wrong with a file without the words of the system.
func plainFileError(name string, err error) error {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("there is no file %s", name)
	case errors.Is(err, fs.ErrPermission):
		return fmt.Errorf("%s may not be read", name)
	}
	return err
}
