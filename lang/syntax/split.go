package syntax

// split cuts tokens into lines: at each line's end, unless the line ends in a
// comma or stands inside brackets and the next line can go on with it. A
// bracket or a comma left over never swallows the statements after it.
func split(tokens []Token) [][]Token {
	var lines [][]Token
	start, depth, last := 0, 0, -1
	for i, t := range tokens {
		switch {
		case t.Type == TokPunct && t.Value == "(":
			depth++
		case t.Type == TokPunct && t.Value == ")":
			depth = max(0, depth-1)
		}
		if !blank(t.Type) {
			last = i
		}
		if t.Type != TokEOL {
			continue
		}
		comma := last >= start && tokens[last].Type == TokPunct && tokens[last].Value == ","
		if depth > 0 && continuesBracket(tokens[i+1:]) || comma && continuesList(tokens[i+1:]) {
			continue
		}
		lines = append(lines, tokens[start:i+1])
		start, depth = i+1, 0
	}
	if start < len(tokens) {
		lines = append(lines, tokens[start:])
	}
	return lines
}

// continuesBracket reports whether a line can stand inside brackets: it begins
// with a number, a comma or a bracket, or is a comment.
func continuesBracket(rest []Token) bool {
	t, ok := firstOfLine(rest)
	if !ok {
		return false
	}
	switch t.Type {
	case TokNumber, TokQuantity, TokComment:
		return true
	case TokPunct:
		return t.Value == "," || t.Value == ")"
	}
	return false
}

// continuesList reports whether a line can go on after a comma.
func continuesList(rest []Token) bool {
	t, ok := firstOfLine(rest)
	return ok && !IsSectionWord(t.Value)
}

// firstOfLine is the first token of a line that is no blank.
func firstOfLine(tokens []Token) (Token, bool) {
	for _, t := range tokens {
		switch t.Type {
		case TokSpace:
		case TokEOL:
			return t, false
		default:
			return t, true
		}
	}
	return Token{}, false
}
