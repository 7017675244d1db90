package main

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"dryfit/internal/compare"
	"dryfit/internal/corpus"
	"dryfit/internal/report"
	"dryfit/internal/review"
	"dryfit/internal/system"
)

// comparing is the options of the command.
type comparing struct {
	as, units   *choice
	outputs     []string
	asOf        string
	all         bool
	houseBefore string // the rules of the house that A was judged by
}

func (a *app) compareCommand() *cobra.Command {
	o := comparing{as: newChoice("text", "text", "markdown", "json"), units: newChoice("metric", "metric", "us")}
	cmd := &cobra.Command{
		Use:   "compare A B",
		Short: "what moved between two versions, and whether it got worse",
		Long: "Reviews two versions of a loop and says what lies between them: values of the file, verdicts, margins and quantities that moved by more " +
			"than 5 %, parts, cuts, holes, joints, cost, and leave to differ. A and B are files, or folders whose files are paired by their path, or REV:PATH, " +
			"what stands at a path of a revision of git. As with git, a path goes from the top of the repository, one that begins with ./ or ../ from this " +
			"folder, and REV: is the whole of it. A file that is there is read as a file, whatever its name. " +
			"The exit status is 1 when something got worse: the verdict of a shall or a should, or a value that came nearer its limit by more than 5 % of it, or " +
			"went that much further beyond; where leave to differ holds it does not count. A file that is only in B is judged alone: it counts as worse when " +
			"`dryfit review` would find a shall to act on in it. One that is gone does not count, and one of the same content under another path was moved. " +
			"Cost is neither worse nor better. The exit status is 2 when B has a file that cannot be reviewed, unless it stood in A letter for letter. " +
			"A may be a folder without system files, or one that its revision does not have yet: all are new. " +
			"When one side is `-`, permits beside the file of the other are left aside.",
		Example: "dryfit compare courtyard-old.yaml courtyard.yaml\ndryfit compare HEAD:./courtyard.yaml courtyard.yaml\n" +
			"dryfit compare main:designs designs --as markdown\ndryfit compare designs-2025 designs-2026 -o moved.json --all",
		Args: twoVersions,
		RunE: func(cmd *cobra.Command, sides []string) error {
			return a.compare(cmd.Context(), sides[0], sides[1], o, cmd.Flags().Changed("as"))
		},
		ValidArgsFunction: systemFiles,
	}
	flags := cmd.Flags()
	flags.Var(o.as, "as", "form of what is printed")
	flags.StringArrayVarP(&o.outputs, "output", "o", nil, "write into a file, .txt, .md or .json; may be said again; nothing is then printed unless --as is given")
	flags.Var(o.units, "units", "units to show values in")
	flags.Var((*day)(&o.asOf), "as-of", "day on which deviation permits are held, such as 2026-03-14; else that of SOURCE_DATE_EPOCH, else today")
	flags.StringVar(&o.houseBefore, "house-before", "", "rules of the house that A is judged by, where they were others than those of --house")
	flags.BoolVar(&o.all, "all", false, "leave nothing out for its length")
	return cmd
}

func twoVersions(_ *cobra.Command, args []string) error {
	if len(args) != 2 {
		return misusef("name two versions: `dryfit compare A B`, each a file, a folder, or REV:PATH of git")
	}
	return nil
}

func (a *app) compare(ctx context.Context, was, now string, o comparing, asGiven bool) error {
	look, err := a.options(o.units.value)
	if err != nil {
		return err
	}
	for _, name := range o.outputs {
		if comparedForm(name) == "" {
			return misusef("the ending of `%s` names no form: end it in .txt, .md or .json", name)
		}
		if corpus.IsDesign(name) { // said before the work, and before another file is written
			return misusef("%s cannot be written: %v", name, errDesign)
		}
	}
	today, err := a.today(o.asOf)
	if err != nil {
		return err
	}
	one, two, err := a.versions(ctx, was, now)
	if err != nil {
		return err
	}
	reviewer, err := a.reviewer(look)
	if reviewer == nil {
		return err
	}
	before := reviewer
	if o.houseBefore != "" {
		if before, err = a.reviewerIn(o.houseBefore, look); before == nil {
			return err
		}
	}
	list, err := compareSides(ctx, before, reviewer, one, two, today)
	if err != nil {
		return err
	}
	for _, c := range list {
		a.status = max(a.status, c.Status())
	}
	all := report.Comparing{Was: was, Now: now, AsOf: today, All: o.all, Look: look}
	for _, name := range o.outputs {
		plain := all
		plain.Look.Colour = a.colour.value == "always"
		if a.width == 0 {
			plain.Look.Width = 80
		}
		f, finish, err := replace(name)
		if err != nil {
			return misusef("%s cannot be written: %v", name, unwritable(err))
		}
		b := bufio.NewWriter(f)
		err = writeCompared(b, comparedForm(name), list, plain)
		if err := finish(errors.Join(err, b.Flush())); err != nil {
			return misusef("%s cannot be written: %v", name, unwritable(err))
		}
	}
	if len(o.outputs) > 0 && !asGiven {
		return nil
	}
	b := bufio.NewWriter(a.out)
	return errors.Join(writeCompared(b, o.as.value, list, all), b.Flush())
}

// comparedForm is the form that the ending of a name asks for; empty for none.
func comparedForm(name string) string {
	return map[string]string{".txt": "text", ".md": "markdown", ".json": "json"}[strings.ToLower(filepath.Ext(name))]
}

func writeCompared(b io.Writer, form string, list []report.Compared, o report.Comparing) error {
	switch form {
	case "json":
		return report.CompareJSON(b, list, o)
	case "markdown":
		return report.CompareMarkdown(b, list, o)
	}
	return report.CompareTerminal(b, list, o)
}

// compareSides holds the files of two sides against each other.
func compareSides(ctx context.Context, before, reviewer *corpus.Reviewer, was, now side, today string) ([]report.Compared, error) {
	if !was.folder && !now.folder {
		c, err := compareFiles(ctx, before, reviewer, was.files[""], now.files[""], today)
		return []report.Compared{c}, err
	}
	var list []report.Compared
	for _, f := range compare.Folders(was.contents(), now.contents()) {
		c, err := compareFiles(ctx, before, reviewer, was.files[f.Was], now.files[f.Now], today)
		if err != nil {
			return nil, err
		}
		c.Path = f.Path()
		if f.Was != "" && f.Was != c.Path {
			c.From = f.Was
		}
		list = append(list, c)
	}
	return list, nil
}

// compareFiles holds two versions of one file against each other; one that is new is judged
// alone. Remedies are sought only for what got worse.
func compareFiles(ctx context.Context, before, r *corpus.Reviewer, was, now *stored, today string) (report.Compared, error) {
	c := report.Compared{Was: versionOf(was), Now: versionOf(now)}
	switch {
	case now == nil || c.Was.Unread != "" || c.Now.Unread != "":
		return c, nil
	case was != nil && before == r && sameFiles(was, now):
		c.Same = true
		c.Was.Problems, c.Now.Problems = problemsOf(was), problemsOf(now)
		return c, nil
	}
	var sides [2]*compare.Side
	for i, one := range []*stored{was, now} {
		if one == nil {
			continue
		}
		side, problems, err := []*corpus.Reviewer{before, r}[i].Side(ctx, one.file(), one.data, today)
		if err != nil {
			return c, fmt.Errorf("%s could not be reviewed: %w", one.name, err)
		}
		sides[i] = side
		[]*report.Version{&c.Was, &c.Now}[i].Problems = problems
	}
	switch {
	case sides[1] == nil:
		return c, nil
	case was == nil:
		c.New = sides[1].Review
		return c, nil
	case sides[0] == nil:
		return c, nil
	}
	comparison := compare.Compare(*sides[0], *sides[1])
	c.Comparison = &comparison
	var first []*review.Finding
	if list := comparison.Findings(); len(list) > 0 {
		first = list[:min(len(list), report.MostRemedies)]
	}
	if err := r.Offer(ctx, sides[1].Review, first); err != nil {
		return c, fmt.Errorf("remedies for %s could not be sought: %w", now.name, err)
	}
	return c, nil
}

// sameFiles says that two versions hold the same bytes, and the permits beside them too.
func sameFiles(was, now *stored) bool {
	_, a, badA := was.file().Permits()
	_, b, badB := now.file().Permits()
	return bytes.Equal(was.data, now.data) && bytes.Equal(a, b) && len(badA) == len(badB)
}

// problemsOf is what is wrong with a file or the permits beside it.
func problemsOf(f *stored) []system.Problem {
	if _, _, bad := f.file().Permits(); len(bad) > 0 {
		return bad
	}
	_, problems := system.Read(f.name, f.data)
	return problems
}

func versionOf(f *stored) report.Version {
	if f == nil {
		return report.Version{Absent: true}
	}
	v := report.Version{Name: f.name}
	if f.err != nil {
		v.Unread = f.err.Error()
	}
	return v
}
