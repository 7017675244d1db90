package main

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"golang.org/x/sys/unix"
)

// openTerminal makes a pseudo-terminal of so many columns and gives its far end.
func openTerminal(t *testing.T, columns uint16) *os.File {
	t.Helper()
	near, err := os.OpenFile("/dev/ptmx", os.O_RDWR, 0)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { near.Close() })
	fd := int(near.Fd())
	if err := unix.IoctlSetPointerInt(fd, unix.TIOCSPTLCK, 0); err != nil {
		t.Fatal(err)
	}
	n, err := unix.IoctlGetInt(fd, unix.TIOCGPTN)
	if err != nil {
		t.Fatal(err)
	}
	if err := unix.IoctlSetWinsize(fd, unix.TIOCSWINSZ, &unix.Winsize{Row: 50, Col: columns}); err != nil {
		t.Fatal(err)
	}
	far, err := os.OpenFile(fmt.Sprintf("/dev/pts/%d", n), os.O_RDWR|unix.O_NOCTTY, 0)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { far.Close() })
	return far
}

// On a terminal the width is the terminal's and there is colour, unless NO_COLOR
// (no-color.org: present and not empty) or a poor terminal says otherwise, or an option does.
func TestTerminal(t *testing.T) {
	for _, c := range []struct {
		env    string
		colour string
		width  int
		columns,
		wantWidth int
		wantColour bool
	}{
		{"TERM=xterm-256color", "auto", 0, 140, 140, true},
		{"TERM=xterm-256color NO_COLOR=1", "auto", 0, 140, 140, false},
		{"TERM=xterm-256color NO_COLOR=", "auto", 0, 100, 100, true},
		{"TERM=vt100", "auto", 0, 80, 80, false},
		{"TERM=dumb", "always", 0, 80, 80, true},
		{"TERM=xterm-256color", "never", 90, 140, 90, false},
		{"TERM=xterm-256color", "auto", 0, 0, 80, true},
	} {
		env := map[string]string{}
		for _, pair := range strings.Fields(c.env) {
			name, value, _ := strings.Cut(pair, "=")
			env[name] = value
		}
		a := &app{out: openTerminal(t, uint16(c.columns)), env: func(name string) string { return env[name] }, colour: newChoice(c.colour), width: c.width}
		o, err := a.options("metric")
		if err != nil {
			t.Fatal(err)
		}
		if !o.Drawn {
			t.Error("a terminal gets no drawings")
		}
		if o.Width != c.wantWidth || o.Colour != c.wantColour {
			t.Errorf("%s --colour %s --width %d on %d columns: %d columns, colour %v; want %d, %v", c.env, c.colour, c.width, c.columns, o.Width, o.Colour, c.wantWidth, c.wantColour)
		}
	}
}
