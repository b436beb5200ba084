// Who may ask, and what nobody gets: other sites, other names, paths out of the folder, too much.

import assert from "node:assert/strict";
import { readFileSync, readdirSync } from "node:fs";
import { request } from "node:http";
import { join } from "node:path";
import { after, test } from "node:test";
import { newBuild, open, cleanUp } from "./program.mjs";

after(cleanUp);

/** One request with exactly these headers. */
function ask(port, path, { method = "GET", headers = {}, body } = {}) {
  return new Promise((done, failed) => {
    const asked = request({ host: "127.0.0.1", port, path, method, headers }, (answer) => {
      let text = "";
      answer.on("data", (chunk) => { text += chunk; });
      answer.on("end", () => done({ status: answer.statusCode, headers: answer.headers, text }));
    });
    asked.on("error", failed);
    asked.end(body);
  });
}

test("no other site, no other name, no path out of the folder, nothing too large", async () => {
  const program = await open(newBuild("kitcar-mid4"));
  const { port, host } = new URL(program.address);
  const status = async (path, more) => (await ask(port, path, more)).status;
  assert.equal(await status("/api/view"), 200);
  assert.equal(await status("/api/view", { headers: { host: "evil.example" } }), 403);
  assert.equal(await status("/api/view", { headers: { origin: "http://evil.example" } }), 403);
  assert.equal(await status("/api/view", { headers: { origin: "null" } }), 403);
  assert.equal(await status("/api/solve", { method: "POST" }), 403, "a change names where it comes from");
  for (const path of ["/../build.toml", "/build.toml", "/..%2fbuild.toml", "/page.js/../../Cargo.toml", "/api/../../etc/passwd", "/demo/kitcar-mid4/..%2f..%2fbuild.toml", "/demo/other/", "/%2e%2e/shop.toml"]) {
    assert.equal(await status(path), 404, path);
  }
  const origin = `http://${host}`;
  const send = (body) => ask(port, "/api/deed", { method: "POST", headers: { origin, "content-type": "application/json" }, body });
  for (const length of [300_000, 4_000_000]) { // the second is more than a connection holds unread
    const answer = await send("x".repeat(length));
    assert.equal(answer.status, 413);
    assert.match(answer.text, /more than 256 kB/, "a refusal says why");
  }
  assert.ok([400, 415, 422].includes((await send("{")).status));
  assert.ok([400, 422].includes((await send(JSON.stringify({ do: "erase" }))).status));
  for (const deed of [
    { do: "add", list: "../shop", fields: [] },
    { do: "add", list: "end", fields: [{ key: "name", value: "x" }] },
    { do: "add", list: "mark", fields: [{ key: "name", value: "y".repeat(5_000) }] },
    { do: "add", list: "mark", fields: [{ key: "name", value: [[[[[["deep"]]]]]] }] },
    { do: "set", list: "mark", name: "A left", key: "no-such-key", value: "1" },
    { do: "remove", list: "mark", name: "A left" },
    { do: "addTape", from: { name: "A left", rim: null }, to: { name: "nowhere", rim: null }, reads: "812 mm" },
    { do: "addTape", from: { name: "A left", rim: null }, to: { name: "A right", rim: null }, reads: "812" },
    { do: "happened", on: "yesterday", what: { kind: "welded", joint: "J1" } },
    { do: "happened", on: "2026-05-01", what: { kind: "got", item: "unobtainium", supplier: "North Road Tube", count: 1 } },
    { do: "startStock", like: "../../etc" },
  ]) {
    const answer = await send(JSON.stringify(deed));
    assert.equal(answer.status, 409, `${JSON.stringify(deed).slice(0, 90)}: ${answer.text}`);
    assert.ok(JSON.parse(answer.text).words.length > 10, "a refusal says why");
  }
  assert.equal(await status("/api/view"), 200, "the server goes on");
  await program.stop();
});

test("every answer keeps the page to itself", async () => {
  const program = await open(newBuild());
  const { port } = new URL(program.address);
  for (const path of ["/", "/page.js", "/page.css", "/api/view", "/nowhere"]) {
    const { headers } = await ask(port, path);
    const policy = headers["content-security-policy"] ?? "";
    assert.match(policy, /default-src 'none'/, path);
    assert.match(policy, /script-src 'self'(;|$)/, path);
    assert.match(policy, /frame-ancestors 'none'/, path);
    assert.ok(!/unsafe|\*|https?:/.test(policy), `${path}: ${policy}`);
    assert.equal(headers["x-content-type-options"], "nosniff", path);
    assert.equal(headers["referrer-policy"], "no-referrer", path);
  }
  await program.stop();
});

test("on the local network only with the key", async () => {
  const program = await open(newBuild(), ["--lan"]);
  const { port, host, search } = new URL(program.address);
  const at = { headers: { host } };
  assert.match(search, /^\?key=[0-9a-f]{32}$/);
  assert.equal((await ask(port, "/api/view", at)).status, 403);
  assert.equal((await ask(port, "/?key=0", at)).status, 403);
  const let_in = await ask(port, `/${search}`, at);
  assert.equal(let_in.status, 200);
  const cookie = let_in.headers["set-cookie"]?.[0] ?? "";
  assert.match(cookie, /HttpOnly; SameSite=Strict/);
  assert.equal((await ask(port, "/api/view", { headers: { host, cookie: cookie.split(";")[0] } })).status, 200);
  await program.stop();
});

test("a scan goes into scans/ alone, whole, and never over another", async () => {
  const folder = newBuild("kitcar-mid4");
  const above = readdirSync(join(folder, ".."));
  const before = readdirSync(folder);
  const program = await open(folder);
  const { port, host } = new URL(program.address);
  const origin = `http://${host}`;
  const put = (name, body, headers = { origin }) =>
    ask(port, `/api/scan?name=${encodeURIComponent(name)}`, { method: "POST", headers: { "content-type": "application/octet-stream", ...headers }, body });
  const obj = "v 0 0 0\nv 1 0 0\nv 0 0.5 0\nf 1 2 3\n";
  assert.equal((await put("floor.obj", obj, {})).status, 403, "a change names where it comes from");
  for (const name of ["../floor.obj", "..\\floor.obj", "/etc/floor.obj", "a/floor.obj", "..%2ffloor.obj", ".floor.obj", "floor.obj/..", "build.toml", "shop.toml", "floor", "", "con.obj", "C:floor.obj", "floor.obj\u0000.toml", `${"a".repeat(90)}.obj`]) {
    const answer = await put(name, obj);
    assert.ok([400, 409].includes(answer.status), `${name}: ${answer.status} ${answer.text}`);
  }
  for (const [name, body] of [["floor.stl", "no scan at all"], ["floor.ply", "ply\nformat ascii 1.0\n"], ["floor.obj", ""], ["floor.obj", "v 0 0 nan\n"]]) {
    const answer = await put(name, body);
    assert.equal(answer.status, 409, answer.text);
    assert.match(JSON.parse(answer.text).words, /floor.* cannot be read: /, "a refusal says why");
  }
  const large = await put("floor.obj", Buffer.alloc(50 * 1024 * 1024 + 1, " "));
  assert.equal(large.status, 413);
  assert.match(large.text, /larger than 50 MB/);
  assert.deepEqual(readdirSync(folder).filter((name) => name !== "scans"), before.filter((name) => name !== "scans"), "nothing was written beside the files");
  assert.deepEqual(readdirSync(join(folder, "..")), above, "nothing was written above the folder");
  const sound = await put("floor.obj", obj);
  assert.equal(sound.status, 200, sound.text);
  assert.deepEqual(JSON.parse(sound.text), { file: "scans/floor.obj", triangles: 1, points: 3, size: [1, 0.5, 0], warnings: [] });
  const second = await put("floor.obj", obj.replace("0.5", "0.7"));
  assert.equal(second.status, 409);
  assert.match(JSON.parse(second.text).words, /never overwritten/);
  assert.equal(readFileSync(join(folder, "scans", "floor.obj"), "utf8"), obj);
  assert.deepEqual(readdirSync(join(folder, "scans")), ["floor.obj"], "nothing half written is left");
  // Anything else is still a few hundred bytes.
  const deed = await ask(port, "/api/deed", { method: "POST", headers: { origin, "content-type": "application/json" }, body: "x".repeat(300_000) });
  assert.equal(deed.status, 413);
  await program.stop();
});
