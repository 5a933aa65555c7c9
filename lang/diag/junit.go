package diag

import (
	"encoding/xml"
	"fmt"
	"io"
	"strings"
)

type junitSuites struct {
	XMLName xml.Name     `xml:"testsuites"`
	Suites  []junitSuite `xml:"testsuite"`
}

type junitSuite struct {
	Name     string      `xml:"name,attr"`
	Tests    int         `xml:"tests,attr"`
	Failures int         `xml:"failures,attr"`
	Cases    []junitCase `xml:"testcase"`
}

type junitCase struct {
	Name    string        `xml:"name,attr"`
	Class   string        `xml:"classname,attr"`
	Failure *junitFailure `xml:"failure,omitempty"`
}

type junitFailure struct {
	Type    string `xml:"type,attr"`
	Message string `xml:"message,attr"`
	Text    string `xml:",chardata"`
}

// WriteJUnit prints one suite a file and one case a finding; a file without
// findings has one case that passes. Notes pass: only errors and warnings fail.
func WriteJUnit(w io.Writer, files []string, list []Diagnostic) error {
	out := junitSuites{}
	for _, name := range append(append([]string(nil), files...), "") {
		suite := junitSuite{Name: name}
		for i := range list {
			d := &list[i]
			if fileName(d.Span) != name {
				continue
			}
			c := junitCase{Name: fmt.Sprintf("%s %s", d.Code, place(d.Span)), Class: name}
			if d.Severity > Note {
				c.Failure = &junitFailure{string(d.Code), d.Message, strings.Join(d.Notes, "\n")}
				suite.Failures++
			}
			suite.Cases = append(suite.Cases, c)
		}
		if len(suite.Cases) == 0 {
			if name == "" {
				continue
			}
			suite.Cases = []junitCase{{Name: "check", Class: name}}
		}
		suite.Tests = len(suite.Cases)
		out.Suites = append(out.Suites, suite)
	}
	if _, err := io.WriteString(w, xml.Header); err != nil {
		return err
	}
	enc := xml.NewEncoder(w)
	enc.Indent("", "  ")
	if err := enc.Encode(out); err != nil {
		return err
	}
	_, err := io.WriteString(w, "\n")
	return err
}
