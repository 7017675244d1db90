package report

import (
	_ "embed"
	"html/template"
	"io"
	"strings"
)

//go:embed sheet.html
var sheetPage string

//go:embed sheet.css
var sheetStyle string

var sheetTemplate = template.Must(template.New("sheet").Funcs(template.FuncMap{
	"safe":    safe,
	"style":   sheetStyled,
	"lower":   strings.ToLower,
	"drawn":   func(d Drawing) template.HTML { return template.HTML(d.SVG) }, // held harmless by NewSheet
	"kind":    blockKind,
	"class":   columnClass,
	"caution": func() string { return cautionFlag + " CAUTION" },
	"lines":   nonEmpty,
	"spoken":  func(text string) string { return sentence(capital(safe(text))) },
	"short":   firstDigits,
}).Parse(sheetPage))

// sheetStyled is the style, which on paper says at the foot of each page what it is a page of.
func sheetStyled(kind string) template.CSS {
	return template.CSS(strings.Replace(sheetStyle, "KIND OF SHEET", strings.ToLower(kind), 1))
}

// columnClass names how the cells of a column are set.
func columnClass(c Column) string {
	switch {
	case c.Blank:
		return "blank"
	case c.Number:
		return "number"
	case c.Long:
		return "long"
	}
	return "plain"
}

// blockKind names the kind of a block for the template.
func blockKind(b Block) string {
	switch b.(type) {
	case Text:
		return "text"
	case Caution:
		return "caution"
	case Steps:
		return "steps"
	case Table:
		return "table"
	case Calculation:
		return "calculation"
	}
	return "drawing"
}

// SheetHTML writes a sheet as one page that needs nothing beside it, for a screen
// of any width and for A4 and Letter paper.
func SheetHTML(w io.Writer, s Sheet) error {
	var b strings.Builder
	if err := sheetTemplate.Execute(&b, s); err != nil {
		return err
	}
	_, err := io.WriteString(w, b.String())
	return err
}
