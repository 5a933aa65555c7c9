package main

import (
	"context"
	"fmt"
	"sort"
	"strings"

	"longhand/lang/compile"
	"longhand/lang/diag"
)

// compileOne compiles the plan of a command that makes something of it. A text
// with mistakes makes nothing: they are printed, and the error is errFound.
func (a *app) compileOne(ctx context.Context, name, stdinAs string) (*compile.Result, error) {
	if name != stdinName {
		files, err := takeFiles([]string{name})
		if err != nil {
			return nil, err
		}
		if len(files) != 1 {
			return nil, fmt.Errorf("%s holds %d plans; name one of them", name, len(files))
		}
		name = files[0]
	} else if stdinAs != "" {
		name = stdinAs
	}
	r, err := compile.Compile(ctx, a.reader(stdinAs), name, compile.Options{Progress: a.progress("looking")})
	if err != nil {
		return nil, err
	}
	if r.Empty() {
		return nil, fmt.Errorf("%s says nothing yet, so nothing was made of it; `longhand new` begins a plan", name)
	}
	if r.Stopped || r.Sight == nil {
		if err := a.printFindings(r.Findings); err != nil {
			return nil, err
		}
		fmt.Fprintf(a.err, "%s; nothing was made of %s\n", diag.Summary(r.Findings), name)
		return nil, errFound
	}
	return r, nil
}

// keys are a table's names, sorted.
func keys[T any](table map[string]T) []string {
	out := make([]string, 0, len(table))
	for k := range table {
		out = append(out, k)
	}
	sort.Strings(out)
	return out
}

// listed is a table's names in a sentence: "csv, html or json".
func listed[T any](table map[string]T) string {
	names := keys(table)
	if len(names) == 1 {
		return names[0]
	}
	return strings.Join(names[:len(names)-1], ", ") + " or " + names[len(names)-1]
}
