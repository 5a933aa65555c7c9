package main

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"sort"

	"longhand/lang/compile"
)

// mend applies the fixes of plans to their files and says what it did.
func (a *app) mend(ctx context.Context, files []string, stdinAs string) error {
	read := a.reader(stdinAs)
	for _, name := range files {
		if name == stdinName {
			return errors.New("--fix writes files, and standard input is none; name a file")
		}
		text, err := read(name)
		if err != nil {
			return err
		}
		if len(files) > 1 && !hasTake(text) {
			continue // mended with the plans that use it
		}
		m, err := compile.Mend(ctx, read, name)
		if err != nil {
			return err
		}
		var changed []string
		for n := range m.Texts {
			changed = append(changed, n)
		}
		sort.Strings(changed)
		for _, n := range changed {
			if _, err := writeFile(filepath.FromSlash(n), []byte(m.Texts[n])); err != nil {
				return err
			}
		}
		for _, d := range m.Applied {
			at := d.Span.StartPos()
			fmt.Fprintf(a.err, "%s:%d: %s: %s\n", d.Span.File.Name, at.Line, d.Code, d.Fixes[0].Title)
		}
	}
	return nil
}
