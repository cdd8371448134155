/** Long work: begun, watched, given up, announced. The page goes on meanwhile. */

import { button, duration, fill, h } from "../draw/dom";
import { get, post, Refusal } from "../request/server";
import type { Asks, JobState, Results } from "../request/types";
import { words } from "./session";

type Watcher = (jobs: JobState[]) => void;
const watchers = new Set<Watcher>();
let known: JobState[] = [],
  announced = 0;

export function onJobs(watcher: Watcher): () => void {
  watchers.add(watcher);
  watcher(known);
  return () => watchers.delete(watcher);
}

async function refresh(): Promise<void> {
  known = await get("/api/jobs");
  for (const watcher of [...watchers]) watcher(known);
}

/** Begin long work and wait for its end; `told` hears how it stands. */
export async function longWork<P extends keyof Results & keyof Asks>(
  path: P,
  body: Asks[P]["body"],
  told: (state: JobState) => void = () => undefined,
): Promise<Results[P]> {
  const { job } = (await post(path, body)) as { job: string };
  void refresh().catch(() => undefined);
  for (let lost = 0; ;) {
    await new Promise((go) => window.setTimeout(go, 350));
    let found;
    try {
      found = await get("/api/job/{job}", [job]);
      lost = 0;
    } catch (error) {
      // A server that is away for a moment still has the work; one that began anew has not.
      if (error instanceof Refusal || ++lost > 60) throw error;
      continue;
    }
    told(found.state);
    if (found.state.state === "waiting" || found.state.state === "at work") continue;
    void refresh().catch(() => undefined);
    announce(found.state);
    if (found.state.state === "done") return found.result as Results[P];
    throw new Refusal(
      422,
      found.state.faults.length ? found.state.faults : [`${found.state.words}: ${found.state.state}`],
    );
  }
}

/** Ask once, at the first long work, whether the browser may tell of its end. */
export function mayAnnounce(): boolean {
  return "Notification" in window && Notification.permission === "granted";
}

function announce(job: JobState): void {
  const text = `${job.words}: ${job.state}`;
  if (!document.hidden) return;
  announced++;
  document.title = `(${announced}) ${text}`;
  if (mayAnnounce()) new Notification("Colure", { body: text });
}

document.addEventListener("visibilitychange", () => {
  if (!document.hidden && announced) {
    announced = 0;
    document.title = document.title.replace(/^\(\d+\) /, "");
  }
});

/** How a piece of work stands, with a button to give it up. */
export function jobLine(job: JobState): HTMLElement {
  const stop = button(
    "give up",
    () => void post("/api/cancel", { job: job.id }).then(refresh, (error: unknown) => fill(says, words(error))),
    "tiny",
  );
  const says = h("span", {});
  const bar = h("i", {});
  if (job.state === "waiting") fill(says, `${job.words}: waits, place ${job.place} in the line`);
  else if (job.state === "at work") {
    fill(
      says,
      `${job.words}: for ${duration(job.for_s)}${job.usual_s ? `, the last one took ${duration(job.usual_s)}` : ""}`,
    );
    bar.style.width = `${job.usual_s ? Math.min(95, (100 * job.for_s) / job.usual_s) : 15}%`;
  } else fill(says, `${job.words}: ${job.state}${job.faults.length ? `: ${job.faults.join("; ")}` : ""}`);
  const over = job.state !== "waiting" && job.state !== "at work";
  return h(
    "div",
    { class: "job" },
    h("div", { class: "row" }, says, h("span", { class: "spring" }), !over && stop),
    !over && h("div", { class: "meter" }, bar),
  );
}

/** The drawer of long work, for the head of the page. */
export function jobsButton(): HTMLElement {
  const list = h("div", { class: "job-list", attrs: { "aria-live": "polite" } }),
    count = h("summary", {}, "work"),
    drawer = h("details", { class: "jobs" }, count, list);
  const ask = h("p", { class: "small" });
  const allow = () => {
    if (!("Notification" in window) || Notification.permission !== "default") return;
    fill(
      ask,
      button("tell me when work ends", () => void Notification.requestPermission().then(() => fill(ask)), "tiny"),
    );
  };
  onJobs((jobs) => {
    const open = jobs.filter((j) => j.state === "waiting" || j.state === "at work");
    drawer.hidden = jobs.length === 0;
    fill(count, open.length ? `work: ${open.length}` : "work");
    fill(list, ask, ...jobs.slice(0, 8).map(jobLine));
    allow();
  });
  window.setInterval(() => {
    if (known.some((j) => j.state === "waiting" || j.state === "at work") || drawer.open)
      void refresh().catch(() => undefined);
  }, 1500);
  return drawer;
}
