package highlight

import (
	"os"
	"testing"

	chromalib "github.com/alecthomas/chroma/v2"
	"github.com/stretchr/testify/require"
)

// chroma's own engine gives every piece the role the parser gives it.
func TestChroma(t *testing.T) {
	lexer, err := chromalib.NewXMLLexer(os.DirFS("../../editors/chroma"), "longhand.xml")
	require.NoError(t, err)
	byType := map[string]Role{}
	for r, name := range chromaTypes {
		byType[name] = r
	}
	for _, p := range plans(t) {
		tokens, err := lexer.Tokenise(&chromalib.TokeniseOptions{State: "root", EnsureLF: false}, p.text)
		require.NoError(t, err)
		var got []Role
		for _, token := range tokens.Tokens() {
			role, known := byType[token.Type.String()]
			require.True(t, known || token.Value == "", "%v", token)
			for range len(token.Value) {
				got = append(got, role)
			}
		}
		p.compare(t, "chroma", got, Role.String)
	}
}
