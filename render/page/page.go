package page

import (
	"bytes"
	"context"
	"embed"
	"encoding/json"
	"errors"
	"fmt"
	"html"
	"strings"

	"longhand/lang/compile"
	"longhand/render/sheets"
)

//go:embed files
var files embed.FS

// scripts are joined in this order: later ones use what earlier ones define.
var scripts = []string{"decode", "sightline", "overhead", "lens", "figure", "perspective", "mirror", "order", "strip", "rehearsal", "keys", "play"}

// errNothing says that a plan was not worked out far enough to be played.
var errNothing = errors.New("the plan was not worked out to the end, so there is nothing to play")

// Options is what a page shows besides the take; the zero value is nothing more.
type Options struct {
	// Rehearsal is what came of a rehearsal, as sheets.Rehearsal has it; nil for
	// none.
	Rehearsal *sheets.Book
}

// Write makes the page of a take.
func Write(ctx context.Context, r *compile.Result, o Options) ([]byte, error) {
	data, err := Data(ctx, r, o)
	if err != nil {
		return nil, err
	}
	return around(r.Plan.Take.Title, data, nothing)
}

// Live makes a page for a server that keeps it up to date: of data as Data has
// it, nil where there is none yet, and its version. It may ask the server it came
// from, and nobody else: for /news, a stream of events "plan" with the version
// there is and "broken" with a JSON string of what is wrong with the text, and
// for /plan.json, the newest data.
func Live(title string, data []byte, version int) ([]byte, error) {
	script, err := files.ReadFile("files/live.js")
	if err != nil {
		return nil, err
	}
	return around(title, data, live{string(script), version})
}

// live is what a served page has more than one handed round.
type live struct {
	script  string
	version int
}

var nothing live

// Data is what a page knows of a take, as JSON that is safe within HTML.
func Data(ctx context.Context, r *compile.Result, o Options) ([]byte, error) {
	if r == nil || r.Plan == nil || r.Tracks == nil || r.Stage == nil || r.Sight == nil || len(r.Files) == 0 {
		return nil, errNothing
	}
	d, err := gather(ctx, r)
	if err != nil {
		return nil, err
	}
	if o.Rehearsal != nil {
		d.Rehearsal = rehearsalOf(o.Rehearsal, r.Tracks.Rate, r.Tracks.Frames)
	}
	return json.Marshal(d)
}

// around puts the page round what it knows; nil data is a page that waits for
// some.
func around(title string, data []byte, l live) ([]byte, error) {
	if data == nil {
		data = []byte("null")
	}
	shell, err := files.ReadFile("files/page.html")
	if err != nil {
		return nil, err
	}
	style, err := files.ReadFile("files/page.css")
	if err != nil {
		return nil, err
	}
	var script bytes.Buffer
	script.WriteString("(() => {\n\"use strict\";\n")
	for _, name := range scripts {
		text, err := files.ReadFile("files/" + name + ".js")
		if err != nil {
			return nil, err
		}
		script.Write(text)
	}
	script.WriteString("})();\n")
	connect := "'none'"
	more := ""
	if l.script != "" {
		connect = "'self'"
		more = fmt.Sprintf("<script data-version=\"%d\">\n%s</script>\n", l.version, l.script)
	}
	return []byte(strings.NewReplacer(
		"{{title}}", html.EscapeString(title),
		"{{connect}}", connect,
		"{{style}}", string(style),
		"{{data}}", string(data),
		"{{script}}", script.String(),
		"{{live}}", more,
	).Replace(string(shell))), nil
}
