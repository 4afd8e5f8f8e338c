"use strict";
(() => {
  const model = JSON.parse(document.getElementById("reader-model").textContent);
  const form = document.getElementById("reader");
  const at = (name) => form.elements.namedItem(name);
  const NO_BREAK = "\u00a0";

  /* Messages and signs of numbers in the language of the page. */
  const say = (key, fields = {}) => model.say[key].replace(/\{(\w+)\}/g, (_, name) => fields[name]);
  const plural = new Intl.PluralRules(document.documentElement.lang);
  const signed = (text) => text.replace(".", model.signs.decimal);
  const numberOf = (name) => Number(at(name).value.replace(/\s/g, "").replace(",", "."));

  /* Numbers as the printed page writes them: an exact half goes to the even digit. */
  const decimal = (value, places) => {
    const [whole, rest] = value.toFixed(60).split(".");
    const kept = rest.slice(0, places), tie = /^50*$/.test(rest.slice(places));
    if (tie && Number((whole + kept).slice(-1)) % 2 === 0) return places ? `${whole}.${kept}` : whole;
    return value.toFixed(places);
  };
  const thousands = (text) => text.replace(/\B(?=(\d{3})+(?!\d))/g, model.signs.group);
  const stripped = (text) => text.includes(".") ? text.replace(/\.?0+$/, "") : text;
  const grams = (kilograms) => {
    const value = kilograms * 1e3;
    if (Math.abs(value) >= 9.95) return thousands(decimal(value, 0)) + NO_BREAK + "g";
    return signed(stripped(decimal(value, Math.abs(value) >= 0.995 ? 1 : 2))) + NO_BREAK + "g";
  };
  const millilitres = (cubic) => {
    const value = cubic * 1e6;
    const text = value >= 99.5 ? thousands(decimal(value, 0)) : signed(decimal(value, 1).replace(/\.0$/, ""));
    return text + NO_BREAK + "ml";
  };
  /* Halves away from zero, by the shortest digits of the number, as in school. */
  const fixed = (value, places) => {
    const [digits, power] = Math.abs(value).toExponential().split("e");
    const all = digits.replace(".", ""), point = Number(power) + 1;
    const keep = point + places;
    let head = keep > 0 ? all.slice(0, keep).padEnd(keep, "0") : "";
    const up = keep >= 0 && (all[keep] || "0") >= "5";
    head = String(BigInt(head || "0") + (up ? 1n : 0n)).padStart(places + 1, "0");
    const text = places ? head.slice(0, -places) + "." + head.slice(-places) : head;
    return (value < 0 && Number(text) ? "-" : "") + text;
  };
  const trimmed = (value, places) => signed(stripped(fixed(value, places)));
  const significant = (value) => signed(stripped(String(Number(value.toPrecision(2)))));
  const amount = (value, [small, usual, large], factors) => {
    const number = value / factors[1];
    if (Number(fixed(number, 0)) >= 10000) return trimmed(value / factors[2], 2) + " " + large;
    if (number && Number(fixed(number, 2)) === 0) return significant(value / factors[0]) + " " + small;
    if (!number) return "0 " + usual;
    const places = Number(fixed(number, 2)) < 1 ? 2 : Number(fixed(number, 1)) < 10 ? 1 : 0;
    return signed(fixed(number, places)) + " " + usual;
  };
  const mass = (kilograms) => amount(kilograms, ["mg", "g", "kg"], [1e-6, 1e-3, 1]);
  const volume = (cubic) => amount(cubic, ["mm³", "ml", "l"], [1e-9, 1e-6, 1e-3]);
  const hours = (minutes) => {
    const all = Number(decimal(minutes, 0)), whole = Math.floor(all / 60), rest = all % 60;
    const parts = [];
    if (whole) parts.push(whole + NO_BREAK + "h");
    if (rest) parts.push(rest + NO_BREAK + "min");
    return parts.join(" ") || "0" + NO_BREAK + "min";
  };
  const spaced = (text) => text.replace(/(\d) (?=[a-zA-Z%°])/g, "$1" + NO_BREAK);

  /* Moulds in closed form; lengths in metres, `closed` is the face at the closed end. */
  const bodies = {
    hemisphere: ({ diameter: d }) => ({
      volume: Math.PI * d ** 3 / 12, wall: Math.PI * d * d / 2, closed: 0,
      open: Math.PI * d * d / 4, height: d / 2, family: "hemisphere", place: [d],
    }),
    cylinder: ({ diameter: d, height: h }) => ({
      volume: Math.PI * d * d / 4 * h, wall: Math.PI * d * h + Math.PI * d * d / 4,
      closed: Math.PI * d * d / 4, open: Math.PI * d * d / 4, height: h,
      family: "cylinder", place: [d, h],
    }),
    cone: ({ diameter: d, base: b, height: h }) => ({
      volume: Math.PI * h / 12 * (d * d + d * b + b * b),
      wall: Math.PI * (d + b) / 2 * Math.hypot(h, (d - b) / 2) + Math.PI * b * b / 4,
      closed: Math.PI * b * b / 4, open: Math.PI * d * d / 4, height: h,
      family: "cone", place: [d, h, b / d],
    }),
    box: ({ length, width, height: h }) => {
      const short = Math.min(length, width), long = Math.max(length, width);
      const compact = long < 3 * short && short < 3 * h;
      return {
        volume: length * width * h, wall: 2 * (length + width) * h + length * width,
        closed: length * width, open: length * width, height: h,
        family: compact ? "compact box" : "slender box",
        place: compact ? [short, h / short, long / short] : [short, h],
      };
    },
    log: ({ length, width: w }) => ({
      volume: Math.PI * w * w / 8 * length,
      wall: Math.PI * w / 2 * length + Math.PI * w * w / 4, closed: 0, open: length * w,
      height: w / 2, family: "log", place: [w],
    }),
  };
  bodies.glass = (sizes) => ({ ...bodies.cylinder(sizes), family: "", upright: true });
  const FIELDS = {
    hemisphere: ["diameter"], cylinder: ["diameter", "height"], glass: ["diameter", "height"],
    cone: ["diameter", "base", "height"], box: ["length", "width", "height"],
    log: ["length", "width"],
  };

  const bodyOf = (choice) => {
    if (choice.shape === "own") return { ...model.mould, own: true, family: "" };
    const sizes = { ...choice.sizes };
    let body = bodies[choice.shape](sizes);
    if (choice.holds) {
      const ratio = Math.cbrt(choice.holds / body.volume);
      for (const name of FIELDS[choice.shape]) sizes[name] *= ratio;
      body = bodies[choice.shape](sizes);
    }
    const upright = body.upright || !model.upside_down, top = model.top_only || body.upright;
    body.foot = upright ? body.closed : body.open;
    if (upright) body.coated = top ? body.open : body.wall - body.closed + body.open;
    else body.coated = top ? body.closed : body.wall;
    body.sizes = sizes;
    return body;
  };

  const perCavity = (body) => {
    if (!model.portion || body.own) return model.per_cavity;
    const [l, w, trim] = model.portion, { length, width } = body.sizes;
    const fit = (a, b) => Math.floor((length - 2 * trim) / a + 1e-9) * Math.floor((width - 2 * trim) / b + 1e-9);
    return Math.max(fit(l, w), fit(w, l));
  };

  /* Share of a cavity that one piece is; the rest of a frame is trimmed off. */
  const shareOf = (body) => {
    if (!model.portion || body.own) return model.share;
    return model.portion[0] * model.portion[1] / (body.sizes.length * body.sizes.width);
  };

  /* Every component's mass for so many cavities of a body. */
  const amounts = (body, pieces) => {
    const each = perCavity(body), cavities = Math.ceil(pieces / each);
    const known = new Map(model.components.map((c) => [c.id, c]));
    const share = shareOf(body), drawn = {}, found = {};
    for (const id of model.order) {
      const c = known.get(id);
      if (!c) continue;
      const kept = c.volume * body.volume + c.coated * body.coated + c.foot * body.foot + c.portion * each;
      let ready = kept * cavities * c.dough;
      if (c.pour && kept) {
        const pour = c.pour * kept;
        ready = pour + (cavities - 1) * (kept + (1 - c.caught) * (pour - kept));
      }
      ready += drawn[id] || 0;
      const factor = ready / c.ready;
      for (const [other, weight] of Object.entries(c.draws)) drawn[other] = (drawn[other] || 0) + weight * factor;
      found[id] = { kept, ready, factor, each: share * (kept - c.portion * each) + c.portion };
    }
    const piece = Object.values(found).reduce((sum, one) => sum + one.each, 0);
    return { each, cavities, of: found, piece };
  };

  /* Minutes by a polynomial through the points of a table; nothing outside it. */
  const interpolated = (table, place) => {
    const weights = table.nodes.map((nodes, axis) => {
      const x = Math.log(place[axis]), logs = nodes.map(Math.log);
      return logs.map((here, k) => logs.reduce((product, other, j) => j === k ? product : product * (x - other) / (here - other), 1));
    });
    if (table.ends.some(([low, high], axis) => place[axis] < low * 0.999 || place[axis] > high * 1.001)) return null;
    const sum = (axis, start) => {
      if (axis === weights.length) return table.values[start];
      const width = weights.slice(axis + 1).reduce((n, w) => n * w.length, 1);
      return weights[axis].reduce((total, w, k) => total + w * sum(axis + 1, start + k * width), 0);
    };
    return Math.exp(sum(0, 0));
  };
  const cold = (body, step) => {
    if (body.own) return model.cold.own[step] ?? null;
    const table = (model.cold.tables[body.family] || {})[step];
    return table ? interpolated(table, body.place) : null;
  };

  const words = (kilograms, name, system) => {
    const table = (model.measures[system] || {})[name];
    if (!table) return "";
    const [masses, texts] = table;
    let n = masses.length - 1;
    while (n > 0 && masses[n] > kilograms) n -= 1;
    return model.texts[texts[n]].replace("{}", mass(kilograms));
  };
  const lineOf = (line, factor, choice) => {
    let kilograms = line.mass * factor, name = line.measure, other = "";
    if (line.swaps && choice.gelatine === "strength" && choice.bloom > 0) {
      kilograms *= line.strength / choice.bloom;
      name = "";
      other = say("powder", { bloom: choice.bloom });
    } else if (line.swaps && choice.gelatine !== "" && choice.gelatine !== "strength") {
      const n = Number(choice.gelatine);
      kilograms *= line.swaps[n];
      name = model.gelatines[n].id;
      const gelatine = model.gelatines[n].name;
      other = say("in_place", { gelatine: gelatine[0].toLowerCase() + gelatine.slice(1) });
    }
    const measure = line.water ? volume(kilograms / 1e3) : name === null ? say("from_recipe") : words(kilograms, name, choice.measures);
    return { mass: kilograms, measure, other };
  };

  /* Minutes from the start to serving, with the author's margin over what is computed. */
  const total = (body) => {
    let sum = Math.max(0, ...model.components.map((c) => c.time)), whole = true;
    const seen = {};
    model.cold_steps.forEach((step, n) => {
      const own = model.cold.own[step];
      if (!own || seen[step]) { sum += model.assembly[n]; return; }
      seen[step] = true;
      const here = cold(body, step);
      if (here === null) { whole = false; sum += model.assembly[n]; return; }
      sum += body.own ? Math.max(model.assembly[n], own) : here * Math.max(1, model.assembly[n] / own);
    });
    return { minutes: sum, whole };
  };
  const clock = (text) => { const [h, m] = text.split(":").map(Number); return 60 * h + m; };
  const latestStart = (serve, minutes, from, to) => {
    const start = new Date(serve.getTime() - minutes * 60000);
    const of = start.getHours() * 60 + start.getMinutes();
    if (!(from < to)) return start;
    if (of < from) { start.setDate(start.getDate() - 1); start.setHours(0, to, 0, 0); }
    if (of > to) start.setHours(0, to, 0, 0);
    return start;
  };

  const shapeWords = (choice) => {
    const chosen = at("shape").selectedOptions[0].textContent.trim().toLowerCase();
    const sizes = FIELDS[choice.shape].map((name) => trimmed(choice.sizes[name] * 1e3, 1)).join(" × ");
    if (choice.holds) return say("holding", { shape: chosen, volume: millilitres(choice.holds) });
    return say("sized", { shape: chosen, sizes: `${sizes}${NO_BREAK}mm` });
  };

  /* From the form to the page. */
  const choiceOf = () => {
    const shape = at("shape").value, sizes = {};
    for (const name of FIELDS[shape] || []) sizes[name] = numberOf(name) / 1e3;
    return {
      shape, sizes, holds: shape === "own" ? 0 : numberOf("holds") / 1e6, pieces: Number(at("pieces").value),
      gelatine: at("gelatine") ? at("gelatine").value : "", bloom: at("bloom") ? Number(at("bloom").value) : 0,
      measures: at("measures").value,
    };
  };
  const refusal = (choice) => {
    if (!Number.isInteger(choice.pieces) || choice.pieces < 1 || choice.pieces > 10000) return say("bad_pieces");
    for (const [name, size] of Object.entries(choice.sizes)) if (!(size >= 0.005 && size <= 1)) return say(`bad_${name}`);
    if (!(choice.holds === 0 || (choice.holds >= 1e-6 && choice.holds <= 0.1))) return say("bad_volume");
    if (choice.shape === "cone" && choice.sizes.base > choice.sizes.diameter) return say("bad_cone");
    if (choice.shape !== "own" && !(perCavity(bodyOf(choice)) >= 1)) return say("no_portion");
    if (choice.gelatine === "strength" && !(choice.bloom >= 50 && choice.bloom <= 350)) return say("bad_bloom");
    return "";
  };
  const compute = (choice) => {
    const body = bodyOf(choice), found = amounts(body, choice.pieces);
    return {
      volume: body.volume, coated: body.coated, foot: body.foot, ...found,
      freeze: cold(body, "freeze-until"), thaw: cold(body, "thaw-until"), total: total(body),
      lines: model.components.map((c) => c.lines.map((line) => lineOf(line, found.of[c.id].factor, choice))),
      body,
    };
  };
  window.entremetry = { model, compute, grams, millilitres, mass, volume, hours, fixed, latestStart };

  const put = (selector, text) => {
    for (const place of document.querySelectorAll(selector)) if (place.textContent !== text) place.textContent = text;
  };
  const published = new Map();
  const keep = (place) => { if (!published.has(place)) published.set(place, place.textContent); };
  const show = (choice, result) => {
    const own = result.body.own, scale = result.volume / model.mould.volume;
    const same = own && choice.pieces === model.pieces;
    put("[data-out=pieces]", say(plural.select(choice.pieces) === "one" ? "piece" : "pieces", { number: choice.pieces }));
    put("[data-out=piece]", grams(result.piece));
    put("[data-out=holds]", millilitres(result.volume));
    model.components.forEach((c, k) => {
      const { ready, factor } = result.of[c.id];
      put(`[data-made="${k}"]`, grams(c.made * factor));
      put(`[data-ready="${k}"]`, grams(ready));
      put(`[data-each="${k}"]`, grams(result.of[c.id].each));
      put(`[data-volume="${k}"]`, millilitres(ready / c.density));
      result.lines[k].forEach((line, n) => {
        const row = document.getElementById(`line-${k}-${n}`);
        row.querySelector(".mass").textContent = grams(line.mass);
        const measure = row.querySelector(".measure");
        keep(measure);
        const untouched = same && choice.gelatine === "" && choice.measures === form.dataset.measures;
        measure.textContent = untouched ? published.get(measure) : spaced(line.measure);
        row.querySelector(".swap").textContent = line.other;
      });
      for (const place of document.querySelectorAll(`[data-scaled="${k}"]`)) {
        place.textContent = spaced(mass(Number(place.dataset.mass) * factor));
      }
    });
    document.querySelectorAll("[data-fill]").forEach((place) => {
      const step = model.fill[Number(place.dataset.fill)];
      place.textContent = spaced(mass(step.mass * (step.by === "foot" ? result.foot / model.mould.foot : scale)));
    });
    for (const place of document.querySelectorAll("[data-level]")) {
      place.textContent = spaced(`${trimmed(Number(place.dataset.level) * result.body.height / model.mould.height, 0)} mm`);
    }
    document.documentElement.classList.toggle("other-mould", !own);
    document.documentElement.classList.toggle("other-batch", !same);
    const times = [["freeze", "freezing"], ["thaw", "thawing"]].flatMap(([key, name]) => result[key] === null ? [] : [say(name, { time: hours(result[key]) })]);
    const missing = own || result.total.whole ? "" : say("outside");
    put("[data-out=cavities]", own ? say("as_published") : say("cavities", { number: result.cavities, mould: shapeWords(choice) }));
    put("[data-out=times]", times.join(" · ") || say("no_cold"));
    put("[data-out=missing]", missing);
    const serve = at("serve").value ? new Date(at("serve").value) : null;
    const format = new Intl.DateTimeFormat(document.documentElement.lang, { weekday: "long", day: "numeric", month: "long", hour: "2-digit", minute: "2-digit" });
    const lasts = result.total.minutes;
    put("[data-out=total]", hours(lasts));
    put("[data-out=start]", serve && !Number.isNaN(serve.getTime())
      ? format.format(latestStart(serve, lasts, clock(at("from").value || "00:00"), clock(at("to").value || "23:59")))
      : say("before", { time: hours(lasts) }));
  };
  const update = () => {
    const choice = choiceOf(), shape = choice.shape;
    for (const place of form.querySelectorAll("[data-size]")) place.hidden = !(FIELDS[shape] || []).includes(place.dataset.size);
    for (const place of form.querySelectorAll("[data-not-own]")) place.hidden = shape === "own";
    const strength = form.querySelector("[data-strength]");
    if (strength) strength.hidden = choice.gelatine !== "strength";
    const wrong = refusal(choice);
    put("[data-out=refusal]", wrong);
    if (!wrong) show(choice, compute(choice));
  };
  form.hidden = false;
  form.addEventListener("input", update);
  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("reset", () => setTimeout(update));
  document.documentElement.classList.add("scripted");
  update();
})();
