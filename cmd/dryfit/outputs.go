package main

import (
	"bufio"
	"bytes"
	"errors"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"dryfit/internal/corpus"
	"dryfit/internal/report"
)

// writing is the options of commands that write what came of files.
type writing struct {
	as, holdTo, units *choice
	outputs           []string
}

func newWriting() writing {
	return writing{
		as: newChoice("text", report.Forms()...), holdTo: newChoice("shall", "shall", "should"), units: newChoice("metric", "metric", "us", "both"),
	}
}

// add enters the options among those of a command.
func (o *writing) add(flags *pflag.FlagSet) {
	flags.Var(o.as, "as", "form of what is printed")
	flags.StringArrayVarP(&o.outputs, "output", "o", nil, "write into a file, whose ending picks the form: "+endings()+"; may be said again; nothing is then printed unless --as is given")
	flags.Var(o.holdTo, "hold-to", "weakest clause that counts for the exit status")
	flags.Var(o.units, "units", "units to show values in")
}

// endings is the endings of file names that pick a form, in a sentence.
func endings() string {
	all := report.Endings()
	return strings.Join(all[:len(all)-1], ", ") + " or " + all[len(all)-1]
}

// outputs is what one call writes: to the screen, and into files of several forms at once.
type outputs struct {
	forms   []string
	writers []report.Writer
	closes  []func(error) error // after the writers, with what went wrong
	tells   bool                // people read what came of each file where the call was made
	scrolls bool                // and it runs over a terminal, where nothing else may write
}

// open begins every output. A file is written beside its place and moved into it at the end, so
// that a call that is cut short leaves the old one as it was.
func (a *app) open(names []string, as string, printed bool, run report.Run) (_ *outputs, err error) {
	out := &outputs{}
	defer func() {
		if err != nil {
			out.close(err) // what was begun leaves nothing behind
		}
	}()
	for _, name := range names {
		form := report.FormOf(name)
		if form == "" {
			return nil, misusef("the ending of `%s` names no form: end it in %s", name, endings())
		}
	}
	for _, name := range names {
		r := run
		r.Look.Colour = a.colour.value == "always"
		r.Look.Drawn = false
		if a.width == 0 {
			r.Look.Width = 80
		}
		f, finish, err := replace(name)
		if err != nil {
			return nil, misusef("%s cannot be written: %v", name, unwritable(err))
		}
		b := bufio.NewWriter(f)
		if err := out.begin(report.FormOf(name), b, r, func(failed error) error {
			if err := finish(errors.Join(failed, b.Flush())); err != nil && failed == nil {
				return misusef("%s cannot be written: %v", name, unwritable(err))
			}
			return nil
		}); err != nil {
			return nil, err
		}
	}
	out.tells = printed && as == "text"
	_, drawn := terminal(a.out)
	out.scrolls = printed && drawn
	if printed {
		b := bufio.NewWriter(a.out)
		if err := out.begin(as, b, run, func(error) error { return b.Flush() }); err != nil {
			return nil, err
		}
	}
	return out, nil
}

func (o *outputs) begin(form string, w io.Writer, run report.Run, finish func(error) error) error {
	writer, err := report.NewWriter(form, w, run)
	if err != nil {
		return err
	}
	o.forms, o.writers, o.closes = append(o.forms, form), append(o.writers, writer), append(o.closes, finish)
	return nil
}

// all says that one of the forms tells more than what is to be acted on.
func (o *outputs) all() bool {
	return slices.ContainsFunc(o.forms, report.WantsAll)
}

func (o *outputs) add(i report.Item) error {
	for _, w := range o.writers {
		if err := w.Add(i); err != nil {
			return err
		}
	}
	return nil
}

// close ends every output. Where something went wrong no file is put in the place of another.
func (o *outputs) close(failed error) error {
	errs := []error{failed}
	for i, w := range o.writers {
		if failed == nil {
			failed = w.Close()
			errs = append(errs, failed)
		}
		errs = append(errs, o.closes[i](failed))
	}
	return errors.Join(errs...)
}

// errDesign is why a file that somebody wrote by hand is not written over.
var errDesign = errors.New("it is a system file, or one of permits; choose another name")

// inPlace writes a file as a whole in the place of another one, or leaves what is there.
func inPlace(name string, write func(io.Writer) error) error {
	var b bytes.Buffer
	if err := write(&b); err != nil {
		return err
	}
	f, finish, err := replace(name)
	if err != nil {
		return err
	}
	_, err = f.Write(b.Bytes())
	return finish(err)
}

// replace opens a file to be put in the place of another one when it is finished without an
// error. What is no plain file, as a pipe, is written to as it comes; a design is never replaced.
func replace(name string) (io.Writer, func(error) error, error) {
	if corpus.IsDesign(name) {
		return nil, nil, errDesign
	}
	if info, err := os.Stat(name); err == nil && !info.Mode().IsRegular() {
		f, err := os.OpenFile(name, os.O_WRONLY, 0)
		if err != nil {
			return nil, nil, err
		}
		return f, func(err error) error { return errors.Join(err, f.Close()) }, nil
	}
	f, err := os.CreateTemp(filepath.Dir(name), "."+filepath.Base(name)+"-*")
	if err != nil {
		return nil, nil, err
	}
	return f, func(err error) error {
		err = errors.Join(err, f.Chmod(0o644), f.Close())
		if err == nil {
			err = os.Rename(f.Name(), name)
		}
		if err != nil {
			os.Remove(f.Name())
		}
		return err
	}, nil
}
