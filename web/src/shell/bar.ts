/** The bar that never leaves the window: run, share, time left, level and STOP; loud when the server does not answer. */

import { button, duration, fill, h, number } from "../draw/dom";
import { live, moving, type Status } from "../live/live";
import { post } from "../request/server";
import { words } from "./session";

const KINDS: Record<string, string> = {
  flip: "flip test",
  "beam-coarse": "coarse beam search",
  "beam-fine": "fine beam search",
};

/** States after which no axis is moved any more: a scan that is still at work then seals its record. */
const OVER = ["done", "stopped", "aborted", "faulted"];

/** How long a scan takes from now on, or that only its record is still written; empty where nobody knows or none runs. */
export function timeLeft(s: Status): string {
  if (!s.running) return "";
  if (OVER.includes(s.state)) return "the record is being written";
  return s.left_s === undefined ? "" : `${duration(s.left_s)} left`;
}

/** What a status says in the bar, as words. */
export function barWords(s: Status): { run: string; share: string; left: string; level: string } {
  if (s.hand) return { run: s.hand.text, share: "", left: "", level: "" };
  if (!s.run || !s.total) return { run: "no scan since the server began", share: "", left: "", level: "" };
  const part = (s.measured ?? 0) / s.total;
  const kind = s.kind && s.kind !== "scan" ? ` (${KINDS[s.kind] ?? s.kind})` : "";
  return {
    run: `${s.run}${kind}: ${s.state}`,
    share: `${(100 * part).toFixed(part < 0.1 ? 1 : 0)} %`,
    left: timeLeft(s) || `${s.measured} of ${s.total} points`,
    level: s.running && typeof s.level_db === "number" ? `${number(s.level_db, 1)} dB` : "",
  };
}

export function controlBar(): HTMLElement {
  const told = h("div", { class: "bar-told" }),
    done = h("i"),
    alarm = h("div", { class: "alarm", attrs: { role: "alert" } });
  let pressed = false,
    lostAt = 0;
  const press = async (): Promise<void> => {
    pressed = true;
    stop.classList.add("pressed");
    for (let tries = 0; pressed; tries++) {
      try {
        await post("/api/stop", {});
        pressed = false;
        fill(alarm);
      } catch (error) {
        fill(alarm, `STOP WAS NOT HEARD (${tries + 1} tries): ${words(error)} Use the emergency stop.`);
        await new Promise((go) => window.setTimeout(go, 700));
      }
    }
    stop.classList.remove("pressed");
  };
  const stop = button("STOP", () => void (pressed || press()), "stop", "brake the axes and end the scan (Ctrl + .)");
  window.addEventListener("keydown", (event) => {
    if (event.ctrlKey && event.key === ".") stop.click();
  });
  const bar = h(
    "footer",
    { class: "control-bar", attrs: { "aria-label": "scan and stop" } },
    h("div", { class: "bar-progress" }, done),
    h("div", { class: "bar-row" }, told, alarm, stop),
  );
  const lost = () => {
    if (!lostAt) return;
    const seconds = Math.round((Date.now() - lostAt) / 1000);
    if (!pressed && seconds >= 1)
      fill(
        alarm,
        `THE SERVER HAS NOT ANSWERED FOR ${seconds} s. This page shows old values and cannot stop the axes: use the emergency stop.`,
      );
    bar.classList.toggle("lost", seconds >= 1);
  };
  window.setInterval(lost, 500);
  live.watch({
    status: (s) => {
      const said = barWords(s);
      fill(
        told,
        h("b", {}, said.run),
        said.share && h("span", { class: "share" }, said.share),
        said.left && h("span", {}, said.left),
        said.level && h("span", {}, said.level),
      );
      done.style.width = s.total && !s.hand ? `${(100 * (s.measured ?? 0)) / s.total}%` : "0";
      bar.classList.toggle("moving", moving(s));
      stop.setAttribute("aria-label", moving(s) ? "STOP: the axes may move" : "STOP: nothing moves");
    },
    linked: (up) => {
      if (up) {
        lostAt = 0;
        bar.classList.remove("lost");
        if (!pressed) fill(alarm);
      } else if (!lostAt) lostAt = Date.now();
    },
  });
  return bar;
}
