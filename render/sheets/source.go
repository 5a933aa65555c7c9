package sheets

import (
	"fmt"
	"path"

	"longhand/lang/plan"
)

// sourceOf is where a line is written, without the folder, which is another one
// on each machine.
func sourceOf(a *plan.Action) string {
	return fmt.Sprintf("%s:%d", path.Base(a.Span.File.Name), a.Span.StartPos().Line)
}
