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

/** Ask, show and start; resolves to whether it was started. */
export async function startDialog(run: string, fault: (error: unknown) => void, kind: Kind = "scan"): Promise<boolean> {
  let said: Before;
  try {
    said = await post("/api/before", { campaign: session.campaign, run, kind });
  } catch (error) {
    fault(error);
    return false;
  }
  return new Promise((answer) => {
    let started = false;
    dialog(
      kind === "scan" ? "Before anything moves" : `Before anything moves: ${KINDS[kind]}`,
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
  const rest = said.on_disk.total ? said.points - said.on_disk.measured : said.points;
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
    ["to measure", `${Math.max(0, rest)} of ${said.points} points`],
    ["takes about", said.fault ? "-" : duration(said.duration_s)],
    ["on disk", onDisk(said.on_disk)],
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
    said.fault !== "" && button(`take the name ${said.free_name}`, () => other(said.free_name), "main"),
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
