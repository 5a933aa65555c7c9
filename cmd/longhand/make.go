package main

import (
	"fmt"
	"os"
	"path/filepath"
	"time"

	"longhand/lang/compile"
	"longhand/lang/diag"
)

// make writes artifacts into a folder and says what became of each. What is
// wrong with the plan is said as well, and does not stop the making: a drawing of
// a take that can't be shot shows why.
func (a *app) make(command, dir string, files []artifact, r *compile.Result) error {
	if dir == stdinName && len(files) == 1 {
		return a.makeFile(dir, files[0].data, r)
	}
	done, err := writeFolder(filepath.FromSlash(dir), command, files)
	a.sayMade(done)
	if err != nil {
		return err
	}
	return a.saidOf(r)
}

// makeFile writes one file, or standard output, and says what is wrong with the
// plan.
func (a *app) makeFile(path string, data []byte, r *compile.Result) error {
	if path == stdinName {
		if _, err := a.out.Write(data); err != nil {
			return err
		}
	} else {
		if info, err := os.Stat(path); err == nil && info.IsDir() {
			return fmt.Errorf("%s is a folder; -o takes the name of a file", path)
		}
		same, err := writeFile(filepath.FromSlash(path), data)
		if err != nil {
			return err
		}
		a.sayMade([]made{{path, same}})
	}
	return a.saidOf(r)
}

// saidOf says in a line what was found, and whether that is an error.
func (a *app) saidOf(r *compile.Result) error {
	if n := len(r.Findings); n > 0 {
		fmt.Fprintf(a.err, "%s in %s; `longhand check` says more\n", diag.Summary(r.Findings), r.Files[0].Source.Name)
	}
	if r.Errors() > 0 {
		return errFound
	}
	return nil
}

func (a *app) sayMade(done []made) {
	for _, m := range done {
		state := "made"
		if m.unchanged {
			state = "unchanged"
		}
		fmt.Fprintf(a.out, "%-9s %s\n", state, filepath.ToSlash(m.path))
	}
}

// took says how long something took, for people.
func took(since time.Time) string {
	d := time.Since(since)
	if d < 10*time.Second {
		return fmt.Sprintf("%.2f s", d.Seconds())
	}
	return fmt.Sprintf("%.0f s", d.Seconds())
}
