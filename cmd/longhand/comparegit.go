package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// revision reads files as they were in a revision of a git repository. It only
// ever reads what is in the repository already.
type revision struct {
	ctx  context.Context
	rev  string
	dir  string // the folder git is asked in: the nearest one to the file that is there
	tree string // the commit
}

const unshallow = "; this is a shallow clone, so fetch more of its history first (git fetch --unshallow, or fetch-depth: 0 in a CI job)"

// openRevision finds a revision in the repository that holds a file.
func openRevision(ctx context.Context, rev, file string) (*revision, error) {
	if strings.HasPrefix(rev, "-") || strings.ContainsAny(rev, "\x00\n") || rev == "" {
		return nil, fmt.Errorf("%q is no revision", rev)
	}
	dir, err := filepath.Abs(filepath.Dir(file))
	if err != nil {
		return nil, err
	}
	for {
		if info, err := os.Stat(dir); err == nil && info.IsDir() || dir == filepath.Dir(dir) {
			break
		}
		dir = filepath.Dir(dir)
	}
	r := &revision{ctx: ctx, rev: rev, dir: dir}
	if _, err := r.git("rev-parse", "--git-dir"); err != nil {
		return nil, err
	}
	out, err := r.git("rev-parse", "--verify", "--quiet", rev+"^{commit}")
	if err != nil {
		if errors.Is(err, errGit) {
			err = fmt.Errorf("there is no file %s, and git knows no revision of that name%s", rev, r.hint())
		}
		return nil, err
	}
	r.tree = strings.TrimSpace(string(out))
	return r, nil
}

// hint says that what is missing may be so because the clone is shallow.
func (r *revision) hint() string {
	if out, err := r.git("rev-parse", "--is-shallow-repository"); err == nil && strings.TrimSpace(string(out)) == "true" {
		return unshallow
	}
	return ""
}

// read gives a file's text as it was.
func (r *revision) read(name string) (string, error) {
	path, err := filepath.Abs(filepath.FromSlash(name))
	if err != nil {
		return "", err
	}
	rel, err := filepath.Rel(r.dir, path)
	if err != nil {
		return "", fmt.Errorf("%s is not in the repository", name)
	}
	out, err := r.git("show", r.tree+":./"+filepath.ToSlash(rel))
	if err == nil {
		return string(out), nil
	}
	var g *gitError
	if !errors.As(err, &g) {
		return "", err
	}
	switch said := g.said; {
	case strings.Contains(said, "does not exist in"), strings.Contains(said, "exists on disk, but not in"):
		return "", fmt.Errorf("there is no %s in %s", name, r.rev)
	case strings.Contains(said, "outside repository"):
		return "", fmt.Errorf("%s is not in the repository", name)
	case strings.Contains(said, "bad object"), strings.Contains(said, "missing"), strings.Contains(said, "promisor"), strings.Contains(said, "unable to read"):
		return "", fmt.Errorf("%s of %s is not in this clone, which holds only a part of the repository%s", name, r.rev, r.hint())
	}
	return "", err
}

// errGit is what every failure that git itself reports wraps.
var errGit = errors.New("git")

type gitError struct{ said string }

func (e *gitError) Error() string { return "git says: " + e.said }
func (e *gitError) Unwrap() error { return errGit }

// git runs git and gives what it prints. It asks nobody for a password, takes no
// locks and fetches nothing.
func (r *revision) git(args ...string) ([]byte, error) {
	cmd := exec.CommandContext(r.ctx, "git", append([]string{"-C", r.dir, "--no-pager"}, args...)...)
	cmd.Env = append(os.Environ(), "LC_ALL=C", "LANGUAGE=C", "GIT_TERMINAL_PROMPT=0", "GIT_OPTIONAL_LOCKS=0", "GIT_NO_LAZY_FETCH=1")
	var out, errs bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &errs
	err := cmd.Run()
	if err == nil {
		return out.Bytes(), nil
	}
	if ctxErr := r.ctx.Err(); ctxErr != nil {
		return nil, ctxErr
	}
	said := strings.TrimSpace(errs.String())
	switch {
	case errors.Is(err, exec.ErrNotFound):
		return nil, fmt.Errorf("git is not installed, so %s can't be read as a revision; compare two files instead", r.rev)
	case strings.Contains(said, "not a git repository"):
		return nil, fmt.Errorf("there is no file %s, and no git repository in %s, so no revision of that name", r.rev, r.dir)
	case strings.Contains(said, "dubious ownership"):
		return nil, fmt.Errorf("git does not read the repository in %s, because it belongs to somebody else; see git help config, safe.directory", r.dir)
	}
	said, _, _ = strings.Cut(strings.TrimPrefix(said, "fatal: "), "\n")
	return nil, &gitError{said}
}
