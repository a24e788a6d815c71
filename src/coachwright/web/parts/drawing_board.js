// The drawing board: one view of a build, in which fittings are picked, dragged and nudged.
// Lengths are in mm of the vehicle; what is drawn stands in mm of the paper of the view.
// What is shown while dragging is a preview; the assessment decides after the drop.

const SNAP_PX = 9;
const SNAP_MOST_MM = 45;
const SLACK_MM = 1;
const NUDGE_WAIT_MS = 280;
const DRAG_PX = 4;
const ZOOMS = [1, 1.4, 2, 2.8, 4];

const rounded = (length) => Math.round(length * 10) / 10;
const apart = (a, b) =>
  [0, 1, 2].some((i) => a[1][i] <= b[0][i] + SLACK_MM || b[1][i] <= a[0][i] + SLACK_MM);
const shifted = (box, by) => box.map((corner) => corner.map((value, i) => value + by[i]));
const joined = (boxes, others) => boxes.some((a) => others.some((b) => !apart(a, b)));

export default {
  template: `
    <div class="board" :class="{ grabbing: !!drag }">
      <svg ref="sheet" class="board-sheet" :viewBox="window" role="group" :aria-label="board.title"
           tabindex="-1" @keydown="key" @pointerdown="blank" @dragover.prevent @drop.prevent="dropped">
        <defs>
          <pattern id="board-clash" width="2" height="2" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <line x1="0" y1="0" x2="0" y2="2" class="clash-line" /></pattern>
          <pattern id="board-zone" width="3" height="3" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
            <line x1="0" y1="0" x2="0" y2="3" class="zone-line" /></pattern>
        </defs>
        <g class="board-drawing" v-html="drawing" aria-hidden="true"></g>
        <rect v-for="zone in blocked" :key="'z' + zone.key" class="zone" v-bind="zone.rect"><title>{{ zone.words }}</title></rect>
        <rect v-for="clash in clashes" :key="'c' + clash.key" class="clash" v-bind="clash.rect"><title>{{ clash.words }}</title></rect>
        <g v-for="piece in pieces" :key="piece.name" class="piece" role="button" :data-name="piece.name"
           :class="{ picked: picks.includes(piece.name), leading: piece.name === chosenName, pinned: piece.pinned, carried: isMoving(piece.name) }"
           :aria-pressed="picks.includes(piece.name) ? 'true' : 'false'" :aria-label="said(piece)"
           :tabindex="piece.name === stop ? 0 : -1" @pointerdown.stop="down($event, piece)" @focus="stopAt(piece)">
          <rect v-bind="piece.rect"><title>{{ piece.words }}: {{ piece.part }}</title></rect>
          <path v-if="piece.pinned" class="pin" :d="pinMark(piece)" />
          <text v-if="piece.label" class="piece-name" :x="piece.label[0]" :y="piece.label[1]" :font-size="board.letters_mm">{{ piece.words }}</text>
        </g>
        <rect v-if="band" class="band" v-bind="bandRect" aria-hidden="true" />
        <g v-if="drag" class="ghosts" aria-hidden="true">
          <line v-for="line in guides" :key="line.key" class="guide" v-bind="line.ends" />
          <rect v-for="ghost in ghosts" :key="ghost.name" class="ghost" :class="ghost.state" v-bind="ghost.rect" />
        </g>
      </svg>
      <p class="board-said small" role="status">{{ report }}</p>
    </div>`,
  props: { board: Object, event: Number, picked: Array, system: String },
  emits: ["pick", "move", "turn", "mirror", "remove", "pin", "place"],
  data() {
    return { drag: null, band: null, wanted: [...this.picked], several: false, stop: "", zoom: 0, centre: null, said_last: "" };
  },
  computed: {
    // What is told to be picked may be drawn only a moment later.
    picks() {
      return this.wanted.filter((name, place) => this.byName[name] && this.wanted.indexOf(name) === place);
    },
    // The last of what is picked leads: the first by keyboard, and what the panel names.
    chosenName() {
      return this.picks[this.picks.length - 1] || "";
    },
    bandRect() {
      const [a, b] = [this.paper(this.band.from), this.paper(this.band.to)];
      return { x: Math.min(a[0], b[0]), y: Math.min(a[1], b[1]), width: Math.abs(a[0] - b[0]), height: Math.abs(a[1] - b[1]) };
    },
    drawing() {
      const [width, height] = this.board.paper_mm;
      return this.board.drawing.replace(/^<svg ([^>]*?)width="[^"]*" height="[^"]*"/, `<svg $1width="${width}" height="${height}"`);
    },
    window() {
      const [width, height] = this.board.paper_mm;
      const size = ZOOMS[this.zoom];
      const centre = this.centre || [width / 2, height / 2];
      return [centre[0] - width / size / 2, centre[1] - height / size / 2, width / size, height / size].join(" ");
    },
    byName() {
      return Object.fromEntries(this.board.pieces.map((piece) => [piece.name, piece]));
    },
    pieces() {
      const area = (piece) => piece.rect.width * piece.rect.height;
      return this.board.pieces
        .filter((piece) => piece.shown)
        .map((piece) => ({
          ...piece,
          rect: this.rect(piece.low_mm, piece.high_mm),
          label: piece.label_mm && this.paper(piece.label_mm),
        }))
        .sort((a, b) => area(b) - area(a));
    },
    clashes() {
      return this.drag ? [] : this.board.clashes.map((clash) => ({
        key: `${clash.one}|${clash.other}`,
        words: `${clash.one} and ${clash.other} stand in one place`,
        rect: this.rect(clash.low_mm, clash.high_mm),
      }));
    },
    blocked() {
      if (this.drag) return [];
      return this.board.zones.filter((zone) => zone.blocked_by.length).map((zone, index) => ({
        key: index,
        words: `${zone.purpose} of ${zone.fitting}: ${zone.blocked_by.join(", ")} in the way`,
        rect: this.rect(zone.low_mm, zone.high_mm),
      }));
    },
    ghosts() {
      if (!this.drag) return [];
      return Object.entries(this.drag.by).map(([name, by]) => {
        const piece = this.lifted(name);
        const [low, high] = shifted([piece.low_mm, piece.high_mm], by);
        return { name, rect: this.rect(low, high), state: this.drag.trouble.of.includes(name) ? "in-trouble" : "" };
      }).concat(this.drag.trouble.zones.map((zone, index) => ({ name: `zone ${index}`, rect: this.rect(zone[0], zone[1]), state: "zone-hit" })))
        .concat(this.drag.trouble.others.filter((name) => this.byName[name]).map((name) => ({ name: `hit ${name}`, rect: this.rect(this.byName[name].low_mm, this.byName[name].high_mm), state: "hit" })));
    },
    guides() {
      const [width, height] = this.board.paper_mm;
      return (this.drag ? this.drag.snaps : []).map((snap) => {
        const [x, y] = this.paper(snap.upwards ? [0, snap.at] : [snap.at, 0]);
        const ends = snap.upwards ? { x1: 0, x2: width, y1: y, y2: y } : { x1: x, x2: x, y1: 0, y2: height };
        return { key: `${snap.upwards}${snap.at}`, ends };
      });
    },
    report() {
      if (!this.drag) return this.said_last;
      const piece = this.lifted(this.drag.name);
      const by = this.drag.by[this.drag.name];
      const more = this.drag.names.length - 1;
      const moved = ["rearwards", "right", "up"].map((word, i) => [word, ["forwards", "left", "down"][i], by[i]])
        .filter(([, , length]) => Math.abs(length) > 0.04)
        .map(([plus, minus, length]) => `${this.shown(Math.abs(length))} ${length > 0 ? plus : minus}`);
      const trouble = this.drag.trouble.words.length ? ` — ${this.drag.trouble.words.join("; ")}` : "";
      return `${piece.words}${more ? ` and ${more} more` : ""}: ${moved.join(", ") || "where it was"}${trouble}`;
    },
  },
  watch: {
    // Whatever others do, what is in the hand stays in the hand, and starts from where it was lifted.
    board() {
      const held = this.drag && !this.sent && (this.press || this.nudge.timer);
      if (held) this.carry({ by: [...this.drag.by[this.drag.name]], snaps: [] });
      else if (this.sent && !this.hasLanded()) return;
      else this.next();
      if (!this.byName[this.stop]) this.stop = this.pieces.length ? this.pieces[0].name : "";
    },
  },
  created() {
    this.stop = this.chosenName || (this.pieces.length ? this.pieces[0].name : "");
    this.nudge = { timer: 0, by: [0, 0, 0] };
    this.later = [];
    this.sent = false;
    this.landing = 0;
    this.press = null;
  },
  beforeUnmount() {
    clearTimeout(this.nudge.timer);
  },
  methods: {
    // ------------------------------------------------------------------ where things fall on the paper
    flat(point) {
      const view = this.board.view;
      return [view.across_factor * point[view.across_axis], point[view.up_axis]];
    },
    paper(flat) {
      const { low_mm: low, scale_ratio: scale, paper_mm: size } = this.board;
      return [(flat[0] - low[0]) / scale, size[1] - (flat[1] - low[1]) / scale];
    },
    rect(low, high) {
      const one = this.paper(this.flat(low));
      const other = this.paper(this.flat(high));
      return {
        x: Math.min(one[0], other[0]),
        y: Math.min(one[1], other[1]),
        width: Math.max(Math.abs(other[0] - one[0]), 0.1),
        height: Math.max(Math.abs(other[1] - one[1]), 0.1),
      };
    },
    under(event) {
      const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(this.$refs.sheet.getScreenCTM().inverse());
      const { low_mm: low, scale_ratio: scale, paper_mm: size } = this.board;
      return [low[0] + point.x * scale, low[1] + (size[1] - point.y) * scale];
    },
    per_px() {
      return this.board.scale_ratio / this.$refs.sheet.getScreenCTM().a;
    },
    vector(across, up) {
      const view = this.board.view;
      const by = [0, 0, 0];
      by[view.across_axis] = across * view.across_factor;
      by[view.up_axis] = up;
      return by;
    },
    shown(length) {
      if (this.system !== "us") return `${Math.round(length * 10) / 10} mm`;
      return `${(length / 25.4).toFixed(2)} in`;
    },
    said(piece) {
      return `${piece.words}, ${piece.part}; stands at ${piece.at.join(", ")}${piece.pinned ? "; pinned" : ""}`;
    },
    pinMark(piece) {
      const { x, y, width } = piece.rect;
      return `M${x + width - 2.6} ${y + 1}h1.6v1.6h-1.6zM${x + width - 1.8} ${y + 2.6}v2.2`;
    },
    lifted(name) {
      return (this.drag && this.drag.origin[name]) || this.byName[name];
    },

    // ------------------------------------------------------------------------- picking and dragging
    stack(event) {
      const [across, up] = this.under(event);
      return this.pieces.filter((piece) => {
        const one = this.flat(piece.low_mm);
        const other = this.flat(piece.high_mm);
        return across >= Math.min(one[0], other[0]) && across <= Math.max(one[0], other[0]) && up >= one[1] && up <= other[1];
      }).reverse();
    },
    // The outermost of what is built into each other comes first; each further press goes one deeper.
    chosen(event, piece) {
      const there = this.stack(event).map((each) => each.name);
      const chain = [piece.name, ...piece.carriers].filter((name) => there.includes(name) || name === piece.name);
      const inHand = chain.find((name) => this.picks.includes(name));
      if (inHand) return { name: inHand, deeper: chain[chain.indexOf(inHand) - 1] || chain[chain.length - 1] };
      return { name: chain[chain.length - 1], deeper: "" };
    },
    adds(event) {
      return event.shiftKey || event.ctrlKey || event.metaKey || this.several;
    },
    down(event, piece) {
      if (event.button) return;
      const choice = this.chosen(event, piece);
      const had = this.picks.includes(choice.name);
      const adding = this.adds(event);
      this.press = { ...choice, had, adding, at: [event.clientX, event.clientY], from: this.under(event) };
      if (!had) this.choose(adding ? [...this.picks, choice.name] : [choice.name]);
      this.stop = choice.name;
      this.hold(event);
    },
    hold(event) {
      this.$refs.sheet.setPointerCapture(event.pointerId);
      this.$refs.sheet.addEventListener("pointermove", this.moved);
      this.$refs.sheet.addEventListener("pointerup", this.up, { once: true });
      this.$refs.sheet.addEventListener("pointercancel", this.cancel, { once: true });
    },
    // A press beside all fittings lets go of them; drawn open it picks what lies wholly in the band.
    blank(event) {
      if (event.target !== this.$refs.sheet || event.button) return;
      const from = this.under(event);
      this.press = { name: "", adding: this.adds(event), at: [event.clientX, event.clientY], from };
      if (event.pointerType === "touch") {
        this.press = null;
        if (this.picks.length) this.choose([]);
      } else this.hold(event);
    },
    moved(event) {
      if (!this.press) return;
      const far = Math.hypot(event.clientX - this.press.at[0], event.clientY - this.press.at[1]);
      if (!this.drag && !this.band && far < DRAG_PX) return;
      const here = this.under(event);
      if (!this.press.name) {
        this.band = { from: this.press.from, to: here };
        return;
      }
      if (!this.drag && !this.lift(this.press.name)) {
        this.loose();
        this.press = null;
        return;
      }
      let across = here[0] - this.press.from[0];
      let up = here[1] - this.press.from[1];
      if (event.shiftKey) Math.abs(across) > Math.abs(up) ? (up = 0) : (across = 0);
      this.carry(this.snapped(across, up, event.altKey));
    },
    up() {
      this.loose();
      const press = this.press;
      this.press = null;
      if (!press) return;
      if (this.drag) this.settleSoon(this.drag.name);
      else if (press.name) this.pressed(press);
      else {
        const inBand = this.band ? this.banded() : [];
        this.band = null;
        const before = press.adding ? this.picks.filter((name) => !inBand.includes(name)) : [];
        if (inBand.length || (this.picks.length && !press.adding)) this.choose([...before, ...inBand]);
      }
    },
    pressed(press) {
      let name = press.name;
      if (press.adding) {
        if (press.had) this.choose(this.picks.filter((each) => each !== name));
      } else {
        name = press.deeper || name;
        if (this.picks.length !== 1 || name !== this.chosenName) this.choose([name]);
      }
      const element = this.$el.querySelector(`[data-name="${name}"]`);
      if (element) element.focus({ preventScroll: true });
    },
    banded() {
      const { from, to } = this.band;
      const inside = this.pieces.filter((piece) => {
        const ends = [this.flat(piece.low_mm), this.flat(piece.high_mm)];
        return [0, 1].every((i) => ends.every((end) => end[i] >= Math.min(from[i], to[i]) && end[i] <= Math.max(from[i], to[i])));
      });
      return this.outermost(inside);
    },
    // What is built into one of them goes along with it and is not picked besides.
    outermost(pieces) {
      const names = pieces.map((piece) => piece.name);
      return pieces.filter((piece) => !piece.carriers.some((name) => names.includes(name))).map((piece) => piece.name);
    },
    cancel() {
      this.loose();
      this.press = null;
      this.band = null;
      this.settle();
    },
    loose() {
      this.$refs.sheet.removeEventListener("pointermove", this.moved);
      this.$refs.sheet.removeEventListener("pointerup", this.up);
      this.$refs.sheet.removeEventListener("pointercancel", this.cancel);
    },
    settleSoon(name) {
      const moved = this.drag.by[name].map(rounded);
      clearTimeout(this.nudge.timer);
      this.nudge.timer = 0;
      this.said_last = this.report;
      this.sent = moved.some((length) => length);
      this.landing = 0;
      if (this.sent) this.$emit("move", { names: this.drag.names, by: moved, event: this.drag.event });
      else this.settle();
    },
    // The server has kept it as this event; its drawing may be here already, or comes next.
    landed(event) {
      this.landing = event;
      if (this.sent && this.hasLanded()) this.next();
    },
    hasLanded() {
      return this.landing && this.event >= this.landing;
    },
    next() {
      const later = this.later;
      this.settle();
      for (const [step, fine] of later) this.step(step, fine);
    },
    choose(names) {
      this.show_picked(names);
      this.$emit("pick", [...this.picks]);
    },
    show_picked(names) {
      this.wanted = names;
      if (this.chosenName) this.stop = this.chosenName;
    },
    gather(several) {
      this.several = several;
    },
    settle() {
      clearTimeout(this.nudge.timer);
      this.drag = null;
      this.sent = false;
      this.landing = 0;
      this.nudge = { timer: 0, by: [0, 0, 0] };
      this.later = [];
    },

    // ---------------------------------------------------------------------------- what moves along
    lift(name) {
      const pinned = this.picks.filter((each) => this.byName[each].pinned).map((each) => this.byName[each].words);
      if (pinned.length) {
        this.said_last = `${pinned.join(", ")} ${pinned.length > 1 ? "are" : "is"} pinned; P lets go`;
        return false;
      }
      this.drag = { name, names: [...this.picks], event: this.event, origin: {}, by: {}, snaps: [], usual: new Set(), trouble: { words: [], of: [], zones: [], others: [] } };
      this.carry({ by: [0, 0, 0], snaps: [] });
      this.drag.origin = Object.fromEntries(Object.keys(this.drag.by).map((each) => [each, this.byName[each]]));
      this.drag.usual = new Set(this.conflicts(true).map((each) => each.key));
      this.drag.trouble = { words: [], of: [], zones: [], others: [] };
      return true;
    },
    isMoving(name) {
      return !!this.drag && name in this.drag.by;
    },
    carry({ by, snaps }) {
      const along = Object.fromEntries(this.drag.names.map((name) => [name, by]));
      for (const lead of this.drag.names) {
        this.lifted(lead).follows.forEach((names, axis) => {
          for (const name of names) {
            if (this.drag.names.includes(name) || !this.lifted(name)) continue;
            along[name] = along[name] || [0, 0, 0];
            along[name][axis] = by[axis];
          }
        });
      }
      this.drag.by = along;
      this.drag.snaps = snaps;
      const found = this.conflicts(false).filter((each) => !this.drag.usual.has(each.key));
      for (const name of Object.keys(along)) {
        if (this.lifted(name).pinned && along[name].some((length) => length)) {
          found.unshift({ mine: name, other: "", words: `${this.lifted(name).words} is pinned and would go along` });
        }
      }
      this.drag.trouble = {
        words: [...new Set(found.map((each) => each.words))].slice(0, 3),
        of: found.map((each) => each.mine),
        zones: found.filter((each) => each.zone).map((each) => each.zone),
        others: [...new Set(found.filter((each) => !each.zone && each.other).map((each) => each.other))],
      };
    },
    // Everything that stands in the way of what is moved.  What already touches when it is lifted and is no
    // finding (built in, waived, told so by its part) is left out of the preview from then on.
    conflicts(lifting) {
      const found = [];
      const known = new Set(this.board.clashes.map((clash) => [clash.one, clash.other].sort().join("|")));
      const moving = Object.keys(this.drag.by);
      const still = this.board.pieces.filter((piece) => !(piece.name in this.drag.by));
      for (const mine of moving) {
        const by = this.drag.by[mine];
        const boxes = this.lifted(mine).boxes_mm.map((box) => shifted(box, by));
        for (const other of still) {
          const key = [mine, other.name].sort().join("|");
          if (joined(boxes, other.boxes_mm) && !(lifting && known.has(key))) {
            found.push({ key, mine, other: other.name, words: `${this.lifted(mine).words} runs into ${other.words}` });
          }
        }
        found.push(...this.outside(mine, by));
      }
      for (const zone of this.board.zones) {
        const mine = zone.fitting in this.drag.by;
        const by = mine ? this.drag.by[zone.fitting] : [0, 0, 0];
        const space = shifted([zone.low_mm, zone.high_mm], by);
        const takers = mine ? still : moving.map((name) => this.lifted(name));
        for (const taker of takers) {
          if (taker.name === zone.fitting) continue;
          const boxes = mine ? taker.boxes_mm : taker.boxes_mm.map((box) => shifted(box, this.drag.by[taker.name]));
          if (!joined([space], boxes) || (lifting && zone.blocked_by.includes(taker.name))) continue;
          const name = this.byName[zone.fitting] ? this.byName[zone.fitting].words : zone.fitting;
          found.push({ key: `${zone.fitting}/${zone.purpose}|${taker.name}`, mine: mine ? zone.fitting : taker.name, other: taker.name, zone: space, words: `${taker.words} blocks ${name}: ${zone.purpose}` });
        }
      }
      return found;
    },
    outside(name, by) {
      const piece = this.lifted(name);
      const [low, high] = shifted([piece.low_mm, piece.high_mm], by);
      return piece.stops_mm.flatMap((stops, axis) =>
        stops.length === 2 && (low[axis] < stops[0] - SLACK_MM || high[axis] > stops[1] + SLACK_MM)
          ? [{ key: `${name}|shell ${axis}`, mine: name, other: "", words: `${piece.words} reaches through the shell` }]
          : [],
      );
    },

    // -------------------------------------------------------------------------------------- snapping
    snapped(across, up, free) {
      const view = this.board.view;
      const by = this.vector(across, up);
      const snaps = [];
      for (const axis of [view.across_axis, view.up_axis]) {
        if (!by[axis]) continue;
        const found = free ? null : this.nearest(axis, by[axis]);
        const low = this.lifted(this.drag.name).low_mm[axis];
        if (found) {
          by[axis] += found.off;
          const factor = axis === view.across_axis ? view.across_factor : 1;
          snaps.push({ upwards: axis === view.up_axis, at: factor * found.at });
        } else {
          const step = free ? this.board.fine_mm : this.board.grid_mm;
          by[axis] = Math.round((low + by[axis]) / step) * step - low;
        }
      }
      return { by, snaps };
    },
    nearest(axis, by) {
      const most = Math.min(SNAP_PX * this.per_px(), SNAP_MOST_MM);
      const piece = this.lifted(this.drag.name);
      const sides = [piece.low_mm[axis] + by, piece.high_mm[axis] + by];
      let best = null;
      for (const at of this.edges(piece, axis)) {
        for (const side of sides) {
          const off = at - side;
          if (Math.abs(off) <= most && (!best || Math.abs(off) < Math.abs(best.off))) best = { off, at };
        }
      }
      return best;
    },
    edges(piece, axis) {
      const away = 3 - this.board.view.across_axis - this.board.view.up_axis;
      const kin = piece.carriers.slice(0, 1).join();
      const found = [...piece.stops_mm[axis]];
      for (const other of this.board.pieces) {
        if (other.name in this.drag.by || !other.shown) continue;
        if (other.carriers.length && other.carriers[0] !== kin) continue;
        if (other.high_mm[away] <= piece.low_mm[away] || other.low_mm[away] >= piece.high_mm[away]) continue;
        found.push(other.low_mm[axis], other.high_mm[axis]);
      }
      return found;
    },

    // -------------------------------------------------------------------------------------- by keyboard
    key(event) {
      const arrows = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
      const name = event.target.dataset ? event.target.dataset.name : "";
      if ((event.ctrlKey || event.metaKey) && event.key === "a") {
        this.choose(this.outermost(this.pieces));
        event.preventDefault();
        return;
      }
      const plain = !event.ctrlKey && !event.metaKey && !event.altKey;
      if (!plain) return;
      if (event.key in arrows && this.chosenName) this.step(arrows[event.key], event.shiftKey);
      else if (event.key === "Enter" || event.key === " ") name && this.toggle(name, event.shiftKey || this.several);
      else if (event.key === "PageDown") this.go(1, event.shiftKey);
      else if (event.key === "PageUp") this.go(-1, event.shiftKey);
      else if (event.key === "Escape") this.drag ? this.cancel() : this.choose([]);
      else if (event.key === "p" && this.chosenName) this.$emit("pin", this.chosenName);
      else if (event.key === "r" && this.chosenName) this.$emit("turn", this.chosenName);
      else if (event.key === "m" && this.chosenName) this.$emit("mirror", this.chosenName);
      else if (event.key === "Delete" && this.chosenName) this.$emit("remove", this.chosenName);
      else if (event.key === "+" || event.key === "=") this.closer(1);
      else if (event.key === "-") this.closer(-1);
      else if (event.key === "0") this.closer(-ZOOMS.length);
      else return;
      event.preventDefault();
    },
    toggle(name, adding) {
      const others = adding ? this.picks.filter((each) => each !== name) : [];
      this.choose(this.picks.includes(name) ? others : [...others, name]);
    },
    step([across, up], fine) {
      const piece = this.byName[this.chosenName];
      if (!piece || this.press) return;
      if (this.sent) {
        this.later.push([[across, up], fine]); // its turn comes when the last one is kept
        return;
      }
      const length = fine ? this.board.fine_mm : this.board.grid_mm;
      if (!this.drag && !this.lift(this.chosenName)) return;
      const more = this.vector(across * length, up * length);
      this.nudge.by = this.nudge.by.map((value, axis) => value + more[axis]);
      this.carry({ by: [...this.nudge.by], snaps: [] });
      clearTimeout(this.nudge.timer);
      const name = this.chosenName;
      this.nudge.timer = setTimeout(() => this.settleSoon(name), NUDGE_WAIT_MS);
    },
    go(by, adding) {
      const order = this.board.pieces.filter((piece) => piece.shown);
      const here = order.findIndex((piece) => piece.name === (this.chosenName || this.stop));
      const next = order[(here + by + order.length) % order.length];
      if (!next) return;
      this.choose(adding ? [...this.picks.filter((name) => name !== next.name), next.name] : [next.name]);
      this.stop = next.name;
      this.$nextTick(() => this.$el.querySelector(`[data-name="${next.name}"]`)?.focus({ preventScroll: true }));
    },
    stopAt(piece) {
      this.stop = piece.name;
    },
    closer(steps) {
      this.zoom = Math.max(0, Math.min(ZOOMS.length - 1, this.zoom + steps));
      const piece = this.byName[this.chosenName];
      const rect = piece && this.zoom ? this.rect(piece.low_mm, piece.high_mm) : null;
      this.centre = rect ? [rect.x + rect.width / 2, rect.y + rect.height / 2] : null;
    },

    // ------------------------------------------------------------------------------- from the shelf
    dropped(event) {
      const part = event.dataTransfer.getData("text/x-part");
      if (!part) return;
      const [across, up] = this.under(event);
      const by = this.vector(across, up);
      this.$emit("place", { part, at: by.map(rounded), axes: [this.board.view.across_axis, this.board.view.up_axis] });
    },
  },
};
