// Bodies as shapes in the round, with the gap that they ask for and the way they move.

import {
  BoxGeometry, BufferAttribute, BufferGeometry, CapsuleGeometry, CylinderGeometry, DoubleSide, EdgesGeometry, ExtrudeGeometry, Group, LineBasicMaterial,
  LineSegments, Matrix4, Mesh, MeshLambertMaterial, Points, PointsMaterial, Quaternion, Shape, SphereGeometry, Vector3,
} from "three";
import type { Object3D } from "three";
import type { FreedomView, ShapeView, SolidView } from "./api";

/** Degrees from which an edge of a body is drawn. */
const EDGE = 30;

const COLOURS: Record<string, number> = {
  "hot metal": 0xc98a5e, "fuel or brake part": 0xc05a4e, tyre: 0x55595c, driveline: 0x7f8f96, "moving part": 0x7f8f96, structure: 0x9aa0a0, floor: 0xb7b3a6,
  "soft, no shield": 0xc9b458, "soft, behind a shield": 0xc9b458,
};

/** A body; its gap shells are children named `gap`. */
export function bodyOf(solid: SolidView): Group {
  const group = new Group();
  group.name = solid.name;
  const colour = COLOURS[solid.class] ?? 0x9aa0a0;
  for (const shape of solid.shapes) {
    const geometry = geometryOf(shape, 0);
    if (geometry === null) {
      continue;
    }
    if (shape.kind === "places") {
      group.add(new Points(geometry, new PointsMaterial({ color: colour, size: 8 })));
      continue;
    }
    const isScan = shape.kind === "triangles";
    group.add(new Mesh(geometry, new MeshLambertMaterial({ color: colour, transparent: true, opacity: isScan ? 0.85 : 0.5, side: DoubleSide, depthWrite: isScan })));
    if (!isScan) {
      group.add(new LineSegments(new EdgesGeometry(geometry, EDGE), new LineBasicMaterial({ color: 0x4b5254 })));
    }
    const shell = geometryOf(shape, solid.gap);
    if (shell !== null && !isScan) {
      const mesh = new Mesh(shell, new MeshLambertMaterial({ color: 0xd1480f, transparent: true, opacity: 0.16, side: DoubleSide, depthWrite: false }));
      mesh.name = "gap";
      mesh.visible = false;
      group.add(mesh);
    }
  }
  return group;
}

/** The shape, larger by `gap` all round where it has a simple form. */
function geometryOf(shape: ShapeView, gap: number): BufferGeometry | null {
  switch (shape.kind) {
    case "box": {
      const [x, y, z] = shape.half;
      const geometry = new BoxGeometry(2 * (x + gap), 2 * (y + gap), 2 * (z + gap));
      const [a, b, c] = shape.axes.map((axis) => new Vector3(...axis));
      return geometry.applyMatrix4(new Matrix4().makeBasis(a ?? new Vector3(), b ?? new Vector3(), c ?? new Vector3()).setPosition(...shape.centre));
    }
    case "bar": {
      const [a, b] = [new Vector3(...shape.a), new Vector3(...shape.b)];
      const length = a.distanceTo(b);
      const radius = shape.radius + gap;
      const geometry = shape.isRound ? new CapsuleGeometry(radius, length, 6, 20) : new CylinderGeometry(radius, radius, length + 2 * gap, 28);
      const turn = new Quaternion().setFromUnitVectors(new Vector3(0, 1, 0), b.clone().sub(a).normalize());
      return geometry.applyMatrix4(new Matrix4().compose(a.add(b).multiplyScalar(0.5), turn, new Vector3(1, 1, 1)));
    }
    case "ball":
      return new SphereGeometry(shape.radius + gap, 24, 16).translate(...shape.centre);
    case "prism":
      return gap > 0 ? null : prism(shape.corners, shape.depth);
    case "triangles": {
      const geometry = new BufferGeometry();
      geometry.setAttribute("position", new BufferAttribute(Float32Array.from(shape.corners), 3));
      geometry.computeVertexNormals();
      return geometry;
    }
    case "places": {
      const geometry = new BufferGeometry();
      geometry.setAttribute("position", new BufferAttribute(Float32Array.from(shape.places), 3));
      return geometry;
    }
    case "plane":
      return null;
  }
}

function prism(corners: [number, number, number][], depth: [number, number, number]): BufferGeometry | null {
  const [first, second] = corners;
  if (first === undefined || second === undefined) {
    return null;
  }
  const origin = new Vector3(...first);
  const along = new Vector3(...depth);
  const thick = along.length();
  const z = along.normalize();
  const x = new Vector3(...second).sub(origin).normalize();
  const y = z.clone().cross(x);
  const flat = corners.map((corner) => {
    const from = new Vector3(...corner).sub(origin);
    return [from.dot(x), from.dot(y)] as const;
  });
  const outline = new Shape();
  flat.forEach(([u, v], at) => (at === 0 ? outline.moveTo(u, v) : outline.lineTo(u, v)));
  return new ExtrudeGeometry(outline, { depth: thick, bevelEnabled: false }).applyMatrix4(new Matrix4().makeBasis(x, y, z).setPosition(origin));
}

/** Moves a body to a part of its range: −1 is its least, 0 where it was measured, 1 its most. */
export function move(body: Object3D, freedoms: FreedomView[], part: number): void {
  const moved = new Matrix4();
  for (const freedom of freedoms) {
    if (freedom.kind === "sway") {
      continue;
    }
    const [least, most] = freedom.range;
    const value = part < 0 ? -part * least : part * most;
    const step = new Matrix4();
    if (freedom.kind === "shift") {
      step.makeTranslation(new Vector3(...freedom.along).multiplyScalar(value));
    } else {
      const at = new Vector3(...freedom.at);
      step.makeTranslation(at)
        .multiply(new Matrix4().makeRotationAxis(new Vector3(...freedom.axis).normalize(), (value * Math.PI) / 180))
        .multiply(new Matrix4().makeTranslation(at.clone().negate()));
    }
    moved.premultiply(step);
  }
  body.matrixAutoUpdate = false;
  body.matrix.copy(moved);
  body.matrixWorldNeedsUpdate = true;
}
