package gltf

import (
	"encoding/binary"
	"math"
)

var width = map[string]int{"SCALAR": 1, "VEC3": 3, "VEC4": 4}

// store puts numbers into the buffer and gives their accessor; bounds are told
// where the standard asks for them.
func (w *writer) store(v []float32, kind string, use int, bounds bool) int {
	n := width[kind]
	a := accessor{ComponentType: floats, Count: len(v) / n, Type: kind}
	if bounds {
		a.Min, a.Max = append([]float32(nil), v[:n]...), append([]float32(nil), v[:n]...)
		for i, x := range v {
			a.Min[i%n] = min(a.Min[i%n], x)
			a.Max[i%n] = max(a.Max[i%n], x)
		}
	}
	view := bufferView{ByteOffset: len(w.bytes), ByteLength: 4 * len(v), Target: use}
	for _, x := range v {
		w.bytes = binary.LittleEndian.AppendUint32(w.bytes, math.Float32bits(x))
	}
	return w.access(a, view)
}

func (w *writer) storeIndices(v []uint32) int {
	view := bufferView{ByteOffset: len(w.bytes), ByteLength: 4 * len(v), Target: indices}
	for _, x := range v {
		w.bytes = binary.LittleEndian.AppendUint32(w.bytes, x)
	}
	return w.access(accessor{ComponentType: uint32s, Count: len(v), Type: "SCALAR"}, view)
}

func (w *writer) access(a accessor, view bufferView) int {
	w.doc.BufferViews = append(w.doc.BufferViews, view)
	a.BufferView = len(w.doc.BufferViews) - 1
	w.doc.Accessors = append(w.doc.Accessors, a)
	return len(w.doc.Accessors) - 1
}
