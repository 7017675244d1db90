package corpus

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"dryfit/internal/judge"
	"dryfit/internal/marking"
	"dryfit/internal/remedy"
	"dryfit/internal/review"
	"dryfit/internal/system"
)

// Handed is one file of a class as it was handed in.
type Handed struct {
	File
	Number int    // from one, in the order of the names
	Name   string // in the folder, with forward slashes and without the ending
}

// noSubmission is a file of a class folder that is none of a student's.
var noSubmission = regexp.MustCompile(`(?m)^(\x{FEFF})?["']?(dryfit_guide|dryfit_moderation|dryfit_review|dryfit_marks)["']?[ \t]*:`)

// Submissions is the files of a folder and those below it that were handed in, by name: every YAML and
// JSON file, since one that is broken is one too. What begins with a dot, files of permits, guides and
// changes by hand are passed over, and no link is followed.
func Submissions(folder string) ([]Handed, error) {
	root, err := os.OpenRoot(folder)
	if err != nil {
		return nil, Reason(err)
	}
	var out []Handed
	err = fs.WalkDir(root.FS(), ".", func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil && path == ".":
			return err
		case err != nil:
			return nil
		case path != "." && strings.HasPrefix(d.Name(), "."):
			if d.IsDir() {
				return fs.SkipDir
			}
			return nil
		case !d.Type().IsRegular() || !named(d.Name()):
			return nil
		}
		if _, is := PermitsOf(path); is {
			return nil
		}
		f := within(root, folder, path)
		if data, err := f.Data(); err == nil && noSubmission.Match(head(data)) {
			return nil
		}
		out = append(out, Handed{File: f, Name: strings.TrimSuffix(path, filepath.Ext(path))})
		return nil
	})
	slices.SortStableFunc(out, func(a, b Handed) int { return strings.Compare(a.File.Name, b.File.Name) })
	for i := range out {
		out[i].Number = i + 1
		for k := range out { // two files that differ in their endings alone keep them
			if k != i && strings.TrimSuffix(out[k].File.Name, filepath.Ext(out[k].File.Name)) == strings.TrimSuffix(out[i].File.Name, filepath.Ext(out[i].File.Name)) {
				out[i].Name = relative(folder, out[i].File.Name)
			}
		}
	}
	return out, err
}

func relative(folder, name string) string {
	if rel, err := filepath.Rel(folder, name); err == nil {
		return filepath.ToSlash(rel)
	}
	return name
}

// head is the first part of a file, where its key stands.
func head(data []byte) []byte { return data[:min(len(data), 4096)] }

// Marking is how a class is marked.
type Marking struct {
	Guide   *marking.Guide
	Changes []marking.Moderation
}

// MarkClass marks submissions, several at a time, and gives what came of each to take, in their order. A file
// that is broken, or that breaks dryfit, stops nothing.
func (r *Reviewer) MarkClass(ctx context.Context, class []Handed, b Batch, how Marking, take func(*marking.Marked) error) error {
	return inOrder(ctx, class, b, func(ctx context.Context, h Handed) *marking.Marked { return r.marked(ctx, h, b, how) }, take)
}

func (r *Reviewer) marked(ctx context.Context, h Handed, b Batch, how Marking) (m *marking.Marked) {
	s := marking.Submission{Number: h.Number, Name: h.Name, File: h.File.Name}
	defer func() {
		if fault := recover(); fault != nil {
			s.Review = nil
			m = marking.Mark(how.Guide, s)
			m.Fault = fmt.Sprint(fault)
		}
	}()
	if b.Most > 0 {
		var cancel context.CancelFunc
		ctx, cancel = context.WithTimeoutCause(ctx, b.Most, errTooLong)
		defer cancel()
	}
	data, err := waited(ctx, h.Data)
	if err != nil {
		s.Unread = Reason(err).Error()
	} else {
		sum := sha256.Sum256(data)
		s.Hash = hex.EncodeToString(sum[:])
		err = r.read(ctx, how.Guide, &s, data)
	}
	m = marking.Mark(how.Guide, s)
	if err == nil {
		err = marking.Gains(how.Guide, m, func(edits []system.Edit) (*review.Review, error) { return r.again(ctx, s.Review, edits) })
	}
	m.Moderate(how.Changes)
	switch {
	case err == nil || s.Unread != "":
	case m.Judged && m.Gains == nil: // there was no time to find what would gain most
	case errors.Is(context.Cause(ctx), errTooLong):
		m.Unread = fmt.Sprintf("to mark it takes more than %v; make the loop smaller, or give it more time with --most-time", b.Most)
	case errors.Is(err, judge.ErrBounds):
		m.Unread = "to judge it takes more than a loop may: " + err.Error()
	default:
		m.Fault = err.Error()
	}
	return m
}

// read takes a submission as far as it goes: what was refused is left out, and the rest is reviewed.
func (r *Reviewer) read(ctx context.Context, g *marking.Guide, s *marking.Submission, data []byte) error {
	loop, problems, leftOut := system.ReadAsFar(s.File, data)
	s.Problems, s.LeftOut = problems, leftOut
	if loop == nil {
		return nil
	}
	var rev *review.Review
	err := r.shared(func() (err error) {
		rev, err = r.judged(ctx, loop)
		return err
	})
	if err != nil {
		return err
	}
	if err := remedy.OfferFor(ctx, r.book, rev, g.Counting(rev)); err != nil {
		return err
	}
	s.Review = rev
	return nil
}

// again is a review with some edits made to its file; nil where they do not fit.
func (r *Reviewer) again(ctx context.Context, was *review.Review, edits []system.Edit) (*review.Review, error) {
	loop, problems := was.System.Edited(edits...)
	if len(problems) > 0 {
		return nil, nil
	}
	return r.judged(ctx, loop)
}
