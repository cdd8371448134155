/** Axes by hand: where they are, jog, go to a direction, home, and one live sweep. Stop brakes every move. */

import { Chart, type Line } from "../draw/chart";
import { lines } from "../draw/colours";
import { button, fill, h, table } from "../draw/dom";
import { busy, live } from "../live/live";
import { post } from "../request/server";
import type { ByHand, Limits, Pose } from "../request/types";
import { dialog } from "../shell/dialog";
import { Panel } from "../shell/panel";
import { may, session, words } from "../shell/session";
import { thetaPhi } from "../scene/angles";
import { cursor } from "../shell/cursor";

/** What stands behind a readout: degrees, or millimetres of a prismatic joint. */
const unit = (axis: Limits): string => (axis.unit === "mm" ? " mm" : "°");

/** What a move takes with it: no axis goes faster than the number in the field; an empty field leaves the chamber's speeds. */
export const atSpeed = (text: string): { speed_deg_s?: number } =>
  text.trim() === "" ? {} : { speed_deg_s: Number(text) };

const STEPS = [-10, -1, -0.1, 0.1, 1, 10];

export class HandPanel {
  readonly panel = new Panel("Axes by hand", "card step");
  readonly sweepPanel = new Panel("One sweep", "card step");
  private level = new Chart("level of one sweep");
  private impulse = new Chart("impulse response of one sweep");
  private last: ByHand | null = null;
  private buttons: HTMLButtonElement[] = [];
  private clear = h("input", { attrs: { type: "checkbox" }, on: { change: () => this.enable() } });
  private stopWatching: () => void;
  private speed = h("input", {
    attrs: {
      type: "number",
      min: 0.01,
      max: 1000,
      step: "any",
      placeholder: "declared",
      "aria-label": "no axis goes faster than this, degrees (millimetres) per second; empty: as the chamber declares",
    },
  });
  private again = h("input", { attrs: { type: "checkbox" } });
  private timer = 0;
  private before: (number | null)[][] = [];

  /** `read` hears the level of every sweep that is taken, dB; `stands` where the axes are whenever they were asked or moved. */
  constructor(
    private read: (db: number) => void,
    private stands: (pose: Pose) => void,
  ) {
    this.draw();
    const take = this.gated(
      button("take one sweep", () => this.sweep(), "main", "the source is on for one sweep; nothing moves"),
      false,
    );
    this.sweepPanel.tools.append(h("label", { class: "row small" }, this.again, "again and again"), take);
    this.sweepPanel.empty(
      "Level over frequency and impulse response, with the plan's settings. Nothing moves; the source is off afterwards.",
    );
    this.stopWatching = live.watch({ status: () => this.enable() });
  }

  leave(): void {
    this.stopWatching();
    this.again.checked = false;
    window.clearTimeout(this.timer);
    this.panel.leave();
    this.sweepPanel.leave();
  }

  private gated(one: HTMLButtonElement, needsClear = true): HTMLButtonElement {
    one.dataset["clear"] = String(needsClear);
    this.buttons.push(one);
    return one;
  }

  private enable(): void {
    const own = session.me?.mine === true && !busy(live.status);
    for (const one of this.buttons) one.disabled = !own || (one.dataset["clear"] === "true" && !this.clear.checked);
  }

  private run(words: string, question: () => Promise<ByHand>): void {
    void this.panel.ask({ key: "hand", words }, question, (found) => {
      this.last = found;
      if (found.pose) this.stands(found.pose);
      this.panel.subject.textContent = `${found.text}, ${new Date(1000 * found.at).toLocaleTimeString()}`;
      return this.content();
    }, { waiting: `${words}. STOP brakes.` }).then((found) => {
      if (!found) this.panel.body.append(...this.content());
      this.enable();
    }); // prettier-ignore
  }

  private draw(): void {
    this.panel.show({ key: "", words: "" }, ...this.content());
    this.enable();
  }

  private content(): Node[] {
    const campaign = session.campaign;
    this.buttons = this.buttons.filter((one) => one.isConnected && this.sweepPanel.element.contains(one));
    const where = button(
      "where are the axes?",
      () => this.run("the axes are asked", () => post("/api/where", { campaign })),
      "",
      "nothing moves",
    );
    where.disabled = !may("operate");
    const rows = (this.last?.axes ?? []).map((a) => {
      const target = h("input", {
        attrs: {
          type: "number",
          step: "any",
          value: a.readout_deg.toFixed(2),
          min: a.min_deg,
          max: a.max_deg,
          "aria-label": `${a.axis}: go to this readout, ${a.unit === "mm" ? "millimetres" : "degrees"}`,
        },
      });
      const to = (v: number) =>
        this.run(`${a.axis} to ${v.toFixed(2)}${unit(a)}`, () =>
          post("/api/move", { campaign, to_deg: { [a.axis]: v }, ...atSpeed(this.speed.value), clear: true }),
        );
      return [
        h("strong", {}, a.axis),
        h("span", { class: "mono" }, `${a.readout_deg.toFixed(3)}${unit(a)}`),
        h(
          "span",
          { class: "jogs" },
          ...STEPS.map((s) =>
            this.gated(
              button(
                `${s > 0 ? "+" : "−"}${Math.abs(s)}`,
                () => to(a.readout_deg + s),
                "tiny",
                `${a.axis}: by ${s} ${a.unit === "mm" ? "millimetres" : "degrees"}`,
              ),
            ),
          ),
        ),
        h("span", { class: "row" }, target, this.gated(button("go", () => to(Number(target.value)), "tiny"))),
        h(
          "span",
          { class: "mono small" },
          `${a.min_deg}${unit(a)} to ${a.max_deg}${unit(a)}, home ${a.home_deg}${unit(a)}, at most ${a.speed_deg_s}${unit(a)}/s`,
        ),
      ];
    });
    const at = cursor.at && thetaPhi(cursor.at);
    const theta = h("input", {
        attrs: {
          type: "number",
          min: 0,
          max: 180,
          step: "any",
          value: at ? at[0].toFixed(1) : "0",
          "aria-label": "theta to go to",
        },
      }),
      phi = h("input", {
        attrs: { type: "number", step: "any", value: at ? at[1].toFixed(1) : "0", "aria-label": "phi to go to" },
      });
    const goTo = this.gated(
      button("point there", () =>
        this.run("to a direction", () =>
          post("/api/point", {
            campaign,
            theta_deg: Number(theta.value),
            phi_deg: Number(phi.value),
            ...atSpeed(this.speed.value),
            clear: true,
          }),
        ),
      ),
    );
    const rest = this.gated(
      button("all to home", () =>
        this.run("to home", () =>
          post("/api/rest", { campaign, seek: false, ...atSpeed(this.speed.value), clear: true }),
        ),
      ),
    );
    const seek = this.gated(
      button("seek reference marks", () =>
        this.run("reference marks are sought", () => post("/api/rest", { campaign, seek: true, clear: true })),
      ),
    );
    const keep = button("make this home", () => this.keep(), "", "writes home_deg into chamber.toml");
    const zero = button(
      "make this zero",
      () => this.zero(),
      "",
      "writes zero_deg into chamber.toml: every angle changes",
    );
    for (const one of [keep, zero]) one.disabled = !may("configure") || !this.last?.axes.length;
    return [
      h(
        "div",
        { class: "row" },
        where,
        h("label", { class: "row small" }, this.clear, "the axes are free to move"),
        h("label", { class: "row small" }, "speed / deg/s", this.speed),
      ),
      rows.length
        ? h(
            "div",
            { class: "scroll-x" },
            table(
              [
                "axis",
                "readout",
                this.last!.axes.some((a) => a.unit === "mm") ? "by / deg or mm" : "by / deg",
                "to",
                "limits",
              ],
              rows,
              "axes",
            ),
          )
        : h("p", { class: "quiet small" }, "Moves need the motion lease and everyone clear."),
      h(
        "div",
        { class: "row" },
        h("label", { class: "row small" }, "theta", theta),
        h("label", { class: "row small" }, "phi", phi),
        goTo,
        rest,
        seek,
        keep,
        zero,
      ),
    ];
  }

  private keep(): void {
    const axes = this.last?.axes ?? [];
    dialog("Make these readouts the home of the axes?", (close) => [
      h("p", {}, axes.map((a) => `${a.axis} ${a.readout_deg.toFixed(3)}${unit(a)}`).join(", ")),
      h("p", { class: "small" }, "home_deg of each axis in chamber.toml changes; the file as it was stays beside it."),
      h("div", { class: "row" }, button("back", close), h("span", { class: "spring" }), button("make this home", () => {
        post("/api/set-rest", { campaign: session.campaign, home_deg: Object.fromEntries(axes.map((a) => [a.axis, a.readout_deg])) }).then(() => {
          for (const a of axes) a.home_deg = a.readout_deg;
          this.draw();
          close();
        }, (error: unknown) => {
          close();
          this.panel.fault(error);
        });
      }, "main")),
    ]); // prettier-ignore
  }

  /** Zeros are chosen axis by axis: one that was levelled says nothing of the others. */
  private zero(): void {
    const axes = this.last?.axes ?? [],
      faults = h("div", { class: "faults", attrs: { role: "alert" } }),
      boxes = axes.map((a) => ({ a, box: h("input", { attrs: { type: "checkbox" } }) }));
    dialog("Make these readouts the zeros of their axes?", (close) => {
      const write = button("write zeros", () => {
        const zero_deg = Object.fromEntries(boxes.filter((one) => one.box.checked).map(({ a }) => [a.axis, a.readout_deg]));
        post("/api/set-zero", { campaign: session.campaign, zero_deg }).then(() => {
          close();
          // Where the scene draws the axes depends on the zeros: they are asked anew.
          this.run("zeros written; the axes are asked", () => post("/api/where", { campaign: session.campaign }));
        }, (error: unknown) => fill(faults, h("p", {}, words(error))));
      }, "main"); // prettier-ignore
      const enable = () => (write.disabled = !boxes.some((one) => one.box.checked));
      for (const { box } of boxes) box.addEventListener("change", enable);
      enable();
      return [
        h("p", {}, "Only for an axis that stands at its zero now, as a level, a laser or a pointer shows. Every angle counts from there in later runs; limits and home stay."),
        ...boxes.map(({ a, box }) => h("label", { class: "row" }, box, `${a.axis} at ${a.readout_deg.toFixed(3)}${unit(a)}`)),
        h("p", { class: "small" }, "zero_deg (zero_mm) in chamber.toml changes; the file as it was stays beside it. Runs on disk keep the chamber they began with. How far a cable may turn counts from the zero too."),
        faults,
        h("div", { class: "row" }, button("back", close), h("span", { class: "spring" }), write),
      ]; // prettier-ignore
    });
  }

  private sweep(): void {
    const c = lines();
    void this.sweepPanel.ask({ key: "sweep|", words: "" }, () => post("/api/sweep", { campaign: session.campaign }), (found) => {
      this.sweepPanel.subject.textContent = new Date(1000 * found.at).toLocaleTimeString();
      const s = found.sweep;
      if (!s) return [h("p", {}, "No sweep came.")];
      const x = s.frequency_hz.map((f) => f / 1e9);
      const power = s.level_db[0].map((v) => 10 ** ((v ?? -200) / 10));
      this.read(10 * Math.log10(power.reduce((a, b) => a + b, 0) / power.length));
      const now: Line[] = s.level_db.map((values, i) => ({ name: `port ${i + 1}`, values, colour: i ? c.cross : c.co, points: x.length < 30 })),
        former: Line[] = this.before.map((values) => ({ name: "the sweep before", values, colour: c.quiet, dash: "4 3" }));
      this.before = [s.level_db[0]];
      if (this.again.checked) this.timer = window.setTimeout(() => session.me?.mine && this.again.checked && this.sweep(), 500);
      this.level.draw({ x, lines: [...now, ...former], xName: "frequency / GHz", yName: "S21 / dB", height: 220 });
      if (s.time_ns.length) this.impulse.draw({ x: s.time_ns, lines: [{ name: "port 1", values: s.impulse_db, colour: c.co }], xName: "time / ns", yName: "level / dB", yWhole: [-70, 5], height: 220, peakOf: 0 });
      return [this.level.element, s.time_ns.length ? this.impulse.element : h("p", { class: "quiet small" }, "An impulse response needs three frequencies or more.")];
    }, { keep: true }).then((found) => {
      if (!found) this.again.checked = false;
    }); // prettier-ignore
  }
}
