package submittal

import (
	"regexp"
	"slices"
	"strings"
)

// question is a sentence of a list, with what is alike in all that say the same of several things; "" where it stands alone.
type question struct{ kind, text string }

// mostOwn is the most words in which two sentences may differ that say the same of two things.
const mostOwn = 14

// asked are the sentences, each once: what others of its kind say in the same words of other things is named behind the first.
func asked(list []question) []string {
	var out []string
	done := make([]bool, len(list))
	for i, q := range list {
		if done[i] {
			continue
		}
		var others []string
		first, page := pageOff(q.text)
		for j := i + 1; j < len(list) && q.kind != ""; j++ {
			text, at := pageOff(list[j].text)
			if kind, own, ok := ownWords(first, text); list[j].kind == q.kind && ok && at == page {
				if len(others) == 0 { // of the others it is the same
					own = strings.TrimSpace(kind + " " + own)
				}
				others, done[j] = append(others, own), true
			}
		}
		text := q.text
		if len(others) > 0 {
			text += " The same of " + andOf(others) + "."
		}
		out = append(out, text)
	}
	return out
}

// pageAtEnd is the page that a sentence refers to.
var pageAtEnd = regexp.MustCompile(` \(([^()]*\d)\)\.?$`)

// pageOff takes the page off the end of a sentence.
func pageOff(text string) (rest, page string) {
	if at := pageAtEnd.FindStringSubmatchIndex(text); at != nil {
		return text[:at[0]], text[at[2]:at[3]]
	}
	return text, ""
}

// ownWords are what a sentence has in the place where another, else in the same words, has its own, and the word before, which says of
// what kind it is.
func ownWords(first, text string) (kind, own string, ok bool) {
	a, b := strings.Fields(first), strings.Fields(text)
	head := 0
	for head < min(len(a), len(b)) && a[head] == b[head] {
		head++
	}
	foot := 0
	for foot < min(len(a), len(b))-head && a[len(a)-1-foot] == b[len(b)-1-foot] {
		foot++
	}
	theirs, words := a[head:len(a)-foot], b[head:len(b)-foot]
	if len(words) == 0 || len(words) > mostOwn || foot < 3 {
		return "", "", false
	}
	switch head {
	case 0: // it begins with a name, of which wall may be a part
		if slices.ContainsFunc(words, func(w string) bool { return slices.Contains(theirs, w) }) {
			return "", "", false
		}
		if b[len(b)-foot] == "wall" {
			words = append(slices.Clone(words), "wall")
		}
	case 1:
		kind = strings.ToLower(b[0][:1]) + b[0][1:]
	default:
		kind = b[head-1]
	}
	return kind, strings.TrimSuffix(strings.Join(words, " "), ","), true
}

// andOf joins names: "A, B and C".
func andOf(names []string) string {
	if n := len(names); n > 1 {
		return strings.Join(names[:n-1], ", ") + " and " + names[n-1]
	}
	return strings.Join(names, "")
}
