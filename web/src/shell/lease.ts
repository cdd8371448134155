/** Take, keep and give back the motion lease; while it is held it is renewed. */

import { button, fill, h } from "../draw/dom";
import { live } from "../live/live";
import { me, post } from "../request/server";
import { may, session, words } from "./session";

export function leaseButton(): HTMLElement {
  const place = h("span", { class: "row lease" }),
    fault = h("span", { class: "bad small", attrs: { role: "status" } });
  let shown = "";
  const draw = () => {
    const own = session.me?.mine === true,
      holder = live.status.lease,
      key = `${own}${holder}`;
    if (key === shown) return;
    shown = key;
    const says = own ? "you may move the axes" : holder ? `${holder} may move the axes` : "nobody may move the axes";
    fill(
      place,
      h("span", { class: `chip${own ? " hot" : ""}` }, says),
      may("operate") &&
        (own ? button("give back", () => void hold(false)) : button("take motion lease", () => void hold(true))),
      fault,
    );
  };
  const hold = async (wanted: boolean) => {
    try {
      session.me = await post("/api/lease", { hold: wanted });
      fill(fault);
    } catch (error) {
      fill(fault, words(error));
      session.me = await me().catch(() => session.me);
    }
    shown = "";
    draw();
  };
  window.setInterval(() => {
    if (session.me?.mine && live.up) void hold(true);
  }, 10_000);
  live.watch({
    status: (status) => {
      if (session.me) session.me.mine = status.lease === session.me.name;
      draw();
    },
  });
  draw();
  return place;
}
