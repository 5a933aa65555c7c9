package bind

import (
	"path"
	"strings"

	"longhand/lang/diag"
	"longhand/lang/source"
	"longhand/lang/syntax"
)

// Codes of what is wrong with a file that is used.
const (
	CodeNoFile  diag.Code = "no-file"
	CodeUseLoop diag.Code = "use-loop"
)

// Resolve is the path of a file that another one uses, seen from that one.
func Resolve(from, used string) string {
	used = strings.ReplaceAll(used, `\`, "/")
	if path.IsAbs(used) || from == "-" || from == "" {
		return path.Clean(used)
	}
	return path.Join(path.Dir(from), used)
}

// Load reads the main file and all it uses, each once, the main file first and
// the others in the order they are first used. The findings hold those of the
// text of all of them, and the `use` lines that lead to no file or in a circle.
// A main file that cannot be read gives no files and one finding without place.
// Lines that stand in the same file of those given, which were read before, are
// not read again; without any, everything is.
func Load(read func(path string) (string, error), main string, before ...*syntax.File) ([]*syntax.File, diag.Bag) {
	l := &loader{read: read, state: map[string]int{}, before: map[string]*syntax.File{}}
	for _, f := range before {
		l.before[f.Source.Name] = f
	}
	text, err := read(main)
	if err != nil {
		l.bag.Errorf(CodeNoFile, source.Span{}, "%s cannot be read: %s", main, plain(err))
		return nil, l.bag
	}
	l.file(main, text)
	return l.files, l.bag
}

type loader struct {
	read   func(string) (string, error)
	before map[string]*syntax.File
	files  []*syntax.File
	bag    diag.Bag
	state  map[string]int
	chain  []string
}

const (
	fileUnseen = iota
	fileOpen   // its uses are being followed
	fileDone
)

func (l *loader) file(name, text string) {
	f, found := syntax.Reparse(l.before[name], source.NewFile(name, text))
	l.bag.Merge(found)
	l.files = append(l.files, f)
	l.state[name] = fileOpen
	l.chain = append(l.chain, name)
	for _, use := range f.Uses {
		l.use(f, use)
	}
	l.chain = l.chain[:len(l.chain)-1]
	l.state[name] = fileDone
}

func (l *loader) use(from *syntax.File, use *syntax.Use) {
	at := use.File.Span(from.Source)
	if strings.TrimSpace(use.File.Value()) == "" {
		l.bag.Errorf(CodeNoFile, at, "`use` needs the name of a file")
		return
	}
	name := Resolve(from.Source.Name, use.File.Value())
	switch l.state[name] {
	case fileOpen:
		var around []string
		for i := len(l.chain) - 1; i >= 0; i-- {
			around = append([]string{l.chain[i]}, around...)
			if l.chain[i] == name {
				break
			}
		}
		l.bag.Errorf(CodeUseLoop, at, "the files use each other in a circle: %s", strings.Join(append(around, name), " uses "))
		return
	case fileDone:
		return
	}
	text, err := l.read(name)
	if err != nil {
		l.bag.Errorf(CodeNoFile, at, "%s cannot be read: %s", name, plain(err)).
			Note("the path is seen from the folder of %s", from.Source.Name)
		return
	}
	l.file(name, text)
}

// plain is an error without the path that is already said.
func plain(err error) string {
	text := err.Error()
	if i := strings.LastIndex(text, ": "); i >= 0 {
		text = text[i+2:]
	}
	return text
}
