// Package editor is a server for editors that speak the Language Server Protocol
// 3.17: findings while a system file is typed, what a value is for, what may
// stand somewhere, and remedies as edits.
package editor

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"slices"
	"sync"
	"time"

	"dryfit/internal/corpus"
	"dryfit/internal/report"
	"dryfit/internal/review"
)

// Options is what a server works with.
type Options struct {
	Reviewer *corpus.Reviewer
	Today    func() string // the day on which permits are held, as 2026-03-14
	Version  string        // of dryfit
	Wait     time.Duration // from the last change to a review; 0: 150 ms
}

// clauses is the book, for the names of its clauses.
func (s *server) clauses() []*review.Clause { return s.Reviewer.Book().Clauses() }

// A server is one conversation with an editor.
type server struct {
	Options
	ctx    context.Context
	out    *outlet
	turn   chan struct{} // held by the one review that runs
	work   sync.WaitGroup
	review func(ctx context.Context, name, all string, bare bool) (report.Item, error)

	greeted, leaving bool
	utf8             bool
	versioned        bool // edits may name the version they are for
	related          bool // findings may name a second place

	mutex     sync.Mutex
	documents map[string]*document
	asked     map[string]context.CancelFunc // requests that are being answered, by id
}

// Serve talks with an editor until it leaves. It says whether the editor took its
// leave as the protocol wants; the error is one of the stream.
func Serve(ctx context.Context, in io.Reader, out io.Writer, o Options) (orderly bool, err error) {
	s := newServer(ctx, out, o)
	return s.serve(in)
}

func newServer(ctx context.Context, out io.Writer, o Options) *server {
	if o.Wait == 0 {
		o.Wait = 150 * time.Millisecond
	}
	s := &server{
		Options: o, ctx: ctx, out: newOutlet(out), turn: make(chan struct{}, 1),
		documents: map[string]*document{}, asked: map[string]context.CancelFunc{},
	}
	s.review = s.reviewed
	return s
}

func (s *server) serve(in io.Reader) (orderly bool, err error) {
	ctx, cancel := context.WithCancel(s.ctx)
	s.ctx = ctx
	defer func() {
		cancel()
		s.work.Wait()
		s.out.close()
	}()
	type frame struct {
		data []byte
		err  error
	}
	frames := make(chan frame)
	go func() {
		r := bufio.NewReaderSize(in, mostHeader)
		for {
			data, err := readFrame(r)
			select {
			case frames <- frame{data, err}:
			case <-ctx.Done():
				return
			}
			if err != nil {
				return
			}
		}
	}()
	for {
		select {
		case <-ctx.Done():
			return false, ctx.Err()
		case f := <-frames:
			switch {
			case f.err == io.EOF:
				return s.leaving, nil
			case f.err != nil:
				return false, f.err
			}
			if left := s.take(f.data); left {
				return s.leaving, nil
			}
		}
	}
}

// take acts on one message, and says whether the editor has left.
func (s *server) take(data []byte) (left bool) {
	var m message
	if err := json.Unmarshal(data, &m); err != nil {
		s.out.answer(nil, nil, &failure{parseError, "a message that is no JSON: " + err.Error()})
		return false
	}
	asks := len(m.ID) > 0 && string(m.ID) != "null"
	switch {
	case m.Method == "exit":
		return true
	case m.Method == "" && asks:
		return false // an answer: nothing was asked
	case m.Method == "":
		s.out.answer(nil, nil, &failure{invalidRequest, "a message without a method"})
	case !s.greeted && m.Method != "initialize":
		if asks {
			s.out.answer(m.ID, nil, &failure{notInitialized, "send `initialize` first"})
		}
	case s.leaving && asks:
		s.out.answer(m.ID, nil, &failure{invalidRequest, "after `shutdown` only `exit` is answered"})
	case asks:
		s.request(m)
	default:
		s.guarded(func() (any, error) { return nil, s.notified(m) }) // there is nobody to tell
	}
	return false
}

// guarded does some work. A mistake of our own costs that work, and not the conversation.
func (s *server) guarded(work func() (any, error)) (result any, err error) {
	defer func() {
		if fault := recover(); fault != nil {
			result, err = nil, &failure{internalError, fmt.Sprintf("something in dryfit itself is broken: %v; it goes on with the rest", fault)}
		}
	}()
	return work()
}

// handlers answer requests about a text as it stood when they came.
var handlers = map[string]func(*server, context.Context, json.RawMessage, *document) (any, error){
	"textDocument/hover":      (*server).hover,
	"textDocument/completion": (*server).completion,
	"textDocument/definition": (*server).definition,
	"textDocument/references": (*server).references,
	"textDocument/codeAction": (*server).actions,
}

func (s *server) request(m message) {
	switch m.Method {
	case "initialize":
		result, err := s.guarded(func() (any, error) { return s.initialize(m.Params) })
		s.out.answer(m.ID, result, err)
		return
	case "shutdown":
		s.leaving = true
		s.out.answer(m.ID, nil, nil)
		return
	}
	handler := handlers[m.Method]
	if handler == nil {
		s.out.answer(m.ID, nil, &failure{methodNotFound, "dryfit does not answer `" + m.Method + "`"})
		return
	}
	p, err := decode[documentParams](m.Params)
	if err != nil {
		s.out.answer(m.ID, nil, err)
		return
	}
	doc := s.document(p.Document.URI)
	if doc == nil || doc.other {
		s.out.answer(m.ID, nil, nil) // nothing is known of it
		return
	}
	ctx, cancel := context.WithCancel(s.ctx)
	id := string(m.ID)
	s.mutex.Lock()
	s.asked[id] = cancel
	s.mutex.Unlock()
	s.work.Go(func() {
		defer func() {
			s.mutex.Lock()
			delete(s.asked, id)
			s.mutex.Unlock()
			cancel()
		}()
		result, err := s.guarded(func() (any, error) { return handler(s, ctx, m.Params, doc) })
		if ctx.Err() != nil {
			result, err = nil, &failure{cancelled, "taken back"}
		}
		s.out.answer(m.ID, result, err)
	})
}

// initialize greets the editor, and says what it can ask for.
func (s *server) initialize(params json.RawMessage) (any, error) {
	if s.greeted {
		return nil, &failure{invalidRequest, "`initialize` is sent once"}
	}
	p, err := decode[initializeParams](params)
	if err != nil {
		return nil, err
	}
	s.greeted = true
	s.utf8 = slices.Contains(p.Capabilities.General.PositionEncodings, "utf-8")
	s.versioned = p.Capabilities.Workspace.WorkspaceEdit.DocumentChanges
	s.related = p.Capabilities.TextDocument.PublishDiagnostics.RelatedInformation
	encoding := "utf-16"
	if s.utf8 {
		encoding = "utf-8"
	}
	type object = map[string]any
	return object{
		"capabilities": object{
			"positionEncoding":   encoding,
			"textDocumentSync":   object{"openClose": true, "change": 2, "save": object{}},
			"hoverProvider":      true,
			"completionProvider": object{"triggerCharacters": []string{".", " "}},
			"definitionProvider": true,
			"referencesProvider": true,
			"codeActionProvider": object{"codeActionKinds": []string{"quickfix"}},
		},
		"serverInfo": object{"name": "dryfit", "version": s.Version},
	}, nil
}

// notified acts on a notification. One that is not known is passed over.
func (s *server) notified(m message) error {
	switch m.Method {
	case "textDocument/didOpen":
		p, err := decode[openParams](m.Params)
		if err == nil {
			s.opened(p)
		}
		return err
	case "textDocument/didChange":
		p, err := decode[changeParams](m.Params)
		if err == nil {
			s.changed(p)
		}
		return err
	case "textDocument/didSave", "textDocument/didClose":
		p, err := decode[documentParams](m.Params)
		switch {
		case err != nil:
		case m.Method == "textDocument/didSave":
			s.saved(p.Document.URI)
		default:
			s.closed(p.Document.URI)
		}
		return err
	case "$/cancelRequest":
		p, err := decode[struct {
			ID json.RawMessage `json:"id"`
		}](m.Params)
		s.mutex.Lock()
		defer s.mutex.Unlock()
		if cancel := s.asked[string(p.ID)]; cancel != nil {
			cancel()
		}
		return err
	}
	return nil
}
