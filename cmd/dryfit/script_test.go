package main

import (
	"bytes"
	"errors"
	"flag"
	"os"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"

	"dryfit/internal/review"
)

var update = flag.Bool("update", false, "write what the scripts compare with anew; read it before it is kept")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"dryfit": main})
}

// The scripts find the sound example file as loop.yaml, the class of the porch in porch, and the house of the school in school.
func TestScripts(t *testing.T) {
	example, err := os.ReadFile("../../testdata/systems/quarry-road.yaml")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:                 "../../testdata/scripts",
		UpdateScripts:       *update,
		RequireUniqueNames:  true,
		RequireExplicitExec: true,
		Setup: func(e *testscript.Env) error {
			if err := os.CopyFS(e.WorkDir+"/porch", os.DirFS("../../testdata/marking")); err != nil {
				return err
			}
			if err := os.CopyFS(e.WorkDir+"/school", os.DirFS("../../testdata/house/quarry-road")); err != nil {
				return err
			}
			return os.WriteFile(e.WorkDir+"/loop.yaml", example, 0o644)
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"swap":   swap,
			"append": appendTo,
			"status": status,
			"holds":  holds,
			"awaits": awaits,
		},
	})
}

// swap FILE OLD NEW puts one text in place of another, which must be there; \n in it is a line end.
func swap(ts *testscript.TestScript, _ bool, args []string) {
	if len(args) != 3 {
		ts.Fatalf("swap FILE OLD NEW")
	}
	text := ts.ReadFile(args[0])
	if !strings.Contains(text, args[1]) {
		ts.Fatalf("%s does not hold %q", args[0], args[1])
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(strings.Replace(text, args[1], strings.ReplaceAll(args[2], `\n`, "\n"), 1)), 0o644))
}

// append FILE MORE puts the content of one file at the end of another.
func appendTo(ts *testscript.TestScript, _ bool, args []string) {
	if len(args) != 2 {
		ts.Fatalf("append FILE MORE")
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(ts.ReadFile(args[0])+ts.ReadFile(args[1])), 0o644))
}

// awaits FILE PATTERN waits until what a program in the background has written so far matches a pattern.
func awaits(ts *testscript.TestScript, _ bool, args []string) {
	if len(args) != 2 {
		ts.Fatalf("awaits FILE PATTERN")
	}
	pattern, err := regexp.Compile(args[1])
	ts.Check(err)
	var text []byte
	for range 600 { // a minute
		if text, _ = os.ReadFile(ts.MkAbs(args[0])); pattern.Match(text) {
			return
		}
		time.Sleep(100 * time.Millisecond)
	}
	ts.Fatalf("%s does not come to hold %s; it holds\n%s", args[0], pattern, text)
}

// status N ARGS... calls dryfit and wants the exit status N.
func status(ts *testscript.TestScript, _ bool, args []string) {
	err := ts.Exec("dryfit", args[1:]...)
	got := 0
	var exit interface{ ExitCode() int }
	if errors.As(err, &exit) {
		got = exit.ExitCode()
	} else if err != nil {
		ts.Fatalf("%v", err)
	}
	if want := args[0]; want != string(rune('0'+got)) {
		ts.Fatalf("exit status %d, want %s", got, want)
	}
}

// A fault anywhere inside is said in a plain sentence and gives status 3.
func TestFault(t *testing.T) {
	for _, c := range []struct {
		args  []string
		stack bool
	}{{[]string{"version"}, false}, {[]string{"version", "--trace"}, true}} {
		var errs bytes.Buffer
		got := run(c.args, nil, broken{}, &errs, func(string) string { return "" })
		if got != review.Fault {
			t.Errorf("status %d, want %d", got, review.Fault)
		}
		if text := errs.String(); !strings.Contains(text, "dryfit: something in dryfit itself is broken: the writer fell over") {
			t.Errorf("it says %q", text)
		} else if strings.Contains(text, "goroutine") != c.stack {
			t.Errorf("%v: it prints where: %v", c.args, !c.stack)
		}
	}
}

type broken struct{}

func (broken) Write([]byte) (int, error) { panic("the writer fell over") }

// An output that cannot be written is no success.
func TestFullDisk(t *testing.T) {
	for _, args := range [][]string{{"version"}, {"help"}, {"help", "review"}, {"clauses"}, {"quantities"}, {"review", "../../testdata/systems/quarry-road.yaml"},
		{"levels", "../../testdata/systems/quarry-road.yaml"}, {"levels", "../../testdata/systems/quarry-road.yaml", "--case", "restart", "--as", "csv"}, {"completion", "bash"}, {"guide", "../../testdata/marking/guide.yaml"}} {
		var errs bytes.Buffer
		if got := run(args, nil, full{}, &errs, func(string) string { return "" }); got == 0 {
			t.Errorf("%v: status 0 though nothing could be written", args)
		}
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no space left") }

// Which terminals have 256 colours, by the names that terminfo and COLORTERM use.
func TestColours(t *testing.T) {
	for _, c := range []struct {
		name, colours string
		want          bool
	}{
		{"xterm-256color", "", true}, {"screen-256color", "", true}, {"xterm-direct", "", true}, {"xterm", "truecolor", true}, {"xterm", "24bit", true},
		{"xterm", "", false}, {"vt100", "", false}, {"dumb", "truecolor", false}, {"", "", false},
	} {
		if got := many(c.name, c.colours); got != c.want {
			t.Errorf("TERM=%s COLORTERM=%s: %v, want %v", c.name, c.colours, got, c.want)
		}
	}
}
