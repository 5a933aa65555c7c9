package svg

import (
	"encoding/base64"
	"strings"

	"longhand/render/fonts"
	"longhand/render/scene"
)

// family is the list of CSS font families of a face: the project's own first, then
// one of about its widths, then whatever the viewer has.
func family(f fonts.Face) string {
	if f == fonts.Mono {
		return `"Go Mono","Liberation Mono",monospace`
	}
	return `Go,"Liberation Sans",sans-serif`
}

// css is the style block: what holds for all text, then a rule a class.
func (w *writer) css() string {
	var b strings.Builder
	root, inside := "svg", ""
	if w.o.Scope != "" {
		root, inside = "#"+w.o.Scope, "#"+w.o.Scope+" "
	}
	if w.o.EmbedFonts {
		for _, f := range fonts.Faces() {
			if w.uses(f) {
				face(&b, f)
			}
		}
	}
	b.WriteString(root + "{fill:none;stroke:none;stroke-width:" + scene.Number(scene.DefaultWidth) + ";fill-rule:evenodd}\n")
	b.WriteString(inside + "text{fill:#000000;stroke:none;font-family:" + family(fonts.Regular) + ";font-kerning:none;font-variant-ligatures:none}\n")
	if w.uses(fonts.Bold) {
		b.WriteString(inside + "." + faceClass(fonts.Bold) + "{font-weight:bold}\n")
	}
	if w.uses(fonts.Mono) {
		b.WriteString(inside + "." + faceClass(fonts.Mono) + "{font-family:" + family(fonts.Mono) + "}\n")
	}
	for _, r := range w.sheet.Styles {
		if scene.ValidClass(r.Class) {
			b.WriteString(inside + "." + r.Class + "{" + declarations(r.Style) + "}\n")
		}
	}
	return strings.TrimSuffix(b.String(), "\n")
}

func faceClass(f fonts.Face) string { return "face-" + f.String() }

func face(b *strings.Builder, f fonts.Face) {
	name, weight := "Go", "normal"
	switch f {
	case fonts.Bold:
		weight = "bold"
	case fonts.Mono:
		name = "Go Mono"
	}
	b.WriteString(`@font-face{font-family:"` + name + `";font-weight:` + weight + `;src:url("data:font/ttf;base64,`)
	b.WriteString(base64.StdEncoding.EncodeToString(f.TTF()))
	b.WriteString("\") format(\"truetype\")}\n")
}

func (w *writer) uses(f fonts.Face) bool {
	for _, t := range w.sheet.Texts() {
		if t.Face == f {
			return true
		}
	}
	return false
}

func declarations(s scene.Style) string {
	var d []string
	say := func(property, value string) {
		if value != "" {
			d = append(d, property+":"+value)
		}
	}
	say("stroke", s.Stroke.String())
	say("fill", s.Fill.String())
	if s.Width > 0 {
		say("stroke-width", scene.Number(s.Width))
	}
	if s.Dash != nil {
		say("stroke-dasharray", dash(s.Dash))
	}
	if s.Opacity > 0 {
		say("opacity", scene.Number(s.Opacity))
	}
	switch s.Cap {
	case scene.Butt:
		say("stroke-linecap", "butt")
	case scene.RoundCap:
		say("stroke-linecap", "round")
	case scene.Square:
		say("stroke-linecap", "square")
	}
	switch s.Join {
	case scene.Miter:
		say("stroke-linejoin", "miter")
	case scene.RoundJoin:
		say("stroke-linejoin", "round")
	case scene.Bevel:
		say("stroke-linejoin", "bevel")
	}
	return strings.Join(d, ";")
}

func dash(on []float64) string {
	if len(on) == 0 {
		return "none"
	}
	parts := make([]string, len(on))
	for i, v := range on {
		parts[i] = scene.Number(v)
	}
	return strings.Join(parts, ",")
}
