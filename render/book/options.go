package book

import (
	"context"
	"errors"
	"time"

	"longhand/lang/compile"
	"longhand/lang/departments"
	"longhand/render/pdf"
	"longhand/render/scene"
	"longhand/render/sheets"
)

// Options is what a book holds; the zero value is everything, on A4, in black and
// white.
type Options struct {
	Paper scene.Paper // zero for A4
	// For is the department whose booklet it is; "" for the whole book.
	For departments.Name
	// Before is an earlier revision: pages and rows that differ from it have a bar
	// in the margin. OnlyChanged leaves out the pages that do not.
	Before      *compile.Result
	OnlyChanged bool
	Colour      bool // of the overheads
	// Sheets is the breakdown, where it was made already; nil to make it.
	Sheets *sheets.Book
	// Rehearsal is what came of a rehearsal, to have it in the book; nil for none.
	Rehearsal *sheets.Book
}

func (o Options) paper() scene.Paper {
	if o.Paper.Width <= 0 || o.Paper.Height <= 0 {
		return scene.A4
	}
	return o.Paper
}

// Write makes the book as a PDF file.
func Write(ctx context.Context, r *compile.Result, o Options) ([]byte, error) {
	d, err := Make(ctx, r, o)
	if err != nil {
		return nil, err
	}
	return pdf.Write(d)
}

// WriteCards makes the cards as a PDF file.
func WriteCards(ctx context.Context, r *compile.Result, o Options) ([]byte, error) {
	d, err := Cards(ctx, r, o)
	if err != nil {
		return nil, err
	}
	return pdf.Write(d)
}

func usable(r *compile.Result) error {
	if r == nil || r.Plan == nil || r.Tracks == nil || r.Stage == nil || r.Sight == nil {
		return errors.New("the plan has mistakes in its text, so there is nothing to make a book of")
	}
	return nil
}

// created is the date that goes into the file: the revision's, or else the day of
// the shoot.
func created(r *compile.Result) time.Time {
	t := r.Plan.Take
	if at, err := time.Parse("2006-01-02", t.RevisionDate); err == nil {
		return at
	}
	if t.Date != nil {
		return time.Date(t.Date.Year, time.Month(t.Date.Month), t.Date.Day, 0, 0, 0, 0, time.UTC)
	}
	return time.Time{}
}
