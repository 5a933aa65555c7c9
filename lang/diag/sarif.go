package diag

import (
	"encoding/json"
	"io"
	"net/url"
	"sort"

	"longhand/lang/source"
)

// sarifLevels: the words of SARIF 2.1.0, section 3.27.10.
var sarifLevels = [...]string{Note: "note", Warning: "warning", Error: "error"}

// sarifSchema is where OASIS keeps the schema of the form.
const sarifSchema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"

type object = map[string]any

// WriteSARIF prints findings as a SARIF 2.1.0 log (OASIS standard). Columns
// count characters, which the log says.
func WriteSARIF(w io.Writer, list []Diagnostic, titles map[Code]string) error {
	var codes []string
	seen := map[Code]int{}
	for i := range list {
		if _, ok := seen[list[i].Code]; !ok {
			seen[list[i].Code] = 0
			codes = append(codes, string(list[i].Code))
		}
	}
	sort.Strings(codes)
	rules := []object{}
	for i, c := range codes {
		seen[Code(c)] = i
		title := titles[Code(c)]
		if title == "" {
			title = c
		}
		rules = append(rules, object{"id": c, "shortDescription": object{"text": title}})
	}
	prints := Fingerprints(list)
	results := []object{}
	for i := range list {
		d := &list[i]
		text := d.Message
		for _, n := range d.Notes {
			text += "\n" + n
		}
		r := object{
			"ruleId": string(d.Code), "ruleIndex": seen[d.Code], "level": sarifLevels[d.Severity],
			"message":             object{"text": text},
			"partialFingerprints": object{"statement/v1": prints[i]},
		}
		if d.Span.Valid() {
			r["locations"] = []object{sarifLocation(d.Span.File.Name, d.Span.StartPos(), d.Span.EndPos(), "")}
		}
		related := []object{}
		for _, x := range d.Related {
			if x.Span.Valid() {
				related = append(related, sarifLocation(x.Span.File.Name, x.Span.StartPos(), x.Span.EndPos(), x.Message))
			}
		}
		if len(related) > 0 {
			r["relatedLocations"] = related
		}
		if fixes := sarifFixes(d); len(fixes) > 0 {
			r["fixes"] = fixes
		}
		results = append(results, r)
	}
	log := object{
		"$schema": sarifSchema,
		"version": "2.1.0",
		"runs": []object{{
			"tool":       object{"driver": object{"name": "longhand", "rules": rules}},
			"columnKind": "unicodeCodePoints",
			"results":    results,
		}},
	}
	enc := json.NewEncoder(w)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	return enc.Encode(log)
}

func sarifFixes(d *Diagnostic) []object {
	var out []object
	for _, f := range d.Fixes {
		byFile := map[string][]object{}
		var files []string
		for _, e := range f.Edits {
			if !e.Span.Valid() {
				continue
			}
			name := e.Span.File.Name
			if byFile[name] == nil {
				files = append(files, name)
			}
			byFile[name] = append(byFile[name], object{
				"deletedRegion":   sarifRegion(e.Span.StartPos(), e.Span.EndPos()),
				"insertedContent": object{"text": e.Text},
			})
		}
		changes := []object{}
		for _, name := range files {
			changes = append(changes, object{"artifactLocation": object{"uri": uri(name)}, "replacements": byFile[name]})
		}
		if len(changes) > 0 {
			out = append(out, object{"description": object{"text": f.Title}, "artifactChanges": changes})
		}
	}
	return out
}

func sarifLocation(file string, start, end source.Pos, message string) object {
	loc := object{"physicalLocation": object{
		"artifactLocation": object{"uri": uri(file)},
		"region":           sarifRegion(start, end),
	}}
	if message != "" {
		loc["message"] = object{"text": message}
	}
	return loc
}

func sarifRegion(start, end source.Pos) object {
	return object{"startLine": start.Line, "startColumn": start.Column, "endLine": end.Line, "endColumn": end.Column}
}

// uri is a file's name as a relative reference (RFC 3986); a first part with a
// colon in it would be taken for a scheme without the dot before it.
func uri(file string) string { return (&url.URL{Path: file}).String() }
