package highlight

import (
	"encoding/json"
	"fmt"
	"html"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// KDE's engine gives every piece the style of the role the parser gives it. It
// prints colours, so a theme gives each style one of its own.
func TestKate(t *testing.T) {
	program, err := exec.LookPath("kate-syntax-highlighter")
	if err != nil {
		t.Skip("kate-syntax-highlighter is not installed: the package is libkf5syntaxhighlighting-tools")
	}
	data := t.TempDir()
	put := func(path string, text []byte) {
		path = filepath.Join(data, "org.kde.syntax-highlighting", path)
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, text, 0o644))
	}
	text, err := os.ReadFile("../../editors/kate/longhand.xml")
	require.NoError(t, err)
	put("syntax/longhand.xml", text)
	put("themes/roles.theme", kateTheme())
	for _, p := range plans(t) {
		cmd := exec.Command(program, "-s", "Longhand", "-t", "roles", "-f", "html", p.path)
		cmd.Env = append(os.Environ(), "XDG_DATA_HOME="+data, "LC_ALL=C.UTF-8", "QT_QPA_PLATFORM=offscreen", "QT_LOGGING_RULES=*.debug=false")
		out, err := cmd.Output()
		require.NoError(t, err)
		p.compare(t, "kate", kateRoles(t, string(out)), Role.String)
	}
}

// kateTheme colours the n-th role #0000nn.
func kateTheme() []byte {
	styles := map[string]any{}
	for _, r := range append([]Role{Plain}, roles()...) {
		styles[r.String()] = map[string]string{"text-color": fmt.Sprintf("#0000%02x", int(r))}
	}
	normal := map[string]string{"text-color": "#000000"}
	texts := map[string]any{}
	for _, s := range strings.Fields(`Normal Keyword Function Variable ControlFlow Operator BuiltIn Extension Preprocessor
		Attribute Char SpecialChar String VerbatimString SpecialString Import DataType DecVal BaseN Float Constant Comment
		Documentation Annotation CommentVar RegionMarker Information Warning Alert Error Others`) {
		texts[s] = normal
	}
	theme, err := json.Marshal(map[string]any{
		"metadata":    map[string]any{"name": "roles", "revision": 1},
		"text-styles": texts, "custom-styles": map[string]any{"Longhand": styles},
		"editor-colors": map[string]string{"BackgroundColor": "#ffffff"},
	})
	if err != nil {
		panic(err)
	}
	return theme
}

var (
	kateBody  = regexp.MustCompile(`(?s)<pre>\n?(.*)</pre>`)
	katePiece = regexp.MustCompile(`(?s)<span style="color:#0000([0-9a-f]{2});?">(.*?)</span>|<[^>]*>|([^<]+)`)
)

func kateRoles(t *testing.T, page string) []Role {
	t.Helper()
	body := kateBody.FindStringSubmatch(page)
	require.NotNil(t, body, page)
	var got []Role
	for _, piece := range katePiece.FindAllStringSubmatch(body[1], -1) {
		role, text := Plain, piece[3]
		if piece[1] != "" {
			n, err := strconv.ParseInt(piece[1], 16, 0)
			require.NoError(t, err)
			role, text = Role(n), piece[2]
		}
		for range len(html.UnescapeString(text)) {
			got = append(got, role)
		}
	}
	return got
}

// pandoc reads the same file with an engine of its own. It prints kinds that
// several styles share, so some of each are looked at.
func TestPandoc(t *testing.T) {
	program, err := exec.LookPath("pandoc")
	if err != nil {
		t.Skip("pandoc is not installed")
	}
	cmd := exec.Command(program, "--syntax-definition=../../editors/kate/longhand.xml", "-t", "html")
	cmd.Stdin = strings.NewReader("~~~longhand\n" + `# a comment
  wall Åsa-é (8'6", 2 m) high 12' wild
  mina walks to M1 when otto says "six \"sharp\""
  rig cart cart seats 3
  lens w24 24 mm stops T2 to T22
` + "~~~\n")
	out, err := cmd.CombinedOutput()
	require.NoError(t, err, "%s", out)
	for _, want := range []string{
		`<span class="co"># a comment</span>`, `<span class="kw">wall</span> <span class="va">Åsa-é</span>`, `<span class="dv">8&#39;6&quot;</span>`,
		`<span class="dv">2 m</span>`, `<span class="dv">12&#39;</span> <span class="cn">wild</span>`,
		`mina <span class="fu">walks</span> <span class="op">to</span> M1 <span class="op">when</span>`,
		`<span class="st">&quot;six </span><span class="sc">\&quot;</span><span class="st">sharp</span>`,
		`<span class="va">cart</span> <span class="dt">cart</span>`, `<span class="fl">T2</span> <span class="op">to</span> <span class="fl">T22</span>`,
	} {
		require.Contains(t, string(out), want)
	}
}
