package main

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"longhand/lang/compile"
	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/scout"
	"longhand/lang/sight"
	"longhand/lang/units"
	"longhand/render/places"
	"longhand/render/scene"
	"longhand/render/svg"
)

type scoutFlags struct {
	lens, camera, beat, purpose string
	near, as, mapFile, stdinAs  string
	sees, walls                 []string
	focal                       string
	floor                       bool
	count                       int
}

func (a *app) scoutCommand() *cobra.Command {
	var f scoutFlags
	cmd := &cobra.Command{
		Use:   "scout FILE",
		Short: "where a camera could hide, or a lamp, a boom, a person stand unseen",
		Long: `Looks on walls and on the floor for places where a camera with a lens would see
people unblocked for a beat, out of every other rolling camera's view. Places are
ranked by how much of everybody it sees, how large, and how long no other camera
has it in view; what is listed has been worked out at every frame, with the lens
hole cut. The lines to paste for the first place come last.

With --for lamp, boom, monitor or person it looks for floor instead that no camera
sees, up to the height of what stands there, near somebody.

Without --wall and --floor it looks on all walls and on the floor. Interrupted, it
lists what it has so far.`,
		Example: `  longhand scout plan.take --lens w28 --sees mina,otto --beat "The racks"
  longhand scout plan.take --lens w28 --camera B --sees mina --beat "The racks" --wall racks --map hides.svg
  longhand scout plan.take --for boom --near mina --beat "The racks"`,
		Args: needOne,
		RunE: func(cmd *cobra.Command, args []string) error { return a.scout(cmd, args[0], f) },
	}
	fl := cmd.Flags()
	fl.StringVar(&f.lens, "lens", "", "the lens to look through, of the kit")
	fl.StringVar(&f.focal, "focal", "", "the focal length, of a zoom: 35 mm; its shortest unless given")
	fl.StringVar(&f.camera, "camera", "", "the camera that is to hide, of the kit; the sensor is its own. The kit's last unless given")
	fl.StringSliceVar(&f.sees, "sees", nil, "who is to be seen: mina,otto")
	fl.StringVar(&f.beat, "beat", "", "the beat, by its title; the whole take unless given")
	fl.StringSliceVar(&f.walls, "wall", nil, "look on this wall")
	fl.BoolVar(&f.floor, "floor", false, "look on the floor")
	fl.StringVar(&f.purpose, "for", "camera", "what is to stand there: camera, "+purposes())
	fl.StringVar(&f.near, "near", "", "near whom, with --for")
	fl.IntVar(&f.count, "count", 8, "how many places to list")
	fl.StringVar(&f.as, "as", "text", "the form: json or text")
	fl.StringVar(&f.mapFile, "map", "", "draw a map of the places, into this .svg file")
	fl.StringVar(&f.stdinAs, "stdin-filename", "", "the name that standard input goes by in messages")
	complete(cmd, "as", "json", "text")
	complete(cmd, "for", append([]string{"camera"}, strings.Split(purposes(), ", ")...)...)
	return cmd
}

func purposes() string {
	var out []string
	for _, p := range scout.Purposes() {
		out = append(out, string(p))
	}
	return strings.Join(out, ", ")
}

// check says what is wrong with the flags, before anything is worked out.
func (f *scoutFlags) check() error {
	camera := f.purpose == "camera"
	switch {
	case f.as != "text" && f.as != "json":
		return fmt.Errorf("--as takes json or text, not %q%s", f.as, suggestion(f.as, []string{"json", "text"}))
	case !camera && !slices.Contains(strings.Split(purposes(), ", "), f.purpose):
		return fmt.Errorf("--for takes camera, %s, not %q%s", purposes(), f.purpose, suggestion(f.purpose, strings.Split(purposes(), ", ")))
	case f.count < 1 || f.count > 100:
		return fmt.Errorf("--count takes 1 to 100, not %d", f.count)
	case camera && f.lens == "":
		return fmt.Errorf("scout needs --lens, the lens to look through")
	case camera && len(f.sees) == 0:
		return fmt.Errorf("scout needs --sees, who is to be seen: --sees mina,otto")
	case camera && f.near != "":
		return fmt.Errorf("--near goes with --for; for a camera it is --sees")
	case !camera && f.near == "":
		return fmt.Errorf("--for %s needs --near, whom it is for", f.purpose)
	case !camera && (f.lens != "" || f.camera != "" || len(f.sees) > 0 || len(f.walls) > 0):
		return fmt.Errorf("--lens, --camera, --sees and --wall are for a camera, not with --for %s", f.purpose)
	}
	if err := drawable(f.mapFile); err != nil {
		return fmt.Errorf("%s", strings.ReplaceAll(err.Error(), "--draw", "--map"))
	}
	return nil
}

func (a *app) scout(cmd *cobra.Command, name string, f scoutFlags) error {
	if err := f.check(); err != nil {
		return err
	}
	r, err := a.compileOne(cmd.Context(), name, f.stdinAs)
	if err != nil {
		return err
	}
	frames, beat, err := beatFrames(r, f.beat)
	if err != nil {
		return err
	}
	t := scout.Take{Plan: r.Plan, Tracks: r.Tracks, Stage: r.Stage}
	if f.purpose != "camera" {
		return a.scoutFloor(cmd, t, frames, beat, f)
	}
	ask := scout.Ask{Take: t, Frames: frames, Count: f.count, Floor: f.floor || len(f.walls) == 0, Progress: a.progress("scouting")}
	camera, err := hider(r.Plan, f.camera)
	if err != nil {
		return err
	}
	ask.Like = camera
	if f.camera != "" || len(r.Plan.Kit.Cameras) > 1 {
		ask.Except = camera
	}
	if ask.Frame, err = optics.NewFrame(camera.Width, camera.Height, camera.Squeeze, r.Plan.Take.Aspect); err != nil {
		return fmt.Errorf("camera %s: %w", camera.Name, err)
	}
	lens, err := named("lens", f.lens, r.Plan.Kit.Lenses)
	if err != nil {
		return err
	}
	ask.Focal, ask.Stop, ask.Close = lens.Short, lens.Widest, lens.Close
	if f.focal != "" {
		mm, err := units.ParseLength(f.focal)
		if err != nil || mm.Millimetres() < lens.Short-0.01 || mm.Millimetres() > max(lens.Short, lens.Long)+0.01 {
			return fmt.Errorf("--focal %s: %s goes from %s to %s", f.focal, lens.Name, lens.Short, max(lens.Short, lens.Long))
		}
		ask.Focal = mm.Millimetres()
	}
	for _, w := range f.sees {
		who, err := somebody(r, w)
		if err != nil {
			return err
		}
		ask.Sees = append(ask.Sees, who)
	}
	for _, w := range f.walls {
		wall, err := named("wall", w, r.Plan.Set.Walls)
		if err != nil {
			return err
		}
		if wall.Glass {
			return fmt.Errorf("%s is of glass; no lens hides behind it", wall.Name)
		}
		ask.Walls = append(ask.Walls, wall)
	}
	if len(f.walls) == 0 && !f.floor {
		ask.Walls = scout.Walls(&r.Plan.Set)
	}
	found, err := scout.Cameras(cmd.Context(), ask)
	if err != nil {
		return err
	}
	if err := a.writeMap(f.mapFile, func() *scene.Sheet { return places.Cameras(found, beat) }); err != nil {
		return err
	}
	if f.as == "json" {
		return found.WriteJSON(a.out, beat, lens)
	}
	return found.WriteText(a.out, beat, lens)
}

func (a *app) scoutFloor(cmd *cobra.Command, t scout.Take, frames sight.Frames, beat string, f scoutFlags) error {
	who, err := somebody(&compile.Result{Plan: t.Plan, Played: compile.Played{Stage: t.Stage}}, f.near)
	if err != nil {
		return err
	}
	found, err := scout.Stands(cmd.Context(), scout.StandAsk{Take: t, For: scout.Purpose(f.purpose), Near: who, Frames: frames, Count: f.count, Progress: a.progress("scouting")})
	if err != nil {
		return err
	}
	if err := a.writeMap(f.mapFile, func() *scene.Sheet { return places.Stands(found, beat) }); err != nil {
		return err
	}
	if f.as == "json" {
		return found.WriteJSON(a.out, beat)
	}
	return found.WriteText(a.out, beat)
}

func (a *app) writeMap(path string, draw func() *scene.Sheet) error {
	if path == "" {
		return nil
	}
	_, err := writeFile(filepath.FromSlash(path), svg.Write(draw(), svg.Options{}))
	return err
}

// beatFrames are the frames of a beat, or of the take, and what to call them.
func beatFrames(r *compile.Result, title string) (sight.Frames, string, error) {
	if title == "" {
		return sight.Frames{From: 0, To: units.Frame(r.Tracks.Frames - 1)}, "the whole take", nil
	}
	var titles []string
	for _, s := range r.Tracks.Clock.Spans() {
		if s.Beat == nil {
			continue
		}
		if titles = append(titles, s.Beat.Title); !strings.EqualFold(s.Beat.Title, title) {
			continue
		}
		f := sight.Frames{From: r.Tracks.Rate.From(s.From), To: min(r.Tracks.Rate.From(s.To)-1, units.Frame(r.Tracks.Frames-1))}
		if f.To < f.From {
			return f, "", fmt.Errorf("beat %q takes no time", s.Beat.Title)
		}
		return f, fmt.Sprintf("%q", s.Beat.Title), nil
	}
	return sight.Frames{}, "", fmt.Errorf("there is no beat %q%s", title, suggestion(title, titles))
}

// named finds a thing by its name.
func named[T plan.Thing](kind, name string, list []T) (T, error) {
	var none T
	var names []string
	for _, x := range list {
		if x.ID().Name == name {
			return x, nil
		}
		names = append(names, x.ID().Name)
	}
	return none, fmt.Errorf("there is no %s %q%s", kind, name, suggestion(name, names))
}

// somebody finds who or what is to be seen, and is somewhere.
func somebody(r *compile.Result, name string) (plan.Thing, error) {
	var all []plan.Thing
	for _, x := range r.Plan.People {
		all = append(all, x)
	}
	for _, x := range r.Plan.Kit.Vehicles {
		all = append(all, x)
	}
	for _, x := range r.Plan.Kit.Rigs {
		all = append(all, x)
	}
	t, err := named("person, vehicle or rig", strings.TrimSpace(name), all)
	if err != nil {
		return nil, err
	}
	if len(r.Stage.Body(t)) == 0 {
		return nil, fmt.Errorf("%s is nowhere in the take", name)
	}
	return t, nil
}

// hider is the camera that is to hide: the kit's last unless one is named, as the
// first is the one that the take is of. Of a kit with one camera a second of its
// kind is meant.
func hider(p *plan.Plan, name string) (*plan.Camera, error) {
	if name != "" {
		return named("camera", name, p.Kit.Cameras)
	}
	if len(p.Kit.Cameras) == 0 {
		return nil, fmt.Errorf("there is no camera in the kit, so no sensor to look with")
	}
	return p.Kit.Cameras[len(p.Kit.Cameras)-1], nil
}
