package png_test

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/render/fonts"
	"longhand/render/pdf"
	topng "longhand/render/png"
	"longhand/render/scene"
	"longhand/render/scene/sample"
	"longhand/render/svg"
)

func grey(img image.Image, x, y int) int {
	return int(color.GrayModel.Convert(img.At(x, y)).(color.Gray).Y)
}

// disagreement is the share of inked pixels of either picture whose grey is not
// met, within a fifth of black to white, anywhere from one pixel around it in
// the other: what a shift of a line by less than a pixel cannot explain.
func disagreement(a, b image.Image) float64 {
	w, h := min(a.Bounds().Dx(), b.Bounds().Dx()), min(a.Bounds().Dy(), b.Bounds().Dy())
	inked, off := 0, 0
	count := func(a, b image.Image) {
		for y := 1; y < h-1; y++ {
			for x := 1; x < w-1; x++ {
				v := grey(a, x, y)
				if v > 250 {
					continue
				}
				inked++
				low, high := 255, 0
				for dy := -1; dy <= 1; dy++ {
					for dx := -1; dx <= 1; dx++ {
						g := grey(b, x+dx, y+dy)
						low, high = min(low, g), max(high, g)
					}
				}
				if v < low-51 || v > high+51 {
					off++
				}
			}
		}
	}
	count(a, b)
	count(b, a)
	return float64(off) / math.Max(1, float64(inked))
}

func decode(t *testing.T, file string) image.Image {
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	img, err := png.Decode(bytes.NewReader(data))
	require.NoError(t, err)
	return img
}

func tool(t *testing.T, name string) string {
	path, err := exec.LookPath(name)
	if err != nil {
		t.Skip(name + " is not installed")
	}
	return path
}

const dpi = 110

func TestPDFShowsTheSame(t *testing.T) {
	convert := tool(t, "pdftoppm")
	mine, err := topng.Image(sample.Sheet(), dpi)
	require.NoError(t, err)
	doc, err := pdf.Write(&pdf.Document{Title: "sample", Pages: []pdf.Page{{Sheet: sample.Sheet()}}})
	require.NoError(t, err)
	dir := t.TempDir()
	file := filepath.Join(dir, "a.pdf")
	require.NoError(t, os.WriteFile(file, doc, 0o600))
	out, err := exec.Command(convert, "-r", "110", "-png", "-singlefile", file, filepath.Join(dir, "a")).CombinedOutput()
	require.NoError(t, err, string(out))
	d := disagreement(mine, decode(t, filepath.Join(dir, "a.png")))
	t.Logf("%.2f %% of inked pixels differ", d*100)
	assert.Less(t, d, 0.01)
}

func TestSVGShowsTheSame(t *testing.T) {
	convert := tool(t, "rsvg-convert")
	mine, err := topng.Image(sample.Sheet(), dpi)
	require.NoError(t, err)
	dir := t.TempDir()
	// The viewer finds the faces in a folder of its own.
	for _, f := range fonts.Faces() {
		require.NoError(t, os.WriteFile(filepath.Join(dir, f.String()+".ttf"), f.TTF(), 0o600))
	}
	conf := filepath.Join(dir, "fonts.conf")
	require.NoError(t, os.WriteFile(conf, []byte(`<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig><dir>`+dir+`</dir><cachedir>`+dir+`</cachedir></fontconfig>`), 0o600))
	file := filepath.Join(dir, "a.svg")
	require.NoError(t, os.WriteFile(file, svg.Write(sample.Sheet(), svg.Options{}), 0o600))
	cmd := exec.Command(convert, "-d", "110", "-p", "110", "-b", "white", "-o", filepath.Join(dir, "a.png"), file)
	cmd.Env = append(os.Environ(), "FONTCONFIG_FILE="+conf)
	out, err := cmd.CombinedOutput()
	require.NoError(t, err, string(out))
	d := disagreement(mine, decode(t, filepath.Join(dir, "a.png")))
	t.Logf("%.2f %% of inked pixels differ", d*100)
	assert.Less(t, d, 0.01)
}

// The measure must see what a wrong output would show: here a picture that
// lacks one small label, and one whose line is a millimetre off.
func TestTheMeasureSeesFaults(t *testing.T) {
	good, err := topng.Image(sample.Sheet(), dpi)
	require.NoError(t, err)
	assert.Zero(t, disagreement(good, good))
	less := sample.Sheet()
	less.Items = less.Items[:len(less.Items)-1]
	bad, err := topng.Image(less, dpi)
	require.NoError(t, err)
	assert.Greater(t, disagreement(good, bad), 0.01)
	moved := sample.Sheet()
	moved.Items = scene.Placed(moved.Items, scene.Pt(1, 0), 1)
	bad, err = topng.Image(moved, dpi)
	require.NoError(t, err)
	assert.Greater(t, disagreement(good, bad), 0.1)
}

// Areas known in closed form: a ring, two squares that overlap (even-odd), a
// stroke, a clip.
func TestInkedAreas(t *testing.T) {
	ink := func(items ...scene.Item) float64 {
		s := &scene.Sheet{Width: 100, Height: 100, Title: "x", Styles: sample.Styles(), Items: items}
		img, err := topng.Image(s, 254) // ten pixels a millimetre
		require.NoError(t, err)
		sum := 0.0
		for y := range img.Bounds().Dy() {
			for x := range img.Bounds().Dx() {
				sum += float64(255-grey(img, x, y)) / 255
			}
		}
		return sum / 100
	}
	ring := scene.NewPath("solid").Arc(scene.Pt(50, 50), 30, 0, 360).Close().MoveTo(scene.Pt(70, 50)).Arc(scene.Pt(50, 50), 20, 0, 360).Close()
	assert.InDelta(t, math.Pi*(900-400), ink(ring), 1.5)
	squares := scene.NewPath("solid").Ring(scene.BoxAt(10, 10, 30, 30).Corners()...).Ring(scene.BoxAt(30, 30, 30, 30).Corners()...)
	assert.InDelta(t, 2*900-2*100, ink(squares), 0.5)
	assert.InDelta(t, 50*0.5, ink(scene.Line("frame", scene.Pt(20, 50), scene.Pt(70, 50))), 0.05)
	assert.InDelta(t, 60*0.35*2/3, ink(scene.Line("path", scene.Pt(20, 50), scene.Pt(80, 50))), 0.3)
	clip := &scene.Group{Clip: [][]scene.Point{scene.BoxAt(0, 0, 50, 100).Corners()}, Items: []scene.Item{&scene.Circle{Class: "solid", Center: scene.Pt(50, 50), Radius: 20}}}
	assert.InDelta(t, math.Pi*400/2, ink(clip), 1)
	nothing := &scene.Group{Clip: [][]scene.Point{}, Items: clip.Items}
	assert.Zero(t, ink(nothing))
}

func TestTooLarge(t *testing.T) {
	_, err := topng.Write(&scene.Sheet{Width: 1e6, Height: 1e6}, 300)
	assert.EqualError(t, err, "a picture of 1000000 x 1000000 mm at 300 dots an inch would be 11811024 x 11811024 pixels")
	_, err = topng.Write(&scene.Sheet{Width: 10, Height: 10}, math.NaN())
	assert.Error(t, err)
}
