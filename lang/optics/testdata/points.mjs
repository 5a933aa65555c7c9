// Writes points.csv: where points fall in a frame, worked out by the camera of a
// 3D library (three 0.187.0, npm), for comparison. Run it where that library is
// installed:
//
//   node points.mjs > points.csv
//
// Columns: the camera's place (x right, y up on paper, z off the floor), the
// point it looks at, focal length, frame's width and height in mm, roll in
// degrees (the top leaning to the right), the point, and where it falls: parts of
// half the frame from its middle, right and up.
import * as THREE from "three";

let state = 31;
const random = (a, b) => {
  state = (state * 1664525 + 1013904223) % 4294967296;
  return a + ((b - a) * state) / 4294967296;
};
// The library has y up and the floor in x and z: (x, y, z) there is (x, z, -y).
const v = (p) => new THREE.Vector3(p[0], p[2], -p[1]);
const place = () => [random(-12, 12), random(-12, 12), random(0, 4)].map((n) => +n.toFixed(3));

let rows = 0;
while (rows < 200) {
  const at = place(), to = place(), p = place();
  const width = +random(10, 40).toFixed(2), height = +(width / random(1.3, 2.4)).toFixed(2);
  const focal = +random(12, 150).toFixed(1), roll = rows % 3 ? 0 : +random(-40, 40).toFixed(1);
  const camera = new THREE.PerspectiveCamera((360 / Math.PI) * Math.atan(height / (2 * focal)), width / height, 0.01, 1000);
  camera.position.copy(v(at));
  camera.lookAt(v(to));
  camera.rotateZ((-roll * Math.PI) / 180);
  camera.updateMatrixWorld(true);
  camera.updateProjectionMatrix();
  const inCamera = v(p).applyMatrix4(camera.matrixWorldInverse);
  if (inCamera.z > -0.2) continue;
  const q = v(p).project(camera);
  if (Math.abs(q.x) > 8 || Math.abs(q.y) > 8) continue;
  console.log([...at, ...to, focal, width, height, roll, ...p, q.x.toFixed(7), q.y.toFixed(7)].join(","));
  rows++;
}
