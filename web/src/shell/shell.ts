/** What every page shares: who this is, the motion lease, faults in words, and stop. */

import { live, type Status } from "../live/live";
import { me, post, Refusal } from "../request/server";
import type { Me } from "../request/types";
import { button, fill, h } from "../draw/dom";

export type Page = { title: string; element: HTMLElement; leave: () => void };
export const session: { me: Me | null; campaign: string } = { me: null, campaign: "" };

export function may(role: "view" | "operate" | "configure"): boolean {
  const order = ["view", "operate", "configure"];
  return session.me !== null && order.indexOf(session.me.role) >= order.indexOf(role);
}

export function words(error: unknown): string {
  if (error instanceof Refusal) return error.faults.join("\n");
  return error instanceof TypeError ? "The server does not answer; is colure serve still running?" : String(error);
}

/** Say in a place what went wrong, or nothing once it goes right. */
export function faultsIn(place: HTMLElement): <T>(work: Promise<T>) => Promise<T | undefined> {
  return async (work) => {
    try {
      const found = await work;
      fill(place);
      return found;
    } catch (error) {
      fill(place, words(error));
      return undefined;
    }
  };
}

/** Stop: one action, from every page and every session. */
export function stopButton(): HTMLButtonElement {
  const stop = button(
    "STOP",
    () =>
      void post("/api/stop", {}).catch((error: unknown) => {
        stop.title = words(error);
      }),
    "stop",
    "brake the axes and end the scan (Ctrl + .)",
  );
  const show = (status: Status) => {
    stop.disabled = !status.running;
  };
  live.watch({ status: show });
  window.addEventListener("keydown", (event) => {
    if (event.ctrlKey && event.key === ".") stop.click();
  });
  return stop;
}

/** Take, keep and give back the motion lease; while it is held it is renewed. */
export function leaseButton(): HTMLElement {
  const place = h("span", { class: "row" });
  const draw = () => {
    const own = session.me?.mine === true,
      holder = live.status.lease;
    const chip = h(
      "span",
      { class: `chip${own ? " hot" : ""}` },
      own ? "you may move the axes" : holder ? `${holder} may move the axes` : "nobody may move the axes",
    );
    fill(
      place,
      chip,
      may("operate") &&
        (own ? button("give back", () => void hold(false)) : button("take motion lease", () => void hold(true))),
    );
  };
  const hold = async (wanted: boolean) => {
    try {
      session.me = await post("/api/lease", { hold: wanted });
    } catch (error) {
      place.title = words(error);
      session.me = await me();
    }
    draw();
  };
  window.setInterval(() => {
    if (session.me?.mine) void hold(true);
  }, 10_000);
  live.watch({
    status: (status) => {
      if (session.me && session.me.mine !== (status.lease === session.me.name)) {
        session.me.mine = status.lease === session.me.name;
      }
      draw();
    },
  });
  draw();
  return place;
}
