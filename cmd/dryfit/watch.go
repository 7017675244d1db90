package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"reflect"
	"time"

	"github.com/spf13/cobra"

	"dryfit/internal/compare"
	"dryfit/internal/corpus"
	"dryfit/internal/report"
	"dryfit/internal/review"
	"dryfit/internal/system"
)

// How often a watched file is looked at, how long it must be still before it is read, and how long it
// may be away: editors put a new file in its place.
const (
	glance = 200 * time.Millisecond
	still  = 100 * time.Millisecond
	away   = time.Second
)

func (a *app) watchCommand() *cobra.Command {
	units := newChoice("metric", "metric", "us")
	var asOf string
	cmd := &cobra.Command{
		Use:   "watch FILE",
		Short: "review again on every save, and say what moved",
		Long: "Reviews a system file and says what is to be done; then again whenever the file, or the permits beside it, are saved, and " +
			"says only what moved since the save before: verdicts, numbers of what is open, what to change, and what must be put right before " +
			"it can be reviewed. It clears nothing and ends on ctrl-C, with the exit status of the last review.",
		Example: "dryfit watch courtyard.yaml\ndryfit watch courtyard.yaml --units us",
		Args:    oneFile,
		RunE: func(cmd *cobra.Command, files []string) error {
			return a.watch(cmd.Context(), files[0], units.value, asOf)
		},
		ValidArgsFunction: systemFiles,
	}
	cmd.Flags().Var(units, "units", "units to show values in")
	cmd.Flags().Var((*day)(&asOf), "as-of", "day on which deviation permits are held, such as 2026-03-14; else that of SOURCE_DATE_EPOCH, else today")
	return cmd
}

func (a *app) watch(ctx context.Context, name, units, asOf string) error {
	look, err := a.options(units)
	if err != nil {
		return err
	}
	if info, err := os.Stat(name); name == "-" || err == nil && !info.Mode().IsRegular() {
		return misusef("%s cannot be watched: name one system file", report.ShownFile(name))
	} else if err != nil {
		return misusef("%s cannot be read: %v", report.ShownFile(name), corpus.Reason(err))
	}
	today, err := a.today(asOf)
	if err != nil {
		return err
	}
	reviewer, err := a.reviewer(look)
	if reviewer == nil {
		return err
	}
	a.endless = true
	w := watcher{app: a, reviewer: reviewer, file: corpus.Named(name), today: today, look: look}
	var seen footprint
	for {
		now, err := changed(name, seen, func(d time.Duration) error { return pause(ctx, d) })
		if err != nil {
			return nil // it was stopped
		}
		seen = now
		data, err := w.file.Data()
		if err := w.save(ctx, time.Now().Format(time.TimeOnly), data, err); err != nil {
			if ctx.Err() != nil {
				return nil
			}
			return err
		}
	}
}

// footprint is what the disk says of a file and of the permits beside it.
type footprint []os.FileInfo

// footprintOf looks; what is not there is nil.
func footprintOf(name string) footprint {
	var out footprint
	for _, one := range append([]string{name}, corpus.PermitNames(name)...) {
		info, err := os.Stat(one)
		if err != nil {
			info = nil
		}
		out = append(out, info)
	}
	return out
}

// same says that nothing was written, replaced or taken away in between.
func (f footprint) same(g footprint) bool {
	if len(f) != len(g) {
		return false
	}
	for i, a := range f {
		b := g[i]
		if (a == nil) != (b == nil) || a != nil && (!os.SameFile(a, b) || a.Size() != b.Size() || !a.ModTime().Equal(b.ModTime())) {
			return false
		}
	}
	return true
}

// changed waits until a file is not as it was seen, and then until it is still: what is half
// written is waited for, and so is a file that is away for a moment.
func changed(name string, seen footprint, pause func(time.Duration) error) (footprint, error) {
	now := footprintOf(name)
	for now.same(seen) {
		if err := pause(glance); err != nil {
			return nil, err
		}
		now = footprintOf(name)
	}
	if seen == nil {
		return now, nil // the first time there is nothing to wait for
	}
	for quiet := time.Duration(0); quiet < still || now[0] == nil && quiet < away; {
		if err := pause(still); err != nil {
			return nil, err
		}
		quiet += still
		if next := footprintOf(name); !next.same(now) {
			now, quiet = next, 0
		}
	}
	return now, nil
}

func pause(ctx context.Context, d time.Duration) error {
	select {
	case <-ctx.Done():
		return ctx.Err()
	case <-time.After(d):
		return nil
	}
}

// watcher is one file that is watched, with what it was at the save before.
type watcher struct {
	*app
	reviewer *corpus.Reviewer
	file     corpus.File
	today    string
	look     report.Options

	started          bool
	before           report.Save
	content, permits []byte        // as they were read last
	good             *compare.Side // the last that could be reviewed
}

// save reviews what was saved at a time of day and writes what it moved. The error is a fault of the
// tool, or the end of the context.
func (w *watcher) save(ctx context.Context, at string, data []byte, unread error) error {
	s := report.Save{At: at, File: w.file.Name}
	_, permits, _ := w.file.Permits()
	switch was := w.before; {
	case unread != nil:
		s.Unread = corpus.Reason(unread).Error()
		if errors.Is(unread, fs.ErrNotExist) {
			s.Unread = "it is gone, and is waited for"
		}
		s.Same = s.Unread == was.Unread
	case w.started && was.Unread == "" && bytes.Equal(data, w.content) && bytes.Equal(permits, w.permits):
		s.Problems, s.Now, s.Same = was.Problems, was.Now, true
	default:
		side, problems, err := w.review(ctx, data)
		if err != nil {
			return err
		}
		s.Problems, s.Same = problems, side == nil && reflect.DeepEqual(problems, was.Problems)
		if side != nil {
			s.Now, s.Again = side.Review, w.started && was.Now == nil
			if w.good != nil {
				c := compare.Compare(*w.good, *side)
				s.Comparison = &c
			}
			w.good = side
		}
		w.content, w.permits = data, permits
	}
	w.status = review.Unreadable
	if s.Now != nil {
		w.status = s.Now.ExitStatus(review.Shall)
	}
	w.started, w.before = true, s
	return report.WriteSave(w.out, s, w.look)
}

// review is the file judged, with remedies, or what is wrong with it.
func (w *watcher) review(ctx context.Context, data []byte) (*compare.Side, []system.Problem, error) {
	side, problems, err := w.reviewer.Side(ctx, w.file, data, w.today)
	if err == nil && side != nil {
		err = w.reviewer.Offer(ctx, side.Review, side.Review.Findings)
	}
	if err != nil && !errors.Is(err, context.Canceled) {
		err = fmt.Errorf("%s could not be reviewed: %w", w.file.Name, err)
	}
	return side, problems, err
}
