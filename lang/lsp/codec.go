package lsp

import (
	"bufio"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net/textproto"
	"strconv"
	"strings"
)

// codec frames messages with a Content-Length header. A message that is no JSON
// is told of and passed over: the next one is as good as ever.
type codec struct {
	skipped func(error)
}

// longest is the longest message taken, in bytes.
const longest = 64 << 20

// WriteObject writes a message.
func (codec) WriteObject(w io.Writer, v any) error {
	body, err := json.Marshal(v)
	if err != nil {
		return err
	}
	if _, err := fmt.Fprintf(w, "Content-Length: %d\r\n\r\n", len(body)); err != nil {
		return err
	}
	_, err = w.Write(body)
	return err
}

// ReadObject reads the next message that can be read.
func (c codec) ReadObject(r *bufio.Reader, v any) error {
	for {
		body, err := readFrame(r)
		if err != nil {
			return err
		}
		if err = json.Unmarshal(body, v); err == nil {
			return nil
		}
		c.skipped(fmt.Errorf("a message cannot be read: %w", err))
	}
}

// readFrame reads one header and what it announces.
func readFrame(r *bufio.Reader) ([]byte, error) {
	length := -1
	lines := textproto.NewReader(r)
	for {
		line, err := lines.ReadLine()
		switch {
		case errors.Is(err, io.EOF):
			return nil, io.EOF
		case err != nil:
			return nil, err
		}
		if line == "" {
			if length < 0 {
				continue // blank lines before a header
			}
			break
		}
		name, value, _ := strings.Cut(line, ":")
		if !strings.EqualFold(strings.TrimSpace(name), "Content-Length") {
			continue
		}
		n, err := strconv.Atoi(strings.TrimSpace(value))
		if err != nil || n < 0 || n > longest {
			return nil, fmt.Errorf("a message of length %q", strings.TrimSpace(value))
		}
		length = n
	}
	body := make([]byte, length)
	_, err := io.ReadFull(r, body)
	return body, err
}
