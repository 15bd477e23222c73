package report

import "roundlay/pattern"

// Means says what a kind of finding is.
func Means(k pattern.Kind) string {
	switch k {
	case pattern.Crowded:
		return "too little uncut glass, the land, between two cuts; or of two that join, the shorter is too little clear of the other"
	case pattern.Thin:
		return "too little glass is left under a cut"
	case pattern.Rim:
		return "a cut comes too near to the rim"
	case pattern.Foot:
		return "a cut comes too near to the foot"
	case pattern.AtEdge:
		return "a cut comes too near to the edge of the base"
	case pattern.Buried:
		return "the cut is deeper than the wheel's edge is high: its shoulders go under"
	case pattern.Tight:
		return "the line bends too tightly for the wheel"
	case pattern.Shallow:
		return "the mark is too short for the wheel to come to its depth"
	case pattern.Off:
		return "a cut leaves the band, or a motif lies on top of its own next copy"
	case pattern.Uneven:
		return "the glass is too curved for its paper to lie flat on it"
	case pattern.Bridged:
		return "the wheel is too large for a hollow that the cut crosses"
	case pattern.Unseen:
		return "the paper cannot show it"
	}
	return ""
}
