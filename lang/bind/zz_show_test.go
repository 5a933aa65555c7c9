package bind

import (
	"fmt"
	"longhand/lang/diag"
	"longhand/lang/source"
	"longhand/lang/syntax"
	"os"
	"path/filepath"
	"testing"
)

var _ = source.NewFile
var _ = syntax.Parse

func TestZZShow(t *testing.T) {
	name := os.Getenv("SHOW")
	if name == "" {
		t.Skip()
	}
	files, bag := Load(func(p string) (string, error) { b, e := os.ReadFile(p); return string(b), e }, name)
	p, found := Bind(files)
	bag.Merge(found)
	diag.WriteText(os.Stdout, bag.Sorted(), diag.Paint{})
	fmt.Println(filepath.Base(name), len(p.Actions), "actions", bag.Len(), "findings")
}
