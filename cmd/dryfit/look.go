package main

import (
	"io"
	"os"
	"strings"

	"golang.org/x/term"

	"dryfit/internal/quantity"
	"dryfit/internal/report"
)

// options is how to write on the output: its width and whether it has colour.
func (a *app) options(units string) (report.Options, error) {
	o := report.Options{Width: a.width, Colour: a.colour.value == "always"}
	switch units {
	case "us":
		o.Units = quantity.US
	case "both":
		o.Both = true
	}
	if a.width != 0 && (a.width < 40 || a.width > 1000) {
		return o, misusef("`--width %d` is out of reach: write 40 to 1000 columns", a.width)
	}
	columns, is := terminal(a.out)
	o.Drawn = is
	if a.width == 0 {
		o.Width = 80
		if is && columns > 0 {
			o.Width = columns
		}
	}
	if a.colour.value == "auto" {
		o.Colour = is && a.env("NO_COLOR") == "" && many(a.env("TERM"), a.env("COLORTERM"))
	}
	return o, nil
}

// terminal is the columns of a stream, and whether it is a terminal at all.
func terminal(w io.Writer) (columns int, is bool) {
	f, ok := w.(*os.File)
	if !ok || !term.IsTerminal(int(f.Fd())) {
		return 0, false
	}
	columns, _, err := term.GetSize(int(f.Fd()))
	if err != nil {
		columns = 0
	}
	return columns, true
}

// many says whether a terminal names itself as one of 256 colours or more.
func many(name, colours string) bool {
	if name == "" || name == "dumb" {
		return false
	}
	return strings.Contains(name, "256color") || strings.Contains(name, "direct") ||
		colours == "truecolor" || colours == "24bit"
}
