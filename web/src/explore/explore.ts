/** Explore: what was measured, at any angle, in any coordinates and polarization, with figures and their intervals. */

import { finished, get, post } from "../request/server";
import type { Cut, FigureRow as Figure, Levels, Overview, Run } from "../request/types";
import { LevelMap, LineChart, polar, type Line, type Mark } from "../draw/charts";
import { levels, lines, phases, shade } from "../draw/colours";
import { button, choice, fill, h, number, rested, slider, table } from "../draw/dom";
import { Surface } from "../scene/scene";
import { faultsIn, may, session, type Page } from "../shell/shell";
import { tutor } from "../tutor/tutor";

const BASES: [string, string][] = [
  ["ludwig-3", "Ludwig 3"],
  ["theta-phi", "theta and phi"],
  ["ludwig-2-az-over-el", "Ludwig 2, pole y"],
  ["ludwig-2-el-over-az", "Ludwig 2, pole x"],
  ["circular", "circular"],
];
const COORDINATES: [string, string][] = [
  ["theta-phi", "theta, phi"],
  ["az-el", "azimuth, elevation"],
  ["alpha-epsilon", "alpha, epsilon"],
  ["u-v", "direction cosines u, v"],
];
const RANGE = 50;

export function explorePage(): Page {
  const faults = h("p", { class: "faults", attrs: { role: "alert" } }),
    trying = faultsIn(faults);
  const list = h("div", { class: "runs" }),
    controls = h("div"),
    place = h("div", { class: "stack" }),
    side = h("div", { class: "stack" });
  const chosen = {
    run: "",
    state: null as string | null,
    off: [] as string[],
    frequency: 0,
    plane: 0,
    basis: "ludwig-3" as NonNullable<Cut["basis"]>,
    coordinates: "theta-phi" as NonNullable<Levels["coordinates"]>,
    component: "total" as NonNullable<Levels["component"]>,
    beside: [] as string[],
    difference: false,
    round: false,
    marks: [] as number[],
    gate: null as [number, number] | null,
  };
  let known: Overview | null = null,
    plain: Figure[] = [],
    tab = "Cuts",
    asked = 0,
    runs: Run[] = [];
  const body = () => ({
    campaign: session.campaign,
    run: chosen.run,
    state: chosen.state,
    off: chosen.off,
    gate_ns: chosen.gate,
  });
  const one = () => ({ campaign: session.campaign, run: chosen.run, state: chosen.state });

  /** Something else than the recipe as it stands is shown. */
  const tried = () => chosen.off.length > 0 || chosen.gate !== null;
  const open = async (
    run: string,
    state: string | null = null,
    off: string[] = [],
    gate: [number, number] | null = null,
  ) => {
    if (known && (run !== chosen.run || state !== chosen.state)) plain = [];
    Object.assign(chosen, { run, state, off, gate, beside: chosen.beside.filter((n) => n !== run) });
    for (const b of list.querySelectorAll("button")) b.setAttribute("aria-pressed", String(b.dataset["run"] === run));
    fill(place, h("p", { class: "quiet" }, "The run is being processed; the first time takes some seconds."));
    const found = await trying(post("/api/overview", body()));
    if (!found) {
      fill(place);
      return;
    }
    known = found;
    if (!tried()) plain = found.figures;
    chosen.frequency = Math.min(
      chosen.frequency || Math.floor(found.frequency_hz.length / 2),
      found.frequency_hz.length - 1,
    );
    drawControls();
    drawSide();
    await show();
  };
  const drawControls = () => {
    if (!known) return;
    const f = known.frequency_hz,
      said = h("strong", { class: "mono" }, ghz(f[chosen.frequency]));
    fill(
      controls,
      h(
        "div",
        { class: "tabs", attrs: { role: "tablist" } },
        ...["Cuts", "Map", "3D", "Aperture", "Impulse", "Recipe", "Findings", "Coordinates", "Report"].map((name) =>
          h(
            "button",
            {
              on: {
                click: () => {
                  tab = name;
                  drawControls();
                  void show();
                },
              },
              attrs: { type: "button", role: "tab", "aria-selected": String(tab === name) },
            },
            name,
          ),
        ),
      ),
      h(
        "div",
        { class: "row" },
        f.length > 1 &&
          slider("frequency", 0, f.length - 1, 1, chosen.frequency, (i) => {
            chosen.frequency = i;
            fill(said, ghz(f[i]));
            drawSide();
            soon();
          }),
        said,
        known.states.length > 1 &&
          choice(
            "state",
            known.states.map((s) => [s, s]),
            chosen.state ?? known.states[0],
            (s) => void open(chosen.run, s, chosen.off, chosen.gate),
          ),
        ["Cuts", "Map", "3D"].includes(tab) &&
          choice("components", BASES, chosen.basis, (b) => {
            chosen.basis = b as typeof chosen.basis;
            soon();
          }),
      ),
    );
  };
  const soon = rested(() => void show(), 80);
  const show = async () => {
    const mine = ++asked,
      draw = views[tab];
    const content = await draw();
    if (mine === asked && content) fill(place, ...content);
    if (mine === asked) after.splice(0).forEach((action) => action());
  };
  const after: (() => void)[] = [];

  const views: Record<string, () => Promise<Node[] | undefined>> = {
    Cuts: async () => {
      const ask = { ...body(), frequency: chosen.frequency, plane_deg: chosen.plane, basis: chosen.basis };
      const cut = await trying(post("/api/cut", ask));
      if (!cut) return undefined;
      const c = lines(),
        series: Line[] = [
          { name: cut.names[0], values: cut.first, colour: c.co },
          { name: cut.names[1], values: cut.second, colour: c.cross, dash: [6, 3] },
        ];
      const masks = known?.specification && !tried() ? await trying(post("/api/masks", ask)) : [];
      for (const mask of masks ?? [])
        series.push({ name: `mask: ${mask.name}`, values: mask.level, colour: c.ink, width: 1.2 });
      const told: Node[] = [],
        colours = [c.other, c.good, c.quiet, c.bad, c.focus];
      for (const [i, name] of chosen.beside.entries()) {
        const other = await trying(post("/api/cut", { ...ask, run: name, state: null, off: [], gate_ns: null }));
        if (other)
          series.push({ name: `${name}: ${other.names[0]}`, values: other.first, colour: colours[i % colours.length] });
      }
      if (chosen.difference && chosen.beside.length) {
        const rest = await trying(post("/api/difference", { ...ask, off: [], gate_ns: null, other: chosen.beside[0] }));
        if (rest) {
          series.push({
            name: `difference to ${chosen.beside[0]}, matched`,
            values: rest.total,
            colour: c.quiet,
            width: 1.1,
          });
          told.push(
            h(
              "p",
              { class: "small" },
              `${chosen.beside[0]} was turned by ${rest.rotation_deg.map((v) => number(v, 3)).join(", ")}\u00b0, moved by ${rest.shift_mm.map((v) => number(v, 3)).join(", ")} mm and raised by ${number(rest.level_db, 3)} dB; what is left is ${number(rest.difference_db, 1)} dB below the peak (rms).`,
            ),
          );
        }
      }
      const chart = new LineChart(),
        round = h("canvas", { class: "map", attrs: { role: "img", "aria-label": "polar cut" } });
      const top = Math.ceil(cut.peak_dbi / 5) * 5;
      const readings = h("div");
      const draw = () => {
        const nearest = (at: number) =>
          cut.angle_deg.reduce((best, a, i) => (Math.abs(a - at) < Math.abs(cut.angle_deg[best] - at) ? i : best), 0);
        const width: Mark[] =
          cut.edges_deg[0] !== null && cut.edges_deg[1] !== null
            ? [{ at: cut.edges_deg[0], to: cut.edges_deg[1], colour: c.co, text: "half power" }]
            : [];
        const marks = [...width, ...chosen.marks.map((at, i): Mark => ({ at, colour: c.ink, text: `${i + 1}` }))];
        const pick = (at: number) => {
          chosen.marks = [...chosen.marks, cut.angle_deg[nearest(at)]].slice(-4);
          draw();
        };
        if (chosen.round) polar(round, cut.angle_deg, series, top, RANGE + 10);
        else
          chart.draw(cut.angle_deg, series, {
            x: "angle from the peak / deg",
            y: "gain / dBi",
            height: 380,
            range: [top - RANGE - 10, top + 2],
            xRange: [-180, 180],
            marks,
            picked: pick,
          });
        const at = h("input", {
          attrs: { type: "number", min: -180, max: 180, step: 0.5, value: "0", "aria-label": "marker at / deg" },
        });
        const first = chosen.marks.length ? nearest(chosen.marks[0]) : 0;
        fill(
          readings,
          h(
            "div",
            { class: "row small" },
            "marker at",
            at,
            "deg",
            button("set", () => pick(Number(at.value))),
            ...(chosen.marks.length
              ? [
                  button("clear", () => {
                    chosen.marks = [];
                    draw();
                  }),
                ]
              : []),
            h("span", { class: "quiet" }, "or click in the chart; four at most"),
          ),
          chosen.marks.length
            ? table(
                ["marker", "angle", ...series.map((s) => s.name), "first trace, from marker 1"],
                chosen.marks.map((mark, i) => {
                  const k = nearest(mark),
                    a = series[0].values[k],
                    b = series[0].values[first];
                  return [
                    `${i + 1}`,
                    `${number(mark, 1)}°`,
                    ...series.map((s) => number(s.values[k], 2)),
                    i && a !== null && b !== null
                      ? `${number(mark - chosen.marks[0], 1)}°, ${number(a - b, 2)} dB`
                      : "",
                  ];
                }),
              )
            : null,
        );
      };
      after.push(draw);
      return [
        h(
          "div",
          { class: "row" },
          slider(
            "plane, from E towards H",
            0,
            175,
            5,
            chosen.plane,
            (v) => {
              chosen.plane = v;
              soon();
            },
            "°",
          ),
          button("E", () => {
            chosen.plane = 0;
            soon();
          }),
          button("H", () => {
            chosen.plane = 90;
            soon();
          }),
          button(chosen.round ? "rectangular" : "polar", () => {
            chosen.round = !chosen.round;
            void show();
          }),
          ...besides(),
        ),
        chosen.round ? round : chart.element,
        readings,
        ...told,
        table(
          ["peak / dBi", "at theta, phi", "half-power beamwidth", "first side lobe", "first null"],
          [
            [
              number(cut.peak_dbi, 2),
              `${number(cut.peak_theta_deg, 1)}°, ${number(cut.peak_phi_deg, 1)}°`,
              `${number(cut.beamwidth_deg, 2)}° (${number(cut.edges_deg[0], 1)}° to ${number(cut.edges_deg[1], 1)}°)`,
              `${number(cut.side_lobe_db, 1)} dB`,
              `${number(cut.null_db, 1)} dB`,
            ],
          ],
        ),
        h("p", { class: "small quiet" }, "Drag in the chart to enlarge, double-click for all of it."),
      ];
    },
    Map: async () => {
      const found = await grid();
      if (!found) return undefined;
      const map = new LevelMap("levels over all directions"),
        top = Math.max(...found.level.filter((v): v is number => v !== null));
      after.push(() =>
        map.draw(found.rows, found.columns, found.level, {
          rowName: found.row_name.replace("_deg", " / deg"),
          columnName: found.column_name.replace("_deg", " / deg"),
          low: top - RANGE,
          high: top,
          unit: "dBi",
          flip: !found.row_name.startsWith("theta"),
          square: chosen.coordinates === "u-v",
        }),
      );
      return [
        h(
          "div",
          { class: "row" },
          choice("coordinates", COORDINATES, chosen.coordinates, (v) => {
            chosen.coordinates = v as typeof chosen.coordinates;
            soon();
          }),
          component(found.names),
        ),
        map.element,
        h("p", { class: "small mono" }, found.formula),
      ];
    },
    "3D": async () => {
      chosen.coordinates = "theta-phi";
      const found = await grid();
      if (!found) return undefined;
      const view = new Surface(),
        d: number[] = [],
        top = Math.max(...found.level.filter((v): v is number => v !== null));
      for (const t of found.rows)
        for (const p of found.columns)
          d.push(Math.sin(rad(t)) * Math.cos(rad(p)), Math.sin(rad(t)) * Math.sin(rad(p)), Math.cos(rad(t)));
      after.push(() => {
        view.shape(found.rows.length, found.columns.length, d, false);
        view.level(
          found.level.map((v) => (v === null ? null : v - top)),
          -RANGE,
        );
      });
      view.note.textContent = `level outwards and in colour, ${RANGE} dB from the middle to the peak; x orange, y grey, z blue (boresight)`;
      return [h("div", { class: "row" }, component(found.names)), view.element];
    },
    Aperture: async () => {
      const face = await trying(post("/api/aperture", { ...body(), frequency: chosen.frequency }));
      if (face === undefined) return undefined;
      if (face === null)
        return [h("p", {}, "device.toml declares no [elements]: then there is no face to draw the waves back to.")];
      const size = new LevelMap("amplitude on the face"),
        turn = new LevelMap("phase on the face"),
        grid8 = h("canvas", { class: "map", attrs: { role: "img", "aria-label": "excitation of every element" } });
      after.push(() => {
        const names = { rowName: "y / mm", columnName: "x / mm", flip: true, square: true };
        size.draw(face.y_mm, face.x_mm, face.level_db, { ...names, low: -25, high: 0, unit: "dB" });
        turn.draw(face.y_mm, face.x_mm, face.phase_deg, { ...names, low: -180, high: 180, unit: "deg", ramp: phases });
        elements(grid8, face.elements, face.excitation_db);
      });
      return [
        h(
          "div",
          { class: "columns pair" },
          h("div", {}, h("h3", {}, "Amplitude"), size.element),
          h("div", {}, h("h3", {}, "Phase"), turn.element),
        ),
        h("h3", {}, "Excitation of every element"),
        grid8,
        ...(face.suspects.length
          ? face.suspects.map((s) => h("p", { class: "bad" }, s))
          : [h("p", {}, "No element stands out.")]),
      ];
    },
    Impulse: async () => {
      const found = await trying(post("/api/impulse", one()));
      if (!found) return undefined;
      const chart = new LineChart(),
        [least, most] = found.widths_ns,
        fine = (v: number) => Math.round(100 * v) / 100;
      let centre = fine(chosen.gate?.[0] ?? found.strongest_ns),
        width = fine(chosen.gate?.[1] ?? Math.max(least, 0.5 * most));
      const draw = () => {
        const c = lines(),
          marks: Mark[] =
            most > 0
              ? [
                  {
                    at: centre - width / 2,
                    to: centre + width / 2,
                    colour: c.cross,
                    text: chosen.gate ? "gate, tried" : "gate",
                  },
                ]
              : [];
        chart.draw(found.time_ns, [{ name: "strongest tie", values: found.level_db, colour: c.co }], {
          x: "time / ns",
          y: "level / dB",
          height: 340,
          range: [-70, 3],
          marks,
          picked: (at) => {
            centre = fine(at);
            void show();
          },
        });
      };
      after.push(draw);
      const note = h(
        "p",
        { class: "small quiet" },
        "Impulse response of the strongest tie, Hann window. A gate tried here changes every view and figure of this page and nothing on disk; recipe.toml keeps one.",
      );
      if (most <= 0)
        return [chart.element, note, h("p", { class: "small quiet" }, "A gate needs five frequencies or more.")];
      const step = fine((most - least) / 200) || 0.01,
        top = Math.floor(most / step) * step;
      return [
        chart.element,
        h(
          "div",
          { class: "row" },
          slider(
            "gate, middle",
            0,
            fine(found.time_ns[found.time_ns.length - 1]),
            step,
            centre,
            (v) => {
              centre = v;
              draw();
            },
            " ns",
          ),
          slider(
            "gate, width",
            Math.ceil(least / step) * step,
            top,
            step,
            width,
            (v) => {
              width = v;
              draw();
            },
            " ns",
          ),
          button("try this gate", () => void open(chosen.run, chosen.state, chosen.off, [centre, width]), "main"),
          ...(chosen.gate ? [button("no gate", () => void open(chosen.run, chosen.state, chosen.off, null))] : []),
        ),
        h(
          "p",
          { class: "small" },
          `${fine(least)} ns is the narrowest that the span resolves, ${fine(most)} ns the widest before echoes repeat.`,
        ),
        note,
      ];
    },
    Recipe: async () => {
      if (!known) return undefined;
      const boxes = known.steps.map((step) =>
        h(
          "label",
          { class: "row" },
          h("input", {
            attrs: { type: "checkbox", checked: step.on, disabled: !step.may_change },
            on: {
              change: () =>
                void open(
                  chosen.run,
                  chosen.state,
                  step.on ? [...chosen.off, step.name] : chosen.off.filter((n) => n !== step.name),
                  chosen.gate,
                ),
            },
          }),
          step.name,
        ),
      );
      const room = h("div"),
        all = button(
          "what does every step do?",
          () =>
            void (async () => {
              all.disabled = true;
              fill(room, h("p", { class: "quiet" }, "The run is processed once without each step."));
              const found = await trying(finished("/api/effects", one()));
              all.disabled = false;
              if (!found) {
                fill(room);
                return;
              }
              const steps = Object.keys(found.without);
              fill(
                room,
                h(
                  "div",
                  { class: "scroll" },
                  table(
                    ["figure", "all steps", ...steps.map((s) => `without ${s}`)],
                    Object.keys(found.whole).map((name) => [
                      found.labels[name],
                      number(found.whole[name], 3),
                      ...steps.map((s) => {
                        const a = found.without[s][name],
                          b = found.whole[name];
                        return a === null || b === null ? "-" : `${a - b >= 0 ? "+" : ""}${(a - b).toFixed(3)}`;
                      }),
                    ]),
                  ),
                ),
              );
            })(),
        );
      return [
        h("p", {}, "Switch a step off and every view and figure follows. The record itself is never changed."),
        h("div", {}, ...boxes),
        all,
        room,
      ];
    },
    Findings: async () => {
      fill(place, h("p", { class: "quiet" }, "The data are asked what is wrong with them."));
      const found = await trying(post("/api/findings", one()));
      return (
        found && [
          table(
            ["what", "field / dB re peak", "in words"],
            found.map((f) => [f.topic, f.level_db <= -199 ? "" : number(f.level_db, 1), f.text]),
          ),
        ]
      );
    },
    Coordinates: async () => [tutor().element],
    Report: async () => {
      const room = h("div", { class: "row" }),
        links = () =>
          fill(
            room,
            ...["html", "pdf"].map((kind) =>
              h(
                "a",
                {
                  attrs: {
                    href: `/api/report/${session.campaign}/${chosen.run}/${kind}${chosen.state === null ? "" : `?state=${encodeURIComponent(chosen.state)}`}`,
                    target: "_blank",
                    rel: "noopener",
                  },
                },
                `open the report (${kind})`,
              ),
            ),
          );
      if (known?.report) links();
      const write = button(
        "write the report",
        () =>
          void (async () => {
            write.disabled = true;
            fill(room, h("p", { class: "quiet" }, "Figures, budgets and pages; this takes up to a minute."));
            const done = await trying(finished("/api/report", one()));
            write.disabled = false;
            if (done) {
              links();
              const again = await trying(post("/api/overview", body()));
              if (again) {
                known = again;
                drawSide();
              }
            } else fill(room);
          })(),
        "main",
      );
      write.disabled = !may("operate");
      return [
        h(
          "p",
          {},
          known?.specification
            ? "With a verdict against limits.toml on its first page."
            : "Without a verdict: there is no limits.toml beside the campaign.",
        ),
        write,
        room,
      ];
    },
  };
  const besides = (): Node[] => {
    const others = runs.filter((r) => r.record && r.name !== chosen.run);
    const tick = (label: string, on: boolean, action: (on: boolean) => void) =>
      h(
        "label",
        { class: "row small" },
        h("input", {
          attrs: { type: "checkbox", checked: on },
          on: {
            change: (event) => {
              action((event.target as HTMLInputElement).checked);
              soon();
            },
          },
        }),
        label,
      );
    const boxes = others.map((r) =>
      tick(r.name, chosen.beside.includes(r.name), (on) => {
        chosen.beside = on ? [...chosen.beside, r.name].slice(-5) : chosen.beside.filter((n) => n !== r.name);
      }),
    );
    if (!others.length) return [];
    return [
      h("span", { class: "small quiet" }, "beside:"),
      ...boxes,
      ...(chosen.beside.length
        ? [
            tick("difference of the fields", chosen.difference, (on) => {
              chosen.difference = on;
            }),
          ]
        : []),
    ];
  };
  const grid = () =>
    trying(
      post("/api/map", {
        ...body(),
        frequency: chosen.frequency,
        coordinates: chosen.coordinates,
        basis: chosen.basis,
        component: chosen.component,
      }),
    );
  const component = (names: string[]) =>
    choice(
      "shown",
      [
        ["total", "total"],
        ["first", names[0]],
        ["second", names[1]],
      ],
      chosen.component,
      (v) => {
        chosen.component = v as typeof chosen.component;
        soon();
      },
    );
  const drawSide = () => {
    if (!known) return;
    const trial = tried();
    const change = (x: Figure) => {
      const was = plain.find((one) => one.name === x.name && Math.abs(one.frequency_hz - x.frequency_hz) < 1)?.value;
      return was === null || was === undefined || x.value === null
        ? ""
        : `${x.value >= was ? "+" : ""}${number(x.value - was, 3)}`;
    };
    const f = known.frequency_hz[chosen.frequency],
      here = known.figures.filter((x) => Math.abs(x.frequency_hz - f) < 1);
    const evaluate = button(
      "with intervals",
      () =>
        void (async () => {
          evaluate.disabled = true;
          if ((await trying(finished("/api/evaluate", one()))) !== undefined) {
            const again = await trying(post("/api/overview", body()));
            if (again) {
              known = again;
              drawSide();
            }
          }
          evaluate.disabled = false;
        })(),
      "",
      "evaluate every figure with its uncertainty",
    );
    evaluate.disabled = !may("operate") || trial;
    fill(
      side,
      h(
        "div",
        { class: "row" },
        h("h2", {}, `Figures at ${ghz(f)}`),
        h("span", { class: "spring" }),
        here.some((x) => x.lower !== null) ? null : evaluate,
      ),
      known.demo ? h("p", { class: "small quiet" }, "Simulated chamber, invented device: demo data.") : null,
      trial
        ? h(
            "p",
            { class: "small bad" },
            [
              chosen.off.length ? `without ${chosen.off.join(", ")}` : "",
              chosen.gate ? `gate ${number(chosen.gate[1], 2)} ns about ${number(chosen.gate[0], 2)} ns` : "",
            ]
              .filter(Boolean)
              .join("; "),
          )
        : null,
      h(
        "div",
        { class: "scroll" },
        table(
          ["figure", "value", trial ? "change" : "95 % interval"],
          here.map((x) => [
            h("span", { attrs: { title: x.definition } }, x.label),
            `${x.text} ${x.unit}`,
            trial ? change(x) : x.lower === null ? "" : `${number(x.lower, 2)} to ${number(x.upper, 2)}`,
          ]),
          "figures",
        ),
      ),
    );
  };
  void (async () => {
    const all = await trying(get("/api/campaigns"));
    runs = all?.find((c) => c.id === session.campaign)?.runs ?? [];
    fill(list, ...runs.map((run) => thumbnail(run, () => void open(run.name))));
    if (!runs.length) fill(list, h("p", { class: "quiet" }, "No runs yet. Scan makes them; so does colure acquire."));
    const first = runs.find((r) => r.record);
    if (first) await open(first.name);
  })();
  const element = h(
    "main",
    {},
    h(
      "div",
      { class: "columns explore" },
      h("section", { attrs: { "aria-label": "runs" } }, h("h2", {}, "Runs"), list),
      h("section", { class: "card" }, faults, controls, place),
      h("section", { class: "card" }, side),
    ),
  );
  return {
    title: "Explore",
    element,
    leave: () => {
      asked++;
    },
  };
}

function thumbnail(run: Run, open: () => void): HTMLButtonElement {
  const picture = h("canvas", { attrs: { width: 48, height: 24 } }),
    pen = picture.getContext("2d")!;
  if (run.thumb) {
    const pixels = pen.createImageData(48, 24);
    run.thumb.forEach((v, i) => {
      for (let c = 0; c < 3; c++) pixels.data[4 * i + c] = levels[3 * v + c];
      pixels.data[4 * i + 3] = 255;
    });
    pen.putImageData(pixels, 0, 0);
  }
  const one = h(
    "button",
    {
      on: { click: open },
      attrs: { type: "button", "data-run": run.name, "aria-pressed": "false", disabled: !run.record },
    },
    run.thumb ? picture : null,
    h("strong", {}, run.name),
    h(
      "div",
      { class: "small quiet" },
      run.record ? new Date(1000 * run.changed).toLocaleString() : "not sealed yet: go on with it under Scan",
    ),
  );
  return one;
}

function elements(canvas: HTMLCanvasElement, places: number[][], db: number[]): void {
  const width = Math.min(340, canvas.clientWidth || 340),
    scale = window.devicePixelRatio || 1;
  canvas.style.width = `${width}px`;
  canvas.style.height = `${width}px`;
  canvas.width = width * scale;
  canvas.height = width * scale;
  const g = canvas.getContext("2d")!,
    xs = places.map((p) => p[0]),
    ys = places.map((p) => p[1]);
  g.scale(scale, scale);
  const low = Math.min(...xs, ...ys),
    high = Math.max(...xs, ...ys),
    pitch = (high - low) / Math.max(1, Math.round(Math.sqrt(places.length)) - 1);
  const to = (v: number) => ((v - low + pitch / 2) / (high - low + pitch)) * width,
    cell = (pitch / (high - low + pitch)) * width;
  g.font = "11px system-ui";
  g.textAlign = "center";
  g.textBaseline = "middle";
  places.forEach(([x, y], i) => {
    const s = 3 * Math.max(0, shade(db[i], -15, 0));
    g.fillStyle = `rgb(${levels[s]} ${levels[s + 1]} ${levels[s + 2]})`;
    g.fillRect(to(x) - cell / 2 + 1, width - to(y) - cell / 2 + 1, cell - 2, cell - 2);
    g.fillStyle = db[i] > -7 ? "#12191f" : "#ffffff";
    g.fillText(db[i].toFixed(1), to(x), width - to(y));
  });
}

function ghz(f: number): string {
  return `${(f / 1e9).toFixed(3)} GHz`;
}
function rad(deg: number): number {
  return (deg * Math.PI) / 180;
}
