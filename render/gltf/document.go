package gltf

// The parts of a glTF document that are written, by their names in the standard.
type (
	document struct {
		Asset       asset        `json:"asset"`
		Scene       int          `json:"scene"`
		Scenes      []scene      `json:"scenes"`
		Nodes       []node       `json:"nodes"`
		Cameras     []camera     `json:"cameras,omitempty"`
		Meshes      []mesh       `json:"meshes,omitempty"`
		Materials   []material   `json:"materials,omitempty"`
		Animations  []animation  `json:"animations,omitempty"`
		Accessors   []accessor   `json:"accessors"`
		BufferViews []bufferView `json:"bufferViews"`
		Buffers     []buffer     `json:"buffers"`
	}
	asset struct {
		Version   string `json:"version"`
		Generator string `json:"generator"`
	}
	scene struct {
		Name   string         `json:"name"`
		Nodes  []int          `json:"nodes"`
		Extras map[string]any `json:"extras,omitempty"`
	}
	vec3 [3]float32
	quat [4]float32
	node struct {
		Name        string         `json:"name"`
		Children    []int          `json:"children,omitempty"`
		Mesh        *int           `json:"mesh,omitempty"`
		Camera      *int           `json:"camera,omitempty"`
		Translation *vec3          `json:"translation,omitempty"`
		Rotation    *quat          `json:"rotation,omitempty"`
		Scale       *vec3          `json:"scale,omitempty"`
		Extras      map[string]any `json:"extras,omitempty"`
	}
	camera struct {
		Name        string      `json:"name"`
		Type        string      `json:"type"`
		Perspective perspective `json:"perspective"`
	}
	perspective struct {
		AspectRatio float64 `json:"aspectRatio"`
		YFov        float64 `json:"yfov"`
		ZNear       float64 `json:"znear"`
		ZFar        float64 `json:"zfar"`
	}
	mesh struct {
		Name       string      `json:"name"`
		Primitives []primitive `json:"primitives"`
	}
	primitive struct {
		Attributes map[string]int `json:"attributes"`
		Indices    int            `json:"indices"`
		Material   int            `json:"material"`
	}
	material struct {
		Name      string `json:"name"`
		PBR       pbr    `json:"pbrMetallicRoughness"`
		AlphaMode string `json:"alphaMode,omitempty"`
	}
	pbr struct {
		Colour    [4]float64 `json:"baseColorFactor"`
		Metallic  float64    `json:"metallicFactor"`
		Roughness float64    `json:"roughnessFactor"`
	}
	animation struct {
		Name     string    `json:"name"`
		Channels []channel `json:"channels"`
		Samplers []sampler `json:"samplers"`
	}
	channel struct {
		Sampler int    `json:"sampler"`
		Target  target `json:"target"`
	}
	target struct {
		Node int    `json:"node"`
		Path string `json:"path"`
	}
	sampler struct {
		Input         int    `json:"input"`
		Interpolation string `json:"interpolation"`
		Output        int    `json:"output"`
	}
	accessor struct {
		BufferView    int       `json:"bufferView"`
		ComponentType int       `json:"componentType"`
		Count         int       `json:"count"`
		Type          string    `json:"type"`
		Min           []float32 `json:"min,omitempty"`
		Max           []float32 `json:"max,omitempty"`
	}
	bufferView struct {
		Buffer     int `json:"buffer"`
		ByteOffset int `json:"byteOffset"`
		ByteLength int `json:"byteLength"`
		Target     int `json:"target,omitempty"`
	}
	buffer struct {
		ByteLength int    `json:"byteLength"`
		URI        string `json:"uri"`
	}
)

// Numbers of the standard, from OpenGL.
const (
	floats   = 5126
	uint32s  = 5125
	vertices = 34962
	indices  = 34963
)
