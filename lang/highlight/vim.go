package highlight

import (
	"fmt"
	"slices"
	"strings"
)

// vimGroups are the groups of Vim's colour schemes.
var vimGroups = map[Role]string{
	Comment: "Comment", Text: "String", Escape: "SpecialChar", Number: "Number", Stop: "Float", Section: "Structure",
	Statement: "Statement", Verb: "Function", Join: "Operator", Option: "Constant", Class: "Type",
	Declared: "Identifier", Mark: "Delimiter", Wrong: "Error",
}

// vimSyntax is the syntax file. In Vim the last of the items that fit at one
// place wins, so the rules stand in the opposite order.
func vimSyntax() []byte {
	var b strings.Builder
	fmt.Fprintf(&b, `" Vim syntax file
" Language: longhand, plans of long takes
" %s

if exists("b:current_syntax")
  finish
endif

scriptencoding utf-8
syntax case match
syntax iskeyword @,48-57,192-255,-
syntax sync minlines=1

`, madeBy)
	all := rules()
	links := map[Role][]string{}
	for i := len(all) - 1; i >= 0; i-- {
		vimRule(&b, i+1, all[i], links)
	}
	b.WriteString("syntax match longhandEscape /\\\\./ contained\n")
	b.WriteString("syntax region longhandText start=/\"/ skip=/\\\\./ end=/\"\\|$/ oneline keepend contains=longhandEscape,@Spell\n")
	b.WriteString("syntax match longhandComment /#.*/ contains=@Spell\n\n")
	for _, r := range roles() {
		group := vimGroups[r]
		if group == "" {
			continue
		}
		fmt.Fprintf(&b, "highlight default link longhand%v %s\n", r, group)
		names := links[r]
		slices.Sort(names)
		for _, n := range slices.Compact(names) {
			fmt.Fprintf(&b, "highlight default link %s longhand%v\n", n, r)
		}
	}
	b.WriteString("\nlet b:current_syntax = \"longhand\"\n")
	return []byte(b.String())
}

// vimRule writes a rule; its parts after the first are items of their own, which
// are looked for behind the part before.
func vimRule(b *strings.Builder, n int, r rule, links map[Role][]string) {
	group := func(at int) string {
		if at == 0 {
			return fmt.Sprintf("longhand%v", r.Parts[0].Role)
		}
		g := fmt.Sprintf("longhand%v_%d_%d", r.Parts[at].Role, n, at+1)
		links[r.Parts[at].Role] = append(links[r.Parts[at].Role], g)
		return g
	}
	d := vim{}
	for at := len(r.Parts) - 1; at >= 0; at-- {
		match := written(r.Parts[at].Pattern, d)
		flags := ""
		if at == 0 {
			if r.Start {
				match = d.lineStart(written(blank, d)) + match
			}
			if must := vimRequired(r); must != "" {
				match += d.ahead(must, true)
			}
		} else {
			flags += " contained"
		}
		var next []string
		for j := at + 1; j < len(r.Parts); j++ {
			next = append(next, group(j))
			if !r.Parts[j].Optional {
				break
			}
		}
		if len(next) > 0 {
			flags += " skipwhite nextgroup=" + strings.Join(next, ",")
		}
		fmt.Fprintf(b, "syntax match %s /\\v%s/%s\n", group(at), match, flags)
	}
}

func vimRequired(r rule) string {
	var b strings.Builder
	for _, p := range r.Parts[1:] {
		if !p.Optional {
			b.WriteString(written(seq{many{blank}, p.Pattern}, vim{}))
		}
	}
	if r.Ahead != nil {
		b.WriteString(written(r.Ahead, vim{}))
	}
	return b.String()
}
