// Package departments is who reads a plan: the departments of a crew, and what
// sheets, commands and plans call them. It imports nothing of the project.
package departments

import (
	"fmt"
	"strings"
)

// Name is the short name of a department, as commands and file names have it.
type Name string

// The departments, in the order of the book.
const (
	Camera   Name = "camera"
	Grip     Name = "grip"
	Electric Name = "electric"
	Art      Name = "art"
	Sound    Name = "sound"
	Effects  Name = "vfx"
	Ads      Name = "ads"
	Movement Name = "movement"
	Vehicles Name = "vehicles"
	Script   Name = "script"
)

var table = []struct {
	name  Name
	title string
	note  string
}{
	{Camera, "Camera", "camera"},
	{Grip, "Grip", "grip"},
	{Electric, "Electric", "electric"},
	{Art, "Art", "art"},
	{Sound, "Sound", "sound"},
	{Effects, "Visual effects", "effects"},
	{Ads, "Assistant directors", "directors"},
	{Movement, "Movement", "movement"},
	{Vehicles, "Vehicles and stunts", "vehicles"},
	{Script, "Script and edit", "script"},
}

// All lists the departments in the order of the book.
func All() []Name {
	out := make([]Name, len(table))
	for i, d := range table {
		out[i] = d.name
	}
	return out
}

// Noted lists what a plan's `note` calls the departments, in the order of the book.
func Noted() []string {
	out := make([]string, len(table))
	for i, d := range table {
		out[i] = d.note
	}
	return out
}

// Title is the department's name as its sheet has it.
func (n Name) Title() string {
	for _, d := range table {
		if d.name == n {
			return d.title
		}
	}
	return string(n)
}

// Noted is what a plan's `note` calls the department; empty for none.
func (n Name) Noted() string {
	for _, d := range table {
		if d.name == n {
			return d.note
		}
	}
	return ""
}

// Parse reads a department's short name, its title, or what a plan's `note`
// calls it.
func Parse(word string) (Name, error) {
	w := strings.ToLower(strings.TrimSpace(word))
	var all []string
	for _, d := range table {
		if w == string(d.name) || w == strings.ToLower(d.title) || w == d.note {
			return d.name, nil
		}
		all = append(all, string(d.name))
	}
	return "", fmt.Errorf("there is no department %q; the departments are %s", word, strings.Join(all, ", "))
}
