package main

import (
	"context"
	"sync"

	"longhand/lang/compile"
	"longhand/render/overhead"
	"longhand/render/sheets"
)

// making is one plan from which everything is made.
type making struct {
	ctx context.Context
	r   *compile.Result
	o   overhead.Options
	// rehearsal is what came of one; nil where none was asked for.
	rehearsal *sheets.Book
	// rows is the breakdown, worked out once for whoever asks first.
	rows func() (*sheets.Book, error)
}

func newMaking(ctx context.Context, r *compile.Result, o overhead.Options, rehearsal *sheets.Book) *making {
	return &making{ctx: ctx, r: r, o: o, rehearsal: rehearsal, rows: sync.OnceValues(func() (*sheets.Book, error) {
		return sheets.Breakdown(ctx, r)
	})}
}

// everything makes all there is of a plan, in the order of the folder. The
// makers know nothing of each other and work side by side.
func everything(ctx context.Context, r *compile.Result, o overhead.Options, rehearsal *sheets.Book) ([]artifact, error) {
	m := newMaking(ctx, r, o, rehearsal)
	makers := []func() ([]artifact, error){
		func() ([]artifact, error) { return drawings(ctx, r, o) },
		func() ([]artifact, error) { return pictures(ctx, r, o) },
		m.breakdown,
		m.book,
		m.cards,
		m.page,
		func() ([]artifact, error) { return findings(ctx, r, o) },
	}
	if rehearsal != nil {
		makers = append(makers, func() ([]artifact, error) { return sheetFiles(rehearsal, "sheets/") })
	}
	made := make([][]artifact, len(makers))
	errs := make([]error, len(makers))
	var wait sync.WaitGroup
	for i, make := range makers {
		wait.Go(func() { made[i], errs[i] = make() })
	}
	wait.Wait()
	var out []artifact
	for i := range makers {
		if errs[i] != nil {
			return nil, errs[i]
		}
		out = append(out, made[i]...)
	}
	return out, nil
}
