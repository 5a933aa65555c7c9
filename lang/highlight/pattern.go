package highlight

import "strings"

// pattern is a regular expression that can be written in the dialect of each
// engine.
type pattern interface {
	write(b *strings.Builder, d dialect)
}

// dialect writes what engines write differently.
type dialect interface {
	literal(text string) string
	letter() string          // one letter, or the accent of one
	set(chars string) string // one of the characters
	group(inner string) string
	capture(inner string) string
	either() string
	optional() string
	repeat() string // none or more
	many() string   // one or more
	ahead(inner string, is bool) string
	wordStart() string
	wordEnd() string
	lineStart(blanks string) string
}

type (
	literal string
	letter  struct{}
	set     string
	seq     []pattern
	either  []pattern
	opt     struct{ pattern }
	repeat  struct{ pattern }
	many    struct{ pattern }
	ahead   struct {
		pattern
		is bool
	}
	wordStart struct{}
	wordEnd   struct{}
)

// written is a pattern in a dialect.
func written(p pattern, d dialect) string {
	var b strings.Builder
	p.write(&b, d)
	return b.String()
}

func (p literal) write(b *strings.Builder, d dialect) { b.WriteString(d.literal(string(p))) }
func (letter) write(b *strings.Builder, d dialect)    { b.WriteString(d.letter()) }
func (p set) write(b *strings.Builder, d dialect)     { b.WriteString(d.set(string(p))) }
func (wordStart) write(b *strings.Builder, d dialect) { b.WriteString(d.wordStart()) }
func (wordEnd) write(b *strings.Builder, d dialect)   { b.WriteString(d.wordEnd()) }

func (p seq) write(b *strings.Builder, d dialect) {
	for _, part := range p {
		part.write(b, d)
	}
}

func (p either) write(b *strings.Builder, d dialect) {
	parts := make([]string, len(p))
	for i, part := range p {
		parts[i] = written(part, d)
	}
	b.WriteString(d.group(strings.Join(parts, d.either())))
}

func (p opt) write(b *strings.Builder, d dialect) {
	b.WriteString(d.group(written(p.pattern, d)) + d.optional())
}

func (p repeat) write(b *strings.Builder, d dialect) {
	b.WriteString(d.group(written(p.pattern, d)) + d.repeat())
}

func (p many) write(b *strings.Builder, d dialect) {
	b.WriteString(d.group(written(p.pattern, d)) + d.many())
}

func (p ahead) write(b *strings.Builder, d dialect) {
	b.WriteString(d.ahead(written(p.pattern, d), p.is))
}
