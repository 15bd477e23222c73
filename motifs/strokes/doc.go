// Package strokes reads drawings.
package strokes
