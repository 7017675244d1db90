package editor

import (
	"context"
	"fmt"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"dryfit/internal/report"
)

// While somebody types, reviews that have begun are stopped, none is shown for a text that is gone, and the last text gets its own.
func TestTypingWhileReviewsRun(t *testing.T) {
	c := talk(t, "")
	c.open(uri, demo(t))
	version := 1
	for i := range 40 {
		version++
		was, is := "lip_at: 305 mm", "lip_at: 400 mm"
		if i%2 == 1 {
			was, is = is, was
		}
		c.becomes(version, was, is)
		if i%5 == 0 {
			time.Sleep(30 * time.Millisecond) // long enough for a review to begin
		}
		if i%7 == 0 {
			c.tell("$/cancelRequest", fmt.Sprintf(`{"id":%d}`, c.next))
		}
		c.next++
		c.send(fmt.Sprintf(`{"jsonrpc":"2.0","id":%d,"method":"textDocument/%s","params":%s}`, c.next, []string{"hover", "completion", "codeAction"}[i%3], asked(c)))
	}
	version++
	c.becomes(version, "lip_at: 305 mm", "lip_at: 400 mm")
	if coded(c.marked(version), "well_depth") == nil {
		t.Error("the last text is not marked for its own fault")
	}
	c.tell("textDocument/didSave", fmt.Sprintf(`{"textDocument":{"uri":%q}}`, uri))
	c.tell("textDocument/didClose", fmt.Sprintf(`{"textDocument":{"uri":%q}}`, uri))
}

func asked(c *client) string {
	p := strings.TrimSuffix(c.place("comes_out: t|rue"), "}")
	return p + `,"range":{"start":{"line":0,"character":0},"end":{"line":300,"character":0}},"context":{"diagnostics":[]}}`
}

// A review that never ends of itself does not keep typing waiting: the next change stops it.
func TestChangeStopsReview(t *testing.T) {
	var begun, stopped atomic.Int32
	c := silentWith(t, func(s *server) {
		s.review = func(ctx context.Context, _, all string, _ bool) (report.Item, error) {
			if strings.Contains(all, "endless") {
				begun.Add(1)
				<-ctx.Done()
				stopped.Add(1)
				return report.Item{}, ctx.Err()
			}
			return report.Item{Unread: "enough"}, nil
		}
	}).greet("")
	c.open(uri, "dryfit: 1\nname: endless\n")
	for begun.Load() == 0 {
		time.Sleep(time.Millisecond)
	}
	c.becomes(2, "endless", "short")
	if list := c.marked(2); len(list) != 1 || !strings.Contains(list[0].Message, "enough") {
		t.Errorf("marked: %+v", list)
	}
	if stopped.Load() != 1 {
		t.Error("the first review was not stopped")
	}
}

// A request that is taken back is answered so, and the server goes on.
func TestTakenBack(t *testing.T) {
	c := silentWith(t, func(s *server) {
		s.review = func(ctx context.Context, _, _ string, _ bool) (report.Item, error) {
			<-ctx.Done()
			return report.Item{}, ctx.Err()
		}
	}).greet("")
	c.open(uri, "dryfit: 1\nname: endless\n")
	c.send(`{"jsonrpc":"2.0","id":"a","method":"textDocument/hover","params":` + c.place("na|me: endless") + `}`)
	c.tell("$/cancelRequest", `{"id":"a"}`)
	if m := c.receive(func(m message) bool { return string(m.ID) == `"a"` }); m.Error == nil || m.Error.Code != cancelled {
		t.Errorf("answered: %+v", m)
	}
	c.completions("name: e|ndless")
}

// A mistake of our own costs the answer to one request.
func TestPanicCostsOneAnswer(t *testing.T) {
	c := silentWith(t, func(s *server) {
		s.review = func(_ context.Context, _, all string, _ bool) (report.Item, error) {
			if strings.Contains(all, "broken") {
				panic("a mistake of our own")
			}
			return report.Item{Unread: "enough"}, nil
		}
	}).greet("")
	c.open(uri, "dryfit: 1\nname: broken\n")
	if list := c.marked(1); len(list) != 1 || !strings.Contains(list[0].Message, "dryfit itself is broken") {
		t.Errorf("marked: %+v", list)
	}
	c.becomes(2, "broken", "sound")
	c.marked(2)
	s := newServer(context.Background(), discard{}, Options{})
	if _, err := s.guarded(func() (any, error) { panic("a mistake of our own") }); err == nil || !strings.Contains(err.Error(), "dryfit itself is broken") {
		t.Errorf("guarded: %v", err)
	}
	s.out.close()
}

type discard struct{}

func (discard) Write(p []byte) (int, error) { return len(p), nil }

// An editor that does not read for a while is not waited for.
func TestSlowReader(t *testing.T) {
	var gate sync.Mutex
	gate.Lock()
	o := newOutlet(writer(func(p []byte) (int, error) {
		gate.Lock()
		defer gate.Unlock()
		return len(p), nil
	}))
	for range 10_000 {
		o.notify("x", strings.Repeat("y", 100))
	}
	gate.Unlock()
	o.close()
}

type writer func([]byte) (int, error)

func (w writer) Write(p []byte) (int, error) { return w(p) }
