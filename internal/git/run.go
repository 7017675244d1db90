package git

import (
	"bytes"
	"context"
	"errors"
	"io"
	"os"
	"os/exec"
	"strings"
	"time"
)

// Bounds on one call of the git command.
const (
	mostBytes = 64 << 20 // of what it writes
	mostTime  = time.Minute
)

// alone is how every call begins: nothing is run, asked or fetched beside git itself.
var alone = []string{
	"--no-pager", "--literal-pathspecs",
	"-c", "core.fsmonitor=false", "-c", "core.hooksPath=" + os.DevNull, "-c", "protocol.allow=never",
}

// surroundings is the environment without what would lead git elsewhere: another
// repository, index, configuration or program.
func surroundings(env []string) []string {
	var out []string
	for _, one := range env {
		name, _, _ := strings.Cut(strings.ToUpper(one), "=")
		if !strings.HasPrefix(name, "GIT_") || name == "GIT_CEILING_DIRECTORIES" {
			out = append(out, one)
		}
	}
	return append(out, "LC_ALL=C", "GIT_OPTIONAL_LOCKS=0", "GIT_TERMINAL_PROMPT=0", "GIT_NO_LAZY_FETCH=1", "GIT_NO_REPLACE_OBJECTS=1")
}

// errTooMuch is what a call comes to that writes more than its bound.
var errTooMuch = errors.New("git gives more than dryfit reads")

// errCutShort is an answer of git that ends before it should.
var errCutShort = errors.New("git ended before its answer did")

// refusal is a call that git refused, with what it said.
type refusal struct{ said string }

func (r refusal) Error() string { return r.said }

// run calls git in a folder and gives what it writes.
func run(ctx context.Context, folder string, args ...string) ([]byte, error) {
	return runBounded(ctx, folder, mostBytes, args...)
}

func runBounded(ctx context.Context, folder string, most int64, args ...string) (out []byte, err error) {
	err = stream(ctx, folder, "", func(r io.Reader) error {
		var err error
		if out, err = io.ReadAll(io.LimitReader(r, most+1)); int64(len(out)) > most {
			return errTooMuch
		}
		return err
	}, args...)
	if err != nil {
		return nil, err
	}
	return out, nil
}

// stream calls git in a folder, gives it an input, and hands on what it writes while it
// writes. When take gives an error the call is ended, and comes to that error.
func stream(ctx context.Context, folder, input string, take func(io.Reader) error, args ...string) error {
	ctx, cancel := context.WithTimeout(ctx, mostTime)
	defer cancel()
	program, err := exec.LookPath("git")
	if err != nil {
		return errors.New("there is no git command here; install git, or name files that are there")
	}
	cmd := exec.CommandContext(ctx, program, append(append([]string{}, alone...), args...)...)
	cmd.Dir, cmd.Env, cmd.WaitDelay = folder, surroundings(os.Environ()), time.Second
	said := &head{most: 4000}
	cmd.Stdin, cmd.Stderr = strings.NewReader(input), said
	pipe, err := cmd.StdoutPipe()
	if err != nil {
		return err
	}
	if err := cmd.Start(); err != nil && ctx.Err() == nil {
		return errors.New("git cannot be run in this folder; check that the folder is there and may be entered")
	} else if err != nil {
		return ctx.Err()
	}
	taken := take(pipe)
	ended := ctx.Err() // before we end it
	if taken != nil {
		cancel()
	}
	err = cmd.Wait()
	switch {
	case errors.Is(ended, context.DeadlineExceeded):
		return errors.New("git took longer than a minute; try the same with git itself")
	case ended != nil:
		return ended
	case taken == errCutShort: // git ended first: it has said why
		return refusal{strings.TrimSpace(said.String())}
	case taken != nil:
		return taken
	case errors.Is(ctx.Err(), context.DeadlineExceeded):
		return errors.New("git took longer than a minute; try the same with git itself")
	case ctx.Err() != nil:
		return ctx.Err()
	case err != nil:
		return refusal{strings.TrimSpace(said.String())}
	}
	return nil
}

// head keeps the first bytes of what is written to it.
type head struct {
	bytes.Buffer
	most int
}

func (h *head) Write(p []byte) (int, error) {
	h.Buffer.Write(p[:min(len(p), max(0, h.most-h.Len()))])
	return len(p), nil
}

// list splits what git ends with NUL.
func list(out []byte) []string {
	var items []string
	for _, item := range strings.Split(string(out), "\x00") {
		if item != "" {
			items = append(items, item)
		}
	}
	return items
}
