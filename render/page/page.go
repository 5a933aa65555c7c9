package page

import (
	"bytes"
	"context"
	"embed"
	"encoding/json"
	"errors"
	"html"
	"strings"

	"longhand/lang/compile"
)

//go:embed files
var files embed.FS

// scripts are joined in this order: later ones use what earlier ones define.
var scripts = []string{"decode", "sightline", "overhead", "lens", "figure", "perspective", "order", "strip", "keys", "play"}

// Options is how a page is written; the zero value is the file to hand round.
type Options struct {
	// Live is a script that keeps a served page up to date. A page with one may
	// ask its own server for news, and nothing else.
	Live string
}

// errNothing says that a plan was not worked out far enough to be played.
var errNothing = errors.New("the plan was not worked out to the end, so there is nothing to play")

// Write makes the page of a take.
func Write(ctx context.Context, r *compile.Result, o Options) ([]byte, error) {
	data, err := Data(ctx, r)
	if err != nil {
		return nil, err
	}
	return Around(r.Plan.Take.Title, data, o)
}

// Data is what a page knows of a take, as JSON that is safe within HTML.
func Data(ctx context.Context, r *compile.Result) ([]byte, error) {
	if r == nil || r.Plan == nil || r.Tracks == nil || r.Stage == nil || r.Sight == nil || len(r.Files) == 0 {
		return nil, errNothing
	}
	d, err := gather(ctx, r)
	if err != nil {
		return nil, err
	}
	return json.Marshal(d)
}

// Around puts the page round what it knows; nil data is a page that waits for
// some.
func Around(title string, data []byte, o Options) ([]byte, error) {
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
	live := ""
	if o.Live != "" {
		connect = "'self'"
		live = "<script>\n" + o.Live + "</script>\n"
	}
	return []byte(strings.NewReplacer(
		"{{title}}", html.EscapeString(title),
		"{{connect}}", connect,
		"{{style}}", string(style),
		"{{data}}", string(data),
		"{{script}}", script.String(),
		"{{live}}", live,
	).Replace(string(shell))), nil
}
