package sheets

import (
	"fmt"
	"strings"
)

// Department is the short name of a sheet, as commands and file names have it.
type Department string

// The departments, in the order of the book.
const (
	Camera   Department = "camera"
	Grip     Department = "grip"
	Electric Department = "electric"
	Art      Department = "art"
	Sound    Department = "sound"
	Effects  Department = "vfx"
	Ads      Department = "ads"
	Movement Department = "movement"
	Vehicles Department = "vehicles"
	Script   Department = "script"
)

var departments = []struct {
	id    Department
	title string
	note  string // what a plan's `note` calls it
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

// Departments lists the departments in the order of the book.
func Departments() []Department {
	out := make([]Department, len(departments))
	for i, d := range departments {
		out[i] = d.id
	}
	return out
}

// Title is the department's name as its sheet has it.
func (d Department) Title() string {
	for _, e := range departments {
		if e.id == d {
			return e.title
		}
	}
	return string(d)
}

// noted is what a plan's `note` calls the department.
func (d Department) noted() string {
	for _, e := range departments {
		if e.id == d {
			return e.note
		}
	}
	return ""
}

// ParseDepartment reads a department's short name, its title, or what a plan's
// `note` calls it.
func ParseDepartment(word string) (Department, error) {
	w := strings.ToLower(strings.TrimSpace(word))
	var all []string
	for _, e := range departments {
		if w == string(e.id) || w == strings.ToLower(e.title) || w == e.note {
			return e.id, nil
		}
		all = append(all, string(e.id))
	}
	return "", fmt.Errorf("there is no department %q; the departments are %s", word, strings.Join(all, ", "))
}
