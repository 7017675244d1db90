package editor

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"strings"
	"sync"
	"testing"
	"time"

	"dryfit/internal/corpus"
)

// A client is the other end of a conversation.
type client struct {
	t    *testing.T
	in   *io.PipeWriter
	next int
	got  chan message
	over chan bool // whether the leave was orderly
	name string    // URI of the file that is open
	text string    // as it stands
}

var theReviewer = sync.OnceValues(corpus.NewReviewer)

// talk begins a conversation. The options may name the editor's capabilities.
func talk(t *testing.T, capabilities string) *client {
	t.Helper()
	return silent(t).greet(capabilities)
}

func (c *client) greet(capabilities string) *client {
	c.t.Helper()
	if capabilities == "" {
		capabilities = "{}"
	}
	c.ask("initialize", `{"processId":null,"rootUri":null,"capabilities":`+capabilities+`}`)
	c.tell("initialized", `{}`)
	return c
}

// silent is a conversation in which nothing was said.
func silent(t *testing.T) *client { return silentWith(t, nil) }

// silentWith is the same with a server that was changed for a test.
func silentWith(t *testing.T, change func(*server)) *client {
	t.Helper()
	r, err := theReviewer()
	if err != nil {
		t.Fatal(err)
	}
	in, toServer := io.Pipe()
	fromServer, out := io.Pipe()
	c := &client{t: t, in: toServer, got: make(chan message, 1000), over: make(chan bool, 1)}
	go func() {
		s := newServer(context.Background(), out, Options{Reviewer: r, Today: func() string { return "2026-03-14" }, Version: "test", Wait: 20 * time.Millisecond})
		if change != nil {
			change(s)
		}
		orderly, _ := s.serve(in)
		out.Close()
		c.over <- orderly
	}()
	go func() {
		defer close(c.got)
		r := bufio.NewReader(fromServer)
		for {
			data, err := readFrame(r)
			if err != nil {
				return
			}
			var m message
			if json.Unmarshal(data, &m) != nil {
				return
			}
			c.got <- m
		}
	}()
	t.Cleanup(func() {
		toServer.Close()
		select {
		case <-c.over:
		case <-time.After(time.Minute):
			t.Error("the server does not end when nobody speaks to it any more")
		}
	})
	return c
}

func (c *client) send(text string) {
	c.t.Helper()
	if _, err := fmt.Fprintf(c.in, "Content-Length: %d\r\n\r\n%s", len(text), text); err != nil {
		c.t.Fatal(err)
	}
}

func (c *client) tell(method, params string) {
	c.t.Helper()
	c.send(`{"jsonrpc":"2.0","method":"` + method + `","params":` + params + `}`)
}

// receive is the next message that is wanted.
func (c *client) receive(wanted func(message) bool) message {
	c.t.Helper()
	for {
		select {
		case m, ok := <-c.got:
			if !ok {
				c.t.Fatal("the server has left")
			}
			if wanted(m) {
				return m
			}
		case <-time.After(time.Minute):
			c.t.Fatal("no answer")
		}
	}
}

// answered asks and gives the whole answer.
func (c *client) answered(method, params string) message {
	c.t.Helper()
	c.next++
	id := fmt.Sprint(c.next)
	c.send(`{"jsonrpc":"2.0","id":` + id + `,"method":"` + method + `","params":` + params + `}`)
	return c.receive(func(m message) bool { return string(m.ID) == id })
}

// ask asks what must have a result.
func (c *client) ask(method, params string) json.RawMessage {
	c.t.Helper()
	m := c.answered(method, params)
	if m.Error != nil {
		c.t.Fatalf("%s: %v", method, m.Error)
	}
	return m.Result
}

// open opens a text.
func (c *client) open(name, text string) {
	c.t.Helper()
	c.name, c.text = name, text
	c.tell("textDocument/didOpen", fmt.Sprintf(`{"textDocument":{"uri":%q,"languageId":"yaml","version":1,"text":%s}}`, name, quote(text)))
}

// becomes replaces a stretch of the text that is in it once, as an editor would.
func (c *client) becomes(version int, old, replacement string) {
	c.t.Helper()
	if strings.Count(c.text, old) != 1 {
		c.t.Fatalf("%q stands in the text %d times", old, strings.Count(c.text, old))
	}
	from := strings.Index(c.text, old)
	r := newText(c.text, false).span(span{from, from + len(old)})
	c.text = strings.Replace(c.text, old, replacement, 1)
	c.tell("textDocument/didChange", fmt.Sprintf(`{"textDocument":{"uri":%q,"version":%d},"contentChanges":[{"range":%s,"text":%s}]}`, c.name, version, quote(r), quote(replacement)))
}

// marked waits for what is marked in a version.
func (c *client) marked(version int) []diagnostic {
	c.t.Helper()
	var p publishParams
	c.receive(func(m message) bool {
		if m.Method != "textDocument/publishDiagnostics" {
			return false
		}
		p = publishParams{}
		if err := json.Unmarshal(m.Params, &p); err != nil {
			c.t.Fatal(err)
		}
		return p.URI == c.name && p.Version == version
	})
	return p.Diagnostics
}

// place is the params for a request at the sign | in a piece of the text.
func (c *client) place(at string) string {
	c.t.Helper()
	before, after, ok := strings.Cut(at, "|")
	if !ok || strings.Count(c.text, before+after) != 1 {
		c.t.Fatalf("%q stands in the text %d times", before+after, strings.Count(c.text, before+after))
	}
	p := newText(c.text, false).position(strings.Index(c.text, before+after) + len(before))
	return fmt.Sprintf(`{"textDocument":{"uri":%q},"position":%s}`, c.name, quote(p))
}

func quote(v any) string {
	data, err := json.Marshal(v)
	if err != nil {
		panic(err)
	}
	return string(data)
}

// demo is the sound example file.
func demo(t *testing.T) string {
	t.Helper()
	data, err := os.ReadFile("../../testdata/systems/quarry-road.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// changed is the demo with something replaced that is in it once.
func changedDemo(t *testing.T, replace ...string) string {
	t.Helper()
	text := demo(t)
	for i := 0; i < len(replace); i += 2 {
		if strings.Count(text, replace[i]) != 1 {
			t.Fatalf("%q stands in the demo %d times", replace[i], strings.Count(text, replace[i]))
		}
		text = strings.Replace(text, replace[i], replace[i+1], 1)
	}
	return text
}

func coded(list []diagnostic, code string) *diagnostic {
	for i := range list {
		if list[i].Code == code {
			return &list[i]
		}
	}
	return nil
}
