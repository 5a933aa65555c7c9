package syntax

import (
	"fmt"
	"os"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"longhand/lang/source"
)

// dump writes what a statement says, a part a word: fields that are not said
// are left out, and so are the phrases in the order they were written.
func dump(v reflect.Value) string {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if v.IsNil() {
			return ""
		}
		return dump(v.Elem())
	case reflect.Slice:
		var parts []string
		for i := range v.Len() {
			parts = append(parts, dump(v.Index(i)))
		}
		if len(parts) == 0 {
			return ""
		}
		return "[" + strings.Join(parts, ", ") + "]"
	case reflect.String:
		return v.String()
	case reflect.Bool:
		if v.Bool() {
			return "yes"
		}
		return ""
	case reflect.Struct:
		return dumpStruct(v)
	}
	return fmt.Sprint(v)
}

func dumpStruct(v reflect.Value) string {
	var parts []string
	for i := range v.NumField() {
		f := v.Type().Field(i)
		switch f.Name {
		case "Node", "Phrases", "Details", "Said", "Excuses":
			continue
		}
		said := dump(v.Field(i))
		switch {
		case said == "" || said == "{}":
		case f.Anonymous:
			parts = append(parts, strings.TrimSuffix(strings.TrimPrefix(said, "{"), "}"))
		case (f.Name == "Text" || f.Name == "Raw") && f.Type.Kind() == reflect.String:
			return said
		default:
			parts = append(parts, f.Name+":"+said)
		}
	}
	return "{" + strings.Join(parts, " ") + "}"
}

// What each line of trees.take is read as is kept in trees.want, with the text
// its parts span.
func TestTrees(t *testing.T) {
	text, err := os.ReadFile("../../testdata/syntax/trees.take")
	require.NoError(t, err)
	src := source.NewFile("trees.take", string(text))
	file, bag := Parse(src)
	for _, d := range bag.Sorted() {
		t.Errorf("%v %s", d.Span.StartPos(), d.Message)
	}
	var out strings.Builder
	for _, l := range file.Lines {
		if l.Stmt == nil {
			continue
		}
		require.Equal(t, l.Span(src), l.Stmt.Span(src), "a statement spans its line")
		v := reflect.ValueOf(l.Stmt)
		fmt.Fprintf(&out, "%s\n    %s %s\n", l.Span(src).Text(), v.Elem().Type().Name(), dump(v))
		spans(t, src, v, &out)
	}
	golden(t, "../../testdata/syntax/trees.want", out.String())
}

// spans checks that every part spans text of its own, without blanks at its
// ends.
func spans(t *testing.T, src *source.File, v reflect.Value, out *strings.Builder) {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if v.IsNil() {
			return
		}
		if s, ok := v.Interface().(Spanned); ok {
			text := s.Span(src).Text()
			require.NotEmpty(t, text, "%T", v.Interface())
			require.Equal(t, strings.TrimSpace(text), text, "%T", v.Interface())
		}
		spans(t, src, v.Elem(), out)
	case reflect.Slice:
		for i := range v.Len() {
			spans(t, src, v.Index(i), out)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() && v.Type().Field(i).Name != "Node" {
				spans(t, src, v.Field(i), out)
			}
		}
	}
}
