package drawing

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"
)

// node is an element of an XML text. Names are without their prefixes; where two
// attributes differ by the prefix alone, the one without any is kept.
type node struct {
	name string
	attr map[string]string
	kids []*node
}

// deepest is how far elements may be nested.
const deepest = 200

// parseXML reads the elements of a text and leaves out everything else.
func parseXML(text string) (*node, error) {
	dec := xml.NewDecoder(strings.NewReader(text))
	dec.Strict = false // some programs declare entities of their own
	dec.CharsetReader = func(charset string, in io.Reader) (io.Reader, error) {
		switch strings.ToLower(charset) {
		case "utf-8", "us-ascii", "ascii":
			return in, nil
		case "iso-8859-1", "latin1", "windows-1252":
			data, err := io.ReadAll(in)
			if err != nil {
				return nil, err
			}
			runes := make([]rune, len(data))
			for i, b := range data {
				runes[i] = rune(b)
			}
			return strings.NewReader(string(runes)), nil
		}
		return nil, fmt.Errorf("its letters are in %s; save it in UTF-8", charset)
	}
	root := &node{}
	open := []*node{root}
	for {
		tok, err := dec.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			var bad *xml.SyntaxError
			if errors.As(err, &bad) {
				return nil, fmt.Errorf("line %d is no XML: %s", bad.Line, bad.Msg)
			}
			return nil, err
		}
		switch t := tok.(type) {
		case xml.StartElement:
			if len(open) > deepest {
				return nil, fmt.Errorf("its groups lie more than %d deep in each other", deepest)
			}
			n := &node{name: t.Name.Local, attr: map[string]string{}}
			for _, a := range t.Attr {
				if _, have := n.attr[a.Name.Local]; !have || a.Name.Space == "" {
					n.attr[a.Name.Local] = a.Value
				}
			}
			top := open[len(open)-1]
			top.kids = append(top.kids, n)
			open = append(open, n)
		case xml.EndElement:
			if len(open) > 1 {
				open = open[:len(open)-1]
			}
		}
	}
	if len(root.kids) == 0 {
		return nil, errors.New("it holds no elements")
	}
	return root.kids[0], nil
}
