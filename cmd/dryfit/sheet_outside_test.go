//go:build outside

package main

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/draw"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	printing "github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// The page is opened in Chromium, as those who get it will. Debian: apt-get install -y chromium poppler-utils.
// The rules of accessibility are those of axe-core, fetched from the npm registry by its ordinary client.

// sheetOf writes the sheet of a system file as a page and gives its place.
func sheetOf(t *testing.T, file string, more ...string) string {
	t.Helper()
	out := filepath.Join(t.TempDir(), "sheet.html")
	var stdout, stderr bytes.Buffer
	status := run(append([]string{"sheet", file, "-o", out}, more...), nil, &stdout, &stderr, func(string) string { return "" })
	if status > 1 {
		t.Fatalf("sheet %s: status %d: %s", file, status, stderr.String())
	}
	return out
}

// opened is a page in a browser of its own, and what it complains about.
type opened struct {
	context.Context
	t      *testing.T
	faults *[]string
}

func open(t *testing.T, path string, wide, tall int64) opened {
	t.Helper()
	path, err := filepath.Abs(path)
	if err != nil {
		t.Fatal(err)
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.NoSandbox, chromedp.Flag("allow-file-access-from-files", false))
	allocator, stop := chromedp.NewExecAllocator(t.Context(), options...)
	t.Cleanup(stop)
	tab, end := chromedp.NewContext(allocator)
	t.Cleanup(end)
	tab, late := context.WithTimeout(tab, 2*time.Minute)
	t.Cleanup(late)

	faults := &[]string{}
	chromedp.ListenTarget(tab, func(event any) {
		switch e := event.(type) {
		case *runtime.EventExceptionThrown:
			*faults = append(*faults, "exception: "+e.ExceptionDetails.Text)
		case *runtime.EventConsoleAPICalled:
			*faults = append(*faults, fmt.Sprintf("console: %s", e.Type))
		case *log.EventEntryAdded:
			*faults = append(*faults, "log: "+e.Entry.Text)
		case *network.EventRequestWillBeSent:
			if url := e.Request.URL; url != "file://"+path && !strings.HasPrefix(url, "data:") {
				*faults = append(*faults, "it asks for "+url)
			}
		}
	})
	err = chromedp.Run(tab, network.Enable(), log.Enable(), runtime.Enable(), emulation.SetDeviceMetricsOverride(wide, tall, 1, false), chromedp.Navigate("file://"+path))
	if err != nil {
		t.Fatalf("Chromium did not open it, install it first: %v", err)
	}
	return opened{tab, t, faults}
}

// ask evaluates an expression, which may be a promise, into what into points to.
func (o opened) ask(expression string, into any) {
	o.t.Helper()
	waits := func(p *runtime.EvaluateParams) *runtime.EvaluateParams { return p.WithAwaitPromise(true) }
	if err := chromedp.Run(o, chromedp.Evaluate(expression, into, waits)); err != nil {
		o.t.Fatalf("%.80s: %v", expression, err)
	}
}

// tooWide is what reaches over the right edge of the page, but for what scrolls in a frame of its own.
const tooWide = `[...document.querySelectorAll('body *')].filter(e => {
	for (let p = e; p; p = p.parentElement) if (['auto', 'scroll'].includes(getComputedStyle(p).overflowX)) return false;
	return !e.closest('svg svg, svg *') && e.getBoundingClientRect().right > document.documentElement.clientWidth + 1;
}).slice(0, 5).map(e => e.tagName + ' ' + (e.id || e.textContent.trim().slice(0, 40)))`

var sheetLoops = []string{"quarry-road.yaml", "quarry-road-as-found.yaml", "siphon-beds.yaml", "inch-loop.yaml"}

func TestTheSheetInABrowser(t *testing.T) {
	t.Parallel()
	for _, loop := range sheetLoops {
		path := sheetOf(t, systems+loop)
		for _, size := range [][2]int64{{360, 740}, {1280, 900}} {
			t.Run(fmt.Sprintf("%s at %d", loop, size[0]), func(t *testing.T) {
				o := open(t, path, size[0], size[1])
				var over float64
				o.ask(`document.documentElement.scrollWidth - document.documentElement.clientWidth`, &over)
				var wide []string
				o.ask(tooWide, &wide)
				if over > 0 || len(wide) > 0 {
					t.Errorf("it is %v px too wide: %v", over, wide)
				}
				var levels []int
				o.ask(`[...document.querySelectorAll('h1,h2,h3,h4,h5,h6')].map(h => +h.tagName[1])`, &levels)
				if len(levels) < 5 || levels[0] != 1 {
					t.Errorf("its headings are %v", levels)
				}
				for i := 1; i < len(levels); i++ {
					if levels[i] > levels[i-1]+1 || levels[i] == 1 {
						t.Errorf("heading %d goes from level %d to %d", i, levels[i-1], levels[i])
					}
				}
				var bare int
				o.ask(`[...document.querySelectorAll('svg')].filter(s => !s.querySelector('title') || !s.querySelector('desc')).length`, &bare)
				if bare > 0 {
					t.Errorf("%d drawings have no title or no description", bare)
				}
				if len(*o.faults) > 0 {
					t.Errorf("the page complains: %v", *o.faults)
				}
			})
		}
	}
}

// axe is the source of axe-core.
func axe(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	pack := exec.Command("npm", "pack", "--silent", "axe-core@4.10.2")
	pack.Dir = dir
	name, err := pack.Output()
	if err != nil {
		t.Fatalf("npm did not bring axe-core: %v", err)
	}
	source, err := exec.Command("tar", "-xzOf", filepath.Join(dir, strings.TrimSpace(string(name))), "package/axe.min.js").Output()
	if err != nil {
		t.Fatal(err)
	}
	return string(source)
}

// Contrast, names of drawings, captions, landmarks: every rule of WCAG 2.1 A and AA that axe-core can try.
func TestTheSheetIsAccessible(t *testing.T) {
	t.Parallel()
	source := axe(t)
	for _, loop := range sheetLoops[:2] {
		o := open(t, sheetOf(t, systems+loop), 1280, 900)
		var nothing any
		o.ask(source+"; 1", &nothing)
		var found []string
		o.ask(`axe.run(document, {runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'best-practice']}).then(r => r.violations.flatMap(v => v.nodes.slice(0, 3).map(n => v.id + ': ' + n.html.slice(0, 120))))`, &found)
		for _, one := range found {
			t.Errorf("%s: %s", loop, one)
		}
	}
}

var papers = map[string][2]float64{"A4": {8.27, 11.69}, "Letter": {8.5, 11}} // inches

// printed is the page as a PDF on a paper.
func (o opened) printed(t *testing.T, paper string) string {
	t.Helper()
	var pdf []byte
	size := papers[paper]
	err := chromedp.Run(o, chromedp.ActionFunc(func(ctx context.Context) (err error) {
		pdf, _, err = printing.PrintToPDF().WithPaperWidth(size[0]).WithPaperHeight(size[1]).WithPreferCSSPageSize(false).WithPrintBackground(true).Do(ctx)
		return err
	}))
	if err != nil {
		t.Fatal(err)
	}
	name := filepath.Join(t.TempDir(), paper+".pdf")
	if err := os.WriteFile(name, pdf, 0o644); err != nil {
		t.Fatal(err)
	}
	return name
}

// A hole template measures true: its scale bar of 100 mm is 100 mm long on paper.
func TestTheTemplatesPrintAtTrueSize(t *testing.T) {
	t.Parallel()
	path := sheetOf(t, systems+"quarry-road.yaml")
	for paper := range papers {
		o := open(t, path, 1280, 900)
		pdf := o.printed(t, paper)
		const perMillimetre = 10 // pixels, at 254 to the inch
		dir := t.TempDir()
		found := 0
		for _, sheet := range pagesWith(t, pdf, "Print at 100 %") {
			stem := filepath.Join(dir, fmt.Sprint(paper, sheet))
			out, err := exec.Command("pdftoppm", "-r", "254", "-gray", "-png", "-singlefile", "-f", fmt.Sprint(sheet), "-l", fmt.Sprint(sheet), pdf, stem).CombinedOutput()
			if err != nil {
				t.Fatalf("pdftoppm: %v: %s", err, out)
			}
			if longest := bars(t, stem+".png", 100*perMillimetre); longest {
				found++
			}
		}
		if found == 0 {
			t.Errorf("%s: no bar of 100 mm is found on any page that says so", paper)
		}
	}
}

// pagesWith is the pages of a PDF on which a text stands, from 1.
func pagesWith(t *testing.T, pdf, text string) []int {
	t.Helper()
	out, err := exec.Command("pdftotext", "-layout", pdf, "-").Output()
	if err != nil {
		t.Fatalf("pdftotext did not answer, install poppler-utils first: %v", err)
	}
	var list []int
	for i, sheet := range strings.Split(string(out), "\f") {
		if strings.Contains(sheet, text) {
			list = append(list, i+1)
		}
	}
	return list
}

// bars says whether a dark line of a length, within half a millimetre, runs across a picture.
func bars(t *testing.T, name string, length int) bool {
	t.Helper()
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	picture, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	size := picture.Bounds()
	gray := image.NewGray(size)
	draw.Draw(gray, size, picture, size.Min, draw.Src)
	for y := size.Min.Y; y < size.Max.Y; y++ {
		dark := 0
		for x := size.Min.X; x <= size.Max.X; x++ {
			if x < size.Max.X && gray.GrayAt(x, y).Y < 128 {
				dark++
				continue
			}
			if dark >= length-5 && dark <= length+5 {
				return true
			}
			dark = 0
		}
	}
	return false
}

// Whatever the page shows fits on the paper that it is printed on.
func TestNoDrawingIsClippedInPrint(t *testing.T) {
	t.Parallel()
	for _, loop := range sheetLoops {
		path := sheetOf(t, systems+loop)
		for paper, size := range papers {
			margins := 2 * 0.4 // inches: what Chromium leaves
			o := open(t, path, int64((size[0]-margins)*96), int64(size[1]*96))
			if err := chromedp.Run(o, emulation.SetEmulatedMedia().WithMedia("print")); err != nil {
				t.Fatal(err)
			}
			var clipped []string
			o.ask(fmt.Sprintf(`[...document.querySelectorAll('svg, table, pre')].filter(e => {
				const r = e.getBoundingClientRect();
				return r.width > 0 && (r.right > document.documentElement.clientWidth + 1 || r.left < -1 || e.tagName === 'svg' && r.height > %v);
			}).map(e => e.tagName + ' ' + (e.querySelector('title, caption')?.textContent || e.textContent.trim().slice(0, 40)))`, (size[1]-margins)*96), &clipped)
			if len(clipped) > 0 {
				t.Errorf("%s on %s: %v do not fit", loop, paper, clipped)
			}
			pdf := o.printed(t, paper)
			if out, err := exec.Command("pdftotext", pdf, "-").Output(); err != nil || len(out) < 2000 {
				t.Errorf("%s on %s: %d letters are printed, %v", loop, paper, len(out), err)
			}
		}
	}
}
