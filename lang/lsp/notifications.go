package lsp

import (
	"encoding/json"
	"fmt"
	"slices"

	"github.com/sourcegraph/jsonrpc2"
)

// notified deals with a notification.
func (s *server) notified(req *jsonrpc2.Request) error {
	switch req.Method {
	case "exit":
		s.leave()
		return nil
	case "$/cancelRequest":
		return s.cancelled(req)
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	if !s.begun || s.down {
		return nil
	}
	switch req.Method {
	case "initialized":
		s.initialized()
	case "textDocument/didOpen":
		return s.didOpen(req)
	case "textDocument/didChange":
		return s.didChange(req)
	case "textDocument/didClose":
		return s.didClose(req)
	case "textDocument/didSave":
		return s.didSave(req)
	case "workspace/didChangeWatchedFiles":
		return s.didChangeFiles(req)
	case "workspace/didChangeWorkspaceFolders":
		return s.didChangeFolders(req)
	}
	return nil // others may be passed over
}

func (s *server) cancelled(req *jsonrpc2.Request) error {
	p, err := decode[cancelParams](req)
	if err != nil {
		return err
	}
	var id jsonrpc2.ID
	if err := json.Unmarshal(p.ID, &id); err != nil {
		return err
	}
	s.mu.Lock()
	cancel := s.running[id]
	s.mu.Unlock()
	if cancel != nil {
		cancel()
	}
	return nil
}

func (s *server) didOpen(req *jsonrpc2.Request) error {
	p, err := decode[didOpenParams](req)
	if err != nil {
		return err
	}
	d := s.work.open(p.TextDocument.URI, p.TextDocument.Version, p.TextDocument.Text)
	s.update(d.name)
	return nil
}

func (s *server) didChange(req *jsonrpc2.Request) error {
	p, err := decode[didChangeParams](req)
	if err != nil {
		return err
	}
	d := s.work.docs[nameOf(p.TextDocument.URI)]
	if d == nil {
		return fmt.Errorf("%s is not open", p.TextDocument.URI)
	}
	text := d.src
	for _, c := range p.ContentChanges {
		text = applied(s.client.encoding, text, c)
	}
	d = s.work.open(d.uri, p.TextDocument.Version, text.Text)
	s.update(d.name)
	return nil
}

func (s *server) didClose(req *jsonrpc2.Request) error {
	p, err := decode[documentParams](req)
	if err != nil {
		return err
	}
	name := nameOf(p.TextDocument.URI)
	delete(s.work.docs, name)
	s.work.disk.forget(name)
	s.update(name)
	return nil
}

func (s *server) didSave(req *jsonrpc2.Request) error {
	p, err := decode[documentParams](req)
	if err != nil {
		return err
	}
	s.work.disk.forget(nameOf(p.TextDocument.URI))
	return nil
}

func (s *server) didChangeFiles(req *jsonrpc2.Request) error {
	p, err := decode[didChangeFilesParams](req)
	if err != nil {
		return err
	}
	s.work.looked = false
	var names []string
	for _, c := range p.Changes {
		name := nameOf(c.URI)
		s.work.disk.forget(name)
		if s.work.docs[name] == nil { // what is open wins over files
			names = append(names, name)
		}
	}
	s.update(names...)
	return nil
}

func (s *server) didChangeFolders(req *jsonrpc2.Request) error {
	p, err := decode[didChangeFoldersParams](req)
	if err != nil {
		return err
	}
	for _, f := range p.Event.Removed {
		gone := nameOf(f.URI)
		s.work.folders = slices.DeleteFunc(s.work.folders, func(n string) bool { return n == gone })
	}
	for _, f := range p.Event.Added {
		s.work.folders = append(s.work.folders, nameOf(f.URI))
	}
	s.work.looked = false
	s.update()
	return nil
}
