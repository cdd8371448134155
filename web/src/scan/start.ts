/** Nothing moves before a person has read which run, how long, what is on disk, and the cautions. */

import { button, duration, fill, h, table } from "../draw/dom";
import { live } from "../live/live";
import { post } from "../request/server";
import type { Before, Start } from "../request/types";
import { dialog } from "../shell/dialog";
import { unsaved } from "../shell/drafts";
import { session, words } from "../shell/session";

export type Kind = NonNullable<Start["kind"]>;
export const KINDS: Record<Kind, string> = {
  scan: "scan",
  flip: "flip test",
  "beam-coarse": "coarse beam search",
  "beam-fine": "fine beam search",
};

export function onDisk(said: Before["on_disk"]): string {
  const count = `${said.measured} of ${said.total} points`;
  const when = said.measured_at ? `, the last on ${new Date(1000 * said.measured_at).toLocaleString()}` : "";
  if (said.state === "nothing") return "nothing yet";
  if (said.state === "complete") return `complete${said.total ? `, ${count}` : ""}${when}`;
  if (said.state === "damaged") return "a journal that cannot be read";
  return `${count}${when}: the start goes on with the rest`;
}

/** Slices that a finding names as those to be measured again, as the terminal's option takes them; empty if it names none. */
export function namedAgain(text: string): string {
  return /--again (reference|\d[\d,-]*)/.exec(text)?.[1].replace(/[,-]+$/, "") ?? "";
}

/** Ask which slices of a finished run are measured again, then show and start as any scan; its page opens once it began. */
export function againDialog(run: string, slices = ""): void {
  const box = h("input", {
    attrs: { value: slices, pattern: "[a-z0-9, \\-]{1,200}", placeholder: "3,7-9", "aria-label": "slices" },
    on: { input: () => ready() },
  });
  const faults = h("p", { class: "faults", attrs: { role: "alert" } });
  const next = button("what it takes", () => undefined, "main");
  dialog(`Measure slices of ${run} again`, (close) => {
    next.addEventListener("click", () => {
      const show = (error: unknown) => fill(faults, words(error));
      void startDialog(run, show, "scan", box.value.trim()).then((good) => {
        if (!good) return;
        close();
        const campaign = (session.me?.campaigns.length ?? 0) > 1 ? `&c=${session.campaign}` : "";
        location.hash = `#scan?run=${encodeURIComponent(run)}${campaign}`;
      });
    });
    return [
      h(
        "p",
        {},
        "Mend the cause first, and leave the device on its mount. Slices are numbered as in the plan's list of points; the findings name those that went wrong. The word reference stands for the sweeps of the reference.",
      ),
      h("label", { class: "field stacked" }, h("span", {}, "slices, such as 3,7-9, or reference"), box),
      h(
        "p",
        { class: "small quiet" },
        "The run's own plan is used. The first readings are kept in its journal, and stay in use until each has a new one.",
      ),
      session.me?.mine !== true && h("p", { class: "warn" }, "Take the motion lease first (top right)."),
      faults,
      h("div", { class: "row" }, button("not now", close), h("span", { class: "spring" }), next),
    ];
  });
  function ready(): void {
    next.disabled = session.me?.mine !== true || !box.value.trim() || !box.validity.valid;
  }
  ready();
}

/** Ask, show and start; resolves to whether it was started. `again`: slices of a finished run that are measured again. */
export async function startDialog(
  run: string,
  fault: (error: unknown) => void,
  kind: Kind = "scan",
  again = "",
): Promise<boolean> {
  let said: Before;
  try {
    said = await post("/api/before", { campaign: session.campaign, run, kind, again });
  } catch (error) {
    fault(error);
    return false;
  }
  return new Promise((answer) => {
    let started = false;
    dialog(
      again
        ? `Before anything moves: ${again} of ${run} again`
        : kind === "scan"
          ? "Before anything moves"
          : `Before anything moves: ${KINDS[kind]}`,
      (close) =>
        content(
          said,
          kind,
          close,
          (good, error) => {
            started = good;
            if (error !== undefined) fault(error);
            answer(good);
          },
          (name) => {
            close();
            void startDialog(name, fault, kind).then(answer);
          },
        ),
      () => {
        if (!started) window.setTimeout(() => answer(false), 0);
      },
    );
  });
}

function content(
  said: Before,
  kind: Kind,
  close: () => void,
  ended: (good: boolean, error?: unknown) => void,
  other: (name: string) => void,
): (Node | null | false)[] {
  const read = h("input", {
    attrs: { type: "checkbox", disabled: said.fault !== "" },
    on: { change: () => ready() },
  });
  const failed = said.failed_checks;
  const despite = h("input", { attrs: { type: "checkbox" }, on: { change: () => ready() } });
  const home = h("input", { attrs: { type: "checkbox" } });
  const faults = h("p", { class: "faults", attrs: { role: "alert" } }, said.fault);
  const drafts = unsaved(session.campaign);
  const go = button(
    "start",
    () => {
      go.disabled = true;
      const body = {
        campaign: session.campaign,
        run: said.run,
        sequence: live.status.sequence,
        cautions_read: true as const,
        kind,
        again: said.again,
        home: home.checked,
        despite_check: despite.checked,
      };
      post("/api/start", body).then(
        () => {
          ended(true);
          close();
        },
        (error: unknown) => {
          fill(faults, words(error));
          go.disabled = false;
        },
      );
    },
    "main",
  );
  go.disabled = true;
  function ready(): void {
    go.disabled = !read.checked || (failed.length > 0 && !despite.checked);
  }
  const facts: [string, string][] = [
    ["run", said.run],
    ["to measure", `${said.to_measure} of ${said.points} points${said.again ? ", and two boresight checks" : ""}`],
    ["takes about", said.fault ? "-" : duration(said.duration_s)],
    ["on disk", `${onDisk(said.on_disk)}${said.again ? "; the first readings are kept" : ""}`],
    ["chamber", said.simulated ? "simulated: nothing real moves" : "real: the axes move"],
  ];
  return [
    table(
      ["", ""],
      facts.map(([name, text]) => [h("strong", {}, name), text]),
      "facts",
    ),
    drafts > 0 &&
      h(
        "p",
        { class: "warn" },
        `${drafts} unsaved ${drafts === 1 ? "value" : "values"} of the form: the scan uses what is on disk, without ${drafts === 1 ? "it" : "them"}.`,
      ),
    faults,
    said.fault !== "" &&
      h(
        "div",
        { class: "row" },
        button(`take the name ${said.free_name}`, () => other(said.free_name), "main"),
        said.on_disk.state === "complete" &&
          kind === "scan" &&
          button("measure slices of it again", () => {
            close();
            againDialog(said.run);
          }),
      ),
    failed.length > 0 && h("h3", {}, "The instruments did not pass their check"),
    failed.length > 0 && h("ul", { class: "warn" }, ...failed.map((line) => h("li", {}, line))),
    failed.length > 0 &&
      h("p", {}, h("label", {}, despite, " Start in spite of it. Better: mend it, and check again under Align.")),
    h("h3", {}, "Cautions"),
    h("ul", {}, ...said.cautions.map((line) => h("li", {}, line))),
    h("p", {}, h("label", {}, read, " Everyone is clear of the axes and the cautions are understood.")),
    h("p", { class: "small" }, h("label", {}, home, " Home the axes first (needed after a fault of the motion).")),
    h("div", { class: "row" }, button("not now", close), h("span", { class: "spring" }), go),
  ];
}
