package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"longhand/lang/compile"
	"longhand/lang/trace"
	"longhand/render/cutlist"
	"longhand/render/floor"
	"longhand/render/gltf"
)

// exporters are the forms a take can be handed on in.
var exporters = map[string]func(r *compile.Result) ([]byte, error){
	"edl":       func(r *compile.Result) ([]byte, error) { return cutlist.EDL(r.Plan, r.Tracks) },
	"otio":      func(r *compile.Result) ([]byte, error) { return cutlist.OTIO(r.Plan, r.Tracks) },
	"marks-csv": func(r *compile.Result) ([]byte, error) { return floor.CSV(r.Plan) },
	"marks-dxf": func(r *compile.Result) ([]byte, error) { return floor.DXF(r.Plan) },
	"gltf":      func(r *compile.Result) ([]byte, error) { return gltf.File(r.Plan, r.Stage) },
	"trace": func(r *compile.Result) ([]byte, error) {
		var b bytes.Buffer
		err := trace.Write(&b, r.Stage.Scene, r.Sight)
		return b.Bytes(), err
	},
}

func (a *app) exportCommand() *cobra.Command {
	var as, out, stdinAs string
	cmd := &cobra.Command{
		Use:   "export FILE",
		Short: "the take for other programs",
		Long: `Prints the take for other programs.

  edl        the cuts as an edit decision list (SMPTE ST 258), for editing
  gltf       a 3D scene (glTF 2.0): set, people, rigs and cameras with their
             lenses, moving as they do in the take
  marks-csv  the marks with the tape's lengths from two corners each
  marks-dxf  the marks over the set as a DXF drawing, for whoever tapes the floor
  otio       the cuts as a timeline in OpenTimelineIO's schema
  trace      every frame's numbers as JSON: solids, bodies and cameras with their
             tracks, and what each camera sees of each body

A plan whose text has mistakes is not exported. Other findings do not stop it.`,
		Example: "  longhand export plan.take --as trace > take.json",
		Args:    needOne,
		RunE: func(cmd *cobra.Command, args []string) error {
			write, ok := exporters[as]
			if !ok {
				return fmt.Errorf("--as takes %s, not %q%s", listed(exporters), as, suggestion(as, keys(exporters)))
			}
			r, err := a.compileOne(cmd.Context(), args[0], stdinAs)
			if err != nil {
				return err
			}
			data, err := write(r)
			if err != nil {
				return err
			}
			if out == "" || out == stdinName {
				_, err = a.out.Write(data)
				return err
			}
			if info, err := os.Stat(out); err == nil && info.IsDir() {
				return fmt.Errorf("%s is a folder; -o takes the name of a file", out)
			}
			_, err = writeFile(filepath.FromSlash(out), data)
			return err
		},
	}
	cmd.Flags().StringVar(&as, "as", "", "the form: "+listed(exporters))
	cmd.Flags().StringVarP(&out, "output", "o", "", "the file to write; standard output unless given")
	cmd.Flags().StringVar(&stdinAs, "stdin-filename", "", "the name that standard input goes by in messages")
	complete(cmd, "as", keys(exporters)...)
	return cmd
}
