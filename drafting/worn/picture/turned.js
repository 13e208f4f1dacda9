// The costume turned by hand: a depth buffer on a plain canvas, no library, no network.
(() => {
  const data = JSON.parse(document.getElementById('shape').textContent);
  const canvas = document.getElementById('turned'), pen = canvas.getContext('2d');
  const said = document.getElementById('said'), WIDE = canvas.width, HIGH = canvas.height;
  const LIGHTS = 128, SHADES = data.ramps[0].shades.length, INK = 0xff000000 | bgr(data.ink);
  const bytes = (text, Kind) => new Kind(Uint8Array.from(atob(text), c => c.charCodeAt(0)).buffer);

  function bgr(hex) {
    const n = parseInt(hex.slice(1), 16);
    return (n & 255) << 16 | n & 0xff00 | n >> 16;
  }
  // Every light on one colour, so that a pixel is one look-up.
  function lights(hexes) {
    const table = new Uint32Array(hexes.length * LIGHTS);
    hexes.forEach((hex, i) => {
      const c = bgr(hex);
      for (let l = 0; l < LIGHTS; l++) {
        const s = Math.min(1, l / (LIGHTS - 1) * 1.15), part = k => Math.min(255, ((c >> k) & 255) * s) << k;
        table[i * LIGHTS + l] = 0xff000000 | part(16) | part(8) | part(0);
      }
    });
    return table;
  }
  const tables = [lights(data.tints), ...data.ramps.map(ramp => lights([...ramp.shades, ramp.untold]))];

  // A halved surface is given its other hand; what lies on the middle is one.
  function whole(cover) {
    const half = bytes(cover.points, Int16Array), faces = bytes(cover.triangles, Uint16Array);
    const tints = bytes(cover.tints, Uint8Array), maps = cover.maps.map(m => bytes(m, Uint8Array));
    const count = half.length / 3, twin = new Uint32Array(count), points = Array.from(half);
    const source = Array.from({ length: count }, (_, i) => i);
    let next = count;
    for (let i = 0; i < count; i++) {
      twin[i] = i;
      if (cover.halved && half[3 * i]) {
        twin[i] = next++;
        points.push(-half[3 * i], half[3 * i + 1], half[3 * i + 2]);
        source.push(i);
      }
    }
    const triangles = Array.from(faces), tint = Array.from(tints), over = Array.from(bytes(cover.over, Uint8Array));
    const lines = cover.lines.map(line => Array.from(bytes(line, Uint16Array)));
    if (cover.halved) {
      for (let t = 0; t < faces.length; t += 3) triangles.push(twin[faces[t]], twin[faces[t + 2]], twin[faces[t + 1]]);
      tint.push(...tints); over.push(...over);
      lines.push(...lines.map(line => line.map(i => twin[i])));
    }
    // One hand lies under the other where it laps over the middle: told of the surface, of its other hand the right.
    const told = bytes(cover.under, Uint8Array), beneath = cover.on_top === "left";
    const under = Float32Array.from({ length: points.length / 3 }, (_, i) =>
      i < count ? told[i] || 0 : beneath && points[3 * i] > 0 ? 1 : 0);
    triangles.forEach((i, k) => { if (under[i] && over[k / 3 | 0]) under[i] = data.lapel_laps; });
    const xyz = Float32Array.from(points, v => v / data.per_mm), n = xyz.length / 3;
    const value = maps.map(m => Uint8Array.from(source, i => m[i]));
    const rings = cover.rings.map(ring => ({ ...ring, xyz: Float32Array.from(bytes(ring.points, Int16Array), v => v / data.per_mm) }));
    return { ...cover, rings, xyz, over, under, n, triangles: Uint32Array.from(triangles), tint: Uint8Array.from(tint), lines, value,
      normals: normalsOf(xyz, triangles), seen: new Float32Array(3 * n), light: new Float32Array(n), shown: true };
  }
  function normalsOf(p, triangles) {
    const normals = new Float32Array(p.length);
    for (let t = 0; t < triangles.length; t += 3) {
      const [a, b, c] = [3 * triangles[t], 3 * triangles[t + 1], 3 * triangles[t + 2]];
      const ux = p[b] - p[a], uy = p[b + 1] - p[a + 1], uz = p[b + 2] - p[a + 2];
      const vx = p[c] - p[a], vy = p[c + 1] - p[a + 1], vz = p[c + 2] - p[a + 2];
      for (const q of [a, b, c]) {
        normals[q] += uy * vz - uz * vy; normals[q + 1] += uz * vx - ux * vz; normals[q + 2] += ux * vy - uy * vx;
      }
    }
    for (let i = 0; i < normals.length; i += 3) {
      const l = Math.hypot(normals[i], normals[i + 1], normals[i + 2]) || 1;
      normals[i] /= l; normals[i + 1] /= l; normals[i + 2] /= l;
    }
    return normals;
  }

  const covers = data.covers.map(whole), views = data.views;
  let turned = views[0].turned, raised = views[0].raised, near = 1, mode = 0, asked = 0, resting = 0;
  let depth = new Float32Array(0), image = null, pixels = null;

  function paper(times) {
    if (image && image.width === WIDE * times) return;
    canvas.width = WIDE * times; canvas.height = HIGH * times;
    depth = new Float32Array(canvas.width * canvas.height);
    image = pen.createImageData(canvas.width, canvas.height);
    pixels = new Uint32Array(image.data.buffer);
  }
  function draw(times) {
    const began = performance.now();
    paper(times);
    depth.fill(1e9); pixels.fill(0xff000000 | bgr(data.paper));
    const a = turned * Math.PI / 180, e = raised * Math.PI / 180;
    const ca = Math.cos(a), sa = Math.sin(a), ce = Math.cos(e), se = Math.sin(e);
    const axes = { right: [ca, sa, 0], up: [-sa * se, ca * se, ce], eye: [sa * ce, -ca * ce, se] };
    const scale = near * times * HIGH * 0.94 / data.tall;
    for (const cover of covers) if (cover.shown) { project(cover, axes, scale); fill(cover); }
    const outermost = covers.reduce((last, cover, i) => cover.shown ? i : last, 0);
    covers.forEach((cover, i) => {
      if (cover.shown) for (const ring of cover.rings) if (!ring.under || i === outermost) button(ring, axes, scale, times);
    });
    for (const cover of covers) if (cover.shown) cover.lines.forEach((line, i) => trace(cover, line, times, cover.raised[i % cover.raised.length] ? data.lies_on : 0));
    pen.putImageData(image, 0, 0);
    return performance.now() - began;
  }
  function project(cover, { right, up, eye }, scale) {
    const p = cover.xyz, m = cover.normals, s = cover.seen, w = canvas.width / 2, h = canvas.height / 2;
    const [mx, my, mz] = data.middle;
    for (let i = 0, k = 0; i < cover.n; i++, k += 3) {
      const x = p[k] - mx, y = p[k + 1] - my, z = p[k + 2] - mz;
      s[k] = w + scale * (right[0] * x + right[1] * y);
      s[k + 1] = h - scale * (up[0] * x + up[1] * y + up[2] * z);
      s[k + 2] = -(eye[0] * x + eye[1] * y + eye[2] * z) - cover.nearer + cover.under[i] * data.lap;
      const f = eye[0] * m[k] + eye[1] * m[k + 1] + eye[2] * m[k + 2], sign = f < 0 ? -1 : 1;
      const r = right[0] * m[k] + right[1] * m[k + 1], u = up[0] * m[k] + up[1] * m[k + 1] + up[2] * m[k + 2];
      const half = 0.5 + 0.5 * sign * (-0.48 * r + 0.62 * u + 0.62 * f);
      const lit = 0.42 + 0.1 * sign * m[k + 2] + 0.44 * half * Math.sqrt(half) + 0.14 * Math.abs(f);
      cover.light[i] = Math.min(1, (f < 0 && !cover.closed ? 0.66 : 1) * lit / 1.15) * (LIGHTS - 1);
    }
  }
  function button(ring, { right, up, eye }, scale, times) {
    const p = ring.xyz, seen = new Float32Array(p.length), w = canvas.width / 2, h = canvas.height / 2;
    const [mx, my, mz] = data.middle;
    for (let k = 0; k < p.length; k += 3) {
      const x = p[k] - mx, y = p[k + 1] - my, z = p[k + 2] - mz;
      seen[k] = w + scale * (right[0] * x + right[1] * y);
      seen[k + 1] = h - scale * (up[0] * x + up[1] * y + up[2] * z);
      seen[k + 2] = -(eye[0] * x + eye[1] * y + eye[2] * z) - ring.nearer;
    }
    trace({ seen }, Array.from({ length: p.length / 3 }, (_, i) => i), times, -4);
  }
  function fill(cover) {
    const { seen: s, light, triangles, tint } = cover, w = canvas.width, h = canvas.height;
    const told = mode > 0 && cover.value.length >= mode, table = told ? tables[mode] : tables[0];
    const value = told ? cover.value[mode - 1] : null;
    for (let t = 0; t < triangles.length; t += 3) {
      const i = triangles[t], j = triangles[t + 1], k = triangles[t + 2];
      const ax = s[3 * i], ay = s[3 * i + 1], bx = s[3 * j], by = s[3 * j + 1], cx = s[3 * k], cy = s[3 * k + 1];
      const twice = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
      if (Math.abs(twice) < 1e-6 || (cover.closed && twice > 0)) continue;
      const over = twice < 0 && cover.over[t / 3] ? data.lies_on : 0;
      const x0 = Math.max(0, Math.ceil(Math.min(ax, bx, cx) - 0.5)), x1 = Math.min(w - 1, Math.max(ax, bx, cx) - 0.5);
      const y0 = Math.max(0, Math.ceil(Math.min(ay, by, cy) - 0.5)), y1 = Math.min(h - 1, Math.max(ay, by, cy) - 0.5);
      const du = (cy - ay) / twice, dv = (ay - by) / twice, eu = (ax - cx) / twice, ev = (bx - ax) / twice;
      const az = s[3 * i + 2] - over, bz = s[3 * j + 2] - over - az, cz = s[3 * k + 2] - over - az;
      const al = light[i], bl = light[j] - al, cl = light[k] - al;
      let row = told ? 0 : tint[t / 3] * LIGHTS, av = 0, bv = 0, cv = 0;
      if (told) {
        av = value[i]; bv = value[j] - av; cv = value[k] - av;
        if (Math.max(value[i], value[j], value[k]) >= SHADES) { av = SHADES; bv = cv = 0; }
      }
      for (let y = y0; y <= y1; y++) {
        let u = du * (x0 + 0.5 - ax) + eu * (y + 0.5 - ay), v = dv * (x0 + 0.5 - ax) + ev * (y + 0.5 - ay);
        for (let x = x0, at = y * w + x0; x <= x1; x++, at++, u += du, v += dv) {
          if (u < 0 || v < 0 || u + v > 1) continue;
          const z = az + u * bz + v * cz;
          if (z >= depth[at]) continue;
          depth[at] = z;
          if (told) row = (av + u * bv + v * cv | 0) * LIGHTS;
          pixels[at] = table[row + (al + u * bl + v * cl | 0)];
        }
      }
    }
  }
  function trace(cover, line, times, raised) {
    const s = cover.seen, w = canvas.width, h = canvas.height;
    for (let n = 1; n < line.length; n++) {
      const a = 3 * line[n - 1], b = 3 * line[n];
      const steps = Math.ceil(Math.max(Math.abs(s[b] - s[a]), Math.abs(s[b + 1] - s[a + 1]))) + 1;
      for (let m = 0; m <= steps; m++) {
        const p = m / steps, x = s[a] + p * (s[b] - s[a]) | 0, y = s[a + 1] + p * (s[b + 1] - s[a + 1]) | 0;
        const z = s[a + 2] + p * (s[b + 2] - s[a + 2]) - 4 - raised;
        for (let d = 0; d < times; d++) {
          if (x < 0 || y < 0 || x + d >= w || y >= h || z > depth[y * w + x + d]) continue;
          pixels[y * w + x + d] = INK;
        }
      }
    }
  }

  const degrees = v => Math.round(((v % 360) + 360) % 360);
  function show() {
    cancelAnimationFrame(asked); clearTimeout(resting);
    asked = requestAnimationFrame(() => {
      draw(1);
      const view = views.find(v => degrees(v.turned) === degrees(turned) && v.raised === raised);
      said.textContent = view ? view.words : `turned ${degrees(turned)} degrees, from ${Math.round(raised)} degrees above`;
      resting = setTimeout(() => draw(2), 160);
    });
  }
  function turn(across, down) {
    turned += across; raised = Math.max(-60, Math.min(90, raised + down)); show();
  }
  function closer(times) { near = Math.max(1, Math.min(6, near * times)); show(); }

  let hand = null;
  canvas.addEventListener('pointerdown', e => { hand = [e.clientX, e.clientY]; canvas.setPointerCapture(e.pointerId); });
  canvas.addEventListener('pointermove', e => {
    if (!hand) return;
    turn((hand[0] - e.clientX) * 0.5, (e.clientY - hand[1]) * 0.5);
    hand = [e.clientX, e.clientY];
  });
  for (const end of ['pointerup', 'pointercancel']) canvas.addEventListener(end, () => { hand = null; });
  canvas.addEventListener('wheel', e => { e.preventDefault(); closer(e.deltaY < 0 ? 1.1 : 1 / 1.1); }, { passive: false });
  const KEYS = { ArrowLeft: () => turn(10, 0), ArrowRight: () => turn(-10, 0), ArrowUp: () => turn(0, 10),
    ArrowDown: () => turn(0, -10), '+': () => closer(1.25), '-': () => closer(0.8) };
  canvas.addEventListener('keydown', e => { if (KEYS[e.key]) { KEYS[e.key](); e.preventDefault(); } });
  document.querySelectorAll('[data-view]').forEach(button => button.addEventListener('click', () => {
    ({ turned, raised } = views[button.dataset.view]); near = 1; show();
  }));
  document.querySelectorAll('[data-turn]').forEach(button => button.addEventListener('click', () => {
    turn(...button.dataset.turn.split(' ').map(Number));
  }));
  document.querySelectorAll('[data-closer]').forEach(button => button.addEventListener('click', () => {
    closer(Number(button.dataset.closer));
  }));
  document.querySelectorAll('input[name=mode]').forEach(input => input.addEventListener('change', () => {
    mode = Number(input.value);
    document.querySelectorAll('[data-scale]').forEach(scale => { scale.hidden = Number(scale.dataset.scale) !== mode; });
    show();
  }));
  document.querySelectorAll('input[data-cover]').forEach(input => input.addEventListener('change', () => {
    covers[input.dataset.cover].shown = input.checked; show();
  }));
  // How long a frame takes, for whoever asks: frame() draws one.
  window.frame = () => { turned += 7; return draw(1); };
  show();
})();
