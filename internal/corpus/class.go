package corpus

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"dryfit/internal/judge"
	"dryfit/internal/marking"
	"dryfit/internal/remedy"
	"dryfit/internal/report"
	"dryfit/internal/review"
	"dryfit/internal/system"
)

// Handed is one file of a class as it was handed in.
type Handed struct {
	File
	Number int    // from one, in the order of the names
	Name   string // in the folder, with forward slashes and without the ending
}

// noSubmission is the first key of a file of a class folder that is none of a student's.
var noSubmission = regexp.MustCompile(`^(\x{FEFF})?(\s|#.*\n|---\n|\{)*["']?(dryfit_guide|dryfit_moderation|dryfit_review|dryfit_marks|dryfit_house)["']?[ \t]*:`)

// Submissions is the files of a folder and those below it that were handed in, by name: every YAML and
// JSON file, since one that is broken is one too. Guides, changes by hand, results, files of permits,
// and what begins with a dot or has another ending are passed over and counted; those that are read otherwise are
// only passed over. No link is followed.
func Submissions(folder string, otherwise ...string) (class []Handed, passed int, err error) {
	root, err := os.OpenRoot(folder)
	if err != nil {
		return nil, 0, Reason(err)
	}
	var apart []os.FileInfo
	for _, name := range otherwise {
		if info, err := os.Stat(name); name != "" && err == nil {
			apart = append(apart, info)
		}
	}
	err = fs.WalkDir(root.FS(), ".", func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil && path == ".":
			return err
		case path == ".":
			return nil
		case err != nil || strings.HasPrefix(d.Name(), "."):
			passed++
			if err == nil && d.IsDir() {
				return fs.SkipDir
			}
			return nil
		case d.IsDir():
			return nil
		}
		f := within(root, folder, path)
		_, permits := PermitsOf(path)
		info, err := d.Info()
		known := err == nil && slices.ContainsFunc(apart, func(other os.FileInfo) bool { return os.SameFile(info, other) })
		if known {
			return nil
		}
		if permits || !d.Type().IsRegular() || !named(d.Name()) {
			passed++
			return nil
		}
		if data, err := f.Data(); err == nil && noSubmission.Match(data[:min(len(data), 4096)]) {
			passed++
			return nil
		}
		class = append(class, Handed{File: f, Name: path})
		return nil
	})
	slices.SortStableFunc(class, func(a, b Handed) int { return strings.Compare(a.File.Name, b.File.Name) })
	nameThem(class)
	return class, passed, err
}

// nameThem numbers submissions and names them: by their files without the ending, or with it where two would be
// called alike. Capitals do not tell names apart, since some folders do not.
func nameThem(class []Handed) {
	for i := range class {
		class[i].Number = i + 1
	}
	whole := make([]bool, len(class))
	for again := true; again; {
		again = false
		first := map[string]int{}
		for i, h := range class {
			name := strings.ToLower(h.called(whole[i]))
			k, twice := first[name]
			if !twice {
				first[name] = i
				continue
			}
			for _, one := range []int{i, k} {
				if !whole[one] {
					whole[one], again = true, true
				}
			}
		}
	}
	seen := map[string]bool{}
	for i := range class {
		name := class[i].called(whole[i])
		if seen[strings.ToLower(name)] { // they differ in their capitals alone
			name += "-" + strconv.Itoa(class[i].Number)
		}
		seen[strings.ToLower(name)] = true
		class[i].Name = name
	}
}

// called is the path of a submission in its folder, with its ending or without.
func (h Handed) called(whole bool) string {
	if whole {
		return h.Name
	}
	return strings.TrimSuffix(h.Name, filepath.Ext(h.Name))
}

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
	if err != nil && ctx.Err() == nil {
		s.Unread = Reason(err).Error()
	} else if err == nil {
		s.Hash = report.HashOf(data)
		err = r.read(ctx, how.Guide, &s, data)
	}
	m = marking.Mark(how.Guide, s)
	m.Moderate(how.Changes)
	switch {
	case err == nil:
		if err := r.gains(ctx, how.Guide, m); err != nil {
			m.Gains, m.NoGains = nil, why(ctx, err, b.Most)
		}
	case s.Unread == "":
		m.Fault, m.Late = why(ctx, err, b.Most), errors.Is(err, judge.ErrBounds) || ctx.Err() != nil
	}
	return m
}

// gains looks for what would gain most. Whatever goes wrong with that leaves the marks as they are.
func (r *Reviewer) gains(ctx context.Context, g *marking.Guide, m *marking.Marked) (err error) {
	defer func() {
		if fault := recover(); fault != nil {
			err = fmt.Errorf("something in dryfit itself is broken: %v", fault)
		}
	}()
	return marking.Gains(g, m, func(edits []system.Edit) (*review.Review, error) { return r.again(ctx, m.Review, edits) })
}

// why is an error in words; of one that comes of too little time, how to give more.
func why(ctx context.Context, err error, most time.Duration) string {
	switch {
	case errors.Is(context.Cause(ctx), errTooLong):
		return fmt.Sprintf("it takes more than %v; give it more time with --most-time", most)
	case errors.Is(err, judge.ErrBounds):
		return "to judge it takes more than a loop may: " + err.Error()
	}
	return err.Error()
}

// read takes a submission as far as it goes: what was refused is left out, and the rest is reviewed.
func (r *Reviewer) read(ctx context.Context, g *marking.Guide, s *marking.Submission, data []byte) error {
	loop, problems, leftOut := system.ReadAsFar(s.File, data)
	s.Problems, s.LeftOut = problems, leftOut
	if loop == nil {
		return nil
	}
	var rev *review.Review
	err := r.shared(func(alone bool) (err error) {
		if rev, err = r.judged(ctx, loop); err != nil {
			return err
		}
		return again(alone, nil, &rev.Summary)
	})
	if err == nil {
		err = failed(rev)
	}
	if err != nil {
		return err
	}
	if err := remedy.OfferFor(ctx, r.BookOf(rev.System), rev, g.Counting(rev)); err != nil {
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
	rev, err := r.judged(ctx, loop)
	if err == nil {
		err = failed(rev)
	}
	return rev, err
}

// failed is an error of the clauses of a house by which a loop could not be judged: marks that leave
// them out would be others.
func failed(rev *review.Review) error {
	if len(rev.Failed) == 0 {
		return nil
	}
	return fmt.Errorf("the clause %s of the house could not be judged: %s", rev.Failed[0].Clause, rev.Failed[0].Why)
}
