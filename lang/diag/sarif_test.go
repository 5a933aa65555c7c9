package diag_test

import (
	"bytes"
	"context"
	"encoding/json"
	"net/url"
	"os"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/check"
	"longhand/lang/compile"
	"longhand/lang/diag"
	"longhand/lang/source"
)

// sarifLogs are the logs of every plan that explains a finding of the text or of
// the clock, and of some that no plan has: a file with blanks and marks in its
// name, a finding without place, a fix in two files.
func sarifLogs(t *testing.T) map[string]any {
	t.Helper()
	out := map[string]any{}
	put := func(name string, list []diag.Diagnostic) {
		var b bytes.Buffer
		require.NoError(t, diag.WriteSARIF(&b, list, map[diag.Code]string{"late": "a stated time is missed"}))
		v, err := jsonschema.UnmarshalJSON(&b)
		require.NoError(t, err)
		out[name] = v
	}
	timed := check.Timed
	for _, e := range compile.Catalog() {
		r, err := compile.Text(context.Background(), "plan.take", e.Bad, compile.Options{UpTo: &timed})
		require.NoError(t, err)
		put(string(e.Code), r.Findings)
	}
	f := source.NewFile("a: b/Über #1 50%.take", "beat \"Über\"\n")
	g := source.NewFile("c:d.take", "x\n")
	at := source.Span{File: f, Start: 6, End: 11}
	var b diag.Bag
	b.Errorf("late", at, "late by 1 s").Note("so").Relate(source.Span{File: g, Start: 0, End: 1}, "here").
		Fix("do", diag.Edit{Span: at, Text: ""}, diag.Edit{Span: source.Span{File: g}, Text: "y"}).
		Relate(source.Span{}, "nowhere")
	b.Add(diag.Diagnostic{Code: "soft", Message: "no place"})
	put("odd names", b.Sorted())
	put("nothing", nil)
	return out
}

// The schema of SARIF 2.1.0 is OASIS's and not a part of this project; the
// environment says where a copy of it is.
func TestSARIFIsValidByItsSchema(t *testing.T) {
	file := os.Getenv("SARIF_SCHEMA")
	if file == "" {
		t.Skip("SARIF_SCHEMA names no copy of the schema")
	}
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(data))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	require.NoError(t, c.AddResource("sarif.json", doc))
	schema, err := c.Compile("sarif.json")
	require.NoError(t, err)
	for name, log := range sarifLogs(t) {
		assert.NoError(t, schema.Validate(log), name)
	}
	broken := sarifLogs(t)["late"].(map[string]any)
	result := broken["runs"].([]any)[0].(map[string]any)["results"].([]any)[0].(map[string]any)
	result["locations"].([]any)[0].(map[string]any)["physicalLocation"].(map[string]any)["region"].(map[string]any)["startLine"] = json.Number("0")
	assert.Error(t, schema.Validate(broken), "the schema itself tells right from wrong")
}

// What the standard requires (SARIF 2.1.0, sections 3.13.2, 3.18.2, 3.19.8, 3.27.11,
// 3.30.5, 3.55.2, 3.57.3), schema or none.
func TestSARIFHasWhatIsRequired(t *testing.T) {
	at := func(v any, keys ...any) any {
		t.Helper()
		for _, k := range keys {
			switch k := k.(type) {
			case string:
				m, ok := v.(map[string]any)
				require.True(t, ok)
				require.Contains(t, m, k)
				v = m[k]
			case int:
				v = v.([]any)[k]
			}
		}
		return v
	}
	location := func(v any) {
		t.Helper()
		ref, err := url.Parse(at(v, "physicalLocation", "artifactLocation", "uri").(string))
		require.NoError(t, err)
		assert.Empty(t, ref.Scheme, "%s", ref)
		region := at(v, "physicalLocation", "region")
		for _, k := range []string{"startLine", "startColumn", "endLine", "endColumn"} {
			n, err := at(region, k).(json.Number).Int64()
			require.NoError(t, err)
			assert.Positive(t, n)
		}
	}
	for name, log := range sarifLogs(t) {
		assert.Equal(t, "2.1.0", at(log, "version"), name)
		run := at(log, "runs", 0)
		assert.NotEmpty(t, at(run, "tool", "driver", "name"))
		rules := at(run, "tool", "driver", "rules").([]any)
		for _, r := range at(run, "results").([]any) {
			assert.NotEmpty(t, at(r, "message", "text"))
			i, err := at(r, "ruleIndex").(json.Number).Int64()
			require.NoError(t, err)
			assert.Equal(t, at(rules[i], "id"), at(r, "ruleId"))
			assert.Contains(t, []string{"note", "warning", "error"}, at(r, "level"))
			m := r.(map[string]any)
			for _, k := range []string{"locations", "relatedLocations"} {
				if list, ok := m[k]; ok {
					for _, l := range list.([]any) {
						location(l)
					}
				}
			}
			if fixes, ok := m["fixes"]; ok {
				for _, f := range fixes.([]any) {
					for _, c := range at(f, "artifactChanges").([]any) {
						_, err := url.Parse(at(c, "artifactLocation", "uri").(string))
						require.NoError(t, err)
						assert.NotEmpty(t, at(c, "replacements"))
					}
				}
			}
		}
	}
}
