// The view that turns: a build as boxes and rolls in parallel projection, looked at from all round.
// It stands still unless a person turns it, and draws with nothing but a flat canvas.

const START = { around: -125, above: 32 };
const STEP_DEG = 15;
const FINE_DEG = 3;
const PER_PX_DEG = 0.4;
const ZOOMS = [1, 1.35, 1.8, 2.4, 3.2];
const DRAG_PX = 4;
const ROLL_SIDES = 24;
const TOUCH_MM = 0.5;
const MARGIN = 0.94;
const FROM = ["the rear", "the rear right", "the right", "the front right", "the front", "the front left", "the left", "the rear left"];

const radians = (degrees) => (degrees * Math.PI) / 180;
const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

// Faces of a box: the axis of the normal, its sense, and the corners by low (0) or high (1) side.
const BOX_FACES = [0, 1, 2].flatMap((axis) => [0, 1].map((side) => {
  const [one, two] = [(axis + 1) % 3, (axis + 2) % 3];
  const corners = [[0, 0], [1, 0], [1, 1], [0, 1]].map(([a, b]) => {
    const corner = [0, 0, 0];
    corner[axis] = side;
    corner[one] = a;
    corner[two] = b;
    return corner;
  });
  const normal = [0, 0, 0];
  normal[axis] = side ? 1 : -1;
  return { normal, corners };
}));

function boxFaces([low, high]) {
  const ends = [low, high];
  return BOX_FACES.map(({ normal, corners }) => ({
    normal,
    points: corners.map((corner) => corner.map((side, axis) => ends[side][axis])),
    edged: true,
  }));
}

function rollFaces([low, high], axis) {
  const [one, two] = [(axis + 1) % 3, (axis + 2) % 3];
  const point = (turn, end) => {
    const place = [0, 0, 0];
    place[axis] = end;
    place[one] = (low[one] + high[one]) / 2 + (Math.cos(turn) * (high[one] - low[one])) / 2;
    place[two] = (low[two] + high[two]) / 2 + (Math.sin(turn) * (high[two] - low[two])) / 2;
    return place;
  };
  const turns = Array.from({ length: ROLL_SIDES }, (_, side) => (2 * Math.PI * side) / ROLL_SIDES);
  const faces = turns.map((turn, side) => {
    const next = turns[(side + 1) % ROLL_SIDES];
    const middle = turn + Math.PI / ROLL_SIDES;
    const normal = [0, 0, 0];
    normal[one] = Math.cos(middle);
    normal[two] = Math.sin(middle);
    return { normal, points: [point(turn, low[axis]), point(next, low[axis]), point(next, high[axis]), point(turn, high[axis])], edged: false };
  });
  for (const end of [low[axis], high[axis]]) {
    const normal = [0, 0, 0];
    normal[axis] = end === low[axis] ? -1 : 1;
    faces.push({ normal, points: turns.map((turn) => point(turn, end)), edged: true });
  }
  return faces;
}

function inside(points, [x, y]) {
  let within = false;
  for (let i = 0, j = points.length - 1; i < points.length; j = i, i += 1) {
    const [a, b] = [points[i], points[j]];
    if (a[1] > y !== b[1] > y && x < ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1]) + a[0]) within = !within;
  }
  return within;
}

export default {
  template: `
    <div class="turning">
      <canvas ref="paper" class="turning-paper" tabindex="0" role="application" :aria-label="label"
              @keydown="key" @pointerdown="down"></canvas>
      <p class="turning-said small" role="status">{{ said }}</p>
    </div>`,
  props: { model: Object, picked: Array },
  emits: ["pick"],
  data() {
    return { picks: [...this.picked], around: START.around, above: START.above, zoom: 0 };
  },
  computed: {
    label() {
      const title = this.model ? this.model.title : "All round";
      return `${title}. Arrow keys turn it, plus and minus change its size, Page Up and Page Down pick fittings.`;
    },
    said() {
      const turned = (((this.around % 360) + 360) % 360) / 45;
      const from = FROM[Math.round(turned) % FROM.length];
      const height = this.above >= 0 ? `${Math.round(this.above)}° from above` : `${Math.round(-this.above)}° from below`;
      const named = this.picks.map((name) => this.byName[name]).filter((each) => each).map((each) => `${each.words}, ${each.part}`);
      return `Seen from ${from}, ${height}${named.length ? `. Picked: ${named.join("; ")}` : ""}`;
    },
    byName() {
      return Object.fromEntries((this.model ? this.model.solids : []).filter((each) => each.name).map((each) => [each.name, each]));
    },
    // Every box of every body with its faces; hosts are drawn so that one sees what is built in.
    bodies() {
      if (!this.model) return [];
      const hosts = new Set(this.model.solids.map((each) => each.within).filter((name) => name));
      return this.model.solids.flatMap((solid) => solid.boxes_mm.map((box) => ({
        solid,
        low: box[0],
        high: box[1],
        host: hosts.has(solid.name),
        depth: this.depthOf(solid),
        faces: solid.round_axis === null ? boxFaces(box) : rollFaces(box, solid.round_axis),
      })));
    },
    corners() {
      if (!this.model) return [[0, 0, 0], [1, 1, 1]];
      return [...this.bodies.flatMap(({ low, high }) => [0, 1, 2, 3, 4, 5, 6, 7].map((bits) => [0, 1, 2].map((axis) => (bits & (1 << axis) ? high : low)[axis]))), ...this.model.sides_mm.flat()];
    },
    middle() {
      const ends = (axis) => [Math.min(...this.corners.map((each) => each[axis])), Math.max(...this.corners.map((each) => each[axis]))];
      const all = [0, 1, 2].map(ends);
      return { at: all.map(([a, b]) => (a + b) / 2), reach: Math.hypot(...all.map(([a, b]) => b - a)) / 2 };
    },
  },
  watch: {
    model() {
      this.$nextTick(this.draw);
    },
    picks() {
      this.draw();
    },
  },
  mounted() {
    this.drawn = [];
    this.sizes = new ResizeObserver(() => this.draw());
    this.sizes.observe(this.$refs.paper);
    this.colours = new MutationObserver(() => this.draw());
    this.colours.observe(document.body, { attributes: true, attributeFilter: ["class"] });
  },
  beforeUnmount() {
    this.sizes.disconnect();
    this.colours.disconnect();
  },
  methods: {
    depthOf(solid) {
      let depth = 0;
      for (let host = this.byName[solid.within]; host && depth < 9; host = this.byName[host.within]) depth += 1;
      return depth;
    },
    show_picked(names) {
      this.picks = names;
    },
    choose(name) {
      this.picks = name ? [name] : [];
      this.$emit("pick", [...this.picks]);
    },

    // ------------------------------------------------------------------------------ looking at it
    eye() {
      const [a, e] = [radians(this.around), radians(this.above)];
      return {
        towards: [Math.cos(e) * Math.cos(a), Math.cos(e) * Math.sin(a), Math.sin(e)],
        right: [-Math.sin(a), Math.cos(a), 0],
        up: [-Math.sin(e) * Math.cos(a), -Math.sin(e) * Math.sin(a), Math.cos(e)],
      };
    },
    draw() {
      const paper = this.$refs.paper;
      const wide = paper ? paper.clientWidth : 0;
      const high = paper ? paper.clientHeight : 0;
      if (!wide || !high || !this.bodies.length) return;
      const sharp = window.devicePixelRatio || 1;
      if (paper.width !== Math.round(wide * sharp) || paper.height !== Math.round(high * sharp)) {
        paper.width = Math.round(wide * sharp);
        paper.height = Math.round(high * sharp);
      }
      const pen = paper.getContext("2d");
      pen.setTransform(sharp, 0, 0, sharp, 0, 0);
      pen.clearRect(0, 0, wide, high);
      this.paint(pen, wide, high);
    },
    paint(pen, wide, high) {
      const eye = this.eye();
      const style = getComputedStyle(this.$refs.paper);
      const colour = (name) => style.getPropertyValue(name).trim();
      const flat = this.flattener(eye, wide, high);
      const bodies = this.bodies.map((body) => this.seen(body, eye, flat));
      const walls = this.model.walls_mm.map(([points, sense]) => ({ points: points.map(flat), far: sense !== 0 && sense * eye.towards[1] > 0 }));
      this.drawn = [];
      pen.setLineDash([4, 4]);
      const [left, right] = this.model.sides_mm.map((side) => side.map(flat));
      const [far, near] = eye.towards[1] > 0 ? [left, right] : [right, left];
      this.area(pen, far, "", colour("--edge"), 0, 0.6);
      left.forEach((point, place) => this.area(pen, [point, right[place]], "", colour("--line"), 0, 0.6));
      pen.setLineDash([]);
      for (const wall of walls.filter((each) => each.far)) this.area(pen, wall.points, colour("--trade-shell"), colour("--edge"), 0.22, 0.7);
      for (const body of this.ordered(bodies, eye)) {
        const fill = colour(`--trade-${body.solid.trade}`) || colour("--trade-interior");
        for (const face of body.shownFaces) {
          this.area(pen, face.points, fill, face.edged ? colour("--ink") : "", body.host ? 0.3 : 1, 0.8, face.light);
          if (body.solid.name) this.drawn.push({ name: body.solid.name, points: face.points });
        }
      }
      pen.setLineDash([4, 4]);
      this.area(pen, near, "", colour("--edge"), 0, 0.8);
      for (const wall of walls.filter((each) => !each.far)) this.area(pen, wall.points, "", colour("--edge"), 0, 0.6);
      pen.setLineDash([]);
      for (const body of bodies.filter((each) => this.picks.includes(each.solid.name))) {
        for (const face of body.shownFaces) if (face.edged) this.area(pen, face.points, "", colour("--pick"), 0, 2.4);
      }
      this.letter(pen, bodies, colour);
    },
    flattener(eye, wide, high) {
      const { at, reach } = this.middle;
      const heights = this.corners.map((corner) => dot(corner.map((value, axis) => value - at[axis]), eye.up));
      const [lowest, highest] = [Math.min(...heights), Math.max(...heights)];
      const size = Math.min(wide / (2 * reach), high / (highest - lowest)) * MARGIN * ZOOMS[this.zoom];
      const chosen = this.zoom && this.byName[this.picks[this.picks.length - 1]];
      const off = chosen ? 0 : ((lowest + highest) / 2) * size;
      const centre = chosen ? [0, 1, 2].map((axis) => (chosen.boxes_mm[0][0][axis] + chosen.boxes_mm[0][1][axis]) / 2) : at;
      return (point) => {
        const away = point.map((value, axis) => value - centre[axis]);
        return [wide / 2 + dot(away, eye.right) * size, high / 2 + off - dot(away, eye.up) * size];
      };
    },
    seen(body, eye, flat) {
      const shownFaces = body.faces.filter((face) => dot(face.normal, eye.towards) > 1e-6).map((face) => ({
        edged: face.edged,
        light: 0.62 + 0.38 * Math.abs(face.normal[2]) + 0.14 * Math.abs(face.normal[0]),
        points: face.points.map(flat),
      }));
      const all = shownFaces.flatMap((face) => face.points);
      const [xs, ys] = [all.map((point) => point[0]), all.map((point) => point[1])];
      return { ...body, shownFaces, left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
    },
    // Farther bodies first: one that lies beyond a plane between two can never hide the other.
    ordered(bodies, eye) {
      const beyond = (a, b) => [0, 1, 2].some((axis) =>
        eye.towards[axis] > 0 ? a.high[axis] <= b.low[axis] + TOUCH_MM : eye.towards[axis] < 0 && a.low[axis] >= b.high[axis] - TOUCH_MM);
      const first = (a, b) => {
        const [one, other] = [beyond(a, b), beyond(b, a)];
        if (one !== other) return one;
        return !one && a.depth > b.depth; // one within the other: what is built in comes first
      };
      const waits = bodies.map(() => 0);
      const frees = bodies.map(() => []);
      for (let i = 0; i < bodies.length; i += 1) {
        for (let j = i + 1; j < bodies.length; j += 1) {
          const [a, b] = [bodies[i], bodies[j]];
          if (a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top) continue;
          if (first(a, b)) (frees[i].push(j), (waits[j] += 1));
          else if (first(b, a)) (frees[j].push(i), (waits[i] += 1));
        }
      }
      const far = bodies.map((body) => dot(body.low.map((value, axis) => (value + body.high[axis]) / 2), eye.towards));
      const left = new Set(bodies.keys());
      const order = [];
      while (left.size) {
        let next = -1;
        for (const each of left) if (next < 0 || waits[each] < waits[next] || (waits[each] === waits[next] && far[each] < far[next])) next = each;
        left.delete(next);
        order.push(bodies[next]);
        for (const each of frees[next]) waits[each] -= 1;
      }
      return order;
    },
    area(pen, points, fill, line, cover, width, light = 1) {
      pen.beginPath();
      points.forEach(([x, y], place) => (place ? pen.lineTo(x, y) : pen.moveTo(x, y)));
      pen.closePath();
      if (fill) {
        pen.globalAlpha = cover;
        pen.fillStyle = fill;
        pen.fill();
        if (!line) {
          pen.strokeStyle = fill;
          pen.lineWidth = 0.7;
          pen.stroke();
        }
        pen.globalAlpha = cover * Math.max(0, Math.min(0.5, 1 - light));
        pen.fillStyle = "#000";
        pen.fill();
      }
      pen.globalAlpha = fill && cover < 1 && line ? 0.7 : 1;
      if (line) {
        pen.strokeStyle = line;
        pen.lineWidth = width;
        pen.stroke();
      }
      pen.globalAlpha = 1;
    },
    letter(pen, bodies, colour) {
      pen.font = '600 13px "Inter", sans-serif';
      pen.textAlign = "center";
      const taken = [];
      for (const name of this.picks) {
        const own = bodies.filter((each) => each.solid.name === name);
        if (!own.length) continue;
        const words = own[0].solid.words;
        const x = (Math.min(...own.map((each) => each.left)) + Math.max(...own.map((each) => each.right))) / 2;
        const half = pen.measureText(words).width / 2 + 5;
        let y = Math.max(16, Math.min(...own.map((each) => each.top)) - 8);
        while (taken.some((each) => Math.abs(each.x - x) < each.half + half && Math.abs(each.y - y) < 20)) y += 20;
        taken.push({ x, y, half });
        pen.fillStyle = colour("--paper");
        pen.fillRect(x - half, y - 14, 2 * half, 19);
        pen.fillStyle = colour("--pick");
        pen.fillText(words, x, y);
      }
    },

    // ---------------------------------------------------------------------- by pointer and keyboard
    down(event) {
      if (event.button) return;
      const paper = this.$refs.paper;
      const from = { x: event.clientX, y: event.clientY, around: this.around, above: this.above };
      let turned = false;
      const moved = (now) => {
        const [across, up] = [now.clientX - from.x, now.clientY - from.y];
        turned = turned || Math.hypot(across, up) > DRAG_PX;
        if (turned) this.look(from.around - across * PER_PX_DEG, from.above + up * PER_PX_DEG);
      };
      const up = (now) => {
        paper.removeEventListener("pointermove", moved);
        if (!turned && now.type === "pointerup") this.pickAt(now);
      };
      paper.setPointerCapture(event.pointerId);
      paper.addEventListener("pointermove", moved);
      paper.addEventListener("pointerup", up, { once: true });
      paper.addEventListener("pointercancel", up, { once: true });
    },
    pickAt(event) {
      const frame = this.$refs.paper.getBoundingClientRect();
      const spot = [event.clientX - frame.left, event.clientY - frame.top];
      const there = [...new Set([...this.drawn].reverse().filter((each) => inside(each.points, spot)).map((each) => each.name))];
      const now = there.indexOf(this.picks[this.picks.length - 1]);
      this.choose(there[now + 1] || there[0] || "");
    },
    look(around, above) {
      this.around = around;
      this.above = Math.max(-89, Math.min(89, above));
      this.draw();
    },
    key(event) {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const step = event.shiftKey ? FINE_DEG : STEP_DEG;
      const turns = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, step], ArrowDown: [0, -step] };
      if (event.key in turns) this.look(this.around + turns[event.key][0], this.above + turns[event.key][1]);
      else if (event.key === "Home") this.look(START.around, START.above);
      else if (event.key === "PageDown") this.go(1);
      else if (event.key === "PageUp") this.go(-1);
      else if (event.key === "Escape") this.choose("");
      else if (event.key === "+" || event.key === "=") this.closer(1);
      else if (event.key === "-") this.closer(-1);
      else if (event.key === "0") this.closer(-ZOOMS.length);
      else return;
      event.preventDefault();
    },
    go(by) {
      const names = Object.keys(this.byName);
      const now = names.indexOf(this.picks[this.picks.length - 1]);
      this.choose(names[(now + by + names.length) % names.length]);
    },
    closer(steps) {
      this.zoom = Math.max(0, Math.min(ZOOMS.length - 1, this.zoom + steps));
      this.draw();
    },
  },
};
