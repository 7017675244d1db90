//go:build outside

package schema_test

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"net/textproto"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"
)

// client speaks the language server protocol with a server over its standard streams: as much of it as these tests ask.
type client struct {
	t        *testing.T
	in       io.Writer
	got      chan message
	folder   string
	settings map[string]any
	asked    int
	files    int
}

type message struct {
	Version string          `json:"jsonrpc"`
	ID      any             `json:"id,omitempty"`
	Method  string          `json:"method,omitempty"`
	Params  any             `json:"params,omitempty"`
	Result  json.RawMessage `json:"result,omitempty"`
	Error   json.RawMessage `json:"error,omitempty"`
}

// opened is a file as the server has it.
type opened struct {
	*client
	uri   string
	wrong []mistake
}

// mistake is what the server says is wrong. Lines and columns count from 1.
type mistake struct {
	line, column int
	says         string
}

func uriOf(path string) string { return (&url.URL{Scheme: "file", Path: path}).String() }

// connect starts a server and gives it a schema, schema.json beside the files, for those that a pattern names.
func connect(t *testing.T, schema []byte, pattern, name string, args ...string) *client {
	t.Helper()
	c := &client{t: t, got: make(chan message, 100), folder: t.TempDir()}
	path := filepath.Join(c.folder, "schema.json")
	if err := os.WriteFile(path, schema, 0o644); err != nil {
		t.Fatal(err)
	}
	c.settings = map[string]any{"schemas": map[string]string{uriOf(path): pattern}, "validate": true, "hover": true, "completion": true, "schemaStore": map[string]bool{"enable": false}}
	cmd := exec.Command(name, args...)
	in, err := cmd.StdinPipe()
	if err != nil {
		t.Fatal(err)
	}
	c.in = in
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { in.Close(); cmd.Process.Kill(); cmd.Wait() })
	go c.listen(bufio.NewReader(out))
	c.ask("initialize", map[string]any{"processId": os.Getpid(), "rootUri": uriOf(c.folder), "capabilities": map[string]any{"workspace": map[string]bool{"configuration": true}}})
	c.say("initialized", map[string]any{})
	return c
}

func (c *client) listen(r *bufio.Reader) {
	defer close(c.got)
	for {
		head, err := textproto.NewReader(r).ReadMIMEHeader()
		if err != nil {
			return
		}
		size, err := strconv.Atoi(head.Get("Content-Length"))
		if err != nil {
			return
		}
		body := make([]byte, size)
		if _, err := io.ReadFull(r, body); err != nil {
			return
		}
		var m message
		if json.Unmarshal(body, &m) == nil {
			c.got <- m
		}
	}
}

func (c *client) send(m message) {
	c.t.Helper()
	m.Version = "2.0"
	body, err := json.Marshal(m)
	if err == nil {
		_, err = fmt.Fprintf(c.in, "Content-Length: %d\r\n\r\n%s", len(body), body)
	}
	if err != nil {
		c.t.Fatal(err)
	}
}

func (c *client) say(method string, params any) { c.send(message{Method: method, Params: params}) }

// until reads on to what is waited for. What the server asks meanwhile is answered.
func (c *client) until(what string, is func(message) bool) message {
	c.t.Helper()
	late := time.After(time.Minute)
	for {
		select {
		case m, open := <-c.got:
			switch {
			case !open:
				c.t.Fatalf("the server ended before %s", what)
			case is(m):
				return m
			case m.ID != nil && m.Method == "workspace/configuration":
				c.send(message{ID: m.ID, Result: c.configured(m.Params)})
			case m.ID != nil && m.Method != "":
				c.send(message{ID: m.ID, Result: json.RawMessage("null")})
			}
		case <-late:
			c.t.Fatalf("the server does not come to %s", what)
		}
	}
}

// configured is our settings for the section `yaml`, and nothing for others.
func (c *client) configured(params any) json.RawMessage {
	c.t.Helper()
	var out []any
	for _, item := range params.(map[string]any)["items"].([]any) {
		if item.(map[string]any)["section"] == "yaml" {
			out = append(out, c.settings)
		} else {
			out = append(out, nil)
		}
	}
	text, err := json.Marshal(out)
	if err != nil {
		c.t.Fatal(err)
	}
	return text
}

func (c *client) ask(method string, params any) json.RawMessage {
	c.t.Helper()
	c.asked++
	id := float64(c.asked)
	c.send(message{ID: id, Method: method, Params: params})
	m := c.until("an answer to "+method, func(m message) bool { return m.Method == "" && m.ID == id })
	if m.Error != nil {
		c.t.Fatalf("%s: %s", method, m.Error)
	}
	return m.Result
}

// open opens a file with some text and waits for what is wrong with it.
func (c *client) open(text string) opened {
	c.t.Helper()
	c.files++
	f := opened{client: c, uri: uriOf(filepath.Join(c.folder, fmt.Sprintf("loop-%d.yaml", c.files)))}
	c.say("textDocument/didOpen", map[string]any{"textDocument": map[string]any{"uri": f.uri, "languageId": "yaml", "version": 1, "text": text}})
	m := c.until("what is wrong", func(m message) bool {
		return m.Method == "textDocument/publishDiagnostics" && m.Params.(map[string]any)["uri"] == f.uri
	})
	for _, d := range m.Params.(map[string]any)["diagnostics"].([]any) {
		start := d.(map[string]any)["range"].(map[string]any)["start"].(map[string]any)
		f.wrong = append(f.wrong, mistake{int(start["line"].(float64)) + 1, int(start["character"].(float64)) + 1, d.(map[string]any)["message"].(string)})
	}
	return f
}

// at is the place behind some text from the beginning of the file.
func (f opened) at(before string) map[string]any {
	return map[string]any{"textDocument": map[string]string{"uri": f.uri},
		"position": map[string]int{"line": strings.Count(before, "\n"), "character": len(before) - strings.LastIndex(before, "\n") - 1}}
}

// offers is the words that are offered behind some text.
func (f opened) offers(before string) []string {
	f.t.Helper()
	var list struct{ Items []struct{ Label string } }
	if err := json.Unmarshal(f.ask("textDocument/completion", f.at(before)), &list); err != nil {
		f.t.Fatal(err)
	}
	var out []string
	for _, one := range list.Items {
		out = append(out, one.Label)
	}
	return out
}

// over is what is shown over the word behind some text.
func (f opened) over(before string) string {
	f.t.Helper()
	var shown struct{ Contents struct{ Value string } }
	if err := json.Unmarshal(f.ask("textDocument/hover", f.at(before)), &shown); err != nil {
		f.t.Fatal(err)
	}
	return shown.Contents.Value
}
