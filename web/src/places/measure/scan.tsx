// A phone scan that is put into the build folder, ready to be named by a body.

import { useState } from "preact/hooks";
import type { ScanView } from "../../api";
import { useShop } from "../../shop";
import { send } from "../../talk";
import { fixed } from "../../units";

/** Largest scan that the program takes, MB. */
const LARGEST_MB = 50;

export function ScanUpload() {
  const { view } = useShop();
  const [file, setFile] = useState<File | null>(null);
  const [name, setName] = useState("");
  const [isBusy, setIsBusy] = useState(false);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [found, setFound] = useState<ScanView | null>(null);
  const there = view.names["scan"] ?? [];
  const put = async () => {
    if (file === null) {
      return;
    }
    setFound(null);
    if (file.size > LARGEST_MB * 1024 * 1024) {
      setTrouble(`${file.name} has ${fixed(file.size / 1024 / 1024, 0)} MB; at most ${LARGEST_MB} MB are taken. Thin the mesh out in the scanning program, or cut off what no tube comes near.`);
      return;
    }
    setIsBusy(true);
    try {
      setFound(await send<ScanView>(`api/scan?name=${encodeURIComponent(name.trim())}`, file));
      setTrouble(null);
    } catch (error) {
      setTrouble(error instanceof Error ? error.message : String(error));
    }
    setIsBusy(false);
  };
  return (
    <details class="card noprint">
      <summary><h2>Scan from a phone</h2></summary>
      <p>An STL, OBJ or PLY file of at most {LARGEST_MB} MB goes into the build folder's scans/. Scan at least four marks with it, far apart and not in one plane: they say where it lies in the car.</p>
      <form onSubmit={(event) => { event.preventDefault(); void put(); }}>
        <label class="line">
          File
          <input
            type="file" required accept=".stl,.obj,.ply"
            onChange={(event) => {
              const picked = event.currentTarget.files?.[0] ?? null;
              setFile(picked);
              setName(picked?.name ?? "");
              setTrouble(null);
              setFound(null);
            }}
          />
        </label>
        <label class="line">Name in the folder<input required maxLength={80} value={name} placeholder="floor.stl" onInput={(event) => setName(event.currentTarget.value)} /></label>
        <button type="submit" class="main" disabled={isBusy}>{isBusy ? "Putting it in…" : "Put it into the folder"}</button>
      </form>
      {trouble === null ? null : <p class="bad" role="alert">{trouble}</p>}
      {found === null ? null : <Found found={found} />}
      {there.length === 0 ? null : <p>In the folder: {there.join(", ")}. To take one away, delete its file.</p>}
    </details>
  );
}

function Found({ found }: { found: ScanView }) {
  const longest = Math.max(...found.size);
  return (
    <div role="status">
      <p><strong>{found.file}</strong> is in the folder: {found.triangles > 0 ? `${found.triangles} triangles` : `${found.points} points, no triangles`}.</p>
      <p>
        It is {found.size.map((side) => figure(side)).join(" × ")} of its own units. The file does not say what one unit is, so you do: were it a
        millimetre, the longest side would be {figure(longest)} mm; a metre, {figure(longest * 1000)} mm; an inch, {figure(longest)} in.
      </p>
      {found.warnings.map((words) => <p class="bad" key={words}>{words}</p>)}
      <p>Next: Add to the car, in the way, shape scan from a phone.</p>
    </div>
  );
}

/** Three figures are plenty to tell a millimetre from a metre. */
function figure(value: number): string {
  return value >= 100 ? fixed(value, 0) : value >= 1 ? fixed(value, 1) : fixed(value, 3);
}
