package book

import (
	"regexp"
	"strings"
)

// past is what an earlier revision's book had.
type past struct {
	pages map[string]bool // what each page says and shows, by key
	rows  map[string]bool
}

// remembered is what a later revision is compared with.
func (m *maker) remembered() *past {
	p := &past{pages: map[string]bool{}, rows: m.rows}
	for i := range m.body {
		p.pages[m.look(&m.body[i])] = true
	}
	return p
}

// numbered is what differs between two revisions of a page that say the same: the
// number of the page, the revision itself.
var numbered = regexp.MustCompile(`\b\d+ of \d+\b|\bpage \d+\b`)

// look is all a page shows, but for numbers of pages and the revision's name.
func (m *maker) look(l *leaf) string {
	t := m.p.Take
	var b strings.Builder
	b.WriteString(l.key + "\n")
	for line := range strings.Lines(l.Sheet.Dump()) {
		revision := t.Revision != "" && strings.Contains(line, t.Revision) || t.RevisionDate != "" && strings.Contains(line, t.RevisionDate)
		if !revision && !numbered.MatchString(line) {
			b.WriteString(line)
		}
	}
	return b.String()
}

// mark marks the pages that the earlier revision did not have.
func (m *maker) mark() {
	if m.past == nil {
		return
	}
	for i := range m.body {
		m.body[i].changed = !m.body[i].asked && !m.past.pages[m.look(&m.body[i])]
	}
}

// row notes a row of a table and tells whether the earlier revision lacks it.
func (m *maker) row(key string, cells []string) (changed bool) {
	id := key + "\x00" + strings.Join(cells, "\x00")
	m.mu.Lock()
	m.rows[id] = true
	m.mu.Unlock()
	return m.past != nil && !m.past.rows[id]
}
