package lsp

import (
	"net/url"
	"path"
	"strings"
)

// nameOf is the name a document goes by inside: the path of a file, with forward
// slashes; the URI itself for what is no file yet.
func nameOf(uri string) string {
	u, err := url.Parse(uri)
	if err != nil || u.Scheme != "file" {
		return uri
	}
	name := u.Path
	if u.Host != "" && u.Host != "localhost" {
		name = "//" + u.Host + name
	}
	if len(name) > 2 && name[0] == '/' && name[2] == ':' { // a drive's letter
		name = strings.ToLower(name[1:2]) + name[2:]
	}
	if strings.HasPrefix(name, "//") {
		return "/" + path.Clean(name)
	}
	return path.Clean(name)
}

// uriOf is the document of a name.
func uriOf(name string) string {
	if !strings.HasPrefix(name, "/") && !isDrive(name) {
		return name
	}
	u := url.URL{Scheme: "file", Path: name}
	if isDrive(name) {
		u.Path = "/" + name
	}
	if strings.HasPrefix(name, "//") {
		host, rest, _ := strings.Cut(name[2:], "/")
		u.Host, u.Path = host, "/"+rest
	}
	return u.String()
}

func isDrive(name string) bool { return len(name) > 2 && name[1] == ':' && name[2] == '/' }
