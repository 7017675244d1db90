package report

import (
	_ "embed"
	"html/template"
	"io"
	"strings"
)

//go:embed book.html
var bookPage string

//go:embed book.css
var bookStyle string

var bookTemplate = template.Must(template.New("book").Funcs(template.FuncMap{
	"safe":    safe,
	"style":   func() template.CSS { return sheetStyled("Book of clauses") + template.CSS(bookStyle) },
	"kind":    bookKind,
	"caution": func() string { return cautionFlag + " CAUTION" },
	"short":   firstDigits,
}).Parse(bookPage))

// bookKind names the kind of a block for the template.
func bookKind(b BookBlock) string {
	switch b.(type) {
	case Paragraph:
		return "paragraph"
	case Rows:
		return "rows"
	case Ruled:
		return "ruled"
	}
	return "warning"
}

// BookHTML writes a book as one page that needs nothing beside it, for a screen of any width and
// for paper.
func BookHTML(w io.Writer, b Book) error {
	var out strings.Builder
	if err := bookTemplate.Execute(&out, b); err != nil {
		return err
	}
	_, err := io.WriteString(w, out.String())
	return err
}
