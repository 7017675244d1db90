package editor

import (
	"context"
	"net/url"
	"path/filepath"
	"strings"
	"sync"
	"time"

	"dryfit/internal/corpus"
	"dryfit/internal/report"
	"dryfit/internal/review"
	"dryfit/internal/system"
)

// A document is one version of a file that is open in the editor. It is not
// changed once it is there, but for what comes of its review.
type document struct {
	uri     string
	version int
	text    *text
	other   bool // no system file: it is left alone

	cancel context.CancelFunc
	hurry  chan struct{} // somebody waits for the review
	first  chan struct{} // closed once it is judged, remedies still to be looked for, or the review is over
	done   chan struct{} // closed once the review is over
	seen   *outcome      // what came of it; nil before, and where a later version took its place

	sound *review.Review // of the last version that could be reviewed
}

// outcome is what came of the review of one version.
type outcome struct {
	item  report.Item
	marks []mark

	once sync.Once
	all  []system.Problem
}

// problems is every problem of a text, those among them that others hide.
func (o *outcome) problems(doc *document) []system.Problem {
	o.once.Do(func() { _, o.all, _ = system.ReadAsFar(doc.uri, []byte(doc.text.all)) })
	return o.all
}

// document is the newest version of an open file.
func (s *server) document(uri string) *document {
	s.mutex.Lock()
	defer s.mutex.Unlock()
	return s.documents[uri]
}

func (s *server) opened(p openParams) {
	s.enter(p.Document.URI, p.Document.Version, newText(p.Document.Text, s.utf8), s.Wait/10)
}

func (s *server) changed(p changeParams) {
	before := s.document(p.Document.URI)
	if before == nil {
		return
	}
	now := before.text
	for _, c := range p.Changes {
		if c.Range == nil {
			now = newText(c.Text, s.utf8)
		} else {
			now = now.with(*c.Range, c.Text)
		}
	}
	s.enter(p.Document.URI, p.Document.Version, now, s.Wait)
}

// saved reviews again: what stands beside the file may have changed, as its permits.
func (s *server) saved(uri string) {
	if now := s.document(uri); now != nil && !now.other {
		s.enter(uri, now.version, now.text, s.Wait/10)
	}
}

func (s *server) closed(uri string) {
	s.mutex.Lock()
	defer s.mutex.Unlock()
	if doc := s.documents[uri]; doc != nil {
		doc.cancel()
		delete(s.documents, uri)
		if !doc.other {
			s.publish(doc, nil)
		}
	}
}

// enter puts a version in the place of the one before, and lets it be reviewed after a while.
func (s *server) enter(uri string, version int, now *text, wait time.Duration) {
	ctx, cancel := context.WithCancel(s.ctx)
	doc := &document{
		uri: uri, version: version, text: now, other: corpus.Typed(fileName(uri), []byte(now.all)).Other(),
		cancel: cancel, hurry: make(chan struct{}, 1), first: make(chan struct{}), done: make(chan struct{}),
	}
	s.mutex.Lock()
	defer s.mutex.Unlock()
	if before := s.documents[uri]; before != nil {
		before.cancel()
		doc.sound = before.sound
		if doc.other && !before.other {
			s.publish(doc, nil)
		}
	}
	s.documents[uri] = doc
	if doc.other {
		close(doc.first)
		close(doc.done)
		return
	}
	s.work.Go(func() {
		judged := sync.OnceFunc(func() { close(doc.first) })
		defer close(doc.done)
		defer judged()
		select {
		case <-time.After(wait):
		case <-doc.hurry:
		case <-ctx.Done():
			return
		}
		select {
		case s.turn <- struct{}{}:
			defer func() { <-s.turn }()
		case <-ctx.Done():
			return
		}
		s.look(ctx, doc, true) // whoever types wants to see what is wrong, and a little later what to do about it
		judged()
		if seen := s.seenOf(doc); seen != nil && seen.item.Summary != nil && len(seen.item.Summary.Findings) > 0 {
			s.look(ctx, doc, false)
		}
	})
}

// seenOf is what has come of a version so far.
func (s *server) seenOf(doc *document) *outcome {
	s.mutex.Lock()
	defer s.mutex.Unlock()
	return doc.seen
}

// look reviews a version and shows what came of it, unless another one has taken its place. Bare, it looks for no remedies.
func (s *server) look(ctx context.Context, doc *document, bare bool) {
	seen := &outcome{}
	_, err := s.guarded(func() (_ any, err error) {
		seen.item, err = s.review(ctx, fileName(doc.uri), doc.text.all, bare)
		if err == nil && ctx.Err() == nil {
			seen.marks = marksOf(doc.text, seen.item)
		}
		return nil, err
	})
	if ctx.Err() != nil {
		return
	}
	if err != nil {
		seen.item = report.Item{Fault: err.Error()}
		seen.marks = marksOf(doc.text, seen.item)
	}
	s.mutex.Lock()
	defer s.mutex.Unlock()
	if s.documents[doc.uri] != doc {
		return
	}
	doc.seen = seen
	if seen.item.Review != nil {
		doc.sound = seen.item.Review
	}
	s.publish(doc, seen.marks)
}

// mostReview is the time for one review; a loop that takes longer is for the command line.
const mostReview = 30 * time.Second

// reviewed takes a text all the way, permits that stand beside its file with it.
func (s *server) reviewed(ctx context.Context, name, all string, bare bool) (item report.Item, err error) {
	batch := corpus.Batch{Workers: 1, Most: mostReview, Live: true, Whole: true, Bare: bare, AsOf: s.Today()}
	err = s.Reviewer.Run(ctx, []corpus.File{corpus.Typed(name, []byte(all))}, batch, func(i report.Item) error {
		item = i
		return nil
	})
	return item, err
}

// current is what came of a document's review, with its remedies or as soon as it is judged, waited for; nil where
// another version took its place.
func (s *server) current(ctx context.Context, doc *document, remedies bool) *outcome {
	over := doc.first
	if remedies {
		over = doc.done
	}
	select {
	case doc.hurry <- struct{}{}:
	default:
	}
	select {
	case <-over:
	case <-ctx.Done():
		return nil
	}
	s.mutex.Lock()
	defer s.mutex.Unlock()
	return doc.seen
}

// lastSound is the review of the last version that could be reviewed; nil before there was one.
func (s *server) lastSound(doc *document) *review.Review {
	s.mutex.Lock()
	defer s.mutex.Unlock()
	return doc.sound
}

// publish sends what is marked in a document. The mutex is held, so that versions are sent in their order.
func (s *server) publish(doc *document, marks []mark) {
	list := []diagnostic{}
	for _, m := range marks {
		list = append(list, s.shown(doc, m))
	}
	s.out.notify("textDocument/publishDiagnostics", publishParams{doc.uri, doc.version, list})
}

// fileName is the name of a file by its URI; what is no file keeps its URI as its name.
func fileName(uri string) string {
	u, err := url.Parse(uri)
	if err != nil || u.Scheme != "file" {
		return uri
	}
	name := u.Path
	if len(name) > 2 && name[0] == '/' && name[2] == ':' { // a drive
		name = strings.TrimPrefix(name, "/")
	}
	return filepath.FromSlash(name)
}
