package report

import (
	"encoding/xml"
	"io"
	"slices"
	"strings"
)

// What a drawing may be made of. Nothing here runs, loads or links.
var (
	svgElements = strings.Fields("svg g defs title desc path line polyline polygon rect circle ellipse text tspan marker pattern clipPath use style symbol")
	svgRefused  = []string{"href", "src", "style"}
)

// Harmless says that a drawing is one well-formed piece of SVG that holds only
// shapes and text: nothing that runs, loads from elsewhere or leads away. A use or a
// url() leads to a place in the same drawing.
func Harmless(svg string) bool {
	d := xml.NewDecoder(strings.NewReader(svg))
	depth, roots := 0, 0
	inStyle := false
	for {
		token, err := d.Token()
		if err == io.EOF {
			return depth == 0 && roots == 1
		}
		if err != nil {
			return false
		}
		switch t := token.(type) {
		case xml.StartElement:
			if depth == 0 {
				if roots++; t.Name.Local != "svg" {
					return false
				}
			}
			depth++
			inStyle = t.Name.Local == "style"
			if !slices.Contains(svgElements, t.Name.Local) || slices.ContainsFunc(t.Attr, func(a xml.Attr) bool { return !harmlessAttr(t.Name.Local, a) }) {
				return false
			}
		case xml.EndElement:
			depth--
			inStyle = false
		case xml.CharData:
			if depth == 0 && strings.TrimSpace(string(t)) != "" || inStyle && !harmlessStyle(string(t)) {
				return false
			}
		default: // comments, instructions and declarations
			return false
		}
	}
}

func harmlessAttr(element string, a xml.Attr) bool {
	name, value := strings.ToLower(a.Name.Local), strings.ToLower(a.Value)
	switch {
	case strings.HasPrefix(name, "on"):
		return false
	case a.Name.Space == "xmlns" || name == "xmlns":
		return value == "http://www.w3.org/2000/svg"
	case element == "use" && name == "href":
		return strings.HasPrefix(value, "#")
	case name == "style":
		return harmlessStyle(value)
	case slices.Contains(svgRefused, name):
		return false
	case strings.Contains(value, "url("):
		return strings.Count(value, "url(") == strings.Count(value, "url(#")
	}
	return !strings.Contains(value, "javascript:")
}

func harmlessStyle(text string) bool {
	text = strings.ToLower(text)
	return !strings.ContainsAny(text, `\<@`) && !strings.Contains(text, "expression(") && strings.Count(text, "url(") == strings.Count(text, "url(#")
}
