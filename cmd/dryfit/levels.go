package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"dryfit/internal/report"
	"dryfit/internal/review"
	"dryfit/internal/survey"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// levelling is the options of the command.
type levelling struct {
	as, units   *choice
	kase, fault string
	outputs     []string
}

func (a *app) levelsCommand() *cobra.Command {
	o := levelling{as: newChoice("table", "table", "csv"), units: newChoice("metric", "metric", "us")}
	cmd := &cobra.Command{
		Use:   "levels FILE",
		Short: "levels in time when something goes wrong",
		Long: "Follows the water of a loop in time: an opening is blocked, the pump stops, a joint comes open. Without --case it lists " +
			"the cases and faults that there are for the loop, each with what it means. With --case it prints how the levels go, fault by " +
			"fault: at round times, least and greatest, and what happens when. The exit status is 1 when one of them cannot be followed " +
			"because something is missing.",
		Example: "dryfit levels courtyard.yaml\ndryfit levels courtyard.yaml --case one_blocked\n" +
			"dryfit levels courtyard.yaml --case one_blocked --fault 'solids-run blocked' -o blocked.csv",
		Args: oneFile,
		RunE: func(cmd *cobra.Command, files []string) error {
			return a.levels(files[0], o, cmd.Flags().Changed("as"))
		},
		ValidArgsFunction: systemFiles,
	}
	flags := cmd.Flags()
	flags.StringVar(&o.kase, "case", "", "case to follow")
	flags.StringVar(&o.fault, "fault", "", "one fault of the case; else all")
	flags.Var(o.as, "as", "form of what is printed")
	flags.StringArrayVarP(&o.outputs, "output", "o", nil, "write into a file, .txt or .csv; may be said again; nothing is then printed unless --as is given")
	flags.Var(o.units, "units", "units to show levels in")
	if err := cmd.RegisterFlagCompletionFunc("case", cobra.FixedCompletions(followedCases(), cobra.ShellCompDirectiveNoFileComp)); err != nil {
		panic(err)
	}
	return cmd
}

// oneFile wants exactly one file.
func oneFile(cmd *cobra.Command, args []string) error {
	if len(args) > 1 {
		return misusef("one file at a time: leave out `%s`", args[1])
	}
	return someFiles(cmd, args)
}

// courseForms is what the ending of a file's name asks for.
var courseForms = map[string]string{".txt": "table", ".csv": "csv"}

func (a *app) levels(name string, o levelling, asGiven bool) error {
	look, err := a.options(o.units.value)
	if err != nil {
		return err
	}
	if o.fault != "" && o.kase == "" {
		return misusef("`--fault` wants a case: write `--case` too")
	}
	if o.kase == "" && (asGiven || len(o.outputs) > 0) {
		return misusef("name a case with `--case`; `dryfit levels %s` lists them", report.ShownFile(name))
	}
	for _, out := range o.outputs {
		if courseForms[strings.ToLower(filepath.Ext(out))] == "" {
			return misusef("the ending of `%s` names no form: end it in .txt or .csv", out)
		}
	}
	if cases := followedCases(); o.kase != "" && !slices.Contains(cases, o.kase) {
		return unlisted("there is no case `"+o.kase+"`", o.kase, cases)
	}
	data, err := a.read(name)
	if err != nil {
		return misusef("%s cannot be read: %v", report.ShownFile(name), err)
	}
	s, problems := system.Read(name, data)
	if len(problems) > 0 {
		a.status = review.Unreadable
		return report.Problems(a.out, report.ShownFile(name), problems, look)
	}
	if o.kase == "" {
		stop := a.waiting()
		scenes := survey.Survey(s).Scenes
		stop()
		return report.SceneList(a.out, s, scenes, survey.Catalogue(), look)
	}
	list, err := a.follow(s, o)
	if err != nil {
		return err
	}
	for _, f := range list {
		if len(f.Missing) > 0 {
			a.status = review.Act
		}
	}
	return a.courses(s, list, o, look, asGiven)
}

// follow plays what was asked for, or says what there is instead.
func (a *app) follow(s *system.System, o levelling) ([]working.Followed, error) {
	defer a.waiting()()
	list := survey.Follow(s, o.kase, o.fault)
	if len(list) > 0 {
		return list, nil
	}
	var cases, faults []string
	for _, sc := range survey.Survey(s).Scenes {
		if !slices.Contains(cases, sc.Case) {
			cases = append(cases, sc.Case)
		}
		if sc.Case == o.kase {
			faults = append(faults, sc.Fault)
		}
	}
	if len(faults) == 0 {
		return nil, unlisted("nothing in this loop can be followed in the case `"+o.kase+"`", "", cases)
	}
	spoken := strings.ReplaceAll(o.fault, "-", " ")
	for _, f := range faults { // as an address writes it
		if strings.ReplaceAll(f, "-", " ") == spoken {
			return survey.Follow(s, o.kase, f), nil
		}
	}
	return nil, unlisted("the case `"+o.kase+"` has no fault `"+o.fault+"`", o.fault, faults)
}

// courses writes the forms that were asked for.
func (a *app) courses(s *system.System, list []working.Followed, o levelling, look report.Options, asGiven bool) error {
	write := func(w io.Writer, form string, look report.Options) error {
		if form == "csv" {
			return report.CoursesCSV(w, s, list, look)
		}
		return report.Courses(w, s, list, look)
	}
	forms := []string{}
	for _, name := range o.outputs {
		form := courseForms[strings.ToLower(filepath.Ext(name))]
		forms = append(forms, form)
		plain := look
		plain.Drawn, plain.Colour = false, a.colour.value == "always"
		if a.width == 0 {
			plain.Width = pageWidth
		}
		var b bytes.Buffer
		if err := write(&b, form, plain); err != nil {
			return err
		}
		if err := os.WriteFile(name, b.Bytes(), 0o644); err != nil {
			return misusef("%s cannot be written: %v", name, unwritable(err))
		}
	}
	printed := len(o.outputs) == 0 || asGiven
	if printed {
		forms = append(forms, o.as.value)
	}
	if slices.Contains(forms, "csv") && !(printed && o.as.value == "table") {
		a.sayWhatIsNotThere(list)
	}
	if !printed {
		return nil
	}
	return write(a.out, o.as.value, look)
}

// sayWhatIsNotThere says beside a form that holds numbers only what it leaves out.
func (a *app) sayWhatIsNotThere(list []working.Followed) {
	for _, f := range list {
		switch {
		case len(f.Missing) > 0:
			a.say("%s cannot be followed yet; --as table says what is missing", f.Fault)
		case f.Reason != "":
			a.say("%s was not followed to its end: %s", f.Fault, f.Reason)
		}
	}
}

// followedCases is the cases that may have something to follow in time.
func followedCases() []string {
	var out []string
	for _, c := range survey.Catalogue().Cases {
		if !slices.Contains([]string{working.Always, working.RunClean, working.RunLeast, working.RunWorst, "all_beds_drain", "unattended", "power_cut", "air_pump_fails"}, c.Name) {
			out = append(out, c.Name)
		}
	}
	return out
}

// unlisted says what is not there, the nearest that is, and all that there are.
func unlisted(problem, word string, list []string) error {
	if near := nearest(word, list); word != "" && near != "" {
		problem += "; the nearest is `" + near + "`"
	}
	if len(list) == 0 {
		return misusef("%s, nor in any other", problem)
	}
	return misusef("%s; there are: %s", problem, strings.Join(list, " | "))
}

// waiting says on a terminal that work goes on, once it has taken a second, and
// gives what takes that back.
func (a *app) waiting() (stop func()) {
	if _, watched := terminal(a.err); !watched {
		return func() {}
	}
	over, gone := make(chan struct{}), make(chan struct{})
	go func() {
		defer close(gone)
		const words = "following the water ..."
		select {
		case <-over:
			return
		case <-time.After(time.Second):
		}
		fmt.Fprint(a.err, words)
		<-over
		fmt.Fprintf(a.err, "\r%s\r", strings.Repeat(" ", len(words)))
	}()
	return func() {
		close(over)
		<-gone
	}
}
