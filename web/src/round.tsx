// The car in the round: turn, shift and come nearer; fly to a tight place; see what moves and the gaps.

import { useEffect, useRef, useState } from "preact/hooks";
import {
  Box3, Color, DirectionalLight, Group, HemisphereLight, Matrix4, Mesh, MeshBasicMaterial, MeshStandardMaterial, PerspectiveCamera, Scene, SphereGeometry, Vector3, WebGLRenderer,
} from "three";
import type { Object3D } from "three";
import { OrbitControls } from "three/addons/controls/OrbitControls.js";
import { GLTFLoader } from "three/addons/loaders/GLTFLoader.js";
import type { SolidView } from "./api";
import { bodyOf, move } from "./shapes";
import { tell } from "./talk";

const AWAY = new Vector3(-0.5, -0.8, 0.5);

class Stage {
  readonly scene = new Scene();
  readonly camera = new PerspectiveCamera(32, 1, 10, 60000);
  readonly renderer: WebGLRenderer;
  readonly controls: OrbitControls;
  private runs: Object3D | null = null;
  private readonly bodies = new Group();
  private solids: SolidView[] = [];
  private readonly spot = new Mesh(new SphereGeometry(24, 20, 14), new MeshBasicMaterial({ color: 0xd1480f }));
  private readonly watcher: ResizeObserver;
  private isAsked = false;
  private isClosed = false;
  private hasLooked = false;

  constructor(private readonly box: HTMLElement) {
    this.renderer = new WebGLRenderer({ antialias: true, alpha: true });
    this.renderer.setPixelRatio(Math.min(window.devicePixelRatio, 2));
    box.append(this.renderer.domElement);
    // The car's axes: x rearwards, y right, z up.
    this.camera.up.set(0, 0, 1);
    this.controls = new OrbitControls(this.camera, this.renderer.domElement);
    this.controls.addEventListener("change", () => this.draw());
    const sun = new DirectionalLight(new Color(0xffffff), 2.2);
    sun.position.set(-2000, -3000, 4000);
    this.scene.add(sun, new HemisphereLight(0xffffff, 0x8a8f90, 2.2), this.bodies, this.spot);
    this.spot.visible = false;
    this.watcher = new ResizeObserver(() => this.fit());
    this.watcher.observe(box);
    this.fit();
  }

  async load(): Promise<void> {
    const [answer, solids] = await Promise.all([fetch("api/model.glb"), tell<SolidView[]>("api/solids")]);
    const runs = answer.status === 200 ? (await new GLTFLoader().parseAsync(await answer.arrayBuffer(), "")).scene : null;
    if (this.isClosed) {
      return;
    }
    if (this.runs !== null) {
      this.scene.remove(this.runs);
    }
    this.runs = runs;
    if (runs !== null) {
      this.toMillimetres(runs);
      runs.traverse((part) => {
        if (part instanceof Mesh) {
          part.material = new MeshStandardMaterial({ color: 0x2f7a86, roughness: 0.55, metalness: 0.15 });
        }
      });
      this.scene.add(runs);
    }
    this.solids = solids;
    this.bodies.clear();
    for (const solid of solids) {
      this.bodies.add(bodyOf(solid));
    }
    if (!this.hasLooked && (runs !== null || solids.length > 0)) {
      this.hasLooked = true;
      this.lookAtAll();
    }
    this.draw();
  }

  /** glTF's metres with x to the right, y up, z rearwards, as the car's millimetres with x rearwards, y right, z up. */
  private toMillimetres(car: Object3D): void {
    car.applyMatrix4(new Matrix4().set(0, 0, 1000, 0, 1000, 0, 0, 0, 0, 1000, 0, 0, 0, 0, 0, 1));
    car.updateMatrixWorld(true);
  }

  lookAtAll(from: Vector3 = AWAY): void {
    const box = new Box3().setFromObject(this.runs ?? this.bodies);
    if (box.isEmpty()) {
      return;
    }
    const centre = box.getCenter(new Vector3());
    const size = box.getSize(new Vector3()).length();
    // A narrow picture needs more room sideways.
    const far = size * 1.6 / Math.min(1, this.camera.aspect * 0.85);
    this.controls.target.copy(centre);
    this.camera.position.copy(centre).add(from.clone().normalize().multiplyScalar(far));
    this.controls.update();
    this.draw();
  }

  showGaps(isShown: boolean): void {
    this.bodies.traverse((part) => { if (part.name === "gap") { part.visible = isShown; } });
    this.draw();
  }

  moveTo(part: number): void {
    for (const [at, solid] of this.solids.entries()) {
      const body = this.bodies.children[at];
      if (body !== undefined && solid.freedoms.length > 0) {
        move(body, solid.freedoms, part);
      }
    }
    this.draw();
  }

  flyTo(at: [number, number, number]): void {
    const target = new Vector3(...at);
    const away = this.camera.position.clone().sub(this.controls.target).normalize().multiplyScalar(1100);
    this.spot.position.copy(target);
    this.spot.visible = true;
    this.controls.target.copy(target);
    this.camera.position.copy(target).add(away);
    this.hasLooked = true;
    this.controls.update();
    this.draw();
  }

  private fit(): void {
    const { clientWidth: width, clientHeight: height } = this.box;
    if (width === 0 || height === 0) {
      return;
    }
    this.renderer.setSize(width, height);
    this.camera.aspect = width / height;
    this.camera.updateProjectionMatrix();
    this.draw();
  }

  private draw(): void {
    if (this.isAsked || this.isClosed) {
      return;
    }
    this.isAsked = true;
    requestAnimationFrame(() => {
      this.isAsked = false;
      if (!this.isClosed) {
        this.renderer.render(this.scene, this.camera);
      }
    });
  }

  close(): void {
    this.isClosed = true;
    this.watcher.disconnect();
    this.controls.dispose();
    this.renderer.dispose();
    this.renderer.domElement.remove();
  }
}

const FROM: readonly [string, Vector3][] = [
  ["aslant", AWAY], ["from the left", new Vector3(0, -1, 0.001)], ["from above", new Vector3(0, -0.001, 1)], ["from behind", new Vector3(1, 0, 0.001)], ["from below", new Vector3(-0.2, -0.5, -0.8)],
];

export function Round({ version, flyTo }: { version: string; flyTo: [number, number, number] | null }) {
  const box = useRef<HTMLDivElement>(null);
  const stage = useRef<Stage | null>(null);
  const [hasGaps, setHasGaps] = useState(false);
  const [part, setPart] = useState(0);
  const [trouble, setTrouble] = useState<string | null>(null);
  useEffect(() => {
    if (box.current === null) {
      return;
    }
    try {
      stage.current = new Stage(box.current);
    } catch {
      setTrouble("This browser shows nothing in the round; the drawings show the same.");
      return;
    }
    return () => {
      stage.current?.close();
      stage.current = null;
    };
  }, []);
  useEffect(() => {
    stage.current?.load().then(
      () => {
        stage.current?.showGaps(hasGaps);
        stage.current?.moveTo(part);
        setTrouble(null);
      },
      (error: unknown) => setTrouble(error instanceof Error ? error.message : String(error)),
    );
  }, [version]);
  useEffect(() => { stage.current?.showGaps(hasGaps); }, [hasGaps]);
  useEffect(() => { stage.current?.moveTo(part); }, [part]);
  useEffect(() => {
    if (flyTo !== null) {
      stage.current?.flyTo(flyTo);
      box.current?.scrollIntoView({ block: "center" });
    }
  }, [flyTo]);
  return (
    <>
      <div class="round" ref={box} role="img" aria-label="the car and its runs in the round; drag to turn" />
      {trouble === null ? null : <p>{trouble}</p>}
      <div class="tabs">
        {FROM.map(([words, from]) => <button type="button" key={words} onClick={() => stage.current?.lookAtAll(from)}>{words}</button>)}
        <button type="button" aria-pressed={hasGaps} onClick={() => setHasGaps(!hasGaps)}>gaps</button>
      </div>
      <label class="line">
        What moves
        <input type="range" min={-1} max={1} step={0.05} value={part} onInput={(event) => setPart(Number(event.currentTarget.value))} aria-label="what moves, from its least over where it was measured to its most" />
        <span>{part === 0 ? "as measured" : `${Math.round(Math.abs(part) * 100)} % to its ${part < 0 ? "least" : "most"}`}</span>
      </label>
      <p><small>Every gap is judged over all positions together; the slider shows them one by one, the tube as measured.</small></p>
    </>
  );
}
