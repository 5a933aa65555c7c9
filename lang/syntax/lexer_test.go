package syntax

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/alecthomas/participle/v2/lexer"
)

// kinds writes each token that is no blank as its kind and text.
func kinds(text string) string {
	name := map[lexer.TokenType]string{}
	for n, k := range symbols {
		name[k] = n
	}
	var out []string
	for _, t := range Lex("", text) {
		if t.Type != TokSpace {
			out = append(out, name[t.Type]+"|"+t.Value)
		}
	}
	return strings.Join(out, " ")
}

func TestTokens(t *testing.T) {
	for text, want := range map[string]string{
		"mail-van M1 Åsa x":       "Name|mail-van Name|M1 Name|Åsa Name|x",
		"to at by":                "Keyword|to Keyword|at Keyword|by",
		"camera-left body-rig":    "Name|camera-left Name|body-rig",
		"van- -van":               "Name|van Illegal|- Illegal|- Name|van",
		"2.4 m 2.4m 24mm":         "Quantity|2.4 m Quantity|2.4m Quantity|24mm",
		`8'6" 8' 6" 8'6 1/2" 8'`:  `Quantity|8'6" Quantity|8' 6" Quantity|8'6 1/2" Quantity|8'`,
		`6" 6 1/2" 1/2" 8'-6"`:    `Quantity|6" Quantity|6 1/2" Quantity|1/2" Quantity|8'-6"`,
		"8 ft 6 in high":          "Quantity|8 ft 6 in Keyword|high",
		"8 ft 6 in 4 s":           "Quantity|8 ft Number|6 Keyword|in Quantity|4 s",
		`high 8' "text"`:          `Keyword|high Quantity|8' String|"text"`,
		"bar 12.3 in 4 counts":    "Name|bar Number|12.3 Keyword|in Quantity|4 counts",
		"6 in high":               "Quantity|6 in Keyword|high",
		"(-14, +9) -.5 .5":        "Punct|( Number|-14 Punct|, Number|+9 Punct|) Number|-.5 Number|.5",
		"M1 + (0, 2)":             "Name|M1 Punct|+ Punct|( Number|0 Punct|, Number|2 Punct|)",
		"+9 s +1:04 1:04.5 16:9":  "Quantity|+9 s Clock|+1:04 Clock|1:04.5 Clock|16:9",
		"2026-08-20 +02:00":       "Date|2026-08-20 Clock|+02:00",
		"T2.8 T2 T22 Tom T":       "Stop|T2.8 StopName|T2 StopName|T22 Name|Tom Name|T",
		"35mm-4perf 31B 31A":      "Mixed|35mm-4perf Mixed|31B Quantity|31A",
		"40% 40 % 45° 45 deg/s":   "Quantity|40% Quantity|40 % Quantity|45° Quantity|45 deg/s",
		"150 words/min 600 cd/m2": "Quantity|150 words/min Quantity|600 cd/m2",
		"3 mph 3 m/s 3 m/x":       "Quantity|3 mph Quantity|3 m/s Quantity|3 m Illegal|/ Name|x",
		"0.4 m x 0.3 m":           "Quantity|0.4 m Name|x Quantity|0.3 m",
		"2.4 m×1.2 m":             "Quantity|2.4 m Punct|× Quantity|1.2 m",
		`"a \" b" "open`:          `String|"a \" b" OpenText|"open`,
		"“curly” 'single'":        "Illegal|“curly” Illegal|'single'",
		"a # b \"c\"\r\nd":        "Name|a Comment|# b \"c\" EOL|\r\n Name|d",
		"a\xffb":                  "Name|a Illegal|\xff Name|b",
		"2.4\u00a0m":              "Quantity|2.4\u00a0m",
		"1.2.3":                   "Number|1.2 Number|.3",
		"12s3":                    "Mixed|12s3",
		"230 V 16 A x 3":          "Quantity|230 V Quantity|16 A Name|x Number|3",
		"seats 3 high":            "Name|seats Number|3 Keyword|high",
		"M1+(0,2)":                "Name|M1 Punct|+ Punct|( Number|0 Punct|, Number|2 Punct|)",
		"33.87 S 151.21 E 0.12 W": "Number|33.87 Name|S Number|151.21 Name|E Quantity|0.12 W",
	} {
		assert.Equal(t, want, kinds(text), text)
	}
}
