/** Align: a checklist from talking to the instruments to what to turn and shift, with one picture of the range. */

import { button, fill, h, table } from "../draw/dom";
import { busy, live, type Status } from "../live/live";
import { get, post } from "../request/server";
import type { Checked, FlipWords } from "../request/types";
import { startDialog, type Kind } from "../scan/start";
import { dialog } from "../shell/dialog";
import type { Page, View } from "../shell/page";
import { Panel } from "../shell/panel";
import { may, session, words } from "../shell/session";
import { HandPanel } from "./byhand";
import { AlignScreen } from "./screen";

type Step = { key: string; words: string; panel: Panel; state: string };

export function alignPage(view: View): Page {
  const talk = new Panel("Instruments", "card step"),
    level = new Panel("Level, laser or pointer", "card step"),
    flip = new Panel("Flip test", "card step"),
    beam = new Panel("Beam search", "card step"),
    rest = new Panel("What only a scan shows", "card step");
  const screen = new AlignScreen();
  const hand = new HandPanel((db) => {
    screen.reading(db);
    tick("sweep", `${db.toFixed(1)} dB`);
  }, (pose) => {
    view.chamber.follow(pose.angles_deg, pose.axes, pose.joints);
    screen.pose(pose.joints);
    fill(view.stage.caption, "The chamber as chamber.toml declares it, axes as read by hand.");
  }); // prettier-ignore
  const list = h("ol", { class: "checklist" });
  const campaign = session.campaign;
  /** What this page still asks for when it is left, nobody waits for. */
  const gone = new AbortController();
  const steps: Step[] = [
    { key: "talk", words: "Instruments answer", panel: talk, state: "" },
    { key: "hand", words: "Axes move as told", panel: hand.panel, state: "" },
    { key: "sweep", words: "A signal is there", panel: hand.sweepPanel, state: "" },
    { key: "level", words: "Levelled by other means", panel: level, state: "" },
    { key: "flip", words: "Flip test", panel: flip, state: "" },
    { key: "beam", words: "Beam found", panel: beam, state: "" },
    { key: "rest", words: "Taken out of the data", panel: rest, state: "" },
  ];
  const tick = (key: string, state: string) => {
    const one = steps.find((s) => s.key === key)!;
    if (one.state === state) return;
    one.state = state;
    drawList();
  };
  const drawList = () =>
    fill(list, ...steps.map((one) => h("li", { class: one.state ? "ticked" : "" }, h("button", { attrs: { type: "button" }, on: { click: () => one.panel.element.scrollIntoView({ block: "start" }) } }, one.words, one.state && h("span", { class: "small quiet" }, one.state))))); // prettier-ignore
  const showChecked = (found: Checked) => {
    if (!found.at)
      return [h("p", { class: "quiet" }, "Not asked since the server began. Nothing moves when they are.")];
    const when = new Date(1000 * found.at).toLocaleString();
    talk.subject.textContent = `asked ${when}`;
    tick(
      "talk",
      found.lines.every((l) => l.good)
        ? `ready, ${new Date(1000 * found.at).toLocaleString([], { dateStyle: "short", timeStyle: "short" })}`
        : "",
    );
    return [
      table(
        ["what", "state", "found"],
        found.lines.map((l) => [
          l.what,
          h("span", { class: l.good ? "good" : "bad" }, l.good ? "ready" : "not ready"),
          l.found,
        ]),
      ),
    ];
  };
  const check = button(
    "talk to every instrument",
    () => {
      check.disabled = true;
      void talk
        .ask({ key: "talk", words: "" }, () => post("/api/check", { campaign }), showChecked, {
          waiting: "The instruments are asked; nothing moves.",
        })
        .finally(() => (check.disabled = !may("operate")));
    },
    "main",
  );
  check.disabled = !may("operate");
  talk.tools.append(check);
  void talk.ask(
    { key: "talk", words: "" },
    (signal) => get("/api/checked/{campaign}", [campaign], signal),
    showChecked,
  );
  level.show(
    { key: "", words: "" },
    h(
      "p",
      {},
      "Set the roll axis level, and the probe on its line, with the means you have. The readings go into chamber.toml under [alignment] with their uncertainty; they count as what was known beforehand.",
    ),
    h("p", { class: "small" }, "Alignment lasers: class 2 or lower, never towards eyes, off before the run."),
  );
  rest.show(
    { key: "", words: "" },
    h(
      "p",
      {},
      "Whole spheres find the remaining misalignments by themselves: tilt of the roll axis, both offsets, the probe's roll. They are taken out of the data, and listed in the run's findings with what to turn.",
    ),
  );

  const starts: HTMLButtonElement[] = [];
  const start = (label: string, run: () => string, kind: Kind, panel: Panel, title: string) => {
    const one = button(label, () => void startDialog(run(), (e) => panel.fault(e), kind), "main", title);
    starts.push(one);
    return one;
  };
  const name = (value: string, label: string) =>
    h("input", { attrs: { value, pattern: "[A-Za-z0-9_-]{1,70}", "aria-label": label } });
  const flipName = name("flip", "name of the flip test's run"),
    beamName = name("beam", "name of the beam search");
  const flipFound = h("div", {}),
    beamFound = h("div", {}),
    flipNow = h("p", { class: "quiet small" }),
    beamNow = h("p", { class: "quiet small" });
  const readFlip = async () => {
    const run = flipName.value;
    try {
      const found: FlipWords = await post("/api/flip", { campaign, run });
      fill(flipFound, ...found.sentences.map((s) => h("p", {}, s)));
      fill(flip.faults);
      fill(flip.subject, `run ${run}`);
      screen.flip(found);
      tick("flip", `run ${run}`);
    } catch (error) {
      fill(flipFound);
      flip.fault(error);
    }
  };
  const readBeam = async () => {
    const run = beamName.value;
    try {
      const found = await post("/api/beam", { campaign, run });
      const home = button(
          "set as home",
          () => void keep(run, "home"),
          "",
          "home_deg in chamber.toml: all to home then turns the beam to the probe",
        ),
        zeros = button("take as zeros", () => asZeros(run), "", "zero_deg in chamber.toml: every angle changes");
      for (const one of [home, zeros]) one.disabled = !may("configure");
      fill(
        beamFound,
        ...found.sentences.map((s) => h("p", {}, s)),
        found.beam_deg && h("div", { class: "row" }, home, tells && zeros),
      );
      fill(beam.faults);
      fill(beam.subject, `run ${run}`);
      screen.found(found);
      if (found.beam_deg) tick("beam", `run ${run}`);
    } catch (error) {
      fill(beamFound);
      beam.fault(error);
    }
  };
  /** The flip tests that are on disk already: the last two are the picture's before and after. */
  const earlier = async () => {
    try {
      const all = await get("/api/campaigns", [], gone.signal),
        runs = all.find((c) => c.id === campaign)?.runs ?? [];
      const flips = runs.filter((one) => one.record && /^flip/.test(one.name)).slice(0, 2);
      for (const one of flips.reverse())
        screen.flip(await post("/api/flip", { campaign, run: one.name }, gone.signal), false);
      if (flips.length) tick("flip", `run ${flips[flips.length - 1].name}`);
    } catch {
      // Another kind of run by that name: nothing is drawn of it.
    }
  };
  const asZeros = (run: string) =>
    dialog("Take the beam's readouts as the zeros of both axes?", (close) => [
      h("p", {}, "Only where the beam is known to leave the device straight: then what was found is an error of the zeros. A beam that leans on its device is none; with zeros set to it, directions away from the zero come out wrong."),
      h("p", { class: "small" }, "zero_deg of both axes in chamber.toml changes; the file as it was stays beside it."),
      h("div", { class: "row" }, button("back", close), h("span", { class: "spring" }), button("take as zeros", () => {
        close();
        void keep(run, "zeros");
      }, "main")),
    ]); // prettier-ignore
  const keep = async (run: string, into: "home" | "zeros") => {
    try {
      fill(beamNow, (await post("/api/home", { campaign, run, into })).join("; "));
      fill(beam.faults);
    } catch (error) {
      fill(beam.faults, h("p", {}, words(error)));
    }
  };
  const flipStart = start("measure both sides", () => flipName.value, "flip", flip, "needs the motion lease");
  flip.show(
    { key: "", words: "" },
    h(
      "p",
      {},
      "One cut from both sides: theta, and -theta with the roll at 180°. A device cannot tell them apart. What differs is the range: a zero that is off, or axes that miss each other. It takes a few minutes.",
    ),
    h(
      "div",
      { class: "row" },
      h("label", { class: "row" }, "run", flipName),
      flipStart,
      button("read a finished one", () => void readFlip()),
    ),
    flipNow,
    flipFound,
  );
  beam.show(
    { key: "", words: "" },
    h(
      "p",
      {},
      "Steps of half a beam over the front, then a fine look where it was strongest. So you know where the beam is before hours are spent.",
    ),
    h(
      "div",
      { class: "row" },
      h("label", { class: "row" }, "run", beamName),
      start("look coarsely", () => beamName.value, "beam-coarse", beam, "needs the motion lease"),
      start("look finely", () => beamName.value, "beam-fine", beam, "needs the motion lease, and a coarse look"),
      button("read a finished one", () => void readBeam()),
    ),
    beamNow,
    beamFound,
  );
  let was = false,
    rolls = true,
    /** A beam's direction tells both zeros of two axes that cross; not those of joints, nor of a roll about the boresight. */
    tells = false;
  const looking = (s: Status) => s.running && s.campaign === campaign && (s.kind ?? "").startsWith("beam");
  const stopWatching = live.watch({
    frame: (f) => {
      if (live.grid && looking(live.status)) screen.look(live.status.run ?? "", live.grid, f);
    },
    status: (s: Status) => {
      const done = was && !s.running && s.state === "done" && s.campaign === campaign,
        at = `${s.state}: ${s.measured ?? 0} of ${s.total ?? 0} points of ${s.run ?? ""}`;
      if (s.kind === "flip" && s.running) fill(flipNow, at);
      if (s.kind?.startsWith("beam") && s.running)
        fill(beamNow, `${s.kind === "beam-coarse" ? "coarse" : "fine"} look, ${at}`);
      if (done && s.kind === "flip") void readFlip();
      if (done && s.kind === "beam-coarse") {
        fill(beamNow, "The coarse look is done; the fine one goes where it was strongest.");
        void readBeam();
      }
      if (done && s.kind === "beam-fine") void readBeam();
      was = s.running;
      for (const one of starts) one.disabled = busy(s) || session.me?.mine !== true || (one === flipStart && !rolls);
      screen.status(s);
      if (s.axes && s.angles_deg?.length) view.chamber.turnTo(s.angles_deg, s.axes, s.joints);
      screen.pose(s.joints ?? []);
    },
  });
  post("/api/motion", { campaign }, gone.signal).then(
    (m) => {
      view.chamber.build(m);
      fill(
        view.stage.caption,
        `The chamber as chamber.toml declares it, ${live.status.angles_deg?.length ? "axes as last told" : "all axes drawn at zero"}.`,
      );
      rolls = m.geometry === "roll-over-azimuth" && !m.mount;
      tells = !rolls && !m.mount;
      screen.positioner(rolls, m.mount && { ...m, mount: m.mount });
      if (rolls) return;
      flipStart.disabled = true;
      fill(
        flipNow,
        m.mount
          ? "A mount that is described by its joints has no flip test: a whole sphere shows what is misaligned."
          : "This positioner has no roll axis: the beam search finds what both axes read on the beam.",
      );
    },
    (e: unknown) => {
      if (gone.signal.aborted) return;
      talk.fault(e);
      screen.unread();
      fill(view.stage.caption, "The chamber could not be read.");
    },
  );
  void earlier();
  // No page's pose stays for the next one: until axes are read they stand at zero here, and that is said with the chamber.
  if (!live.status.angles_deg?.length) view.chamber.rest();
  fill(view.stage.caption, "The chamber is being read.");
  drawList();
  const element = h(
    "div",
    { class: "page align-page" },
    h("nav", { class: "card steps", attrs: { "aria-label": "steps" } }, list),
    h("div", { class: "align-steps" }, screen.panel.element, ...steps.map((one) => one.panel.element)),
  );
  return {
    title: "Align",
    element,
    leave: () => {
      stopWatching();
      gone.abort();
      hand.leave();
      screen.panel.leave();
      for (const one of [talk, flip, beam]) one.leave();
    },
  };
}
