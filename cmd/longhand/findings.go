package main

import (
	"bytes"
	"context"

	"longhand/lang/compile"
	"longhand/lang/diag"
	"longhand/render/overhead"
)

// findings is what was found, for people and for machines.
func findings(_ context.Context, r *compile.Result, _ overhead.Options) ([]artifact, error) {
	var text, data, table bytes.Buffer
	if err := diag.WriteText(&text, r.Findings, diag.Paint{}); err != nil {
		return nil, err
	}
	text.WriteString(diag.Summary(r.Findings) + "\n")
	if err := diag.WriteJSON(&data, r.Findings); err != nil {
		return nil, err
	}
	if err := diag.WriteMarkdown(&table, r.Findings); err != nil {
		return nil, err
	}
	return []artifact{
		{"findings.txt", text.Bytes()}, {"findings.json", data.Bytes()}, {"findings.md", table.Bytes()},
	}, nil
}
